"""What the rules for a pin show to be zero without a sum, beside the sums that show it too."""

import pytest

from unpin.exact.number import approx
from unpin.lesson.build import build
from unpin.read import read_text
from unpin.render import terminal
from unpin.route.work import work
from unpin.statics.inspect import inspect

BRACKET = """
title: Sign bracket
units: m, kN
points: {A: [0, 0], B: [0, 3], C: [4, 0]}
links: [A-B, A-C, B-C]
supports: {A: pin, B: roller pushes right}
loads: ["%s"]
find: [A-C, B-C]
"""


def seen(text: str) -> list[tuple[str, str, tuple[str, ...]]]:
    """Rule, pin and the sources of the zero forces."""
    structure = inspect(read_text(text).problem)
    return [(i.rule, i.subject, tuple(structure.unknown(u).source for u in i.finds)) for i in structure.zero]


@pytest.mark.parametrize("load, idle", [
    ("6 kN at C left", "B-C"),  # method of joints at C: forces square to AC, F_BC 3/5 = 0
    ("6 kN at C towards B", "A-C"),  # forces square to BC: F_AC 3/5 = 0
])
def test_a_load_along_one_of_two_bars_leaves_the_other_without_force(load, idle):
    text = BRACKET % load

    assert ("zero_along", "C") in [(rule, pin) for rule, pin, _ in seen(text)]
    worked = work(read_text(text).problem)
    values = [approx(a.components[0].value) for a in worked.answers]
    assert values[["A-C", "B-C"].index(idle)] == 0
    assert all(v != 0 for k, v in enumerate(values) if k != ["A-C", "B-C"].index(idle))
    assert worked.proof.passed


def test_a_load_along_neither_bar_shows_nothing():
    assert seen(BRACKET % "6 kN at C down") == []


def test_two_loads_in_line_show_as_much_as_one_and_two_across_show_nothing():
    one = (BRACKET % "6 kN at C left").replace('kN at C left"', 'kN at C left", "2 kN at C right"')
    two = (BRACKET % "6 kN at C left").replace('kN at C left"', 'kN at C left", "2 kN at C up"')

    assert [rule for rule, pin, _ in seen(one) if pin == "C"] == ["zero_along"]
    assert [rule for rule, pin, _ in seen(two) if pin == "C"] == []


def test_a_load_along_two_bars_in_line_leaves_the_third_without_force():
    text = """
title: Lantern rail
units: m, N
points: {A: [0, 0], B: [2, 0], C: [4, 0], D: [2, 2]}
links: [A-B, B-C, A-D, D-C, B-D]
supports: {A: pin, C: roller}
loads: [40 N at B right, 30 N at D down]
find: [B-D]
"""
    assert [rule for rule, pin, _ in seen(text) if pin == "B"] == ["zero_along"]
    assert approx(work(read_text(text).problem).answers[0].components[0].value) == 0


def test_the_reason_is_told_in_both_languages():
    worked = work(read_text(BRACKET % "6 kN at C left").problem)
    for language, told in (("en", "are along one line, so that one is zero"), ("es", "una misma recta, así que esa es nula")):
        assert told in " ".join(terminal.write(build(worked, language=language, drawn=False)).split())
