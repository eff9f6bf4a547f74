// Run by tests/workbench/test_page_kernels.py with Node's own test runner; the kernels are pure, so tables of cases are enough.
import assert from "node:assert/strict";
import test from "node:test";

const home = process.env.KERNELS;
const { stepFor, written, place, settled, along } = await import(`${home}/round.js`);
const { toScreen, toMetres, zoomed, fitted, pinched, widened, sighted, through } = await import(`${home}/view.js`);
const { under, following, reading, fromLine } = await import(`${home}/hit.js`);
const { change, forward, backward, carried, lines } = await import(`${home}/diff.js`);
const { begun, stepped, undone, redone, recent } = await import(`${home}/history.js`);
const { deformed, touched, corners } = await import(`${home}/outline.js`);
const { toUnits, within, marked, lineAt } = await import(`${home}/spans.js`);
const { laid, metresOf, pixelAt, matrix } = await import(`${home}/tracing.js`);
const { directionOf, nextDirection, angleOf } = await import(`${home}/directions.js`);
const { velocity, carried: turned } = await import(`${home}/twist.js`);

test("the step of the grid is 1, 2 or 5 times a power of ten and wide enough to be pointed at", () => {
  for (const [pixels, step] of [[170, 0.1], [90, 0.1], [40, 0.5], [9, 1], [0.17, 100], [1700, 0.01], [18, 0.5]]) {
    assert.ok(Math.abs(stepFor(pixels) - step) < 1e-12, `${pixels} px a unit: ${stepFor(pixels)}`);
    assert.ok(stepFor(pixels) * pixels >= 9 - 1e-9);
  }
});

test("a round value is written without the noise of binary fractions", () => {
  for (const [value, step, text] of [[0.30000000000000004, 0.1, "0.3"], [2.0000001, 0.1, "2"], [-0.04, 0.1, "0"], [1234.2, 50, "1250"], [-1.25, 0.05, "-1.25"], [7, 1, "7"], [100, 10, "100"]])
    assert.equal(written(value, step), text);
});

test("a place lands on round values of the file's own unit", () => {
  assert.deepEqual(place([0.3998, 1.2003], 1000, 10), { shown: ["400", "1200"], at: [0.4, 1.2] });
});

test("a place is level with a point that is nearer than the next round value", () => {
  const wall = { at: [0, 1.234], shown: ["0", "1.234"] };
  assert.deepEqual(settled([2.01, 1.24], 1, 0.1, [wall], 0.05).shown, ["2", "1.234"]);
  assert.deepEqual(settled([2.01, 1.31], 1, 0.1, [wall], 0.05).shown, ["2", "1.3"]);
});

test("a place on a member stays on it and is round in the coordinate that changes most", () => {
  const on = along([0.83, 1.9], [0, 1.6], [1.2, 2.2], 1, 0.1);
  assert.equal(`${on.axis} ${on.value}`, "x 0.8");
  assert.ok(Math.abs((on.at[1] - 1.6) / on.at[0] - 0.5) < 1e-12);
  assert.equal(along([0.01, 1.02], [0, 0], [0.1, 3], 1, 0.1).axis, "y");
});

test("metres to pixels and back is where it began, and zooming keeps the place under the hand", () => {
  const view = { x: 120, y: 400, k: 85 };
  for (const spot of [[0, 0], [1.6, -2.25], [-3, 7]]) {
    const back = toMetres(view, toScreen(view, spot));
    assert.ok(Math.hypot(back[0] - spot[0], back[1] - spot[1]) < 1e-9);
  }
  const at = [333, 222];
  const [before, after] = [toMetres(view, at), toMetres(zoomed(view, at, 1.7), at)];
  assert.ok(Math.hypot(before[0] - after[0], before[1] - after[1]) < 1e-9);
});

test("a place comes into view by as little as will do, and not at all where it is seen", () => {
  const [view, pane] = [{ x: 100, y: 500, k: 100 }, [1000, 600]];
  assert.equal(sighted(view, [[1, 1]], [[0, 0]], pane), view);
  assert.equal(sighted(view, [], [[0, 0]], pane), view);
  assert.deepEqual(sighted(view, [[10, 1]], [], pane), { k: 100, x: -48, y: 500 });
  assert.deepEqual(sighted(view, [[10, 1]], [[-3, 1]], pane), { k: 100, x: -48, y: 500 }, "what was not seen need not be");
  const both = sighted(view, [[20, 1]], [[0, 0]], pane);
  const [a, b] = [toScreen(both, [0, 0]), toScreen(both, [20, 1])];
  assert.ok(both.k < 50 && both.k > 46 && a[0] > 15.9 && b[0] < 952.1 && a[1] < 600 && b[1] > 0);
  assert.equal(sighted(view, [[-30, 1], [9, 1]], [], pane).k < 25, true, "what does not fit is made smaller");
});

