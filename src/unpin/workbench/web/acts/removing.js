/** What goes with a thing that is taken away, in words. */
import { say } from "../words.js";

/** @typedef {import("../types.js").Thing} Thing */

const NAMED = ["points", "members", "links", "discs", "blocks", "cords", "knots", "rings"];

/**
 * The things that a change has taken away beside those that were meant; "" for none.
 * @param {Thing[]} before @param {Thing[]} after @param {string[]} meant ids @returns {string}
 */
export function gone(before, after, meant) {
  const left = after.map(same);
  const lost = before.filter((t) => {
    const k = left.indexOf(same(t));
    if (k >= 0) left.splice(k, 1);
    // The pin of a point is said by the point itself: where too little meets there for a pin, the point may well remain.
    return k < 0 && t.section && !(t.what === "connection" && t.section === "points") && !meant.includes(t.id);
  });
  // A bar that is only led through fewer points is still there under its name.
  const really = lost.filter((t) => !(NAMED.includes(t.section) && after.some((a) => a.id === t.id)));
  const sections = [...new Set(really.map((t) => t.section))];
  if (!sections.length) return "";
  const kinds = sections.map((section) => {
    const there = really.filter((t) => t.section === section);
    const kind = NAMED.includes(section) || section === "supports" || section === "loads" ? section : "other";
    return say(`gone.${kind}`, { count: there.length, names: there.map((t) => t.name || t.phrase).join(", ") });
  });
  return say("gone.told", { things: kinds.join(", ") });
}

/** Numbers of loads shift when one goes; what is said of them does not. @param {Thing} t */
const same = (t) => (NAMED.includes(t.section) ? t.id : `${t.section} ${t.phrase}`);
