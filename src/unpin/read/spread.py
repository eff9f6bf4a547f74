"""Spread loads: split over the members that carry them, and at their bends."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from unpin.base.diagnostic import Place
from unpin.base.record import record
from unpin.base.units import LENGTH, PRESSURE, SPREAD, Dimension, Unit
from unpin.exact.lettered import as_drawn
from unpin.exact.number import Number, approx, length, sign
from unpin.model import directions
from unpin.model.problem import Load, Part, Stretch
from unpin.model.space import difference
from unpin.model.values import Quantity
from unpin.read.context import Context, Item
from unpin.read.directions import direction, on_run
from unpin.read.phrases import Amount, LoadSaid
from unpin.read.quantities import quantity
from unpin.read.report import Dropped
from unpin.read.trails import way_through

Run = tuple[str, str]


@record
class _Piece:
    """One straight run of one member under the load, in the direction of the load's path."""

    part: str
    start: str
    end: str


def spread(known: Context, item: Item, said: LoadSaid, place: Place) -> list[Load]:
    """One load a member, each with its stretches. The intensity varies linearly along the whole path."""
    first, last = _sought(said) if said.sought else _intensities(known, item, said)
    clauses = said.clauses
    if clauses.turn or clauses.at:
        raise item.drop("read.spread_at", clauses.turn or clauses.at, hint="hint.spread_at")
    if clauses.direction is None:
        raise item.drop("read.no_way", said.amounts[0], hint="hint.no_way")
    pieces = _path(known, item, said)
    way = direction(known, item, clauses.direction, pieces[0].start)
    per = clauses.per or "member"
    where = known.at
    measures = [_measure(difference(where[p.end], where[p.start]), per) for p in pieces]
    total = sum(measures, Fraction(0))
    if sign(total) == 0:
        raise item.drop("read.no_projection", said.amounts[0])
    loads: dict[str, list[Stretch]] = {}
    done: Number = Fraction(0)
    for piece, run in zip(pieces, measures):
        if sign(run) == 0:
            continue
        start, end = (_between(first, last, share / total) for share in (done, done + run))
        done = done + run
        stretch = Stretch(where[piece.start], where[piece.end], piece.start, piece.end, start, end, per)
        mine = loads.setdefault(piece.part, [])
        if mine and _joins(mine[-1], stretch):
            stretch = replace(
                stretch, start=mine[-1].start, start_name=mine[-1].start_name, start_intensity=mine[-1].start_intensity
            )
            mine.pop()
        mine.append(stretch)
    name = said.sought or (said.label.text if said.label else first.letter if first is last else "")
    return [
        Load("spread", "", part, None if said.sought else first, direction=way, stretches=tuple(stretches), name=name, written=item.text, place=place)
        for part, stretches in loads.items()
    ]


def _sought(said: LoadSaid) -> tuple[Quantity, Quantity]:
    """Intensities that count the letter that is to be found."""
    first, last = (Quantity(times, SPREAD, "", said.sought, said.sought) for times in (said.multiple, said.last))
    return first, last


def _intensities(known: Context, item: Item, said: LoadSaid) -> tuple[Quantity, Quantity]:
    over = said.clauses.over
    kind = PRESSURE if over else SPREAD
    first = quantity(known, item, said.amounts[0], kind) if len(said.amounts) == 1 else None
    first, last = (first, first) if first else _ends(known, item, said, kind)
    if over:
        first, last = _over(known, item, over, first, last)
    if first.value == 0 and last.value == 0:
        raise item.drop("read.zero", said.amounts[0])
    if len(said.amounts) == 1 and sign(first.value) < 0:
        raise item.drop("read.negative", said.amounts[0], hint="hint.negative")
    return first, last


def _ends(known: Context, item: Item, said: LoadSaid, kind: Dimension) -> tuple[Quantity, Quantity]:
    """`0 to 3 kN/m`: a bare number takes the unit of the other end."""
    from unpin.base.units import BY_SPELLING, NUMBER
    from unpin.read.quantities import measure

    bare = [measure(known, item, a)[1] == NUMBER for a in said.amounts]
    # No file has a unit of pressure of its own, so a bare end can only take the other's.
    free = kind == PRESSURE and bare[0] != bare[1]
    found = [Quantity(Fraction(0), kind) if free and b else quantity(known, item, a, kind) for a, b in zip(said.amounts, bare)]
    if bare[0] != bare[1]:
        here, there = (0, 1) if bare[0] else (1, 0)
        unit = BY_SPELLING.get(found[there].unit)
        if unit is not None:
            value = measure(known, item, said.amounts[here])[0] * unit.factor
            found[here] = replace(found[here], value=value, unit=unit.symbol)
    return found[0], found[1]


def _over(known: Context, item: Item, width: Amount, *ends: Quantity) -> list[Quantity]:
    """Intensities of a pressure on a strip: each times the width, in the force per length of the file."""
    wide = quantity(known, item, width, LENGTH)
    if sign(wide.value) <= 0:
        raise item.drop("read.width", width)
    unit = _intensity_unit(known, ends[0])
    made = {id(q): Quantity(q.value * wide.value, SPREAD, unit=unit.symbol) for q in ends}
    return [made[id(q)] for q in ends]


def _intensity_unit(known: Context, pressure: Quantity) -> Unit:
    """kN/m for kN/m², lb/ft for lb/ft²: the unit of the pressure times its length; else that of the file."""
    from unpin.base.units import BY_SPELLING

    return BY_SPELLING.get(pressure.unit.removesuffix("²"), known.unit(SPREAD))


