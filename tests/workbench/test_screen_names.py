"""What `tools/screens.py` presses is there on the page, so that its pictures can always be taken."""

import re
from pathlib import Path

from unpin.words.sentences import catalogue

ROOT = Path(__file__).parents[2]
SCREENS = (ROOT / "tools" / "screens.py").read_text("utf-8")
PAGE = "\n".join(p.read_text("utf-8") for p in sorted((ROOT / "src/unpin/workbench/web").rglob("*.js")) if "lib" not in p.parts)


def found(pattern: str) -> set[str]:
    return {m for m in re.findall(pattern, SCREENS)}


def test_every_label_that_is_pressed_for_a_picture_is_a_word_of_the_page():
    said = set(catalogue("desk", "en").values())
    pressed = found(r'name="([^"]+)"') | found(r'get_by_label\("([^"]+)"')

    assert len(pressed) >= 3
    assert pressed <= said


def test_every_choice_and_every_place_that_a_picture_waits_for_is_made_by_the_page():
    classes = {c for s in found(r'locator\("([^"]+)"\)') for c in re.findall(r"\.([a-z]+)", s)}
    choices = found(r'select_option\("([^"]+)"')

    assert {"done", "page"} <= classes and choices
    assert not {c for c in classes if not re.search(rf'["\s]{c}["\s]', PAGE)}
    assert not {c for c in choices if f'"{c}"' not in PAGE}
