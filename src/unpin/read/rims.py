"""A wheel that touches something: another wheel, a member, the ground. The place and the way of the push follow from the figure."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from unpin.base.tolerance import OFF_ARC
from unpin.base.units import LENGTH
from unpin.exact.number import Number, length, sign
from unpin.model import directions
from unpin.model.problem import GROUND, Connection, Part, Point
from unpin.model.space import difference
from unpin.model.values import Direction, Vector
from unpin.read.context import Context, Item
from unpin.read.directions import between, direction, square_of
from unpin.read.phrases import ContactSaid, Word
from unpin.read.report import Dropped


def is_rim(known: Context, said: ContactSaid) -> bool:
    """Whether a contact is one of the ground or of a disc, whose place need not be named before."""
    sides = (said.pushing, said.pushed)
    return any(w.text == GROUND or (w.text in known.parts and known.parts[w.text].kind == "disc") for w in sides)


def touch(known: Context, name: str, item: Item, said: ContactSaid) -> Connection:
    """The contact, with the pushed part first. `name`: of the point; where it is none yet, the point is made."""
    if said.pushed.text == GROUND:
        return _with_ground(known, name, item, said, said.pushing, turned=True)
    if said.pushing.text == GROUND:
        return _with_ground(known, name, item, said, said.pushed)
    pushed, pushing = known.part(item, said.pushed), known.part(item, said.pushing)
    if pushed is pushing:
        raise item.drop("read.touch_itself", said.pushed, name=pushed.name)
    if pushed.kind == pushing.kind == "disc":
        at, way = _two_discs(known, item, said, pushing, pushed)
    elif pushed.kind == "disc":
        at, way = _disc_on(known, item, said.pushed, pushed, pushing)
    else:
        at, way = _disc_on(known, item, said.pushing, pushing, pushed)
        way = way.reversed()
    if said.direction is not None:
        way = direction(known, item, said.direction, disc_of(pushed, pushing).points[0])
    _point(known, name, item, at)
    return Connection(name, "contact", (name,), (pushed.name, pushing.name), way, place=known.places.get(f"contacts > {name}"))


def disc_of(one: Part, two: Part) -> Part:
    return one if one.kind == "disc" else two


def _with_ground(known: Context, name: str, item: Item, said: ContactSaid, word: Word, turned: bool = False) -> Connection:
    """A smooth floor or wall under the rim of a disc, in a direction; or an edge of the ground at a named point."""
    disc = known.part(item, word)
    if disc.kind != "disc":
        raise item.drop("read.ground_rim", word, name=disc.name, hint="hint.ground_rim")
    centre = disc.points[0]
    place = known.places.get(f"contacts > {name}")
    if said.direction is None:
        if name not in known.points:
            raise item.drop("read.ground_way", word, name=disc.name, hint="hint.ground_way")
        way = between(item, word, (name, centre), known.at[name], known.at[centre])
        _fits(known, item, word, disc, float(length(difference(known.at[centre], known.at[name]))), name)
        known.used.add(name)
        return Connection(name, "knife_edge", (name,), (disc.name, GROUND), way, place=place)
    way = direction(known, item, said.direction, centre)
    way = way.reversed() if turned else way
    at = tuple(c - disc.radii[0] * v / way.length for c, v in zip(known.at[centre], way.vector))
    _point(known, name, item, at)
    return Connection(name, "surface", (name,), (disc.name, GROUND), way, place=place)


def _two_discs(known: Context, item: Item, said: ContactSaid, one: Part, two: Part) -> tuple[Vector, Direction]:
    """From the centre of one to that of the other; they touch where the line leaves the rim of the first."""
    a, b = one.points[0], two.points[0]
    way = between(item, said.pushed, (a, b), known.at[a], known.at[b])
    there = difference(known.at[b], known.at[a])
    apart = length(there)
    gaps = [(abs(float(apart) - float(r) - float(s)), r, s) for r in one.radii for s in two.radii]
    gap, r, s = min(gaps, key=lambda g: g[0])
    if gap > OFF_ARC * float(r + s):
        raise item.drop("read.rim_gap", said.pushed, first=one.name, second=two.name, off=_shown(known, gap), hint="hint.rim_gap")
    share = r / apart
    return tuple(c + share * v for c, v in zip(known.at[a], there)), way


def _disc_on(known: Context, item: Item, word: Word, disc: Part, other: Part) -> tuple[Vector, Direction]:
    """Where the rim touches a straight run of a member, square to it, or one of its ends or corners; the way it is pushed."""
    centre = known.at[disc.points[0]]
    found = []
    for at, way in _places(known, item, word, disc, other):
        distance = float(length(difference(centre, at)))
        found += [(abs(distance - float(r)), at, way) for r in disc.radii]
    gap, at, way = min(found, key=lambda f: f[0])
    if gap > OFF_ARC * float(max(disc.radii)):
        raise item.drop("read.rim_gap", word, first=disc.name, second=other.name, off=_shown(known, gap), hint="hint.rim_gap")
    return at, way


def _places(known: Context, item: Item, word: Word, disc: Part, other: Part) -> Iterator[tuple[Vector, Direction]]:
    """Feet of the perpendiculars from the centre on the runs, then the points themselves."""
    where, centre = known.at, disc.points[0]
    runs = [*pairwise(other.points), *([(other.points[-1], other.points[0])] if other.kind == "box" else [])]
    for a, b in runs:
        run, step = difference(where[b], where[a]), difference(where[centre], where[a])
        square: Number = run[0] * run[0] + run[1] * run[1]
        share = (run[0] * step[0] + run[1] * step[1]) / square
        if 0 < float(share) < 1:
            foot = tuple(c + share * v for c, v in zip(where[a], run))
            normal = square_of(directions.line((a, b), where[a], where[b]))
            towards = difference(where[centre], foot)
            side = sign(normal.vector[0] * towards[0] + normal.vector[1] * towards[1])
            if side:
                yield foot, normal if side > 0 else normal.reversed()
    for p in dict.fromkeys(other.points):
        if where[p] != where[centre]:
            yield where[p], between(item, word, (p, centre), where[p], where[centre])


def _point(known: Context, name: str, item: Item, at: Vector) -> None:
    """The point of that name, made here where there is none; one that is named before must be there."""
    if name in known.points:
        there = known.at[name]
        off = float(length(difference(there, at)))
        size = max((float(r) for p in known.parts.values() for r in p.radii), default=1.0)
        if off > OFF_ARC * size:
            raise item.drop("read.rim_point", name=name, off=_shown(known, off), hint="hint.rim_point")
        known.used.add(name)
        return
    if name in known.places:
        raise item.drop("read.name_taken", name=name, line=known.places[name].line)
    if name in known.broken or name in known.later:
        raise Dropped
    known.points[name] = Point(name, at, made=GROUND, place=known.places.get(f"contacts > {name}"))
    known.used.add(name)


def _fits(known: Context, item: Item, word: Word, disc: Part, distance: float, name: str) -> None:
    gap = min(abs(distance - float(r)) for r in disc.radii)
    if gap > OFF_ARC * distance:
        raise item.drop("read.rim_gap", word, first=disc.name, second=name, off=_shown(known, gap), hint="hint.rim_gap")


def _shown(known: Context, metres: float) -> str:
    unit = known.unit(LENGTH)
    return f"{metres / float(unit.factor):.3g} {unit.symbol}"
