/**
 * Outlines of the engine's drawing, which are straight stretches (M, L, Z): where a point is moved, the corners that stand on it go along. Pure.
 * @typedef {[number, number]} Spot
 * @typedef {{from: Spot, to: Spot}} Shift both in the pt of the drawing
 */

const STEP = /([MLZ])\s*(?:(-?[\d.]+)[ ,]+(-?[\d.]+))?/g;

/** The corners of an outline, in order. @param {string} d @returns {Spot[]} */
export function corners(d) {
  return [...d.matchAll(STEP)].filter((m) => m[1] !== "Z").map((m) => [Number(m[2]), Number(m[3])]);
}

/** @param {Spot} spot @param {Shift[]} shifts @param {number} near @returns {Shift | undefined} */
export function shiftAt([x, y], shifts, near = 0.06) {
  return shifts.find((s) => Math.abs(s.from[0] - x) <= near && Math.abs(s.from[1] - y) <= near);
}

/**
 * The outline with every corner that stands on a moved point taken along.
 * @param {string} d @param {Shift[]} shifts @returns {string}
 */
export function deformed(d, shifts) {
  return d.replace(STEP, (all, letter, x, y) => {
    if (letter === "Z" || x === undefined) return all;
    const shift = shiftAt([Number(x), Number(y)], shifts);
    return shift ? `${letter}${shift.to[0].toFixed(2)} ${shift.to[1].toFixed(2)}` : `${letter}${x} ${y}`;
  });
}

/** Whether all, some or none of its corners stand on moved points. @param {string} d @param {Shift[]} shifts @returns {"all" | "some" | "none"} */
export function touched(d, shifts) {
  const on = corners(d).map((c) => shiftAt(c, shifts) !== undefined);
  return on.length && on.every(Boolean) ? "all" : on.some(Boolean) ? "some" : "none";
}
