/** Every act by keyboard alone. What is typed with nothing in hand goes to the sentence. */
import { toUnits } from "../kernels/spans.js";
import { toMetres, zoomed } from "../kernels/view.js";
import { perMetre, store } from "../store.js";
import { redo, undo } from "../acts/editing.js";
import { copy, land, nudge, paste, round, step } from "../acts/drawing.js";
import { add, anew, choose, drop, nextBlank, touch } from "../acts/saying.js";
import { fit } from "../acts/looking.js";
import { turnOn } from "../acts/turning.js";
import { hand } from "./wire.js";

const ARROWS = /** @type {Record<string, [number, number]>} */ ({
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
});
const ACTS = ["state", "apart", "solve", "teach", "hand-out"];

/** @param {(act: string) => void} go */
export function keyboard(go) {
  document.addEventListener("keydown", (e) => {
    if (store.get().clash || !store.get().doc) return;
    const done = e.altKey ? withAlt(e, go) : e.ctrlKey || e.metaKey ? withControl(e) : inText(e) ? inField(e) : alone(e);
    if (done) e.preventDefault();
  });
}

/** @param {Event} e */
const inText = (e) =>
  e.target instanceof HTMLTextAreaElement ||
  e.target instanceof HTMLSelectElement ||
  (e.target instanceof HTMLInputElement && e.target.type !== "radio" && e.target.type !== "checkbox");

export const line = () => /** @type {HTMLInputElement | null} */ (document.getElementById("line"));

/** The blank that waits is selected, once the field shows the phrase that it is of: the next key may come before the page is painted. */
export function selectBlank() {
  const { blank, draft } = store.get();
  const field = line();
  if (!blank || field?.value !== draft) return;
  field.focus();
  field.setSelectionRange(toUnits(draft, blank[0]), toUnits(draft, blank[1]));
  store.set({ blank: null });
}

/** @param {KeyboardEvent} e @param {(act: string) => void} go @returns {boolean} */
function withAlt(e, go) {
  const act = ACTS[Number(e.code.replace("Digit", "")) - 1];
  if (act) go(act);
  else if (e.code === "KeyS") store.set({ script: !store.get().script });
  else return false;
  return true;
}

/** @param {KeyboardEvent} e @returns {boolean} */
function withControl(e) {
  const key = e.key.toLowerCase();
  const own =
    inText(e) &&
    !(
      e.target instanceof HTMLInputElement &&
      /** @type {HTMLInputElement} */ (e.target).id === "line" &&
      store.get().draft === ""
    );
  if (key === "z" && !(own && e.target instanceof HTMLInputElement)) void (e.shiftKey ? redo() : undo());
  else if (key === "y" && !(own && e.target instanceof HTMLInputElement)) void redo();
  else if (key === "c" && !own && !String(getSelection())) copy();
  else if (key === "v" && !own) void paste();
  else if (key === "s") return true;
  else return false;
  return true;
}

/** @param {KeyboardEvent} e @returns {boolean} */
function inField(e) {
  const { sayings, chosen, role } = store.get();
  const field = /** @type {HTMLElement} */ (e.target);
  if (e.key === "Escape") {
    field.blur();
    if (field.id === "line") void touch([]).then(() => document.getElementById("sheet")?.focus());
  } else if (field.id === "line" && e.key === "Tab" && !e.shiftKey && nextBlank()) selectBlank();
  else if (field.id === "line" && role === "new" && sayings.length && (e.key === "ArrowDown" || e.key === "ArrowUp"))
    store.set({ chosen: (chosen + (e.key === "ArrowDown" ? 1 : sayings.length - 1)) % sayings.length });
  else return false;
  return true;
}

