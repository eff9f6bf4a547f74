/** What is said, typed or touched elsewhere than on the sheet comes into view there: moved just so far, smaller only where it must be. */
import { sighted, through, toMetres } from "../kernels/view.js";
import { toUnits } from "../kernels/spans.js";
import { point, store, text } from "../store.js";
import { look } from "./looking.js";
import { shapes } from "./shapes.js";

/** @typedef {import("../types.js").Spot} Spot @typedef {import("../types.js").State} State */

/** @param {Spot[]} places metres @param {Spot[]} [others] those of them that are seen stay in sight */
export function bring(places, others = []) {
  const { view, window, scale, act } = store.get();
  if (act !== "state" && act !== "apart") return;
  const next = sighted(view, places, others, window);
  if (next === view) return;
  // Smaller on screen, the figure is drawn anew, so that its letters stay as they are.
  const smaller = next.k < view.k && scale !== null;
  store.set({ view: next, scale: smaller ? (scale * next.k) / view.k : scale });
  if (smaller) void look();
}

/** Things that are touched, wherever that was done; one of which some is seen stays where it is. @param {string[]} ids */
export function show(ids) {
  const { view, window } = store.get();
  const hidden = shapes().filter(
    (s) => ids.includes(s.id) && !s.lines.some((line) => line.some((p, k) => through(line[Math.max(k - 1, 0)], p, window))),
  );
  bring(hidden.flatMap((s) => s.lines.flat().map((p) => toMetres(view, p))));
}

/** Points that are new or elsewhere. @param {State} now @param {State} before */
export function showNew(now, before) {
  const old = new Map((before.drawn?.points ?? []).map((p) => [p.name, p.at]));
  const points = now.drawn?.points ?? [];
  const moved = points.filter((p) => String(old.get(p.name)) !== String(p.at));
  bring(
    moved.map((p) => p.at),
    points.map((p) => p.at),
  );
}

/** The thing that stands at a place of the text, by its phrase or its name. @param {number} at UTF-16 units @returns {string | undefined} id */
export function standing(at) {
  const { drawn, history } = store.get();
  return drawn?.things?.find((t) => t.span && toUnits(history.text, t.span[0]) <= at && at <= toUnits(history.text, t.span[1]))?.id;
}

/** What a fault is about, where that is drawn: the thing there, what its entry is called, or the points that its line names. @param {import("../types.js").Fault} fault */
export function showFault(fault) {
  if (!fault.span) return;
  const { drawn } = store.get();
  const [section, key] = fault.path.split(" > ");
  const one = standing(toUnits(text(), fault.span[0])) ?? drawn?.things?.find((t) => t.section === section && t.key === key)?.id;
  const words = point(key) ? [key] : (text().split("\n")[fault.line - 1]?.match(/[\p{L}\p{N}_']+/gu) ?? []);
  show(one ? [one] : words.map((w) => `point ${w}`));
}

/** Milliseconds after the last key in the script: a number that is half typed is no place to go to. */
const PAUSE = 600;
let timer = 0;
/** What was drawn before somebody began to type in the script. @type {State | null} */
let first = null;

/** After a change of what the page knows. @param {State} now @param {State} before @param {() => boolean} busy whether a hand holds something */
export function watch(now, before, busy) {
  if (now.drawn !== before.drawn && now.drawn) {
    clearTimeout(timer);
    const since = first ?? before;
    if (document.activeElement instanceof HTMLTextAreaElement) {
      first = since;
      timer = window.setTimeout(() => ((first = null), !busy() && showNew(store.get(), since)), PAUSE);
    } else {
      first = null;
      showNew(now, since);
    }
  }
  if (now.touched !== before.touched) show(now.touched);
  if (now.cross && now.cross !== before.cross) bring([now.cross]);
}
