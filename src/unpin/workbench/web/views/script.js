/** The script: the problem file as its author wrote it, faults underlined where they stand. The same document as the drawing. */
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
    <p class="small written">${say("script.title")} <button @click=${does.close}>${say("do.close")}</button></p>
    <div class="paper">
      <div class="leaf">
        <pre aria-hidden="true">
${marked(text, faults).map((p) => (p.severity ? html`<mark class=${p.severity}>${p.text}</mark>` : p.text))}${"\n"}</pre>
        <textarea
          aria-label=${say("script.text")}
          aria-invalid=${now.look?.sound === false}
          aria-describedby="faults"
          spellcheck="false"
          autocapitalize="off"
          .value=${text}
          @input=${(/** @type {Event} */ e) => does.write(/** @type {HTMLTextAreaElement} */ (e.target).value)}
          @click=${(/** @type {Event} */ e) => does.caret(/** @type {HTMLTextAreaElement} */ (e.target).selectionStart)}
        ></textarea>
      </div>
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

/** The caret at the place of a fault, which is selected and scrolled to. @param {string} text @param {import("../types.js").Fault} fault */
export function stand(text, fault) {
  const area = /** @type {HTMLTextAreaElement | null} */ (document.querySelector("#script textarea"));
  const under = area?.previousElementSibling;
  if (!area || !under || !fault.span) return;
  const from = toUnits(text, fault.span[0]);
  area.focus({ preventScroll: true });
  area.setSelectionRange(from, toUnits(text, fault.span[1]));
  // The text beneath stands where that of the field does, and tells where the place is.
  const [place, sheet] = [placeIn(under, from), area.closest(".paper")];
  if (!place || !sheet) return;
  const seen = sheet.getBoundingClientRect();
  sheet.scrollTop += place.top - seen.top - seen.height / 2;
}

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
