/**
 * Between metres, X to the right and Y up, and pixels on screen, x to the right and y down: x = view.x + view.k X, y = view.y - view.k Y.
 * Pure.
 * @typedef {{x: number, y: number, k: number}} View k is pixels a metre
 * @typedef {[number, number]} Spot
 */

/** @param {View} view @param {Spot} metres @returns {Spot} */
export function toScreen(view, [X, Y]) {
  return [view.x + view.k * X, view.y - view.k * Y];
}

/** @param {View} view @param {Spot} pixels @returns {Spot} */
export function toMetres(view, [x, y]) {
  return [(x - view.x) / view.k, (view.y - y) / view.k];
}

/** Larger by a factor, about a place on screen that stays where it is. @param {View} view @param {Spot} about @param {number} by @returns {View} */
export function zoomed(view, [x, y], by) {
  const k = Math.min(Math.max(view.k * by, 1e-4), 1e7);
  const real = k / view.k;
  return { k, x: x - (x - view.x) * real, y: y - (y - view.y) * real };
}

/** @param {View} view @param {Spot} by pixels @returns {View} */
export function panned(view, [dx, dy]) {
  return { ...view, x: view.x + dx, y: view.y + dy };
}

/**
 * The view in which a figure of the engine fills a window. The figure has `scale` pt a metre, and its box is in pt.
 * @param {{scale: number, origin: Spot, size: Spot}} figure @param {Spot} window pixels @param {number} [largest] most pixels a pt
 * @param {number} [margin] pixels @returns {View}
 */
export function fitted(figure, [wide, high], largest = 2, margin = 28) {
  const by = Math.max(0.2, Math.min(largest, (wide - 2 * margin) / figure.size[0], (high - 2 * margin) / figure.size[1]));
  return {
    k: by * figure.scale,
    x: wide / 2 - by * (figure.origin[0] + figure.size[0] / 2),
    y: high / 2 - by * (figure.origin[1] + figure.size[1] / 2),
  };
}

/**
 * The figure with room for points that it does not draw. Without a figure, a figure of the points alone, at a size at which they have air around them.
 * @param {{scale: number, origin: Spot, size: Spot} | null | undefined} figure @param {Spot[]} points metres @param {Spot} pane pixels
 * @param {number} k pixels a metre for a single point @param {number} [air] pt around a point, for its name
 * @returns {{scale: number, origin: Spot, size: Spot} | null} null when there is nothing
 */
export function widened(figure, points, pane, k, air = 18) {
  if (!figure?.scale && !points.length) return null;
  const scale = figure?.scale || airy(points, pane, k) / PT;
  const [xs, ys] = [points.map((p) => p[0] * scale), points.map((p) => -p[1] * scale)];
  const [left, top] = figure?.scale ? figure.origin : [xs[0] - air, ys[0] - air];
  const [right, foot] = figure?.scale ? [left + figure.size[0], top + figure.size[1]] : [xs[0] + air, ys[0] + air];
  const origin = /** @type {Spot} */ ([Math.min(left, ...xs.map((x) => x - air)), Math.min(top, ...ys.map((y) => y - air))]);
  const end = [Math.max(right, ...xs.map((x) => x + air)), Math.max(foot, ...ys.map((y) => y + air))];
  return { scale, origin, size: [end[0] - origin[0], end[1] - origin[1]] };
}

/** Pixels of a pt on an empty sheet. */
const PT = 110 / 60;

/** Pixels a metre at which points take six tenths of the sheet. @param {Spot[]} points @param {Spot} pane @param {number} k for a single place */
function airy(points, [wide, high], k) {
  const span = (/** @type {0 | 1} */ axis) => Math.max(...points.map((p) => p[axis])) - Math.min(...points.map((p) => p[axis]));
  const [dx, dy] = [span(0), span(1)];
  return dx || dy ? Math.min(dx ? (0.6 * wide) / dx : Infinity, dy ? (0.6 * high) / dy : Infinity) : k;
}

/** Whether a stretch comes through a window, which begins at 0, 0. @param {Spot} p @param {Spot} q @param {Spot} pane @param {number} [edge] pixels at its rim that do not count @returns {boolean} */
export function through(p, q, pane, edge = 0) {
  let [from, to] = [0, 1];
  for (const axis of /** @type {const} */ ([0, 1])) {
    const [least, most, way] = [edge - p[axis], pane[axis] - edge - p[axis], q[axis] - p[axis]];
    if (!way && (least > 0 || most < 0)) return false;
    if (way) [from, to] = [Math.max(from, Math.min(least / way, most / way)), Math.min(to, Math.max(least / way, most / way))];
  }
  return from <= to;
}

/** Pixels at the rim in which a place is not seen, and those kept free beside one that is brought into view, for its name and support, and beside one that stays. */
const [EDGE, AIR, RIM] = [3, 48, 16];

/**
 * The view moved just so far that places are seen, and smaller only where they and what is to stay in sight do not fit; as it is where they are seen.
 * @param {View} view @param {Spot[]} places metres @param {Spot[]} others metres: those of them that are seen stay in sight @param {Spot} pane pixels @returns {View}
 */
export function sighted(view, places, others, pane) {
  const seen = (/** @type {Spot} */ at) => through(toScreen(view, at), toScreen(view, at), pane, EDGE);
  if (!places.length || places.every(seen)) return view;
  const stay = others.filter(seen);
  const air = Math.min(AIR, pane[0] / 4, pane[1] / 4);
  const room = (/** @type {0 | 1} */ axis) => {
    const [own, all] = [places, [...places, ...stay]].map((some) => some.map((at) => at[axis]));
    const [least, most] = [Math.min(...all), Math.max(...all)];
    const kept = (own.includes(least) ? air : RIM) + (own.includes(most) ? air : RIM);
    return (pane[axis] - kept) / Math.max(view.k * (most - least), 1e-9);
  };
  const by = Math.min(1, room(0), room(1));
  const near = by < 1 ? zoomed(view, [pane[0] / 2, pane[1] / 2], by) : view;
  const [free, less] = [places, stay].map((all) => all.map((at) => toScreen(near, at)));
  const shift = [0, 1].map((axis) => {
    const least = Math.min(...free.map((s) => s[axis] - air), ...less.map((s) => s[axis] - RIM));
    const most = Math.max(...free.map((s) => s[axis] + air), ...less.map((s) => s[axis] + RIM));
    return Math.max(0, -least) + Math.min(0, pane[axis] - most);
  });
  return panned(near, /** @type {Spot} */ (shift));
}

/** The view of two fingers that were at `from` and now are at `to`. @param {View} view @param {[Spot, Spot]} from @param {[Spot, Spot]} to @returns {View} */
export function pinched(view, from, to) {
  const span = (/** @type {[Spot, Spot]} */ [p, q]) => Math.hypot(q[0] - p[0], q[1] - p[1]);
  const middle = (/** @type {[Spot, Spot]} */ [p, q]) => /** @type {Spot} */ ([(p[0] + q[0]) / 2, (p[1] + q[1]) / 2]);
  const [a, b] = [middle(from), middle(to)];
  return panned(zoomed(view, a, span(to) / Math.max(span(from), 1)), [b[0] - a[0], b[1] - a[1]]);
}
