"""Another smallest set with a cheaper way: never a larger one, never a dearer way, the same each time."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

import unpin.route.exchange as exchange
from structures import FRAMES, structure
from unpin.route.candidates import survey
from unpin.route.cost import DEFAULT
from unpin.route.order import cheapest, well_chosen
from unpin.route.search import Closure, fewest
from unpin.statics import inspect, solve


def total(moves) -> int:
    return sum(m.cost for m in moves)


def searches(seed: int, steps: int):
    """Some goals of a random frame, with the smallest set that was found first."""
    made = inspect(structure(seed, steps, 3, holds=FRAMES))
    ground = survey(made, DEFAULT)
    known = ground.mask_of([u for insight in made.zero for u in insight.finds])
    for id in list(solve(made) or {})[:4]:
        goal = ground.mask_of([id])
        least = fewest(ground, goal, known)
        if least is not None and goal & ~known:
            yield ground, goal, known, least


@settings(max_examples=25)
@given(st.integers(min_value=0, max_value=10**6), st.integers(min_value=2, max_value=5))
def test_the_set_exchanged_is_as_small_still_derives_the_goal_and_its_way_costs_no_more(seed, steps):
    for ground, goal, known, least in searches(seed, steps):
        chosen = well_chosen(ground, goal, known, least, DEFAULT)
        assert (chosen.lower, chosen.upper, chosen.found.bit_count()) == (least.lower, least.upper, least.found.bit_count())
        assert goal & ~known & ~Closure(ground, known, least.block).of(chosen.found) == 0
        assert chosen == well_chosen(ground, goal, known, least, DEFAULT)
        before = cheapest(ground, goal, known, least, DEFAULT, wide=False)
        after = cheapest(ground, goal, known, chosen, DEFAULT, wide=False)
        assert before is None or total(after) <= total(before)


def test_without_work_allowed_the_first_set_stands(monkeypatch):
    monkeypatch.setattr(exchange, "WORK", -1)
    for ground, goal, known, least in searches(7, 4):
        assert well_chosen(ground, goal, known, least, DEFAULT) == least
