/** Asks the engine what the text now says: one question at a time, the latest text wins, and a late reply is dropped. */
import { PATIENCE, send } from "../net.js";
import { store, text } from "../store.js";
import { fitted, widened } from "../kernels/view.js";

/** After a look of so many ms, a change no longer waits for what is then to be seen. */
const SLOW = 2000;

let since = 0;
let busy = false;
let began = 0;
let took = 0;
/** @type {AbortController | null} */
let running = null;
let again = false;
/** @type {(() => void)[]} */
let waiting = [];

/** Look at the text as it stands; resolves when the reply to it, or to a later text, is on the page. @returns {Promise<void>} */
export function look() {
  return new Promise((done) => {
    waiting.push(done);
    if (!busy) return void run();
    again = true;
    const old = running;
    setTimeout(() => old?.abort(), Math.max(0, began + PATIENCE - performance.now()));
  });
}

/** What the page wants to see of a text, whichever it is. @returns {{scale: number | null, want: string[], freedom: number}} */
export function wanted() {
  const { act, moving, scale, freedom } = store.get();
  return { scale, want: ["figure", ...(act === "apart" ? ["apart"] : []), ...(moving ? ["motion"] : [])], freedom };
}

/**
 * The text has become one of which the engine has sent the look already, as it was `asked` for. Where the page wants something else by
 * now, it asks anew.
 * @param {any} reply @param {ReturnType<typeof wanted>} asked @returns {Promise<void>}
 */
export function seen(reply, asked) {
  if (!reply?.ok || JSON.stringify(asked) !== JSON.stringify(wanted())) return look();
  since++; // what is still on its way is about an earlier text
  take(reply);
  return Promise.resolve();
}

/** Whether the figure takes so long to be seen that the hand goes on without it. */
export const slow = () => took > SLOW;

/** How long what is seen of the text took this time. @param {number} ms */
export function timed(ms) {
  took = ms;
}

async function run() {
  busy = true;
  do {
    again = false;
    const asked = ++since;
    const told = waiting;
    waiting = [];
    running = new AbortController();
    began = performance.now();
    const reply = await send("/look", { text: text(), ...wanted(), since: asked }, { signal: running.signal });
    running = null;
    timed(reply.code === "dropped" ? SLOW + 1 : performance.now() - began);
    if (reply.since === asked && reply.ok) take(/** @type {any} */ (reply));
    else if (reply.code === "away") store.set({ kept: "offline" });
    else if (!reply.ok && reply.code !== "dropped" && asked === since) store.set({ notice: reply.message ?? "" });
    for (const done of told) done();
  } while (again);
  busy = false;
}

/** @param {import("../types.js").Look} reply */
function take(reply) {
  const now = store.get();
  // A text that breaks off says nothing of the points: the last that could be read stays in sight.
  const read = reply.points && !(reply.broken && now.drawn?.points?.length && text().trim());
  const drawn = read ? reply : now.drawn;
  /** @type {Partial<import("../types.js").State>} */
  const patch = { look: reply, drawn, word: spoken(reply) };
  const box = now.scale === null ? everything({ ...now, drawn }) : null;
  if (box) {
    patch.scale = box.scale;
    patch.view = fitted(box, now.window);
    patch.fitted = true;
  }
  if (!text().trim()) patch.drawn = null;
  const ids = new Set((drawn?.things ?? []).map((t) => t.id));
  if (read) patch.touched = now.touched.filter((id) => ids.has(id));
  store.set(patch);
}

/** What a voice says after a change. @param {import("../types.js").Look} reply @returns {string} */
function spoken(reply) {
  const worst = reply.diagnostics.find((d) => d.severity === "error");
  return worst ? worst.sentence : (reply.verdict?.summary ?? "");
}

/** A box in pt around the figure and every point, used or not; null on an empty sheet. @param {import("../types.js").State} now */
export function everything({ drawn, window, view }) {
  const points = (drawn?.points ?? []).map((p) => p.at);
  return widened(drawn?.figure, points, window, view.k);
}

/** The whole figure in the window, with points that nothing stands on yet, at the engine's own size. @returns {Promise<void>} */
export function fit() {
  store.set({ scale: null });
  return look();
}
