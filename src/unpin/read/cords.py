"""Discs, blocks and cords: from phrases to parts with one point, and to the stops of a cord.

The ends of a cord are tied once the loads are known: a cord end that carries a load and nothing else is a knot.
"""

from __future__ import annotations

from dataclasses import replace

from unpin.base.record import record
from unpin.base.units import LENGTH
from unpin.exact.number import ZERO, Number, sign
from unpin.model.problem import GROUND, Cord, Part, Point, Stop
from unpin.model.space import difference
from unpin.model.strands import SIDES, Slack, crosses, other_sides, strands_between, tangent, touch, turned
from unpin.model.values import Vector
from unpin.read.context import Context, Item
from unpin.read.directions import direction
from unpin.read.parts import host
from unpin.read.phrases import BoxSaid, DiscSaid, StopSaid, Word
from unpin.read.quantities import quantity
from unpin.read.report import Dropped

KNOT = 3
"""So many cords that end at one point of nothing else are tied to each other there; fewer end in the ground."""


@record
class Strung:
    """A cord as far as it is known before its ends are tied."""

    item: Item
    said: tuple[StopSaid, ...]
    stops: tuple[Stop, ...]


def disc(known: Context, name: str, item: Item, said: DiscSaid) -> Part:
    """A disc about its centre, with one or two radii."""
    centre = known.point(item, said.centre).name
    radii: list[Number] = []
    for amount in said.radii:
        radius = quantity(known, item, amount, LENGTH).value
        if sign(radius) <= 0 or radius in radii:
            raise item.drop("read.radius", amount)
        radii.append(radius)
    return Part(name, (centre,), "disc", radii=tuple(radii), place=known.places.get(name))


def block(known: Context, name: str, item: Item, said: Word) -> Part:
    """A body of no size at its point."""
    return Part(name, (known.point(item, said).name,), "block", place=known.places.get(name))


def box(known: Context, name: str, item: Item, said: BoxSaid) -> Part:
    """A block with its corners, in order round it."""
    corners = tuple(known.point(item, word).name for word in said.corners)
    where = [known.at[p] for p in corners]
    turns = {sign(_turn(where[n - 2], where[n - 1], where[n])) for n in range(len(where))}
    if len(set(corners)) < len(corners) or len(turns) > 1 or 0 in turns:
        raise item.drop("read.box_corners", said.corners[-1], name=name, hint="hint.box_corners")
    return Part(name, corners, "box", place=known.places.get(name))


def _turn(a: Vector, b: Vector, c: Vector) -> Number:
    (x, y), (u, v) = difference(b, a), difference(c, b)
    return x * v - y * u


def string(known: Context, name: str, item: Item, said: tuple[StopSaid, ...]) -> Strung:
    """The stops of a cord, its ends by point; the ground and shared pins are told apart later."""
    stops, failed = [], False
    for n, one in enumerate(said):
        try:
            stops.append(_stop(known, item, said, n, one))
        except Dropped:
            failed = True
    if failed:
        raise Dropped
    if all(s.direction is not None for s in (stops[0], stops[-1])):
        raise item.drop("read.cord_free", hint="hint.cord_free")
    if stops[0].point and stops[0].point == stops[-1].point and len(stops) == 2:
        raise item.drop("read.no_length", said[1].name, first=stops[0].point, second=stops[1].point)
    loose = tuple(stops)
    for n in (0, len(stops) - 1):
        if said[n].wound:
            stops[n] = _wound(known, item, name, said, loose, n)
    cord = Cord(name, tuple(stops))
    try:
        strands = strands_between(known.at, cord)
    except Slack as slack:
        raise _no_room(known, item, said, cord, slack) from None
    if crosses(known.at, cord, strands):
        item.warn("read.cord_crosses", hint="hint.cord_crosses")
    return Strung(item, said, tuple(stops))


