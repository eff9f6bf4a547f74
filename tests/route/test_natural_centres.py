"""The recommended way keeps to the figure: no centre outside it where another way costs no more, no pins drawn together as one thing.

The truss is a double Fink (common practice, no source): rafters in four panels a side, posts square to them.
"""

import pytest

from unpin.exact.number import approx
from unpin.read import read_text
from unpin.route.work import work

FINK = """units: m, kN
points:
  A: [0, 0]
  B: A right 16
  T: A right 8 up 4
  E F G: evenly from A to T
  N M L: evenly from B to T
  C: where line from F along square to A T, down meets line A B
  D: C mirrored in line from T along down
  H: midpoint of A C
  J: midpoint of C T
  K I: H J mirrored in line from T along down
links: [A-E-F-G-T-L-M-N-B, A-H-C-D-K-B, C-J-T, D-I-T, E-H, H-F, F-C, F-J, G-J, N-K, K-M, M-D, M-I, L-I]
supports: {{A: pin, B: roller}}
loads: ["10 kN down at E, F, G, T, L, M, N"]
find: [{}]
"""


@pytest.mark.parametrize("asked", ["F-G, H-C, C-J", "F-G, A-H, H-C", "H-C, E-H, F-C"])
def test_a_centre_outside_the_figure_is_not_taken_where_joints_and_sections_do(asked):
    worked = work(read_text(FINK.format(asked)).problem, others=0)
    sums = [e for step in worked.recommended.steps for e in step.equations]

    assert all(e.functional.point for e in sums if e.functional.kind == "about")


def test_two_knots_are_taken_one_after_the_other():
    text = ("points: {P: [0, 0], Q: P right 1 up 1, A: P left 2, B: Q right 1.5, C: 2 from Q at 30 deg left of up}\nlinks: [P-A, P-Q, Q-B, Q-C]\n"
            "supports: {A: pin, B: pin, C: pin}\nloads: [100 N at P down]\nfind: [P-A, P-Q, Q-B, Q-C]")
    worked = work(read_text(text).problem)

    assert [e.body.name for step in worked.recommended.steps for e in step.equations][0] == "pin P"
    # By hand: PQ carries 100 √2 along 45°, so QC has the upright part 100, and QB the level rest.
    values = {c.symbol.sub: approx(c.value) for a in worked.answers for c in a.components}
    assert values["QC"] == pytest.approx(100 / 0.75**0.5)
    assert values["QB"] == pytest.approx(100 + 100 / 3**0.5)


def test_a_truss_that_stands_on_the_ground_still_begins_with_the_whole():
    text = ("points: {A: [0, 0], B: A right 4, C: A right 1 up 3}\nlinks: [A-C-B, A-B]\nsupports: {A: pin, B: roller}\n"
            "loads: [80 N at C down]\nfind: [A, B]")

    assert work(read_text(text).problem).recommended.steps[0].equations[0].body.kind == "whole"
