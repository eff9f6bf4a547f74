/**
 * The states of a hand on the sheet: idle, pressing, dragging (what is touched goes along), turning and carrying an arrow, stroking (a line
 * that wants a meaning), panning, pinching. A drag keeps what was true at its start and computes from there; nothing is added to a last result.
 */
import { toMetres, toScreen, panned, pinched } from "../kernels/view.js";
import { following, under } from "../kernels/hit.js";
import { point, store, text } from "../store.js";
import { add, touch } from "../acts/saying.js";
import { lengths, shapes } from "../acts/shapes.js";
import { measure } from "../acts/measuring.js";
import { carriedBy, land, move, placeAt, round, stroke } from "../acts/drawing.js";
import { preview, previewed, unpreview } from "../acts/previewing.js";
import { bodyAt, isolate, join } from "../acts/apart.js";
import { mark } from "../acts/tracing.js";
import { held } from "./holding.js";
import { arrows, seized } from "./arrows.js";

/** @typedef {import("./machine.js").Touch} Touch */

const PULLED = 24;
const SLOP = { mouse: 4, touch: 9 };
const REACH = { mouse: 10, touch: 20 };

/** @param {Touch} t */
const reach = (t) => (t.touch ? REACH.touch : REACH.mouse);

/** Where the last press was. @type {[number, number]} */
let pressed = [-99, -99];

/** The point under a hand. @param {Touch} t @returns {string | undefined} */
const pointUnder = (t) => under(t.spot, shapes(), reach(t)).find((id) => id.startsWith("point "));

/** @typedef {import("../acts/drawing.js").Place} Place */

/** What a stroke passes here: a point, a place on a part, or a round place. @param {Touch} t @returns {string | Place} */
function stop(t) {
  const hits = under(t.spot, shapes(), reach(t));
  const on = hits.find((id) => id.startsWith("point "));
  return on
    ? on.slice(6)
    : placeAt(
        t.spot,
        hits.find((id) => id.startsWith("part ")),
      );
}

/** @param {string | Place} s */
const key = (s) => (typeof s === "string" ? s : String(s.at));

/** @param {string | Place} a @param {string | Place} b */
const same = (a, b) => key(a) === key(b);

/** @param {string | Place} s @returns {[number, number]} pixels */
const seen = (s) => toScreen(store.get().view, typeof s === "string" ? (point(s)?.at ?? [0, 0]) : s.metres);

/** Say beside the hand where something new would land. @param {string | Place} s */
function landing(s) {
  store.set({
    landing:
      typeof s === "string"
        ? null
        : { at: s.metres, shown: typeof s.at === "string" ? s.at.replace(/^on \S+ \S+ at /, "") : s.at.join(", ") },
  });
}

const landed = () => store.set({ landing: null });

/** A press: what lies there, and where nothing does the length that is written there. @param {Touch} t @returns {[string, any]} */
function begin(t) {
  const hits = under(t.spot, shapes(), reach(t));
  const length = hits.length || store.get().act !== "state" ? "" : (under(t.spot, lengths(), reach(t))[0] ?? "");
  return [t.button === 1 || t.space ? "panning" : "pressing", { from: t, view: store.get().view, hits, length }];
}

