// The bench: what a hand does becomes a question; what comes back is put in place by its id.
import { faultsText, send } from "./ask.js";
import { fields } from "./fields.js";
import { hand } from "./hand.js";
import { cancels, watchJobs } from "./jobs.js";
import { light } from "./light.js";
import { queue } from "./queue.js";
import { spin } from "./spin.js";
import { tabs } from "./tabs.js";

const byId = (id) => document.getElementById(id);
const page = document.body;
const base = `/cars/${encodeURIComponent(page.dataset.file)}`;
const shown = {};
let run = page.dataset.run;
let revision = Number(page.dataset.revision);
let stage = page.dataset.stage;
let marked = [];
const round = turned();

// ---- what this tab looks at

function view() {
  const board = byId("board").getBoundingClientRect();
  const drivers = [...document.querySelectorAll("input[name=drivers]:checked")];
  return {
    stage,
    pedal: document.querySelector("input[name=pedal]:checked")?.value ?? "",
    down: byId("down").value,
    close: byId("close").checked ? "1" : "",
    sweep: byId("sweep").checked ? "1" : "",
    room: byId("room").checked ? "1" : "",
    side: page.dataset.side,
    turn: String(round.turn),
    tip: String(round.tip),
    drivers: drivers.map((one) => one.value).join("|"),
    wide: String(Math.round(board.width)),
    high: String(Math.round(board.height)),
  };
}

function remember() {
  const { wide: _w, high: _h, ...kept } = view();
  history.replaceState(null, "", `?${new URLSearchParams(kept)}`);
}

// ---- questions and answers

async function ask(job) {
  if (job.kind === "look" && job.news && !isNews(job.news)) return;
  const looking = { ...view(), ...job.view };
  const got = job.kind === "look"
    ? await send(`${base}/state?${new URLSearchParams({ ...looking, part: job.part })}`)
    : await send(`${base}/${job.kind}`, { ...job.body, view: looking });
  if (got.ok) {
    put(got.said);
    job.done?.(got.said);
    if (job.time) requestAnimationFrame(() => tell(job.time));
  } else if (got.status === 422 && job.refused) job.refused(got.said.faults);
  else trouble(faultsText(got.said));
}
const add = queue(ask);
const look = (part = "whole", more = {}) => add({ kind: "look", part, ...more });
const act = (kind, body = {}, more = {}) => add({ kind, body, ...more });

// How long a move took to be seen, for whoever measures it.
function tell(time) {
  byId("board").dispatchEvent(new CustomEvent("redrawn", { detail: performance.now() - time }));
}

function put(answer) {
  if (answer.run === run && answer.revision < revision) return;
  ({ run, revision } = answer);
  if (answer.says) {
    trouble("");
    byId("spoken").textContent = answer.says;
    jobs();
  }
  if (answer.looking) {
    look_from(answer.looking.side);
    for (const one of document.querySelectorAll("input[name=pedal]")) {
      one.checked = one.value === answer.looking.pedal;
    }
  }
  for (const [id, html] of Object.entries(answer.html ?? {})) {
    if (shown[id] !== html) swap(id, html);
    shown[id] = html;
  }
  if (answer.at) byId("at").innerHTML = answer.at;
  if (answer.values) form.fill(answer.values);
  if (answer.handles) grip.place(answer.handles);
  mark();
}

// Put new markup in place; what has the focus, and what was folded open, is so again.
function swap(id, html) {
  const place = byId(id);
  const focused = place.contains(document.activeElement) ? document.activeElement : null;
  const again = focused?.id ? `#${CSS.escape(focused.id)}` : trail(focused, place);
  const open = new Map(
    [...place.querySelectorAll("details[open]")].map((one) => [keyOf(one), one.querySelector(".working")?.innerHTML]),
  );
  place.innerHTML = html;
  for (const one of place.querySelectorAll("details")) {
    const was = open.get(keyOf(one));
    if (!open.has(keyOf(one))) continue;
    if (was && grip.holding) {
      one.dataset.filled = "old";
      one.querySelector(".working").innerHTML = was;
    }
    one.open = true;
  }
  if (again) place.querySelector(again)?.focus({ preventScroll: true });
}

const keyOf = (details) => `${details.closest("[data-key]")?.dataset.key ?? ""} ${details.className}`;

function trail(element, place) {
  const steps = [];
  for (let one = element; one && one !== place; one = one.parentElement) {
    steps.unshift(`:nth-child(${[...one.parentElement.children].indexOf(one) + 1})`);
  }
  return steps.length ? `:scope > ${steps.join(" > ")}` : "";
}

function trouble(text) {
  byId("trouble").textContent = text;
}

// ---- hands

const grip = hand(byId("board"), byId("handles"), {
  drag: (body, time) => act("drag", body, { time, refused }),
  nudge: (body, time) => act("nudge", body, { time, refused }),
  drop: () => act("drop", {}, { refused }),
  cancel: () => act("cancel"),
});

function refused(faults) {
  byId("spoken").textContent = faultsText({ faults });
  trouble(faultsText({ faults }));
}

