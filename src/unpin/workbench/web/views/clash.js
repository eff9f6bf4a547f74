/** Two texts of one file: both shown line against line, and the person chooses. */
import { html, nothing } from "../lib/lit-html.js";
import { lines } from "../kernels/diff.js";
import { say } from "../words.js";

/** @param {import("../types.js").State} now @param {{settle: (which: "mine" | "theirs") => void}} does */
export function clash(now, does) {
  if (!now.clash) return nothing;
  return html`<dialog class="clash" open aria-labelledby="clash-title">
    <h2 id="clash-title">${say(`clash.${now.clash.why}`, { file: now.doc?.name ?? "" })}</h2>
    <p>${say("clash.told")}</p>
    <div class="lines" tabindex="0" role="region" aria-label=${say("clash.lines")}>
      ${lines(now.clash.text, now.history.text).map(
        (l) =>
          html`<div class=${l.mark === "=" ? "both" : l.mark === "+" ? "mine" : "theirs"}>
            <span>${l.mark === "=" ? "" : say(l.mark === "+" ? "clash.here" : "clash.there")}</span><code>${l.line || " "}</code>
          </div>`,
      )}
    </div>
    <p>
      <button class="strong" @click=${() => does.settle("mine")}>${say("clash.mine")}</button>
      <button @click=${() => does.settle("theirs")}>${say("clash.theirs")}</button>
    </p>
  </dialog>`;
}
