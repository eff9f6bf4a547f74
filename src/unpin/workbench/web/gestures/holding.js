/** The engine's drawing in the hand: moved at the rate of the pointer, put back, or taken hold of anew. */
import { point, store } from "../store.js";
import { carriedLoads } from "../acts/shapes.js";
import { take } from "./marks.js";

/**
 * The drawing held by some of its points. `to` moves it there, `back` lets go as it was, `again` takes hold anew after the engine has drawn
 * it with the points at other places.
 * @param {string[]} names
 */
export function held(names) {
  const root = /** @type {SVGGElement | null} */ (document.querySelector("#figure > svg"));
  let scale = store.get().drawn?.figure?.scale ?? 1;
  /** @param {[number, number]} at @returns {[number, number]} */
  const pt = ([X, Y]) => [X * scale, -Y * scale];
  let from = names.map((n) => pt(/** @type {any} */ (point(n)).at));
  let mover = root ? take(root, from, carriedLoads(names)) : () => {};
  let frame = 0;
  /** @type {[number, number][]} */
  let last = [];
  const put = () => {
    frame = 0;
    mover(from.map((f, k) => ({ from: f, to: pt(last[k]) })));
  };
  return {
    /** @param {[number, number][]} ats */
    to(ats) {
      last = ats;
      frame ||= requestAnimationFrame(put);
    },
    again() {
      const next = /** @type {SVGGElement | null} */ (document.querySelector("#figure > svg"));
      scale = store.get().drawn?.figure?.scale ?? scale;
      from = names.map((n, k) => pt(point(n)?.at ?? last[k]));
      mover = next ? take(next, from, carriedLoads(names)) : () => {};
      put();
    },
    back() {
      cancelAnimationFrame(frame);
      store.set({ redraw: store.get().redraw + 1 });
    },
  };
}
