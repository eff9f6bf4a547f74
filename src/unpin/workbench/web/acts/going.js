/** From act to act. Each has an address, so it can be kept, and reached with the browser's own back. */
import { store } from "../store.js";
import { current, isolate } from "./apart.js";
import { preview } from "./handing.js";
import { save } from "./saving.js";

const ACTS = ["state", "apart", "solve", "teach", "hand-out"];

/** @param {string} act @returns {Promise<void>} */
export async function go(act) {
  const to = /** @type {import("../types.js").State["act"]} */ (ACTS.includes(act) ? act : "state");
  if (to !== store.get().act) store.set({ act: to, moving: false, notice: "" });
  if (!store.get().doc) return;
  if (to === "teach" || to === "hand-out") await save();
  if (to === "apart" || to === "solve") await current();
  if (to === "solve" && !store.get().pulled.length && store.get().look?.sound)
    await isolate((store.get().look?.bodies?.length ?? 0) > 1 ? ["whole"] : [store.get().look?.bodies?.[0]?.name ?? ""], false);
  if (to === "hand-out") await preview();
}
