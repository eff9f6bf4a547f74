"""Pictures of every view of the desk in every state, light, dark and on a telephone: `python tools/screens.py FOLDER [NAME …]`.

With `--docs` the few that the manual shows are written to docs/pictures instead.
"""

from __future__ import annotations

import shutil
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).parents[1]
sys.path.insert(0, str(ROOT / "tests" / "browser"))

LOOSE = """\
title: Gate without a stay
points: {A: [0, 0], B: A right 1.6, C: A right 1.6 up 1.2, D: A up 1.2}
members: {low: A B, end: B C, high: D C}
supports: {A: pin, D: pin}
loads: [120 N at C down]
find: [A]
"""
FAULTY = """\
title: Shelf on a stay
points: {A: [0, 0], B: A right 0.4, C: A right 0.6, W: A up 0.3}
members: {shelf: A B C}
links: [B-W]
supports: {A: pin, W: pni}
loads: [90 N at Q down]
"""


def views():
    """Name, file, act, and what the hand does there."""
    awning = "market-awning.yaml"
    return [
        ("folder", None, "", lambda h: None),
        ("empty", "", "state", lambda h: None),
        ("state", awning, "state", lambda h: None),
        ("touched", awning, "state", lambda h: h.press(1.65, 2.75)),
        ("point", awning, "state", lambda h: h.press(2.1, 2.9)),
        ("stroke", awning, "state", lambda h: h.stroke((0, 0), (1.2, 2.6))),
        ("script", awning, "state", lambda h: h.keys("Alt+s")),
        ("keys", awning, "state", lambda h: h.keys("?")),
        ("faulty", "faulty.yaml", "state", lambda h: h.keys("Alt+s")),
        ("moving", "loose.yaml", "state",
         lambda h: (h.page.get_by_role("button", name="Let it move").click(), h.page.wait_for_timeout(650))),
        ("why", "loose.yaml", "state", lambda h: h.page.locator(".why summary").click()),
        ("apart", awning, "apart", lambda h: None),
        ("pulled", awning, "apart", lambda h: [h.page.locator(".bodies button").nth(k).click() or h.settle() for k in (0, 1)]),
        ("solve", awning, "solve", lambda h: h.page.locator(".sums button").first.hover()),
        ("taken", awning, "solve", lambda h: (h.page.locator(".sums button").first.click(), h.settle())),
        ("route", awning, "solve",
         lambda h: (h.page.get_by_role("button", name="Shortest way").click(), h.page.locator(".done").wait_for(timeout=30000))),
        ("teach", awning, "teach", lambda h: h.page.wait_for_timeout(500)),
        ("page", awning, "hand-out", lambda h: h.page.wait_for_timeout(500)),
        ("paper", awning, "hand-out",
         lambda h: (h.page.get_by_label("Form", exact=True).select_option(".pdf"), h.page.locator("img.page").wait_for(timeout=20000))),
        ("figure", awning, "hand-out",
         lambda h: (h.page.get_by_label("Form", exact=True).select_option(".svg"), h.page.locator("img.figure").wait_for(timeout=20000))),
        ("hoist", "theatre-hoist.yaml", "state", lambda h: None),
    ]


SIZES = {
    "light": {"viewport": {"width": 1280, "height": 800}},
    "dark": {"viewport": {"width": 1280, "height": 800}, "color_scheme": "dark"},
    "phone": {"viewport": {"width": 390, "height": 844}, "has_touch": True, "is_mobile": True, "device_scale_factor": 2},
}
DOCS = {"state": "desk-state", "stroke": "desk-stroke", "faulty": "desk-script", "pulled": "desk-apart", "taken": "desk-solve", "paper": "desk-hand-out"}


def main(to: str, only: list[str]) -> None:
    from desks import Hand, served
    from playwright.sync_api import sync_playwright

    docs = to == "--docs"
    target = ROOT / "docs" / "pictures" if docs else Path(to)
    target.mkdir(parents=True, exist_ok=True)
    chromium = shutil.which("chromium") or shutil.which("google-chrome")
    with sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=chromium, args=["--no-sandbox"])
        for size, how in SIZES.items():
            if docs and size != "light":
                continue
            for name, file, act, do in views():
                if docs and name not in DOCS or only and name not in only:
                    continue
                with tempfile.TemporaryDirectory() as made:
                    folder = Path(made) / "statics"
                    folder.mkdir()
                    for example in ("market-awning", "sack-crane", "theatre-hoist"):
                        shutil.copy(ROOT / "examples" / f"{example}.yaml", folder)
                    (folder / "loose.yaml").write_text(LOOSE)
                    (folder / "faulty.yaml").write_text(FAULTY)
                    with served(folder) as address:
                        context = browser.new_context(**how)
                        hand = Hand(context.new_page(), address, folder)
                        if file is None:
                            hand.page.goto(address)
                            hand.settle()
                        elif file == "":
                            hand.empty("trolley")
                        else:
                            hand.open(file, act)
                        do(hand)
                        hand.page.wait_for_timeout(200)
                        if hand.state("kept") != "saved":
                            hand.saved()
                            hand.settle()
                        hand.page.screenshot(path=str(target / (f"{DOCS[name]}.png" if docs else f"{name}-{size}.png")))
                        context.close()
        browser.close()


if __name__ == "__main__":
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    main(sys.argv[1], sys.argv[2:])