/** @type {Record<string, import("./machine.js").HandState>} */
export const states = {
  ...arrows,

  idle: {
    press(_, t) {
      const { trace, tracing } = store.get();
      if (trace?.marking && tracing) return mark(t.spot);
      return begin(t);
    },
  },

  pressing: {
    enter: (m) => void (!m.hits.length && !m.length && store.get().act === "state" && landing(placeAt(m.from.spot))),
    leave: landed,
    move(m, t) {
      if (Math.hypot(t.spot[0] - m.from.spot[0], t.spot[1] - m.from.spot[1]) < (t.touch ? SLOP.touch : SLOP.mouse)) return;
      const { touched } = store.get();
      const held = store.get().held ? m.hits.find((/** @type {string} */ id) => touched.includes(id)) : undefined;
      const first = m.hits[0]?.startsWith("load ") && !m.hits.some((/** @type {string} */ id) => id.startsWith("part ")) ? m.hits[0] : "";
      const load = held?.startsWith("load ") ? held : first;
      const arrow = load && store.get().act === "state" ? seized(load, m.from) : null;
      if (arrow) return arrow;
      if (held && store.get().act === "state") {
        // A point goes along with the hand; a bar only with Shift, so that a stroke can begin on it; an arrow or a symbol never takes points along.
        if (held.startsWith("point ") || (m.from.shift && held.startsWith("part ")))
          return ["dragging", { from: m.from, ids: touched.length > 1 ? touched : [held] }];
        if (m.hits[0] === held && !held.startsWith("part ")) return ["idle", {}];
      }
      if (store.get().act === "state" && m.hits[0]?.startsWith("load ") && !m.hits.some((/** @type {string} */ id) => id.startsWith("part ")))
        return ["idle", {}];
      const body = store.get().act === "apart" ? bodyAt(m.hits) : undefined;
      if (body) return ["pulling", { from: m.from, body }];
      return store.get().act === "state" ? ["stroking", { stops: [stop(m.from)], start: m.from }] : ["panning", m];
    },
    lift(m, t) {
      const { touched } = store.get();
      const body = store.get().act === "apart" ? bodyAt(m.hits) : undefined;
      if (body) void (m.from.shift ? join(body) : isolate([body]));
      else if (m.length) void measure(m.length);
      else if (!m.hits.length) {
        if (store.get().act === "state") void land(placeAt(t.spot));
        else void touch([]);
      } else if (
        m.hits.length === 1 &&
        m.hits[0].startsWith("part ") &&
        touched[0] === m.hits[0] &&
        store.get().held &&
        store.get().act === "state"
      )
        void land(placeAt(t.spot, m.hits[0])); // a second press on a part is a point of it
      else if (m.from.shift) void add(m.hits[0]);
      else {
        // Only a press where the last one was goes on to what lies beneath.
        const again = store.get().held && Math.hypot(t.spot[0] - pressed[0], t.spot[1] - pressed[1]) < reach(t);
        const ids = [following(m.hits, again && touched.length === 1 ? touched[0] : undefined) ?? m.hits[0]];
        const { view } = store.get();
        void touch(ids, true, undefined, { under: m.hits, at: toMetres(view, t.spot), near: (2 * reach(t)) / view.k });
      }
      pressed = t.spot;
      return ["idle", {}];
    },
    second: (m, t) => ["pinching", { view: m.view, from: [m.from, t] }],
    escape: () => ["idle", {}],
  },

  dragging: {
    enter(m) {
      const names = [...new Set(m.ids.flatMap(carriedBy))];
      const starts = names.flatMap((name) => point(String(name))?.at ?? null);
      return { names, starts: names.map((n) => point(String(n))?.at), hold: held(names.map(String)), starts_: starts };
    },
    move(m, t) {
      const { view } = store.get();
      const [p, q] = [toMetres(view, m.from.spot), toMetres(view, t.spot)];
      const first = round([m.starts[0][0] + q[0] - p[0], m.starts[0][1] + q[1] - p[1]], m.names);
      const by = [first.at[0] - m.starts[0][0], first.at[1] - m.starts[0][1]];
      m.places = m.names.map((/** @type {string} */ name, /** @type {number} */ k) =>
        k === 0 ? first : round([m.starts[k][0] + by[0], m.starts[k][1] + by[1]], m.names),
      );
      landing({ at: first.shown, metres: first.at });
      m.hold.to(m.places.map((/** @type {{at: [number, number]}} */ r) => r.at));
      const moves = m.names.map((/** @type {string} */ name, /** @type {number} */ k) => ({ name, at: m.places[k].shown }));
      preview(moves, m.hold.again);
    },
    leave: landed,
    lift(m) {
      unpreview(false);
      const before = text();
      if (m.places)
        void move(m.names.map((/** @type {string} */ name, /** @type {number} */ k) => ({ name, at: m.places[k].shown }))).then((made) => {
          if (made && text() !== before) {
            previewed();
            return touch(m.ids, true);
          }
          unpreview(true);
          m.hold.back();
        });
      return ["idle", {}];
    },
    escape(m) {
      unpreview(true);
      m.hold.back();
      return ["idle", {}];
    },
  },

  stroking: {
    move(m, t) {
      const on = pointUnder(t)?.slice(6);
      if (on && !m.stops.some((/** @type {any} */ s) => same(s, on))) m.stops.push(on);
      const next = stop(t);
      store.set({ stroke: [...m.stops.map(seen), seen(next)] });
      landing(next);
    },
    leave: landed,
    lift(m, t) {
      const last = stop(t);
      store.set({ stroke: [] });
      const stops = same(last, m.stops[m.stops.length - 1]) ? m.stops : [...m.stops, last];
      if (stops.length > 1) void stroke(stops);
      return ["idle", {}];
    },
    second(m, t) {
      store.set({ stroke: [] });
      return ["pinching", { view: store.get().view, from: [m.start, t] }];
    },
    escape() {
      store.set({ stroke: [] });
      return ["idle", {}];
    },
  },

  pulling: {
    enter(m) {
      const root = document.querySelector("#figure > svg");
      return {
        groups: [...(root?.querySelectorAll("g[data-owner]") ?? [])].filter((g) => g.getAttribute("data-owner") === m.body),
      };
    },
    move(m, t) {
      const by = (store.get().drawn?.figure?.scale ?? 1) / store.get().view.k;
      const [dx, dy] = [(t.spot[0] - m.from.spot[0]) * by, (t.spot[1] - m.from.spot[1]) * by];
      for (const g of m.groups) g.setAttribute("transform", `translate(${dx} ${dy})`);
    },
    leave: (m) => m.groups.forEach((/** @type {Element} */ g) => g.removeAttribute("transform")),
    lift(m, t) {
      if (Math.hypot(t.spot[0] - m.from.spot[0], t.spot[1] - m.from.spot[1]) > PULLED) void isolate([m.body]);
      return ["idle", {}];
    },
    escape: () => ["idle", {}],
  },

  panning: {
    move: (m, t) => store.set({ fitted: false, view: panned(m.view, [t.spot[0] - m.from.spot[0], t.spot[1] - m.from.spot[1]]) }),
    lift: () => ["idle", {}],
    second: (m, t) => ["pinching", { view: store.get().view, from: [m.from, t] }],
    escape(m) {
      store.set({ view: m.view });
      return ["idle", {}];
    },
  },

  pinching: {
    move(m, t) {
      m.now = (m.now ?? m.from).map((/** @type {Touch} */ f) => (f.id === t.id ? t : f));
      store.set({
        fitted: false,
        view: pinched(
          m.view,
          /** @type {any} */ (m.from.map((/** @type {Touch} */ f) => f.spot)),
          /** @type {any} */ (m.now.map((/** @type {Touch} */ f) => f.spot)),
        ),
      });
    },
    lift: () => ["idle", {}],
    escape(m) {
      store.set({ view: m.view });
      return ["idle", {}];
    },
  },
};
