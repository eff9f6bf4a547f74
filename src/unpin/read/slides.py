"""Pins in slots and collars on rods: which part slides, along which straight run of which other, and how it may push there."""

from __future__ import annotations

from collections.abc import Mapping

from unpin.base.tolerance import OFF_ARC
from unpin.base.units import LENGTH
from unpin.exact.number import length, sign
from unpin.model.directions import parallel
from unpin.model.problem import GROUND, Connection, Part
from unpin.model.space import difference
from unpin.model.values import Direction, Vector
from unpin.read.context import Context, Item
from unpin.read.directions import between, direction, is_straight, lies_on, on_run, square_of
from unpin.read.parts import upward
from unpin.read.phrases import SlideSaid, Word
from unpin.read.skeleton import Skeleton, attempt


def sections(page: Skeleton, known: Context) -> list[Connection]:
    """What slides between members, in file order; what slides in or on the ground is left in `known.standing`."""
    out = []
    for section, kind in (("slots", "slot"), ("collars", "collar")):
        for name, key, node in page.named(section):
            item = page.scalar(section, name, node)
            where = Item(name, key, (section, name), page.report)
            point = attempt(known.point, where, Word(name, 0, len(name)))
            said = attempt(item.phrase, kind) if item else None
            if point is None or said is None:
                known.lost.add("pins")
                continue
            known.places[f"{section} > {name}"] = key.place
            found = attempt(slide, known, name, item, said, kind, section)
            if found is None:
                known.lost.add("pins")
            elif GROUND not in found.parts:
                known.owners.setdefault(name, set()).add(found.parts[1])
                out.append(found)
            elif name in known.standing:
                before = known.standing[name].place
                page.report.error("read.held_twice", key.place, (section, name), point=name, line=before.line, related=(before,))
            else:
                known.standing[name] = found
    return out


def slide(known: Context, point: str, item: Item, said: SlideSaid, kind: str, section: str) -> Connection:
    """The connection, its direction square to the slot or rod, turned to point up (right where the run is upright)."""
    slider = known.part(item, said.slider)
    _on(known, item, said.slider, slider, point)
    if said.centre is not None:
        return arc(known, point, item, said, slider, kind, section)
    if said.owner is None:
        owner = GROUND
        if said.along is None:
            raise item.drop("read.slide_which_way", said.slider, hint="hint.slide_which_way")
        run = direction(known, item, said.along, point)
    else:
        part = known.part(item, said.owner)
        owner = part.name
        if part is slider:
            raise item.drop("read.slide_itself", said.owner, name=owner)
        _on(known, item, said.owner, part, point)
        if said.along is not None:
            raise item.drop("read.slide_own_way", said.owner, name=owner)
        run = run_of(known, item, said.owner, part, point)
    if said.far is not None:
        raise item.drop("read.arc_long", said.far, hint="hint.arc_long")
    ends = tuple(known.point(item, word).name for word in said.ends)
    if ends and not _within(known, run, point, ends):
        raise item.drop("read.slide_beyond", said.ends[0], point=point, first=ends[0], second=ends[1])
    name = "sleeve" if said.built_on else kind
    place = known.places.get(f"{section} > {point}")
    return Connection(point, name, (point,), (slider.name, owner), upward(square_of(run)), place=place, ends=ends)


def arc(known: Context, point: str, item: Item, said: SlideSaid, slider: Part, kind: str, section: str) -> Connection:
    """A slot along an arc about a point: the force at the pin is along the line through the arc's centre."""
    if kind != "slot" or said.built_on:
        raise item.drop("read.arc_slot_only", said.centre)
    if said.along is not None:
        raise item.drop("read.arc_own_way", said.centre)
    owner = GROUND
    if said.owner is not None:
        part = known.part(item, said.owner)
        owner = part.name
        if part is slider:
            raise item.drop("read.slide_itself", said.owner, name=owner)
    centre = known.point(item, said.centre).name
    way = between(item, said.centre, (point, centre), known.at[point], known.at[centre])
    ends = tuple(known.point(item, word).name for word in said.ends)
    for word, end in zip(said.ends, ends):
        _on_arc(known, item, word, end, point, centre)
    if said.far is not None and not ends:
        raise item.drop("read.arc_long", said.far, hint="hint.arc_long")
    within = _beyond_ends if said.far is not None else _between_ends
    if ends and not within(known.at, point, centre, ends):
        raise item.drop("read.slide_beyond", said.ends[0], point=point, first=ends[0], second=ends[1])
    place = known.places.get(f"{section} > {point}")
    return Connection(point, kind, (point,), (slider.name, owner), upward(way), place=place, ends=ends, centre=centre)


def _on_arc(known: Context, item: Item, word: Word, end: str, point: str, centre: str) -> None:
    """A fault, with the distance it is off, where an end is not as far from the centre as the pin."""
    mine, other = (float(length(difference(known.at[p], known.at[centre]))) for p in (end, point))
    if abs(mine - other) > OFF_ARC * other:
        unit = known.unit(LENGTH)
        off = f"{abs(mine - other) / float(unit.factor):.3g} {unit.symbol}"
        raise item.drop("read.arc_off", word, name=end, point=point, centre=centre, off=off, hint="hint.arc_off")


def _between_ends(at: Mapping[str, Vector], point: str, centre: str, ends: tuple[str, ...]) -> bool:
    """Whether the pin is on the shorter arc from one end to the other."""
    a, b, p = ((float(at[n][0] - at[centre][0]), float(at[n][1] - at[centre][1])) for n in (*ends, point))
    turn = a[0] * b[1] - a[1] * b[0]
    one, two = a[0] * p[1] - a[1] * p[0], p[0] * b[1] - p[1] * b[0]
    slack = 1e-9 * (p[0] * p[0] + p[1] * p[1])
    along = (a[0] + b[0]) * p[0] + (a[1] + b[1]) * p[1] > -slack
    return along and one * turn >= -slack * abs(turn) and two * turn >= -slack * abs(turn)


def _beyond_ends(at: Mapping[str, Vector], point: str, centre: str, ends: tuple[str, ...]) -> bool:
    """Whether the pin is on the longer arc from one end to the other: not on the shorter one, or at an end of both."""
    return not _between_ends(at, point, centre, ends) or any(at[e] == at[point] for e in ends)


def _on(known: Context, item: Item, word: Word, part: Part, point: str) -> None:
    if point not in part.points and not lies_on(known, part, known.at[point]):
        raise item.drop("read.not_on_member", word, name=part.name, point=point)


def run_of(known: Context, item: Item, word: Word, part: Part, point: str) -> Direction:
    """The straight run of a member through a point; a fault where it bends there, or is not straight at all."""
    at = known.at
    if len(part.points) > 1 and is_straight([at[p] for p in part.points]):
        first, last = part.points[0], part.points[-1]
        return between(item, word, (first, last), at[first], at[last])
    runs = [r for r in zip(part.points, part.points[1:]) if on_run(at[r[0]], at[r[1]], at[point])]
    ways = [difference(at[b], at[a]) for a, b in runs]
    if not runs or not all(parallel(ways[0], w) for w in ways):
        raise item.drop("read.slide_bend", word, name=part.name, point=point, hint="hint.slide_bend")
    return between(item, word, runs[0], at[runs[0][0]], at[runs[0][1]])


def _within(known: Context, run: Direction, point: str, ends: tuple[str, ...]) -> bool:
    """Whether a slot with these ends runs the way it should and has the point in it."""
    first, last = (known.at[e] for e in ends)
    there = difference(last, first)
    return any(sign(c) for c in there) and parallel(run.vector, there) and on_run(first, last, known.at[point])
