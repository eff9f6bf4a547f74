"""The desk in a real browser: from an edit to the repainted figure and answer, and frames dropped while dragging.

`python benchmarks/desk.py`. Nothing is asserted. Beside the first figure stands a page that only puts the same drawing up again; what the
engine and the wire cost is the difference. Medians and 95th percentiles of 40 edits.
"""

from __future__ import annotations

import shutil
import statistics
import sys
import tempfile
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


EDITS = """async ([times, from]) => {
  const { store } = await import('/web/store.js');
  const { write } = await import('/web/acts/editing.js');
  const frame = () => new Promise((r) => requestAnimationFrame(() => requestAnimationFrame(r)));
  const out = [];
  for (let k = 0; k < times; k++) {
    const text = store.get().history.text.replace(/(\\d+) N at T0/, () => `${from + k} N at T0`);
    const start = performance.now();
    await write(text);
    await frame();
    out.push(performance.now() - start);
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


def told(name: str, ms: list[float]) -> None:
    print(f"{name:54} median {statistics.median(ms):7.1f} ms   95th percentile {sorted(ms)[int(0.95 * len(ms))]:7.1f} ms")


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
        for parts in (8, 20):
            hand.open(f"parts{parts}.yaml")
            page.evaluate(EDITS, [5, 300])
            told(f"{parts} parts: an edit to figure and answers on screen", page.evaluate(EDITS, [times, 400]))
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
