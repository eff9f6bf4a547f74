/** Nothing is lost: saved as it goes, a draft in the browser until it is on disk, and never over somebody else's text. */
import { ask, send } from "../net.js";
import { store, text } from "../store.js";
import { say } from "../words.js";

const PAUSE = 350;
let timer = 0;
let busy = false;
/** Texts that were sent and of which no word came back: one of them may be on disk, and is then our own and nobody else's. @type {{name: string, text: string}[]} */
let unsure = [];
const MOST_UNSURE = 20;

/** @param {string} name */
const drawer = (name) => `unpin draft ${name}`;

/** Put the text aside in the browser, and on disk in a moment. */
export function keep() {
  const { doc, clash } = store.get();
  if (!doc) return;
  try {
    if (text() === doc.onDisk) localStorage.removeItem(drawer(doc.name));
    else localStorage.setItem(drawer(doc.name), JSON.stringify({ text: text(), stamp: doc.stamp }));
  } catch {
    // A full or forbidden store only costs the second net; the file is still written below.
  }
  if (text() === doc.onDisk || clash) return;
  store.set({ kept: "unsaved" });
  clearTimeout(timer);
  timer = window.setTimeout(() => void save(), PAUSE);
}

/** Write the text to its file now. @param {{keepalive?: boolean}} [how] @returns {Promise<void>} */
export async function save(how = {}) {
  clearTimeout(timer);
  const { doc, clash } = store.get();
  if (!doc || clash || text() === doc.onDisk) return;
  if (busy && !how.keepalive) {
    timer = window.setTimeout(() => void save(), PAUSE);
    return;
  }
  busy = true;
  const sent = text();
  store.set({ kept: "saving" });
  unsure = [...unsure.filter((one) => one.name === doc.name && one.text !== sent), { name: doc.name, text: sent }].slice(-MOST_UNSURE);
  const reply = await send("/save", { name: doc.name, text: sent, stamp: doc.stamp }, how);
  busy = false;
  const now = store.get();
  if (now.doc?.name !== doc.name) return;
  if (reply.ok) {
    unsure = [];
    store.set({ doc: { ...now.doc, stamp: reply.stamp, onDisk: sent }, kept: "saved" });
    keep();
  } else if (reply.code === "changed" && ours(reply.text, reply.stamp)) {
    keep();
  } else if (reply.code === "changed") {
    store.set({ clash: { text: reply.text ?? "", stamp: reply.stamp ?? null, why: "changed" }, kept: "unsaved" });
  } else {
    store.set({ kept: reply.status === 0 ? "offline" : "unsaved", notice: reply.message ?? say("kept.offline") });
    timer = window.setTimeout(() => void save(), 3000);
  }
}

/** Whether what is on disk is one of our own texts, saved when the server fell before it could say so: then that is where we go on from. @param {unknown} there @param {string} stamp */
function ours(there, stamp) {
  const { doc } = store.get();
  if (!doc || typeof there !== "string" || !unsure.some((one) => one.name === doc.name && one.text === there)) return false;
  store.set({ doc: { ...doc, stamp, onDisk: there }, kept: there === text() ? "saved" : "unsaved" });
  return true;
}

/** The draft that a closed window left behind, if there is one. @param {string} name @returns {{text: string, stamp: string | null} | null} */
export function leftBehind(name) {
  try {
    const kept = JSON.parse(localStorage.getItem(drawer(name)) ?? "null");
    return kept && typeof kept.text === "string" ? kept : null;
  } catch {
    return null;
  }
}

/** Has another program, or another window, changed the file? Asked when the window wakes and every two seconds. @param {(text: string, stamp: string) => void} take */
export async function compare(take) {
  const { doc, clash } = store.get();
  if (!doc || clash || busy || document.hidden) return;
  const reply = await ask("/stamp", { name: doc.name });
  const now = store.get();
  if (!reply.ok || now.doc !== doc || busy || now.clash) return;
  if (now.kept === "offline") void save();
  if (reply.stamp === null || reply.stamp === doc.stamp) return;
  const there = await ask("/file", { name: doc.name });
  if (!there.ok || store.get().doc !== doc || busy) return;
  if (ours(there.text, there.stamp)) keep();
  else if (text() === doc.onDisk) take(there.text, there.stamp);
  else if (there.text !== text()) store.set({ clash: { text: there.text, stamp: there.stamp, why: "changed" } });
  else store.set({ doc: { ...doc, stamp: there.stamp, onDisk: there.text }, kept: "saved" });
}

/** Settle a clash: keep one of the two texts. The other stays one undo away. @param {"mine" | "theirs"} which @param {(text: string) => void} change */
export function settle(which, change) {
  const { doc, clash } = store.get();
  if (!doc || !clash) return;
  store.set({ clash: null, doc: { ...doc, stamp: clash.stamp, onDisk: clash.text } });
  if (which === "theirs") change(clash.text);
  keep();
}
