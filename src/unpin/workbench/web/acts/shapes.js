/** Where each thing is on the sheet: points and parts along their lines, arrows and symbols where the engine has drawn them. */
import { toScreen } from "../kernels/view.js";
import { corners } from "../kernels/outline.js";
import { store } from "../store.js";

/** @typedef {[number, number]} Spot @typedef {{left: number, top: number, right: number, bottom: number}} Box */
/** @typedef {{id: string, what: string, lines: Spot[][], box?: Box}} Shape pixels; a box where a symbol is touched anywhere in it */

/** @type {{svg: string, marks: Map<string, Spot[][]>}} */
let read = { svg: "", marks: new Map() };
/** @type {{svg: string, root: Element | null}} */
let last = { svg: "", root: null };

/**
 * The root of a drawing in a document of its own, which is never changed: the one before, if it is asked for again.
 * @param {string} svg @returns {Element}
 */
export function parsed(svg) {
  if (!last.root || last.svg !== svg) last = { svg, root: new DOMParser().parseFromString(svg, "image/svg+xml").documentElement };
  return /** @type {Element} */ (last.root);
}

/** The drawn marks of each owner in metres: corners of lines, centres and rims of circles. @param {import("../types.js").Figure} figure @returns {Map<string, Spot[][]>} */
export function marksOf(figure) {
  if (read.svg === figure.svg) return read.marks;
  const marks = new Map();
  const root = parsed(figure.svg);
  const metres = (/** @type {Spot} */ [x, y]) => /** @type {Spot} */ ([x / figure.scale, -y / figure.scale]);
  for (const group of root.querySelectorAll("g[data-owner]:not(.joint), g[data-action]")) {
    const load = group.getAttribute("data-action");
    const owner = load ? `load ${load}` : `own ${group.getAttribute("data-owner")}`;
    const lines = [...group.querySelectorAll("path, circle")].flatMap((mark) => {
      const role = mark.getAttribute("class") ?? "";
      if (/^(head|tail|leader|hatch|slope|angle|reference)$/.test(role)) return [];
      const d = mark.getAttribute("d");
      const line = d
        ? corners(d)
        : rim(Number(mark.getAttribute("cx")), Number(mark.getAttribute("cy")), Number(mark.getAttribute("r")));
      return line.length ? [line.map(metres)] : [];
    });
    marks.set(owner, [...(marks.get(owner) ?? []), ...lines]);
  }
  read = { svg: figure.svg, marks };
  return marks;
}

/** @param {number} x @param {number} y @param {number} r @returns {Spot[]} */
function rim(x, y, r) {
  return Array.from({ length: 25 }, (_, k) => [x + r * Math.cos((k * Math.PI) / 12), y + r * Math.sin((k * Math.PI) / 12)]);
}

/** Everything on the sheet, in the order of the file. @param {import("../types.js").State} [now] @returns {Shape[]} */
export function shapes(now = store.get()) {
  const { drawn, view } = now;
  if (!drawn?.things) return [];
  const at = new Map((drawn.points ?? []).map((p) => [p.name, toScreen(view, p.at)]));
  const marks = drawn.figure?.scale ? marksOf(drawn.figure) : new Map();
  return drawn.things.flatMap((t) => {
    const line = /** @type {Spot[]} */ (t.points.map((n) => at.get(n)).filter((s) => s !== undefined));
    const named = t.draws.flatMap((d) => marks.get(t.what === "load" ? `load ${d.replace(/\..*$/, "")}` : `own ${d}`) ?? []);
    const own = named.map((l) => l.map((/** @type {Spot} */ s) => toScreen(view, s)));
    if (t.what === "point" || (line.length > 1 && t.what !== "load" && t.what !== "cord"))
      return line.length ? [{ id: t.id, what: t.what, lines: [line] }] : [];
    if (t.what === "connection" && own.length) return [{ id: t.id, what: t.what, lines: own, box: around(own) }];
    const lines = own.length ? own : line.length ? [line] : [];
    return lines.length ? [{ id: t.id, what: t.what, lines }] : [];
  });
}

/** The lengths that the figure shows: the number and its line. @param {import("../types.js").State} [now] @returns {Shape[]} */
export function lengths(now = store.get()) {
  const figure = now.drawn?.figure;
  if (!figure?.scale) return [];
  const by = now.view.k / figure.scale;
  const spot = (/** @type {Spot} */ [x, y]) => /** @type {Spot} */ ([now.view.x + by * x, now.view.y + by * y]);
  return (figure.lengths ?? []).map((l) => {
    const [[left, top], [right, bottom]] = [spot([l.box[0], l.box[1]]), spot([l.box[2], l.box[3]])];
    return { id: l.id, what: "length", lines: l.lines.map((line) => line.map(spot)), box: { left, top, right, bottom } };
  });
}

/** Loads by their mark in the drawing, with places in a list of points that carry them; without a point of its own, those of its part. @param {string[]} names @returns {Map<string, number[]>} */
export function carriedLoads(names) {
  const things = store.get().drawn?.things ?? [];
  const loads = things.filter((t) => t.what === "load");
  return new Map(
    loads.flatMap((t) => {
      const on = t.points.length ? t.points : (things.find((p) => p.what === "part" && p.name === t.part)?.points ?? []);
      const ks = on.map((n) => names.indexOf(n)).filter((k) => k >= 0);
      // Of a load between two points only one may be in the hand: then the engine's next drawing tells.
      return ks.length && ks.length === on.length ? t.draws.map((d) => [d.replace(/\..*$/, ""), ks]) : [];
    }),
  );
}

/** @param {Spot[][]} lines @returns {Box} */
function around(lines) {
  const [xs, ys] = [0, 1].map((k) => lines.flatMap((l) => l.map((s) => s[k])));
  return { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) };
}
