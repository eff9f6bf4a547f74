/** Teaching and handing out: the page for the class in a frame, and every form of the problem with a look at it first. */
import { html, nothing } from "../lib/lit-html.js";
import { say } from "../words.js";
import { DRAWN, ENDINGS } from "../acts/handing.js";

/** @typedef {import("../types.js").State} State */

/** @param {State} now */
export function teach(now) {
  if (now.look?.sound === false || !now.doc)
    return html`<main class="folder"><p class="notice">${say("apart.faulty")}</p></main>`;
  const address = `/teach?name=${encodeURIComponent(now.doc.name)}`;
  return html`<main class="framed">
    <p class="small"><a href=${`${address}#teach`} target="_blank" rel="noopener">${say("teach.alone")}</a></p>
    ${now.kept === "saved" ? html`<iframe src=${`${address}&stamp=${now.doc.stamp ?? ""}#teach`} title=${say("teach.name")}></iframe>` : html`<p role="status">${say("kept.saving")}</p>`}
  </main>`;
}

/** @param {State} now @param {{choose: (patch: Partial<State["hand"]>) => void, publish: () => void}} does */
export function handOut(now, does) {
  const { hand } = now;
  const drawn = DRAWN.includes(hand.ending);
  const value = (/** @type {Event} */ e) => /** @type {HTMLSelectElement} */ (e.target).value;
  return html`<main class="two handout">
    <section class="side" aria-label=${say("hand.name")}>
      <fieldset>
        <legend>${say("hand.form")}</legend>
        ${ENDINGS.map((ending) => html`<label><input type="radio" name="ending" .checked=${hand.ending === ending} @change=${() => does.choose({ ending })} /> ${say(`hand${ending}`)}</label>`)}
      </fieldset>
      ${
        drawn
          ? html`<label
              >${say("hand.which")}
              <select @change=${(/** @type {Event} */ e) => does.choose({ which: value(e) })}>
                ${["problem", "apart", "final", "motion"].filter((w) => w !== "motion" || now.look?.verdict?.freedoms).map((w) => html`<option value=${w} ?selected=${(hand.which || "problem") === w}>${say(`hand.which.${w}`)}</option>`)}
              </select></label
            >`
          : html`<label
                ><input
                  type="checkbox"
                  .checked=${hand.short}
                  @change=${(/** @type {Event} */ e) => does.choose({ short: /** @type {HTMLInputElement} */ (e.target).checked })}
                />
                ${say("hand.short")}</label
              >
              <label
                >${say("hand.fade")}
                <select ?disabled=${hand.short} @change=${(/** @type {Event} */ e) => does.choose({ fade: Number(value(e)) })}>
                  ${[0, 1, 2, 3, 4, 5, 6].map((n) => html`<option value=${n} ?selected=${hand.fade === n}>${say(`hand.fade.${n}`)}</option>`)}
                </select></label
              >
              <label
                >${say("hand.route")}
                <select @change=${(/** @type {Event} */ e) => does.choose({ route: value(e) })}>
                  ${["", "recommended", "fewest", "own"].map((r) => html`<option value=${r} ?selected=${hand.route === r}>${say(`hand.route.${r || "auto"}`)}</option>`)}
                </select></label
              >`
      }
      <p><button class="strong" @click=${does.publish}>${say("hand.save")}</button></p>
      ${now.notice ? html`<p class="notice" role="status">${now.notice}</p>` : nothing}
      ${hand.saved ? html`<p role="status">${say("hand.saved", { file: hand.saved })}</p>` : nothing}
    </section>
    <section class="preview" aria-label=${say("hand.preview")} aria-busy=${hand.busy}>${shown(now, does)}</section>
  </main>`;
}

/** @param {State} now @param {{choose: (patch: Partial<State["hand"]>) => void}} does */
function shown(now, does) {
  const { hand } = now;
  const p = hand.preview;
  if (!p) return html`<p role="status">${say("hand.busy")}</p>`;
  if (p.type === "fault") return html`<p class="notice">${p.text}</p>`;
  if (p.type === "page") return html`<iframe src=${p.url} title=${say("hand.preview")}></iframe>`;
  if (p.type === "text") return html`<pre tabindex="0" role="region" aria-label=${say("hand.preview")}>${p.text}</pre>`;
  return html`${
      hand.pages > 1 && hand.ending === ".pdf"
        ? html`<p class="small">
            <button ?disabled=${hand.page <= 1} @click=${() => does.choose({ page: hand.page - 1 })}>
              ${say("hand.before")}
            </button>
            ${say("hand.page", { page: hand.page, pages: hand.pages })}
            <button ?disabled=${hand.page >= hand.pages} @click=${() => does.choose({ page: hand.page + 1 })}>
              ${say("hand.after")}
            </button>
          </p>`
        : nothing
    }<img
      src=${p.url}
      alt=${say("hand.picture")}
      class=${hand.ending === ".pdf" ? "page" : hand.ending === ".svg" ? "figure lines" : "figure"}
    />`;
}
