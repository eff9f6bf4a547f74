"""Steps of free order: a body is finished before the next, and every step can be done where it stands."""

import pytest

from lessons import EXAMPLES, worked, worked_text
from unpin.lesson import ways
from unpin.route.frontier import Move
from unpin.route.gather import gathered

TRESTLE = """
units: m, N
points: {A: [0, 0], B: [6, 0], C: [3, 4], F: midpoint of A C, G: midpoint of B C, H: C down 1.5, K: H right 1}
members: {legA: A F C, legB: B G C, hook: C H K}
links: [F-G, H-F]
supports: {A: pin, B: roller}
loads: [600 N at C down, 300 N at K down]
find: [A, B, F-G, F-H, C on legA, C on legB, C on hook]
"""


class Sum:
    """A sum on a body with the unknowns (bits) that it holds."""

    def __init__(self, body, mask):
        self.body, self.mask = body, mask


def move(body, mask, finds):
    return Move((Sum(body, mask),), finds, 0)


def test_a_body_is_finished_before_the_next_where_nothing_hinders():
    one, other, again = move(0, 0b001, 0b001), move(1, 0b010, 0b010), move(0, 0b101, 0b100)

    assert gathered([one, other, again], 0) == [one, again, other]


def test_a_body_that_must_wait_for_another_begins_after_it():
    first, other, waits = move(0, 0b001, 0b001), move(1, 0b010, 0b010), move(0, 0b110, 0b100)

    assert gathered([first, other, waits], 0) == [other, first, waits]


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_step_needs_only_what_was_found_before_it(name):
    w = worked(name)
    for route in (w.recommended, w.fewest):
        known = {u for insight in w.structure.zero for u in insight.finds}
        for step in route.steps:
            assert {u for e in step.equations for u in e.unknowns} - set(step.finds) <= known
            known |= set(step.finds)


def test_no_body_comes_twice_in_a_frame_that_can_be_taken_apart_in_order():
    bodies = [b.parts for group, _ in ways.by_body(worked_text(TRESTLE).recommended) for b in group]

    assert len(bodies) == len(set(bodies))
