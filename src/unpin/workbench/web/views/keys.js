/** The list of keys. */
import { html, nothing } from "../lib/lit-html.js";
import { store } from "../store.js";
import { say } from "../words.js";

const KEYS = [
  "Tab",
  "Enter",
  "Shift Enter",
  "← → ↑ ↓",
  "← →",
  "/",
  "1–9",
  "Esc",
  "Delete",
  "Ctrl Z",
  "Ctrl Y",
  "Ctrl C",
  "Ctrl V",
  "Page ↑ ↓",
  "Home",
  "Alt S",
  "Alt 1–5",
  "?",
];
const NAMES = [
  "tab",
  "enter",
  "add",
  "arrows",
  "turn",
  "slash",
  "digits",
  "escape",
  "delete",
  "undo",
  "redo",
  "copy",
  "paste",
  "zoom",
  "fit",
  "script",
  "acts",
  "help",
];

/** @param {import("../types.js").State} now */
export function keys(now) {
  if (!now.keys) return nothing;
  return html`<aside class="keys" aria-label=${say("keys.title")}>
    <h2>${say("keys.title")} <button @click=${() => store.set({ keys: false })}>${say("do.close")}</button></h2>
    <dl>
      ${KEYS.map(
        (key, k) =>
          html`<div>
            <dt><kbd>${key}</kbd></dt>
            <dd>${say(`keys.${NAMES[k]}`)}</dd>
          </div>`,
      )}
    </dl>
    <p class="small">
      ${["auto", "light", "dark"].map((t) => html`<button aria-pressed=${now.theme === t} @click=${() => store.set({ theme: /** @type {any} */ (t) })}>${say(`theme.${t}`)}</button>`)}
    </p>
  </aside>`;
}
