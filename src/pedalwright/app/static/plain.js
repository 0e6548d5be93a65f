// What the plain pages do: begin a file, bring one, write an answer's numbers into the file.
import { send, faultsText } from "./ask.js";
import { cancels, watchJob } from "./jobs.js";
import { light } from "./light.js";

light(document.getElementById("light"));
cancels();

const trouble = document.getElementById("trouble");

async function go(path, body) {
  const answer = await send(path, body);
  if (answer.ok) location.href = `/cars/${encodeURIComponent(body.name)}`;
  else trouble.textContent = faultsText(answer.said);
}

document.getElementById("new")?.addEventListener("submit", (event) => {
  event.preventDefault();
  const [name, like] = ["name", "like"].map((id) => document.getElementById(id).value);
  go("/new", { name, like });
});

document.getElementById("bring")?.addEventListener("submit", async (event) => {
  event.preventDefault();
  const file = document.getElementById("file").files[0];
  if (!file) trouble.textContent = "Choose a file first.";
  else go("/bring", { name: file.name, text: await file.text() });
});

watchJob(document.querySelector("[data-job]"));

document.addEventListener("click", async (event) => {
  const button = event.target.closest("button[data-change]");
  if (!button) return;
  const file = `/cars/${encodeURIComponent(document.body.dataset.file)}`;
  const answer = await send(`${file}/change`, { changes: JSON.parse(button.dataset.change) });
  if (answer.ok) location.href = file;
  else trouble.textContent = faultsText(answer.said);
});
