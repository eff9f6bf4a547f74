"""Taking the structure apart: from a problem to its bodies, every action on them, and the unknown scalars."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from unpin.exact.number import ONE
from unpin.model import directions
from unpin.model.action import Action, Body, Structure, Symbol, TwoForce, Unknown
from unpin.model.kinds import KINDS
from unpin.model.kinds.kind import push_direction
from unpin.model.problem import GROUND, Connection, Part, Problem
from unpin.model.twoforce import two_force as two_force_of
from unpin.model.values import Direction, Quantity
from unpin.statics.cords import cord_actions
from unpin.statics.loads import load_actions, unknown_loads
from unpin.statics.names import lettered
from unpin.statics.pins import Meeting, given_at, meetings


def assemble(problem: Problem, two_force: Mapping[str, TwoForce] | None = None) -> Structure:
    """Bodies, actions and unknowns of a problem. With `two_force` (name of member to what was seen of it) those members
    are no bodies but unknowns along the line of their pins; without it nothing is used that is seen by inspection but a
    member of which the force is given: that says that it has one along the line of its pins.

    Order: bodies as in the file, pins after the parts; unknowns as the connections stand in the file.
    """
    seen = {p.name: t for p in problem.parts if (t := (two_force or {}).get(p.name) or _known_member(problem, p))}
    return _Assembly(problem, seen).structure()


def _known_member(problem: Problem, part: Part) -> TwoForce | None:
    if part.given is None:
        return None
    found = two_force_of(problem, part)
    assert found is not None, part.name  # the reader lets no other through
    return found


class _Assembly:
    """Scratch paper of one assembly; what leaves it is frozen."""

    def __init__(self, problem: Problem, two_force: Mapping[str, TwoForce]):
        self.problem = problem
        self.two_force = two_force
        self.at = problem.coordinates
        self.meetings = meetings(problem, {m: t.points for m, t in two_force.items()})
        self.actions: list[Action] = []
        self.unknowns: list[Unknown] = []
        self.names: set[str] = set()
        self.given_on = {(g.point, g.part, g.push) for g in problem.at_pins}

    def structure(self) -> Structure:
        held = {c.points[0] for c in self.problem.connections if GROUND in c.parts and c.kind != "link"}
        for c in self.problem.connections:
            if c.kind == "link":
                self._link(c.name, c.points, c.parts, c.name, c.direction, dict(c.given).get("line"))
            elif GROUND in c.parts:
                self._support(c)
            elif c.kind == "pin":
                self._pin(self.meetings[c.points[0]])
            else:
                # Where a support stands at the same point its names are the short ones; those in the joint say on whom they act.
                self._between(c, c.parts[0], c.parts[1], on=c.parts[0] if c.points[0] in held else "")
        for name, seen in self.two_force.items():
            self._link(name, seen.points, ("", ""), name, given=self.problem.part(name).given)
        used_by_pins = {c.points[0] for c in self.problem.connections if c.kind == "pin" and GROUND not in c.parts}
        for point, meeting in self.meetings.items():
            if meeting.own and point not in used_by_pins:
                self._pin(meeting)
        loads = load_actions(self.problem, self.meetings)
        self.actions += loads
        self.unknowns += unknown_loads(loads)
        for cord in self.problem.cords:
            unknown, actions = cord_actions(self.problem, cord, self._host)
            self.actions += actions
            self.unknowns += unknown
        return lettered(Structure(self.problem, self._bodies(), tuple(self.unknowns), tuple(self.actions), tuple(self.two_force.values())))

    def _bodies(self) -> tuple[Body, ...]:
        parts = [Body(p.name, "part", 2 if p.kind == "block" else 3) for p in self.problem.parts if p.name not in self.two_force]
        pins = [Body(m.host, "pin", 2, m.point) for m in self.meetings.values() if m.own]
        return tuple(parts + pins)

    def _host(self, point: str, said: str) -> str:
        """The body behind a name: a member that became an unknown hands over to the pin at that point."""
        if said == GROUND or (said and said not in self.two_force):
            return said
        return self.meetings[point].host

    def _support(self, c: Connection) -> None:
        host = self._host(c.points[0], c.parts[0])
        if host:
            self._between(c, host, GROUND)

    def _pin(self, meeting: Meeting) -> None:
        members = meeting.members
        if len(members) == 2 and not meeting.own:
            c = Connection(meeting.point, "pin", (meeting.point,), members, given=given_at(self.problem, meeting.point, *members))
            self._between(c, members[0], members[1])
        elif meeting.own:
            for member in members:
                own = given_at(self.problem, meeting.point, member, meeting.host)
                c = Connection(meeting.point, "pin", (meeting.point,), (member, meeting.host), given=own)
                self._between(c, member, meeting.host, on=member)

    def _between(self, c: Connection, first: str, second: str, on: str = "") -> None:
        """All unknowns of one connection at one point, positive on `first`, opposite on `second`."""
        kind, given = KINDS[c.kind], dict(c.given)
        point = c.points[0]
        for push in kind.pushes:
            direction = push_direction(push, c, self.at)
            symbol = _symbol(c, push, direction, on)
            if (point, second, push) in self.given_on:
                # Drawn as it is given: positive on the part of which it was said.
                direction, given[push] = direction.reversed(), replace(given[push], value=-given[push].value)
            scale = direction.length if direction else ONE
            sense = "push" if kind.push_only else "assumed"
            turn = self.problem.house.moments
            self._pair(symbol, c.name, "couple" if push == "couple" else "force", scale, kind.push_only, False, sense,
                       (first, point, direction, turn), (second, point, direction.reversed() if direction else None, -turn),
                       _known(given.get(push), turn if push == "couple" else 1))

    def _link(self, name: str, points: tuple[str, str], hosts: tuple[str, str], source: str,
              said: Direction | None = None, given: Quantity | None = None) -> None:
        """A force along the line of two points, tension positive: it pulls each end towards the other. `said`: the direction
        from the first to the second in its author's words."""
        a, b = points
        there = said or directions.line((a, b), self.at[a], self.at[b])
        ends = (self._host(a, hosts[0]) or GROUND, self._host(b, hosts[1]) or GROUND)
        symbol = Symbol("F", a + b)
        self._pair(symbol, source, "force", there.length, False, True, "tension",
                   (ends[0], a, there, 1), (ends[1], b, there.reversed(), 1), given)

    def _pair(self, symbol, source, what, scale, push_only, axial, sense, first, second, given: Quantity | None = None) -> None:
        """Action and reaction: the one place that makes the partner. A force that is `given` is no unknown but two known arrows."""
        id = _identity(symbol)
        if id in self.names:
            symbol = Symbol(symbol.base, symbol.sub, source if not symbol.on else symbol.on)
            id = _identity(symbol) + "'" * sum(n.startswith(_identity(symbol)) for n in self.names)
        self.names.add(id)
        # A link's two ends may sit on one and the same body, or on none; the id needs the point as well then.
        names = [f"{id}>{on}" if not axial else f"{id}>{on}@{point}" for on, point, _, _ in (first, second)]
        for (on, point, direction, turn), mine, other in zip((first, second), names, reversed(names)):
            by = second[0] if mine == names[0] else first[0]
            by = source if axial else by
            self.actions.append(Action(mine, what, on, by, point, self.at[point], unknown="" if given is not None else id, symbol=symbol,
                                       direction=direction, turn=turn, value=given, sense=sense, pair=other, source=source))
        if given is None:
            self.unknowns.append(Unknown(id, symbol, what, source, tuple(names), scale, axial, push_only))


def _known(given: Quantity | None, turn: int) -> Quantity | None:
    """A given force along its assumed sense; a couple is given anticlockwise."""
    return given if given is None or turn > 0 else replace(given, value=-given.value)


def _symbol(c: Connection, push: str, direction, on: str) -> Symbol:
    point = c.points[0]
    if push == "couple":
        return Symbol("M", point, on)
    if push in ("right", "up"):
        return Symbol(point, "x" if push == "right" else "y", on)
    axis = directions.axis_of(direction.vector)
    # A sloped reaction has a letter of its own: a bare "C" would be read as the point.
    return Symbol(point, axis, on) if axis else Symbol("R", point, on)


def _identity(symbol: Symbol) -> str:
    return symbol.base + (f"_{symbol.sub}" if symbol.sub else "") + (f":{symbol.on}" if symbol.on else "")
