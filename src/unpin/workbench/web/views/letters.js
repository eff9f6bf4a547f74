/** Letters with a plain value, each to be varied live. */
import { html, nothing } from "../lib/lit-html.js";
import { held, plain } from "../acts/varying.js";
import { say } from "../words.js";

/** @param {import("../types.js").State} now @param {{vary: (name: string, number: number) => void, settled: (name: string) => void}} does */
export function letters(now, does) {
  const shown = (now.look?.letters ?? []).flatMap((l) => {
    const value = plain(l.phrase);
    return value ? [{ ...l, ...value, run: held(l.name, value.number) }] : [];
  });
  if (!shown.length) return nothing;
  return html`<ul class="letters" aria-label=${say("sentence.letters")}>
    ${shown.map(
      (l) =>
        html`<li>
          <label
            ><i>${l.name}</i> = ${l.phrase}
            <input
              type="range"
              min=${l.run.least}
              max=${l.run.most}
              step=${l.run.step}
              .value=${String(l.number)}
              aria-valuetext=${l.phrase}
              @input=${(/** @type {Event} */ e) => does.vary(l.name, Number(/** @type {HTMLInputElement} */ (e.target).value))}
              @change=${() => does.settled(l.name)}
          /></label>
        </li>`,
    )}
  </ul>`;
}
