"""The cheapest order of sums that reaches the goal: a best-first search over what is known and which bodies are drawn.

The landmarks of the search for the fewest sums give a bound that never overestimates: of each landmark one more unknown
must still be found, and a sum costs at least its price. Ties: fewer sums, then the order of the candidates.
"""

from __future__ import annotations

import heapq
from collections.abc import Iterable

from unpin.route.blocks import sums_for
from unpin.route.body_sums import Sum
from unpin.route.candidates import Ground
from unpin.route.cost import CostTable
from unpin.route.exchange import cheaper
from unpin.route.frontier import KEEP, Frontier, Move, Offer, Sums
from unpin.route.search import Closure, Fewest

EXPANSIONS = 600
"""States opened before a search settles for what it has; counted, never timed."""

WIDTH, DEEP = 40, 12
"""Where the search has not come to its end: so many of the likeliest beginnings are followed side by side, so many moves on."""

MANY = 14
"""With more asked than this the search is short: the order hardly matters when everything has to be found anyway."""

TOO_MANY = 40
"""With more asked than this the greedy order stands: joint by joint, as anybody would."""

USUAL = 110
"""How dear the usual order may be, in hundredths of the cheapest, where so much is asked."""


def cheapest(ground: Ground, goal: int, known: int, fewest: Fewest, costs: CostTable, wide: bool = True,
             barred: Iterable[tuple[int, int]] = ()) -> list[Move] | None:
    """The least-cost list of moves from `known` to `goal`. `wide`: any unknowns may be found on the way, not only those of
    the smallest set; `barred`: (body, mask) of sums that must not be used. None when there is no way.

    First the best order inside the smallest set of unknowns; its cost then bounds the search among all of them.
    """
    barred = set(barred)
    sums = _kept(ground, [s for s in ground.sums if (s.body, s.mask) not in barred] if barred else ground.sums, known)
    goal &= ~known
    inside = fewest.found | known
    within = Sums(ground, [s for s in sums if s.mask & ~inside == 0], known, costs)
    least = _greedy(within, goal, fewest.block)
    if least and goal.bit_count() > TOO_MANY:
        return least
    if least and wide and goal.bit_count() > MANY:
        # With so much asked everybody finds the reactions first and goes from joint to joint, although a sum or two could be spared.
        other = _greedy(Sums(ground, sums, known, costs), goal, fewest.block)
        if other and _total(other) * 100 <= _total(least) * USUAL:
            return other
    least = _Search(within, fewest).run(goal, _total(least)) or least
    if least and (not wide or len(within.sums) == len(sums)):
        return least
    search = _Search(Sums(ground, sums, known, costs), fewest)
    found = search.run(goal, _total(least)) or least
    return search.side_by_side(goal, _total(found)) or found if search.stopped and goal.bit_count() <= MANY else found


def well_chosen(ground: Ground, goal: int, known: int, least: Fewest, costs: CostTable) -> Fewest:
    """The same bounds with that of the smallest sets, as far as one is found, in which the way costs least."""
    goal &= ~known
    if goal.bit_count() > MANY:
        return least
    sums = _kept(ground, ground.sums, known)

    def price(inside: int) -> int | None:
        inside |= known
        within = Sums(ground, [s for s in sums if s.mask & ~inside == 0], known, costs)
        moves = _greedy(within, goal, least.block)
        return _total(moves) if moves else None

    return cheaper(Closure(ground, known, least.block), least, goal, price)


def _total(moves: list[Move] | None) -> int:
    return sum(m.cost for m in moves) if moves else 10**9


