"""The full solve: every sum of every body at once, with nothing seen by inspection. The numbers, not the way."""

from __future__ import annotations

from collections.abc import Mapping

from unpin.exact.linear import Row, Solved, reduce
from unpin.exact.number import LETTERS, Number, rung, to_digits
from unpin.model.action import Structure
from unpin.statics.wrenches import columns, total_load


def equilibrium(structure: Structure) -> tuple[list[Row], list[str], list[str]]:
    """Rows of all sums (columns: unknowns per length in order, then the right-hand side), the name of the body of each row,
    and the unknown ids. A pin gives two rows, a part three.

    The moment row of a part is taken about the origin; roots go to sixty digits, rationals stay exact.
    """
    rows, names, ids = exact_rows(structure)
    if 1 < max((rung(v) for row in rows for v in row.values()), default=1) < LETTERS:
        rows = [{c: to_digits(v) for c, v in row.items()} for row in rows]
    return rows, names, ids


def exact_rows(structure: Structure) -> tuple[list[Row], list[str], list[str]]:
    """The same rows in exact numbers, whatever their rung."""
    ids = [u.id for u in structure.unknowns]
    index = {id: k for k, id in enumerate(ids)}
    by_unknown = columns(structure)
    loads = total_load(structure)
    rows: list[Row] = []
    names: list[str] = []
    for body in structure.bodies:
        for k in range(body.rank):
            row = {index[u]: w[body.name][k] for u, w in by_unknown.items() if body.name in w and w[body.name][k] != 0}
            if loads[body.name][k] != 0:
                row[len(ids)] = -loads[body.name][k]
            rows.append(row)
            names.append(body.name)
    return rows, names, ids


def solve(structure: Structure) -> Mapping[str, Number] | None:
    """Values of all unknowns that statics fixes, in N and N·m (scale times value per length). None if nothing holds."""
    rows, _, ids = equilibrium(structure)
    return fixed_values(structure, reduce(rows, len(ids)), ids)


def fixed_values(structure: Structure, solved: Solved, ids: list[str]) -> dict[str, Number] | None:
    if solved.contradictions:
        return None
    fixed = solved.fixed()
    scale = {u.id: u.scale for u in structure.unknowns}
    return {ids[c]: v * scale[ids[c]] for c, v in sorted(fixed.items())}
