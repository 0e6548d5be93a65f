// One question at a time. Places are absolute, so of those that wait the newest counts; steps are
// relative, so they are added up; whatever changes the file waits for its turn and is never lost.
export function queue(ask) {
  const waiting = [];
  let busy = false;

  async function pump() {
    if (busy) return;
    busy = true;
    try {
      while (waiting.length) await ask(waiting.shift());
    } finally {
      busy = false;
    }
  }

  return function add(job) {
    const last = waiting.at(-1);
    const same = last && last.kind === job.kind && last.body?.handle === job.body?.handle;
    if (same && job.kind === "drag") waiting[waiting.length - 1] = job;
    else if (same && job.kind === "look") {
      const order = ["quick", "whole", "stage"];
      const part = order[Math.max(order.indexOf(last.part), order.indexOf(job.part))];
      const news = last.news && job.news;
      waiting[waiting.length - 1] = { ...last, ...job, part, news, view: { ...last.view, ...job.view } };
    }
    else if (same && job.kind === "nudge") {
      last.body.x += job.body.x;
      last.body.y += job.body.y;
    } else waiting.push(job);
    pump();
  };
}
