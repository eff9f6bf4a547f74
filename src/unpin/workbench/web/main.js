/** Wires the parts together; holds no logic of its own. */
import { html, nothing, render } from "./lib/lit-html.js";
import { language, learn } from "./words.js";
import { store } from "./store.js";
import { change, redo, undo, write } from "./acts/editing.js";
import { blank, copy, leave, list, open, replaced } from "./acts/opening.js";
import { compare, save, settle } from "./acts/saving.js";
import { lifted, press, release, up } from "./acts/offering.js";
import { anew, add, call, choose, direct, drop, mean, rename, take, touch, type } from "./acts/saying.js";
import { fit, look } from "./acts/looking.js";
import { go } from "./acts/going.js";
import { showFault, standing, watch } from "./acts/sighting.js";
import { remember, rememberNow } from "./acts/remembering.js";
import { settled, vary } from "./acts/varying.js";
import { measure as measured } from "./acts/measuring.js";
import { another, swing } from "./acts/moving.js";
import * as apartActs from "./acts/apart.js";
import * as handing from "./acts/handing.js";
import * as tracing from "./acts/tracing.js";
import { take as hold } from "./gestures/marks.js";
import { keyboard, line, selectBlank } from "./gestures/keyboard.js";
import { hand, holding, measure, wire } from "./gestures/wire.js";
import { head } from "./views/head.js";
import { sheet } from "./views/sheet.js";
import { sentence } from "./views/sentence.js";
import { script, stand } from "./views/script.js";
import { folder } from "./views/folder.js";
import { clash } from "./views/clash.js";
import { keys } from "./views/keys.js";
import { apart } from "./views/apart.js";
import { solve } from "./views/solve.js";
import { handOut, teach } from "./views/outcome.js";
import { trace } from "./views/trace.js";
import { carried, change as difference } from "./kernels/diff.js";

const touching = {
  enter: (/** @type {string} */ id, /** @type {boolean} */ more) =>
    void (id.startsWith("length ") ? measured(id) : store.get().act === "apart" ? pull(id, more) : more ? add(id) : touch([id])),
};
/** @param {string} id @param {boolean} more */
function pull(id, more) {
  const body = apartActs.bodyAt([id]);
  if (body) void (more ? apartActs.join(body) : apartActs.isolate([body]));
}

const said = {
  type,
  mean: () => void mean(),
  choose: (/** @type {import("./types.js").Saying | undefined} */ s) => void choose(s).then(() => store.get().blank && line()?.focus()),
  press,
  lifted,
  call,
  direct: (/** @type {import("./types.js").Option} */ o) => void direct(o).then(() => line()?.focus()),
  take: (/** @type {string} */ s) => void take(s).then(() => line()?.focus()),
  rename,
  drop,
  release: () => void touch([]),
  anew: () => (anew(), requestAnimationFrame(() => line()?.focus())),
  undo: () => void undo(),
  redo: () => void redo(),
  fit: () => void fit(),
  move: () => void swing(hold),
  another: () => void another(hold),
  show: fault,
  trace: () => store.set({ tracing: !store.get().tracing }),
  keydown: () => {},
  vary: (/** @type {string} */ l, /** @type {number} */ n) => void vary(l, n),
  settled,
};
const hands = {
  ...apartActs,
  take: (/** @type {string} */ s) => void apartActs.take(s),
  back: () => void apartActs.back(),
  clear: () => void apartActs.follow([]),
  keep: () => void apartActs.keepRoute(change),
  solve: (/** @type {string} */ key) => {
    store.set({ route: { ...store.get().route, shown: key } });
    address("solve");
  },
};

