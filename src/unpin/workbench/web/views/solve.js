/** Solving by hand: a body, the sums worth taking on it; what is pointed at shows what drops out and what is left; the lesson grows beside. */
import { html, nothing, svg } from "../lib/lit-html.js";
import { store } from "../store.js";
import { good, unkept } from "../acts/apart.js";
import { say } from "../words.js";
import { drawing, words } from "./markup.js";
import { answers } from "./sentence.js";

/** @typedef {import("../types.js").State} State @typedef {import("../types.js").Pulled} Pulled @typedef {import("../types.js").Choice} Choice */
/** @typedef {{isolate: (b: string[]) => void, join: (name: string) => void, take: (sum: string) => void, back: () => void, clear: () => void, pointAt: (sum: string) => void, shortest: (k: "recommended" | "fewest") => void, callOff: () => void, keep: () => void}} Does */

// Letters of a figure are not to be larger than those of the text, and a tall body is to be seen at once.
const LARGEST = 1.7;
const TALLEST = 0.62;

/** @param {State} now @param {Does} does */
export function solve(now, does) {
  const bodies = now.look?.bodies ?? [];
  const body = now.pulled.find((p) => p.key === now.route.shown) ?? now.pulled[0];
  return html`<main class="two solve">
    <section class="body" aria-label=${say("solve.body")}>
      ${now.notice ? html`<p class="notice" role="status">${now.notice}</p>` : nothing}
      <p class="bodies">
        ${bodies.length > 1 ? html`<button aria-pressed=${!!body && body.bodies.length === bodies.length} @click=${() => does.isolate(["whole"])}>${say("apart.whole")}</button>` : nothing}${bodies.map(
          (b) =>
            html`<button
              aria-pressed=${body?.key === b.name}
              @click=${(/** @type {MouseEvent} */ e) => (e.shiftKey ? does.join(b.name) : does.isolate([b.name]))}
            >
              ${b.title}
            </button>`,
        )}${now.pulled
          .filter((p) => p.bodies.length > 1 && p.bodies.length < bodies.length)
          .map(
            (p) =>
              html`<button aria-pressed=${p === body} @click=${() => store.set({ route: { ...now.route, shown: p.key } })}>
                ${p.bodies.join(" + ")}
              </button>`,
          )}
      </p>
      ${body ? one(now, body, does) : html`<p class="lead">${say(now.look?.sound === false ? "apart.faulty" : "solve.begin")}</p>`}
    </section>
    <section class="side" aria-label=${say("solve.lesson")}>${lesson(now, does)}</section>
  </main>`;
}

/** @param {State} now @param {Pulled} body @param {Does} does */
function one(now, body, does) {
  const pointed = body.choices.find((c) => c.sum === now.centre);
  return html`<h2>${words("solve title", body.title)}</h2>
    <div class="choosing"><div class="fbd">${figure(now, body, pointed, does)}</div>
    <div class="choices"><p class="told" aria-live="polite">${pointed ? left(body, pointed) : say("solve.point")}</p>
    <ul class="sums" @mouseleave=${() => does.pointAt("")}>
      ${body.choices.map((c) => {
        const taken = !!now.route.hand?.steps.some((s) => s.ok && s.same === c.sum);
        return html`<li>
          <button
            class="leaves-${c.left_ids.length > 2 ? "more" : c.left_ids.length}"
            aria-pressed=${c === pointed}
            ?disabled=${taken}
            @pointerenter=${hover(c, does)}
            @focus=${focus(c, does)}
            @click=${press(now, c, does)}
          >
            <span class="what">${words(`sum ${c.sum}`, c.header)}</span>
            <span class="left">${taken ? say("solve.taken") : leaves(body, c)}</span>
          </button>
        </li>`;
      })}
    </ul>
    <form
      class="line"
      @submit=${(/** @type {SubmitEvent} */ e) => {
        e.preventDefault();
        const field = /** @type {HTMLInputElement} */ (/** @type {HTMLFormElement} */ (e.target).elements.namedItem("sum"));
        if (field.value.trim()) does.take(field.value.trim());
        field.value = "";
      }}
    >
      <input
        name="sum"
        aria-label=${say("solve.typed")}
        placeholder=${say("solve.typed")}
        autocomplete="off"
        spellcheck="false"
      /><button>${say("solve.take")}</button>
    </form></div></div>`;
}

// A mouse or the focus of the keyboard points, a press takes; a finger cannot point, so its first press does and its second takes.
/** @param {Choice} c @param {Does} does */
const hover = (c, does) => (/** @type {PointerEvent} */ e) => e.pointerType !== "touch" && does.pointAt(c.sum);

/** @param {Choice} c @param {Does} does */
const focus = (c, does) => (/** @type {FocusEvent} */ e) =>
  /** @type {Element} */ (e.target).matches(":focus-visible") && does.pointAt(c.sum);

/** @param {State} now @param {Choice} c @param {Does} does */
const press = (now, c, does) => (/** @type {PointerEvent} */ e) =>
  e.pointerType === "touch" && now.centre !== c.sum ? does.pointAt(c.sum) : does.take(c.sum);

