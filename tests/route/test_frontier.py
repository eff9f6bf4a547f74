"""What can be done next, kept up to date, against looking at every sum anew; and plans that work, not time, decides."""

from __future__ import annotations

import time
from pathlib import Path
from random import Random

from hypothesis import given, settings
from hypothesis import strategies as st

import unpin.route.order as order
from unpin.read import read_file
from unpin.route.body_sums import Sum
from unpin.route.candidates import Ground, survey
from unpin.route.cost import DEFAULT
from unpin.route.frontier import Sums
from unpin.route.order import cheapest
from unpin.route.search import fewest
from unpin.statics import inspect
from unpin.statics.goals import goals

FOLDER = Path(__file__).parents[2] / "examples"
EXAMPLES = ("foot-bridge", "market-awning", "picnic-table", "theatre-hoist")
PRIME = 10_007
BODIES, UNKNOWNS = 4, 7


def ground_of(seed: int) -> Ground:
    """Sums that stand for nothing, with any prices: masks, coefficients and costs are all the search sees."""
    chance = Random(seed)
    sums = {}
    for _ in range(chance.randint(1, 30)):
        body = chance.randrange(BODIES)
        mask = sum(1 << k for k in range(UNKNOWNS) if chance.random() < 0.35)
        if mask:
            bits = [k for k in range(UNKNOWNS) if mask >> k & 1]
            coefficients = tuple((k, chance.randint(1, 3)) for k in bits)
            sums[body, mask] = Sum(body, mask, chance.randint(80, 400), ("x",), (1, 0, 0), coefficients)
    ordered = tuple(sums[key] for key in sorted(sums))
    return Ground(None, (None,) * BODIES, tuple(chance.randint(0, 90) for _ in range(BODIES)), ordered,
                  tuple(f"u{k}" for k in range(UNKNOWNS)), "all", PRIME)


def usable(ground: Ground, got: int) -> dict[tuple[int, int], int]:
    """By its definition: the price of the cheapest sum on each body that holds just one unknown more, without the drawing."""
    out: dict[tuple[int, int], int] = {}
    for s in ground.sums:
        left = s.mask & ~got
        if left.bit_count() == 1:
            key, price = (left, 1 << s.body), s.cost + ground.body_costs[s.body]
            out[key] = min(price, out.get(key, price))
    return out


def halves(ground: Ground, got: int) -> dict[int, set[int]]:
    """By its definition: the sums that hold two unknowns more, by these two."""
    out: dict[int, set[int]] = {}
    for k, s in enumerate(ground.sums):
        left = s.mask & ~got
        if left.bit_count() == 2:
            out.setdefault(left, set()).add(k)
    return out


def walk_of(seed: int):
    """A ground, its sums, and frontiers on a way on which unknowns become known, one or two at a time."""
    chance = Random(f"walk {seed}")
    ground = ground_of(seed)
    known = sum(1 << k for k in range(UNKNOWNS) if chance.random() < 0.2)
    sums = Sums(ground, ground.sums, known, DEFAULT)
    frontier, got = sums.start(), known
    yield ground, sums, frontier, got
    left = [k for k in range(UNKNOWNS) if not got >> k & 1]
    chance.shuffle(left)
    while left:
        found = sum(1 << left.pop() for _ in range(min(len(left), chance.randint(1, 2))))
        frontier = sums.after(frontier, got, found)
        got |= found
        yield ground, sums, frontier, got


@settings(max_examples=60)
@given(st.integers(min_value=0, max_value=10**6))
def test_a_frontier_kept_up_to_date_is_the_one_looked_for_anew(seed):
    for ground, sums, frontier, got in walk_of(seed):
        assert {key: sums.price[best] for key, (_, best) in frontier.single.items()} == usable(ground, got)
        assert {left: set(pair.members) for left, pair in frontier.pairs.items()} == halves(ground, got)
        for pair in frontier.pairs.values():
            assert pair.first == min(pair.members)


