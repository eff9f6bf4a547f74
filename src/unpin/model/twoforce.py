"""Which members are two-force members: a fact of how a problem is put together, before anything is solved."""

from __future__ import annotations

from unpin.model.action import TwoForce
from unpin.model.directions import parallel
from unpin.model.kinds import KINDS
from unpin.model.problem import GROUND, Part, Problem
from unpin.model.space import difference


def two_force(problem: Problem, part: Part) -> TwoForce | None:
    """The part as a two-force member, or None.

    Forces act at exactly two points of it and no couple: no load of its own, no end that resists turning, nothing in
    between. A load on the *pin* at its end does not spoil it; a load laid on the member itself does, even at the end,
    because the pin force is then off the line of the pins. A member that slides on another is left to its sums.
    """
    if any(load.part == part.name for load in problem.loads):
        return None
    points: list[str] = []
    for c in problem.connections:
        if c.kind == "link":
            points += [end for end, host in zip(c.points, c.parts) if host == part.name]
        elif part.name in c.parts or (c.parts[0] == "" and _sole(problem, c.points[0]) == part.name):
            if "couple" in KINDS[c.kind].pushes or (c.kind != "pin" and GROUND not in c.parts):
                return None
            points.append(c.points[0])
    for cord in problem.cords:
        points += [s.point for s in cord.stops if s.part == part.name]
    for load in problem.loads:
        if load.part == "" and load.point not in points and _sole(problem, load.point) == part.name:
            return None
    ends = tuple(p for p in part.points if p in points)
    if len(set(points)) != 2 or len(ends) != 2:
        return None
    at = problem.coordinates
    chord = difference(at[ends[1]], at[ends[0]])
    if chord[0] == 0 and chord[1] == 0:
        return None
    bent = any(not parallel(chord, difference(at[p], at[ends[0]])) for p in part.points)
    return TwoForce(part.name, ends, bent, "F_" + "".join(ends))


def _sole(problem: Problem, point: str) -> str:
    """The one part that passes a point, "" if there are several or none."""
    through = [p.name for p in problem.parts if point in p.points]
    return through[0] if len(through) == 1 else ""
