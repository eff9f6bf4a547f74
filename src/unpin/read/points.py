"""Points: typed coordinates and constructions, with what each was made from."""

from __future__ import annotations

from fractions import Fraction

from unpin.base.units import LENGTH, NUMBER
from unpin.exact.number import sign, sqrt
from unpin.model.problem import Point
from unpin.model.space import difference, square_to
from unpin.model.values import Vector
from unpin.read.context import Context, Item
from unpin.read.directions import AXES, direction
from unpin.read.phrases import Away, Evenly, Every, Foot, LineSaid, Meet, Mirrored, Moves, OnLine, PointSaid, Reached, Share, Shifted, TowardsSaid
from unpin.read.quantities import quantity
from unpin.read.report import Dropped


def typed(known: Context, name: str, items: list[Item]) -> Point:
    """A point from two coordinates. Both are read before giving up, so that both faults are told."""
    at, failed = [], False
    for item in items:
        try:
            at.append(quantity(known, item, item.phrase("amount"), LENGTH).value)
        except Dropped:
            failed = True
    if failed:
        raise Dropped
    return Point(name, tuple(at), place=known.places.get(name))


def made(known: Context, names: list[str], item: Item) -> list[Point]:
    """Points by construction from points above: one, or a row of several where the phrase makes one."""
    said = item.phrase("point")
    if isinstance(said, (Every, Evenly)):
        places = _row(known, item, said, len(names))
    elif isinstance(said, (Mirrored, Shifted)) and len(said.points) != len(names):
        raise item.drop("read.row_count", said.points[0], made=len(said.points), named=len(names))
    elif isinstance(said, Shifted):
        places = [_construct(known, item, Moves(p, said.moves)) for p in said.points]
    elif isinstance(said, Mirrored):
        line = _line(known, item, said.line)
        places = [_mirror(line, known.point(item, p).at) for p in said.points]
    elif len(names) > 1:
        raise item.drop("read.no_row", hint="hint.row", names=tuple(names[:12]))
    else:
        places = [_construct(known, item, said)]
    return [Point(name, at, made=item.text, place=known.places.get(name)) for name, at in zip(names, places)]


def _row(known: Context, item: Item, said: Every | Evenly, count: int) -> list[Vector]:
    """The places of a row: a step apart, the first one step from the base; or in equal parts between two points."""
    if isinstance(said, Evenly):
        start, stop = known.point(item, said.first), known.point(item, said.second)
        if start.at == stop.at:
            raise item.drop("read.no_line", said.second, first=start.name, second=stop.name)
        step = tuple(d / (count + 1) for d in difference(stop.at, start.at))
    else:
        start = known.point(item, said.base)
        size = quantity(known, item, said.step, LENGTH).value
        if sign(size) <= 0:
            raise item.drop("read.step", said.step)
        way = direction(known, item, said.direction, start.name)
        step = tuple(v * size / way.length for v in way.vector)
    return [tuple(c + n * d for c, d in zip(start.at, step)) for n in range(1, count + 1)]


def _construct(known: Context, item: Item, said: PointSaid) -> Vector:
    if isinstance(said, Moves):
        at = known.point(item, said.base).at
        for word, amount in said.moves:
            step = quantity(known, item, amount, LENGTH).value
            at = tuple(c + a * step for c, a in zip(at, AXES[word.text]))
        return at
    if isinstance(said, Away):
        base = known.point(item, said.base)
        step = quantity(known, item, said.distance, LENGTH).value
        if isinstance(said.direction, TowardsSaid) and said.direction.point.text == base.name:
            raise item.drop("read.no_line", said.direction.point, first=base.name, second=base.name)
        way = direction(known, item, said.direction, base.name)
        return tuple(c + v * step / way.length for c, v in zip(base.at, way.vector))
    if isinstance(said, Share):
        ratio = quantity(known, item, said.ratio, NUMBER).value if said.ratio else Fraction(1, 2)
        first, second = known.point(item, said.first), known.point(item, said.second)
        return tuple(a + ratio * d for a, d in zip(first.at, difference(second.at, first.at)))
    if isinstance(said, Meet):
        return _meet(item, said, _line(known, item, said.first), _line(known, item, said.second))
    if isinstance(said, Reached):
        return _reached(known, item, said)
    if isinstance(said, Foot):
        return _foot(_line(known, item, said.line), known.point(item, said.point).at)
    return _on_line(known, item, said)


