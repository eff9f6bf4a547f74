/** What a reload must not lose: the steps that can be undone and the sentence that is being typed, kept by this window until it closes. */
import { recent } from "../kernels/history.js";
import { store } from "../store.js";

/** @typedef {{history: import("../types.js").History, touched: string[], role: "new" | "phrase", draft: string}} Kept */

const MOST = 300;
const PAUSE = 250;
let timer = 0;

/** @param {string} name */
const drawer = (name) => `unpin steps ${name}`;

/** Put aside what the page holds, in a moment. */
export function remember() {
  clearTimeout(timer);
  timer = window.setTimeout(rememberNow, PAUSE);
}

export function rememberNow() {
  clearTimeout(timer);
  const { doc, history, touched, role, draft } = store.get();
  if (!doc) return;
  try {
    sessionStorage.setItem(drawer(doc.name), JSON.stringify({ history: recent(history, MOST), touched, role, draft }));
  } catch {
    // A full or forbidden store costs the way back after a reload, nothing else.
  }
}

/**
 * What was put aside for a file, if it led to just this text: steps of another text would undo into nonsense.
 * @param {string} name @param {string} text @returns {Kept | null}
 */
export function remembered(name, text) {
  try {
    const kept = JSON.parse(sessionStorage.getItem(drawer(name)) ?? "null");
    return kept?.history?.text === text && Array.isArray(kept.history.done) && Array.isArray(kept.history.undone) ? kept : null;
  } catch {
    return null;
  }
}
