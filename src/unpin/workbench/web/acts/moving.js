/** How a structure that is not held would move: what the engine has drawn swings along the velocities it found, small and slow. */
import { fastest, velocity } from "../kernels/twist.js";
import { store } from "../store.js";
import { look } from "./looking.js";
import { carriedLoads } from "./shapes.js";

const SWING = 16;
const PERIOD = 2600;

/** @typedef {(root: SVGElement, from: [number, number][], loads: Map<string, number[]>) => (shifts: {from: [number, number], to: [number, number]}[]) => void} Take */

/** Begin with the first motion, or stand still again. @param {Take} take @returns {Promise<void>} */
export async function swing(take) {
  const moving = !store.get().moving;
  store.set({ moving, freedom: 0 });
  await shown(take);
}

/** The next of several motions. @param {Take} take @returns {Promise<void>} */
export async function another(take) {
  const { freedom, look: seen } = store.get();
  store.set({ moving: true, freedom: (freedom + 1) % (seen?.verdict?.freedoms || 1) });
  await shown(take);
}

/** @param {Take} take */
async function shown(take) {
  await look();
  const { moving, drawn } = store.get();
  if (!moving) return;
  store.set({ word: drawn?.motion?.told ?? "" });
  if (!matchMedia("(prefers-reduced-motion: reduce)").matches) requestAnimationFrame(() => run(take));
}

/** @param {Take} take */
function run(take) {
  const root = /** @type {SVGElement | null} */ (document.querySelector("#figure > svg"));
  const { drawn } = store.get();
  const motion = drawn?.motion;
  const scale = drawn?.figure?.scale ?? 1;
  if (!root || !motion?.twists || !drawn?.points) return;
  const owners = new Map((drawn.things ?? []).filter((t) => t.what === "part").map((t) => [t.name, t.points]));
  /** @type {Map<string, [number, number]>} */
  const speeds = new Map();
  for (const [body, twist] of Object.entries(motion.twists))
    for (const name of owners.get(body) ?? [])
      speeds.set(
        name,
        velocity(twist, /** @type {[number, number]} */ (drawn.points.find((p) => p.name === name)?.at ?? [0, 0])),
      );
  const points = drawn.points.filter((p) => speeds.has(p.name));
  const most =
    fastest(
      motion.twists,
      points.map((p) => p.at),
    ) || 1;
  const from = points.map((p) => /** @type {[number, number]} */ ([p.at[0] * scale, -p.at[1] * scale]));
  const move = take(
    root,
    from,
    carriedLoads(points.map((p) => p.name)),
  );
  const began = performance.now();
  const frame = (/** @type {number} */ t) => {
    const now = store.get();
    if (!now.moving || now.drawn !== drawn || !root.isConnected) {
      if (root.isConnected) store.set({ redraw: now.redraw + 1 });
      return;
    }
    const reach = (SWING / most) * Math.sin(((t - began) / PERIOD) * 2 * Math.PI);
    move(
      from.map((f, k) => {
        const v = /** @type {[number, number]} */ (speeds.get(points[k].name));
        return { from: f, to: [f[0] + reach * v[0], f[1] - reach * v[1]] };
      }),
    );
    requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
}
