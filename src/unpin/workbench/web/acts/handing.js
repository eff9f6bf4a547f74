/** Handing out: every form in which the problem can be published, seen first, then written beside the problem file. */
import { bytes, send } from "../net.js";
import { store, text } from "../store.js";

/** @typedef {import("../types.js").State["hand"]} Hand */

export const ENDINGS = /** @type {const} */ ([".html", ".pdf", ".md", ".tex", ".svg", ".png"]);
export const DRAWN = [".svg", ".png"];
let asked = 0;

/** @param {Partial<Hand>} patch @returns {Promise<void>} */
export function choose(patch) {
  store.set({ hand: { ...store.get().hand, ...patch, saved: "", page: patch.page ?? 1 } });
  return preview();
}

/** @param {Hand} hand */
function request(hand) {
  const { doc } = store.get();
  return {
    text: text(),
    name: doc?.name ?? "",
    ending: hand.ending,
    which: hand.which || "problem",
    short: hand.short,
    fade: hand.short ? 0 : hand.fade,
    route: hand.route,
  };
}

/** @returns {Promise<void>} */
export async function preview() {
  const mine = ++asked;
  const { hand, doc } = store.get();
  if (!doc) return;
  if (hand.preview?.url.startsWith("blob:")) URL.revokeObjectURL(hand.preview.url);
  if (hand.ending === ".html") {
    const how = new URLSearchParams({
      name: doc.name,
      short: hand.short ? "1" : "",
      fade: String(hand.short ? 0 : hand.fade),
      route: hand.route,
    });
    store.set({ hand: { ...hand, busy: false, preview: { type: "page", url: `/teach?${how}`, text: "" } } });
    return;
  }
  store.set({ hand: { ...hand, busy: true, preview: null } });
  const reply = await bytes("/publish", { ...request(hand), ...(hand.ending === ".pdf" ? { page: hand.page } : {}) });
  if (mine !== asked) return;
  const now = store.get().hand;
  if (!reply.ok || !reply.bytes) {
    store.set({ hand: { ...now, busy: false, preview: { type: "fault", url: "", text: reply.message ?? "" } } });
    return;
  }
  const type = hand.ending === ".pdf" ? "image" : DRAWN.includes(hand.ending) ? "image" : "text";
  const made =
    type === "text"
      ? { type, url: "", text: await reply.bytes.text() }
      : { type, url: URL.createObjectURL(reply.bytes), text: "" };
  store.set({ hand: { ...now, busy: false, pages: Number(reply.headers?.get("X-Pages") ?? 1), preview: made } });
}

/** Write the file beside the problem. @returns {Promise<void>} */
export async function publish() {
  const { hand } = store.get();
  const reply = await send("/publish", { ...request(hand), save: true });
  store.set({
    hand: { ...store.get().hand, saved: reply.ok ? reply.file : "" },
    notice: reply.ok ? "" : (reply.message ?? ""),
    word: reply.ok ? reply.file : (reply.message ?? ""),
  });
}
