"""No sum says that something is taken once."""

import re
from pathlib import Path

import pytest

from lessons import EXAMPLES, lesson, worked_text
from unpin import api

PUBLISHED = Path(__file__).parents[1] / "published" / "problems"
ONCE = re.compile(r"(?m)(?:^ *|[−+=(] ?)1 ?(?:[A-Z](?:_|\b)(?! to)|\([0-9−])")
"""`1 M`, `1 A_x`, `1(48.0 N·m)` at the start of a line, or after a sign."""

MILL = """
title: A mill driven by a crank
units: m, N
letters: {M: unknown}
points: {A: [0, 0], B: A right 0.2}
members: {crank: A B}
supports: {A: pin}
loads: [M clockwise on crank, 240 N at B up]
find: [M, A]
"""
HELD = f"""{MILL}route:
  - moments about A on crank
  - moments about B on crank
  - forces along x on crank
"""


def said(problem: str) -> str:
    """The lesson with plain spaces."""
    return api.as_text(api.explain(worked_text(problem), drawn=False)).replace("\u202f", " ")


@pytest.mark.parametrize("name", EXAMPLES)
def test_no_line_of_an_example_has_the_coefficient_one(name):
    assert not ONCE.findall(api.as_text(lesson(name)).replace("\u202f", " "))


def test_no_line_of_a_published_problem_has_the_coefficient_one():
    wrong = {p.stem: found for p in sorted(PUBLISHED.glob("*.yaml")) if (found := ONCE.findall(said(p.read_text("utf-8"))))}

    assert list(PUBLISHED.glob("*.yaml")) and not wrong


@pytest.mark.parametrize("turned", [False, True])
def test_a_couple_to_be_found_has_no_factor_however_it_turns(turned):
    problem = MILL.replace("M clockwise", "M counterclockwise").replace("B up", "B down") if turned else MILL
    made = said(problem)

    assert not ONCE.findall(made)
    assert re.search(r"(?m)^ *−?M [−+] \(240 N\)\(0\.2 m\) = 0", made)
    assert "M = 48.0 N·m" in made


def test_a_couple_found_before_is_put_in_without_a_factor():
    made = said(HELD)

    assert not ONCE.findall(made)
    assert "−A_y (0.2 m) − 48.0 N·m = 0" in made