test("a stretch comes through a window or passes by it", () => {
  for (const [p, q, seen] of [[[-5, 5], [15, 5], true], [[-5, 5], [5, -6], false], [[5, 5], [5, 5], true], [[5, 12], [5, 12], false], [[12, 0], [12, 9], false], [[-1, 9], [9, 11], true]])
    assert.equal(through(p, q, [10, 10]), seen, `${p} to ${q}`);
  assert.equal(through([2, 5], [2, 5], [10, 10], 3), false);
});

test("a figure makes room for points it does not draw, and points alone have air around them", () => {
  const figure = { scale: 50, origin: [-20, -120], size: [200, 150] };
  const wide = widened(figure, [[0, 0], [6, 3]], [900, 600], 110);
  assert.deepEqual(wide, { scale: 50, origin: [-20, -168], size: [338, 198] });
  assert.equal(widened(null, [], [900, 600], 110), null);
  const alone = widened(null, [[3, 700]], [900, 600], 110);
  const spot = toScreen(fitted(alone, [900, 600]), [3, 700]);
  assert.ok(Math.hypot(spot[0] - 450, spot[1] - 300) < 1);
});

test("no more steps are kept than asked, the latest of them", () => {
  let h = begun("");
  for (const t of ["a", "ab", "abc"]) h = stepped(h, t);
  const kept = recent(h, 2);
  assert.equal(undone(undone(kept)).text, "a");
  assert.equal(undone(undone(undone(kept))).text, "a");
});

test("a figure is fitted into the middle of the window", () => {
  const figure = { scale: 70, origin: [-40, -280], size: [230, 310] };
  const view = fitted(figure, [900, 600]);
  const by = view.k / figure.scale;
  assert.ok(Math.abs(view.x + by * (figure.origin[0] + 115) - 450) < 1e-9);
  assert.ok(Math.abs(view.y + by * (figure.origin[1] + 155) - 300) < 1e-9);
});

test("two fingers twice as far apart make it twice as large", () => {
  assert.equal(pinched({ x: 0, y: 0, k: 50 }, [[0, 0], [100, 0]], [[0, 0], [200, 0]]).k, 100);
});

test("points are under a hand before lines, and the same place again gives the next", () => {
  const shapes = [{ id: "part arm", what: "part", lines: [[[0, 0], [100, 0]]] }, { id: "point A", what: "point", lines: [[[0, 0]]] }, { id: "load 1", what: "load", lines: [[[0, -30], [0, 0]]] }];
  assert.deepEqual(under([3, 3], shapes, 9), ["point A", "load 1", "part arm"]);
  assert.deepEqual(under([20, 20], [{ id: "connection A", what: "connection", lines: [[[0, 0]]], box: { left: 0, top: 10, right: 30, bottom: 25 } }], 9), ["connection A"]);
  assert.equal(following(["point A", "load 1"], "point A"), "load 1");
  assert.equal(following(["point A", "load 1"], "load 1"), "point A");
  assert.equal(following(["point A"], undefined), "point A");
  assert.equal(fromLine([50, 30], [[0, 0], [100, 0]]), 30);
});

test("reading order is by rows from the top, each from the left", () => {
  const ids = reading([{ id: "c", at: [0, 200] }, { id: "b", at: [90, 10] }, { id: "a", at: [10, 15] }]).map((t) => t.id);
  assert.deepEqual(ids, ["a", "b", "c"]);
});

test("any change of a text is one replacement that goes forward and back", () => {
  let seed = 7;
  const chance = (n) => (seed = (seed * 48271) % 2147483647) % n;
  for (let k = 0; k < 500; k++) {
    const make = () => Array.from({ length: chance(12) }, () => "aab\n"[chance(4)]).join("");
    const [a, b] = [make(), make()];
    const made = change(a, b);
    assert.equal(forward(a, made), b);
    assert.equal(backward(b, made), a);
  }
  assert.equal(carried(10, { at: 2, gone: "ab", come: "xyz" }), 11);
  assert.equal(carried(1, { at: 2, gone: "ab", come: "xyz" }), 1);
});