const form = fields([byId("fields"), byId("held")], (changes, measured, done, refusal) =>
  act("change", { changes, measured }, { done, refused: refusal }), trouble);

tabs(document.querySelector("[role=tablist]"));

// The numbers of the handle that is held, to type instead.
let holds = "";
byId("handles").addEventListener("focusin", async (event) => {
  const handle = event.target.dataset.name;
  if (handle === holds) return;
  holds = handle;
  const got = await fetch(`${base}/held?${new URLSearchParams({ ...view(), handle })}`);
  if (got.ok && holds === handle) byId("held").innerHTML = await got.text();
});

// ---- from where it is seen

function look_from(side) {
  page.dataset.side = side;
  for (const one of document.querySelectorAll("#sides a")) {
    if (one.dataset.side === side) one.setAttribute("aria-current", "true");
    else one.removeAttribute("aria-current");
  }
}

// As the server drew it: steps round the car, and up.
function turned() {
  const said = document.querySelector("#turning [data-turned]")?.dataset;
  if (!said) return { turn: "", tip: "" };
  const [at, tip] = said.turned.split(" ").map(Number);
  return { turn: at, tip, most: Number(said.most) };
}

// Steps add up even where they come faster than drawings.
function turn(by, up) {
  if (round.turn === "") Object.assign(round, turned());
  round.turn += by;
  round.tip = Math.max(-round.most, Math.min(round.most, round.tip + up));
  look("quick", { done: remember });
}

spin(byId("board"), () => page.dataset.side === "space", turn);

// ---- where a finding is to be seen

function mark() {
  for (const part of document.querySelectorAll("#board [data-part]")) {
    part.classList.toggle("marked", marked.includes(part.dataset.part));
  }
}

document.addEventListener("click", (event) => {
  const button = event.target.closest("button, a");
  if (!button) return;
  if (button.dataset.act) act(button.dataset.act, { pedal: button.dataset.pedal ?? "" }, { refused });
  if (button.dataset.stage) {
    event.preventDefault();
    ({ stage } = button.dataset);
    page.dataset.stage = stage;
    look("stage", { view: { pedal: "" }, done: remember });
    byId("panel").scrollTop = 0;
  }
  if (button.dataset.side) {
    event.preventDefault();
    look_from(button.dataset.side);
    look("whole", { done: remember });
  }
  if (button.dataset.turn || button.dataset.tip) {
    event.preventDefault();
    turn(Number(button.dataset.turn ?? 0), Number(button.dataset.tip ?? 0));
  }
  if (button.dataset.where !== undefined) {
    const parts = button.dataset.where.split(" ");
    if (page.dataset.side !== "side") {
      look_from("side");
      look("whole", { done: remember });
    }
    marked = marked.join() === parts.join() ? [] : parts;
    const pedal = document.querySelector(`input[name=pedal][value="${button.dataset.pedal}"]`);
    if (pedal && !pedal.checked) {
      pedal.checked = true;
      look("whole", { done: remember });
    }
    mark();
    if (marked.length) byId("board").scrollIntoView({ block: "nearest" });
  }
});

byId("panel").addEventListener("toggle", async (event) => {
  const details = event.target;
  if (!details.open || !details.dataset.code || details.dataset.filled) return;
  const { code, about } = details.dataset;
  details.dataset.filled = "new";
  const got = await fetch(`${base}/working?${new URLSearchParams({ code, about })}`);
  details.querySelector(".working").innerHTML = got.ok ? await got.text() : "It cannot be shown now.";
}, true);

// ---- what is looked at

for (const input of document.querySelectorAll(".tools input")) {
  input.addEventListener("change", () => look("whole", { done: remember }));
}
byId("down").addEventListener("input", () => look("quick"));
byId("down").addEventListener("change", remember);
new ResizeObserver(() => look("quick")).observe(byId("board"));
addEventListener("scroll", () => grip.lay(), { passive: true });

const big = byId("big");
big.addEventListener("click", () => {
  const on = page.classList.toggle("big");
  big.setAttribute("aria-pressed", String(on));
  look("quick");
});
light(byId("light"));
const jobs = watchJobs(byId("jobs"));
cancels(jobs);

// On a phone the handles of the whole leg are too near each other for a thumb.
if (!location.search && matchMedia("(max-width: 40rem)").matches) byId("close").checked = true;

// ---- news of other tabs, of an editor, of a server that was started again

let news = null;
const isNews = (told) => told.run !== run || told.revision > revision;

function listen() {
  news?.close();
  news = new EventSource(`${base}/events`);
  news.addEventListener("open", () => trouble(""));
  news.addEventListener("message", (event) => {
    const told = JSON.parse(event.data);
    if (isNews(told) && !grip.holding) look("whole", { news: told });
  });
  news.addEventListener("error", () => {
    trouble("The server does not answer. What was saved is in the file; this page goes on by itself when the server is back.");
  });
}
document.addEventListener("visibilitychange", () => {
  if (document.hidden) news?.close();
  else listen();
});
addEventListener("pagehide", () => news?.close());
listen();
look("whole");
