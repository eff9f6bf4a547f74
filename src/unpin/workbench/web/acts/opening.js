/** Opening a problem of the folder, a copy of an example, or an empty sheet. */
import { ask, send } from "../net.js";
import { begun, stepped } from "../kernels/history.js";
import { fresh, store, thing } from "../store.js";
import { say } from "../words.js";
import { look } from "./looking.js";
import { remembered } from "./remembering.js";
import { keep, leftBehind, save } from "./saving.js";
import { touch, type } from "./saying.js";

export async function list() {
  const reply = await ask("/folder");
  if (reply.ok) store.set({ folder: { name: reply.name, files: reply.files, examples: reply.examples } });
}

/** @param {string} name @returns {Promise<void>} */
export async function open(name) {
  await save();
  const reply = await ask("/file", { name });
  if (!reply.ok) {
    store.set({ notice: reply.message ?? "" });
    return;
  }
  await begin(reply.name, reply.text, reply.stamp);
}

/** @param {string} example @returns {Promise<void>} */
export async function copy(example) {
  await save();
  const reply = await send("/copy", { example });
  if (!reply.ok) store.set({ notice: reply.message ?? "" });
  else await begin(reply.name, reply.text, reply.stamp);
}

/** An empty sheet; its file is made with the first change. @param {string} [called] @returns {Promise<void>} */
export async function blank(called) {
  await save();
  const taken = new Set(store.get().folder?.files.map((f) => f.name));
  const stem = (called ?? "").trim().replace(/\.ya?ml$/i, "") || say("folder.untitled");
  let name = `${stem}.yaml`;
  for (let k = 2; taken.has(name); k++) name = `${stem}-${k}.yaml`;
  await begin(name, "", null);
}

/** @param {string} name @param {string} text @param {string | null} stamp */
async function begin(name, text, stamp) {
  const { folder, theme, window, script } = store.get();
  const draft = leftBehind(name);
  const put = remembered(name, text);
  store.set({
    ...fresh(),
    folder,
    theme,
    window,
    script,
    act: store.get().act,
    doc: { name, stamp, onDisk: text },
    history: put?.history ?? begun(text),
    scale: text.trim() ? null : fresh().scale,
  });
  if (!text.trim()) store.set({ view: { ...store.get().view, x: window[0] * 0.36, y: window[1] * 0.78 } });
  if (draft && draft.text !== text) {
    if (draft.stamp === stamp) {
      store.set({ history: remembered(name, draft.text)?.history ?? stepped(begun(text), draft.text), notice: say("kept.restored") });
      keep();
    } else store.set({ history: stepped(begun(text), draft.text), clash: { text, stamp, why: "draft" } });
  }
  document.title = say("title.file", { file: name });
  history.replaceState(null, "", address(name, store.get().act));
  await look();
  await resume(put ?? remembered(name, draft?.text ?? text));
}

/** The sentence that was being typed when the page was left. @param {import("./remembering.js").Kept | null} put @returns {Promise<void>} */
async function resume(put) {
  if (!put?.draft) return;
  if (put.role === "new") return type(put.draft);
  if (!put.touched.every((id) => thing(id)) || put.draft === thing(put.touched[0])?.phrase) return;
  await touch(put.touched);
  store.set({ draft: put.draft });
}

/** The address of an act on a file: it can be kept as a bookmark. @param {string} name @param {string} act */
export const address = (name, act) => `?file=${encodeURIComponent(name)}#${act}`;

/** A text that came from disk, put in the place of ours, which had no change of its own. @param {string} text @param {string} stamp */
export function replaced(text, stamp) {
  const { doc, history: past } = store.get();
  if (!doc) return;
  store.set({ doc: { ...doc, stamp, onDisk: text }, history: stepped(past, text), notice: say("kept.reread") });
  void look();
}

/** Leave the file for the list of files. */
export async function leave() {
  await save();
  store.set({ ...fresh(), folder: store.get().folder, theme: store.get().theme, window: store.get().window });
  document.title = say("title.bare");
  history.replaceState(null, "", location.pathname);
  await list();
}
