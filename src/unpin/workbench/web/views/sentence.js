/** The sentence at the foot: what the whole is, or what is touched is, with its phrase to be typed over; and what else can be said of it. */
import { html, nothing } from "../lib/lit-html.js";
import { say } from "../words.js";
import { toUnits } from "../kernels/spans.js";
import { thing } from "../store.js";
import { letters } from "./letters.js";
import { words } from "./markup.js";

/** @typedef {import("../types.js").State} State */
/**
 * @typedef {{type: (s: string) => void, mean: () => void, choose: (s: import("../types.js").Saying | undefined) => void, press: (s: import("../types.js").Saying) => void, lifted: (s: import("../types.js").Saying, key: boolean) => import("../types.js").Saying | undefined, call: (s: string) => void, direct: (o: import("../types.js").Option) => void, take: (s: string) => void, rename: (s: string) => void, drop: () => void,
 *   release: () => void, anew: () => void, undo: () => void, redo: () => void, fit: () => void, move: () => void, another: () => void, show: (f: import("../types.js").Fault) => void, trace: () => void, keydown: (e: KeyboardEvent) => void, vary: (name: string, number: number) => void, settled: (name: string) => void}} Does
 */

/** @param {State} now @param {Does} does */
export function sentence(now, does) {
  const one = now.touched.length === 1 ? thing(now.touched[0]) : undefined;
  return html`<section id="sentence" aria-label=${say("sentence.name")} @keydown=${does.keydown}>
    <div class="told" id="told" aria-live="polite">
      ${now.notice ? html`<p class="notice">${now.notice}</p>` : nothing}${told(now, one, does)}
    </div>
    ${now.touched.length ? nothing : whole(now, does)} ${saying(now, one, does)}
    ${now.sayings.length && (now.role === "new" || now.touched.length) ? sayings(now, does) : nothing}
    <p class="small foot" @mousedown=${(/** @type {Event} */ e) => e.preventDefault()}>
      <button ?disabled=${!now.history.done.length} @click=${does.undo}>${say("do.undo")}</button>
      <button ?disabled=${!now.history.undone.length} @click=${does.redo}>${say("do.redo")}</button>
      <button @click=${does.fit}>${say("do.fit")}</button>
      <button aria-expanded=${now.tracing} @click=${does.trace}>${say("do.trace")}</button>
      ${now.touched.length ? html`<button @click=${does.anew}>${say("do.anew")}</button><button @click=${does.drop}>${say("do.drop")}</button><button @click=${does.release}>${say("do.release")}</button>` : nothing}
    </p>
  </section>`;
}

/** While nothing is built there is nothing wrong yet, only something to come. @param {State} now */
const unbuilt = (now) => !!now.look?.points && !now.look.things?.some((t) => t.what !== "point");

/** @param {State} now @param {import("../types.js").Thing | undefined} one @param {Does} does */
function told(now, one, does) {
  if (one) return html`<p class="says">${one.says}</p>`;
  if (now.touched.length > 1)
    return html`<p class="says">
      ${say("sentence.several", { names: now.touched.map((id) => id.replace(/^\w+ /, "")).join(", ") })}
    </p>`;
  const worst = now.look?.diagnostics.find((d) => d.severity === "error");
  if (worst && now.history.text.trim())
    return html`<p class="says ${unbuilt(now) ? "hint" : "fault"}">
      ${upper(worst.sentence)}.${worst.hint ? html` <span class="hint">${upper(worst.hint)}.</span>` : nothing}
      ${worst.span ? html` <button class="place" @click=${() => does.show(worst)}>${say("sentence.place", { line: worst.line })}</button>` : nothing}
    </p>`;
  return html`<p class="says">
    ${now.look?.verdict?.summary ?? (now.drawn?.points?.length ? say("sentence.begun") : say("sentence.empty"))}
  </p>`;
}

