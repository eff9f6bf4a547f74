/** An arrow in the hand: its free end turns the force, the rest of it carries the force to another point. */
import { angleOf, directionOf, FINE, ROUND } from "../kernels/directions.js";
import { toMetres } from "../kernels/view.js";
import { point, store, text, thing } from "../store.js";
import { touch } from "../acts/saying.js";
import { arrow, atFreeEnd, carry, still, turn } from "../acts/turning.js";
import { preview, previewed, unpreview } from "../acts/previewing.js";

/** @typedef {import("./machine.js").Touch} Touch */

/** The state that begins when the arrow of a load is dragged; null for a load that is no single arrow. @param {string} id @param {Touch} from @returns {[string, any] | null} */
export function seized(id, from) {
  const held = arrow(id);
  if (!held) return null;
  const turns = atFreeEnd(held, from.spot);
  if (turns && thing(id)?.still) {
    void touch([id], true);
    still(id);
    return ["idle", {}];
  }
  return [turns ? "turning" : "carrying", { id, from, tail: held.tail, at: thing(id)?.points[0] }];
}

/** The drawn marks of a load. @param {string} id @returns {SVGElement[]} */
function marks(id) {
  const names = new Set((thing(id)?.draws ?? []).map((d) => d.replace(/\..*$/, "")));
  const groups = [...document.querySelectorAll("#figure > svg g[data-action]")].filter((g) => names.has(g.getAttribute("data-action") ?? ""));
  return groups.flatMap((g) => /** @type {SVGElement[]} */ ([...g.children]));
}

/** How its direction was given is no longer true: the slope and the angle that are drawn go until the engine draws anew. */
function withoutGiven() {
  for (const mark of document.querySelectorAll("#figure > svg :is(.slope, .angle, .reference)")) mark.setAttribute("visibility", "hidden");
}

/** The arrow as it is drawn, turned about its point; what is written beside it stays upright. @param {string} id @param {string} at @param {number} degrees anticlockwise */
function shown(id, at, degrees) {
  const scale = store.get().drawn?.figure?.scale ?? 1;
  const [px, py] = [(point(at)?.at[0] ?? 0) * scale, -(point(at)?.at[1] ?? 0) * scale];
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  if (Math.abs(degrees) > 0.01) withoutGiven();
  for (const mark of marks(id)) {
    const [x, y] = ["x", "y"].map((k) => Number(mark.getAttribute(k)));
    const [dx, dy] = [x - px, y - py];
    mark.setAttribute(
      "transform",
      mark.localName === "text" ? `translate(${c * dx + s * dy - dx} ${c * dy - s * dx - dy})` : `rotate(${-degrees} ${px} ${py})`,
    );
  }
}

/** @param {any} m */
function back(m) {
  unpreview(true);
  for (const mark of marks(m.id)) mark.removeAttribute("transform");
  for (const mark of document.querySelectorAll("#figure > svg [visibility]")) mark.removeAttribute("visibility");
  store.set({ redraw: store.get().redraw + 1 });
}

/** One step, or all as it was. @param {any} m @param {Promise<unknown>} made */
async function done(m, made) {
  const before = text();
  if ((await made) && text() !== before) {
    previewed();
    // The engine's last drawing may be on the page already, with marks on it that the hand has moved or hidden since.
    store.set({ redraw: store.get().redraw + 1 });
    return touch([m.id], true);
  }
  back(m);
}

const landed = () => store.set({ landing: null });

/** @type {Record<string, import("./machine.js").HandState>} */
export const arrows = {
  turning: {
    move(m, t) {
      const hand = toMetres(store.get().view, t.spot);
      const pivot = point(m.at)?.at ?? [0, 0];
      m.way = directionOf(angleOf(pivot, hand) + (m.tail ? 180 : 0), t.shift ? FINE : ROUND);
      const show = () => shown(m.id, m.at, m.way.degrees - (thing(m.id)?.angle ?? 0));
      show();
      store.set({ landing: { at: hand, shown: m.way.words } });
      preview(/** @type {any} */ ([{ do: "turn", id: m.id, way: m.way.words }]), show);
    },
    leave: landed,
    lift(m) {
      unpreview(false);
      void done(m, m.way ? turn(m.id, m.way.words) : Promise.resolve(null));
      return ["idle", {}];
    },
    escape(m) {
      back(m);
      return ["idle", {}];
    },
  },

  carrying: {
    move(m, t) {
      const by = (store.get().drawn?.figure?.scale ?? 1) / store.get().view.k;
      const [dx, dy] = [(t.spot[0] - m.from.spot[0]) * by, (t.spot[1] - m.from.spot[1]) * by];
      for (const mark of marks(m.id)) mark.setAttribute("transform", `translate(${dx} ${dy})`);
      const { view, drawn } = store.get();
      const [now, then] = [toMetres(view, t.spot), toMetres(view, m.from.spot)];
      const from = point(m.at)?.at ?? [0, 0];
      // What is carried is where the arrow acts, not where the hand has it.
      const place = /** @type {[number, number]} */ ([from[0] + now[0] - then[0], from[1] + now[1] - then[1]]);
      const far = (/** @type {import("../types.js").Point} */ p) => Math.hypot(p.at[0] - place[0], p.at[1] - place[1]) * view.k;
      const [nearest] = [...(drawn?.points ?? [])].sort((p, q) => far(p) - far(q));
      m.to = nearest && far(nearest) < (t.touch ? 32 : 22) ? nearest.name : "";
      store.set({ landing: m.to ? { at: nearest.at, shown: m.to } : null });
    },
    leave: landed,
    lift(m) {
      void done(m, m.to && m.to !== m.at ? carry(m.id, m.to) : Promise.resolve(null));
      return ["idle", {}];
    },
    escape(m) {
      back(m);
      return ["idle", {}];
    },
  },
};
