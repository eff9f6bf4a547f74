/** Places in a text. The engine counts code points, the browser UTF-16 units; lines count from 1. Pure. */

/** @param {string} text @param {number} points code points from the start @returns {number} UTF-16 units from the start */
export function toUnits(text, points) {
  let units = 0;
  for (let k = 0; k < points && units < text.length; k++)
    units += /** @type {number} */ (text.codePointAt(units)) > 0xffff ? 2 : 1;
  return units;
}

/** The part of a text between two code points. @param {string} text @param {[number, number]} span @returns {string} */
export function within(text, span) {
  return text.slice(toUnits(text, span[0]), toUnits(text, span[1]));
}

/** The line on which a place stands. @param {string} text @param {number} units @returns {number} */
export function lineAt(text, units) {
  let line = 1;
  for (let k = text.indexOf("\n"); k >= 0 && k < units; k = text.indexOf("\n", k + 1)) line++;
  return line;
}

/**
 * A text cut into pieces at the faults in it, for an underline beneath each: every piece with the severity that holds there, "" for none.
 * Where faults overlap, the graver counts. Spans are in code points.
 * @param {string} text @param {{span: [number, number] | null, severity: string}[]} faults
 * @returns {{text: string, severity: string}[]}
 */
export function marked(text, faults) {
  /** @type {string[]} */
  const kind = new Array(text.length).fill("");
  for (const fault of [...faults].sort((a, b) => (a.severity === "error" ? 1 : 0) - (b.severity === "error" ? 1 : 0))) {
    if (!fault.span) continue;
    const from = toUnits(text, fault.span[0]);
    const to = Math.max(toUnits(text, fault.span[1]), from + 1);
    for (let k = from; k < to && k < kind.length; k++) kind[k] = fault.severity;
  }
  /** @type {{text: string, severity: string}[]} */
  const out = [];
  for (let k = 0, from = 0; k <= text.length; k++) {
    if (k === text.length || kind[k] !== kind[from]) {
      if (k > from) out.push({ text: text.slice(from, k), severity: kind[from] });
      from = k;
    }
  }
  return out;
}
