"""Which parts, links, supports and loads meet at each point, and whether the pin there is a part of its own.

A pin is a part of its own where at least two members meet *and* a third thing acts there (another member, the ground,
a link, a load); also where no member passes and several links meet. Elsewhere what acts "on the pin" acts on the one
member, and two members that meet alone share one pair of forces.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from unpin.base.record import record
from unpin.model.problem import GROUND, Connection, Load, Problem
from unpin.model.values import Quantity

PIN = "pin "


def pin_name(point: str) -> str:
    """The name of the pin at a point as a body."""
    return PIN + point


def given_at(problem: Problem, point: str, first: str, second: str) -> tuple[tuple[str, Quantity], ...]:
    """What is given of the force between two bodies at a pin, positive on the first."""
    mine = [(g, 1 if g.part == first else -1) for g in problem.at_pins if g.point == point and g.part in (first, second)]
    return tuple((g.push, g.size if way > 0 else replace(g.size, value=-g.size.value)) for g, way in mine)


@record
class Meeting:
    """What meets at one point. `members`: parts pinned there, in file order; `links`: two-force members and links that
    end there; `supports`: supports on the pin itself; `loads`: loads on the pin itself. `own`: the pin is a body;
    `host`: where things said to act on the pin act: the pin's name, a member's name, or "" where there is nothing
    (a link that runs straight into the ground)."""

    point: str
    members: tuple[str, ...]
    links: tuple[str, ...]
    supports: tuple[Connection, ...]
    loads: tuple[Load, ...]
    own: bool
    host: str


def meetings(problem: Problem, two_force: Mapping[str, tuple[str, str]]) -> dict[str, Meeting]:
    """Every point at which something meets, with `two_force` members (name to end points) counted as links."""
    pinned: dict[str, list[str]] = {}
    for c in problem.connections:
        if c.kind == "pin" and GROUND not in c.parts:
            for p in c.parts:
                if p not in pinned.setdefault(c.points[0], []):
                    pinned[c.points[0]].append(p)
    through: dict[str, list[str]] = {}
    for part in problem.parts:
        for name in part.points:
            through.setdefault(name, []).append(part.name)
    links: dict[str, list[str]] = {}
    supports: dict[str, list[Connection]] = {}
    loads: dict[str, list[Load]] = {}
    for name, ends in two_force.items():
        for end in ends:
            links.setdefault(end, []).append(name)
    for c in problem.connections:
        if c.kind == "link":
            for end, host in zip(c.points, c.parts):
                if host == "" or host in two_force:
                    links.setdefault(end, []).append(c.name)
        elif GROUND in c.parts and (c.parts[0] == "" or c.parts[0] in two_force):
            supports.setdefault(c.points[0], []).append(c)
    for cord in problem.cords:
        for stop in cord.stops:
            if stop.point and not stop.side and (stop.part == "" or stop.part in two_force):
                links.setdefault(stop.point, []).append(cord.name)
    for load in problem.loads:
        if load.part == "" and load.kind in ("force", "weight"):
            loads.setdefault(load.point, []).append(load)
    found = {}
    for point in dict.fromkeys((*pinned, *links, *supports, *loads, *(e for ends in two_force.values() for e in ends))):
        present = pinned.get(point) or through.get(point, [])[:1]
        members = tuple(m for m in present if m not in two_force)
        meeting = _decide(point, members, tuple(links.get(point, ())), tuple(supports.get(point, ())), tuple(loads.get(point, ())))
        found[point] = meeting
    return found


def _decide(point: str, members, links, supports, loads) -> Meeting:
    others = len(links) + len(supports) + len(loads)
    if len(members) >= 2:
        own = len(members) > 2 or others > 0
        host = pin_name(point) if own else members[0]
    elif len(members) == 1:
        own, host = False, members[0]
    elif len(links) == 1 and not loads and len(supports) == 1 and supports[0].kind == "pin":
        own, host = False, ""
    else:
        own, host = True, pin_name(point)
    return Meeting(point, members, links, supports, loads, own, host)
