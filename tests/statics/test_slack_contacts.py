"""Two walls that could only squeeze: the loads press one of them, and the other is said to be open."""

import pytest

from unpin.exact.number import approx
from unpin.lesson.build import build
from unpin.read import read_text
from unpin.render.terminal import write
from unpin.route.work import work

CRATE = """
points: {A: [0, 0], B: [1, 0], C: [1, 1], D: [0, 1]}
blocks: {crate: A B C D}
supports: {A: smooth floor pushes up, B: smooth floor pushes up, C: smooth wall pushes left, D: smooth wall pushes right}
loads: [weight of crate 90 N, 20 N at C LOAD]
find: [A, B, C, D]
"""


@pytest.mark.parametrize("load, open_at, sizes", [
    # By hand: the wall takes the 20 N at the height at which it acts, the floor the weight, half at each corner.
    ("right", "D", {"Ay": 45, "By": 45, "Cx": -20}),
    ("left", "C", {"Ay": 45, "By": 45, "Dx": 20}),
])
def test_of_two_walls_at_one_height_the_one_that_would_have_to_pull_opens(load, open_at, sizes):
    worked = work(read_text(CRATE.replace("LOAD", load)).problem)

    assert [(o.connection.points, float(o.needed)) for o in worked.opened] == [((open_at,), -20)]
    assert worked.proof.passed
    found = {c.symbol.base + c.symbol.sub: abs(approx(c.value)) for a in worked.answers for c in a.components if a.found}
    assert {k: v for k, v in found.items() if v} == {k: abs(v) for k, v in sizes.items()}


def test_a_plank_on_three_edges_stays_not_fixed():
    worked = work(read_text("points: {A: [0, 0], B: [1, 0], C: [2, 0], P: [0.5, 0]}\nmembers: {plank: A P B C}\n"
                            "supports: {A: knife edge pushes up, B: knife edge pushes up, C: knife edge pushes up}\n"
                            "loads: [30 N at P down]\nfind: [A, B]").problem)

    assert not worked.opened
    assert worked.recommended is None


def test_a_crate_that_nothing_pushes_sideways_is_not_said_to_open_anywhere():
    """Either wall may be away, and no force shows which: only a squeeze could."""
    worked = work(read_text(CRATE.replace(", 20 N at C LOAD", "")).problem)

    assert not worked.opened


def test_the_lesson_says_that_nothing_squeezes_and_which_wall_is_left_alone():
    said = " ".join(write(build(work(read_text(CRATE.replace("LOAD", "right")).problem))).split()).replace("\u202f", " ").replace("\u00a0", " ")

    assert "Nothing is said to squeeze it" in said
    assert "the contact at D, closed alone, would have to pull with 20.0 N" in said
