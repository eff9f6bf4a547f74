/** A small motion of a plane body as a transform of the engine's drawing, whose y points down. Pure. */

/**
 * Velocity of a place in a twist (velocity of the body's point at the origin, and turn, anticlockwise positive).
 * @param {[number, number, number]} twist metres a second twice, radians a second @param {[number, number]} at metres @returns {[number, number]}
 */
export function velocity([vx, vy, w], [x, y]) {
  return [vx - w * y, vy + w * x];
}

/**
 * The body moved for a time `t` as a rigid body would: the transform attribute of its drawing at `scale` pt a metre.
 * @param {[number, number, number]} twist @param {number} t @param {number} scale @returns {string}
 */
export function carried([vx, vy, w], t, scale) {
  if (Math.abs(w) < 1e-12) return `translate(${fix(vx * t * scale)} ${fix(-vy * t * scale)})`;
  return `rotate(${fix((-w * t * 180) / Math.PI)} ${fix((-vy / w) * scale)} ${fix((-vx / w) * scale)})`;
}

/** Largest speed among places. @param {Record<string, [number, number, number]>} twists @param {[number, number][]} places @returns {number} */
export function fastest(twists, places) {
  return Math.max(0, ...Object.values(twists).flatMap((t) => places.map((p) => Math.hypot(...velocity(t, p)))));
}

/** @param {number} v @returns {number} */
const fix = (v) => Math.round(v * 1000) / 1000;
