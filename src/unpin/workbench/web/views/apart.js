/** Taking apart: the structure on the left, the bodies pulled out of it on the right, each with everything that acts on it. */
import { html, nothing } from "../lib/lit-html.js";
import { say } from "../words.js";
import { drawing, words } from "./markup.js";

/** @typedef {import("../types.js").State} State */

/** @param {State} now @param {unknown} sheet @param {{isolate: (bodies: string[]) => void, join: (name: string) => void, putBack: (key: string) => void, solve: (key: string) => void}} does */
export function apart(now, sheet, does) {
  const bodies = now.look?.bodies ?? [];
  return html`<div class="two apart">
    ${sheet}
    <section class="side" aria-label=${say("apart.name")}>
      ${now.look?.sound === false ? html`<p class="notice">${say("apart.faulty")}</p>` : nothing}
      <p class="lead">${say("apart.told")}</p>
      <p class="bodies">
        ${bodies.map((b) => html`<button aria-pressed=${now.pulled.some((p) => p.key === b.name)} @click=${(/** @type {MouseEvent} */ e) => (e.shiftKey ? does.join(b.name) : does.isolate([b.name]))}>${b.title}</button>`)}
        ${bodies.length > 1 ? html`<button @click=${() => does.isolate(["whole"])}>${say("apart.whole")}</button>` : nothing}
      </p>
      ${now.pulled.map(
        (p) =>
          html`<article class="pulled" aria-label=${p.bodies.join(", ")}>
            <h2>${words(`pulled ${p.key}`, p.title)}</h2>
            <div class="fbd">${p.figure ? drawing(`pulled ${p.key}`, p.figure.svg) : nothing}</div>
            <p class="small">
              <button @click=${() => does.solve(p.key)}>${say("apart.solve")}</button> ${
                bodies.filter((b) => !p.bodies.includes(b.name)).length && p === now.pulled[0]
                  ? html`<label
                      >${say("apart.join")}
                      <select @change=${(/** @type {Event} */ e) => does.join(/** @type {HTMLSelectElement} */ (e.target).value)}>
                        <option></option>
                        ${bodies.filter((b) => !p.bodies.includes(b.name)).map((b) => html`<option value=${b.name}>${b.title}</option>`)}
                      </select></label
                    >`
                  : nothing
              } <button @click=${() => does.putBack(p.key)}>${say("apart.back")}</button>
            </p>
          </article>`,
      )}
      ${!now.pulled.length && now.look?.apart ? html`<figure class="all">${drawing("apart", now.look.apart.svg)}</figure>` : nothing}
    </section>
  </div>`;
}
