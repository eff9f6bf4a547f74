/** A force turned, or carried to another point, as a change of its phrase; and how its arrow stands on the sheet. */
import { nextDirection, FINE } from "../kernels/directions.js";
import { toScreen } from "../kernels/view.js";
import { point, store, thing } from "../store.js";
import { shapes } from "./shapes.js";
import { change } from "./editing.js";

/** @typedef {[number, number]} Spot */

const KEYS = 15;

/**
 * How the arrow of a force stands: its point, and the end that is away from it, in pixels; whether that is its tail. Null for what is no arrow.
 * @param {string} id @returns {{at: Spot, free: Spot, near: Spot, tail: boolean} | null}
 */
export function arrow(id) {
  const load = thing(id);
  const place = load && point(load.points[0]);
  if (!load || !place || typeof load.angle !== "number") return null;
  const at = toScreen(store.get().view, place.at);
  const shaft = shapes()
    .find((s) => s.id === id)
    ?.lines.find((l) => l.length === 2);
  if (!shaft) return null;
  const [near, free] = [...shaft].sort((p, q) => far(p, at) - far(q, at));
  const along = (load.angle * Math.PI) / 180;
  return { at, near, free, tail: (free[0] - at[0]) * Math.cos(along) - (free[1] - at[1]) * Math.sin(along) < 0 };
}

/** @param {Spot} p @param {Spot} q */
const far = (p, q) => Math.hypot(p[0] - q[0], p[1] - q[1]);

/** Whether a hand at a place has the end of the arrow that is away from its point. @param {NonNullable<ReturnType<typeof arrow>>} a @param {Spot} spot */
export const atFreeEnd = (a, spot) => far(spot, a.free) < far(spot, a.near);

/** @param {string} id @param {string} way @param {string} [mark] */
export const turn = (id, way, mark) => change([{ do: "turn", id, way }], mark);

/** Whether a force cannot be turned by hand; then it is said why. @param {string} id @returns {boolean} */
export function still(id) {
  const why = thing(id)?.still;
  if (why) store.set({ notice: why, word: why });
  return !!why;
}

/** @param {string} id @param {string} to name of a point */
export const carry = (id, to) => change([{ do: "carry", id, from: thing(id)?.points[0], to }]);

/** A force turned to the next round direction by keys: the whole run is one step. @param {string} id @param {1 | -1} sense anticlockwise or clockwise @param {boolean} fine */
export function turnOn(id, sense, fine) {
  if (still(id)) return Promise.resolve(null);
  const angle = thing(id)?.angle;
  return typeof angle === "number" ? turn(id, nextDirection(angle, sense, fine ? FINE : KEYS).words, `turn ${id}`) : Promise.resolve(null);
}
