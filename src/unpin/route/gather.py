"""Steps of which the order is free, put so that a body is finished before the next one is begun."""

from __future__ import annotations

from unpin.route.frontier import Move


def gathered(moves: list[Move], known: int) -> list[Move]:
    """The same moves in an order in which each can still be done: on the body that is drawn as long as it has one, then on a body
    that can be finished in one go, else as they came. `known`: unknowns (bits) found before the first."""
    left, out = list(moves), []
    here: frozenset[int] = frozenset()
    while left:
        ready = [m for m in left if _needs(m) & ~known == 0]
        move = next((m for m in ready if _bodies(m) == here), None) or _opening(ready, left, known)
        left.remove(move)
        out.append(move)
        known |= move.finds
        here = _bodies(move)
    return out


def _opening(ready: list[Move], left: list[Move], known: int) -> Move:
    """The move with which the next body begins: the first whose body can be finished, the first of all when there is none."""
    return next((m for m in ready if _finishes(_bodies(m), left, known)), ready[0])


def _finishes(bodies: frozenset[int], left: list[Move], known: int) -> bool:
    """Whether all moves on these bodies can be done one after the other with nothing from elsewhere."""
    mine = [m for m in left if _bodies(m) & bodies]
    if any(_bodies(m) != bodies for m in mine):
        return False
    while mine:
        move = next((m for m in mine if _needs(m) & ~known == 0), None)
        if move is None:
            return False
        mine.remove(move)
        known |= move.finds
    return True


def _bodies(move: Move) -> frozenset[int]:
    return frozenset(s.body for s in move.sums)


def _needs(move: Move) -> int:
    """Unknowns that its sums hold and that it does not find."""
    held = 0
    for s in move.sums:
        held |= s.mask
    return held & ~move.finds
