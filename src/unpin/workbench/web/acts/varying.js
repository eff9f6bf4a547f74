/** A letter varied live: its number runs under the finger, figure and answers follow, and the whole run is one step to undo. */
import { written } from "../kernels/round.js";
import { store } from "../store.js";
import { change } from "./editing.js";

/** A value that is a plain number with or without a unit, as a number and what follows it; null for one that is not. @param {string} phrase @returns {{number: number, unit: string} | null} */
export function plain(phrase) {
  const found = /^(-?\d+(?:\.\d+)?)(\s*[^\s\d].*)?$/.exec(phrase.trim());
  return found && !/[-+*/()]/.test(found[2]?.replace(/[a-z]\/[a-z]/gi, "") ?? "")
    ? { number: Number(found[1]), unit: found[2] ?? "" }
    : null;
}

/** Ends and step of its run: from nothing to about twice the value, in some hundred round steps. @param {number} number @returns {{least: number, most: number, step: number}} */
export function run(number) {
  const step = 10 ** Math.floor(Math.log10(Math.abs(number) || 1)) / 20;
  const most = Math.ceil((2 * (Math.abs(number) || 1)) / step) * step;
  return { least: number < 0 ? -most : 0, most: number < 0 ? 0 : most, step };
}

/** @type {Map<string, {least: number, most: number, step: number}>} */
const runs = new Map();

/** The same run as long as the finger is on it. @param {string} name @param {number} number */
export function held(name, number) {
  const kept = runs.get(name);
  if (kept && kept.least <= number && number <= kept.most) return kept;
  const made = run(number);
  runs.set(name, made);
  return made;
}

/** Forget the run, so that the next begins about the value as it now is. @param {string} name */
export const settled = (name) => runs.delete(name);

let busy = false;
/** @type {{name: string, number: number} | null} */
let next = null;

/** @param {string} name @param {number} number @returns {Promise<void>} */
export async function vary(name, number) {
  next = { name, number };
  if (busy) return;
  busy = true;
  while (next) {
    const now = next;
    next = null;
    const letter = store.get().look?.letters?.find((l) => l.name === now.name);
    const value = letter && plain(letter.phrase);
    if (letter && value)
      await change(
        [{ do: "rephrase", span: letter.span, phrase: written(now.number, held(now.name, value.number).step) + value.unit }],
        `letter ${now.name}`,
      );
  }
  busy = false;
}
