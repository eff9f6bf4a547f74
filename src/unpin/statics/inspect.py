"""What a person sees without a sum: two-force members, and forces that must be zero."""

from __future__ import annotations

from dataclasses import replace

from unpin.model.action import Action, Insight, Structure
from unpin.model.directions import parallel
from unpin.model.problem import Problem
from unpin.model.twoforce import two_force
from unpin.statics.assemble import assemble


def inspect(problem: Problem) -> Structure:
    """The structure with its two-force members turned into unknowns along the line of their pins, and with the zero
    forces that the rules for a pin show."""
    seen = {part.name: found for part in problem.parts if (found := two_force(problem, part))}
    structure = assemble(problem, seen)
    return replace(structure, zero=zero_forces(structure))


def zero_forces(structure: Structure) -> tuple[Insight, ...]:
    """Zero forces by the rules of a pin, again and again until nothing is left to see.

    Corner: two forces not in line and nothing else: both are zero. Tee: three forces, two of them in line: the third is
    zero (any book on trusses). A known load counts as one of the forces in line: where everything at a pin but one force is
    along one line, that one is zero (common practice, no source). A zero force counts as not there for the next pin.
    """
    zero: dict[str, None] = {}
    insights: list[Insight] = []
    pins = [b for b in structure.bodies if b.kind == "pin"]
    found = True
    while found:
        found = False
        for pin in pins:
            acting = [a for a in structure.actions_on(pin.name) if a.unknown not in zero and not (a.value and a.value.value == 0)]
            loaded = any(not a.unknown for a in acting)
            insight = _along_load(pin.point, acting) if loaded else _rule(pin.point, acting)
            if insight and any(f not in zero for f in insight.finds):
                insights.append(insight)
                zero.update(dict.fromkeys(insight.finds))
                found = True
    return tuple(insights)


def _rule(point: str, acting: list[Action]) -> Insight | None:
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
                return Insight("zero_tee", point, (names[odd],))
    return None


def _along_load(point: str, acting: list[Action]) -> Insight | None:
    """At a loaded pin the one force that leaves the line of all the others, if there is just one.

    One of those in line is unknown too: else the load would find no answer at the pin, and that is for `sound` to say.
    """
    if any(a.kind != "force" or a.direction is None for a in acting):
        return None
    loads = [a for a in acting if not a.unknown]
    along = loads[0].direction.vector
    held = [a for a in acting if a.unknown]
    odd = [a for a in held if not parallel(along, a.direction.vector)]
    if len(odd) != 1 or len(held) < 2 or any(not parallel(along, a.direction.vector) for a in loads):
        return None
    return Insight("zero_along", point, (odd[0].unknown,))
