"""Every sum that matters, as integers: for each free body its functionals with the unknowns that each still holds.

A functional matters when it is a complement of a hyperplane of the body's unknown wrenches: through two lines (their
cross product), square to one. Natural sums (along x and y, about each named point of the body) are added although a
sum of the first kind may hold fewer unknowns, because they cost less to write. Unknowns are bits of an integer.
"""

from __future__ import annotations

import math
from dataclasses import replace

from unpin.base.record import record
from unpin.exact.number import length
from unpin.model.action import Action, FreeBody, Structure
from unpin.model.directions import X, Y, axis_of, parallel
from unpin.model.equation import Functional
from unpin.model.space import cross, difference, square_to
from unpin.model.values import Direction, Vector
from unpin.route.bodies import GROUP, GROUP_UNKNOWNS, free_sets
from unpin.route.body_price import body_cost, riders
from unpin.route.body_sums import Field, Sum, sums_of, total_of
from unpin.route.cost import CostTable
from unpin.statics.isolate import isolate


@record
class Ground:
    """What the search stands on: free bodies, their candidate sums, unknown ids by bit, and the move set in words."""

    structure: Structure
    bodies: tuple[FreeBody, ...]
    body_costs: tuple[int, ...]
    sums: tuple[Sum, ...]
    ids: tuple[str, ...]
    rule: str
    prime: int

    @property
    def bits(self) -> dict[str, int]:
        return {id: k for k, id in enumerate(self.ids)}

    def mask_of(self, ids) -> int:
        bits = self.bits
        mask = 0
        for id in ids:
            mask |= 1 << bits[id]
        return mask

    def names(self, mask: int) -> tuple[str, ...]:
        return tuple(id for k, id in enumerate(self.ids) if mask >> k & 1)


def survey(structure: Structure, costs: CostTable, only: list[frozenset[str]] | None = None) -> Ground:
    """All candidate sums of all free bodies of a structure, or of the sets of bodies in `only`."""
    field = Field(structure)
    sets, rule = (only, "given") if only else free_sets(structure)
    among = frozenset(sets)
    ids = tuple(u.id for u in structure.unknowns)
    bits = {id: k for k, id in enumerate(ids)}
    bodies, body_costs, sums = [], [], []
    carried = riders(structure)
    passes = {p.name: p.points for p in structure.problem.parts}
    pins = {b.name: b.point for b in structure.bodies if b.kind == "pin"}
    for names in sets:
        body = isolate(structure, names)
        if not body.unknowns:
            continue
        if rule == "sections" and len(names) <= GROUP and body.kind == "group" and len(body.unknowns) > GROUP_UNKNOWNS:
            continue
        number = len(bodies)
        bodies.append(body)
        body_costs.append(body_cost(body, costs, structure, among, carried))
        own = {p for n in body.parts for p in (passes.get(n) or (pins[n],))}
        sums += sums_of(number, body, own, field, bits, costs)
    return Ground(structure, tuple(bodies), tuple(body_costs), tuple(sums), ids, rule, field.p)


def functional_of(ground: Ground, candidate: Sum) -> Functional:
    """The exact functional behind a candidate."""
    body = ground.bodies[candidate.body]
    how = candidate.how
    at = ground.structure.problem.coordinates
    if how[0] in ("x", "y"):
        return Functional("along", direction=X if how[0] == "x" else Y)
    if how[0] == "point":
        return Functional("about", point=how[1], at=at[how[1]])
    if how[0] == "square":
        action = next(a for a in body.actions if a.id == how[1])
        return Functional("along", direction=_square(body, action, at))
    wrench = {u: total_of(body, u) for u in how[1:]}
    row = cross(*wrench.values()) if how[0] == "meet" else (*square_to(wrench[how[1]][:2]), 0)
    if row[2] == 0:
        vector = (row[0], row[1])
        for a in body.actions:
            if a.kind == "force" and a.direction.vector and parallel(square_to(a.direction.vector), vector):
                return Functional("along", direction=_square(body, a, at))
        return Functional("along", direction=Direction(vector, length(vector), "components"))
    centre = (-row[1] / row[2], row[0] / row[2])
    name = next((n for n, p in at.items() if p == centre), "")
    return Functional("about", point=name, at=centre)


def _square(body: FreeBody, action: Action, at: dict[str, Vector]) -> Direction:
    """The axis square to a force, pointing right or up; an axis of the figure where it is one."""
    vector = square_to(action.direction.vector)
    if float(vector[0]) < 0 or (vector[0] == 0 and float(vector[1]) < 0):
        vector = tuple(-c for c in vector)
    axis = axis_of(vector)
    if axis:
        return X if axis == "x" else Y
    ends = action.direction.points
    if action.direction.form == "square" and ends:
        # Square to a force that is itself square to a line: along that line, said the way it runs.
        run = difference(at[ends[1]], at[ends[0]])
        forward = float(run[0] * vector[0] + run[1] * vector[1]) > 0
        return Direction(vector, length(vector), "line", points=ends if forward else ends[::-1])
    for other in body.actions:
        # Another force along this axis has said it already.
        if other.kind == "force" and other.direction.form == "angle" and parallel(other.direction.vector, vector):
            forward = float(other.direction.vector[0] * vector[0] + other.direction.vector[1] * vector[1]) > 0
            return other.direction if forward else other.direction.reversed()
    if action.direction.form == "angle" and ends:
        made = _from_line(action.direction)
        return made if float(made.vector[0] * vector[0] + made.vector[1] * vector[1]) > 0 else made.reversed()
    if action.direction.form == "angle" and action.direction.angle is not None:
        # Square to a force whose angle was given: the same angle, from the axis a quarter turn on.
        base, turn = square_to(action.direction.base), square_to(action.direction.turn)
        if vector != square_to(action.direction.vector):
            base, turn = tuple(-c for c in base), tuple(-c for c in turn)
        return Direction(vector, length(vector), "angle", action.direction.angle, base, turn)
    return Direction(vector, length(vector), "square", points=ends)


def _from_line(d: Direction) -> Direction:
    """Square to a direction that was given by its angle with a line: by the angle that is left to a right one, with the same line."""
    back = tuple(-c for c in d.turn)
    angle, turn = (d.angle - 90, d.turn) if float(d.angle) > 90 else (90 - d.angle, back)
    vector = square_to(d.vector)
    share = math.radians(float(d.angle))
    against = sum(float(v) * (math.sin(share) * float(b) - math.cos(share) * float(t)) for v, b, t in zip(vector, d.base, d.turn)) < 0
    return replace(d, vector=tuple(-c for c in vector) if against else vector, angle=angle, turn=turn)


