"""Every sum that matters, as integers: for each free body its functionals with the unknowns that each still holds.

A functional matters when it is a complement of a hyperplane of the body's unknown wrenches: through two lines (their
cross product), square to one. Natural sums (along x and y, about each named point of the body) are added although a
sum of the first kind may hold fewer unknowns, because they cost less to write. Unknowns are bits of an integer.
"""

from __future__ import annotations

from collections.abc import Mapping

from unpin.base.record import record
from unpin.exact.digits import Digits
from unpin.exact.lettered import Lettered
from unpin.exact.number import Number, length
from unpin.exact.residue import Residues, letters_in, roots_in
from unpin.model.action import Action, FreeBody, Structure
from unpin.model.directions import X, Y, axis_of, parallel
from unpin.model.equation import Functional
from unpin.model.space import RIGHT, UP, about, along, cross, difference, product, square_to
from unpin.model.values import Direction, Vector
from unpin.route.bodies import GROUP, GROUP_UNKNOWNS, free_sets
from unpin.route.body_price import body_cost, riders
from unpin.route.cost import CostTable
from unpin.statics.isolate import isolate
from unpin.statics.wrenches import load_wrench, unit_wrench

Row = tuple[int, int, int]

FEW_POINTS = 12
"""Bodies with more named points than this are sections of trusses: not every joint of them is tried as a moment centre."""


@record
class Sum:
    """A candidate sum. `mask`: unknowns it holds; `coefficients` by bit index, residues; `cost` in hundredths without the price of
    drawing the body. `how`: what the exact functional is made from."""

    body: int
    mask: int
    cost: int
    how: tuple
    row: Row
    coefficients: tuple[tuple[int, int], ...]


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


class _Field:
    """Wrenches of the structure as residues; numbers without a residue are rounded to a fraction first."""

    def __init__(self, structure: Structure):
        exact: dict[str, tuple[Number, ...]] = {}
        for a in structure.actions:
            exact[a.id] = unit_wrench(a) if a.unknown else load_wrench(a)
        points = structure.problem.coordinates
        numbers = [c for w in exact.values() for c in w] + [c for p in points.values() for c in p]
        self.residues = Residues(roots_in(numbers), letters_in(numbers))
        self.p = self.residues.p
        memo: dict = {}

        def residue(x: Number) -> int:
            key = x if not hasattr(x, "scale") else None
            if key is None:
                from fractions import Fraction

                return self.residues.of(Fraction(round(float(x) * 10**12), 10**12))
            if key not in memo:
                memo[key] = self.residues.of(x)
            return memo[key]

        self.of = residue
        self.sloped = {a.id: a.kind == "force" and not axis_of(a.direction.vector) for a in structure.actions}
        # Rounded numbers do not keep lines through one point: what vanishes is then asked of the digits themselves.
        self.rough = any(isinstance(x, Digits) or isinstance(x, Lettered) and x.loose for x in numbers)
        self.at, self.exact = points, exact
        self.ends: dict[str, set[str]] = {}
        for a in structure.actions:
            self.ends.setdefault(a.unknown, set()).add(a.point)
        self.wrench = {id: tuple(map(residue, w)) for id, w in exact.items()}
        self.point = {name: tuple(map(residue, at)) for name, at in points.items()}
        self._on: dict[Row, int] = {}

    def promising(self, wrenches: Mapping[str, Row], own: set[str]) -> list[str]:
        """Named points off a body at which two of its unknowns drop out of a moment, or all but two."""
        times: dict[int, int] = {}
        ones = twos = enough = 0
        for w in wrenches.values():
            on = self._points_on(w)
            times[on] = times.get(on, 0) + 1
            # A line that passes the same two points as one before is that line again, and meets it nowhere.
            if times[on] == 1 or not on & (on - 1):
                twos |= ones & on
                ones |= on
            if times[on] >= len(wrenches) - 2:
                enough |= on
        every = len(wrenches) < 3 or self.rough
        worth = (1 << len(self.point)) - 1 if every else twos | enough
        return [name for k, name in enumerate(self.point) if worth >> k & 1 and name not in own]

    def _points_on(self, wrench: Row) -> int:
        """The points about which a wrench has no moment, a bit each."""
        if wrench not in self._on:
            x, y, m = wrench
            on = 0
            for k, at in enumerate(self.point.values()):
                if (at[1] * x - at[0] * y + m) % self.p == 0:
                    on |= 1 << k
            self._on[wrench] = on
        return self._on[wrench]


def survey(structure: Structure, costs: CostTable, only: list[frozenset[str]] | None = None) -> Ground:
    """All candidate sums of all free bodies of a structure, or of the sets of bodies in `only`."""
    field = _Field(structure)
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
        sums += _sums_of(number, body, own, field, bits, costs)
    return Ground(structure, tuple(bodies), tuple(body_costs), tuple(sums), ids, rule, field.p)


