"""Pictures of the teaching view, every idea of a problem: `python tools/screens_teach.py FILE FOLDER [WIDTHxHEIGHT] [--dark] [--ask] [--fade N]`."""

from __future__ import annotations

import argparse
import shutil
from pathlib import Path


def main() -> None:
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("file")
    asked.add_argument("folder", type=Path)
    asked.add_argument("size", nargs="?", default="1280x720")
    asked.add_argument("--dark", action="store_true")
    asked.add_argument("--ask", action="store_true", help="the questions too")
    asked.add_argument("--fade", type=int, default=0)
    asked.add_argument("--every", type=int, default=1, help="only each so manieth idea")
    take(asked.parse_args())


def take(asked: argparse.Namespace) -> None:
    """One PNG an idea, named by its number."""
    from playwright.sync_api import sync_playwright

    import unpin

    text = unpin.as_page(unpin.explain(unpin.solve(unpin.load(asked.file)), fade=asked.fade))
    asked.folder.mkdir(parents=True, exist_ok=True)
    page_file = (asked.folder / "page.html").resolve()
    page_file.write_text(text, "utf-8")
    width, height = map(int, asked.size.split("x"))
    with sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=shutil.which("chromium") or shutil.which("google-chrome"), args=["--no-sandbox"])
        page = browser.new_page(viewport={"width": width, "height": height}, color_scheme="dark" if asked.dark else "light", reduced_motion="reduce")
        page.goto(f"{page_file.as_uri()}#teach")
        page.wait_for_selector("#teach:not([hidden])")
        if not asked.ask:
            page.keyboard.press("q")
        seen, k = "", 0
        while seen != (seen := page.evaluate("location.hash")):
            if k % asked.every == 0:
                page.screenshot(path=asked.folder / f"{k:03}{seen[6:]}.png")
            page.keyboard.press("ArrowRight")
            k += 1
        browser.close()


if __name__ == "__main__":
    main()
