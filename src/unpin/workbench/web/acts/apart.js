/** Bodies pulled out of the structure, each a free-body diagram with the sums worth taking on it; and the route that grows of them. */
import { ask, send } from "../net.js";
import { store, text } from "../store.js";
import { say } from "../words.js";

/** @typedef {import("../types.js").Pulled} Pulled @typedef {import("../types.js").State} State */

let drawnFor = "";
const NONE = { sums: [], hand: null, shown: "", job: "", claim: "", bad: "", filed: [] };

/** Isolate one body, or several together. It comes first among those pulled out. @param {string[]} bodies @param {boolean} [byHand] @returns {Promise<void>} */
export async function isolate(bodies, byHand = true) {
  await current();
  const { route } = store.get();
  if (byHand && good(route).length < route.sums.length) await follow(good(route));
  const made = await body(bodies);
  if (!made) return;
  const now = store.get();
  store.set({
    pulled: [made, ...now.pulled.filter((p) => p.key !== made.key)],
    route: { ...now.route, shown: made.key },
    centre: "",
  });
}

/** One more body joined to the last pulled out. @param {string} name @returns {Promise<void>} */
export function join(name) {
  const first = store.get().pulled[0];
  if (!first) return isolate([name]);
  const bodies = first.bodies.includes(name) ? first.bodies.filter((b) => b !== name) : [...first.bodies, name];
  return bodies.length ? isolate(bodies) : Promise.resolve();
}

/** The body of the structure that one of these things is, the first that is one. @param {string[]} ids @returns {string | undefined} */
export function bodyAt(ids) {
  const { look } = store.get();
  for (const id of ids) {
    const name = id.replace(/^\w+ /, "");
    const body = look?.bodies?.find((b) => (id.startsWith("point ") ? b.point === name : b.name === name));
    if (body) return body.name;
  }
  return undefined;
}

/** @param {string} key */
export function putBack(key) {
  store.set({ pulled: store.get().pulled.filter((p) => p.key !== key) });
}

/** @param {string[]} bodies @returns {Promise<Pulled | null>} */
async function body(bodies) {
  const reply = await send("/body", { text: text(), bodies, sums: store.get().route.sums });
  store.set({ notice: reply.ok ? "" : (reply.message ?? "") });
  return reply.ok ? /** @type {any} */ (reply) : null;
}

/** After a change of the text what was pulled out is drawn anew, and the sums are followed anew. @returns {Promise<void>} */
export async function current() {
  await filed();
  if (drawnFor === text()) return;
  drawnFor = text();
  const keys = store.get().pulled.map((p) => p.bodies);
  store.set({ pulled: [] });
  for (const bodies of keys.reverse()) {
    const made = await body(bodies);
    if (made) store.set({ pulled: [made, ...store.get().pulled] });
  }
  if (store.get().route.sums.length) await follow(store.get().route.sums);
}

/** The way that stands in the file is the one that is shown, unless another was begun by hand. @returns {Promise<void>} */
async function filed() {
  const { look, route } = store.get();
  const there = look?.sound ? (look.route ?? []) : route.filed;
  if (same(there, route.filed)) return;
  store.set({ route: { ...route, filed: there } });
  if (there.length && (!route.sums.length || same(route.sums, route.filed))) await follow(there, say("solve.filed"));
}

/** @param {string[]} a @param {string[]} b */
const same = (a, b) => a.length === b.length && a.every((one, k) => one === b[k]);

/** Forget everything of another file. */
export function forget() {
  drawnFor = text();
  store.set({ pulled: [], centre: "", route: NONE });
}

/** Take these sums, in this order; the lesson and what is left unknown follow. @param {string[]} sums @param {string} [claim] @returns {Promise<void>} */
export async function follow(sums, claim = "") {
  const { route } = store.get();
  const reply = sums.length ? await send("/hand", { text: text(), sums }) : null;
  if (reply && !reply.ok) {
    store.set({ route: { ...route, bad: reply.message ?? "" } });
    return;
  }
  store.set({
    route: { ...store.get().route, sums, hand: /** @type {any} */ (reply), claim, bad: "" },
    centre: "",
    word: said(/** @type {any} */ (reply)),
  });
  const shown = store.get().pulled.find((p) => p.key === store.get().route.shown) ?? store.get().pulled[0];
  const made = shown ? await body(shown.bodies) : null;
  if (made) store.set({ pulled: store.get().pulled.map((p) => (p.key === made.key ? made : p)) });
}

/** @param {import("../types.js").Hand | null} hand @returns {string} */
const said = (hand) =>
  hand ? (new DOMParser().parseFromString(hand.steps.at(-1)?.remark ?? "", "text/html").body.textContent ?? "") : "";

/** The sums that led on. One that did not stands there with the reason until something else is done. @param {import("../types.js").Route} route */
export const good = ({ sums, hand }) => sums.filter((_, k) => hand?.steps[k]?.ok ?? true);

/** @param {string} sum */
export const take = (sum) => follow([...good(store.get().route), sum]);

/** The last sum is taken back; one that did not lead on is gone with it. */
export function back() {
  const { route } = store.get();
  const refused = route.hand?.steps.at(-1)?.ok === false;
  return follow(refused ? good(route) : good(route).slice(0, -1));
}

/** The shortest way, searched for; the search can be called off. @param {"recommended" | "fewest"} kind @returns {Promise<void>} */
export async function shortest(kind) {
  const begun = await send("/route", { text: text(), kind });
  if (!begun.ok) return store.set({ route: { ...store.get().route, bad: begun.message ?? "" } });
  store.set({ route: { ...store.get().route, job: begun.job, bad: "" } });
  for (;;) {
    const reply = await ask("/route", { job: begun.job });
    if (store.get().route.job !== begun.job) return;
    if (reply.state === "running") continue;
    store.set({ route: { ...store.get().route, job: "", bad: reply.ok ? "" : (reply.message ?? "") } });
    if (reply.ok && reply.state === "done") await follow(reply.sums, reply.claim);
    return;
  }
}

export function callOff() {
  const { route } = store.get();
  if (route.job) void send("/route/cancel", { job: route.job });
  store.set({ route: { ...route, job: "" } });
}

/** Point at a sum without taking it. @param {string} sum "" for none */
export const pointAt = (sum) => store.get().centre !== sum && store.set({ centre: sum });

/** Whether the file holds another way than the one that stands here. @param {State} now */
export const unkept = (now) => !same(good(now.route), now.look?.route ?? []);

/** Write the sums into the problem file, as its own route: just these. @param {(acts: object[]) => Promise<unknown>} change */
export async function keepRoute(change) {
  const sums = good(store.get().route);
  if (sums.length < store.get().route.sums.length) await follow(sums);
  store.set({ route: { ...store.get().route, filed: sums } });
  await change([{ do: "route", sums }]);
}
