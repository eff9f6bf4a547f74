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
    // Turned text is measured as it lies: its sides in its own frame, and the corners that frame gives on the page.
    const m = turn ? turn.matrix : { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };
    const corners = [[left, top], [right, top], [right, bottom], [left, bottom]].map(([x, y]) => [m.a * x + m.c * y + m.e, m.b * x + m.d * y + m.f]);
    const xs = corners.map((c) => c[0]), ys = corners.map((c) => c[1]);
    return { l: Math.min(...xs), r: Math.max(...xs), t: Math.min(...ys), b: Math.max(...ys), own: { l: left, r: right, t: top, b: bottom }, m, corners };
  };
  const meets = (p, q) => {
    // Two boxes are clear of each other when a line along a side of one of them parts them.
    for (const { m } of [p, q]) for (const [x, y] of [[m.a, m.b], [m.c, m.d]]) {
      const one = p.corners.map((c) => c[0] * x + c[1] * y), two = q.corners.map((c) => c[0] * x + c[1] * y);
      if (Math.max(...one) <= Math.min(...two) + 0.1 || Math.max(...two) <= Math.min(...one) + 0.1) return false;
    }
    return true;
  };
  const away = (p, x, y, less = 0) => {
    const { m, own } = p, u = x - m.e, v = y - m.f;
    const [a, b] = [m.a * u + m.b * v, m.c * u + m.d * v];
    return Math.hypot(Math.max(own.l + less - a, 0, a - own.r + less), Math.max(own.t + less - b, 0, b - own.b + less));
  };
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
  const near = (s, b, less = 0) => Math.min(...dots.get(s).map(([x, y]) => away(b, x, y, less)));
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
      if (near(s, b, 0.15) < half) faults.push(`${name} meets a ${s.getAttribute("class")} of ${(s.closest("[data-action], [data-owner]") || s).getAttribute("data-action") || (s.closest("[data-owner]") || s).getAttribute("data-owner") || ""}`);
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
