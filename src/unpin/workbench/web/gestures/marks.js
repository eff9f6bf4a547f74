/** Moving what the engine has drawn, at the rate of the pointer, until it draws anew. Works on the drawing in the page, not on the store. */
import { deformed, shiftAt, touched } from "../kernels/outline.js";

/**
 * @typedef {import("../kernels/outline.js").Shift} Shift
 * @typedef {(shifts: Shift[]) => void} Mover
 */

const NEAR_LABEL = 16;
const GIVEN = /^(dimension|extension|angle|slope|reference)$/;

/**
 * Finds once, at the start of a drag, what stands on the moved points; the mover then only writes. Dimensions are taken off while things move.
 * @param {SVGElement} root the drawing @param {[number, number][]} from the moved points in pt
 * @param {Map<string, number[]>} [carried] loads by their mark in the drawing, with the moved points that carry them: an arrow ends short of its point
 * @returns {Mover}
 */
export function take(root, from, carried = new Map()) {
  const still = from.map((spot) => ({ from: spot, to: spot }));
  /** @type {Mover[]} */
  const moves = [];
  for (const mark of /** @type {NodeListOf<SVGElement>} */ (root.querySelectorAll("path, circle, text"))) {
    const group = /** @type {SVGElement | null} */ (mark.closest("g[data-owner], g[data-action]"));
    const role = mark.getAttribute("class") ?? "";
    const before = mark.previousElementSibling?.getAttribute("class") ?? "";
    if (GIVEN.test(role) || (role === "head" && GIVEN.test(before))) {
      moves.push(() => mark.setAttribute("visibility", "hidden"));
      continue;
    }
    if (group && group !== root && root.contains(group) && group.getAttribute("class") !== "body") continue;
    if (mark.localName === "path") {
      const d = mark.getAttribute("d") ?? "";
      if (touched(d, still) !== "none") moves.push((shifts) => mark.setAttribute("d", deformed(d, shifts)));
    } else {
      const at = /** @type {[number, number]} */ ([
        Number(mark.getAttribute("cx") ?? mark.getAttribute("x")),
        Number(mark.getAttribute("cy") ?? mark.getAttribute("y")),
      ]);
      const held = shiftAt(at, still, mark.localName === "text" ? NEAR_LABEL : 0.06);
      if (held) moves.push(along(mark, still.indexOf(held)));
    }
  }
  for (const group of /** @type {NodeListOf<SVGGElement>} */ (
    root.querySelectorAll("g[data-owner]:not(.body), g[data-action]")
  )) {
    const load = carried.get(group.getAttribute("data-action") ?? "");
    const held = load?.length ? -1 : anchor(group, still);
    if (load?.length) moves.push(between(group, load));
    else if (held >= 0) moves.push(along(group, held));
  }
  return (shifts) => moves.forEach((move) => move(shifts));
}

/** Which moved point a group stands on, -1 for none. @param {SVGGElement} group @param {Shift[]} still @returns {number} */
function anchor(group, still) {
  for (const mark of group.querySelectorAll("path, circle")) {
    const d = mark.getAttribute("d");
    if (d) {
      const k = still.findIndex((s) => touched(d, [s]) !== "none");
      if (k >= 0) return k;
    } else {
      const held = shiftAt([Number(mark.getAttribute("cx")), Number(mark.getAttribute("cy"))], still);
      if (held) return still.indexOf(held);
    }
  }
  return -1;
}

/** @param {SVGElement} mark @param {number} k @returns {Mover} */
const along = (mark, k) => between(mark, [k]);

/** A mark that goes along with several points goes the mean of their ways. @param {SVGElement} mark @param {number[]} ks @returns {Mover} */
function between(mark, ks) {
  const own = mark.getAttribute("transform") ?? "";
  return (shifts) => {
    const [x, y] = [0, 1].map((axis) => ks.reduce((sum, k) => sum + shifts[k].to[axis] - shifts[k].from[axis], 0) / ks.length);
    mark.setAttribute("transform", `translate(${x} ${y}) ${own}`);
  };
}
