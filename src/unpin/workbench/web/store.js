/** What the page knows: one record that is replaced, never changed, and those who want to hear of it. */
import { begun } from "./kernels/history.js";

/** @typedef {import("./types.js").State} State */

/** @returns {State} */
export function fresh() {
  return {
    act: "state",
    folder: null,
    doc: null,
    history: begun(""),
    look: null,
    drawn: null,
    view: { x: 240, y: 420, k: 110 },
    scale: 60,
    fitted: false,
    window: [900, 600],
    cross: null,
    near: null,
    landing: null,
    hover: "",
    touched: [],
    held: false,
    draft: "",
    called: null,
    fault: null,
    role: "new",
    blank: null,
    blanks: [],
    sayings: [],
    chosen: 0,
    options: [],
    length: null,
    stroke: [],
    redraw: 0,
    notice: "",
    word: "",
    clash: null,
    kept: "saved",
    script: false,
    keys: false,
    moving: false,
    freedom: 0,
    theme: "auto",
    trace: null,
    tracing: false,
    pulled: [],
    centre: "",
    route: { sums: [], hand: null, shown: "", job: "", claim: "", bad: "", filed: [] },
    hand: {
      ending: ".html",
      short: false,
      fade: 0,
      route: "",
      body: ["whole"],
      figures: 0,
      language: "",
      colours: "",
      beneath: false,
      which: "",
      page: 1,
      pages: 1,
      preview: null,
      busy: false,
      saved: "",
    },
  };
}

let state = fresh();
/** @type {Set<(now: State, before: State) => void>} */
const heard = new Set();

export const store = {
  /** @returns {State} */
  get: () => state,
  /** @param {Partial<State>} patch */
  set(patch) {
    const before = state;
    state = { ...state, ...patch };
    for (const tell of heard) tell(state, before);
  },
  /** @param {(now: State, before: State) => void} tell */
  hear(tell) {
    heard.add(tell);
  },
};

/** The text of the problem file as it stands on the page. @returns {string} */
export const text = () => state.history.text;

/** @param {string} id @returns {import("./types.js").Thing | undefined} */
export const thing = (id) => state.drawn?.things?.find((t) => t.id === id);

/** @param {string} name @returns {import("./types.js").Point | undefined} */
export const point = (name) => state.drawn?.points?.find((p) => p.name === name);

/** Names of the points that a touched id stands on. @param {string} id @returns {string[]} */
export const pointsOf = (id) => (id.startsWith("point ") ? [id.slice(6)] : (thing(id)?.points ?? []));

/** Units of the file in a metre. @returns {number} */
export const perMetre = () => state.look?.unit?.per_metre || state.drawn?.unit?.per_metre || 1;
