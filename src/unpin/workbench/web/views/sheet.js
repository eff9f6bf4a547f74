/** The sheet: the engine's drawing, and over it one element for each thing, which can be touched, focused and heard. */
import { html, nothing, svg } from "../lib/lit-html.js";
import { reading } from "../kernels/hit.js";
import { matrix, metresOf } from "../kernels/tracing.js";
import { toMetres, toScreen } from "../kernels/view.js";
import { round } from "../acts/drawing.js";
import { lengthen, letBe, typed } from "../acts/measuring.js";
import { lengths, shapes } from "../acts/shapes.js";
import { store } from "../store.js";
import { say } from "../words.js";
import { drawing } from "./markup.js";

/** @typedef {import("../types.js").State} State @typedef {[number, number]} Spot */

/** @param {State} now @param {{enter: (id: string, add: boolean) => void}} does @param {import("../types.js").Figure | null | undefined} [figure] */
export function sheet(now, does, figure = shown(now)) {
  const bare = !now.drawn?.points?.length;
  return html`<main id="stage" class=${now.tracing ? "tracing" : ""}>
    <svg id="sheet" tabindex="0" role="group" aria-label=${say("sheet.name")} aria-describedby="told">
      ${now.trace ? traced(now) : nothing}
      <g class="aim">${aim(now)}</g>
      ${figure ? placed(now, figure) : nothing}
      <g class="handles">${handles(now, does)}${now.act === "state" ? lengthHandles(now, does) : nothing}</g>
      ${now.stroke.length > 1 ? svg`<path class="stroke" d=${"M" + now.stroke.map((s) => s.join(" ")).join("L")}></path>` : nothing}
      ${now.cross ? cross(toScreen(now.view, now.cross)) : nothing}
    </svg>
    ${now.length && now.act === "state" ? over(now, now.length) : nothing}
    ${bare && now.doc ? html`<p class="invite">${say(now.window[0] < 736 ? "sheet.narrow" : "sheet.empty")}</p>` : nothing}
  </main>`;
}

/** Who wants nothing to move on screen sees the displaced position drawn beside the first. @param {State} now */
const shown = (now) =>
  now.moving && now.drawn?.motion?.svg && matchMedia("(prefers-reduced-motion: reduce)").matches
    ? now.drawn.motion
    : now.drawn?.figure;

/** @param {State} now @param {import("../types.js").Figure} figure */
function placed(now, figure) {
  const by = now.view.k / figure.scale;
  const node = drawing("figure", figure.svg, now.redraw);
  node.setAttribute("x", String(now.view.x + by * figure.origin[0]));
  node.setAttribute("y", String(now.view.y + by * figure.origin[1]));
  node.setAttribute("width", String(by * figure.size[0]));
  node.setAttribute("height", String(by * figure.size[1]));
  node.setAttribute("overflow", "visible");
  return svg`<g id="figure" class=${now.look?.sound === false ? "last" : ""}>${node}</g>`;
}

/** Points and things in reading order: each a focusable element with what is said of it as its name. @param {State} now @param {{enter: (id: string, add: boolean) => void}} does */
function handles(now, does) {
  const { drawn } = now;
  if (!drawn?.things) return nothing;
  const used = new Set(drawn.things.filter((t) => t.what === "part" || t.points.length > 1).flatMap((t) => t.points));
  const items = shapes(now).map((s) => ({
    s,
    t: /** @type {import("../types.js").Thing} */ (drawn.things?.find((t) => t.id === s.id)),
    at: middle(s.lines.flat()),
  }));
  return reading(items).map(({ s, t, at }) => {
    const on = now.touched.includes(t.id);
    const key = (/** @type {KeyboardEvent} */ e) => {
      if (e.key === "Enter" || e.key === " ") {
        e.preventDefault();
        e.stopPropagation();
        does.enter(t.id, e.shiftKey);
      }
    };
    return svg`<g class="handle ${t.what} ${on ? (now.held ? "on held" : "on") : ""} ${now.hover === t.id ? "hover" : ""}" data-id=${t.id} tabindex="0" role="button" aria-pressed=${on} aria-label=${`${t.says} ${t.phrase}`} @keydown=${key} @click=${(/** @type {MouseEvent} */ e) => e.detail === 0 && does.enter(t.id, e.shiftKey)}>
      ${outline(s)}
      ${t.what === "point" && !(used.has(t.name) && drawn.figure) ? svg`<circle class="bare" cx=${at[0]} cy=${at[1]} r="3.5"></circle><text class="barename" x=${at[0] + 8} y=${at[1] - 8}>${t.name}</text>` : nothing}
    </g>`;
  });
}

