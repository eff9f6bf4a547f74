"""The cheapest order of sums that reaches the goal: a best-first search over what is known and which bodies are drawn.

The landmarks of the search for the fewest sums give a bound that never overestimates: of each landmark one more unknown
must still be found, and a sum costs at least its price. Ties: fewer sums, then the order of the candidates.
"""

from __future__ import annotations

import heapq
from collections.abc import Iterable
from dataclasses import dataclass

from unpin.route.blocks import sums_for
from unpin.route.candidates import Ground, Sum
from unpin.route.cost import CostTable
from unpin.route.search import Fewest

EXPANSIONS = 2500
"""States opened before the search settles for a greedy order; counted, never timed."""


@dataclass(frozen=True)
class Move:
    """One sum or a block, the unknowns (bits) it finds, and its cost including any new drawing."""

    sums: tuple[Sum, ...]
    finds: int
    cost: int


def cheapest(ground: Ground, goal: int, known: int, fewest: Fewest, costs: CostTable, allowed: int | None = None,
             barred: Iterable[tuple[int, int]] = ()) -> list[Move] | None:
    """The least-cost list of moves from `known` to `goal`. `allowed`: only these unknowns may be found (None: any);
    `barred`: (body, mask) of sums that must not be used. None when there is no way."""
    barred = set(barred)
    everything = (1 << len(ground.ids)) - 1
    allowed = everything if allowed is None else allowed
    sums = [s for s in ground.sums if (s.body, s.mask) not in barred]
    found = _best_first(ground, sums, goal & ~known, known, fewest, costs, allowed)
    return found if found is not None else _greedy(ground, sums, goal & ~known, known, costs, allowed & (fewest.found | known))


def _best_first(ground, sums, goal, known, fewest, costs, allowed) -> list[Move] | None:
    least = costs.sum
    landmarks = sorted(fewest.landmarks, key=lambda m: (m.bit_count(), m))

    def ahead(got: int) -> int:
        used, count = 0, 0
        for m in landmarks:
            if not m & got and not m & used:
                used |= m
                count += 1
        return count * least

    start = (known, 0)
    best = {start: 0}
    trail: dict[tuple[int, int], tuple[tuple[int, int], Move]] = {}
    heap = [(ahead(known), 0, 0, 0, start)]
    ticket = 0
    opened = 0
    while heap:
        _, _, _, spent, state = heapq.heappop(heap)
        if spent > best[state]:
            continue
        got, drawn = state
        if goal & ~got == 0:
            return pruned(_unwind(trail, state, start), goal, known)
        opened += 1
        if opened > EXPANSIONS:
            return None
        for move in _moves(ground, sums, got, drawn, costs, allowed, fewest.block):
            after = (got | move.finds, drawn | _bodies(move))
            total = spent + move.cost
            if total < best.get(after, 10**9):
                best[after] = total
                trail[after] = (state, move)
                ticket += 1
                heapq.heappush(heap, (total + ahead(after[0]), (after[0] & ~known).bit_count(), ticket, total, after))
    return None


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


def _moves(ground, sums, got, drawn, costs, allowed, block) -> list[Move]:
    """Every usable sum, the cheapest for each unknown and body; and blocks of two."""
    moves: dict[tuple[int, int], Move] = {}
    pairs: dict[int, list[Sum]] = {}
    for s in sums:
        left = s.mask & ~got
        if not left or left & ~allowed:
            continue
        if left & (left - 1) == 0:
            key = (left, s.body)
            cost = _price(ground, (s,), drawn, costs)
            if key not in moves or cost < moves[key].cost:
                moves[key] = Move((s,), left, cost)
        elif left.bit_count() == 2:
            pairs.setdefault(left, []).append(s)
    out = list(moves.values())
    singly = 0
    for m in out:
        singly |= m.finds
    for left, members in pairs.items():
        # A pair of which one is found by a single sum is never better solved as a block.
        if left & singly or len(members) < 2:
            continue
        best = _best_pair(ground, left, members, drawn, costs)
        if best:
            out.append(best)
    if not out and block == 0:
        together = _whole_block(ground, sums, got, drawn, costs, allowed)
        out += [together] if together else []
    return out


def _best_pair(ground, left, members, drawn, costs) -> Move | None:
    low, high = (left & -left).bit_length() - 1, left.bit_length() - 1
    best = None
    rows = [(dict(s.coefficients), s) for s in members]
    for k, (c, s) in enumerate(rows):
        for d, t in rows[:k]:
            if s.body != t.body and (c[low] * d[high] - c[high] * d[low]) % ground.prime:
                pair = (t, s) if (t.body, t.cost) <= (s.body, s.cost) else (s, t)
                cost = _price(ground, pair, drawn, costs)
                if best is None or cost < best.cost:
                    best = Move(pair, left, cost)
    return best


def _whole_block(ground, sums, got, drawn, costs, allowed) -> Move | None:
    """Everything that is left, solved together: the way of last resort."""
    wanted = allowed & ~got
    used = sums_for(sums, wanted, got, ground.prime)
    if len(used) < wanted.bit_count():
        return None
    return Move(tuple(used), wanted, _price(ground, tuple(used), drawn, costs))


def _greedy(ground, sums, goal, known, costs, allowed) -> list[Move] | None:
    """The cheapest usable sum at each point, inside a set that is known to suffice."""
    got, drawn, moves = known, 0, []
    while goal & ~got:
        options = _moves(ground, sums, got, drawn, costs, allowed, 0)
        if not options:
            return None
        move = min(options, key=lambda m: (m.cost, m.finds))
        moves.append(move)
        got |= move.finds
        drawn |= _bodies(move)
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
