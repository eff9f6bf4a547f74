/** Keys while the page in a frame has the focus: what it does not take itself is the desk's. It is a page of our own origin, so that the desk can listen at its door. */
import { store } from "../store.js";

/** @param {KeyboardEvent} e */
const ours = (e) => e.altKey || e.key === "?" || e.key === "Escape";

/** The same key at the desk. @param {KeyboardEvent} e */
function handOver(e) {
  const { key, code, altKey, shiftKey } = e;
  const taken = !document.body.dispatchEvent(new KeyboardEvent("keydown", { key, code, altKey, shiftKey, bubbles: true, cancelable: true }));
  if (taken) e.preventDefault();
}

/** Listen to a frame; asked for whenever a page has come into it. @param {Event} loaded */
export function listen(loaded) {
  const page = /** @type {HTMLIFrameElement} */ (loaded.target).contentWindow;
  page?.addEventListener("keydown", (e) => ours(e) && !e.defaultPrevented && !e.ctrlKey && !e.metaKey && handOver(e));
  // The list of keys lies over the page, and goes first.
  page?.addEventListener(
    "keydown",
    (e) => {
      if (e.key !== "Escape" || !store.get().keys) return;
      e.stopImmediatePropagation();
      handOver(e);
    },
    true,
  );
}
