/**
 * A picture under the drawing. Two places marked in it whose coordinates are known set its size, its tilt and where it lies. Pure.
 * @typedef {[number, number]} Spot
 * @typedef {{a: number, b: number, x: number, y: number}} Lay metres of a pixel (u right, v down): X = a u + b v + x, Y = b u - a v + y
 */

/** @param {[Spot, Spot]} pixels @param {[Spot, Spot]} metres @returns {Lay | null} null when the two places are one */
export function laid(pixels, metres) {
  const [du, dv] = [pixels[1][0] - pixels[0][0], pixels[1][1] - pixels[0][1]];
  const [dX, dY] = [metres[1][0] - metres[0][0], metres[1][1] - metres[0][1]];
  const long = du * du + dv * dv;
  if (!long || !(dX * dX + dY * dY)) return null;
  const a = (dX * du - dY * dv) / long;
  const b = (dX * dv + dY * du) / long;
  return { a, b, x: metres[0][0] - a * pixels[0][0] - b * pixels[0][1], y: metres[0][1] - b * pixels[0][0] + a * pixels[0][1] };
}

/** Where a pixel of the picture lies. @param {Lay} lay @param {Spot} pixel @returns {Spot} metres */
export function metresOf({ a, b, x, y }, [u, v]) {
  return [a * u + b * v + x, b * u - a * v + y];
}

/** Which pixel lies at a place. @param {Lay} lay @param {Spot} metres @returns {Spot} */
export function pixelAt({ a, b, x, y }, [X, Y]) {
  const size = a * a + b * b;
  return [(a * (X - x) + b * (Y - y)) / size, (b * (X - x) - a * (Y - y)) / size];
}

/** The picture upright, `across` metres wide, its lower left corner at a place. @param {Spot} size pixels @param {Spot} at metres @param {number} across @returns {Lay} */
export function upright([wide, high], [X, Y], across) {
  const a = across / wide;
  return { a, b: 0, x: X, y: Y + a * high };
}

/** The transform of the picture on screen. @param {Lay} lay @param {{x: number, y: number, k: number}} view @returns {string} */
export function matrix({ a, b, x, y }, view) {
  const k = view.k;
  return `matrix(${k * a} ${-k * b} ${k * b} ${k * a} ${view.x + k * x} ${view.y - k * y})`;
}