@settings(max_examples=60)
@given(st.integers(min_value=0, max_value=10**6), st.integers(min_value=0, max_value=(1 << BODIES) - 1))
def test_the_least_offer_is_the_cheapest_of_all_that_are_offered(seed, drawn):
    for _, sums, frontier, _ in walk_of(seed):
        least = sums.least(frontier, drawn)
        offered = list(sums.offers(frontier, drawn))
        if least is None:
            assert not offered
        else:
            assert least[0] == min(o[0] for o in offered)
            assert least in offered


@settings(max_examples=60)
@given(st.integers(min_value=0, max_value=10**6), st.integers(min_value=0, max_value=(1 << BODIES) - 1))
def test_an_offer_finds_what_its_sums_fix_and_costs_what_they_cost(seed, drawn):
    for ground, sums, frontier, got in walk_of(seed):
        for cost, found, bodies, used in sums.offers(frontier, drawn):
            held = 0
            for s in used:
                held |= s.mask & ~got
            assert held == found and found.bit_count() == len(used)
            assert bodies == sum(1 << b for b in {s.body for s in used})
            new = sum(DEFAULT.new_body for b in {s.body for s in used} if not drawn >> b & 1)
            plain = sum(s.cost + ground.body_costs[s.body] for s in used)
            assert cost == plain + new + DEFAULT.block * (len(used) - 1)
            if len(used) == 2:
                low, high = (k for k in range(UNKNOWNS) if found >> k & 1)
                a, b = (dict(s.coefficients) for s in used)
                assert (a[low] * b[high] - a[high] * b[low]) % PRIME


@settings(max_examples=60)
@given(st.integers(min_value=0, max_value=10**6))
def test_a_limit_keeps_back_only_blocks_that_cost_more(seed):
    for _, sums, frontier, _ in walk_of(seed):
        every = list(sums.offers(frontier, 0))
        for limit in (0, 300, 600, 900):
            kept = list(sums.offers(frontier, 0, limit))
            assert [o for o in every if o in kept] == kept
            assert all(o[0] > limit and len(o[3]) == 2 for o in every if o not in kept)


@given(st.integers(min_value=0, max_value=10**6))
def test_the_cheapest_price_of_an_unknown_is_that_of_a_sum_which_holds_it(seed):
    ground = ground_of(seed)
    sums = Sums(ground, ground.sums, 0b11, DEFAULT)
    expected = {}
    for s in ground.sums:
        for k in range(2, UNKNOWNS):
            if s.mask >> k & 1:
                price = s.cost + ground.body_costs[s.body]
                expected[1 << k] = min(price, expected.get(1 << k, price))
    assert sums.cheapest_price() == expected


def searches():
    """The ground and the goal of some examples."""
    for name in EXAMPLES:
        problem = read_file(FOLDER / f"{name}.yaml").problem
        structure = inspect(problem)
        ground = survey(structure, DEFAULT)
        yield ground, ground.mask_of([u for asked in problem.asked for u in goals(structure, asked)])


def test_one_problem_has_one_plan_however_short_the_search(monkeypatch):
    for ground, goal in searches():
        for opened in (3, 600):
            monkeypatch.setattr(order, "EXPANSIONS", opened)
            plans = []
            for _ in range(2):
                least = fewest(ground, goal, 0)
                plans.append((least, cheapest(ground, goal, 0, least, DEFAULT)))
            assert plans[0] == plans[1]


def test_a_plan_does_not_look_at_a_clock(monkeypatch):
    def forbidden(*_):
        raise AssertionError("a plan asked for the time")

    for name in ("time", "perf_counter", "monotonic", "process_time"):
        monkeypatch.setattr(time, name, forbidden)
    for ground, goal in searches():
        assert cheapest(ground, goal, 0, fewest(ground, goal, 0), DEFAULT)


def test_a_search_cut_short_still_reaches_the_goal(monkeypatch):
    monkeypatch.setattr(order, "EXPANSIONS", 1)
    for ground, goal in searches():
        got = 0
        for move in cheapest(ground, goal, 0, fewest(ground, goal, 0), DEFAULT):
            for s in move.sums:
                assert s.mask & ~got & ~move.finds == 0
            got |= move.finds
        assert goal & ~got == 0
