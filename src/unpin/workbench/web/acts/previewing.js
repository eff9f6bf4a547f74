/** While something is dragged: on a pause the engine draws and judges the text as it would be, without making it a step. */
import { send } from "../net.js";
import { store, text } from "../store.js";

const PAUSE = 90;
let timer = 0;
let asked = 0;
/** @type {Pick<import("../types.js").State, "look" | "drawn"> | null} */
let kept = null;

/** @param {{name: string, at: [string, string]}[]} moves @param {() => void} shown called when the engine's drawing is on the page */
export function preview(moves, shown) {
  clearTimeout(timer);
  const mine = ++asked;
  timer = window.setTimeout(async () => {
    const acts = moves.map((m) => ({ do: "point", ...m }));
    const edited = await send("/edit", { text: text(), acts, look: { scale: store.get().scale, want: ["figure"], freedom: 0 } });
    const reply = edited.look;
    if (mine !== asked || !edited.ok || !reply.figure) return;
    const now = store.get();
    kept ??= { look: now.look, drawn: now.drawn };
    store.set({ look: /** @type {any} */ (reply), drawn: /** @type {any} */ (reply) });
    requestAnimationFrame(() => mine === asked && shown());
  }, PAUSE);
}

/** No more of it. @param {boolean} back whether the page shows again what it showed before the drag */
export function unpreview(back) {
  clearTimeout(timer);
  asked++;
  if (back && kept) store.set(kept);
  if (back) kept = null;
}

/** The drag has become a step: what it showed on the way needs no way back. */
export function previewed() {
  kept = null;
}
