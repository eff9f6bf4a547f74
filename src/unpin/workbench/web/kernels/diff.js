/** What changed between two texts. Pure. */

/**
 * One replacement that makes `before` into `after`: the text between the common start and the common end.
 * @typedef {{at: number, gone: string, come: string}} Change
 * @param {string} before @param {string} after @returns {Change}
 */
export function change(before, after) {
  const most = Math.min(before.length, after.length);
  let head = 0;
  while (head < most && before[head] === after[head]) head++;
  let tail = 0;
  while (tail < most - head && before[before.length - 1 - tail] === after[after.length - 1 - tail]) tail++;
  return { at: head, gone: before.slice(head, before.length - tail), come: after.slice(head, after.length - tail) };
}

/** @param {string} text @param {Change} made @returns {string} */
export function forward(text, made) {
  return text.slice(0, made.at) + made.come + text.slice(made.at + made.gone.length);
}

/** @param {string} text @param {Change} made @returns {string} */
export function backward(text, made) {
  return text.slice(0, made.at) + made.gone + text.slice(made.at + made.come.length);
}

/** Where a caret stands after a change made by somebody else. @param {number} caret @param {Change} made @returns {number} */
export function carried(caret, made) {
  if (caret <= made.at) return caret;
  return Math.max(made.at, caret - made.gone.length) + (caret >= made.at + made.gone.length ? made.come.length : 0);
}

/**
 * Two texts line by line: `=` in both, `-` only in the first, `+` only in the second.
 * @param {string} first @param {string} second @returns {{mark: "=" | "-" | "+", line: string}[]}
 */
export function lines(first, second) {
  const [a, b] = [first.split("\n"), second.split("\n")];
  const long = Array.from({ length: a.length + 1 }, () => new Uint16Array(b.length + 1));
  for (let i = a.length - 1; i >= 0; i--)
    for (let j = b.length - 1; j >= 0; j--)
      long[i][j] = a[i] === b[j] ? long[i + 1][j + 1] + 1 : Math.max(long[i + 1][j], long[i][j + 1]);
  /** @type {{mark: "=" | "-" | "+", line: string}[]} */
  const out = [];
  let [i, j] = [0, 0];
  while (i < a.length || j < b.length) {
    if (i < a.length && j < b.length && a[i] === b[j]) {
      out.push({ mark: "=", line: a[i++] });
      j++;
    } else if (j >= b.length || (i < a.length && long[i + 1][j] >= long[i][j + 1])) out.push({ mark: "-", line: a[i++] });
    else out.push({ mark: "+", line: b[j++] });
  }
  return out;
}
