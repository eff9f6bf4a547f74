"""Sparse elimination over exact numbers: rank, null space, and solving, for systems of a few to a few hundred unknowns.

A row is a dict from column to value without zeros. The pivot is taken in the shortest row and there in the rarest
column, which keeps structures (few entries a row) nearly free of fill-in. Works over any numbers that `+ - * /` and
compare with 0: fractions, or sixty digits; roots are exact too but slow, so callers turn those into digits.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction
from typing import Any

from unpin.base.record import record

Row = dict[int, Any]


@record
class Reduced:
    """A reduced row echelon form: `pivots` maps a pivot column to its row (pivot entry 1, no other pivot columns in it);
    `dependent` counts the rows that vanished."""

    columns: int
    pivots: Mapping[int, Row]
    dependent: int

    @property
    def rank(self) -> int:
        return len(self.pivots)

    @property
    def free(self) -> list[int]:
        return [c for c in range(self.columns) if c not in self.pivots]

    def null_space(self) -> list[Row]:
        """A basis of {x : A x = 0}, one vector for each free column, in column order."""
        basis = []
        for f in self.free:
            vector: Row = {f: Fraction(1)}
            for p, row in self.pivots.items():
                if f in row:
                    vector[p] = -row[f]
            basis.append(vector)
        return basis

    def holds(self, row: Mapping[int, Any]) -> bool:
        """Whether the row is in the row space, that is: row · x is fixed by A x."""
        left = dict(row)
        for column in list(left):
            if column in self.pivots:
                value = left[column]
                for c, v in self.pivots[column].items():
                    _add(left, c, -value * v)
        return all(c >= self.columns for c in left)


def _add(row: Row, column: int, value: Any) -> None:
    if column in row:
        value = row[column] + value
        if value == 0:
            del row[column]
            return
    elif value == 0:
        return
    row[column] = value


def reduce(rows: Iterable[Mapping[int, Any]], columns: int) -> Reduced:
    """Gauss–Jordan elimination of `rows` over `columns` columns (later columns of a row, such as a right-hand side at
    index `columns`, are carried along but never pivoted)."""
    work = [dict(r) for r in rows]
    where: dict[int, set[int]] = {}
    for i, row in enumerate(work):
        for c in row:
            where.setdefault(c, set()).add(i)
    open_rows = set(range(len(work)))
    pivot_of: dict[int, int] = {}
    dependent = 0
    while open_rows:
        # Shortest row first; ties by position, so that the result never depends on hashing.
        i = min(open_rows, key=lambda k: (len(work[k]), k))
        open_rows.discard(i)
        row = work[i]
        candidates = [c for c in row if c < columns]
        if not candidates:
            dependent += 1
            if row:
                pivot_of.setdefault(-1 - i, i)
            continue
        column = min(candidates, key=lambda c: (len(where[c]), c))
        value = row[column]
        if value != 1:
            for c in row:
                row[c] = row[c] / value
        for k in list(where[column]):
            if k == i:
                continue
            other = work[k]
            factor = other[column]
            for c, v in row.items():
                had = c in other
                _add(other, c, -factor * v)
                if c in other and not had:
                    where.setdefault(c, set()).add(k)
                elif had and c not in other:
                    where[c].discard(k)
        pivot_of[column] = i
    pivots = {c: work[i] for c, i in pivot_of.items() if c >= 0}
    broken = [work[i] for c, i in pivot_of.items() if c < 0]
    return Solved(columns, pivots, dependent, tuple(broken))


@record
class Solved(Reduced):
    """Also remembers rows that read 0 = something: `contradictions`."""

    contradictions: tuple[Row, ...] = ()

    def values(self) -> dict[int, Any] | None:
        """x with A x = b for rows given as A with b at index `columns`: pivot columns only, free columns taken as zero.
        None when the rows contradict each other."""
        if self.contradictions:
            return None
        return {c: row.get(self.columns, Fraction(0)) for c, row in self.pivots.items()}

    def fixed(self) -> dict[int, Any]:
        """The unknowns that have one value only, whatever the rest."""
        return {c: row.get(self.columns, Fraction(0)) for c, row in self.pivots.items()
                if all(k == c or k == self.columns for k in row)}
