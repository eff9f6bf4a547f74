/** A picture beneath the sheet, for tracing. It stays in this browser, by the name of the file; only where it is to be published is it given to the desk. */
import { laid, pixelAt, upright } from "../kernels/tracing.js";
import { toMetres } from "../kernels/view.js";
import { perMetre, store } from "../store.js";

const BASE = "unpin pictures";

/** @returns {Promise<IDBDatabase>} */
function base() {
  return new Promise((done, fail) => {
    const asked = indexedDB.open(BASE, 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore("traces");
    asked.onsuccess = () => done(asked.result);
    asked.onerror = () => fail(asked.error);
  });
}

/** @param {IDBTransactionMode} how @param {(traces: IDBObjectStore) => IDBRequest} what @returns {Promise<any>} */
async function kept(how, what) {
  try {
    const opened = await base();
    return await new Promise((done) => {
      const asked = what(opened.transaction("traces", how).objectStore("traces"));
      asked.onsuccess = () => done(asked.result);
      asked.onerror = () => done(null);
    });
  } catch {
    return null;
  }
}

/** The picture that was laid beneath this file before, if any. @returns {Promise<void>} */
export async function recall() {
  const name = store.get().doc?.name;
  const trace = name ? await kept("readonly", (t) => t.get(name)) : null;
  if (name === store.get().doc?.name) store.set({ trace: trace ?? null });
}

/** @param {import("../types.js").Trace | null} trace */
function keep(trace) {
  store.set({ trace });
  const name = store.get().doc?.name;
  if (name) void kept("readwrite", (t) => (trace ? t.put(trace, name) : t.delete(name)));
}

const LONGEST = 3000;

/** The dots of the picture alone, as PNG or JPEG, upright, no more than a figure can use. @param {HTMLImageElement} image @param {string} type @returns {{href: string, size: [number, number]}} */
function asDots(image, type) {
  const [wide, high] = [image.naturalWidth, image.naturalHeight];
  const share = Math.min(1, LONGEST / Math.max(wide, high));
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(wide * share);
  canvas.height = Math.round(high * share);
  canvas.getContext("2d")?.drawImage(image, 0, 0, canvas.width, canvas.height);
  return { href: canvas.toDataURL(type === "image/png" ? type : "image/jpeg", 0.9), size: [canvas.width, canvas.height] };
}

/** Lay a picture beneath, upright, as wide as what is seen. @param {Blob} file @returns {Promise<void>} */
export async function lay(file) {
  const image = new Image();
  image.src = await new Promise((/** @type {(s: string) => void} */ done) => {
    const reader = new FileReader();
    reader.onload = () => done(String(reader.result));
    reader.readAsDataURL(file);
  });
  await image.decode();
  const { href, size } = asDots(image, file.type);
  const { view, window } = store.get();
  const corner = toMetres(view, [window[0] * 0.12, window[1] * 0.88]);
  const across = Math.min((window[0] * 0.76) / view.k, ((window[1] * 0.76) / view.k) * (size[0] / size[1]));
  keep({ href, size, lay: upright(size, corner, across), faded: 0.4, marks: [], marking: true });
}

/** Mark a place of the picture; the third mark begins anew. @param {[number, number]} pixels of the sheet */
export function mark(pixels) {
  const { trace, view } = store.get();
  if (!trace) return;
  const pixel = pixelAt(trace.lay, toMetres(view, pixels));
  const marks = [...(trace.marks.length > 1 ? [] : trace.marks), { pixel, metres: null }];
  keep({ ...trace, marks, marking: marks.length < 2 });
}

/** Say where a marked place is, in units of the file; with both known, the picture takes its size and tilt. @param {number} k @param {string} said `x, y` */
export function known(k, said) {
  const { trace } = store.get();
  const numbers = said
    .split(/[,;\s]+/)
    .filter(Boolean)
    .map(Number);
  if (!trace || numbers.length !== 2 || numbers.some(Number.isNaN)) return;
  const metres = /** @type {[number, number]} */ (numbers.map((n) => n / perMetre()));
  const marks = trace.marks.map((m, i) => (i === k ? { ...m, metres } : m));
  const [a, b] = marks;
  const set = a?.metres && b?.metres ? laid([a.pixel, b.pixel], [a.metres, b.metres]) : null;
  keep({ ...trace, marks, lay: set ?? trace.lay });
}

/** @param {number} faded 0 to 1 */
export function fade(faded) {
  const { trace } = store.get();
  if (trace) keep({ ...trace, faded });
}

export function markAgain() {
  const { trace } = store.get();
  if (trace) keep({ ...trace, marks: [], marking: true });
}

export const remove = () => keep(null);
