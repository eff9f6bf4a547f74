/** Every change of the text: typed, drawn, undone. Changes by the engine wait their turn, so that each sees the one before. */
import { send } from "../net.js";
import { redone, stepped, undone } from "../kernels/history.js";
import { store, text, thing } from "../store.js";
import { callOff } from "./apart.js";
import { look, seen, slow, timed, wanted } from "./looking.js";
import { keep } from "./saving.js";

/**
 * @param {string} to the whole new text @param {string} [mark] joins it with the step before if that has the same mark
 * @param {() => Promise<void>} [show] brings what is to be seen of it on the page @returns {Promise<void>}
 */
export function write(to, mark = "", show = look) {
  const { history } = store.get();
  const next = stepped(history, to, mark);
  if (next === history) return Promise.resolve();
  outdated();
  store.set({ history: next, notice: "" });
  keep();
  return show();
}

/** Nobody waits for the shortest way through a figure that has changed. */
function outdated() {
  if (store.get().route.job) callOff();
}

/** @type {Promise<unknown>} */
let turn = Promise.resolve();

/** Every change that was asked for is made or refused. @returns {Promise<unknown>} */
export const atRest = () => turn;

/**
 * Changes said as acts of the engine (`{do: "point" | "say" | "rephrase" | "drop" | "rename" | "set", …}`): all of them or none, one undo step.
 * @param {object[]} acts @param {string} [mark] @returns {Promise<string[] | null>} ids of what was made, null when refused (the reason is on the page)
 */
export function change(acts, mark = "") {
  const made = turn.then(async () => {
    const asked = slow() ? null : wanted();
    const began = performance.now();
    const reply = await send("/edit", { text: text(), acts, look: asked });
    if (asked) timed(performance.now() - began);
    if (!reply.ok) {
      store.set({ notice: reply.message ?? "" });
      return null;
    }
    await write(reply.text, mark, async () => (asked ? seen(reply.look, asked) : void look()));
    return /** @type {string[]} */ (reply.made ?? []);
  });
  turn = made.catch(() => null);
  return made;
}

export function undo() {
  return to(undone(store.get().history));
}

export function redo() {
  return to(redone(store.get().history));
}

/** @param {import("../types.js").History} history @returns {Promise<void>} */
function to(history) {
  if (history === store.get().history) return Promise.resolve();
  outdated();
  store.set({ history, sayings: [], draft: "", called: null, fault: null, notice: "" });
  keep();
  return look().then(() => {
    const { touched, draft } = store.get();
    if (!draft) store.set({ role: touched.length === 1 ? "phrase" : "new", draft: touched.length === 1 ? (thing(touched[0])?.phrase ?? "") : "" });
  });
}
