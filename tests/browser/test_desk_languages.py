"""The page speaks the language of the desk; what is typed stays the grammar of the file."""

import re
import shutil
from pathlib import Path

import pytest
from desks import Hand, served

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.mark.parametrize("language", ["en", "es"])
def test_every_view_is_worded_and_no_key_shows_through(chromium, tmp_path, language):
    shutil.copy(EXAMPLES / "market-awning.yaml", tmp_path / "market-awning.yaml")
    context = chromium.new_context(viewport={"width": 1280, "height": 800})
    with served(tmp_path, language) as address:
        hand = Hand(context.new_page(), address, tmp_path)
        hand.page.goto(address)
        hand.settle()
        said = [hand.page.locator("body").inner_text()]
        for act in ("state", "apart", "solve", "teach", "hand-out"):
            hand.open("market-awning.yaml", act)
            if act == "state":
                hand.keys("Alt+s", "?")
                hand.page.locator('.handle[data-id="point E"]').focus()
                hand.keys("Enter")
            names = hand.page.evaluate("[...document.querySelectorAll('[aria-label], [placeholder], [title]')].flatMap((e) => ['aria-label', 'placeholder', 'title'].map((a) => e.getAttribute(a) ?? ''))")
            said += [hand.page.locator("body").inner_text(), *names]

        groups = "act|head|kept|folder|sheet|sentence|do|script|clash|keys|theme|trace|apart|solve|teach|hand"
        assert not [s for s in said if re.search(rf"\b({groups})\.[a-z][\w-]*\b(?!\.ya?ml)", s)]
        assert hand.page.locator("html").get_attribute("lang") == language
        assert not hand.faults
        context.close()
