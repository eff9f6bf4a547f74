/** The picture beneath the sheet as a sentence with blanks: which one, how much of it is shown, and where two marked places in it lie. */
import { html, nothing } from "../lib/lit-html.js";
import { perMetre } from "../store.js";
import { say } from "../words.js";

/** @typedef {import("../types.js").Trace} Trace @typedef {{lay: (f: Blob) => void, known: (k: number, said: string) => void, fade: (f: number) => void, again: () => void, remove: () => void}} Does */

/** @param {import("../types.js").State} now @param {Does} does */
export function trace(now, does) {
  if (!now.tracing) return nothing;
  const t = now.trace;
  /** @type {Record<string, () => unknown>} */
  const blanks = {
    picture: () => picture(t, does),
    faded: () => t && faded(t, does),
    first: () => t && mark(t, 0, does),
    second: () => t && mark(t, 1, does),
  };
  const told = !t ? "trace.none" : t.marks.length > 1 ? "trace.lies" : t.marks.length ? "trace.second" : t.marking ? "trace.first" : "trace.bare";
  return html`<section class="tracestrip" aria-label=${say("trace.name")}>
    <p aria-live="polite">
      ${say(told)
        .split(/\{(\w+)\}/)
        .map((piece, k) => (k % 2 ? blanks[piece]?.() : piece))}
      ${t ? html`${t.marking ? nothing : html`<button @click=${does.again}>${say("trace.again")}</button> `}<button @click=${does.remove}>${say("trace.remove")}</button>` : nothing}
    </p>
  </section>`;
}

/** @param {Trace | null} t @param {Does} does */
function picture(t, does) {
  const chosen = (/** @type {Event} */ e) => {
    const file = /** @type {HTMLInputElement} */ (e.target).files?.[0];
    if (file) does.lay(file);
  };
  return html`<label class="blank">${say(t ? "trace.picture" : "trace.choose")}<input type="file" accept="image/*" aria-label=${say("trace.choose")} @change=${chosen} /></label>`;
}

/** @param {Trace} t @param {Does} does */
const faded = (t, does) =>
  html`<input
    type="number"
    min="10"
    max="100"
    step="5"
    aria-label=${say("trace.faded")}
    .value=${String(Math.round(100 * t.faded))}
    @input=${(/** @type {Event} */ e) => {
      const share = Number(/** @type {HTMLInputElement} */ (e.target).value) / 100;
      if (share >= 0.1 && share <= 1) does.fade(share);
    }}
  />`;

/** Where a marked place lies, in units of the file. @param {Trace} t @param {0 | 1} k @param {Does} does */
function mark(t, k, does) {
  const at = t.marks[k]?.metres;
  const shown = at ? at.map((c) => Number((c * perMetre()).toFixed(6))).join(", ") : "";
  return html`<input
    placeholder="0, 0"
    aria-label=${say("trace.known", { which: k + 1 })}
    .value=${shown}
    @change=${(/** @type {Event} */ e) => does.known(k, /** @type {HTMLInputElement} */ (e.target).value)}
  />`;
}
