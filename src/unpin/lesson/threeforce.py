"""Three-force bodies: a part on which just three forces act, whose lines must meet in one point or be parallel."""

from __future__ import annotations

from unpin.base.record import record
from unpin.lesson import phrases
from unpin.lesson.nodes import Listing, Text
from unpin.lesson.sheet import Sheet
from unpin.model.action import Action, FreeBody, Structure
from unpin.model.space import cross, force_at
from unpin.model.values import Vector


@record
class Force:
    """One force on the body: where it acts, and its direction where that is known."""

    point: str
    at: Vector
    along: Vector | None


def remark(body: FreeBody, structure: Structure, sheet: Sheet) -> Text | None:
    """What three forces on one part must do; None for any other body, and where all three lines are plain to see."""
    forces = of_body(body)
    if forces is None:
        return None
    said = {"body": phrases.free_body(body), "points": Listing(tuple(phrases.letter_like(f.point) for f in forces))}
    known = [f for f in forces if f.along is not None]
    open_ = [f for f in forces if f.along is None]
    if not open_:
        return None
    if len(known) != 2:
        return Text("insight.three_force", said)
    third = {"third": phrases.letter_like(open_[0].point)}
    first, second = (_line(f) for f in known)
    meeting = cross(first, second)
    if meeting == (0, 0, 0):
        return Text("insight.three_force", said)
    if meeting[2] == 0:
        return Text("insight.three_force_parallel", {**said, **third})
    at = (-meeting[1] / meeting[2], meeting[0] / meeting[2])
    if at == tuple(open_[0].at):
        return Text("insight.three_force", said)
    name = next((n for n, p in structure.problem.coordinates.items() if tuple(p) == at), "")
    centre = phrases.letter_like(name) if name else Text("place", {"x": sheet.length(at[0]), "y": sheet.length(at[1])})
    return Text("insight.three_force_meet", {**said, **third, "centre": centre})


def of_body(body: FreeBody) -> tuple[Force, ...] | None:
    """The three forces on a part, pin components taken together; None where there are more or fewer, a couple, a force
    without a named point, or two at one point."""
    if body.kind != "part" or any(a.kind == "couple" or not a.point for a in body.actions):
        return None
    groups: dict[object, list[Action]] = {}
    for a in body.actions:
        groups.setdefault((a.source, a.point, a.by) if a.unknown else a.id, []).append(a)
    forces = tuple(Force(g[0].point, g[0].at, g[0].direction.vector if len(g) == 1 else None) for g in groups.values())
    return forces if len(forces) == 3 == len({f.point for f in forces}) else None


def _line(force: Force):
    """The wrench of a force of any size along its line."""
    return force_at(force.at, force.along)
