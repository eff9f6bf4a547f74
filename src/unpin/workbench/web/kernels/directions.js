/** The direction of a force as a problem file says it: round degrees in words. Pure. */

/** Degrees to which a hand turns an arrow: held still finer. */
export const ROUND = 5;
export const FINE = 1;

const AXES = /** @type {Record<number, string>} */ ({ 0: "right", 90: "up", 180: "left", 270: "down" });

/**
 * A direction on round degrees, anticlockwise from the right, and its words: an axis by its name, else so much above or below the level.
 * @param {number} degrees @param {number} [step] @returns {{degrees: number, words: string}}
 */
export function directionOf(degrees, step = ROUND) {
  const round = ((Math.round(degrees / step) * step) % 360 + 360) % 360;
  const right = round < 90 || round > 270;
  const level = right ? Math.min(round, 360 - round) : Math.abs(180 - round);
  return { degrees: round, words: AXES[round] ?? `at ${level} deg ${round < 180 ? "above" : "below"} ${right ? "right" : "left"}` };
}

/**
 * The next round direction from one that may not be round.
 * @param {number} degrees @param {1 | -1} sense anticlockwise or clockwise @param {number} step @returns {{degrees: number, words: string}}
 */
export function nextDirection(degrees, sense, step) {
  const place = degrees / step;
  const next = sense > 0 ? Math.floor(place + 1e-6) + 1 : Math.ceil(place - 1e-6) - 1;
  return directionOf(next * step, FINE);
}

/** Degrees anticlockwise from the right of the way from one place to another. @param {[number, number]} from @param {[number, number]} to y up @returns {number} */
export const angleOf = (from, to) => (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
