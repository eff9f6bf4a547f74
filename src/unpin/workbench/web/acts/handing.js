/** Handing out: every form in which the problem can be published, seen first, then written beside the problem file. */
import { bytes, send } from "../net.js";
import { store, text } from "../store.js";

/** @typedef {import("../types.js").State["hand"]} Hand */

export const ENDINGS = /** @type {const} */ ([".html", ".pdf", ".md", ".tex", ".svg", ".png"]);
export const DRAWN = [".svg", ".png"];
/** Forms that are read on a screen. */
export const COLOURED = [".html", ...DRAWN];
let asked = 0;

/** @param {Partial<Hand>} patch @returns {Promise<void>} */
export function choose(patch) {
  store.set({ hand: { ...store.get().hand, ...patch, saved: "", page: patch.page ?? 1 } });
  return preview();
}

/** The picture that the desk keeps for us, and its key. @type {{trace: import("../types.js").Trace | null, key: string}} */
let taken = { trace: null, key: "" };

/** The key of the traced picture where it is to be published too, else "". It is sent once, and again when it was moved. @returns {Promise<string>} */
async function beneath() {
  const { hand, trace } = store.get();
  if (!hand.beneath || !trace) return "";
  if (taken.trace !== trace) {
    const { href, size, lay, faded } = trace;
    const reply = await send("/beneath", { source: href, size, lay, faded });
    if (!reply.ok) store.set({ hand: { ...store.get().hand, beneath: false }, notice: reply.message ?? "" });
    taken = reply.ok ? { trace, key: reply.key } : { trace: null, key: "" };
  }
  return taken.key;
}

/** A desk that was closed in between knows the picture no more. @param {import("../net.js").Reply} reply */
function forget(reply) {
  if (reply.code === "picture") taken = { trace: null, key: "" };
}

/** What is wanted, all but the text. @param {Hand} hand */
async function wanted(hand) {
  return {
    name: store.get().doc?.name ?? "",
    ending: hand.ending,
    which: hand.which || "problem",
    short: hand.short,
    fade: hand.short ? 0 : hand.fade,
    route: hand.route,
    body: hand.body,
    figures: hand.figures,
    language: hand.language,
    colours: COLOURED.includes(hand.ending) ? hand.colours : "",
    beneath: await beneath(),
  };
}

/** The colours in which the desk shows what has those of its reader: its own, where they were chosen. @param {import("../types.js").State} now */
export const reader = (now) => (now.theme === "auto" ? "" : now.theme);
store.hear((now, before) => {
  if (now.theme !== before.theme && now.act === "hand-out" && COLOURED.includes(now.hand.ending)) void preview();
});

/** @returns {Promise<void>} */
export async function preview() {
  const mine = ++asked;
  const { hand, doc } = store.get();
  if (!doc) return;
  if (hand.preview?.url.startsWith("blob:")) URL.revokeObjectURL(hand.preview.url);
  if (hand.ending === ".html") {
    const all = { ...(await wanted(hand)), reader: reader(store.get()) };
    if (mine !== asked) return;
    const how = new URLSearchParams(Object.entries(all).map(([k, v]) => [k, v === false ? "" : String(v)]));
    store.set({ hand: { ...store.get().hand, busy: false, preview: { type: "page", url: `/teach?${how}`, text: "" } } });
    return;
  }
  store.set({ hand: { ...hand, busy: true, preview: null } });
  const reply = await bytes("/publish", { text: text(), ...(await wanted(hand)), reader: reader(store.get()), ...(hand.ending === ".pdf" ? { page: hand.page } : {}) });
  if (mine !== asked) return;
  const now = store.get().hand;
  if (!reply.ok || !reply.bytes) {
    forget(reply);
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
  const reply = await send("/publish", { text: text(), ...(await wanted(hand)), save: true });
  forget(reply);
  store.set({
    hand: { ...store.get().hand, saved: reply.ok ? reply.file : "" },
    notice: reply.ok ? "" : (reply.message ?? ""),
    word: reply.ok ? reply.file : (reply.message ?? ""),
  });
}
