/** Teaching and handing out: the page for the class in a frame, and every form of the problem with a look at it first. */
import { html, nothing } from "../lib/lit-html.js";
import { known, say } from "../words.js";
import { COLOURED, DRAWN, ENDINGS, reader } from "../acts/handing.js";
import { listen } from "../gestures/framed.js";

/** @typedef {import("../types.js").State} State */

/** @param {State} now */
export function teach(now) {
  if (now.look?.sound === false || !now.doc)
    return html`<main class="folder"><p class="notice">${say("apart.faulty")}</p></main>`;
  const address = `/teach?name=${encodeURIComponent(now.doc.name)}&reader=${reader(now)}`;
  return html`<main class="framed">
    <p class="small"><a href=${`${address}#teach`} target="_blank" rel="noopener">${say("teach.alone")}</a></p>
    ${now.kept === "saved" ? html`<iframe src=${`${address}&stamp=${now.doc.stamp ?? ""}#teach`} title=${say("teach.name")} @load=${listen}></iframe>` : html`<p role="status">${say("kept.saving")}</p>`}
  </main>`;
}

/** @param {State} now @param {{choose: (patch: Partial<State["hand"]>) => void, publish: () => void}} does */
export function handOut(now, does) {
  const { hand } = now;
  return html`<main class="two handout">
    <section class="side" aria-label=${say("hand.name")}>
      <p class="output">${output(now, does)}</p>
      ${
        now.trace && (!DRAWN.includes(hand.ending) || (hand.which || "problem") === "problem")
          ? html`<p><label><input type="checkbox" .checked=${hand.beneath} @change=${(/** @type {Event} */ e) => does.choose({ beneath: /** @type {HTMLInputElement} */ (e.target).checked })} /> ${say("hand.beneath")}</label></p>`
          : nothing
      }
      <p><button class="strong" @click=${does.publish}>${say("hand.save")}</button></p>
      ${now.notice ? html`<p class="notice" role="status">${now.notice}</p>` : nothing}
      ${hand.saved ? html`<p role="status">${say("hand.saved", { file: hand.saved })}</p>` : nothing}
    </section>
    <section class="preview" aria-label=${say("hand.preview")} aria-busy=${hand.busy}>${shown(now, does)}</section>
  </main>`;
}

/** What will be handed out as one sentence; the words that can be others are choices in it. @param {State} now @param {{choose: (patch: Partial<State["hand"]>) => void}} does */
function output(now, does) {
  const { hand } = now;
  const figures = ["problem", "apart", "body", "final", "motion"].filter((w) => w !== "motion" || now.look?.verdict?.freedoms);
  const shares = ["full", "short", ...[1, 2, 3, 4, 5, 6].map((n) => `fade.${n}`)];
  /** @type {Record<string, () => unknown>} */
  const choices = {
    form: () => among("hand.form", ENDINGS, hand.ending, (e) => `hand${e}`, (ending) => does.choose({ ending })),
    // In an element of its own: where the sentence changes, a choice is not made out of another one.
    figure: () => html`<span class="figure">${among("hand.which", figures, hand.which || "problem", (w) => `hand.which.${w}`, (which) => does.choose({ which }))}</span>`,
    share: () =>
      among("hand.share", shares, hand.short ? "short" : hand.fade ? `fade.${hand.fade}` : "full", (s) => `hand.share.${s}`, (s) =>
        does.choose({ short: s === "short", fade: Number(s.split(".")[1] ?? 0) }),
      ),
    route: () =>
      among("hand.way", ["", "recommended", "fewest", "own"], hand.route, (r) => `hand.route.${r || "auto"}`, (route) => does.choose({ route })),
    body: () => html`<span class="figure">${bodies(now, does)}</span>`,
    figures: () =>
      among("hand.figures", ["0", "2", "3", "4", "5", "6", "7", "8"], String(hand.figures), (n) => `hand.figures.${n}`, (n) => does.choose({ figures: Number(n) })),
    language: () => among("hand.language", ["", ...known("hand.language.")], hand.language, (l) => `hand.language.${l || "auto"}`, (language) => does.choose({ language })),
    colours: () => html`<span class="figure">${among("hand.colours", ["", "light", "dark"], hand.colours, (c) => `hand.colours.${c || "auto"}`, (colours) => does.choose({ colours }))}</span>`,
  };
  const told = COLOURED.includes(hand.ending) ? "hand.told_page" : "hand.told";
  return say(DRAWN.includes(hand.ending) ? (hand.which === "body" ? "hand.drawn_body" : "hand.drawn") : told)
    .split(/\{(\w+)\}/)
    .map((piece, k) => (k % 2 ? choices[piece]?.() : piece));
}

/** The body cut loose, or several that stay joined: one choice for each, and one for a further body. @param {State} now @param {{choose: (patch: Partial<State["hand"]>) => void}} does */
function bodies(now, does) {
  const there = now.look?.bodies ?? [];
  const name = (/** @type {string} */ b) => (b === "whole" ? say("apart.whole") : (there.find((one) => one.name === b)?.title ?? b));
  const chosen = now.hand.body.filter((b) => b === "whole" || there.some((one) => one.name === b));
  const taken = chosen.length ? chosen : ["whole"];
  const change = (/** @type {number} */ k) => (/** @type {Event} */ e) => {
    const value = /** @type {HTMLSelectElement} */ (e.target).value;
    const body = value === "whole" ? ["whole"] : [...taken.slice(0, k), value, ...taken.slice(k + 1)].filter((b) => b && b !== "whole");
    does.choose({ body: body.length ? body : ["whole"] });
  };
  const one = (/** @type {number} */ k) => {
    const free = there.map((b) => b.name).filter((b) => b === taken[k] || !taken.includes(b));
    const first = k ? [""] : there.length > 1 ? ["whole"] : [];
    return html`<select aria-label=${say(k ? "hand.joined" : "hand.body")} @change=${change(k)}>
      ${[...first, ...free].map((b) => html`<option value=${b} .selected=${b === (taken[k] ?? "")}>${b ? name(b) : say("hand.joined.none")}</option>`)}
    </select>`;
  };
  const room = taken[0] !== "whole" && taken.length < there.length - 1;
  return [...taken.map((_, k) => k), ...(room ? [taken.length] : [])].map((k) => html`${k ? html` ${say("hand.and")} ` : nothing}${one(k)}`);
}

/** @param {string} name @param {readonly string[]} all @param {string} now @param {(one: string) => string} key @param {(one: string) => void} choose */
function among(name, all, now, key, choose) {
  const chosen = (/** @type {Event} */ e) => choose(/** @type {HTMLSelectElement} */ (e.target).value);
  return html`<select aria-label=${say(name)} @change=${chosen}>
    ${all.map((one) => html`<option value=${one} .selected=${one === now}>${say(key(one))}</option>`)}
  </select>`;
}

/** @param {State} now @param {{choose: (patch: Partial<State["hand"]>) => void}} does */
function shown(now, does) {
  const { hand } = now;
  const p = hand.preview;
  if (!p) return html`<p role="status">${say("hand.busy")}</p>`;
  if (p.type === "fault") return html`<p class="notice">${p.text}</p>`;
  if (p.type === "page") return html`<iframe src=${p.url} title=${say("hand.preview")} @load=${listen}></iframe>`;
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
