/** What a hand does on the sheet, as changes of the text: points land, move and are copied, always on round values. */
import { settled, stepFor } from "../kernels/round.js";
import { toMetres } from "../kernels/view.js";
import { within } from "../kernels/spans.js";
import { perMetre, point, pointsOf, store, text } from "../store.js";
import { change } from "./editing.js";
import { touch, touchPoints } from "./saying.js";

/** @typedef {import("../types.js").Spot} Spot */

const REACH = 7;

/** The step on which things land at this size, in units of the file. @returns {number} */
export const step = () => stepFor(store.get().view.k / perMetre());

/** Round values near a place. @param {Spot} metres @param {string[]} [but] points that do not count @returns {{shown: [string, string], at: Spot}} */
export function round(metres, but = []) {
  const { drawn, view } = store.get();
  const others = (drawn?.points ?? []).filter((p) => !but.includes(p.name));
  return settled(metres, perMetre(), step(), others, REACH / view.k);
}

/** @param {Spot} pixels @param {string[]} [but] */
export const roundAt = (pixels, but) => round(toMetres(store.get().view, pixels), but);

/** A point on bare paper. @param {[string, string]} shown @returns {Promise<void>} */
export async function land(shown) {
  const made = await change([{ do: "point", name: null, at: shown }]);
  if (made) await touch(made.slice(-1));
}

/**
 * A stroke: names of points it passed, or places where it passed none, in order. New places become points, and the sentence offers what
 * the stroke can be.
 * @param {(string | [string, string])[]} stops @returns {Promise<void>}
 */
export async function stroke(stops) {
  const places = stops.filter((s) => typeof s !== "string");
  const made = places.length ? await change(places.map((at) => ({ do: "point", name: null, at }))) : [];
  if (!made) return;
  const names = made.map((id) => id.replace(/^point /, ""));
  await touchPoints(stops.map((s) => (typeof s === "string" ? s : /** @type {string} */ (names.shift()))));
}

/**
 * The points that go along when something touched is dragged: its own, without those that are made from another of them.
 * @param {string} id @returns {string[]}
 */
export function carriedBy(id) {
  const names = pointsOf(id);
  return names.filter((name) => {
    const span = point(name)?.span;
    const said = span ? within(text(), span) : "";
    return !names.some((other) => other !== name && new RegExp(`(^|[^\\w'])${other}($|[^\\w'])`, "u").test(said));
  });
}

/** Points at new places, as one step. @param {{name: string, at: [string, string]}[]} moves @param {string} [mark] */
export const move = (moves, mark) => change(moves.map((m) => ({ do: "point", ...m })), mark);

/** What is touched moves by so many steps. @param {Spot} by steps right and up @returns {Promise<unknown>} */
export function nudge([right, up]) {
  const { touched } = store.get();
  const size = step() / perMetre();
  const names = [...new Set(touched.flatMap(carriedBy))];
  const moves = names.flatMap((name) => {
    const at = point(name)?.at;
    return at ? [{ name, at: roundly([at[0] + right * size, at[1] + up * size]) }] : [];
  });
  return moves.length ? move(moves, `nudge ${names.join(" ")}`) : Promise.resolve();
}

/** @param {Spot} metres @returns {[string, string]} */
function roundly(metres) {
  return settled(metres, perMetre(), step(), [], 0).shown;
}

/** @type {{points: string[], phrases: {section: string, phrase: string}[]} | null} */
let copied = null;

/** Remember what is touched, with the points it stands on. */
export function copy() {
  const { touched, drawn } = store.get();
  const points = [...new Set(touched.flatMap(pointsOf))];
  if (points.length)
    copied = { points, phrases: touched.flatMap((id) => drawn?.things?.filter((t) => t.id === id && t.points.length) ?? []).map((t) => ({ section: t.section, phrase: t.phrase })) };
}

/** The same again, three steps to the right and down, on new points. @returns {Promise<void>} */
export async function paste() {
  if (!copied) return;
  const size = (3 * step()) / perMetre();
  const olds = copied.points.filter((n) => point(n));
  const made = await change(olds.map((n) => {
    const at = /** @type {import("../types.js").Point} */ (point(n)).at;
    return { do: "point", name: null, at: roundly([at[0] + size, at[1] - size]) };
  }));
  if (!made) return;
  const to = new Map(olds.map((n, k) => [n, made[k].replace(/^point /, "")]));
  const says = copied.phrases.map(({ section, phrase }) => ({ do: "say", section, name: null, phrase: phrase.replace(/[^\W\d]\w*'*/gu, (w) => to.get(w) ?? w) }));
  const things = says.length ? await change(says) : [];
  await touch(things?.length ? things : made);
}
