"""The cheapest order of sums that reaches the goal: a best-first search over what is known and which bodies are drawn.

The landmarks of the search for the fewest sums give a bound that never overestimates: of each landmark one more unknown
must still be found, and a sum costs at least its price. Ties: fewer sums, then the order of the candidates.
"""

from __future__ import annotations

import heapq
from collections.abc import Iterable

from unpin.base.record import record
from unpin.route.blocks import sums_for
from unpin.route.candidates import Ground, Sum
from unpin.route.cost import CostTable
from unpin.route.search import Fewest

EXPANSIONS = 600
"""States opened before a search settles for what it has; counted, never timed."""

MANY = 14
"""With more asked than this the search is short: the order hardly matters when everything has to be found anyway."""

TOO_MANY = 40
"""With more asked than this the greedy order stands: joint by joint, as anybody would."""

KEEP = 3
"""Of sums on different free bodies that hold the same unknowns, so many of the cheapest are looked at."""


@record
class Move:
    """One sum or a block, the unknowns (bits) it finds, and its cost including any new drawing."""

    sums: tuple[Sum, ...]
    finds: int
    cost: int


def cheapest(ground: Ground, goal: int, known: int, fewest: Fewest, costs: CostTable, wide: bool = True,
             barred: Iterable[tuple[int, int]] = ()) -> list[Move] | None:
    """The least-cost list of moves from `known` to `goal`. `wide`: any unknowns may be found on the way, not only those of
    the smallest set; `barred`: (body, mask) of sums that must not be used. None when there is no way.

    First the best order inside the smallest set of unknowns; its cost then bounds the search among all of them.
    """
    barred = set(barred)
    sums = _kept(ground, [s for s in ground.sums if (s.body, s.mask) not in barred], known)
    goal &= ~known
    inside = fewest.found | known
    within = [s for s in sums if s.mask & ~inside == 0]
    least = _greedy(ground, within, goal, known, costs, inside, fewest.block)
    if least and goal.bit_count() > TOO_MANY:
        return least
    least = _Search(ground, within, known, fewest, costs).run(goal, _total(least)) or least
    if least and (not wide or len(within) == len(sums)):
        return least
    return _Search(ground, sums, known, fewest, costs).run(goal, _total(least)) or least


def _total(moves: list[Move] | None) -> int:
    return sum(m.cost for m in moves) if moves else 10**9


def _kept(ground: Ground, sums: list[Sum], known: int) -> list[Sum]:
    """Useful sums only, and of those that hold the same unknowns the few cheapest."""
    same: dict[int, list[Sum]] = {}
    for s in sums:
        if s.mask & ~known:
            same.setdefault(s.mask, []).append(s)
    keep = []
    for members in same.values():
        members.sort(key=lambda s: (s.cost + ground.body_costs[s.body], s.body))
        keep += members[:KEEP]
    return sorted(keep, key=lambda s: (s.body, s.mask))


