"""Sums solved together: which unknowns a set of sums fixes, and which sums to write for a block."""

from __future__ import annotations

from collections.abc import Iterable


def fixed_together(sums: Iterable, known: int, p: int) -> int:
    """Bits of the unknowns that all these sums together fix, when `known` are known. Elimination modulo p."""
    pivots, _ = _reduce(sums, known, p)
    got = 0
    for column, row in pivots.items():
        if len(row) == 1:
            got |= 1 << column
    return got


def sums_for(sums: Iterable, wanted: int, known: int, p: int) -> list:
    """As many independent sums as there are wanted unknowns, the cheapest that hold no other unknown; fewer if there are not
    enough."""
    inside = [s for s in sums if s.mask & ~known & ~wanted == 0 and s.mask & ~known]
    _, used = _reduce(sorted(inside, key=lambda s: (s.cost, s.body)), known, p, stop=wanted.bit_count())
    return used


def _reduce(sums: Iterable, known: int, p: int, stop: int = 10**9):
    pivots: dict[int, dict[int, int]] = {}
    used = []
    for s in sums:
        row = {k: c for k, c in s.coefficients if not known >> k & 1}
        for k in list(row):
            if k in pivots and row.get(k):
                factor = row[k]
                for j, v in pivots[k].items():
                    row[j] = (row.get(j, 0) - factor * v) % p
        row = {k: c for k, c in row.items() if c}
        if not row:
            continue
        used.append(s)
        pivot = min(row)
        inverse = pow(row[pivot], -1, p)
        row = {k: c * inverse % p for k, c in row.items()}
        for other in pivots.values():
            factor = other.get(pivot)
            if factor:
                for j, v in row.items():
                    other[j] = (other.get(j, 0) - factor * v) % p
                for j in [j for j, v in other.items() if not v]:
                    del other[j]
        pivots[pivot] = row
        if len(pivots) >= stop:
            break
    return pivots, used
