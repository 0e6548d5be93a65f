// Turning what is seen in space: a drag along the drawing is so many steps, and leaves no number changed.
const STEP = 36; // pixels

export function spin(board, can, turn) {
  let held = null;
  board.addEventListener("pointerdown", (event) => {
    if (!can() || event.button !== 0 || event.pointerType === "touch") return;
    held = { x: event.clientX, y: event.clientY, id: event.pointerId };
    board.setPointerCapture(event.pointerId);
  });
  board.addEventListener("pointermove", (event) => {
    if (held?.id !== event.pointerId) return;
    const by = Math.trunc((event.clientX - held.x) / STEP);
    const up = Math.trunc((event.clientY - held.y) / STEP);
    if (!by && !up) return;
    held.x += by * STEP;
    held.y += up * STEP;
    turn(-by, up);
  });
  for (const end of ["pointerup", "pointercancel"]) board.addEventListener(end, () => { held = null; });
}
