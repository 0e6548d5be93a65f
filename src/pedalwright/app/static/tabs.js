// Findings, numbers or charts: tabs by the usual keys.
export function tabs(list) {
  const all = [...list.querySelectorAll("[role=tab]")];

  function choose(tab, focus = true) {
    for (const one of all) {
      const chosen = one === tab;
      one.setAttribute("aria-selected", String(chosen));
      one.tabIndex = chosen ? 0 : -1;
      document.getElementById(one.getAttribute("aria-controls")).hidden = !chosen;
    }
    if (focus) tab.focus();
    sessionStorage.setItem("tab", tab.id);
  }

  for (const [at, tab] of all.entries()) {
    tab.addEventListener("click", () => choose(tab));
    tab.addEventListener("keydown", (event) => {
      const step = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
      if (step) choose(all[(at + step + all.length) % all.length]);
    });
  }
  const kept = all.find((tab) => tab.id === sessionStorage.getItem("tab"));
  if (kept) choose(kept, false);
}
