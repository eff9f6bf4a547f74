/** The browser's pointers, wheel and resizing, told to the machine of states in pixels of the sheet. */
import { fitted, panned, sighted, through, toScreen, zoomed } from "../kernels/view.js";
import { under } from "../kernels/hit.js";
import { point, pointsOf, store } from "../store.js";
import { everything } from "../acts/looking.js";
import { lengths, shapes } from "../acts/shapes.js";
import { show } from "../acts/sighting.js";
import { lay } from "../acts/tracing.js";
import { machine } from "./machine.js";
import { states } from "./states.js";

export const hand = machine(states, "idle");
/** @type {Map<number, import("./machine.js").Touch>} */
const down = new Map();
let space = false;
/** Pointers that are down, on the sheet or elsewhere. @type {Set<number>} */
const fingers = new Set();
/** @typedef {import("../kernels/view.js").View} View @typedef {[number, number]} Spot */

/** @param {PointerEvent | WheelEvent | DragEvent} e @returns {[number, number]} */
function spot(e) {
  const box = document.getElementById("sheet")?.getBoundingClientRect();
  return [e.clientX - (box?.left ?? 0), e.clientY - (box?.top ?? 0)];
}

/** @param {PointerEvent} e @returns {import("./machine.js").Touch} */
const touch = (e) => ({
  spot: spot(e),
  shift: e.shiftKey,
  button: e.button,
  touch: e.pointerType === "touch",
  id: e.pointerId,
  space,
});

/** @param {Event} e */
const onSheet = (e) => /** @type {Element | null} */ (e.target)?.closest?.("#sheet");

export function wire() {
  document.addEventListener("pointerdown", (e) => {
    const sheet = onSheet(e);
    if (!sheet || e.button > 1) return;
    sheet.setPointerCapture(e.pointerId);
    near(null);
    const t = touch(e);
    hand.send(down.size ? "second" : "press", t);
    down.set(e.pointerId, t);
    if (document.activeElement instanceof HTMLInputElement || document.activeElement instanceof HTMLTextAreaElement)
      document.activeElement.blur();
    e.preventDefault();
  });
  document.addEventListener("pointermove", (e) => {
    if (down.has(e.pointerId)) {
      hand.send("move", touch(e));
      e.preventDefault();
    } else if (e.pointerType !== "touch") near(onSheet(e) ? spot(e) : null);
  });
  for (const kind of /** @type {const} */ (["pointerup", "pointercancel"]))
    document.addEventListener(kind, (e) => {
      if (!down.delete(e.pointerId)) return;
      hand.send(kind === "pointerup" ? "lift" : "escape", touch(e));
    });
  // A quick stroke is no fling of the page: after one the browser would swallow the next tap, wherever it is.
  for (const kind of ["touchstart", "touchmove"])
    document.addEventListener(kind, (e) => void (onSheet(e) && e.cancelable && e.preventDefault()), { passive: false });
  document.addEventListener(
    "wheel",
    (e) => {
      if (!onSheet(e)) return;
      e.preventDefault();
      const { view } = store.get();
      if (e.ctrlKey || (!e.shiftKey && Math.abs(e.deltaX) < 1))
        store.set({ fitted: false, view: zoomed(view, spot(e), Math.exp(-e.deltaY / 500)) });
      else store.set({ fitted: false, view: { ...view, x: view.x - e.deltaX, y: view.y - e.deltaY } });
    },
    { passive: false },
  );
  document.addEventListener(
    "keydown",
    (e) => (space ||= e.key === " " && onSheet(e) !== null && document.activeElement?.id === "sheet"),
  );
  document.addEventListener("keyup", (e) => (space = e.key === " " ? false : space));
  document.addEventListener("dragover", (e) => onSheet(e) && e.preventDefault());
  document.addEventListener("drop", (e) => {
    const file = e.dataTransfer?.files[0];
    if (!onSheet(e) || !file?.type.startsWith("image/")) return;
    e.preventDefault();
    store.set({ tracing: true });
    void lay(file);
  });
  new ResizeObserver(measure).observe(document.body);
  document.addEventListener("pointerdown", (e) => fingers.add(e.pointerId), true);
  for (const kind of /** @type {const} */ (["pointerup", "pointercancel"])) document.addEventListener(kind, (e) => fingers.delete(e.pointerId), true);
  // A list or a menu of the system keeps the lifting of the hand to itself.
  document.addEventListener("pointermove", (e) => void (e.buttons === 0 && fingers.delete(e.pointerId)), true);
  addEventListener("blur", () => fingers.clear());
  // What the keyboard goes to is seen; the browser itself would scroll the sheet from under its things.
  document.addEventListener("focusin", (e) => {
    const id = e.target instanceof Element ? e.target.getAttribute("data-id") : null;
    const stage = document.getElementById("stage");
    if (stage) [stage.scrollLeft, stage.scrollTop] = [0, 0];
    if (id && !holding()) show([id]);
  });
}

/** Whether a finger or pointer is down anywhere: then nothing moves of itself. */
export const holding = () => fingers.size > 0 || hand.state() !== "idle";

/** The view as it was left, the window that it was left in, and whether the figure filled that. @type {{view: View, window: Spot, fills: boolean} | null} */
let left = null;
/** The view that a change of the window has made of it. @type {View | null} */
let made = null;
let late = false;

/** The sheet may have got another size. What is seen follows from how it was left alone: a window that is as large as before shows what it showed. */
export function measure() {
  const box = document.getElementById("sheet")?.getBoundingClientRect();
  const { window: was, view, fitted: fills } = store.get();
  if (!box || !box.width || (!late && box.width === was[0] && box.height === was[1])) return;
  const window = /** @type {Spot} */ ([box.width, box.height]);
  if (!left || view !== made) left = { view, window: was, fills };
  late = holding();
  made = late ? view : adapted(left, window);
  store.set({ window, view: made });
}

/** @param {NonNullable<typeof left>} left @param {Spot} window @returns {View} */
function adapted({ view, window: was, fills }, window) {
  if (window[0] === was[0] && window[1] === was[1]) return view;
  const now = store.get();
  const whole = fills ? everything({ ...now, window }) : null;
  if (whole) return fitted(whole, window);
  const aside = panned(view, [(window[0] - was[0]) / 2, 0]);
  const seen = now.touched.flatMap(pointsOf).flatMap((n) => {
    const at = point(n)?.at;
    return at && through(toScreen(view, at), toScreen(view, at), was) ? [at] : [];
  });
  return sighted(aside, seen, [], window);
}

let waiting = 0;
/** @param {[number, number] | null} at */
function near(at) {
  cancelAnimationFrame(waiting);
  waiting = requestAnimationFrame(
    () => (at || store.get().near) && store.set({ near: at, hover: at ? (under(at, shapes(), 9)[0] ?? under(at, store.get().act === "state" ? lengths() : [], 9)[0] ?? "") : "" }),
  );
}
