"""Given forces: problems in which one is given instead of a load, and the way back, with the load put in and the gift forgotten.

An oracle knows nothing of given forces. So the solved load is put in, what was given is made an ordinary unknown again, and the
oracle must come out with what had been given.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from unpin.base.units import FORCE, MOMENT
from unpin.exact.number import sign
from unpin.model.kinds import KINDS
from unpin.model.problem import GROUND, Connection, Problem
from unpin.model.values import Quantity
from unpin.statics import assemble, solve


def cells() -> set[str]:
    """One for each push of each kind, as a support and between members; of plain pins between members none can be given."""
    return {f"given {push} of {role} {k.name}" for k in KINDS.values() for role, may in (("support", k.support), ("between", k.between)) if may
            for push in k.pushes if (role, k.name) != ("between", "pin")}


def cases(problems: Iterable[Problem]) -> dict[str, Problem]:
    """For each cell the first problem in which such a force, at its solved value, can be given and a load found from it."""
    found: dict[str, Problem] = {}
    for problem in problems:
        structure = assemble(problem)
        values = solve(structure)
        for c in problem.connections:
            role = "between" if c.kind == "link" or GROUND not in c.parts else "support"
            unknowns = [u for u in structure.unknowns if u.source == c.name]
            for push, unknown in zip(KINDS[c.kind].pushes, unknowns):
                cell = f"given {push} of {role} {c.kind}"
                if cell not in found and len(unknowns) == len(KINDS[c.kind].pushes) and sign(values[unknown.id]):
                    size = Quantity(values[unknown.id], MOMENT if push == "couple" else FORCE)
                    made = _turned(problem, c, replace(c, given=((push, size),)))
                    found |= {cell: made} if made else {}
    return found


def _turned(problem: Problem, c: Connection, held: Connection) -> Problem | None:
    """With the first load unknown that the given force fixes."""
    connections = tuple(held if x is c else x for x in problem.connections)
    for k, load in enumerate(problem.loads):
        if load.kind in ("force", "couple"):
            loads = (*problem.loads[:k], replace(load, magnitude=None, name="Z"), *problem.loads[k + 1:])
            made = replace(problem, loads=loads, connections=connections)
            if (solve(assemble(made)) or {}).get("Z") is not None:
                return made
    return None


def released(problem: Problem, values) -> Problem:
    """Unknown loads at their solved size, given forces unknown again."""
    loads = tuple(x if x.magnitude is not None or x.kind == "spread"
                  else replace(x, magnitude=Quantity(values[x.name] * x.multiple, MOMENT if x.kind == "couple" else FORCE), multiple=1)
                  for x in problem.loads)
    return replace(problem, loads=loads, connections=tuple(replace(c, given=()) for c in problem.connections),
                   cords=tuple(replace(c, given=None) for c in problem.cords))
