/** Touching things and saying something of them: what the sentence at the foot is about, and what it offers. */
import { latest, send } from "../net.js";
import { say } from "../words.js";
import { store, text, thing } from "../store.js";
import { atRest, change } from "./editing.js";
import { gone } from "./removing.js";
import { fresh, offered, stale } from "./offering.js";

/** @typedef {import("../types.js").Saying} Saying */

let asked = 0;
/** How often a key has changed a field: what has been typed since a question was sent is never overwritten by its reply. */
let strokes = 0;

/**
 * Touch things; nothing for the whole.
 * @param {string[]} ids @param {boolean} [held] @param {number} [since] strokes of the keys when this was asked for
 * @param {{under?: string[], at?: import("../types.js").Spot, near?: number}} [hand] what else lies where a hand has pressed, and how near to it, metres @returns {Promise<void>}
 */
export async function touch(ids, held = false, since = strokes, hand = {}) {
  const mine = ++asked;
  const one = ids.length === 1 ? ids[0] : "";
  const role = one ? /** @type {const} */ ("phrase") : /** @type {const} */ ("new");
  const typing = since !== strokes && store.get().role === role;
  offered([]);
  store.set({
    touched: ids,
    held,
    role,
    notice: "",
    ...(typing ? {} : { draft: one ? phraseOf(one) : "", called: null, blank: null, blanks: [], options: [], fault: null }),
  });
  if (!ids.length) return;
  const reply = await latest("/sayings", { text: text(), touched: ids, ...hand });
  if (mine !== asked || !reply.ok) return;
  offered(reply.sayings);
  store.set({ options: directions(reply) });
}

/** @param {any} reply @returns {import("../types.js").Option[]} */
const directions = (reply) => (reply.directions ?? []).map((/** @type {object} */ one) => ({ ...one, insert: "" }));

/** One more, or one less, of what is touched. @param {string} id */
export function add(id) {
  const { touched } = store.get();
  return touch(touched.includes(id) ? touched.filter((t) => t !== id) : [...touched, id], true);
}

/** The phrase of the problem file that a touched thing is. @param {string} id @returns {string} */
export function phraseOf(id) {
  return thing(id)?.phrase ?? "";
}

/** @param {string} id @returns {import("../types.js").Span | null} */
function spanOf(id) {
  return thing(id)?.span ?? null;
}

/** Begin a new sentence, whatever is touched. */
export function anew() {
  store.set({ role: "new", draft: "", called: null, options: [], fault: null, blank: null, blanks: [] });
  if (!store.get().touched.length) offered([]);
}

/** What is typed in the sentence. A new sentence is read at once, so that it can be seen where it fits. @param {string} draft @returns {Promise<void>} */
export async function type(draft) {
  const { role, touched, blanks, draft: before } = store.get();
  const mine = ++asked;
  const longer = [...draft].length - [...before].length;
  strokes++;
  store.set({ draft, blank: null, blanks: blanks.map(([a, b]) => [a + longer, b + longer]), fault: null, notice: "" });
  if (role === "phrase") return complete(mine, draft);
  if (!draft.trim()) {
    offered([]);
    return store.set({ options: [] });
  }
  const reply = await latest("/read", { text: text(), line: draft, touched });
  if (mine !== asked || !reply.ok) return;
  offered(reply.sayings);
  store.set({ options: reply.options ?? [], fault: reply.faults?.[0] ?? null });
}

/** A name that is being typed. @param {string} called */
export function call(called) {
  strokes++;
  store.set({ called });
}

/** @param {number} mine @param {string} draft */
async function complete(mine, draft) {
  const { touched } = store.get();
  const section = thing(touched[0])?.section;
  if (!section) return;
  const reply = await latest("/complete", { text: text(), section, phrase: draft, at: [...draft].length, touched });
  if (mine === asked && reply.ok) store.set({ options: [...reply.options, ...directions(reply)] });
}

/** The sentence is meant: change the phrase that is touched, or say the new one. @returns {Promise<void>} */
export async function mean() {
  const { draft } = store.get();
  const since = strokes;
  await atRest();
  const { role, touched, sayings, chosen } = store.get();
  if (role === "phrase" && touched.length === 1) {
    const span = spanOf(touched[0]);
    if (!span || draft === phraseOf(touched[0])) return;
    // What would break the file stays a draft, with the reason beneath it.
    const made = await change([{ do: "rephrase", span, phrase: draft, sound: true }]);
    if (!made && since === strokes) store.set({ notice: "", fault: { sentence: store.get().notice, hint: "", example: "" } });
    if (made) await touch(kept(made, touched), false, since);
    return;
  }
  if (sayings[chosen]) await choose(sayings[chosen]);
}

