"""The sums of one free body that matter, as residues, each with the unknowns that it still holds and what it costs to write."""

from __future__ import annotations

from collections.abc import Mapping

from unpin.base.record import record
from unpin.exact.digits import Digits
from unpin.exact.lettered import Lettered
from unpin.exact.number import Number
from unpin.exact.residue import Residues, letters_in, roots_in
from unpin.model.action import FreeBody, Structure
from unpin.model.directions import axis_of
from unpin.model.space import RIGHT, UP, about, along, cross, product, square_to
from unpin.model.values import Vector
from unpin.route.cost import CostTable
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


class Field:
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


class _Gathering:
    """The sums of one body while they are found: of those that hold the same unknowns the cheapest, ties by order.

    `wrenches`: of each unknown on the body the sum of its arrows, residues; `sharp`: the same in full where residues are of rounded
    numbers, else empty. `together`: for each unknown a mask of those known to drop out with it: what two of them leave is one sum.
    """

    def __init__(self, number: int, body: FreeBody, field: Field, bits: Mapping[str, int], costs: CostTable):
        self.number, self.body, self.field, self.costs = number, body, field, costs
        unknowns = tuple(dict.fromkeys(a.unknown for a in body.actions if a.unknown))
        self.sharp = {u: total_of(body, u) for u in unknowns} if field.rough else {}
        self.wrenches = {u: w for u in unknowns if any(w := self._residues(u)) and (not self.sharp or any(c != 0 for c in self.sharp[u]))}
        self.names = list(self.wrenches)
        self.lines = [(k, bits[u], self.wrenches[u]) for k, u in enumerate(self.names)]
        self.together = [1 << k for k in range(len(self.names))]
        self.best: dict[int, Sum] = {}

    def _residues(self, unknown: str) -> Row:
        arrows = [self.field.wrench[a.id] for a in self.body.actions if a.unknown == unknown]
        return tuple(sum(components) % self.field.p for components in zip(*arrows))

    def add(self, row: Row, how: tuple) -> None:
        """Weigh one sum: keep it where it is the cheapest of what it holds."""
        exact = _exact_row(self.body, how, self.field.at, self.sharp) if self.sharp else None
        mask, absent, coefficients = self._held(row, exact)
        for k in range(len(self.names)):
            if absent >> k & 1:
                self.together[k] |= absent
        if not mask or self._idle(how, absent, len(coefficients)):
            return
        there = self.best.get(mask)
        # The same sum said in another way comes second: what was said first is the plainer.
        if there and _same(there.row, row, self.field.p):
            return
        cost = _cost(self.body, row, how, self.field, self.costs, exact)
        if there is None or cost < there.cost:
            self.best[mask] = Sum(self.number, mask, cost, how, row, coefficients)

    def _held(self, row: Row, exact: tuple[Number, ...] | None) -> tuple[int, int, tuple[tuple[int, int], ...]]:
        """The unknowns in a sum, those of the body that are not (by their place in it), and the coefficients of the first."""
        x, y, z = row
        p = self.field.p
        mask = absent = 0
        coefficients = []
        for k, bit, w in self.lines:
            c = (x * w[0] + y * w[1] + z * w[2]) % p
            if c and (exact is None or product(exact, self.sharp[self.names[k]]) != 0):
                mask |= 1 << bit
                coefficients.append((bit, c))
            else:
                absent |= 1 << k
        return mask, absent, tuple(coefficients)

    def _idle(self, how: tuple, absent: int, holds: int) -> bool:
        """Whether it is about a named point off the body at which no lines meet, while more than two unknowns are left."""
        if how[0] != "point" or len(how) < 3 or holds <= 2:
            return False
        return not _meeting([w for k, _, w in self.lines if absent >> k & 1], self.field.p)

    def about_points(self, own: set[str]) -> None:
        """About each named point of the body, and about those off it that promise something."""
        few = len(own) <= FEW_POINTS
        # Of a large body only points at which something unknown acts are worth a moment.
        near = own if few else own & {a.point for a in self.body.actions if a.unknown}
        for name in self.field.point:
            if name in near:
                self._about(name, ("point", name))
        for name in self.field.promising(self.wrenches, own) if few else ():
            self._about(name, ("point", name, "off"))

    def _about(self, name: str, how: tuple) -> None:
        at = self.field.point[name]
        self.add((at[1], -at[0] % self.field.p, 1), how)

    def past_lines(self, pairs: bool) -> None:
        """Square to each unknown force, and where `pairs` says so through the meeting point of each two, unless both have dropped out
        of a sum already."""
        p = self.field.p
        for i, u in enumerate(self.names):
            a = self.wrenches[u]
            if a[0] or a[1]:
                # Square to one force: the only functional that matters at a pin, and one of rank 2 elsewhere.
                # An unknown of several arrows (a cord round a disc, one load at two places) is square to their sum.
                arrows = [b.id for b in self.body.actions if b.unknown == u]
                self.add((-a[1] % p, a[0], 0), ("across", u) if len(arrows) > 1 else ("square", arrows[0]))
            for j in range(i + 1, len(self.names) if pairs else 0):
                if not self.together[i] >> j & 1:
                    row = _crossed(a, self.wrenches[self.names[j]], p)
                    if any(row):
                        self.add(row, ("meet", u, self.names[j]))


def sums_of(number: int, body: FreeBody, own: set[str], field: Field, bits: Mapping[str, int], costs: CostTable) -> list[Sum]:
    """The sums of one body; of those that hold the same unknowns the cheapest, ties by order. `own`: the points that its parts pass."""
    found = _Gathering(number, body, field, bits, costs)
    found.add((1, 0, 0), ("x",))
    found.add((0, 1, 0), ("y",))
    if body.kind != "pin":
        found.about_points(own)
    found.past_lines(pairs=body.kind != "pin")
    return list(found.best.values())


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


def _cost(body: FreeBody, row: Row, how: tuple, field: Field, costs: CostTable, exact=None) -> int:
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


def total_of(body: FreeBody, unknown: str) -> tuple[Number, ...]:
    """The wrench of an unknown on a body: of all its arrows together."""
    total = None
    for a in body.actions:
        if a.unknown == unknown:
            w = unit_wrench(a)
            total = w if total is None else tuple(x + y for x, y in zip(total, w))
    return total