/** What the mechanics makes of the whole: why it is not sound, how it moves, and what was asked. @param {State} now @param {Does} does */
function whole(now, does) {
  const { look } = now;
  const verdict = look?.verdict;
  const cautions = look?.diagnostics.filter((d) => d.severity !== "error") ?? [];
  return html` ${
    cautions.length && look?.sound
      ? html`<ul class="cautions">
          ${cautions.slice(0, 3).map((d) => html`<li>${upper(d.sentence)}.${d.hint ? html` <span class="hint">${upper(d.hint)}.</span>` : nothing}</li>`)}
        </ul>`
      : nothing
  }
  ${
    verdict && verdict.kind !== "sound"
      ? html`<details class="why" @toggle=${unrolled}>
          <summary>${say("sentence.why")}</summary>
          ${words("why", verdict.sentences.map((t) => t.html).join(""), "div")}
        </details>`
      : nothing
  }
  ${verdict?.freedoms ? motion(now, verdict.freedoms, does) : nothing}
  ${look?.notices?.length ? html`<ul class="cautions notices">${look.notices.map((n) => html`<li>${n}</li>`)}</ul>` : nothing}
  ${look?.answers?.length ? answers(look.answers, "answer") : nothing} ${letters(now, does)}`;
}

/** What is unrolled stands at the head of the panel. @param {Event} e */
function unrolled(e) {
  const reason = /** @type {HTMLDetailsElement} */ (e.target);
  if (reason.open && reason.parentElement) reason.parentElement.scrollTop = reason.offsetTop - reason.parentElement.offsetTop;
}

/** Letting it move; of several motions one after the other, each with its sentence. @param {State} now @param {number} count @param {Does} does */
function motion(now, count, does) {
  const which = (now.freedom % count) + 1;
  const next = (which % count) + 1;
  return html`<p class="small motion">
    <button aria-pressed=${now.moving} @click=${does.move}>${say(now.moving ? "do.still" : "do.move")}</button>
    ${now.moving && count > 1 ? html`<button @click=${does.another}>${say("do.another", { which: next, count })}</button>` : nothing}
    ${now.moving && now.drawn?.motion ? html`<span>${now.drawn.motion.told}</span>` : nothing}
  </p>`;
}

/** @param {import("../types.js").Answer[]} all @param {string} place */
export function answers(all, place) {
  return html`<ul class="answers" aria-label=${say("sentence.answers")}>
    ${all.flatMap((a, i) =>
      a.found
        ? a.lines.map(
            (line, k) =>
              html`<li>
                ${words(`${place} ${i} ${k}`, line.formula)}
                <span class="sense"
                  >${words(`${place} ${i} ${k} sense`, lower(line.sense))} <span aria-hidden="true">${line.arrow}</span></span
                >
              </li>`,
          )
        : [html`<li class="lost">${words(`${place} ${i}`, a.asked)}: ${say("sentence.lost")}</li>`],
    )}
  </ul>`;
}

/** @param {string} sentence */
export const upper = (sentence) => sentence.replace(/^\p{Ll}/u, (first) => first.toUpperCase());

/** A sense stands after a value here, within the line. @param {string} html */
const lower = (html) => html.replace(/^\p{Lu}(?=\p{Ll})/u, (first) => first.toLowerCase());

/** Enter in the name is the name, and says nothing else. @param {KeyboardEvent} e */
function named(e) {
  if (e.key !== "Enter" || e.isComposing) return;
  e.preventDefault();
  const field = /** @type {HTMLInputElement} */ (e.target);
  field.blur();
  field.focus();
}

