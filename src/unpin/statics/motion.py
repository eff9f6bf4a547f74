"""How the structure can move, from the freedoms of its connections alone: the forces of a kind are never asked here.

A connection lets its first part move relative to its second by any mix of its freedoms. Written as constraints: the
relative twist is orthogonal to everything that is orthogonal to all the freedoms.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from unpin.exact.linear import Row, reduce
from unpin.exact.number import LETTERS, Number, rung, to_digits
from unpin.model.action import Structure
from unpin.model.findings import Twist
from unpin.model.kinds import KINDS
from unpin.model.kinds.kind import Push, release_of, twist_of
from unpin.model.problem import Connection
from unpin.model.space import ONE, ZERO, Wrench, cross, product
from unpin.statics.joints import Joint, joints
from unpin.statics.wrenches import unit_wrench

_UNIT: tuple[Wrench, ...] = ((ONE, ZERO, ZERO), (ZERO, ONE, ZERO), (ZERO, ZERO, ONE))


def constraints(freedoms: list[Wrench]) -> list[Wrench]:
    """Rows that vanish on the given twists and on nothing more (0, 1, 2 or 3 of them)."""
    if not freedoms:
        return list(_UNIT)
    if len(freedoms) == 1:
        t = freedoms[0]
        rows = [cross(t, e) for e in _UNIT]
        first = next(r for r in rows if any(c != 0 for c in r))
        second = next(r for r in rows if any(c != 0 for c in cross(first, r)))
        return [first, second]
    if len(freedoms) == 2:
        return [cross(*freedoms)]
    return []


class Motions:
    """The linear system of all motions of one structure. `released`: one push of one joint is let go as well."""

    def __init__(self, structure: Structure):
        self.structure = structure
        self.at = structure.problem.coordinates
        self.bodies = [b.name for b in structure.bodies]
        self.column = {b: 3 * k for k, b in enumerate(self.bodies)}
        self.joints = joints(structure)
        self.sought = [u.id for u in structure.unknowns if u.drives != "connection"]
        # A couple moves on through the turn in which it is drawn.
        turn = structure.problem.house.moments
        self._held = [(id, self._row(j, release_row(push, j.connection, self.at), turn if push == "couple" else 1))
                      for j in self.joints for push, id in zip(j.pushes, j.unknowns)]
        self._held += [(id, self._load_row(id)) for id in self.sought]
        # A pin has no turn of its own.
        self._held += [("", {self.column[b.name] + 2: ONE}) for b in structure.bodies if b.rank == 2]

    def _row(self, joint: Joint, row: Wrench, turn: int) -> Row:
        out: Row = {}
        for body, way in ((joint.first, turn), (joint.second, -turn)):
            if body in self.column:
                for k in range(3):
                    if row[k] != 0:
                        c = self.column[body] + k
                        value = out.get(c, ZERO) + row[k] * way
                        out[c] = value
        return {c: v for c, v in out.items() if v != 0}

    def _load_row(self, unknown: str) -> Row:
        """How far a motion goes along an unknown load, or how much it shortens a cord: what is to be found holds the structure as a
        support would, and a cord keeps its length."""
        out: Row = {}
        for a in self.structure.actions:
            if a.unknown == unknown and a.on in self.column:
                for k, value in enumerate(unit_wrench(a)):
                    if value != 0:
                        c = self.column[a.on] + k
                        out[c] = out.get(c, ZERO) + value
        return {c: v for c, v in out.items() if v != 0}

    def freedoms(self) -> list[Mapping[str, Twist]]:
        """A basis of the motions that the connections leave free; empty when nothing can move."""
        rows = _plain([row for _, row in self._held])
        basis = reduce(rows, 3 * len(self.bodies)).null_space()
        return [self._twists(vector) for vector in basis]

    def release(self, unknowns: Iterable[str]) -> dict[str, Mapping[str, Twist] | None]:
        """For each of the unknowns the motion when it alone is let go and moved through by 1 (first part relative to second),
        or None when that is not possible (the unknown is then not fixed by statics).

        Every row of the system says how far one unknown's own motion goes; all are 0 but the one that is let go, so one
        elimination with a right-hand side for each serves them all.
        """
        width = 3 * len(self.bodies)
        right = {id: width + k for k, id in enumerate(dict.fromkeys(unknowns))}
        rows = [{**row, right[id]: ONE} if id in right else row for id, row in self._held]
        solved = reduce(_plain(rows), width)
        broken = {c for row in solved.contradictions for c in row}
        out: dict[str, Mapping[str, Twist] | None] = {}
        for id, column in right.items():
            vector = {c: row[column] for c, row in solved.pivots.items() if column in row}
            out[id] = None if column in broken else self._twists(vector)
        return out

    def _twists(self, vector: Row) -> dict[str, Twist]:
        out = {}
        for body in self.bodies:
            k = self.column[body]
            twist = tuple(vector.get(k + i, ZERO) for i in range(3))
            if any(c != 0 for c in twist):
                out[body] = twist
        return out


def release_row(push: Push, connection: Connection, at) -> Wrench:
    """The row that reads how far a relative twist goes in the released sense: its product with the release motion is 1,
    and with every freedom 0. Found from the motions alone, by orthogonality."""
    kind = KINDS[connection.kind]
    others = [twist_of(f, connection, at) for f in kind.freedoms]
    others += [release_of(p, connection, at) for p in kind.pushes if p != push]
    motion = release_of(push, connection, at)
    row = constraints(others)[0]
    size = product(row, motion)
    return tuple(c / size for c in row)


def _plain(rows: list[Row]) -> list[Row]:
    """Rationals as they are; as soon as there is a root or an angle, sixty digits throughout."""
    if 1 < max((rung(v) for row in rows for v in row.values()), default=1) < LETTERS:
        return [{c: to_digits(v) for c, v in row.items()} for row in rows]
    return rows


def rate(motion: Mapping[str, Twist], wrench_on: Mapping[str, Wrench]) -> Number:
    """Power of wrenches (body to wrench) in a motion."""
    total: Number = ZERO
    for body, wrench in wrench_on.items():
        for force, way in zip(wrench, motion.get(body, ())):
            # Most of these are nothing: a load at a pin has two components, and a pin that moves up goes nowhere else.
            if force != 0 and way != 0:
                total = total + force * way
    return total
