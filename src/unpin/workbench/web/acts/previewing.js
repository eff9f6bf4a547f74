/** While something is dragged: on a pause the engine draws and judges the text as it would be, without making it a step. */
import { send } from "../net.js";
import { store, text } from "../store.js";

const PAUSE = 90;
let timer = 0;
let asked = 0;

/** @param {{name: string, at: [string, string]}[]} moves @param {() => void} shown called when the engine's drawing is on the page */
export function preview(moves, shown) {
  clearTimeout(timer);
  const mine = ++asked;
  timer = window.setTimeout(async () => {
    const edited = await send("/edit", { text: text(), acts: moves.map((m) => ({ do: "point", ...m })) });
    if (mine !== asked || !edited.ok) return;
    const now = store.get();
    const reply = await send("/look", { text: edited.text, scale: now.scale, want: ["figure"], freedom: 0, since: mine });
    if (mine !== asked || !reply.ok || !reply.figure) return;
    store.set({ look: /** @type {any} */ (reply), drawn: /** @type {any} */ (reply) });
    requestAnimationFrame(() => mine === asked && shown());
  }, PAUSE);
}

export function unpreview() {
  clearTimeout(timer);
  asked++;
}
