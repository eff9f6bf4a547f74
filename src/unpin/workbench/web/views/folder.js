/** Before a problem is open: the folder's problems, an empty sheet, and examples to begin from. */
import { html, nothing } from "../lib/lit-html.js";
import { language, say } from "../words.js";

/** @param {import("../types.js").State} now @param {{open: (name: string) => void, copy: (name: string) => void, blank: (name: string) => void}} does */
export function folder(now, does) {
  const { folder: there } = now;
  if (!there) return html`<main class="folder"><p role="status">${now.notice || say("folder.reading")}</p></main>`;
  const begin = (/** @type {SubmitEvent} */ e) => {
    e.preventDefault();
    does.blank(String(new FormData(/** @type {HTMLFormElement} */ (e.target)).get("called") ?? ""));
  };
  return html`<main class="folder">
    <h1>${say("folder.title")}</h1>
    ${now.notice ? html`<p class="notice" role="status">${now.notice}</p>` : nothing}
    <form @submit=${begin}>
      <label for="called">${say("folder.new")}</label>
      <input id="called" name="called" maxlength="80" placeholder=${say("folder.untitled")} />
      <button>${say("folder.begin")}</button>
    </form>
    ${
      there.files.length
        ? html`<h2>${say("folder.files", { folder: there.name })}</h2>
            <ul>
              ${byTitle(there.files).map(
                (f) =>
                  html`<li>
                    <a
                      href="?file=${encodeURIComponent(f.name)}#state"
                      @click=${(/** @type {Event} */ e) => (e.preventDefault(), does.open(f.name))}
                      >${f.title || f.name}</a
                    >
                    <span class="file">${f.name}</span>
                  </li>`,
              )}
            </ul>`
        : nothing
    }
    <h2>${say("folder.examples")}</h2>
    <ul>
      ${byTitle(there.examples).map((f) => html`<li><button class="plain" @click=${() => does.copy(f.name)}>${f.title || f.name}</button></li>`)}
    </ul>
  </main>`;
}

/** @template {{name: string, title: string}} F @param {F[]} files @returns {F[]} */
const byTitle = (files) => [...files].sort((a, b) => (a.title || a.name).localeCompare(b.title || b.name, language, { numeric: true }));
