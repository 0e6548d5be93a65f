// Light for sunlight, dark for the garage: as the device has it, until somebody says otherwise.
export function light(button) {
  const kept = localStorage.getItem("light");
  if (kept) document.documentElement.dataset.light = kept;
  if (!button) return;
  const device = matchMedia("(prefers-color-scheme: dark)");
  const isDark = () => (document.documentElement.dataset.light ?? (device.matches ? "dark" : "light")) === "dark";
  const say = () => button.setAttribute("aria-pressed", String(isDark()));
  button.addEventListener("click", () => {
    const chosen = isDark() ? "light" : "dark";
    document.documentElement.dataset.light = chosen;
    localStorage.setItem("light", chosen);
    say();
  });
  device.addEventListener("change", say);
  say();
}
