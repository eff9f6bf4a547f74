/**
 * The one door through which text of the engine becomes elements: only elements and attributes that are listed come in, so nothing else can.
 * Attributes that could run or fetch something are not listed.
 */

import { parsed } from "../acts/shapes.js";

const ELEMENTS = new Set(
  (
    "svg g path circle rect line polyline polygon text tspan title desc defs " +
    "math mrow mi mn mo ms mtext mspace mfrac msqrt mroot msub msup msubsup munder mover munderover mtable mtr mtd mstyle mpadded mphantom " +
    "div p span section article header h1 h2 h3 h4 ul ol li table tbody thead tr td th figure figcaption b strong i em sub sup small code br dl dt dd a"
  ).split(" "),
);
const ATTRIBUTES = new Set(
  (
    "class id d x y dx dy x1 y1 x2 y2 cx cy r rx ry width height viewbox transform points fill stroke stroke-width stroke-dasharray stroke-linecap " +
    "stroke-linejoin font-size font-style font-weight font-family text-anchor visibility pointer-events role data-owner data-action data-of data-step xml:space " +
    "mathvariant stretchy displaystyle scriptlevel lspace rspace minsize maxsize fence separator form accent colspan rowspan columnspan lang tabindex"
  ).split(" "),
);

/** @param {Element} element @returns {Element | null} */
function clean(element) {
  if (!ELEMENTS.has(element.localName)) return null;
  for (const { name, value } of [...element.attributes]) {
    const known =
      ATTRIBUTES.has(name.toLowerCase()) ||
      /^aria-[a-z]+$/.test(name) ||
      (name === "href" && value.startsWith("#")) ||
      name === "xmlns";
    if (!known || /url\(|javascript:/i.test(value)) element.removeAttribute(name);
  }
  for (const child of [...element.children]) if (!clean(child)) child.remove();
  return element;
}

/** @type {Map<string, {source: string, node: Element, root?: Element}>} */
const kept = new Map();

/**
 * A drawing of the engine, one element for each place of the page it stands at; the same drawing again is the same element, and of the
 * next one only the marks that differ are made anew.
 * @param {string} place @param {string} source SVG text @param {string | number} [version] @returns {Element}
 */
export function drawing(place, source, version = "") {
  const old = kept.get(place);
  const named = `${version}${source}`;
  if (old?.source === named) return old.node;
  const root = parsed(source);
  const node =
    old?.root && asDrawn(old.node, old.root)
      ? redrawn(old.node, root)
      : (clean(document.importNode(root, true)) ?? document.createElement("span"));
  kept.set(place, { source: named, node, root });
  return node;
}

/** Whether no hand has moved anything of a drawing since the engine drew it. @param {Element} node @param {Element} root */
function asDrawn(node, root) {
  const [here, there] = [node.childNodes, root.childNodes];
  if (here.length !== there.length) return false;
  for (let k = 0; k < here.length; k++) if (!here[k].isEqualNode(there[k])) return false;
  return true;
}

/** The drawing made into another, mark by mark: what is alike at both ends stays. @param {Element} node @param {Element} root @returns {Element} */
function redrawn(node, root) {
  const shell = clean(document.importNode(root, false));
  for (const { name, value } of shell?.attributes ?? []) if (node.getAttribute(name) !== value) node.setAttribute(name, value);
  const [old, next] = [[...node.childNodes], [...root.childNodes]];
  let tail = 0;
  while (tail < Math.min(old.length, next.length) && old[old.length - 1 - tail].isEqualNode(next[next.length - 1 - tail])) tail++;
  const [gone, come] = [old.length - tail, next.length - tail];
  for (let k = 0; k < Math.max(gone, come); k++) {
    if (k < Math.min(gone, come) && old[k].isEqualNode(next[k])) continue;
    const made = k < come ? document.importNode(next[k], true) : null;
    const fit = made instanceof Element ? clean(made) : made;
    if (k < gone && fit) node.replaceChild(fit, old[k]);
    else if (fit) node.insertBefore(fit, old[gone] ?? null);
    else if (k < gone) old[k].remove();
  }
  return node;
}

/** Words of the engine (HTML with mathematics) in a span, or in a div for whole chapters. @param {string} place @param {string} source @param {"span" | "div"} [as] @returns {Element} */
export function words(place, source, as = "span") {
  return remembered(place, source, () => {
    const box = document.createElement(as);
    const parsed = new DOMParser().parseFromString(source, "text/html").body;
    for (const node of [...parsed.childNodes]) {
      if (node instanceof Element && !clean(node)) continue;
      if (node.nodeType === Node.ELEMENT_NODE || node.nodeType === Node.TEXT_NODE) box.append(document.importNode(node, true));
    }
    return box;
  });
}

/** @param {string} place @param {string} source @param {() => Element} make @returns {Element} */
function remembered(place, source, make) {
  const old = kept.get(place);
  if (old?.source === source) return old.node;
  const node = make();
  kept.set(place, { source, node });
  return node;
}
