"""What follows from the sums: every number in a box has been shown, and why."""

from pathlib import Path

import pytest

from lessons import EXAMPLES, lesson, worked_text
from unpin import api
from unpin.lesson.build import build
from unpin.lesson.nodes import Boxed, Working, walk
from unpin.read import read_file
from unpin.render import terminal
from unpin.render.maths import text as signs
from unpin.render.maths.sentence import written
from unpin.route.work import work
from unpin.words.numbers import THIN

PUBLISHED = sorted((Path(__file__).parents[1] / "published" / "problems").glob("*.yaml"))[::3]

GABLE = """
units: ft, kip
points: {A: [0, 0], B: [0, 12], C: [15, 20], D: [30, 12], E: [30, 0]}
members: {lf: A B C, rt: C D E}
supports: {A: pin, E: pin}
loads: [6 kip at B right, 5 kip at C down]
find: [E, C on lf, C on rt]
"""

UPRIGHT = """
units: m, N
points: {A: [0, 0], B: A right 2, C: A right 3}
members: {board: A B C}
supports: {A: pin, C: roller}
loads: [30 N at B down]
find: [A]
"""


def said(text: str, **how) -> str:
    return " ".join(terminal.write(build(worked_text(text), drawn=False, **how)).replace(THIN, " ").split())


def shown(one) -> set[str]:
    """Every `letter = value` of the sums and of what follows from them, and every zero seen by inspection."""
    lines = {signs.write(x.formula) for s in one.sections if s.kind in ("body", "found") for n in walk(s.children) if isinstance(n, Working)
             for x in n.lines}
    seen = " ".join(written(t) for s in one.sections if s.kind == "plan" for n in walk(s.children) for t in getattr(n, "items", ()))
    return {bare(line) for line in lines} | {bare(part) for part in seen.split(": ") if part.endswith("= 0.")}


def bare(line: str) -> str:
    """Without the part a letter is said of, and a zero without its unit."""
    left, _, right = line.rstrip(".").partition(" = ")
    name = left.split(",")[0]
    return f"{name} = 0" if right.split(THIN)[0] == "0" else f"{name} = {right}"


def check(one) -> None:
    known = shown(one)
    for box in (n for s in one.sections for n in s.children if isinstance(n, Boxed)):
        for r in box.results:
            line = bare(signs.write(r.formula))
            assert line in known or line.endswith("= 0"), line


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_number_in_a_box_was_shown_before(name):
    check(lesson(name))


@pytest.mark.parametrize("path", PUBLISHED, ids=lambda p: p.stem)
def test_every_number_in_a_box_of_published_problems_was_shown_before(path):
    found = work(read_file(path).problem)

    if found.recommended is not None:
        check(build(found, drawn=False))


def test_a_reaction_through_a_two_force_member_is_its_force_by_components():
    text = said(GABLE)

    assert ("Now the reaction at E. Member rt brings its force F_CE to the ground at E, along CE. The ground holds it there with the equal and "
            "opposite force (action and reaction). E_x = (3/5)F_CE") in text
    assert "Member rt is a two-force member, so the pin at C acts on it along CE" in text


def test_a_load_on_a_pin_is_counted_where_the_pin_passes_it_on():
    text = said(GABLE)

    assert "The load 5 kip at C acts on the pin itself, which passes it on to member lf, so it is counted here." in text
    assert "C_y = −(4/5)F_CE − 5 kip" in text


def test_a_size_is_not_said_again_when_one_component_is_zero():
    text = said(UPRIGHT)

    assert "A_x = 0" in text and "A_y = 10.00" in text
    assert "│ A = " not in text and "√" not in text


def test_a_force_along_a_slope_has_its_angle_in_every_answer():
    text = said(UPRIGHT.replace("C: roller", "C: roller on slope right 4 down 3").replace("find: [A]\n", ""))

    assert "along its line" not in text
    assert "above the horizontal" in text


def test_the_data_hold_what_follows_too():
    found = api.as_data(worked_text(GABLE))["follows"]

    assert [f["said"].split(".")[0] for f in found] == ["Now the reaction at E", "Now the force at C on member lf", "Now the force at C on member rt"]
    assert all(f["lines"][0]["step"] == "write" and any(x["step"] == "result" for x in f["lines"]) for f in found)


CRANE = """
points: {A: [0, 0], B: [1.5, 0.5], C: [2.4, 0.8], D: [0, 1.6], E: [0, 1.3], K: [2.6, -0.6]}
members: {jib: A B C}
links: [B-D]
discs: {pulley: 0.2 m at C}
blocks: {sack: at K}
cords: {T: E over pulley to sack}
supports: {A: pin, D: pin}
loads: [mass 40 kg hangs at K]
find: [A, B-D]
"""


def test_the_slope_of_a_force_is_reckoned_from_its_components():
    told = [signs.write(line.formula) for s in build(worked_text(CRANE)).sections for n in walk(s.children) if isinstance(n, Working) for line in n.lines]

    # By hand: the tangent of 8.67 degrees is 0.1525, and 108.4 N / 711 N is too.
    assert [x for x in told if "tan" in x] == [f"(108.38{THIN}N)/(710.66{THIN}N) = tan 8.7°"]


@pytest.mark.parametrize("route, other", [("", "ways.fewest"), ("fewest", "ways.recommended")])
def test_other_ways_are_other_than_the_way_of_the_lesson(route, other):
    made = worked_text(CRANE)
    lesson_of = api.explain(made, 0, route, False)
    (ways,) = [s for s in lesson_of.sections if s.kind == "ways"]
    titles = [n.text.code for n in ways.children if hasattr(n, "text")]

    assert other in titles and ("ways.fewest" in titles) + ("ways.recommended" in titles) == 1