def _stop(known: Context, item: Item, said: tuple[StopSaid, ...], n: int, one: StopSaid) -> Stop:
    if one.direction is not None:
        beside = said[n - 1 if n else n + 1].name
        return Stop(direction=direction(known, item, one.direction, _centre(known, beside.text) if beside else ""))
    if one.side:
        return _round(known, item, one)
    word = one.name
    if word.text in known.points:
        point = known.point(item, word).name
        if one.part is not None:
            host(known, item, point, one.part)
        return Stop(point, one.part.text if one.part else "")
    part = known.parts.get(word.text)
    if part is None:
        raise known.unknown(item, word, "read.unknown_end", [*known.points, *(p.name for p in known.parts.values())], "points", "hint.cord_to")
    if part.kind == "block":
        known.refer_part(item, word)
        return Stop(part.points[0], part.name)
    hint = "hint.cord_winds" if part.kind == "disc" else "hint.cord_to_point"
    raise item.drop("read.cord_end", word, name=part.name, hint=hint)


def _centre(known: Context, name: str) -> str:
    part = known.parts.get(name)
    return part.points[0] if part else name if name in known.points else ""


def _round(known: Context, item: Item, one: StopSaid) -> Stop:
    if one.side != "through" and one.name.text not in known.parts and one.name.text in known.points:
        discs = tuple(p.name for p in known.parts.values() if p.kind == "disc")
        raise item.drop("read.no_disc", one.name, name=one.name.text, known=discs[:12], hint="hint.known" if discs else "hint.disc")
    part = known.part(item, one.name)
    if one.side == "through":
        if part.kind != "block" or one.radius is not None:
            raise item.drop("read.no_ring", one.name, name=part.name, hint="hint.cord_sides" if part.kind == "disc" else "hint.ring")
        return Stop(part.points[0], part.name, "through", ZERO)
    if part.kind != "disc":
        raise item.drop("read.no_disc", one.name, name=part.name, hint="hint.disc")
    if one.radius is not None:
        radius = quantity(known, item, one.radius, LENGTH).value
        if radius not in part.radii:
            raise item.drop("read.other_radius", one.radius, name=part.name)
    elif len(part.radii) > 1:
        raise item.drop("read.which_radius", one.name, name=part.name, hint="hint.which_radius")
    else:
        radius = part.radii[0]
    return Stop(part.points[0], part.name, "" if one.wound else one.side, radius)


def _wound(known: Context, item: Item, name: str, said: tuple[StopSaid, ...], stops: tuple[Stop, ...], n: int) -> Stop:
    """The end of a cord that winds onto a disc: tied to it where the strand touches it, on the side that is named."""
    mine, k = stops[n], 1 if n == 0 else n - 1
    where = known.at
    found: list[tuple[float, Vector]] = []
    for signed in (mine.radius, -mine.radius):
        for there in _radii(item, name, said, stops, k, where):
            spot = _touched(where, stops, n, k, signed, there)
            if spot is not None:
                score = _out(where, mine, said[n], spot)
                if said[k].wound:
                    score += _out(where, stops[k], said[k], _touched(where, stops, k, n, there, signed))
                found.append((score, spot))
    if not found:
        raise _no_gap(item, said[n].name, stops[k], mine)
    found.sort(key=lambda f: f[0])
    spot = found[-1][1]
    if _out(where, mine, said[n], spot) <= 0 or len(found) > 1 and found[-1][0] - found[-2][0] < 1e-9 * float(mine.radius):
        raise _no_side(item, said[n].name, said[n].side, mine.part)
    point = next((p for p in known.points.values() if p.at == spot), None) or _made(known, mine.point, spot)
    known.used.add(point.name)
    return Stop(point.name, mine.part, radius=mine.radius)


def _radii(item: Item, name: str, said: tuple[StopSaid, ...], stops: tuple[Stop, ...], k: int, where) -> tuple[Number, ...]:
    """The radius of the stop beside a wound end, with its sense; both senses of one that is wound as well."""
    if said[k].wound:
        return stops[k].radius, -stops[k].radius
    if stops[k].direction is not None:
        return (ZERO,)
    turn = turned(where, Cord(name, stops), k)
    if turn is None:
        turn = _looped(name, said, stops, k, where)
    if turn is None:
        raise _no_side(item, said[k].name, stops[k].side, stops[k].part)
    return (turn,)


def _looped(name: str, said: tuple[StopSaid, ...], stops: tuple[Stop, ...], k: int, where: dict[str, Vector]) -> Number | None:
    """The same where the cord comes from and goes back to one disc: by the sides of that on which it is wound."""
    rims, moved = dict(where), list(stops)
    for n, (stop, one) in enumerate(zip(stops, said)):
        if one.wound:
            rims[f"{n}"] = tuple(c + stop.radius * side for c, side in zip(where[stop.point], SIDES[one.side]))
            moved[n] = replace(stop, point=f"{n}")
    return turned(rims, Cord(name, tuple(moved)), k)


