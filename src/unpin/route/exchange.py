"""Another smallest set in which the way is cheaper: one unknown is exchanged for another as long as that helps.

Which of several smallest sets is found first is chance; what a person would rather write is not.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from unpin.route.search import Closure, Fewest

WORK = 300_000
"""Sets of unknowns looked at before the exchange ends; counted, never timed."""


def cheaper(closure: Closure, least: Fewest, goal: int, price: Callable[[int], int | None]) -> Fewest:
    """The same with a `found` of the same size in which the way costs less, if one is found. `price`: the cost of a way inside a set,
    None when there is none; `closure`: what can be derived inside a set. One input, one result."""
    best, cost = least.found, price(least.found)
    if cost is None:
        return least
    everything = 0
    for m in closure.all_masks:
        everything |= m
    spent = closure.work
    while True:
        better = None
        for out in _bits(best & ~goal):
            without = best & ~out
            start = closure.inside(without, closure.all_masks)
            for bit in _bits(everything & ~best):
                if closure.work - spent > WORK:
                    return replace(least, found=better[1] if better else best)
                got, _ = closure.wider(*start, without | bit, bit)
                if goal & ~got == 0:
                    there = price(without | bit)
                    if there is not None and (there, without | bit) < (better or (cost, -1)):
                        better = (there, without | bit)
        if better is None:
            return replace(least, found=best)
        cost, best = better


def _bits(mask: int) -> list[int]:
    return [1 << k for k in range(mask.bit_length()) if mask >> k & 1]
