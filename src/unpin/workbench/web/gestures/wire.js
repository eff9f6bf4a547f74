/** The browser's pointers, wheel and resizing, told to the machine of states in pixels of the sheet. */
import { fitted, panned, toScreen, zoomed } from "../kernels/view.js";
import { under } from "../kernels/hit.js";
import { point, pointsOf, store } from "../store.js";
import { everything } from "../acts/looking.js";
import { shapes } from "../acts/shapes.js";
import { lay } from "../acts/tracing.js";
import { machine } from "./machine.js";
import { states } from "./states.js";

export const hand = machine(states, "idle");
/** @type {Map<number, import("./machine.js").Touch>} */
const down = new Map();
let space = false;
const NARROW = 736;
/** Pixels kept free under a touched point, for its support and name. */
const FOOT = 44;

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
  // What is unrolled in the panel makes it grow without a painting of the page.
  document.addEventListener("toggle", measure, true);
}

export function measure() {
  const box = document.getElementById("sheet")?.getBoundingClientRect();
  const { window: was } = store.get();
  if (!box || !box.width || (box.width === was[0] && box.height === was[1])) return;
  const { view, fitted: fills } = store.get();
  const window = /** @type {[number, number]} */ ([box.width, box.height]);
  // What grows at the foot covers some of the sheet; the drawing stays where the hand left it.
  const aside = { ...view, x: view.x + (box.width - was[0]) / 2 };
  const whole = fills ? everything({ ...store.get(), window }) : null;
  const anew = whole && (box.width !== was[0] || (box.width < NARROW && Math.abs(box.height - was[1]) > 60));
  const next = anew ? fitted(whole, window) : box.width === was[0] ? view : aside;
  store.set({ window, view: anew || hand.state() !== "idle" ? next : clear(next, whole, window) });
}

/**
 * The view moved up just so far that the panel that has grown hides neither what is touched nor, while the whole figure is shown, its foot.
 * @param {import("../kernels/view.js").View} view @param {ReturnType<typeof everything>} whole @param {[number, number]} window
 */
function clear(view, whole, [wide, high]) {
  const held = store.get().touched.flatMap(pointsOf);
  const seen = held.flatMap((n) => {
    const at = point(n)?.at;
    return at ? [toScreen(view, at)] : [];
  });
  const feet = seen.filter((s) => s[1] > 0).map((s) => s[1] + FOOT);
  if (whole) {
    const by = view.k / whole.scale;
    const [top, foot] = [view.y + by * whole.origin[1], view.y + by * (whole.origin[1] + whole.size[1])];
    if (foot > high && foot - top > high) return fitted(whole, [wide, high]);
    feet.push(foot + 4);
  }
  const over = Math.max(0, ...feet) - high;
  return over > 0 ? panned(view, [0, -over]) : view;
}

let waiting = 0;
/** @param {[number, number] | null} at */
function near(at) {
  cancelAnimationFrame(waiting);
  waiting = requestAnimationFrame(
    () => (at || store.get().near) && store.set({ near: at, hover: at ? (under(at, shapes(), 9)[0] ?? "") : "" }),
  );
}