def _touched(where: dict[str, Vector], stops: tuple[Stop, ...], n: int, k: int, signed: Number, there: Number) -> Vector | None:
    """Where the strand between stops `n` and `k` touches the disc at `n`; None where there is no room for it."""
    mine, other = stops[n], stops[k]
    if other.direction is not None:
        way = other.direction.reversed() if n > k else other.direction
        d: Vector | None = tuple(c / way.length for c in way.vector)
    elif n < k:
        d = tangent(difference(where[other.point], where[mine.point]), signed - there)
    else:
        d = tangent(difference(where[mine.point], where[other.point]), there - signed)
    return None if d is None else touch(where[mine.point], signed, d)


def _out(where: dict[str, Vector], stop: Stop, said: StopSaid, spot: Vector) -> float:
    """How far a place on a disc is out on the side that was named."""
    step, side = difference(spot, where[stop.point]), SIDES[said.side]
    return float(step[0] * side[0] + step[1] * side[1])


def _made(known: Context, centre: str, at: Vector) -> Point:
    """A point that nobody named and nobody is to measure."""
    taken = {*known.points, *known.parts, *known.links, *known.letters, *known.broken, *known.places}
    name = next(n for i in range(1, 1000) if (n := centre + "'" * i) not in taken)
    known.points[name] = Point(name, at, made=GROUND)
    return known.points[name]


def _no_room(known: Context, item: Item, said: tuple[StopSaid, ...], cord: Cord, slack: Slack) -> Dropped:
    stops, word = cord.stops, said[slack.at].name
    if slack.why == "side":
        stop, sides = stops[slack.at], other_sides(known.at, cord, slack.at)
        if sides is None:
            return _no_side(item, word, stop.side, stop.part)
        said_so = (f"{side} of" if side in ("left", "right") else side for side in sides)
        both = dict(zip(("anticlockwise", "clockwise"), said_so))
        return item.drop("read.cord_side", word, side=stop.side, name=stop.part, hint="hint.cord_two_ways", **both)
    return _no_gap(item, said[slack.at + 1].name, stops[slack.at], stops[slack.at + 1])


def _no_side(item: Item, word: Word, side: str, disc: str) -> Dropped:
    return item.drop("read.cord_side", word, side=side, name=disc, hint="hint.cord_sides")


def _no_gap(item: Item, word: Word, one: Stop, two: Stop) -> Dropped:
    return item.drop("read.cord_within", word, first=one.part or one.point, second=two.part or two.point, hint="hint.cord_room")


def knot(known: Context, point: str) -> bool:
    """Whether cords end at a point of nothing else, so that a load there makes a knot of it."""
    held = {c.points[0] for c in known.held} | {end for c in known.links.values() for end in c.points}
    return point in known.cord_ends and not known.carriers(point) and point not in held


def tie_knot(known: Context, point: str) -> Part:
    """The knot at a point: a body of no size that has the point's name."""
    known.parts[point] = Part(point, (point,), "block", place=known.places.get(point))
    known.assume("knot", point=point)
    return known.parts[point]


def tie(known: Context, strung: dict[str, Strung]) -> list[Cord]:
    """Cords with their ends tied to a member, a block, a shared pin or the ground."""
    for point, ends in known.cord_ends.items():
        if len(ends) >= KNOT and knot(known, point):
            tie_knot(known, point)
    out = []
    for name, one in strung.items():
        try:
            stops = tuple(_tied(known, one.item, stop) for stop in one.stops)
        except Dropped:
            continue
        out.append(Cord(name, stops, place=known.places.get(name)))
    if out:
        known.assume("cords_light")
    return out


def _tied(known: Context, item: Item, stop: Stop) -> Stop:
    if stop.part or stop.direction is not None:
        return stop
    if known.carriers(stop.point) or not knot(known, stop.point):
        return replace(stop, part=host(known, item, stop.point))
    known.assume("cord_to_ground", point=stop.point)
    return replace(stop, part=GROUND)
