"""What has to be known for a thing that is asked: the unknowns of a structure behind a phrase such as "C on arm"."""

from __future__ import annotations

from unpin.model.action import Action, Structure
from unpin.model.problem import GROUND, Asked


def goals(structure: Structure, asked: Asked) -> tuple[str, ...]:
    """Ids of the unknowns of this structure that give the asked value. A component that the sums write separately is
    asked alone; everything else needs all actions of the connection."""
    return tuple(dict.fromkeys(a.unknown for a in actions_behind(structure, asked) if a.unknown))


def actions_behind(structure: Structure, asked: Asked) -> list[Action]:
    """The actions whose sum is the asked force, on the body they are asked on."""
    if asked.kind == "everything":
        return _everything(structure)
    if asked.kind in ("ratio", "letter"):
        return [a for part in asked.over for a in actions_behind(structure, part)]
    if asked.kind == "reaction":
        acting = [a for a in structure.actions if a.by == GROUND and a.point == asked.point]
        acting += _straight_to_ground(structure, asked.point)
    elif asked.kind == "load":
        return [a for a in structure.actions if a.unknown == asked.subject and a.load is not None]
    elif asked.kind == "link":
        acting = [a for a in structure.actions if a.source == asked.subject][:1]
        if not acting:
            # A member that is no two-force member here (or is not seen as one): its force at its first end.
            acting = _on_part(structure, asked.subject, _first_end(structure, asked.subject))
        return acting
    else:
        acting = _on_part(structure, asked.part, asked.point)
    return _component(acting, asked.component)


def _component(acting: list[Action], component: str) -> list[Action]:
    if component in ("x", "y"):
        index = 0 if component == "x" else 1
        return [a for a in acting if a.kind == "force" and a.direction.vector[index] != 0]
    if component == "couple":
        return [a for a in acting if a.kind == "couple"]
    return acting


def _on_part(structure: Structure, part: str, point: str) -> list[Action]:
    """What the rest of the structure does to a part at a point. A two-force member carries its force along its own line."""
    seen = next((t for t in structure.two_force if t.member == part), None)
    if seen:
        return [a for a in structure.actions if a.source == part and a.point == point][:1]
    # A load on a pin that several parts share reaches this part through the pin, also where the pin is no body of its own
    # because the other parts were seen to be two-force members.
    shared = any(c.kind == "pin" and GROUND not in c.parts and c.points[0] == point for c in structure.problem.connections)
    acting = [a for a in structure.actions if a.on == part and a.point == point
              and (a.load is None or (shared and a.load.part == ""))]
    if not acting and part.startswith("pin "):
        acting = [a for a in structure.actions if a.by == part]
    return acting


def _straight_to_ground(structure: Structure, point: str) -> list[Action]:
    """A link that runs into a ground pin of its own: its force is the reaction."""
    return [a for a in structure.actions if a.on == GROUND and a.point == point and a.sense == "tension"]


def _first_end(structure: Structure, part: str) -> str:
    names = [p.name for p in structure.problem.parts]
    return structure.problem.part(part).points[0] if part in names else ""


def _everything(structure: Structure) -> list[Action]:
    by_unknown = {}
    for a in structure.actions:
        if a.unknown and a.unknown not in by_unknown:
            by_unknown[a.unknown] = a
    return list(by_unknown.values())
