/** Across the head: the problem, and the acts of the teacher in their order, each with an address of its own. */
import { html, nothing } from "../lib/lit-html.js";
import { say } from "../words.js";
import { store } from "../store.js";

export const ACTS = /** @type {const} */ (["state", "apart", "solve", "teach", "hand-out"]);

/** @param {import("../types.js").State} now @param {{leave: () => void}} does */
export function head(now, does) {
  const { doc } = now;
  return html`<header>
    <div class="whose">
      <a href="/" @click=${(/** @type {Event} */ e) => (e.preventDefault(), does.leave())} title=${say("head.folder")}
        >${now.folder?.name ?? "unpin"}</a
      >
      ${
        doc
          ? html`<h1 class="file">${doc.name}</h1>
              <span class="kept ${now.kept}" role="status">${say(`kept.${now.kept}`)}</span>`
          : nothing
      }
    </div>
    ${
      doc
        ? html`<nav aria-label=${say("head.acts")}>
              ${ACTS.map(
                (act) =>
                  html`<a href="?file=${encodeURIComponent(doc.name)}#${act}" aria-current=${now.act === act ? "page" : "false"} data-name=${say(`act.${act}`)}
                    >${say(`act.${act}`)}</a
                  >`,
              )}
            </nav>
            <p class="beside">
              ${now.act === "state" ? html`<button aria-expanded=${now.script} @click=${() => store.set({ script: !now.script })}>${say("head.script")}</button>` : nothing}
              <button aria-expanded=${now.keys} @click=${() => store.set({ keys: !now.keys })}>${say("head.keys")}</button>
            </p>`
        : nothing
    }
  </header>`;
}
