"""The connections of a structure as it was assembled: which body meets which, and the unknowns in between."""

from __future__ import annotations

from dataclasses import replace

from unpin.base.record import record
from unpin.model.action import Structure
from unpin.model.kinds import KINDS
from unpin.model.kinds.kind import Push
from unpin.model.problem import GROUND, Connection
from unpin.statics.pins import given_at


@record
class Joint:
    """One connection between two bodies. `unknowns` stand in the order of `pushes`, positive on `first`; a push whose force is given
    is among neither, since it holds nothing in place."""

    connection: Connection
    first: str
    second: str
    pushes: tuple[Push, ...]
    unknowns: tuple[str, ...]


def joints(structure: Structure) -> list[Joint]:
    """Every connection between bodies, grouped from the unknowns by their source and the two bodies they join."""
    by_name = {c.name: c for c in structure.problem.connections}
    actions = {a.id: a for a in structure.actions}
    groups: dict[tuple[str, str, str, str], list] = {}
    for u in structure.unknowns:
        if u.drives != "connection":
            continue
        first, second = (actions[a] for a in u.actions)
        kind = "link" if u.axial else ("support" if second.on == GROUND else "between")
        groups.setdefault((u.source, first.on, second.on, kind), []).append((u, first, second))
    out = []
    for (source, first, second, what), members in groups.items():
        unknown, a, b = members[0]
        connection = _connection(structure, source, what, a, b, by_name)
        given = dict(connection.given)
        pushes = tuple(p for p in KINDS[connection.kind].pushes if p not in given)
        out.append(Joint(connection, first, second, pushes, tuple(u.id for u, _, _ in members)))
    return out


def _connection(structure, source, what, a, b, by_name) -> Connection:
    if what == "link":
        said = by_name.get(source)
        way = said.direction if said is not None and said.kind == "link" else None
        return Connection(source, "link", (a.point, b.point), (a.on, b.on), way)
    for c in structure.problem.connections:
        if c.name != source or c.points[0] != a.point or c.kind == "link":
            continue
        # A pin and a weld at one point share their name: between two parts, those two must be its parts.
        if GROUND in c.parts if what == "support" else c.parts == (a.on, b.on):
            return replace(c, given=given_at(structure.problem, a.point, a.on, b.on)) if c.kind == "pin" and what == "between" else c
    return Connection(source, "pin", (a.point,), (a.on, b.on), given=given_at(structure.problem, a.point, a.on, b.on))