/** @param {import("./types.js").State} now */
function view(now) {
  if (!now.doc) return [head(now, { leave }), folder(now, { open, copy, blank })];
  const body = {
    state: () =>
      html`<div class="desk">
          ${sheet(now, touching)}${script(now, { write: typed, close: () => store.set({ script: false }), caret, show: fault })}
        </div>
        ${trace(now, { lay: tracing.lay, known: tracing.known, fade: tracing.fade, again: tracing.markAgain, remove: tracing.remove })}${sentence(now, said)}`,
    apart: () => apart(now, sheet(now, touching), hands),
    solve: () => solve(now, hands),
    teach: () => teach(now),
    "hand-out": () => handOut(now, { choose: handing.choose, publish: () => void handing.publish() }),
  }[now.act]();
  return [
    head(now, { leave }),
    body,
    keys(now),
    clash(now, { settle: (which) => settle(which, (t) => void write(t)) }),
    html`<p class="spoken" role="status">${now.word}</p>`,
  ];
}

let run = 0;
let last = 0;
/** Typing without a pause, in one line, is one step. @param {string} text */
function typed(text) {
  const now = performance.now();
  if (now - last > 1200 || text.split("\n").length !== store.get().history.text.split("\n").length) run++;
  last = now;
  void write(text, `typing ${run}`);
}

/** @param {string} act */
const address = (act) => (location.hash = act);

/** A caret in the script touches what stands there. @param {number} at */
function caret(at) {
  const id = standing(at);
  if (id) void touch([id]);
}

/** The place of a fault, in the script and on the sheet. @param {import("./types.js").Fault} one */
function fault(one) {
  store.set({ script: true });
  requestAnimationFrame(() => {
    stand(store.get().history.text, one);
    showFault(one);
  });
}

let waiting = 0;
function paint() {
  waiting = 0;
  const now = store.get();
  document.documentElement.dataset.colours = now.theme;
  document.body.dataset.act = now.doc ? now.act : "folder";
  const area = /** @type {HTMLTextAreaElement | null} */ (document.querySelector("#script textarea"));
  const before = area && { text: area.value, at: area.selectionStart, to: area.selectionEnd };
  render(view(now), document.body);
  measure();
  // A text that is changed by a hand on the sheet leaves the caret of the script at the same words.
  if (area && before && before.text !== area.value) {
    const made = difference(before.text, area.value);
    area.setSelectionRange(carried(before.at, made), carried(before.to, made));
  }
  selectBlank();
}

async function begin() {
  const listed = list();
  await learn();
  document.documentElement.lang = language;
  try {
    store.set({ theme: /** @type {any} */ (localStorage.getItem("unpin colours") ?? "auto") });
  } catch {
    // Without a store the browser's own preference holds.
  }
  store.hear((now, before) => {
    waiting ||= requestAnimationFrame(paint);
    if (!holding()) watch(now, before, holding);
    if (now.theme !== before.theme)
      try {
        localStorage.setItem("unpin colours", now.theme);
      } catch {
        /* as above */
      }
    if (now.doc?.name !== before.doc?.name) {
      apartActs.forget();
      void tracing.recall();
    }
    if (now.history !== before.history || now.draft !== before.draft) remember();
    if (now.look !== before.look && (now.act === "apart" || now.act === "solve") && now.look?.sound) void apartActs.current();
    if (now.act !== before.act && now.act === "apart") void look();
  });
  wire();
  addEventListener("pointerup", (e) => up(e.pointerType === "mouse"));
  addEventListener("pointercancel", release);
  keyboard(address);
  addEventListener("hashchange", () => void go(location.hash.slice(1)));
  addEventListener("pagehide", () => (rememberNow(), void save({ keepalive: true })));
  for (const wake of ["focus", "visibilitychange"]) addEventListener(wake, () => void compare(replaced));
  setInterval(() => void compare(replaced), 2000);
  await listed;
  store.set({ act: "state" });
  const named = new URLSearchParams(location.search).get("file");
  const act = location.hash.slice(1);
  if (named) {
    paint();
    await open(named);
  }
  if (act) await go(act);
  paint();
}

void begin();
export { hand, nothing };