def _between(first: Quantity, last: Quantity, share: Number) -> Quantity:
    if share == 0 or first.value == last.value:
        return first
    if share == 1:
        return last
    return Quantity(first.value + (last.value - first.value) * share, SPREAD, "", first.letter if first.sought else "", first.unit)


def _measure(run: tuple[Number, ...], per: str) -> Number:
    if per == "member":
        return length(run)
    c = run[0] if per == "x" else run[1]
    as_drawn(c)
    return -c if sign(c) < 0 else c


def _joins(before: Stretch, after: Stretch) -> bool:
    """Whether two stretches of a member are one: they go on in line. A pin between them cuts no rigid member."""
    first, second = difference(before.end, before.start), difference(after.end, after.start)
    ahead = sign(first[0] * second[0] + first[1] * second[1]) > 0
    return before.end_name == after.start_name and directions.parallel(first, second) and ahead


def _path(known: Context, item: Item, said: LoadSaid) -> list[_Piece]:
    clauses = said.clauses
    parts = [known.part(item, word) for word in clauses.on]
    if clauses.span is None:
        if not parts:
            raise item.drop("read.spread_where", said.amounts[0], hint="hint.spread_where")
        if len(parts) > 1 and len(said.amounts) > 1:
            raise item.drop("read.spread_from", clauses.on[1], hint="hint.spread_where")
        return [_Piece(part.name, a, b) for part in parts for a, b in zip(part.points, part.points[1:])]
    first, last = (known.point(item, word).name for word in clauses.span)
    if known.at[first] == known.at[last]:
        raise item.drop("read.no_length", clauses.span[1], first=first, second=last)
    if len(parts) == 1 and parts[0].kind == "box":
        return [_Piece(parts[0].name, *run) for run in _round(known, item, said, parts[0], first, last)]
    if len(parts) == 1:
        return _along(item, said, parts[0], first, last)
    return _across(known, item, said, parts or list(known.parts.values()), first, last)


def _along(item: Item, said: LoadSaid, part: Part, first: str, last: str) -> list[_Piece]:
    """The part's own chain from one point to another, whichever way it runs."""
    for word, point in zip(said.clauses.span, (first, last)):
        if point not in part.points:
            raise item.drop("read.not_on_member", word, name=part.name, point=point)
    chain = list(part.points)
    spots = [(abs(i - j), i, j) for i, a in enumerate(chain) for j, b in enumerate(chain) if a == first and b == last]
    _, i, j = min(spots)
    names = chain[i : j + 1] if i < j else chain[j : i + 1][::-1]
    return [_Piece(part.name, a, b) for a, b in zip(names, names[1:])]


def _round(known: Context, item: Item, said: LoadSaid, box: Part, first: str, last: str) -> list[Run]:
    """The runs along the faces of a block from one point of its outline to another, the way with fewer corners."""
    where, ring = known.at, []
    for a, b in zip(box.points, (*box.points[1:], box.points[0])):
        ring.append(a)
        on = [p for p in dict.fromkeys((first, last)) if p not in box.points and on_run(where[a], where[b], where[p])]
        ring += sorted(on, key=lambda p: approx(length(difference(where[p], where[a]))))
    for word, point in zip(said.clauses.span, (first, last)):
        if point not in ring:
            raise item.drop("read.not_on_member", word, name=box.name, point=point)
    i, j = ring.index(first), ring.index(last)
    ahead = [ring[(i + n) % len(ring)] for n in range((j - i) % len(ring) + 1)]
    back = [ring[(i - n) % len(ring)] for n in range((i - j) % len(ring) + 1)]
    names = ahead if len(ahead) <= len(back) else back
    return list(zip(names, names[1:]))


def _across(known: Context, item: Item, said: LoadSaid, parts: list[Part], first: str, last: str) -> list[_Piece]:
    """Runs of several members that together cover the straight line between two points, once."""
    where = known.at
    start, line = where[first], difference(where[last], where[first])
    size = line[0] * line[0] + line[1] * line[1]
    found = []
    for part in parts:
        seen = set()
        for a, b in zip(part.points, part.points[1:]):
            steps = [difference(where[p], start) for p in (a, b)]
            if all(directions.parallel(line, step) for step in steps) and frozenset((a, b)) not in seen:
                seen.add(frozenset((a, b)))
                shares = [(line[0] * s[0] + line[1] * s[1]) / size for s in steps]
                if sign(shares[1] - shares[0]) < 0:
                    (a, b), shares = (b, a), shares[::-1]
                if sign(shares[0]) >= 0 and sign(1 - shares[1]) >= 0:
                    found.append((shares[0], shares[1], _Piece(part.name, a, b)))
    found.sort(key=lambda f: float(f[0]))
    reached: Number = Fraction(0)
    for low, high, _ in found:
        if low != reached:
            if sign(low - reached) > 0:
                break
            raise item.drop("read.spread_twice", said.clauses.span[0], first=first, second=last, hint="hint.spread_on")
        reached = high
    if reached != 1:
        if known.lost or known.broken:
            raise Dropped
        if bent := way_through(parts, first, last):
            return [_Piece(*piece) for piece in bent]
        raise item.drop("read.spread_gap", said.clauses.span[1], first=first, second=last, hint="hint.spread_on")
    return [piece for _, _, piece in found]
