// Measures one figure as the browser laid it out. Returns a list of faults in words. All lengths are printed points.
(svg) => {
  const faults = [];
  const view = svg.viewBox.baseVal;
  const box = (text) => {
    // The inked box: the advance of the characters across, cap height and descent up and down, shift of subscripts included.
    let left = Infinity, right = -Infinity, top = Infinity, bottom = -Infinity;
    const tspans = text.querySelectorAll("tspan");
    let at = 0;
    for (const part of tspans.length ? tspans : [text]) {
      const size = parseFloat(part.getAttribute("font-size") || text.getAttribute("font-size"));
      const count = part.textContent.length;
      for (let k = 0; k < count; k++, at++) {
        const a = text.getStartPositionOfChar(at), b = text.getEndPositionOfChar(at);
        left = Math.min(left, a.x, b.x); right = Math.max(right, a.x, b.x);
        const down = /[gjpqy,;()Q]/.test(part.textContent) ? 0.22 : 0.02;
        top = Math.min(top, a.y - 0.68 * size, b.y - 0.68 * size); bottom = Math.max(bottom, a.y + down * size, b.y + down * size);
      }
    }
    const turn = text.transform.baseVal.consolidate();
    const corners = [[left, top], [right, top], [right, bottom], [left, bottom]].map(([x, y]) => {
      if (!turn) return [x, y];
      const m = turn.matrix;
      return [m.a * x + m.c * y + m.e, m.b * x + m.d * y + m.f];
    });
    const xs = corners.map((c) => c[0]), ys = corners.map((c) => c[1]);
    return { l: Math.min(...xs), r: Math.max(...xs), t: Math.min(...ys), b: Math.max(...ys) };
  };
  const meets = (p, q) => p.l < q.r - 0.1 && q.l < p.r - 0.1 && p.t < q.b - 0.1 && q.t < p.b - 0.1;
  const away = (p, x, y) => Math.hypot(Math.max(p.l - x, 0, x - p.r), Math.max(p.t - y, 0, y - p.b));
  const texts = [...svg.querySelectorAll("text")];
  const boxes = texts.map(box);
  const shapes = [...svg.querySelectorAll("path, circle, line, rect, polygon")].filter((s) => !s.closest("defs") && !s.classList.contains("page"));
  const dots = new Map();
  for (const s of shapes) {
    const total = s.getTotalLength();
    const spots = [];
    const steps = Math.max(2, Math.ceil(total / 0.5));
    for (let k = 0; k <= steps; k++) { const p = s.getPointAtLength((total * k) / steps); spots.push([p.x, p.y]); }
    dots.set(s, spots);
  }
  const near = (s, b) => Math.min(...dots.get(s).map(([x, y]) => away(b, x, y)));
  texts.forEach((text, i) => {
    const name = text.textContent;
    const sizes = [text, ...text.querySelectorAll("tspan")].map((t) => parseFloat(t.getAttribute("font-size") || "99"));
    if (Math.min(...sizes) < 7) faults.push(`${name}: ${Math.min(...sizes)} pt`);
    const b = boxes[i];
    if (b.l < view.x - 0.5 || b.t < view.y - 0.5 || b.r > view.x + view.width + 0.5 || b.b > view.y + view.height + 0.5) faults.push(`${name}: off the figure`);
    for (let j = i + 1; j < texts.length; j++) if (meets(b, boxes[j])) faults.push(`${name} meets ${texts[j].textContent}`);
    for (const s of shapes) {
      if (s.classList.contains("leader")) continue;
      const half = parseFloat(s.getAttribute("stroke-width") || "0") / 2;
      const inner = { l: b.l + 0.15, r: b.r - 0.15, t: b.t + 0.15, b: b.b - 0.15 };
      if (near(s, inner) < half) faults.push(`${name} meets a ${s.getAttribute("class")} of ${(s.closest("[data-action], [data-owner]") || s).getAttribute("data-action") || (s.closest("[data-owner]") || s).getAttribute("data-owner") || ""}`);
    }
    const group = text.closest("g[data-action]");
    const led = text.parentElement.querySelector(".leader");
    if (group && text.classList.contains("label") && !led) {
      const own = Math.min(...shapes.filter((s) => group.contains(s)).map((s) => near(s, b)));
      for (const other of svg.querySelectorAll("g[data-action]")) {
        if (other === group || other.contains(group) || group.contains(other)) continue;
        const d = Math.min(Infinity, ...shapes.filter((s) => other.contains(s)).map((s) => near(s, b)));
        if (d < own - 0.1) faults.push(`${name} of ${group.dataset.action} is nearer to ${other.dataset.action}`);
      }
    }
  });
  return faults;
}
