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
    """A contact that lets go, and the force (N, negative: a pull) that it would have needed had it held. `slack`: it and another
    could push both, but only by a squeeze, and it is taken that there is none."""

    connection: Connection
    needed: Number
    slack: bool = False


def settle(problem: Problem) -> tuple[Problem, tuple[Opened, ...]]:
    """The problem with its pulling contacts taken out, hardest pull first, one at a time until none pulls; and those contacts in
    that order. A contact that opened is not closed again: with smooth contacts and rigid parts the loads decide once.
    Then, where the forces of contacts are not fixed, one between which and another the thing fits without a squeeze (see `_slack`).
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
    slack = _slack(problem)
    if slack:
        opened.append(slack)
        problem = replace(problem, connections=tuple(c for c in problem.connections if c is not slack.connection))
    return problem, tuple(opened)


def _slack(problem: Problem) -> Opened | None:
    """Of two contacts that could only squeeze each other, as a crate between two walls, the one that the loads do not press.

    Without either of them everything is fixed. If the contact left over pushes in the one case and would have to pull in the other,
    nothing but a squeeze of any size could make both push, and none is stated. None where several ways of resting are possible
    (a plank on three edges): there the forces are truly not fixed."""
    if not any(KINDS[c.kind].push_only for c in problem.connections):
        return None
    structure = assemble(problem)
    known = solve(structure) or {}
    loose = [u for u in structure.unknowns if u.push_only and u.id not in known]
    rests: list[Connection] = []
    needed: list[Number] = []
    for unknown in loose if len(loose) > 1 else ():
        point = structure.action(unknown.actions[0]).point
        gone = next(c for c in problem.connections if c.name == unknown.source and c.points[0] == point and KINDS[c.kind].push_only)
        without = assemble(replace(problem, connections=tuple(c for c in problem.connections if c is not gone)))
        values = solve(without)
        if values is None or any(u.id not in values for u in without.unknowns):
            return None
        pulls = [values[u.id] for u in without.unknowns if u.push_only and sign(values[u.id]) < 0]
        if not pulls:
            rests.append(gone)
        needed += pulls
    if len(rests) == 1 and needed:
        return Opened(rests[0], min(needed, key=approx), slack=True)
    return None
