"""What can be done next, kept up to date as unknowns are found instead of being looked for anew.

Sums are told apart by what of theirs is still unknown: one unknown makes a usable sum, two the half of a pair. Only sums that hold
the unknown just found are looked at again.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from unpin.base.record import record
from unpin.route.body_sums import Sum
from unpin.route.candidates import Ground
from unpin.route.cost import CostTable

KEEP = 3
"""Of sums on different free bodies that hold the same unknowns, so many of the cheapest are looked at."""


@record
class Move:
    """One sum or a block, the unknowns (bits) it finds, and its cost including any new drawing."""

    sums: tuple[Sum, ...]
    finds: int
    cost: int


Offer = tuple[int, int, int, tuple[Sum, ...]]
"""Cost, unknowns found, bodies used (bits), the sums: a move before it is taken."""


class Pair:
    """Sums that hold the same two unknowns. `first`: the place of the first of them; `floor`: no block of two of them costs less."""

    __slots__ = ("members", "first", "bodies", "floor", "_known")

    def __init__(self, members: list[int], sums: Sums):
        self.members = members
        self.first = min(members)
        self.bodies = 0
        for k in members:
            self.bodies |= sums.body[k]
        two = sorted(sums.price[k] for k in members)[:2]
        self.floor = sum(two) + sums.costs.block
        self._known: dict[int, Offer | None] = {}

    def best(self, left: int, drawn: int, sums: Sums) -> Offer | None:
        """The cheapest two that fix both unknowns, or None."""
        drawn &= self.bodies
        if drawn not in self._known:
            self._known[drawn] = sums.best_pair(left, [sums.sums[k] for k in self.members], drawn)
        return self._known[drawn]


class Frontier:
    """`single`: (unknown, body) to the place of the first sum that finds the one on the other, and of the cheapest. `pairs`: by their
    two unknowns."""

    __slots__ = ("single", "pairs")

    def __init__(self, single: dict[tuple[int, int], tuple[int, int]], pairs: dict[int, Pair]):
        self.single, self.pairs = single, pairs


class Sums:
    """The sums a search may use, in order, with what it asks of them again and again. `known`: unknowns (bits) at the start."""

    def __init__(self, ground: Ground, sums: Sequence[Sum], known: int, costs: CostTable):
        self.ground, self.sums, self.known, self.costs = ground, sums, known, costs
        self.mask = [s.mask for s in sums]
        self.price = [s.cost + ground.body_costs[s.body] for s in sums]
        self.body = [1 << s.body for s in sums]
        self._holding: dict[int, list[int]] = {}
        for k, m in enumerate(self.mask):
            left = m & ~known
            while left:
                bit = left & -left
                left ^= bit
                self._holding.setdefault(bit, []).append(k)

    def start(self) -> Frontier:
        return self._with(Frontier({}, {}), range(len(self.sums)), self.known)

    def after(self, before: Frontier, got: int, found: int) -> Frontier:
        """The frontier when `found` is known on top of the `got` that `before` is of."""
        single = {key: v for key, v in before.single.items() if not key[0] & found}
        pairs = {left: v for left, v in before.pairs.items() if not left & found}
        touched: list[int] = []
        left, several = found, found & (found - 1)
        while left:
            bit = left & -left
            left ^= bit
            touched += self._holding.get(bit, [])
        return self._with(Frontier(single, pairs), sorted(set(touched)) if several else touched, got | found)

    def _with(self, frontier: Frontier, touched, got: int) -> Frontier:
        halves: dict[int, list[int]] = {}
        single, price = frontier.single, self.price
        for k in touched:
            left = self.mask[k] & ~got
            rest = left & (left - 1)
            if not rest:
                if left:
                    key = (left, self.body[k])
                    there = single.get(key)
                    if there is None:
                        single[key] = (k, k)
                    else:
                        first, best = there
                        better = (price[k], k) < (price[best], best)
                        single[key] = (min(first, k), k if better else best)
            elif not rest & (rest - 1):
                halves.setdefault(left, []).append(k)
        for left, members in halves.items():
            there = frontier.pairs.get(left)
            frontier.pairs[left] = Pair([*there.members, *members] if there else members, self)
        return frontier

    def offers(self, frontier: Frontier, drawn: int, limit: int = 10**9) -> Iterator[Offer]:
        """Every usable sum, the cheapest for each unknown and body, then blocks of two; nothing dearer than `limit` among these."""
        fresh, plain, enough = self.costs.new_body, 0, self.costs.block + self.costs.sum
        for (left, body), (_, k) in sorted(frontier.single.items(), key=_first):
            price = self.price[k] if drawn & body else self.price[k] + fresh
            if price <= enough:
                plain |= left
            yield price, left, body, (self.sums[k],)
        # A pair of which one is found by a plain single sum is never better solved as a block: that sum costs no more than the
        # dearer of the two and the price of the block. A sum about a centre that must first be found can cost more.
        for left, pair in sorted(frontier.pairs.items(), key=_first_half):
            if not left & plain and len(pair.members) > 1 and pair.floor <= limit:
                best = pair.best(left, drawn, self)
                if best:
                    yield best

    def least(self, frontier: Frontier, drawn: int) -> Offer | None:
        """The cheapest of the offers; among equals that of the lowest unknown, then of the first sum."""
        fresh, plain, enough = self.costs.new_body, 0, self.costs.block + self.costs.sum
        key, taken = (10**9, 0, 0), None
        for (left, body), (first, k) in frontier.single.items():
            price = self.price[k] if drawn & body else self.price[k] + fresh
            if price <= enough:
                plain |= left
            if (price, left, first) < key:
                key, taken = (price, left, first), (price, left, body, (self.sums[k],))
        for left, pair in frontier.pairs.items():
            if pair.floor <= key[0] and not left & plain and len(pair.members) > 1:
                best = pair.best(left, drawn, self)
                if best and (best[0], left, pair.first) < key:
                    key, taken = (best[0], left, pair.first), best
        return taken

    def cheapest_price(self) -> dict[int, int]:
        """For each unknown the price of the cheapest sum that holds it."""
        left = -1
        out: dict[int, int] = {}
        for k in sorted(range(len(self.sums)), key=self.price.__getitem__):
            new = self.mask[k] & ~self.known & left
            left &= ~new
            while new:
                bit = new & -new
                new ^= bit
                out[bit] = self.price[k]
        return out

    def best_pair(self, left: int, members: list[Sum], drawn: int) -> Offer | None:
        low, high = (left & -left).bit_length() - 1, left.bit_length() - 1
        ground = self.ground
        # The few cheapest of all, and the few cheapest of each body: two cheap sums of different bodies may be one and the same.
        by_price = sorted(members, key=lambda s: (s.cost + ground.body_costs[s.body], s.body, s.mask))
        taken: dict[int, int] = {}
        rows = []
        for s in by_price:
            taken[s.body] = taken.get(s.body, 0) + 1
            if taken[s.body] <= KEEP and len(rows) < 3 * KEEP:
                rows.append((s, dict(s.coefficients)))
        best: Offer | None = None
        for k, (s, c) in enumerate(rows):
            for t, d in rows[:k]:
                if (c[low] * d[high] - c[high] * d[low]) % ground.prime:
                    pair = (t, s) if t.body <= s.body else (s, t)
                    cost = self.priced(pair, drawn)
                    if best is None or cost < best[0]:
                        best = (cost, left, 1 << s.body | 1 << t.body, pair)
        return best

    def priced(self, sums: tuple[Sum, ...], drawn: int) -> int:
        """What a block costs, with the bodies that are not drawn yet."""
        total = self.costs.block * (len(sums) - 1)
        for body in sorted({s.body for s in sums}):
            total += 0 if drawn >> body & 1 else self.costs.new_body
        return total + sum(s.cost + self.ground.body_costs[s.body] for s in sums)


def _first(item) -> int:
    return item[1][0]


def _first_half(item) -> int:
    return item[1].first