/** Say one of those offered. Its blanks are then typed over. @param {Saying | undefined} saying @returns {Promise<void>} */
export async function choose(saying) {
  const since = strokes;
  await atRest();
  if (!saying || !fresh(saying)) return;
  if (saying.renames) return rename(saying.phrase, saying.renames === "swap");
  const { touched } = store.get();
  if (saying.drops) {
    if (await change([{ do: "drop", section: saying.section, key: saying.drops }])) await touch(touched, false, since);
    return;
  }
  if (saying.acts) {
    const pinned = await change(saying.acts);
    if (pinned) await touch([`point ${saying.name}`], false, since);
    return;
  }
  const made = await change([
    saying.sets
      ? { do: "set", section: saying.section, value: saying.phrase }
      : { do: "say", section: saying.section, name: saying.name, phrase: saying.phrase },
  ]);
  if (!made) return;
  if (saying.sets) return touch([]);
  await touch(kept(made, touched), false, since);
  if (saying.section === "find") {
    const notice = say("sentence.asked", { phrase: saying.phrase });
    store.set({ notice, word: notice });
  }
  if (since !== strokes) return;
  const blank = saying.blanks?.[0];
  const at = store.get().draft.indexOf(saying.phrase);
  if (blank && at >= 0) {
    const moved = saying.blanks.map(([a, b]) => /** @type {import("../types.js").Span} */ ([a + at, b + at]));
    store.set({ blank: moved[0], blanks: moved.slice(1) });
  }
}

/** What is touched points another way; the numbers of that are then typed over. @param {import("../types.js").Option} option @returns {Promise<void>} */
export async function direct(option) {
  const { touched } = store.get();
  const span = spanOf(touched[0]);
  if (!span || !option.phrase || !option.span) return;
  const made = await change([{ do: "rephrase", span, phrase: option.phrase, sound: true }]);
  if (!made) return;
  await touch(kept(made, touched));
  const [from, to] = option.span;
  const numbers = [...[...option.phrase].slice(from, to).join("").matchAll(/\d+/g)].map((n) => /** @type {import("../types.js").Span} */ ([from + n.index, from + n.index + n[0].length]));
  if (numbers.length && store.get().draft === option.phrase) store.set({ blank: numbers[0], blanks: numbers.slice(1) });
}

/** The next blank of the phrase is to be typed over, if there is one left. @returns {boolean} */
export function nextBlank() {
  const { blanks } = store.get();
  if (!blanks.length) return false;
  store.set({ blank: blanks[0], blanks: blanks.slice(1) });
  return true;
}

/** @param {string[]} made @param {string[]} before what is touched afterwards @returns {string[]} */
function kept(made, before) {
  const there = made.filter((id) => thing(id));
  return there.length ? [there[there.length - 1]] : before.filter((id) => spanOf(id));
}

/** Take things away, with nothing left that speaks of them. @returns {Promise<void>} */
export async function drop() {
  const { touched, drawn } = store.get();
  const made = touched.length ? await change(touched.map((id) => ({ do: "drop", id }))) : null;
  if (!made) return;
  await touch([]);
  const notice = gone(drawn?.things ?? [], store.get().drawn?.things ?? [], touched);
  if (notice) store.set({ notice, word: notice });
}

/** Another name for what is touched, wherever the file speaks of it. @param {string} to @param {boolean} [swap] what has that name gets this one's @returns {Promise<void>} */
export async function rename(to, swap = false) {
  const { touched, sayings } = store.get();
  const [id] = touched;
  const since = strokes;
  if (!id || !to.trim()) return;
  // What is offered speaks of the old name.
  for (const saying of sayings) stale(saying);
  offered([]);
  const made = await change([{ do: "rename", id, to: to.trim(), swap }]);
  const now = store.get().touched;
  if (made) await touch(now.length && now[0] !== id && thing(now[0]) ? now : made, false, since);
  else offered((await send("/sayings", { text: text(), touched: now })).sayings ?? []);
}

/** Put a suggestion in the sentence. @param {string} insert */
export function take(insert) {
  return type(insert);
}

/** Everything that a stroke through these points can be. @param {string[]} names */
export function touchPoints(names) {
  return touch(names.map((n) => `point ${n}`));
}
