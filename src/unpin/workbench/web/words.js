/** The page's sentences, fetched once from the catalogue; none is written in code. */
import { ask } from "./net.js";

/** @type {Record<string, string>} */
let sentences = {};
export let language = "en";

export async function learn() {
  const reply = await ask("/words");
  sentences = reply.words ?? {};
  language = reply.language ?? "en";
}

/**
 * The sentence of a key, with its placeholders filled. A key that is missing is shown as it is, so that a test sees it.
 * @param {string} key without its group, `act.state` @param {Record<string, string | number>} [put] @returns {string}
 */
export function say(key, put = {}) {
  const many = "count" in put ? sentences[`page.${key}.${put.count === 1 ? "one" : "other"}`] : undefined;
  const sentence = many ?? sentences[`page.${key}`] ?? key;
  return sentence.replace(/\{(\w+)\}/g, (all, name) => (name in put ? String(put[name]) : all));
}

/** What keys with a beginning end with, but for `auto`: the languages there are words for. @param {string} beginning @returns {string[]} */
export const known = (beginning) =>
  Object.keys(sentences)
    .filter((k) => k.startsWith(`page.${beginning}`) && !k.endsWith(".auto"))
    .map((k) => k.slice(`page.${beginning}`.length))
    .sort();