/** With no field in hand. @param {KeyboardEvent} e @returns {boolean} */
function alone(e) {
  const now = store.get();
  const sheet =
    document.activeElement?.id === "sheet" ||
    document.activeElement?.classList.contains("handle") ||
    document.activeElement === document.body;
  const digit = Number(e.key);
  if (e.key === "?") store.set({ keys: !now.keys });
  else if (e.key === "Escape") release();
  else if (now.act !== "state") return false;
  else if (digit >= 1 && digit <= now.sayings.length)
    void choose(now.sayings[digit - 1]).then(() => now.sayings[digit - 1]?.blanks?.length && line()?.focus());
  else if (e.key === "/") focusLine("");
  else if (e.key === "Home" && sheet) void fit();
  else if ((e.key === "PageUp" || e.key === "PageDown") && sheet)
    store.set({ view: zoomed(now.view, [now.window[0] / 2, now.window[1] / 2], e.key === "PageUp" ? 1.25 : 0.8) });
  else if ((e.key === "Delete" || e.key === "Backspace") && sheet && now.touched.length) void drop();
  else if (ARROWS[e.key] && sheet) arrow(ARROWS[e.key], e.shiftKey);
  else if (e.key === "Enter" && document.activeElement?.id === "sheet") void enter(e.shiftKey);
  else if (e.key.length === 1 && e.key !== " " && sheet && /[\p{L}\p{N}([-]/u.test(e.key)) focusLine(e.key);
  else return false;
  return true;
}

function release() {
  hand.send("escape", { spot: [0, 0], shift: false, button: 0, touch: false, id: 0, space: false });
  store.set({ keys: false, cross: null, near: null, moving: false });
  void touch([]);
}

/** Signs that are typed before the field has the focus. */
let ahead = "";

/** @param {string} begun the first sign of a new sentence */
function focusLine(begun) {
  const waiting = ahead !== "";
  ahead += begun;
  if (waiting) return;
  anew();
  requestAnimationFrame(() => {
    const [field, typed] = [line(), ahead];
    ahead = "";
    if (!field) return;
    field.focus();
    if (typed) {
      field.value = typed;
      field.dispatchEvent(new Event("input", { bubbles: true }));
    }
  });
}

/** The load that has the focus, or is touched by itself. @returns {string} */
function loadInHand() {
  const { touched } = store.get();
  const focused = document.activeElement?.getAttribute("data-id") ?? "";
  return [touched.length === 1 ? touched[0] : "", touched.length ? "" : focused].find((id) => id.startsWith("load ")) ?? "";
}

/** A force turns: left and up anticlockwise, right and down clockwise. Its element may have got another place among the others. @param {string} id @param {[number, number]} way @param {boolean} fine */
async function turnLoad(id, [right, up], fine) {
  const focused = document.activeElement?.classList.contains("handle");
  if (!(await turnOn(id, right - up > 0 ? -1 : 1, fine))) return;
  await touch([id], true);
  if (focused) requestAnimationFrame(() => /** @type {SVGElement | null} */ (document.querySelector(`.handle[data-id="${id}"]`))?.focus());
}

/** Arrows turn a force, move what else is touched, else the cross that points for the keyboard. @param {[number, number]} way @param {boolean} shift */
function arrow([right, up], shift) {
  const { touched, cross, view, window } = store.get();
  const load = cross ? "" : loadInHand();
  if (load) return void turnLoad(load, [right, up], shift);
  const times = shift ? 5 : 1;
  if (touched.length && !cross) return void nudge([right * times, up * times]);
  const size = (step() / perMetre()) * times;
  const from = cross ?? toMetres(view, [window[0] / 2, window[1] / 2]);
  const at = cross ? /** @type {[number, number]} */ ([from[0] + right * size, from[1] + up * size]) : from;
  store.set({ cross: round(at).at });
}

/** Enter at the cross: a point that is there is touched, bare paper gets one. @param {boolean} more @returns {Promise<void>} */
async function enter(more) {
  const { cross, drawn, view, touched } = store.get();
  if (!cross) return arrow([0, 0], false);
  const there = drawn?.points?.find((p) => Math.hypot(p.at[0] - cross[0], p.at[1] - cross[1]) * view.k < 5);
  if (there) return more ? add(`point ${there.name}`) : touch([`point ${there.name}`]);
  const r = round(cross);
  await land({ at: r.shown, metres: r.at });
  if (more) await touch([...touched, ...store.get().touched]);
}