/** The lengths of the figure: pressed, or reached after the things, each is typed over where it stands. @param {State} now @param {{enter: (id: string, add: boolean) => void}} does */
function lengthHandles(now, does) {
  const told = now.drawn?.figure?.lengths ?? [];
  return lengths(now).map((s) => {
    const { axis, ends, shown } = /** @type {import("../types.js").Length} */ (told.find((l) => l.id === s.id));
    const key = (/** @type {KeyboardEvent} */ e) => {
      if (e.key !== "Enter" && e.key !== " ") return;
      e.preventDefault();
      e.stopPropagation();
      does.enter(s.id, false);
    };
    return svg`<g class="handle length ${now.hover === s.id ? "hover" : ""}" data-id=${s.id} tabindex="0" role="button" aria-label=${say(`sheet.length.${axis}`, { shown, a: ends[0], b: ends[1] })} @keydown=${key} @click=${(/** @type {MouseEvent} */ e) => e.detail === 0 && does.enter(s.id, false)}>${outline(s)}</g>`;
  });
}

/** A length that is typed over in place. @param {State} now @param {NonNullable<State["length"]>} length */
function over(now, length) {
  const box = lengths(now).find((s) => s.id === length.id)?.box;
  if (!box) return nothing;
  const [wide, high] = now.window;
  const place = `left: ${Math.max(0, Math.min((box.left + box.right) / 2, wide - 60))}px; top: ${Math.max(0, Math.min((box.top + box.bottom) / 2, high - 24))}px`;
  const keys = (/** @type {KeyboardEvent} */ e) => {
    e.stopPropagation();
    if (e.key !== "Escape") return;
    letBe();
    again(length.id);
  };
  const meant = (/** @type {Event} */ e) => (e.preventDefault(), void lengthen().then(() => again(length.id)));
  return html`<form class="over" .style=${place} autocomplete="off" @submit=${meant} @keydown=${keys}>
    <label
      >${length.letter ? html`<i>${length.letter}</i> = ` : nothing}<input
        id="length"
        aria-label=${length.letter || say("sheet.over")}
        aria-describedby="told"
        size=${Math.max([...length.draft].length, 4)}
        spellcheck="false"
        autocapitalize="off"
        enterkeyhint="done"
        .value=${length.draft}
        @input=${(/** @type {Event} */ e) => typed(/** @type {HTMLInputElement} */ (e.target).value)}
        @blur=${() => void lengthen(true)}
    /></label>
  </form>`;
}

/** The keyboard goes on from the length that was typed over. @param {string} id */
function again(id) {
  if (!store.get().length) requestAnimationFrame(() => /** @type {SVGElement | null} */ (document.querySelector(`.handle[data-id="${CSS.escape(id)}"]`) ?? document.getElementById("sheet"))?.focus());
}

/** @param {Spot[]} spots @returns {Spot} */
const middle = (spots) => [
  spots.reduce((s, p) => s + p[0], 0) / spots.length,
  spots.reduce((s, p) => s + p[1], 0) / spots.length,
];

/** What lights up and can be pressed. @param {import("../acts/shapes.js").Shape} s */
function outline(s) {
  if (s.box)
    return svg`<rect class="reach" x=${s.box.left - 4} y=${s.box.top - 4} width=${s.box.right - s.box.left + 8} height=${s.box.bottom - s.box.top + 8} rx="5"></rect>`;
  if (s.lines.length === 1 && s.lines[0].length === 1)
    return svg`<circle class="reach" cx=${s.lines[0][0][0]} cy=${s.lines[0][0][1]} r=${s.what === "point" ? 13 : 17}></circle>`;
  return svg`<path class="reach" d=${s.lines.map((l) => "M" + l.map((p) => `${p[0].toFixed(1)} ${p[1].toFixed(1)}`).join("L")).join("")}></path>`;
}

/** Where a press would set a point: a quiet cross-hair on the round place, with that place written beside it. @param {State} now */
function aim(now) {
  const { near, view, landing } = now;
  if (landing) return beside(toScreen(view, landing.at), landing.shown);
  if (!near || now.hover || now.act !== "state" || (now.trace?.marking && now.tracing)) return nothing;
  const place = round(toMetres(view, near));
  return beside(toScreen(view, place.at), place.shown.join(", "));
}

/** @param {Spot} at @param {string} shown */
const beside = ([x, y], shown) =>
  svg`<path d=${`M${x - 9} ${y}H${x + 9}M${x} ${y - 9}V${y + 9}`}></path><text x=${x + 12} y=${y + 18}>${shown}</text>`;

/** @param {Spot} at */
const cross = ([x, y]) => svg`<path class="cross" d=${`M${x - 12} ${y}H${x + 12}M${x} ${y - 12}V${y + 12}`}></path>`;

/** The picture that is traced, faded, with its marks. @param {State} now */
function traced(now) {
  const trace = /** @type {import("../types.js").Trace} */ (now.trace);
  const t = matrix(trace.lay, now.view);
  return svg`<g class="trace"><image href=${trace.href} width=${trace.size[0]} height=${trace.size[1]} transform=${t} opacity=${trace.faded}></image>
    ${trace.marks.map((m, k) => {
      const [x, y] = toScreen(now.view, metresOf(trace.lay, m.pixel));
      return svg`<circle class="mark" cx=${x} cy=${y} r="9"></circle><text class="mark" x=${x + 13} y=${y - 9}>${k + 1}</text>`;
    })}</g>`;
}
