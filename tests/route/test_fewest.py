"""The search for the fewest sums against an exhaustive one that knows neither candidates, residues nor landmarks.

A sum on a free body can find u, with K known, exactly when the wrench of u is no combination of the wrenches of the other
unknowns that are not in K: a rank, taken in flint's rationals. Breadth first over what is known gives the fewest sums.
"""

from __future__ import annotations

from dataclasses import replace
from heapq import heappop, heappush
from itertools import combinations

import flint
from hypothesis import given
from hypothesis import strategies as st

from strategies import SOUND, drawn
from structures import FRAMES
from tally import count
from unpin.exact.number import rung
from unpin.model.problem import Asked
from unpin.route.candidates import survey
from unpin.route.cost import DEFAULT
from unpin.route.order import cheapest
from unpin.route.search import fewest
from unpin.route.work import work
from unpin.statics import inspect, solve

MOST = 10
GOALS = 4


def wrenches_of(structure):
    """For each connected set of bodies: unknown to wrench, by plain addition; None where a number is irrational."""
    single: dict[str, dict[str, list]] = {b.name: {} for b in structure.bodies}
    for a in structure.actions:
        if a.unknown and a.on in single:
            d = (0, 0) if a.kind == "couple" else a.direction.vector
            w = (d[0], d[1], a.turn if a.kind == "couple" else a.at[0] * d[1] - a.at[1] * d[0])
            w = tuple(c * a.share for c in w)
            if any(rung(c) > 1 for c in w):
                return None
            old = single[a.on].get(a.unknown, (0, 0, 0))
            single[a.on][a.unknown] = tuple(x + y for x, y in zip(old, w))
    out = []
    names = [b.name for b in structure.bodies]
    for size in range(1, len(names) + 1):
        for chosen in combinations(names, size):
            if not _connected(chosen, single):
                continue
            total: dict[str, tuple] = {}
            for name in chosen:
                for u, w in single[name].items():
                    total[u] = tuple(x + y for x, y in zip(total.get(u, (0, 0, 0)), w))
            flat = size == 1 and chosen[0].startswith("pin ")
            out.append({u: w[:2] if flat else w for u, w in total.items() if any(w)})
    return out


def _connected(chosen, single) -> bool:
    reached, open_ = {chosen[0]}, [chosen[0]]
    while open_:
        here = open_.pop()
        for other in set(chosen) - reached:
            if single[here].keys() & single[other].keys():
                reached.add(other)
                open_.append(other)
    return len(reached) == len(chosen)


def rank(rows) -> int:
    rows = [[flint.fmpq(int(c.numerator), int(c.denominator)) for c in row] for row in rows]
    return flint.fmpq_mat(rows).rank() if rows else 0


def singles(bodies, known) -> set[str]:
    """What one sum can find."""
    found = set()
    for body in bodies:
        open_ = [u for u in body if u not in known]
        for u in open_:
            if u not in found:
                others = [body[v] for v in open_ if v != u]
                if rank([*others, body[u]]) > rank(others):
                    found.add(u)
    return found


def seen_in(body, wanted, known) -> list:
    """Rows over `wanted` of all sums on a body that hold nothing else unknown: the part of the annihilator of the rest."""
    rest = [body[u] for u in body if u not in known and u not in wanted]
    size = len(next(iter(body.values())))
    if not any(u in body for u in wanted):
        return []
    numbers = [flint.fmpq(int(c.numerator), int(c.denominator)) for w in rest for c in w] or [flint.fmpq(0)] * size
    null, dimension = _null(flint.fmpq_mat(max(len(rest), 1), size, numbers))
    rows = []
    for k in range(dimension):
        f = [null[i][k] for i in range(size)]
        rows.append([sum((x * flint.fmpq(int(c.numerator), int(c.denominator)) for x, c in zip(f, body[u])), flint.fmpq(0))
                     if u in body else flint.fmpq(0) for u in wanted])
    return rows


def _null(m):
    reduced, r = m.rref()
    pivots = [next(j for j in range(m.ncols()) if reduced[i, j] != 0) for i in range(r)]
    free = [j for j in range(m.ncols()) if j not in pivots]
    columns = [[flint.fmpq(0)] * len(free) for _ in range(m.ncols())]
    for k, j in enumerate(free):
        columns[j][k] = flint.fmpq(1)
        for i, p in enumerate(pivots):
            columns[p][k] = -reduced[i, j]
    return columns, len(free)


def pairs(bodies, unknowns, known) -> set[frozenset]:
    """What two sums solved together can find, neither alone."""
    out = set()
    for pair in combinations([u for u in unknowns if u not in known], 2):
        rows = [r for body in bodies if body for r in seen_in(body, pair, known)]
        if rows and flint.fmpq_mat(rows).rank() == 2:
            out.add(frozenset(pair))
    return out


