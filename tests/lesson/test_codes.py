"""Every code that the lower rooms give has its sentence in the lesson."""

import re
from pathlib import Path

import pytest

import unpin
from unpin.model.kinds import KINDS
from unpin.words.sentences import catalogue

PACKAGE = Path(unpin.__file__).parent
WORDS = catalogue("lesson")


def codes(room: str, pattern: str) -> set[str]:
    return {m for p in (PACKAGE / room).rglob("*.py") for m in re.findall(pattern, p.read_text("utf-8"))}


@pytest.mark.parametrize(("room", "pattern", "table"), [
    ("statics", r'Cause\("(\w+)"', "cause"),
    ("statics", r'Insight\("(\w+)"', "insight"),
    ("read", r'assume\("(\w+)"', "assumed"),
    ("route", r'Followed\(w, "(\w+)"', "ways.own"),
])
def test_a_code_of_a_lower_room_has_a_sentence(room, pattern, table):
    found = codes(room, pattern)

    assert found
    join = "_" if table.endswith("own") else "."
    assert not [c for c in found if f"{table}{join}{c}" not in WORDS and f"{table}{join}{c}.other" not in WORDS]


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_a_connection_kind_is_told_where_it_is_given_and_where_it_is_cut(kind):
    cut = {"pin": "pin_support", "link": "link"}.get(kind, kind)

    assert f"given.{kind}" in WORDS
    assert f"cut.{cut}" in WORDS
