// Handles on the drawing: taken by mouse, finger or keys; where they come to is the server's word.
const KEYS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
const REACH = { mouse: 18, pen: 24, touch: 34 };
const REST = 700; // ms without a key, and the step is kept

export function hand(board, box, { drag, nudge, drop, cancel }) {
  let held = null;
  let resting = 0;

  const svg = () => board.querySelector("#drawing svg");
  const toPaper = (x, y) => new DOMPoint(x, y).matrixTransform(svg().getScreenCTM().inverse());
  const buttons = () => [...box.querySelectorAll("button")];

  function nearest(x, y, reach) {
    let best = null;
    for (const button of buttons()) {
      const at = button.getBoundingClientRect();
      const far = Math.hypot(at.x + at.width / 2 - x, at.y + at.height / 2 - y);
      if (far <= reach && (!best || far < best.far)) best = { button, far };
    }
    return best?.button;
  }

  function settle() {
    clearTimeout(resting);
    if (resting) drop();
    resting = 0;
  }

  board.addEventListener("pointerdown", (event) => {
    if (event.button !== 0 || held) return;
    const button = nearest(event.clientX, event.clientY, REACH[event.pointerType] ?? 24);
    if (!button) return;
    event.preventDefault();
    settle();
    const at = toPaper(event.clientX, event.clientY);
    held = { name: button.dataset.name, dx: button.dataset.x - at.x, dy: button.dataset.y - -at.y, id: event.pointerId };
    held.button = button;
    button.classList.add("held");
    board.setPointerCapture(event.pointerId);
    button.focus({ preventScroll: true });
  });

  board.addEventListener("pointermove", (event) => {
    if (held?.id !== event.pointerId) return;
    const at = toPaper(event.clientX, event.clientY);
    held.moved = true;
    drag({ handle: held.name, x: at.x + held.dx, y: -at.y + held.dy }, event.timeStamp);
  });

  function release(event, done) {
    if (!held || (event && held.id !== event.pointerId)) return;
    const { moved, button } = held;
    button.classList.remove("held");
    held = null;
    if (moved) done();
  }
  board.addEventListener("pointerup", (event) => release(event, drop));
  board.addEventListener("pointercancel", (event) => release(event, drop));

  // A finger over a handle drags it; anywhere else it scrolls the page.
  board.addEventListener("touchstart", (event) => {
    const touch = event.changedTouches[0];
    if (nearest(touch.clientX, touch.clientY, REACH.touch)) event.preventDefault();
  }, { passive: false });

  box.addEventListener("keydown", (event) => {
    if (event.key === "Escape") {
      clearTimeout(resting);
      resting = 0;
      if (held) release(null, cancel);
      else cancel();
      return;
    }
    const way = KEYS[event.key];
    if (!way || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    const size = event.shiftKey ? 10 : event.altKey ? 0.1 : 1;
    nudge({ handle: event.target.dataset.name, x: way[0] * size, y: way[1] * size }, event.timeStamp);
    clearTimeout(resting);
    resting = setTimeout(settle, REST);
  });
  box.addEventListener("focusout", settle);

  return {
    get holding() {
      return held !== null || resting !== 0;
    },
    // The buttons stay the same from answer to answer, so that focus and hold survive.
    place(handles) {
      const there = new Map(buttons().map((button) => [button.dataset.name, button]));
      for (const { name, label, says, x, y } of handles) {
        let button = there.get(name);
        there.delete(name);
        if (!button) {
          button = document.createElement("button");
          button.type = "button";
          button.dataset.name = name;
          box.append(button);
        }
        button.dataset.x = x;
        button.dataset.y = y;
        if (button.getAttribute("aria-label") !== says) {
          button.setAttribute("aria-label", says);
          button.title = label;
        }
      }
      for (const button of there.values()) if (button !== held?.button) button.remove();
      this.lay();
    },
    // Where the drawing is now on the screen.
    lay() {
      const drawing = svg();
      if (!drawing) return;
      const matrix = drawing.getScreenCTM();
      const origin = box.getBoundingClientRect();
      for (const button of buttons()) {
        const at = new DOMPoint(+button.dataset.x, -button.dataset.y).matrixTransform(matrix);
        button.style.transform = `translate(${at.x - origin.x}px, ${at.y - origin.y}px)`;
      }
    },
  };
}