def _kept(ground: Ground, sums: Iterable[Sum], known: int) -> list[Sum]:
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

    def __init__(self, sums: Sums, fewest: Fewest):
        self.sums, self.block = sums, fewest.block
        price = sums.cheapest_price()
        marks = sorted(fewest.landmarks, key=lambda m: (m.bit_count(), m))
        self.landmarks = [(m, min((price.get(1 << k, 10**9) for k in range(m.bit_length()) if m >> k & 1), default=0)) for m in marks]
        self._ahead: dict[int, int] = {}
        self.stopped = False

    def ahead(self, got: int) -> int:
        """A bound on what is still to pay: disjoint landmarks not yet met, each at the price of its cheapest unknown."""
        if got not in self._ahead:
            used, total = 0, 0
            for m, price in self.landmarks:
                if not m & got and not m & used:
                    used |= m
                    total += price
            self._ahead[got] = total
        return self._ahead[got]

    def run(self, goal: int, bound: int = 10**9) -> list[Move] | None:
        """The cheapest moves below `bound`, None if there are none (or none was found in time)."""
        known = self.sums.known
        start = (known, 0)
        best = {start: 0}
        trail: dict[tuple[int, int], tuple[tuple[int, int], Offer]] = {}
        frontiers = {known: self.sums.start()}
        heap = [(self.ahead(known), 0, 0, 0, start)]
        ticket = opened = 0
        while heap:
            _, _, _, spent, state = heapq.heappop(heap)
            if spent > best[state]:
                continue
            got, drawn = state
            if goal & ~got == 0:
                return pruned(_unwind(trail, state, start), goal, known)
            opened += 1
            if opened > (EXPANSIONS if goal.bit_count() <= MANY else EXPANSIONS // 6):
                self.stopped = True
                return None
            if got not in frontiers:
                before, (_, found, _, _) = trail[state]
                frontiers[got] = self.sums.after(frontiers[before[0]], before[0], found)
            offered = list(self.sums.offers(frontiers[got], drawn, bound - spent))
            if not offered and self.block == 0:
                together = _whole_block(self.sums, got, drawn)
                offered = [together] if together else []
            for offer in offered:
                cost, found, bodies, _ = offer
                after = (got | found, drawn | bodies)
                total = spent + cost
                if total < best.get(after, 10**9):
                    estimate = total + self.ahead(after[0])
                    if estimate >= bound:
                        continue
                    best[after] = total
                    trail[after] = (state, offer)
                    ticket += 1
                    heapq.heappush(heap, (estimate, -(after[0].bit_count()), ticket, total, after))
        return None

    def side_by_side(self, goal: int, bound: int) -> list[Move] | None:
        """A way below `bound` that a search move by move finds, None if there is none. Of the beginnings of equally many moves the few are
        gone on with that promise least; so it soon comes to an end, where the best-first search would first open all that are cheap."""
        known = self.sums.known
        level: dict[tuple[int, int], tuple[int, list[Offer]]] = {(known, 0): (0, [])}
        frontiers = {known: self.sums.start()}
        best: list[Move] | None = None
        for _ in range(DEEP):
            after: dict[tuple[int, int], tuple[int, list[Offer]]] = {}
            for (got, drawn), (spent, way) in level.items():
                for offer in self.sums.offers(frontiers[got], drawn, bound - spent):
                    cost, found, bodies, _ = offer
                    state, total = (got | found, drawn | bodies), spent + cost
                    if goal & ~state[0] == 0:
                        moves = pruned([_move(o) for o in (*way, offer)], goal, known)
                        if _total(moves) < bound:
                            best, bound = moves, _total(moves)
                    elif total + self.ahead(state[0]) < bound and total < after.get(state, (10**9, []))[0]:
                        after[state] = (total, [*way, offer])
            kept = sorted(after.items(), key=lambda one: (one[1][0] + self.ahead(one[0][0]), one[0]))[:WIDTH]
            level = {state: one for state, one in kept if one[0] + self.ahead(state[0]) < bound}
            new: dict[int, Frontier] = {}
            for (got, _), (_, way) in level.items():
                if got not in new:
                    before = got & ~way[-1][1]
                    new[got] = self.sums.after(frontiers[before], before, way[-1][1])
            frontiers = new
            if not level:
                break
        return best


def _unwind(trail, state, start) -> list[Move]:
    moves = []
    while state != start:
        state, offer = trail[state]
        moves.append(_move(offer))
    return moves[::-1]


def _move(offer: Offer) -> Move:
    cost, found, _, sums = offer
    return Move(sums, found, cost)


def _whole_block(sums: Sums, got: int, drawn: int) -> Offer | None:
    """Everything that is left, solved together: the way of last resort."""
    wanted = 0
    for m in sums.mask:
        wanted |= m & ~got
    used = tuple(sums_for(sums.sums, wanted, got, sums.ground.prime))
    if len(used) < wanted.bit_count():
        return None
    bodies = 0
    for s in used:
        bodies |= 1 << s.body
    return sums.priced(used, drawn), wanted, bodies, used


def _greedy(sums: Sums, goal: int, block: int) -> list[Move] | None:
    """The cheapest usable sum at each point, inside a set that is known to suffice."""
    got, drawn, moves = sums.known, 0, []
    frontier = sums.start()
    while goal & ~got:
        offer = sums.least(frontier, drawn)
        if offer is None and block == 0:
            offer = _whole_block(sums, got, drawn)
        if offer is None:
            return None
        moves.append(_move(offer))
        frontier = sums.after(frontier, got, offer[1])
        got |= offer[1]
        drawn |= offer[2]
    return pruned(moves, goal, sums.known)


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