class _Search:
    """Best-first search. A state is (unknowns known, bodies drawn)."""

    def __init__(self, ground: Ground, sums: list[Sum], known: int, fewest: Fewest, costs: CostTable):
        self.ground, self.sums, self.known, self.costs, self.block = ground, sums, known, costs, fewest.block
        price = {}
        for s in sums:
            full = s.cost + ground.body_costs[s.body]
            left = s.mask & ~known
            while left:
                bit = left & -left
                left ^= bit
                price[bit] = min(price.get(bit, 10**9), full)
        self.price = price
        self.full = [(s, s.mask, s.cost + ground.body_costs[s.body], 1 << s.body) for s in sums]
        marks = sorted(fewest.landmarks, key=lambda m: (m.bit_count(), m))
        self.landmarks = [(m, min((price.get(1 << k, 10**9) for k in range(m.bit_length()) if m >> k & 1), default=0)) for m in marks]

    def ahead(self, got: int) -> int:
        """A bound on what is still to pay: disjoint landmarks not yet met, each at the price of its cheapest unknown."""
        used, total = 0, 0
        for m, price in self.landmarks:
            if not m & got and not m & used:
                used |= m
                total += price
        return total

    def run(self, goal: int, bound: int = 10**9) -> list[Move] | None:
        """The cheapest moves below `bound`, None if there are none (or none was found in time)."""
        start = (self.known, 0)
        best = {start: 0}
        trail: dict[tuple[int, int], tuple[tuple[int, int], Move]] = {}
        heap = [(self.ahead(self.known), 0, 0, 0, start)]
        ticket = opened = 0
        while heap:
            _, _, _, spent, state = heapq.heappop(heap)
            if spent > best[state]:
                continue
            got, drawn = state
            if goal & ~got == 0:
                return pruned(_unwind(trail, state, start), goal, self.known)
            opened += 1
            if opened > (EXPANSIONS if goal.bit_count() <= MANY else EXPANSIONS // 6):
                return None
            for move in self.moves(got, drawn):
                after = (got | move.finds, drawn | _bodies(move))
                total = spent + move.cost
                if total < best.get(after, 10**9):
                    estimate = total + self.ahead(after[0])
                    if estimate >= bound:
                        continue
                    best[after] = total
                    trail[after] = (state, move)
                    ticket += 1
                    heapq.heappush(heap, (estimate, -(after[0].bit_count()), ticket, total, after))
        return None

    def forget(self, got: int) -> None:
        """Drop the sums that hold nothing unknown any more: for a search that never goes back."""
        self.full = [f for f in self.full if f[1] & ~got]

    def moves(self, got: int, drawn: int) -> list[Move]:
        """Every usable sum, the cheapest for each unknown and body; and blocks of two."""
        single: dict[tuple[int, int], tuple[int, Sum]] = {}
        pairs: dict[int, list[Sum]] = {}
        fresh = self.costs.new_body
        for s, mask, cost, body in self.full:
            left = mask & ~got
            if not left:
                continue
            rest = left & (left - 1)
            if not rest:
                price = cost if drawn & body else cost + fresh
                key = (left, body)
                if key not in single or price < single[key][0]:
                    single[key] = (price, s)
            elif not rest & (rest - 1):
                pairs.setdefault(left, []).append(s)
        out = [Move((s,), left, price) for (left, _), (price, s) in single.items()]
        # A pair of which one is found by a plain single sum is never better solved as a block: that sum costs no more than the
        # dearer of the two and the price of the block. A sum about a centre that must first be found can cost more.
        plain = 0
        for (left, _), (price, _) in single.items():
            plain |= left if price <= self.costs.block + self.costs.sum else 0
        for left, members in pairs.items():
            if left & plain or len(members) < 2:
                continue
            best = _best_pair(self.ground, left, members, drawn, self.costs)
            if best:
                out.append(best)
        if not out and self.block == 0:
            together = _whole_block(self.ground, self.sums, got, drawn, self.costs)
            out += [together] if together else []
        return out


def _unwind(trail, state, start) -> list[Move]:
    moves = []
    while state != start:
        state, move = trail[state]
        moves.append(move)
    return moves[::-1]


def _bodies(move: Move) -> int:
    mask = 0
    for s in move.sums:
        mask |= 1 << s.body
    return mask


def _price(ground: Ground, sums: tuple[Sum, ...], drawn: int, costs: CostTable) -> int:
    total = costs.block * (len(sums) - 1)
    for body in sorted({s.body for s in sums}):
        total += 0 if drawn >> body & 1 else costs.new_body
    return total + sum(s.cost + ground.body_costs[s.body] for s in sums)


def _best_pair(ground, left, members, drawn, costs) -> Move | None:
    low, high = (left & -left).bit_length() - 1, left.bit_length() - 1
    # The few cheapest of all, and the few cheapest of each body: two cheap sums of different bodies may be one and the same.
    by_price = sorted(members, key=lambda s: (s.cost + ground.body_costs[s.body], s.body, s.mask))
    taken: dict[int, int] = {}
    rows = []
    for s in by_price:
        taken[s.body] = taken.get(s.body, 0) + 1
        if taken[s.body] <= KEEP and len(rows) < 3 * KEEP:
            rows.append(s)
    best = None
    for k, s in enumerate(rows):
        c = dict(s.coefficients)
        for t in rows[:k]:
            d = dict(t.coefficients)
            if (c[low] * d[high] - c[high] * d[low]) % ground.prime:
                pair = (t, s) if t.body <= s.body else (s, t)
                cost = _price(ground, pair, drawn, costs)
                if best is None or cost < best.cost:
                    best = Move(pair, left, cost)
    return best


def _whole_block(ground, sums, got, drawn, costs) -> Move | None:
    """Everything that is left, solved together: the way of last resort."""
    wanted = 0
    for s in sums:
        wanted |= s.mask & ~got
    used = sums_for(sums, wanted, got, ground.prime)
    if len(used) < wanted.bit_count():
        return None
    return Move(tuple(used), wanted, _price(ground, tuple(used), drawn, costs))


def _greedy(ground, sums, goal, known, costs, inside, block) -> list[Move] | None:
    """The cheapest usable sum at each point, inside a set that is known to suffice."""
    search = _Search(ground, sums, known, Fewest(inside, 0, 0, (), block), costs)
    got, drawn, moves = known, 0, []
    while goal & ~got:
        options = search.moves(got, drawn)
        if not options:
            return None
        move = min(options, key=lambda m: (m.cost, m.finds))
        moves.append(move)
        got |= move.finds
        drawn |= _bodies(move)
        search.forget(got)
    return pruned(moves, goal, known)


def pruned(moves: list[Move], goal: int, known: int) -> list[Move]:
    """Without the moves whose finds nothing later needs."""
    needed = goal
    kept = []
    for move in reversed(moves):
        if move.finds & needed:
            kept.append(move)
            for s in move.sums:
                needed |= s.mask & ~move.finds
    return kept[::-1]
