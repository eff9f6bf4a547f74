"""What a person sees without a sum: two-force members, and forces that must be zero."""

from __future__ import annotations

from dataclasses import replace

from unpin.model.action import Insight, Structure, TwoForce
from unpin.model.directions import parallel
from unpin.model.kinds import KINDS
from unpin.model.problem import GROUND, Part, Problem
from unpin.model.space import difference
from unpin.statics.assemble import assemble


def inspect(problem: Problem) -> Structure:
    """The structure with its two-force members turned into unknowns along the line of their pins, and with the zero
    forces that the two rules for a pin show."""
    seen = {part.name: found for part in problem.parts if (found := two_force(problem, part))}
    structure = assemble(problem, seen)
    return replace(structure, zero=zero_forces(structure))


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


def zero_forces(structure: Structure) -> tuple[Insight, ...]:
    """Zero forces by the two rules of a pin, again and again until nothing is left to see.

    Corner: two forces not in line and nothing else: both are zero. Tee: three forces, two of them in line: the third is
    zero (any book on trusses). A zero force counts as not there for the next pin.
    """
    zero: dict[str, None] = {}
    insights: list[Insight] = []
    pins = [b for b in structure.bodies if b.kind == "pin"]
    found = True
    while found:
        found = False
        for pin in pins:
            acting = [a for a in structure.actions_on(pin.name) if a.unknown not in zero and not (a.value and a.value.value == 0)]
            if any(not a.unknown for a in acting):
                continue
            insight = _rule(pin.point, acting)
            if insight and any(f not in zero for f in insight.finds):
                insights.append(insight)
                zero.update(dict.fromkeys(insight.finds))
                found = True
    return tuple(insights)


def _rule(point: str, acting: list) -> Insight | None:
    names = tuple(a.unknown for a in acting)
    if len(acting) == 1:
        return Insight("zero_single", point, names)
    if len(acting) == 2 and not parallel(acting[0].direction.vector, acting[1].direction.vector):
        return Insight("zero_corner", point, names)
    if len(acting) == 3:
        for odd in range(3):
            one, two = (acting[k] for k in range(3) if k != odd)
            lined = parallel(one.direction.vector, two.direction.vector)
            if lined and not parallel(one.direction.vector, acting[odd].direction.vector):
                return Insight("zero_tee", point, (names[odd],), {"in_line": (one.unknown, two.unknown)})
    return None


