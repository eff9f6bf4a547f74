"""The desk in a real browser: from an edit to the repainted figure and answer, and frames dropped while dragging.

`python benchmarks/desk.py`. Nothing is asserted. Beside the times stands a page that only puts the same drawing up again, which takes two
frames of the screen; what the engine, the wire and the page cost is the difference. Medians and 95th percentiles of 40.
"""

from __future__ import annotations

import os
import shutil
import statistics
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).parents[1]
sys.path.insert(0, str(ROOT / "tests" / "browser"))


def chain(parts: int) -> str:
    """A row of three-hinged bents on the ground, two members each: as many parts as asked, all found by sums."""
    points, members, supports, loads = ["P0: [0, 0]"], [], ["P0: pin"], []
    for k in range(parts // 2):
        a, t, b = f"P{k}", f"T{k}", f"P{k + 1}"
        if k:
            points.append(f"Q{k}: [{2 * k + 0.4 * k}, 0]")
            a = f"Q{k}"
            supports.append(f"{a}: pin")
        points += [f"{t}: [{2.4 * k + 1}, 1.5]", f"{b}: [{2.4 * k + 2}, 0]"]
        members += [f"left{k}: {a} {t}", f"right{k}: {t} {b}"]
        supports.append(f"{b}: pin")
        loads.append(f"{40 + k} N at {t} on left{k} right")
    return "".join(f"{name}: {{{', '.join(rows)}}}\n" for name, rows in (("points", points), ("members", members), ("supports", supports))) + f"loads: [{', '.join(loads)}]\n"


TIMED = """async ([what, times, from]) => {
  const { store } = await import('/web/store.js');
  const { change, write } = await import('/web/acts/editing.js');
  const frame = () => new Promise((r) => requestAnimationFrame(() => requestAnimationFrame(r)));
  const does = {
    edit: (k) => write(store.get().history.text.replace(/(\\d+) N at T0/, () => `${from + k} N at T0`)),
    act: (k) => change([{ do: 'point', name: 'T0', at: ['1', `1.${from + k}`] }]),
  };
  const out = [];
  for (let k = 0; k < times; k++) {
    performance.clearResourceTimings();
    const start = performance.now();
    await does[what](k);
    await frame();
    const whole = performance.now() - start;
    const asked = performance.getEntriesByType('resource').filter((e) => /\\/(edit|look)$/.test(e.name));
    const sum = (of) => asked.reduce((total, e) => total + of(e), 0);
    out.push({ whole, asked: asked.length, wire: sum((e) => e.duration), engine: sum((e) => e.serverTiming[0]?.duration ?? 0) });
  }
  return out;
}"""

REDRAW = """async (times) => {
  const svg = new XMLSerializer().serializeToString(document.querySelector('#figure > svg'));
  const frame = () => new Promise((r) => requestAnimationFrame(() => requestAnimationFrame(r)));
  const box = document.body.appendChild(document.createElement('div'));
  const out = [];
  for (let k = 0; k < times; k++) {
    const start = performance.now();
    box.replaceChildren(document.importNode(new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement, true));
    await frame();
    out.push(performance.now() - start);
  }
  box.remove();
  return out;
}"""

FRAMES = """() => { const seen = window.seen = []; const tick = (t) => { seen.push(t); if (seen.length < 2000) requestAnimationFrame(tick); }; requestAnimationFrame(tick); }"""


REQUESTS = "() => performance.getEntriesByType('resource').length + 1"


def told(name: str, ms: list[float]) -> None:
    print(f"{name:58} median {statistics.median(ms):7.1f} ms   95th percentile {sorted(ms)[int(0.95 * len(ms))]:7.1f} ms")


def shares(name: str, runs: list[dict[str, float]]) -> None:
    """The whole way, and how much of it a question to the server and the work of the engine took."""
    told(name, [r["whole"] for r in runs])
    told(f"    {max(r['asked'] for r in runs)} question to the server", [r["wire"] for r in runs])
    told("    of it the engine", [r["engine"] for r in runs])


def main(times: int = 40) -> None:
    from desks import Hand, served
    from playwright.sync_api import sync_playwright

    with tempfile.TemporaryDirectory() as made, sync_playwright() as driver, served(made) as address:
        folder = Path(made)
        for parts in (8, 20):
            (folder / f"parts{parts}.yaml").write_text(chain(parts))
        chromium = shutil.which("chromium") or shutil.which("google-chrome")
        browser = driver.chromium.launch(executable_path=chromium, args=["--no-sandbox"])
        page = browser.new_page(viewport={"width": 1280, "height": 800})
        hand = Hand(page, address, folder)
        print(f"load of the machine {os.getloadavg()[0]:.1f}")
        for parts in (8, 20):
            opened = []
            for _ in range(5):
                began = time.perf_counter()
                page.goto("about:blank")
                page.goto(f"{address}?file=parts{parts}.yaml#state")
                page.wait_for_selector("#figure > svg")
                opened.append(1000 * (time.perf_counter() - began))
            told(f"{parts} parts: the page opened, {page.evaluate(REQUESTS)} requests, to the figure", opened)
            hand.open(f"parts{parts}.yaml")
            page.evaluate(TIMED, ["edit", 5, 300])
            shares(f"{parts} parts: an edit to figure and answers on screen", page.evaluate(TIMED, ["edit", times, 400]))
            shares(f"{parts} parts: a point moved, to figure and answers on screen", page.evaluate(TIMED, ["act", times, 400]))
            told(f"{parts} parts: a page that only redraws the same figure", page.evaluate(REDRAW, times))
        hand.press(1, 1.5)
        at = hand.spot(1, 1.5)
        page.mouse.move(*at)
        page.mouse.down()
        page.evaluate(FRAMES)
        for k in range(160):
            page.mouse.move(at[0] + 40 * (k % 40) / 40, at[1] - 30 * (k % 25) / 25)
        page.mouse.up()
        seen = page.evaluate("window.seen")
        gaps = [b - a for a, b in zip(seen, seen[1:])]
        usual = statistics.median(gaps)
        print(f"20 parts: dragging a point, {len(gaps)} frames of {usual:.1f} ms, {sum(g > 1.5 * usual for g in gaps)} late, longest {max(gaps):.0f} ms")
        browser.close()


if __name__ == "__main__":
    main()
