"""Smooth contacts that would have to pull: they open, and the structure is looked at again without them."""

from __future__ import annotations

from dataclasses import replace

from unpin.base.record import record
from unpin.exact.number import Number, approx, sign
from unpin.model.kinds import KINDS
from unpin.model.problem import Connection, Problem
from unpin.statics.assemble import assemble
from unpin.statics.solve import solve


@record
class Opened:
    """A contact that lets go, and the force (N, negative: a pull) that it would have needed had it held."""

    connection: Connection
    needed: Number


def settle(problem: Problem) -> tuple[Problem, tuple[Opened, ...]]:
    """The problem with its pulling contacts taken out, hardest pull first, one at a time until none pulls; and those contacts in
    that order. A contact that opened is not closed again: with smooth contacts and rigid parts the loads decide once.
    """
    opened: list[Opened] = []
    pushing = [c for c in problem.connections if KINDS[c.kind].push_only]
    for _ in pushing:
        structure = assemble(problem)
        values = solve(structure) or {}
        pulls = [(approx(values[u.id]), u) for u in structure.unknowns if u.push_only and u.id in values and sign(values[u.id]) < 0]
        if not pulls:
            break
        _, worst = min(pulls, key=lambda pull: pull[0])
        point = structure.action(worst.actions[0]).point
        gone = next(c for c in problem.connections if c.name == worst.source and c.points[0] == point and KINDS[c.kind].push_only)
        opened.append(Opened(gone, values[worst.id]))
        problem = replace(problem, connections=tuple(c for c in problem.connections if c is not gone))
    return problem, tuple(opened)
