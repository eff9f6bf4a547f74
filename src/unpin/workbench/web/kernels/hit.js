/**
 * What lies under a hand. Points first, then lines; of several at one place, the nearest first. Pure; all in pixels.
 * @typedef {[number, number]} Spot
 */

/** @param {Spot} p @param {Spot} a @param {Spot} b @returns {number} distance of p from the stretch a b */
export function fromStretch(p, a, b) {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const long = dx * dx + dy * dy;
  const t = long ? Math.max(0, Math.min(1, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / long)) : 0;
  return Math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy);
}

/** @param {Spot} p @param {Spot[]} line @returns {number} */
export function fromLine(p, line) {
  if (line.length === 1) return Math.hypot(p[0] - line[0][0], p[1] - line[0][1]);
  let least = Infinity;
  for (let k = 1; k < line.length; k++) least = Math.min(least, fromStretch(p, line[k - 1], line[k]));
  return least;
}

/** @param {Spot} p @param {{left: number, top: number, right: number, bottom: number}} box @returns {number} 0 inside */
export function fromBox(p, box) {
  return Math.hypot(Math.max(box.left - p[0], 0, p[0] - box.right), Math.max(box.top - p[1], 0, p[1] - box.bottom));
}

/**
 * Ids of what is within reach: points first, then symbols and arrows, then what runs along lines; each by distance.
 * @param {Spot} p @param {{id: string, what: string, lines: Spot[][], box?: {left: number, top: number, right: number, bottom: number}}[]} shapes
 * @param {number} reach @returns {string[]}
 */
export function under(p, shapes, reach) {
  // What runs along a line from point to point is met like a part: a link is as thin as a hair, and its whole reach counts.
  const rank = (/** @type {{what: string, box?: object}} */ s) =>
    s.what === "point" ? 0 : s.what === "part" || (s.what === "connection" && !s.box) ? 2 : 1;
  return shapes
    .map((s, order) => ({
      id: s.id,
      order,
      // A length is met at its number and along its line, a symbol anywhere in it.
      far: Math.min(s.box ? fromBox(p, s.box) : Infinity, ...(s.box && s.what !== "length" ? [] : s.lines.map((l) => fromLine(p, l)))),
      rank: rank(s),
    }))
    .filter((s) => s.far <= (s.rank === 1 ? reach * 0.7 : reach))
    .sort((a, b) => a.rank - b.rank || a.far - b.far || a.order - b.order)
    .map((s) => s.id);
}

/** The next of several at one place, when the same place is touched again. @param {string[]} ids @param {string | undefined} now @returns {string | undefined} */
export function following(ids, now) {
  const k = now === undefined ? -1 : ids.indexOf(now);
  return k < 0 ? ids[0] : ids[(k + 1) % ids.length];
}

/**
 * Reading order: rows from the top, each from the left; places whose heights differ by less than `row` share one.
 * @template {{at: Spot}} T @param {T[]} things pixels @param {number} [row] @returns {T[]}
 */
export function reading(things, row = 24) {
  const sorted = [...things].sort((a, b) => a.at[1] - b.at[1] || a.at[0] - b.at[0]);
  /** @type {T[][]} */
  const rows = [];
  for (const thing of sorted) {
    const last = rows[rows.length - 1];
    if (last && thing.at[1] - last[0].at[1] < row) last.push(thing);
    else rows.push([thing]);
  }
  return rows.flatMap((r) => r.sort((a, b) => a.at[0] - b.at[0]));
}