/** @param {State} now @param {import("../types.js").Thing | undefined} one @param {Does} does */
function saying(now, one, does) {
  const phrase = now.role === "phrase" && one;
  const label = phrase ? say("sentence.phrase", { section: one.section || one.what }) : say("sentence.line");
  const submit = (/** @type {Event} */ e) => (e.preventDefault(), does.mean());
  return html`<form class="line" @submit=${submit} autocomplete="off">
    ${
      phrase
        ? html`<span class="where">${one.section}</span>${
              one.key && !/^\d+$/.test(one.key)
                ? html`<input
                      class="called"
                      aria-label=${say("sentence.called")}
                      .value=${now.called ?? one.key}
                      size=${Math.max(one.key.length, 1)}
                      spellcheck="false"
                      @input=${(/** @type {Event} */ e) => does.call(/** @type {HTMLInputElement} */ (e.target).value)}
                      @keydown=${named}
                      @change=${(/** @type {Event} */ e) => /** @type {HTMLInputElement} */ (e.target).value !== one.key && does.rename(/** @type {HTMLInputElement} */ (e.target).value)}
                    /><span aria-hidden="true">:</span>`
                : nothing
            }`
        : nothing
    }
    <input
      id="line"
      aria-label=${label}
      placeholder=${phrase ? "" : say(now.window[0] < 736 ? "sentence.example" : "sentence.placeholder")}
      .value=${now.draft}
      aria-describedby="amiss"
      aria-invalid=${now.fault !== null}
      spellcheck="false"
      autocapitalize="off"
      enterkeyhint="done"
      @input=${(/** @type {Event} */ e) => does.type(/** @type {HTMLInputElement} */ (e.target).value)}
    />
    <button class="mean">${say("do.mean")}</button>
    ${now.options.length ? html`<span class="options">${now.options.slice(0, 8).map((o) => html`<button type="button" @click=${() => (o.phrase ? does.direct(o) : does.take(now.draft + o.insert + " "))}>${o.means}</button>`)}</span>` : nothing}
  </form>
  ${amiss(now)}`;
}

/** Why what is typed is not understood, and a line that would be. @param {State} now */
function amiss({ fault }) {
  return html`<p class="amiss" id="amiss" role="status">${fault ? html`${ended(fault.sentence)} ${fault.hint ? html`<span class="hint">${ended(fault.hint)}</span> ` : nothing}${fault.example ? html`<span class="hint">${say("sentence.right", { example: fault.example })}</span>` : nothing}` : nothing}</p>`;
}

/** @param {string} sentence */
const ended = (sentence) => upper(sentence) + (/[.!?]$/.test(sentence) ? "" : ".");

/** @param {State} now @param {Does} does */
function sayings(now, does) {
  return html`<ol class="sayings" aria-label=${say("sentence.sayings")}>
    ${now.sayings.slice(0, 9).map(
      (s, k) =>
        html`<li>
          <button
            class=${k === now.chosen ? "chosen" : ""}
            aria-keyshortcuts=${k + 1}
            title=${s.means}
            @pointerdown=${() => does.press(s)}
            @click=${(/** @type {MouseEvent} */ e) => does.choose(does.lifted(s, e.detail === 0))}
          >
            <kbd aria-hidden="true">${k + 1}</kbd>
            ${offer(s)}
          </button>
        </li>`,
    )}
  </ol>`;
}

/** What is offered: a phrase of a section, another name, or a question to be taken back. @param {import("../types.js").Saying} s */
function offer(s) {
  if (s.drops) return html`<span class="phrase">${say("sentence.unask", { phrase: s.phrase })}</span>`;
  if (s.pins) return html`<span class="phrase">${say("sentence.pins", { a: s.pins[0], b: s.pins[1], at: s.phrase })}</span>`;
  if (s.renames) return html`<span class="phrase">${say(`sentence.${s.renames === "swap" ? "swap" : "rename"}`, { name: s.phrase, old: s.name ?? "" })}</span>`;
  return html`<span class="section">${s.section}</span> <span class="phrase">${s.name ? `${s.name}: ` : ""}${blanked(s)}</span>`;
}

/** @param {import("../types.js").Saying} s */
function blanked(s) {
  const out = [];
  let from = 0;
  for (const [a, b] of s.blanks ?? []) {
    out.push(
      s.phrase.slice(from, toUnits(s.phrase, a)),
      html`<u>${s.phrase.slice(toUnits(s.phrase, a), toUnits(s.phrase, b))}</u>`,
    );
    from = toUnits(s.phrase, b);
  }
  return [...out, s.phrase.slice(from)];
}
