/** The script: the problem file as text, faults marked where they stand. The same document as the drawing. */
import { html, nothing } from "../lib/lit-html.js";
import { lineAt, marked, toUnits } from "../kernels/spans.js";
import { say } from "../words.js";
import { upper } from "./sentence.js";

/** @param {import("../types.js").State} now @param {{write: (text: string) => void, close: () => void, caret: (at: number) => void, show: (fault: import("../types.js").Fault) => void}} does */
export function script(now, does) {
  if (!now.script) return nothing;
  const text = now.history.text;
  const faults = now.look?.diagnostics ?? [];
  return html`<aside id="script" aria-label=${say("script.name")}>
    <h2>${now.doc?.name} <button @click=${does.close}>${say("do.close")}</button></h2>
    <div class="paper">
      <pre aria-hidden="true">
${marked(text, faults).map((p) => (p.severity ? html`<mark class=${p.severity}>${p.text}</mark>` : p.text))}${"\n"}</pre>
      <textarea
        aria-label=${say("script.text")}
        aria-invalid=${now.look?.sound === false}
        aria-describedby="faults"
        spellcheck="false"
        autocapitalize="off"
        wrap="off"
        .value=${text}
        @input=${(/** @type {Event} */ e) => does.write(/** @type {HTMLTextAreaElement} */ (e.target).value)}
        @scroll=${scrolled}
        @click=${(/** @type {Event} */ e) => does.caret(/** @type {HTMLTextAreaElement} */ (e.target).selectionStart)}
      ></textarea>
    </div>
    <ul id="faults">
      ${faults.map(
        (f) =>
          html`<li class=${f.severity} @click=${() => does.show(f)}>
            <button>${lineOf(text, f)}</button>
            ${upper(f.sentence)}.${f.hint ? html` <span class="hint">${upper(f.hint)}.</span>` : nothing}
          </li>`,
      )}
    </ul>
  </aside>`;
}

/** The line of the file that a fault stands in, to be set beside what is said of it. @param {string} text @param {import("../types.js").Fault} f */
const lineOf = (text, f) => text.split("\n")[(f.line ?? lineAt(text, toUnits(text, f.span?.[0] ?? 0))) - 1]?.trim() || (f.line ?? "");

/** The marks lie beneath the text and follow it. @param {Event} e */
function scrolled(e) {
  const area = /** @type {HTMLElement} */ (e.target);
  const under = area.previousElementSibling;
  if (under) [under.scrollTop, under.scrollLeft] = [area.scrollTop, area.scrollLeft];
}

/** The caret at the place of a fault, which is selected and scrolled to. @param {string} text @param {import("../types.js").Fault} fault */
export function stand(text, fault) {
  const area = /** @type {HTMLTextAreaElement | null} */ (document.querySelector("#script textarea"));
  const under = area?.previousElementSibling;
  if (!area || !under || !fault.span) return;
  const from = toUnits(text, fault.span[0]);
  area.focus({ preventScroll: true });
  area.setSelectionRange(from, toUnits(text, fault.span[1]));
  // The text beneath stands where that of the field does, and tells where the place is.
  const [place, paper] = [placeIn(under, from), area.getBoundingClientRect()];
  if (place) area.scrollTop += place.top - paper.top - paper.height / 2;
  if (place) area.scrollLeft += Math.max(0, place.left - paper.right + MARGIN) + Math.min(0, place.left - paper.left - MARGIN);
}

/** Pixels kept free beside a place that is scrolled to. */
const MARGIN = 60;

/** @param {Element} root @param {number} at UTF-16 units of its text @returns {DOMRect | null} */
function placeIn(root, at) {
  const texts = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
  for (let node = texts.nextNode(), left = at; node; left -= node.nodeValue?.length ?? 0, node = texts.nextNode()) {
    if (left > (node.nodeValue?.length ?? 0) - 1) continue;
    const range = document.createRange();
    range.setStart(node, left);
    range.setEnd(node, left + 1);
    return range.getBoundingClientRect();
  }
  return null;
}
