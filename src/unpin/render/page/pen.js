// The pen of the teaching view: strokes in thousandths of the board, kept for each idea (its number is `here()`) while the page is open.
function penOf(root, board, ink, here) {
  const strokes = new Map();
  let held = "", stroke = null;

  function hold(what) {
    held = what;
    root.classList.toggle("drawing", Boolean(held));
    board.classList.toggle("inking", Boolean(held));
    board.classList.toggle("erasing", held === "erase");
    for (const name of ["pen", "erase"]) root.querySelector(`[data-do="${name}"]`).setAttribute("aria-pressed", held === (name === "pen" ? "ink" : name));
  }
  function draw() {
    ink.replaceChildren(...(strokes.get(here()) ?? []).map((spots) => {
      const path = document.createElementNS("http://www.w3.org/2000/svg", "path");
      path.setAttribute("d", `M${spots.map((p) => p.map((c) => c.toFixed(1)).join(" ")).join("L")}`);
      return path;
    }));
  }
  const spot = (e) => { const b = board.getBoundingClientRect(); return [(e.clientX - b.left) / b.width * 1000, (e.clientY - b.top) / b.height * 1000]; };
  function rub(e) {
    const [x, y] = spot(e), b = board.getBoundingClientRect();
    const near = (p) => Math.hypot((p[0] - x) * b.width, (p[1] - y) * b.height) < 18000;
    strokes.set(here(), (strokes.get(here()) ?? []).filter((s) => !s.some(near)));
    draw();
  }
  ink.addEventListener("pointerdown", (e) => {
    if (!held) return;
    ink.setPointerCapture(e.pointerId);
    stroke = [spot(e), spot(e)];
    if (held === "erase") return rub(e);
    strokes.set(here(), [...(strokes.get(here()) ?? []), stroke]);
    draw();
  });
  ink.addEventListener("pointermove", (e) => {
    if (!stroke) return;
    if (held === "erase") return rub(e);
    stroke.push(...(e.getCoalescedEvents?.().map(spot) ?? []), spot(e));
    draw();
  });
  for (const end of ["pointerup", "pointercancel"]) ink.addEventListener(end, () => { stroke = null; });
  return {
    hold, draw, held: () => held, take: (what) => hold(held === what ? "" : what),
    clear() { strokes.delete(here()); draw(); },
  };
}
