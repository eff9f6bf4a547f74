"""The fewest sums, with a proof: the smallest set of unknowns that holds the goal and can be derived inside itself.

Each single sum finds one unknown and a block of k finds k, so the count of a route is the number of unknowns it finds; the
order of discovery is no part of the state. Solved as a hitting set that is built as needed: hit all landmarks with the
fewest unknowns; if those do not derive the goal, grow them to a maximal set that still fails; what is left out is a new
landmark, since every set that succeeds must contain one of it. The size of the smallest hitting set is a lower bound.
"""

from __future__ import annotations

from unpin.base.record import record
from unpin.route.candidates import Ground
from unpin.route.hitting import WORK, smallest_hit

BLOCK = 2
"""Sums that may be solved together as one move of the search."""

ORACLE_CALLS = 6000
"""Bound on how often it is asked what a set derives; when it is met the result says "between L and U"."""

ORACLE_WORK = 6_000_000
"""Bound on the sets of unknowns looked at for that; counted, never timed, so one input gives one result."""


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
    """What can be derived when only some unknowns may be found. `known`: bits known at the start; `calls` and `work`: how often it
    was asked, and how many sets of unknowns it has looked at for that."""

    def __init__(self, ground: Ground, known: int, block: int = BLOCK):
        self.known = known
        self.block = block
        by_mask: dict[int, list] = {}
        for s in ground.sums:
            by_mask.setdefault(s.mask & ~known, []).append(s)
        by_mask.pop(0, None)
        self.by_mask = by_mask
        self.all_masks = sorted(by_mask, key=lambda m: (m.bit_count(), m))
        self.prime = ground.prime
        self.calls = self.work = 0
        self._holding: dict[int, list[int]] = {}

    def of(self, allowed: int) -> int:
        """The unknowns derived inside `allowed` (not counting what was known)."""
        return self.inside(allowed, self.all_masks)[0]

    def inside(self, allowed: int, masks: list[int]) -> tuple[int, list[int]]:
        """The same from `masks` alone, with those of them that are inside and still hold something unknown."""
        self.calls += 1
        self.work += len(masks)
        return self._close(0, [m for m in masks if not m & ~allowed])

    def wider(self, got: int, rest: list[int], allowed: int, bit: int) -> tuple[int, list[int]]:
        """What `got` and `rest` become when the unknown `bit`, now in `allowed`, may be found as well."""
        self.calls += 1
        fresh = [m for m in self._masks_with(bit) if not m & ~allowed]
        self.work += len(self._masks_with(bit))
        return self._close(got, rest + fresh) if fresh else (got, rest)

    def _masks_with(self, bit: int) -> list[int]:
        if not self._holding:
            for m in self.all_masks:
                left = m
                while left:
                    low = left & -left
                    self._holding.setdefault(low, []).append(m)
                    left ^= low
        return self._holding.get(bit, [])

    def _close(self, got: int, masks: list[int]) -> tuple[int, list[int]]:
        while True:
            grown = False
            rest = []
            self.work += len(masks)
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
                return got, masks
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
    lower, left = goal.bit_count(), WORK
    while True:
        hit = smallest_hit(landmarks, lower, left)
        left -= hit.work
        lower = max(lower, hit.lower)
        if lower >= best.bit_count():
            # The set that was found by leaving out is as small as any: the one hit last may be another as small.
            if hit.found is not None and goal & ~closure.of(hit.found) == 0:
                best = hit.found
            return Fewest(best, lower, best.bit_count(), tuple(landmarks), block)
        if hit.found is None or closure.calls > calls or closure.work > ORACLE_WORK:
            best = min(best, _shrunk(closure, closure.of(everything), goal, backwards=True), key=int.bit_count)
            return Fewest(best, lower, best.bit_count(), tuple(landmarks), block)
        derived, rest = closure.inside(hit.found, closure.all_masks)
        if goal & ~derived == 0:
            return Fewest(hit.found, lower, lower, tuple(landmarks), block)
        for backwards in (False, True):
            mark = everything & ~_grown(closure, (hit.found, derived, rest), goal, everything, backwards)
            if mark not in landmarks:
                landmarks.append(mark)


def _grown(closure: Closure, start: tuple[int, int, list[int]], goal: int, everything: int, backwards: bool) -> int:
    """A maximal set above a start, given with what it derives, that does not derive the goal."""
    grown, got, rest = start
    order = [k for k in range(everything.bit_length()) if everything >> k & 1 and not grown >> k & 1]
    for k in reversed(order) if backwards else order:
        more = closure.wider(got, rest, grown | 1 << k, 1 << k)
        if goal & ~more[0]:
            grown |= 1 << k
            got, rest = more
    return grown


def _shrunk(closure: Closure, start: int, goal: int, backwards: bool = False) -> int:
    """A minimal set below `start` that derives the goal. What is asked for itself stays in it."""
    left = start
    masks = [m for m in closure.all_masks if not m & ~left]
    order = [k for k in range(start.bit_length()) if (left & ~goal) >> k & 1]
    for k in reversed(order) if backwards else order:
        without = [m for m in masks if not m >> k & 1]
        if goal & ~closure.inside(left & ~(1 << k), without)[0] == 0:
            left &= ~(1 << k)
            masks = without
    return left