test("undo has no limit, a new step forgets what was undone, and typing is one step", () => {
  let h = begun("");
  for (let k = 0; k < 3000; k++) h = stepped(h, h.text + k);
  for (let k = 0; k < 3000; k++) h = undone(h);
  assert.equal(h.text, "");
  assert.equal(redone(h).text, "0");
  assert.equal(stepped(redone(h), "z").undone.length, 0);
  const typed = ["a", "ab", "abc"].reduce((p, t) => stepped(p, t, "typing"), begun(""));
  assert.equal(typed.done.length, 1);
  assert.equal(undone(typed).text, "");
  assert.equal(undone(undone(typed)).text, "");
});

test("two texts are compared line by line", () => {
  assert.deepEqual(lines("a\nb\nc", "a\nx\nc").map((l) => l.mark + l.line), ["=a", "-b", "+x", "=c"]);
});

test("where a point moves, the corners on it go along and no others", () => {
  const shift = [{ from: [0, -50], to: [10, -60] }];
  assert.equal(deformed("M0 0L0 -50L80 -50", shift), "M0 0L10.00 -60.00L80 -50");
  assert.equal(touched("M0 -50L0 -50", shift), "all");
  assert.equal(touched("M0 0L1 1Z", shift), "none");
  assert.deepEqual(corners("M1 2L-3.5 4Z"), [[1, 2], [-3.5, 4]]);
});

test("places count code points, as the engine does, where the browser counts units", () => {
  const text = "a𝑃b";
  assert.equal(toUnits(text, 2), 3);
  assert.equal(within(text, [1, 2]), "𝑃");
  assert.equal(lineAt("a\nb\nc", 4), 3);
});

test("faults cut a text into pieces that together are the text", () => {
  const text = "supports: {A: pni}";
  const pieces = marked(text, [{ span: [14, 17], severity: "error" }, { span: [10, 18], severity: "warning" }, { span: null, severity: "error" }]);
  assert.equal(pieces.map((p) => p.text).join(""), text);
  assert.deepEqual(pieces.find((p) => p.severity === "error")?.text, "pni");
});

test("two known places give a picture its scale, its tilt and where it lies", () => {
  const lay = laid([[100, 500], [700, 420]], [[0, 0], [3, 0]]);
  for (const [pixel, metres] of [[[100, 500], [0, 0]], [[700, 420], [3, 0]]]) {
    const got = metresOf(lay, pixel);
    assert.ok(Math.hypot(got[0] - metres[0], got[1] - metres[1]) < 1e-9);
    const back = pixelAt(lay, metres);
    assert.ok(Math.hypot(back[0] - pixel[0], back[1] - pixel[1]) < 1e-6);
  }
  // What is square to the left of the way in the picture lies upwards: photographs are not mirrored.
  const [dx, dy] = [600, -80];
  assert.ok(metresOf(lay, [100 + dy, 500 - dx])[1] > 2.9);
  assert.equal(laid([[1, 1], [1, 1]], [[0, 0], [1, 0]]), null);
  assert.match(matrix(lay, { x: 0, y: 0, k: 1 }), /^matrix\(/);
});

test("a body that turns about a point leaves that point where it is", () => {
  const twist = [2, -3, 1.5];
  const centre = [3 / 1.5, 2 / 1.5];
  assert.ok(Math.hypot(...velocity(twist, centre)) < 1e-12);
  assert.match(turned(twist, 0.1, 100), /^rotate\(-8.594 200 -133.333\)$/);
  assert.equal(turned([1, 2, 0], 0.5, 10), "translate(5 -10)");
});

test("the direction of a force is an axis by its name, else round degrees above or below the level", () => {
  for (const [degrees, step, words] of [
    [1.9, 5, "right"], [-2, 5, "right"], [88, 5, "up"], [91, 1, "at 89 deg above left"], [181, 5, "left"], [-91, 5, "down"], [269.6, 1, "down"],
    [33, 5, "at 35 deg above right"], [33.4, 1, "at 33 deg above right"], [147, 5, "at 35 deg above left"], [-146, 5, "at 35 deg below left"],
    [-53.13, 5, "at 55 deg below right"], [359.6, 1, "right"], [720, 5, "right"],
  ])
    assert.equal(directionOf(degrees, step).words, words, `${degrees}`);
  assert.equal(nextDirection(-53.13, 1, 15).words, "at 45 deg below right");
  assert.equal(nextDirection(-53.13, -1, 15).words, "at 60 deg below right");
  assert.equal(nextDirection(-90, 1, 15).words, "at 75 deg below right");
  assert.equal(nextDirection(-90, -1, 1).words, "at 89 deg below left");
  assert.equal(nextDirection(75, 1, 15).words, "up");
  assert.equal(angleOf([1, 1], [1, 3]), 90);
});
