/** What a hand does on the sheet, as changes of the text: points land, move and are copied, always on round values. */
import { along, settled, stepFor } from "../kernels/round.js";
import { fromStretch } from "../kernels/hit.js";
import { toMetres, toScreen } from "../kernels/view.js";
import { within } from "../kernels/spans.js";
import { perMetre, point, pointsOf, store, text, thing } from "../store.js";
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

/**
 * A new place: on bare paper two coordinates; on a part a point of it, which the part is then led through.
 * @typedef {{at: [string, string] | string, metres: Spot, id?: string, after?: string}} Place
 */

/** The place under a hand. @param {Spot} pixels @param {string} [on] id of the part that lies there @returns {Place} */
export function placeAt(pixels, on) {
  const { view } = store.get();
  const metres = toMetres(view, pixels);
  const part = on?.startsWith("part ") ? thing(on) : undefined;
  const names = part && part.points.length > 1 ? part.points : [];
  const stretches = names.slice(1).map((b, k) => ({ a: names[k], b, from: point(names[k])?.at, to: point(b)?.at }));
  const near = stretches
    .filter((s) => s.from && s.to)
    .map((s) => ({
      ...s,
      far: fromStretch(pixels, toScreen(view, /** @type {Spot} */ (s.from)), toScreen(view, /** @type {Spot} */ (s.to))),
    }))
    .sort((p, q) => p.far - q.far)[0];
  if (!near || !part) {
    const r = round(metres);
    return { at: r.shown, metres: r.at };
  }
  const [from, to] = [/** @type {Spot} */ (near.from), /** @type {Spot} */ (near.to)];
  const level = from[0] === to[0] || from[1] === to[1];
  const r = round(metres);
  if (level && fromStretch(r.at, from, to) < 1e-9) return { at: r.shown, metres: r.at, id: part.id, after: near.a };
  const there = along(metres, from, to, perMetre(), step());
  return { at: `on ${near.a} ${near.b} at ${there.axis} = ${there.value}`, metres: there.at, id: part.id, after: near.a };
}

let strokes = 0;

/** Make places into points, as one step with what follows under the same mark. @param {Place[]} places @param {string} mark @returns {Promise<string[] | null>} names */
async function founded(places, mark) {
  if (!places.length) return [];
  const made = await change(
    places.map((p) => ({ do: "point", name: null, at: p.at })),
    mark,
  );
  if (!made) return null;
  const names = made.map((id) => id.replace(/^point /, ""));
  const led = places.flatMap((p, k) => (p.id ? [{ do: "through", id: p.id, point: names[k], after: p.after }] : []));
  if (led.length && !(await change(led, mark))) return null;
  return names;
}

/** A point where the hand is. @param {Place} place @returns {Promise<void>} */
export async function land(place) {
  const names = await founded([place], `stroke ${++strokes}`);
  if (names) await touchPoints(names);
}

/**
 * A stroke: names of points it passed, or places where it passed none, in order. New places become points, and the sentence offers what
 * the stroke can be.
 * @param {(string | Place)[]} stops @returns {Promise<void>}
 */
export async function stroke(stops) {
  const names = await founded(
    stops.filter((s) => typeof s !== "string"),
    `stroke ${++strokes}`,
  );
  if (!names) return;
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
export const move = (moves, mark) =>
  change(
    moves.map((m) => ({ do: "point", ...m })),
    mark,
  );

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
    copied = {
      points,
      phrases: touched
        .flatMap((id) => drawn?.things?.filter((t) => t.id === id && t.points.length) ?? [])
        .map((t) => ({ section: t.section, phrase: t.phrase })),
    };
}

/** The same again, three steps to the right and down, on new points. @returns {Promise<void>} */
export async function paste() {
  if (!copied) return;
  const size = (3 * step()) / perMetre();
  const olds = copied.points.filter((n) => point(n));
  const made = await change(
    olds.map((n) => {
      const at = /** @type {import("../types.js").Point} */ (point(n)).at;
      return { do: "point", name: null, at: roundly([at[0] + size, at[1] - size]) };
    }),
  );
  if (!made) return;
  const to = new Map(olds.map((n, k) => [n, made[k].replace(/^point /, "")]));
  const says = copied.phrases.map(({ section, phrase }) => ({
    do: "say",
    section,
    name: null,
    phrase: phrase.replace(/[^\W\d]\w*'*/gu, (w) => to.get(w) ?? w),
  }));
  const things = says.length ? await change(says) : [];
  await touch(things?.length ? things : made);
}
