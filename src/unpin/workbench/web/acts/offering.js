/** The list of what can be said: it stands still while a press is on its way, and what is pressed is what is said. */
import { store } from "../store.js";

/** @typedef {import("../types.js").Saying} Saying */

/** Milliseconds for which a list that has just changed cannot be pressed: the hand meant what stood there before. */
const CALM = 250;
/** Milliseconds after which no click comes any more of a finger that has been lifted. A mouse clicks as it is lifted. */
const LATE = 700;

/** @type {Saying | null} */
let pressed = null;
/** @type {Saying[] | null} */
let waiting = null;
/** @type {Saying[]} */
let before = [];
let changed = -CALM;
let letting = 0;
/** @type {WeakSet<Saying>} */
const gone = new WeakSet();

/** @param {Saying | undefined} a @param {Saying | undefined} b */
const same = (a, b) => a !== undefined && b !== undefined && a.section === b.section && a.name === b.name && a.phrase === b.phrase && a.drops === b.drops;

/** Offer these; once the hand has let go, when it is pressing one. @param {Saying[]} sayings */
export function offered(sayings) {
  if (pressed) {
    waiting = sayings;
    return;
  }
  const was = store.get().sayings;
  if (!was.length && !sayings.length) return;
  if (was.length) before = was;
  changed = performance.now();
  store.set({ sayings, chosen: 0 });
}

/** The hand goes down on one of the list. @param {Saying} saying */
export function press(saying) {
  clearTimeout(letting);
  const place = store.get().sayings.indexOf(saying);
  const early = performance.now() - changed < CALM && !same(before[place], saying);
  pressed = early ? null : saying;
}

/** What was pressed, once. @param {Saying} saying what the list says now @param {boolean} key pressed by a key, not a hand @returns {Saying | undefined} */
export function lifted(saying, key) {
  const meant = key ? saying : (pressed ?? undefined);
  release();
  return meant;
}

/** The hand has gone up; the click that it makes is still to come. @param {boolean} mouse */
export function up(mouse) {
  clearTimeout(letting);
  letting = window.setTimeout(release, mouse || !pressed ? 0 : LATE);
}

/** The hand has let go: what came in the meantime is offered now. */
export function release() {
  clearTimeout(letting);
  pressed = null;
  const next = waiting;
  waiting = null;
  if (next) offered(next);
}

/** What is offered is true no more. @param {Saying} saying */
export const stale = (saying) => void gone.add(saying);

/** @param {Saying} saying */
export const fresh = (saying) => !gone.has(saying);
