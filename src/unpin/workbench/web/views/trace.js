/** The strip for a picture beneath the sheet: choose one, mark two places whose coordinates are known, fade it. */
import { html, nothing } from "../lib/lit-html.js";
import { say } from "../words.js";

/** @param {import("../types.js").State} now @param {{lay: (f: Blob) => void, known: (k: number, said: string) => void, fade: (f: number) => void, again: () => void, remove: () => void}} does */
export function trace(now, does) {
  if (!now.tracing) return nothing;
  const t = now.trace;
  const chosen = (/** @type {Event} */ e) => {
    const file = /** @type {HTMLInputElement} */ (e.target).files?.[0];
    if (file) does.lay(file);
  };
  return html`<section class="tracestrip" aria-label=${say("trace.name")}>
    <label>${say("trace.choose")} <input type="file" accept="image/*" @change=${chosen} /></label>
    ${
      t
        ? html`<label
              >${say("trace.faded")}
              <input
                type="range"
                min="0.1"
                max="1"
                step="0.05"
                .value=${String(t.faded)}
                @input=${(/** @type {Event} */ e) => does.fade(Number(/** @type {HTMLInputElement} */ (e.target).value))}
            /></label>
            ${t.marking ? html`<span role="status">${say(t.marks.length ? "trace.second" : "trace.first")}</span>` : html`<button @click=${does.again}>${say("trace.again")}</button>`}
            ${t.marks.map((m, k) => html`<label>${say("trace.known", { which: k + 1 })} <input size="9" placeholder="0, 0" @change=${(/** @type {Event} */ e) => does.known(k, /** @type {HTMLInputElement} */ (e.target).value)} /></label>`)}
            <button @click=${does.remove}>${say("trace.remove")}</button>`
        : html`<span class="hint">${say("trace.told")}</span>`
    }
  </section>`;
}
