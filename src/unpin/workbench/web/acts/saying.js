/** Touching things and saying something of them: what the sentence at the foot is about, and what it offers. */
import { send } from "../net.js";
import { store, text, thing } from "../store.js";
import { change } from "./editing.js";

/** @typedef {import("../types.js").Saying} Saying */

let asked = 0;

/** Touch things; nothing for the whole. @param {string[]} ids @param {boolean} [held] @returns {Promise<void>} */
export async function touch(ids, held = false) {
  const mine = ++asked;
  const one = ids.length === 1 ? ids[0] : "";
  store.set({
    touched: ids,
    held,
    sayings: [],
    chosen: 0,
    options: [],
    draft: one ? phraseOf(one) : "",
    blank: null,
    blanks: [],
    role: one ? "phrase" : "new",
    notice: "",
  });
  if (!ids.length) return;
  const reply = await send("/sayings", { text: text(), touched: ids });
  if (mine === asked && reply.ok) store.set({ sayings: reply.sayings });
}

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
  store.set({ role: "new", draft: "", sayings: store.get().touched.length ? store.get().sayings : [], blank: null, blanks: [] });
}

/** What is typed in the sentence. A new sentence is read at once, so that it can be seen where it fits. @param {string} draft @returns {Promise<void>} */
export async function type(draft) {
  const { role, touched } = store.get();
  const mine = ++asked;
  store.set({ draft, blank: null });
  if (role === "phrase") return complete(mine, draft);
  if (!draft.trim()) return store.set({ sayings: [], options: [] });
  const reply = await send("/read", { text: text(), line: draft, touched });
  if (mine === asked && reply.ok) store.set({ sayings: reply.sayings, chosen: 0 });
}

/** @param {number} mine @param {string} draft */
async function complete(mine, draft) {
  const { touched } = store.get();
  const section = thing(touched[0])?.section;
  if (!section) return;
  const reply = await send("/complete", { text: text(), section, phrase: draft, at: [...draft].length });
  if (mine === asked && reply.ok) store.set({ options: reply.options });
}

/** The sentence is meant: change the phrase that is touched, or say the new one. @returns {Promise<void>} */
export async function mean() {
  const { role, touched, draft, sayings, chosen } = store.get();
  if (role === "phrase" && touched.length === 1) {
    const span = spanOf(touched[0]);
    if (!span || draft === phraseOf(touched[0])) return sayings.length ? choose(chosen) : undefined;
    const made = await change([{ do: "rephrase", span, phrase: draft }]);
    if (made) await touch(kept(made, touched));
    return;
  }
  if (sayings.length) await choose(chosen);
}

/** Say one of those offered. Its blanks are then typed over. @param {number} which @returns {Promise<void>} */
export async function choose(which) {
  const { sayings, touched } = store.get();
  const saying = sayings[which];
  if (!saying) return;
  const made = await change([
    saying.sets
      ? { do: "set", section: saying.section, value: saying.phrase }
      : { do: "say", section: saying.section, name: saying.name, phrase: saying.phrase },
  ]);
  if (!made) return;
  if (saying.sets) return touch([]);
  await touch(kept(made, touched));
  const blank = saying.blanks?.[0];
  const at = store.get().draft.indexOf(saying.phrase);
  if (blank && at >= 0) {
    const moved = saying.blanks.map(([a, b]) => /** @type {import("../types.js").Span} */ ([a + at, b + at]));
    store.set({ blank: moved[0], blanks: moved.slice(1) });
  }
}

/** The next blank of the phrase, if there is one left. @returns {boolean} */
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
  const { touched } = store.get();
  const made = touched.length ? await change(touched.map((id) => ({ do: "drop", id }))) : null;
  if (made) await touch([]);
}

/** Another name for what is touched, wherever the file speaks of it. @param {string} to @returns {Promise<void>} */
export async function rename(to) {
  const id = store.get().touched[0];
  const made = id && to.trim() ? await change([{ do: "rename", id, to: to.trim() }]) : null;
  if (made) await touch(made);
}

/** Put a suggestion in the sentence. @param {string} insert */
export function take(insert) {
  return type(insert);
}

/** Everything that a stroke through these points can be. @param {string[]} names */
export function touchPoints(names) {
  return touch(names.map((n) => `point ${n}`));
}
