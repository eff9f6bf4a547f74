/** A length of the figure typed over where it stands: what the file says it with, and what that becomes. */
import { send } from "../net.js";
import { store, text } from "../store.js";
import { say } from "../words.js";
import { change } from "./editing.js";

let asked = 0;

/** Begin to type over a length; where it cannot be, the reason is told. @param {string} id @returns {Promise<void>} */
export async function measure(id) {
  const mine = ++asked;
  const reply = await send("/length", { text: text(), id });
  if (mine !== asked) return;
  if (!reply.ok) return told(reply.message ?? "");
  store.set({ length: { id, phrase: reply.phrase, draft: reply.phrase, letter: reply.letter }, notice: "" });
  requestAnimationFrame(() => {
    const field = /** @type {HTMLInputElement | null} */ (document.getElementById("length"));
    field?.focus();
    field?.select();
  });
}

/** @param {string} sentence */
const told = (sentence) => store.set({ notice: sentence, word: sentence });

/** @param {string} draft */
export function typed(draft) {
  const { length } = store.get();
  if (length) store.set({ length: { ...length, draft } });
}

/** Let go of it as it was. */
export function letBe() {
  asked++;
  store.set({ length: null });
}

/** What has been sent and not yet been answered. */
let sent = "";

/**
 * What is typed is meant. What cannot be is told with the reason, and stays to be typed over.
 * @param {boolean} [leaving] the hand has gone elsewhere: then the length is as it was @returns {Promise<void>}
 */
export async function lengthen(leaving = false) {
  const { length } = store.get();
  if (!length || sent === length.draft) return;
  if (length.draft.trim() === length.phrase) return letBe();
  sent = length.draft;
  const made = await change([{ do: "length", id: length.id, value: length.draft }]);
  sent = "";
  if (made || leaving) letBe();
  const moved = (made ?? []).map((one) => one.replace(/^point /, "")).join(", ");
  if (!made) told(store.get().notice);
  else if (length.letter) told(`${length.letter} = ${length.draft.trim()}`);
  else if (made.some((one) => one.startsWith("point "))) told(say("sheet.moved", { count: made.length, names: moved }));
}
