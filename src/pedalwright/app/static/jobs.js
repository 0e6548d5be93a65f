// Long work: asked how far it is, shown when it is there, given up by a button.
import { send } from "./ask.js";

const base = () => `/cars/${encodeURIComponent(document.body.dataset.file)}`;
const OFTEN = 400; // ms

export function cancels(then = () => {}) {
  document.addEventListener("click", async (event) => {
    const button = event.target.closest("button[data-cancel]");
    if (!button) return;
    button.disabled = true;
    await send(`${base()}/jobs/${button.dataset.cancel}/cancel`, {});
    then();
  });
}

// The page of one piece of work.
export async function watchJob(place) {
  while (place && ["waits", "runs"].includes(place.dataset.state)) {
    await new Promise((rest) => setTimeout(rest, OFTEN));
    const { ok, status, said } = await send(`${base()}/jobs/${place.dataset.job}`);
    if (!ok && status === 0) continue; // the server is away for a moment
    if (!ok) return location.reload();
    place.dataset.state = said.state;
    const says = place.querySelector(".job-says");
    if (says && says.textContent !== said.says) says.textContent = said.says;
    const bar = place.querySelector("progress");
    if (bar && said.share !== null) bar.value = said.share;
    else bar?.removeAttribute("value");
    if (said.state === "done") place.innerHTML = said.html;
    else if (!["waits", "runs"].includes(said.state)) return location.reload();
  }
  place?.setAttribute("aria-busy", "false");
}

// The strip on the bench: looked at again for as long as something runs.
export function watchJobs(strip) {
  let again = 0;
  async function look() {
    clearTimeout(again);
    const got = await fetch(`${base()}/jobs`).catch(() => null);
    if (got?.ok) strip.innerHTML = await got.text();
    if (strip.querySelector("[data-running]")) again = setTimeout(look, 2 * OFTEN);
  }
  look();
  return look;
}
