"""Every kind has a how-to page, and each page shows what it is about."""

import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT / "tools"))

import howto  # noqa: E402

from unpin.model.kinds import KINDS  # noqa: E402
from unpin.read.forms import FORMS  # noqa: E402

NO_PAGE = {"amount", "point", "direction", "asked", "sum", "letter"}
"""Kinds of phrase that are no thing in the figure."""


def test_every_kind_of_connection_has_a_page():
    assert {e["kind"] for e in howto.DATA.values() if "kind" in e} == set(KINDS)


def test_every_kind_of_phrase_that_is_a_thing_in_the_figure_has_a_page():
    shown = {f.kind for e in howto.DATA.values() for f in howto.chosen(e["phrases"])}

    assert {f.kind for f in FORMS} - NO_PAGE == shown


@pytest.mark.parametrize("name", howto.DATA)
def test_a_page_holds_forms_figures_what_the_lesson_says_and_the_answer(name):
    entry = howto.DATA[name]
    drawn = howto._Worked(entry)

    assert all(howto.chosen([w]) for w in entry["phrases"])
    assert drawn.said() and drawn.answers() and len(drawn.answers()) >= len(drawn.worked.problem.asked)
    assert drawn.worked.proof.passed
    assert all(entry[k] for k in ("title", "lead", "mistake", "basis"))
