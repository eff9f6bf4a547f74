/** Round values: where a hand lands when it points at bare paper, and how such a value is written. Pure. */

const STEPS = [1, 2, 5];

/**
 * The step of the grid, in units of the file: 1, 2 or 5 times a power of ten, at least `least` pixels wide on screen.
 * @param {number} pixels pixels on screen for one unit of the file
 * @param {number} [least] @returns {number}
 */
export function stepFor(pixels, least = 9) {
  const wanted = least / pixels;
  const power = 10 ** Math.floor(Math.log10(wanted));
  for (const s of STEPS) if (s * power >= wanted * (1 - 1e-9)) return s * power;
  return 10 * power;
}

/** The nearest multiple of a step. @param {number} value @param {number} step @returns {number} */
export function landed(value, step) {
  const on = Math.round(value / step) * step;
  return Object.is(on, -0) ? 0 : on;
}

/**
 * A multiple of a step as text, with no more decimals than the step has: 0.30000000000000004 is written 0.3.
 * @param {number} value @param {number} step @returns {string}
 */
export function written(value, step) {
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const text = landed(value, step).toFixed(Math.min(decimals, 12));
  const short = decimals ? text.replace(/0+$/, "").replace(/\.$/, "") : text;
  return short === "-0" ? "0" : short;
}

/**
 * A place in metres on round values of the file: its coordinates as text and, again in metres, where that is.
 * @param {[number, number]} at metres @param {number} perMetre units of the file in a metre @param {number} step in units of the file
 * @returns {{shown: [string, string], at: [number, number]}}
 */
export function place(at, perMetre, step) {
  const shown = /** @type {[string, string]} */ (at.map((v) => written(v * perMetre, step)));
  return { shown, at: [Number(shown[0]) / perMetre, Number(shown[1]) / perMetre] };
}

/**
 * The same, but level with or straight above a point that is there already when that is within reach: lines come out straight.
 * @param {[number, number]} at metres @param {number} perMetre @param {number} step @param {{at: [number, number], shown: [string, string]}[]} others
 * @param {number} reach metres @returns {{shown: [string, string], at: [number, number]}}
 */
export function settled(at, perMetre, step, others, reach) {
  const round = place(at, perMetre, step);
  for (const axis of /** @type {const} */ ([0, 1])) {
    const gap = (/** @type {{at: [number, number]}} */ p) => Math.abs(p.at[axis] - at[axis]);
    const near = others.filter((p) => gap(p) <= reach && !Number.isNaN(Number(p.shown[axis]))).sort((p, q) => gap(p) - gap(q))[0];
    if (near && gap(near) < Math.abs(round.at[axis] - at[axis]) + 1e-12) {
      round.at[axis] = near.at[axis];
      round.shown[axis] = near.shown[axis];
    }
  }
  return round;
}

/**
 * A place on the straight way from one point to another where the coordinate that changes most is round: which coordinate, its value as text, and where that is.
 * @param {[number, number]} at metres @param {[number, number]} from metres @param {[number, number]} to metres @param {number} perMetre @param {number} step
 * @returns {{axis: "x" | "y", value: string, at: [number, number]}}
 */
export function along(at, from, to, perMetre, step) {
  const d = [to[0] - from[0], to[1] - from[1]];
  const long = d[0] * d[0] + d[1] * d[1] || 1;
  const t = Math.max(0, Math.min(1, ((at[0] - from[0]) * d[0] + (at[1] - from[1]) * d[1]) / long));
  const most = Math.abs(d[0]) >= Math.abs(d[1]) ? 0 : 1;
  const value = written((from[most] + t * d[most]) * perMetre, step);
  const s = (Number(value) / perMetre - from[most]) / (d[most] || 1);
  return { axis: most ? "y" : "x", value, at: [from[0] + s * d[0], from[1] + s * d[1]] };
}