def _sums_of(number: int, body: FreeBody, own: set[str], field: _Field, bits: dict[str, int], costs: CostTable) -> list[Sum]:
    """The sums of one body; of those that hold the same unknowns the cheapest, ties by order."""
    p = field.p
    totals: dict[str, list[int]] = {}
    arrows: dict[str, list[Action]] = {}
    for a in body.actions:
        if a.unknown:
            w = field.wrench[a.id]
            t = totals.setdefault(a.unknown, [0, 0, 0])
            for k in range(3):
                t[k] = (t[k] + w[k]) % p
            arrows.setdefault(a.unknown, []).append(a)
    sharp = {u: _total(body, u) for u in totals} if field.rough else {}
    wrenches = {u: tuple(t) for u, t in totals.items() if any(t) and (u not in sharp or any(c != 0 for c in sharp[u]))}
    names = list(wrenches)
    lines = [(k, bits[u], wrenches[u]) for k, u in enumerate(names)]
    best: dict[int, Sum] = {}
    # For each unknown those that are known to drop out together with it: what two of them leave is one and the same sum.
    together = [1 << k for k in range(len(names))]

    def add(row: Row, how: tuple) -> None:
        x, y, z = row
        exact = _exact_row(body, how, field.at, sharp) if sharp else None
        mask = absent = 0
        coefficients = []
        for k, bit, w in lines:
            c = (x * w[0] + y * w[1] + z * w[2]) % p
            if c and (exact is None or product(exact, sharp[names[k]]) != 0):
                mask |= 1 << bit
                coefficients.append((bit, c))
            else:
                absent |= 1 << k
        for k in range(len(names)):
            if absent >> k & 1:
                together[k] |= absent
        if not mask:
            return
        # A named point off the body is worth a look where lines meet in it, or where few unknowns are left.
        if len(how) == 3 and how[0] == "point" and len(coefficients) > 2 and not _meeting([w for k, _, w in lines if absent >> k & 1], p):
            return
        there = best.get(mask)
        # The same sum said in another way comes second: what was said first is the plainer.
        if there and _same(there.row, row, p):
            return
        cost = _cost(body, row, how, field, costs, exact)
        if there is None or cost < there.cost:
            best[mask] = Sum(number, mask, cost, how, row, tuple(coefficients))

    flat = body.kind == "pin"
    add((1, 0, 0), ("x",))
    add((0, 1, 0), ("y",))
    if not flat:
        # Of a large body only points at which something unknown acts are worth a moment.
        near = own if len(own) <= FEW_POINTS else own & {a.point for a in body.actions if a.unknown}
        for name, at in field.point.items():
            if name in near:
                add((at[1], -at[0] % p, 1), ("point", name))
        if len(own) <= FEW_POINTS:
            for name in field.promising(wrenches, own):
                at = field.point[name]
                add((at[1], -at[0] % p, 1), ("point", name, "off"))
    for i, u in enumerate(names):
        a = wrenches[u]
        if a[0] or a[1]:
            # Square to one force: the only functional that matters at a pin, and one of rank 2 elsewhere.
            # An unknown of several arrows (a cord round a disc, one load at two places) is square to their sum.
            add((-a[1] % p, a[0], 0), ("across", u) if len(arrows[u]) > 1 else ("square", arrows[u][0].id))
        for j in range(i + 1, len(names) if not flat else 0):
            if not together[i] >> j & 1:
                row = _crossed(a, wrenches[names[j]], p)
                if any(row):
                    add(row, ("meet", u, names[j]))
    return list(best.values())


def _crossed(a: Row, b: Row, p: int) -> Row:
    return ((a[1] * b[2] - a[2] * b[1]) % p, (a[2] * b[0] - a[0] * b[2]) % p, (a[0] * b[1] - a[1] * b[0]) % p)


def _same(a: Row, b: Row, p: int) -> bool:
    """Whether two rows are one but for a factor."""
    return not any(_crossed(a, b, p))


def _meeting(wrenches: list[Row], p: int) -> bool:
    """Whether there are two different lines among some."""
    return any(any(_crossed(wrenches[0], w, p)) for w in wrenches[1:])


def _exact_row(body: FreeBody, how: tuple, at: dict[str, Vector], totals: dict[str, tuple]):
    """The functional itself behind a row of residues."""
    if how[0] in ("x", "y"):
        return along(RIGHT if how[0] == "x" else UP)
    if how[0] == "point":
        return about(at[how[1]])
    if how[0] == "square":
        return along(square_to(next(a for a in body.actions if a.id == how[1]).direction.vector))
    if how[0] == "across":
        return along(square_to(totals[how[1]][:2]))
    return cross(totals[how[1]], totals[how[2]])


def _cost(body: FreeBody, row: Row, how: tuple, field: _Field, costs: CostTable, exact=None) -> int:
    p = field.p
    moment = row[2] != 0
    total = costs.sum
    if how[0] == "point":
        total += costs.off_body if len(how) == 3 else 0
    elif how[0] == "meet" and moment:
        total += costs.unlabelled
    elif how[0] in ("square", "across", "meet"):
        total += costs.slanted if how[0] == "square" else costs.slanted_free
    centre = field.at[how[1]] if how[0] == "point" else None
    for a in body.actions:
        w = field.wrench[a.id]
        if (row[0] * w[0] + row[1] * w[1] + row[2] * w[2]) % p == 0 or (exact and product(exact, field.exact[a.id]) == 0):
            # A bar that ends at the centre is seen to aim at it, and what acts there needs no looking at all.
            if centre and a.unknown and a.at != centre and how[1] not in field.ends[a.unknown]:
                total += costs.passing
            continue
        total += costs.term + (costs.arm if moment and a.kind == "force" else 0)
        total += costs.reused if a.unknown else 0
        if field.sloped[a.id]:
            total += costs.share
            if moment:
                total += costs.term + costs.share + costs.arm
    return total


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
    wrench = {u: _total(body, u) for u in how[1:]}
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


def _total(body: FreeBody, unknown: str):
    total = None
    for a in body.actions:
        if a.unknown == unknown:
            w = unit_wrench(a)
            total = w if total is None else tuple(x + y for x, y in zip(total, w))
    return total


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
    if action.direction.form == "angle" and action.direction.angle is not None:
        # Square to a force whose angle was given: the same angle, from the axis a quarter turn on.
        base, turn = square_to(action.direction.base), square_to(action.direction.turn)
        if vector != square_to(action.direction.vector):
            base, turn = tuple(-c for c in base), tuple(-c for c in turn)
        return Direction(vector, length(vector), "angle", action.direction.angle, base, turn)
    return Direction(vector, length(vector), "square", points=ends)