/** The unknowns that a sum leaves, by name. @param {Pulled} body @param {Choice} c @param {string} [place] where it stands on the page */
function leaves(body, c, place = "left") {
  if (!c.left_ids.length) return say("solve.none");
  const [first, ...more] = c.left_ids.map((u) => named(body, u, `${place} ${c.sum}`));
  return html`<span class="tied">${say(place === "told" ? "solve.left" : "solve.leaves")} ${first}${more.length ? "," : ""}</span>${more.map((u, k) => html` <span class="tied">${u}${k < more.length - 1 ? "," : ""}</span>`)}`;
}

/** @param {Pulled} body @param {Choice} c */
function left(body, c) {
  const gone = body.unknowns.filter((u) => c.drops_ids.includes(u.id));
  return html`${gone.length ? html`${say("solve.drops")} ${gone.map((u, k) => html`${k ? ", " : ""}${named(body, u.id, "gone")}`)}. ` : nothing}${leaves(body, c, "told")}.`;
}

/** @param {Pulled} body @param {string} id @param {string} place */
function named(body, id, place) {
  const unknown = body.unknowns.find((u) => u.id === id);
  return unknown ? words(`${place} ${id}`, unknown.name) : id;
}

/** The free body with its centres to be pointed at; what drops out of the sum fades. @param {State} now @param {Pulled} body @param {Choice | undefined} pointed @param {Does} does */
function figure(now, body, pointed, does) {
  const f = body.figure;
  if (!f) return nothing;
  const node = drawing("solve", f.svg);
  const gone = new Set(body.unknowns.filter((u) => pointed?.drops_ids.includes(u.id)).flatMap((u) => u.owner));
  for (const mark of node.querySelectorAll("[data-action]"))
    mark.classList.toggle("gone", gone.has(mark.getAttribute("data-action") ?? ""));
  for (const [k, v] of [
    ["x", f.origin[0]],
    ["y", f.origin[1]],
    ["width", f.size[0]],
    ["height", f.size[1]],
  ])
    node.setAttribute(String(k), String(v));
  const centres = f.scale
    ? body.choices.flatMap((c) => {
        const at = c.at ?? now.drawn?.points?.find((p) => p.name === c.about)?.at;
        return at && (c.about || c.at) ? [{ c, x: at[0] * f.scale, y: -at[1] * f.scale }] : [];
      })
    : [];
  return html`<svg
    class="pointable"
    width=${Math.round((f.size[0] + 24) * Math.min(LARGEST, (TALLEST * innerHeight) / (f.size[1] + 24)))}
    viewBox=${`${f.origin[0] - 12} ${f.origin[1] - 12} ${f.size[0] + 24} ${f.size[1] + 24}`}
    role="group"
    aria-label=${say("solve.centres")}
  >
    ${centres.map(
      ({
        c,
        x,
        y,
      }) => svg`<circle class="centre ${c === pointed ? "on" : ""}" cx=${x} cy=${y} r="9" tabindex="0" role="button" aria-label=${c.sum}
      @pointerenter=${hover(c, does)} @focus=${focus(c, does)} @click=${press(now, c, does)}
      @keydown=${(/** @type {KeyboardEvent} */ e) => (e.key === "Enter" || e.key === " ") && (e.preventDefault(), does.take(c.sum))}></circle>`,
    )}
    ${node}
  </svg>`;
}

/** @param {State} now @param {Does} does */
function lesson(now, does) {
  const { route } = now;
  const { hand } = route;
  return html`<p class="small">
      <button @click=${() => does.shortest("recommended")}>${say("solve.shortest")}</button>
      <button @click=${() => does.shortest("fewest")}>${say("solve.fewest")}</button>
      ${route.sums.length ? html`<button @click=${does.back}>${say("solve.back")}</button> <button @click=${does.clear}>${say("solve.clear")}</button>` : nothing}
      ${unkept(now) ? html`<button @click=${does.keep}>${say(good(route).length ? "solve.keep" : "solve.unkeep")}</button>` : nothing}
    </p>
    ${route.job ? html`<p role="status">${say("solve.searching")} <button @click=${does.callOff}>${say("solve.calloff")}</button></p>` : nothing}
    ${route.bad ? html`<p class="notice" role="status">${route.bad}</p>` : nothing}
    ${route.claim ? html`<p class="claim">${words("claim", route.claim)}</p>` : nothing}
    ${
      hand
        ? html`<ol class="steps">
              ${hand.steps.map((s, k) => html`<li class=${s.ok ? "ok" : "not"}><code>${s.sum}</code> <span class="remark">${words(`step ${k}`, s.remark)}</span></li>`)}
            </ol>
            ${
              hand.done
                ? html`<p class="done" role="status">${say("solve.done", { count: hand.count })}</p>
                    ${answers(hand.answers, "hand")}`
                : hand.missing.length
                  ? html`<p>
                      ${say("solve.missing")} ${hand.missing.map((m, k) => html`${k ? ", " : ""}${words(`missing ${k}`, m)}`)}.
                    </p>`
                  : nothing
            }
            <div class="chapters">${words("lesson", hand.lesson, "div")}</div>`
        : html`<p class="lead">${say("solve.empty")}</p>`
    }`;
}
