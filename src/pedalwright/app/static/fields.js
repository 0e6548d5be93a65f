// Numbers as typed: the server reads them, says what it read, or says what it accepts.
import { faultText } from "./ask.js";

export function fields(boxes, change, trouble) {
  const rows = () => boxes.flatMap((box) => [...box.querySelectorAll("[data-path]")]);
  const main = (row) => row.querySelector(":scope > input, :scope > select");
  const part = (row, name) => row.querySelector(`[data-say=${name}]`);

  for (const box of boxes) box.addEventListener("change", (event) => {
    const row = event.target.closest("[data-path]");
    if (!row) return;
    const value = main(row).value.trim();
    const plain = event.target === main(row);
    if (!plain && !event.target.dataset.say) return;
    if (!value && plain) {
      main(row).value = row.dataset.text ?? main(row).defaultValue;
      return;
    }
    const said = plain ? value : {
      value: value || main(row).placeholder,
      tag: part(row, "tag").value,
      note: part(row, "note").value,
      plus_minus: part(row, "plus_minus").value,
    };
    send(row, said);
  });

  // What is typed is picked, unless the box above says that it was measured.
  function send(row, said) {
    const measured = row.closest("#fields") !== null && document.getElementById("by-tape")?.checked === true;
    change({ [row.dataset.path]: said }, measured, () => clear(row), (faults) => refuse(row, faults));
  }

  // The word beside a number says how it is known, and is changed by a press.
  for (const box of boxes) box.addEventListener("click", (event) => {
    const button = event.target.closest("button[data-tag]");
    const row = button?.closest("[data-path]");
    if (!row) return;
    send(row, {
      value: main(row).value.trim(),
      tag: button.dataset.tag === "measured" ? "assumed" : "measured",
      note: "",
      plus_minus: part(row, "plus_minus")?.value ?? "",
    });
  });

  for (const box of boxes) box.addEventListener("keydown", (event) => {
    const row = event.target.closest("[data-path]");
    if (event.key !== "Escape" || !row || event.target !== main(row)) return;
    main(row).value = row.dataset.text ?? main(row).defaultValue;
    clear(row);
  });

  function clear(row) {
    main(row).removeAttribute("aria-invalid");
    const fault = row.querySelector(".fault");
    if (fault) fault.hidden = true;
  }

  function refuse(row, faults) {
    const own = faults.filter((fault) => !fault.key || fault.key === row.dataset.path);
    const place = row.querySelector(".fault");
    if (!own.length || !place) return trouble(faults.map(faultText).join(" "));
    main(row).setAttribute("aria-invalid", "true");
    main(row).setAttribute("aria-describedby", `${main(row).id}-read ${place.id}`);
    place.replaceChildren(`Read “${own[0].read}”. ${own[0].accepts} What was there stays in force.`);
    for (const offer of own[0].offers ?? []) {
      const button = document.createElement("button");
      button.type = "button";
      button.textContent = offer;
      button.addEventListener("click", () => {
        main(row).value = offer;
        main(row).dispatchEvent(new Event("change", { bubbles: true }));
      });
      place.append(" ", button);
    }
    place.hidden = false;
  }

  function fill(values) {
    for (const row of rows()) {
      const is = values[row.dataset.path];
      if (!is) continue;
      const input = main(row);
      row.dataset.text = is.text;
      if (input && input !== document.activeElement && input.getAttribute("aria-invalid") !== "true") {
        input.value = is.text;
      } else if (input?.getAttribute("aria-invalid") !== "true" && input?.value.trim() === is.text.trim()) {
        input.value = is.text;
      }
      if (!row.querySelector(".shown")) continue;
      input.placeholder = is.tag === "default" ? is.shown : "?";
      row.className = `field ${is.tag}`;
      tagged(row, is.tag);
      row.querySelector(".shown").textContent = is.shown;
      row.querySelector(".around").textContent = is.plus_minus && `±${is.plus_minus}`;
    }
  }

  // Missing and default are plain words: they become something else by a number.
  function tagged(row, tag) {
    const own = row.querySelector(".tag");
    const known = tag === "measured" || tag === "assumed";
    let now = own;
    if (known !== (own.tagName === "BUTTON")) {
      now = document.createElement(known ? "button" : "span");
      now.className = "tag";
      own.replaceWith(now);
    }
    now.textContent = tag;
    if (!known) return;
    now.type = "button";
    now.dataset.tag = tag;
    now.title = `Say that it is ${tag === "measured" ? "only assumed" : "measured"}`;
  }

  return { fill };
}
