"""Figures with discs, cords and blocks told in words: enough for a reader to draw them again."""

from lessons import worked_text
from unpin.lesson.build import build
from unpin.lesson.nodes import Drawing
from unpin.render.picture import description

CRANE = """
units: m, N
points: {A: [0, 0], C: A right 2, G: C left 1 down 3, E: C right 0.2 down 1}
members: {arm: A C}
discs: {pulley: 0.2 m at C}
blocks: {sack: at E}
cords: {T: sack over pulley to G}
supports: {A: fixed}
loads: [weight of sack 500 N]
find: [A, T]
"""
KNOT = """
units: m, N
points: {A: [0, 2], B: [3, 2], K: [1, 1], L: K down 1}
blocks: {lamp: at L}
cords: {T: A to K, S: B to K, R: K to lamp}
loads: [weight of lamp 90 N]
find: [T, S]
"""


def told(text: str) -> dict[str, str]:
    """What is said of the figures of a lesson, by which figure it is and whose."""
    found = {}

    def walk(node):
        if isinstance(node, Drawing):
            found[f"{node.which} {node.subject}".strip()] = description(node)
        elif isinstance(node, tuple):
            for n in node:
                walk(n)
        elif hasattr(node, "__dataclass_fields__"):
            for name in node.__dataclass_fields__:
                walk(getattr(node, name))

    walk(build(worked_text(text)))
    return found


def test_the_problem_tells_its_discs_blocks_and_cords():
    problem = told(CRANE)["problem"]

    assert "Disc pulley of radius 0.2 metres has its centre at C." in problem
    assert "Block sack, whose size does not matter, is at E." in problem
    assert "There is a light cord with the tension T, from block sack at E over pulley to the ground at G." in problem


def test_a_strand_that_is_cut_is_told_by_its_tangent_point_and_its_slope():
    apart = told(CRANE)["apart"]

    # By hand from G to the disc: arctan 3 + arcsin(0.2/√10) = 75.2°, after √9.96 at (1.8066, 0.0511).
    assert "Force T acts at (1.8066 metres, 0.051119 metres), drawn 75.2 degrees below the horizontal, to the left." in apart
    assert "from C towards G" not in apart


def test_a_strand_that_is_not_cut_is_told_in_the_body_it_stays_in():
    whole = told(CRANE)["body whole"]

    assert "From (2.2 metres, minus 1 metre) to (2.2 metres, 0 metres) the cord with the tension T is not cut." in whole


def test_a_knot_is_told_as_one_and_the_result_tells_the_tensions():
    figures = told(KNOT)

    assert "Cords are tied together at K." in figures["problem"]
    assert "Block K" not in figures["problem"]
    assert "The tension R is 90.0 newtons." in figures["final"]