def least(bodies, unknowns, goal, known) -> int | None:
    """The fewest sums, single or two together, by search over everything that can be known; None when those do not suffice."""
    start = frozenset(known)
    best, heap, ticket = {start: 0}, [(0, 0, start)], 0
    while heap:
        spent, _, have = heappop(heap)
        if goal <= have:
            return spent
        for found in [frozenset([u]) for u in singles(bodies, have)] + sorted(pairs(bodies, unknowns, have), key=sorted):
            after = have | found
            if spent + len(found) < best.get(after, 99):
                best[after] = spent + len(found)
                ticket += 1
                heappush(heap, (best[after], ticket, after))
    return None


@given(drawn(SOUND, 2, ("rational",), FRAMES), st.data())
def test_the_fewest_sums_are_those_an_exhaustive_search_finds(problem, data):
    structure = inspect(problem)
    fixed = solve(structure)
    bodies = wrenches_of(structure)
    if not fixed or bodies is None or len(structure.unknowns) > MOST or len(structure.bodies) > 5:
        return
    bodies = [b for b in bodies if b]
    known = {u for i in structure.zero for u in i.finds}
    ground = survey(structure, DEFAULT)
    unknowns = [u.id for u in structure.unknowns]
    for _ in range(3):
        goal = set(data.draw(st.lists(st.sampled_from(sorted(fixed)), min_size=1, max_size=GOALS)))
        mine = fewest(ground, ground.mask_of(goal), ground.mask_of(known))
        expected = least(bodies, unknowns, frozenset(goal), known)
        if mine.block == 0:
            count("fewest", "larger blocks")
            assert expected is None
            continue
        count("fewest", f"{mine.upper} sums")
        assert (mine.lower, mine.upper) == (expected, expected)


def brute(ground, goal, known, costs) -> int:
    """The least cost of all sequences of single sums and pairs, tried without any bound."""
    heap, ticket = [(0, 0, known, 0)], 0
    best = {(known, 0): 0}
    while heap:
        spent, _, have, drawn_ = heappop(heap)
        if goal & ~have == 0:
            return spent
        if spent > best[have, drawn_]:
            continue
        open_ = [s for s in ground.sums if s.mask & ~have]
        moves = [(s,) for s in open_ if (s.mask & ~have).bit_count() == 1]
        moves += [(s, t) for s, t in combinations([s for s in open_ if (s.mask & ~have).bit_count() == 2], 2)
                  if s.mask & ~have == t.mask & ~have and s.body != t.body and _independent(s, t, s.mask & ~have, ground.prime)]
        for move in moves:
            after = have
            for s in move:
                after |= s.mask
            bodies = drawn_
            price = costs.block * (len(move) - 1)
            for s in move:
                price += s.cost + ground.body_costs[s.body] + (0 if bodies >> s.body & 1 else costs.new_body)
                bodies |= 1 << s.body
            state = (after, bodies)
            if spent + price < best.get(state, 10**9):
                best[state] = spent + price
                ticket += 1
                heappush(heap, (spent + price, ticket, after, bodies))
    raise AssertionError("no way")


def _independent(s, t, pair, prime) -> bool:
    low, high = (pair & -pair).bit_length() - 1, pair.bit_length() - 1
    a, b = dict(s.coefficients), dict(t.coefficients)
    return (a[low] * b[high] - a[high] * b[low]) % prime != 0


@given(drawn(SOUND, 2, ("rational", "angle"), FRAMES), st.data())
def test_no_order_of_sums_is_cheaper_than_the_recommended_one(problem, data):
    structure = inspect(problem)
    fixed = solve(structure)
    if not fixed or len(structure.unknowns) > MOST or len(structure.bodies) > 3:
        return
    known = {u for i in structure.zero for u in i.finds}
    ground = survey(structure, DEFAULT)
    start = ground.mask_of(known)
    goal = ground.mask_of(data.draw(st.lists(st.sampled_from(sorted(fixed)), min_size=1, max_size=2)))
    few = fewest(ground, goal, start)
    if few.block == 0:
        return
    moves = cheapest(ground, goal, start, few, DEFAULT)
    count("orders", f"{len(moves)} moves")
    assert sum(m.cost for m in moves) <= brute(ground, goal, start, DEFAULT)


@given(drawn(SOUND, 2))
def test_asking_for_one_thing_never_takes_more_sums_than_asking_for_everything(problem):
    whole = work(replace(problem, asked=(Asked("everything"),)))
    if whole.fewest is None:
        return
    for asked in problem.asked[1:3]:
        one = work(replace(problem, asked=(asked,)))
        assert one.fewest.count <= whole.fewest.count
