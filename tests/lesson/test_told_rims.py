"""What a lesson says of wheels that touch, and of everything there is."""

from lessons import worked_text
from unpin.lesson.build import build
from unpin.render import terminal

CYLINDERS = """
points: {C: [0, 0], D: [0.24, 0.32]}
discs: {lower: 0.2 at C, upper: 0.2 at D}
contacts: {F: ground pushes lower up, W: ground pushes lower right, K: lower pushes upper, V: ground pushes upper left}
loads: [weight of lower 300 N, weight of upper 200 N]
find: everything
"""
STEP = """
letters: {P: unknown}
points: {C: [0, 0.5], E: [0.3, 0.1]}
discs: {wheel: 0.5 at C}
contacts: {F: ground pushes wheel up, E: ground pushes wheel}
loads: [weight of wheel 500 N, P at C right]
given: [F just lifts]
find: [P, E]
"""
SHED = """
points: {A: [0, 0], B: [2, 0], C: [1, 1]}
members: {one: A C, two: C B}
supports: {A: pin, B: pin}
loads: [weight of one 10 N, weight of two 10 N, 10 N at C down]
find: everything
"""


def said(text):
    return " ".join(terminal.write(build(worked_text(text), drawn=False)).split())


def test_everything_is_told_as_what_there_is_of_it():
    assert "Every reaction and every force between parts that touch" in said(CYLINDERS)
    assert "every pin force" not in said(CYLINDERS)
    assert "Every reaction and every pin force" in said(SHED)


def test_a_wheel_meets_the_edge_of_a_step_and_no_knife_edge():
    text = said(STEP)
    assert "The edge of a step at E; it can only push, from E towards C" in text
    assert "At E it rests against the edge of a step" in text
    assert "knife" not in text
