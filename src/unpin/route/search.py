"""The fewest sums, with a proof: the smallest set of unknowns that holds the goal and can be derived inside itself.

Each single sum finds one unknown and a block of k finds k, so the count of a route is the number of unknowns it finds; the
order of discovery is no part of the state. Solved as a hitting set that is built as needed: hit all landmarks with the
fewest unknowns; if those do not derive the goal, grow them to a maximal set that still fails; what is left out is a new
landmark, since every set that succeeds must contain one of it. The size of the smallest hitting set is a lower bound.
"""

from __future__ import annotations

from unpin.base.record import record
from unpin.route.candidates import Ground

BLOCK = 2
"""Sums that may be solved together as one move of the search."""

ORACLE_CALLS = 6000
"""Bound on the work; when it is met the result says "between L and U"."""


@record
class Fewest:
    """`found`: the unknowns of a smallest set (bits). `lower`: proved bound; `upper`: size of `found`. `landmarks`: sets of
    which every route must find one. `block`: largest block allowed (0: any)."""

    found: int
    lower: int
    upper: int
    landmarks: tuple[int, ...]
    block: int


class Closure:
    """What can be derived when only some unknowns may be found. `known`: bits known at the start."""

    def __init__(self, ground: Ground, known: int, block: int = BLOCK):
        self.known = known
        self.block = block
        by_mask: dict[int, list] = {}
        for s in ground.sums:
            by_mask.setdefault(s.mask & ~known, []).append(s)
        by_mask.pop(0, None)
        self.by_mask = by_mask
        masks = sorted(by_mask, key=lambda m: (m.bit_count(), m))
        self.all_masks = masks
        self.prime = ground.prime
        self.calls = 0

    def of(self, allowed: int) -> int:
        """The unknowns derived inside `allowed` (not counting what was known)."""
        self.calls += 1
        got = 0
        masks = [m for m in self.all_masks if m & ~allowed == 0]
        while True:
            grown = False
            rest = []
            for m in masks:
                left = m & ~got
                if left == 0:
                    continue
                if left & (left - 1) == 0:
                    got |= left
                    grown = True
                else:
                    rest.append(m)
            masks = rest
            if grown:
                continue
            block = self._block(masks, got)
            if not block:
                return got
            got |= block

    def _block(self, masks: list[int], got: int) -> int:
        if self.block == 0:
            return self._any_block(masks, got)
        pairs: dict[int, list] = {}
        for m in masks:
            left = m & ~got
            if left.bit_count() == 2:
                pairs.setdefault(left, []).append(m)
        for left, members in pairs.items():
            if self.independent(left, [s for m in members for s in self.by_mask[m]]):
                return left
        return 0

    def independent(self, pair: int, sums: list) -> tuple | None:
        """Two of the sums that fix both unknowns of the pair, the cheapest such, or None."""
        low = (pair & -pair).bit_length() - 1
        high = pair.bit_length() - 1
        coefficients = []
        for s in sorted(sums, key=lambda s: s.cost):
            c = dict(s.coefficients)
            coefficients.append((c[low], c[high], s))
        for k, (a, b, s) in enumerate(coefficients):
            for c, d, t in coefficients[:k]:
                if s.body != t.body and (a * d - b * c) % self.prime != 0:
                    return t, s
        return None

    def _any_block(self, masks: list[int], got: int) -> int:
        """Everything that all the sums together fix, by elimination modulo the prime."""
        from unpin.route.blocks import fixed_together

        return fixed_together([s for m in masks for s in self.by_mask[m]], got | self.known, self.prime)


def fewest(ground: Ground, goal: int, known: int, calls: int = ORACLE_CALLS) -> Fewest | None:
    """The smallest set of unknowns that derives `goal` from `known`, by single sums and blocks of two; if those do not
    suffice, by blocks of any size. None when no sums determine the goal at all."""
    goal &= ~known
    everything = (1 << len(ground.ids)) - 1 & ~known
    for block in (BLOCK, 0):
        closure = Closure(ground, known, block)
        if goal & ~closure.of(everything) == 0:
            return _hit(closure, goal, everything, block, calls)
    return None


def _hit(closure: Closure, goal: int, everything: int, block: int, calls: int) -> Fewest:
    landmarks = [1 << k for k in range(everything.bit_length()) if goal >> k & 1]
    best = _shrunk(closure, closure.of(everything), goal)
    lower = goal.bit_count()
    while True:
        hit = smallest_hit(landmarks)
        lower = max(lower, hit.bit_count())
        derived = closure.of(hit)
        if goal & ~derived == 0:
            return Fewest(hit, hit.bit_count(), hit.bit_count(), tuple(landmarks), block)
        if lower >= best.bit_count():
            return Fewest(best, lower, best.bit_count(), tuple(landmarks), block)
        if closure.calls > calls:
            return Fewest(best, lower, best.bit_count(), tuple(landmarks), block)
        for backwards in (False, True):
            grown = _grown(closure, hit, goal, everything, backwards)
            mark = everything & ~grown
            if mark not in landmarks:
                landmarks.append(mark)


def _grown(closure: Closure, start: int, goal: int, everything: int, backwards: bool) -> int:
    """A maximal set above `start` that does not derive the goal."""
    grown = start
    order = [k for k in range(everything.bit_length()) if everything >> k & 1 and not start >> k & 1]
    for k in reversed(order) if backwards else order:
        if goal & ~closure.of(grown | 1 << k):
            grown |= 1 << k
    return grown


def _shrunk(closure: Closure, start: int, goal: int) -> int:
    """A minimal set below `start` that derives the goal."""
    left = start
    for k in range(start.bit_length()):
        if left >> k & 1 and goal & ~closure.of(left & ~(1 << k)) == 0:
            left &= ~(1 << k)
    return left


def smallest_hit(landmarks: list[int]) -> int:
    """The smallest set that meets every landmark; among equals the one found first in bit order. Branch and bound."""
    marks = sorted(set(landmarks), key=lambda m: (m.bit_count(), m))
    minimal = [m for k, m in enumerate(marks) if not any(s & ~m == 0 for s in marks[:k])]
    forced = 0
    for m in minimal:
        if m.bit_count() == 1:
            forced |= m
    rest = [m for m in minimal if not m & forced]
    best = [0, 10**9]

    def bound(open_marks: list[int]) -> int:
        used, count = 0, 0
        for m in open_marks:
            if not m & used:
                used |= m
                count += 1
        return count

    def go(chosen: int, size: int, open_marks: list[int], barred: int) -> None:
        if not open_marks:
            if size < best[1]:
                best[0], best[1] = chosen, size
            return
        if size + bound(open_marks) >= best[1]:
            return
        mark = min(open_marks, key=lambda m: ((m & ~barred).bit_count(), m))
        options = mark & ~barred
        while options:
            bit = options & -options
            options ^= bit
            go(chosen | bit, size + 1, [m for m in open_marks if not m & bit], barred)
            barred |= bit

    go(0, 0, rest, 0)
    return forced | best[0]