def _foot(line: tuple[Vector, Vector], at: Vector) -> Vector:
    """Where the upright from a place stands on a line."""
    start, run = line
    step = difference(at, start)
    share = (run[0] * step[0] + run[1] * step[1]) / (run[0] * run[0] + run[1] * run[1])
    return tuple(c + share * d for c, d in zip(start, run))


def _mirror(line: tuple[Vector, Vector], at: Vector) -> Vector:
    return tuple(2 * f - c for f, c in zip(_foot(line, at), at))


def _reached(known: Context, item: Item, said: Reached) -> Vector:
    """The corner of a triangle with two given corners and the lengths of its other sides. With d between the corners and a, b from them, the
    foot of the corner divides the side at t = (a² - b² + d²) / 2d² of it, and its height is √(a²/d² - t²) of it (cosine rule)."""
    first, second = known.point(item, said.first[1]), known.point(item, said.second[1])
    run = difference(second.at, first.at)
    if all(c == 0 for c in run):
        raise item.drop("read.no_line", said.second[1], first=first.name, second=second.name)
    a, b = (quantity(known, item, amount, LENGTH).value for amount, _ in (said.first, said.second))
    for value, amount in ((a, said.first[0]), (b, said.second[0])):
        if sign(value) <= 0:
            raise item.drop("read.step", amount)
    whole = run[0] * run[0] + run[1] * run[1]
    along = (a * a - b * b + whole) / (2 * whole)
    height = a * a / whole - along * along
    if sign(height) <= 0:
        raise item.drop("read.no_triangle", said.first[0], first=first.name, second=second.name)
    aside, side = square_to(run), AXES[{"above": "up", "below": "down"}.get(said.side.text, said.side.text)]
    turn = sign(aside[0] * side[0] + aside[1] * side[1])
    if turn == 0:
        raise item.drop("read.side_square", said.side, side=said.side.text)
    lift = sqrt(height) * turn
    return tuple(c + along * r + lift * s for c, r, s in zip(first.at, run, aside))


def _line(known: Context, item: Item, said: LineSaid) -> tuple[Vector, Vector]:
    """A point of the line and its direction."""
    first = known.point(item, said.first)
    if said.direction is not None:
        return first.at, direction(known, item, said.direction, first.name).vector
    second = known.point(item, said.second)
    run = difference(second.at, first.at)
    if all(c == 0 for c in run):
        raise item.drop("read.no_line", said.second, first=first.name, second=second.name)
    return first.at, run


def _meet(item: Item, said: Meet, one: tuple[Vector, Vector], other: tuple[Vector, Vector]) -> Vector:
    (p, u), (q, v) = one, other
    turn = u[0] * v[1] - u[1] * v[0]
    if turn == 0:
        raise item.drop("read.parallel", said.first.first)
    gap = difference(q, p)
    share = (gap[0] * v[1] - gap[1] * v[0]) / turn
    return tuple(c + share * d for c, d in zip(p, u))


def _on_line(known: Context, item: Item, said: OnLine) -> Vector:
    start, run = _line(known, item, LineSaid(said.first, said.second))
    index = 0 if said.axis.text == "x" else 1
    wanted = quantity(known, item, said.amount, LENGTH).value
    if sign(run[index]) == 0:
        raise item.drop("read.never_there", said.axis, axis=said.axis.text)
    share = (wanted - start[index]) / run[index]
    return tuple(c + share * d for c, d in zip(start, run))
