/**
 * Undo without limit: a text and the changes that led to it, each a single replacement, so a step costs what it changed. Pure.
 * @typedef {import("./diff.js").Change} Change
 * @typedef {{text: string, done: Change[], undone: Change[], mark: string}} History `mark` joins typing into one step
 */
import { backward, change, forward } from "./diff.js";

/** @param {string} text @returns {History} */
export function begun(text) {
  return { text, done: [], undone: [], mark: "" };
}

/**
 * The history after a new text. A step with the same non-empty `mark` as the one before grows that step instead of adding one.
 * @param {History} history @param {string} text @param {string} [mark] @returns {History}
 */
export function stepped(history, text, mark = "") {
  if (text === history.text) return history;
  if (mark && mark === history.mark && history.done.length) {
    const last = history.done[history.done.length - 1];
    const joined = change(backward(history.text, last), text);
    return { text, done: [...history.done.slice(0, -1), joined], undone: [], mark };
  }
  return { text, done: [...history.done, change(history.text, text)], undone: [], mark };
}

/** The same with no more than so many steps back and forth. @param {History} history @param {number} most @returns {History} */
export function recent(history, most) {
  return { ...history, done: history.done.slice(-most), undone: history.undone.slice(-most) };
}

/** @param {History} history @returns {History} */
export function undone(history) {
  const last = history.done[history.done.length - 1];
  if (!last) return history;
  return { text: backward(history.text, last), done: history.done.slice(0, -1), undone: [...history.undone, last], mark: "" };
}

/** @param {History} history @returns {History} */
export function redone(history) {
  const next = history.undone[history.undone.length - 1];
  if (!next) return history;
  return { text: forward(history.text, next), done: [...history.done, next], undone: history.undone.slice(0, -1), mark: "" };
}
