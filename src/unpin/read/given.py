"""Forces of connections that are given: a tension, a reaction, a support that just lifts. They are known, and something else is not."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction

from unpin.base.record import record
from unpin.base.units import FORCE, MOMENT, Dimension
from unpin.exact.number import sign
from unpin.model.directions import axis_of, parallel
from unpin.model.kinds import KINDS
from unpin.model.kinds.kind import push_direction
from unpin.model.problem import GROUND, Connection, Cord
from unpin.model.values import Quantity
from unpin.read.context import Context, Item
from unpin.read.directions import direction
from unpin.read.phrases import GivenSaid, Word
from unpin.read.quantities import quantity
from unpin.read.skeleton import Skeleton, attempt


@record
class Fixed:
    """One given force: of the connection or cord called `name` at `point` ("" for a cord), its push, and its size along the
    assumed sense of that push."""

    name: str
    point: str
    push: str
    size: Quantity


def given(page: Skeleton, known: Context, connections: list[Connection], cords: list[Cord]) -> tuple[list[Connection], list[Cord]]:
    """The same connections and cords with the forces that are given in them."""
    found: list[Fixed] = [
        Fixed(c.name, "", "line", known.letters[c.name].value) for c in cords if _is_force(known, c.name)
    ]
    known.used_letters.update(f.name for f in found)
    for item in page.listed("given"):
        fixed = attempt(_given, known, item, connections, cords)
        if fixed is None:
            continue
        if any((f.name, f.point, f.push) == (fixed.name, fixed.point, fixed.push) for f in found):
            item.report.error("read.given_twice", item.place(), item.path)
            continue
        found.append(fixed)
    known.given = {(f.name, f.point): f.push for f in found}
    return [_held(c, found) for c in connections], [
        replace(c, given=f.size) if (f := next((f for f in found if f.name == c.name and not f.point), None)) else c for c in cords
    ]


def _is_force(known: Context, name: str) -> bool:
    letter = known.letters.get(name)
    return letter is not None and letter.value is not None and letter.value.dimension == FORCE


def _held(c: Connection, found: Iterable[Fixed]) -> Connection:
    mine = tuple((f.push, f.size) for f in found if (f.name, f.point) == (c.name, c.points[0]))
    return replace(c, given=mine) if mine else c


def _given(known: Context, item: Item, connections: list[Connection], cords: list[Cord]) -> Fixed:
    said: GivenSaid = item.phrase("given")
    cord = next((c for c in cords if len(said.names) == 1 and c.name == said.names[0].text), None)
    if cord is not None:
        known.refer(item, said.names[0], "cords")
        return Fixed(cord.name, "", "line", _axial(known, item, said, pulls_only=True))
    c = _meant(known, item, said.names, connections)
    if c.kind == "link":
        return Fixed(c.name, c.points[0], "line", _axial(known, item, said))
    return _pushed(known, item, said, c)


def _meant(known: Context, item: Item, names: tuple[Word, ...], connections: list[Connection]) -> Connection:
    """The link between two points, or the one connection at a point that is no plain pin of members; a support before others."""
    if len(names) == 2:
        ends = {known.point(item, word).name for word in names}
        for c in connections:
            if c.kind == "link" and set(c.points) == ends:
                return c
        raise item.drop("read.given_no_link", names[0], first=names[0].text, second=names[1].text, hint="hint.given_link")
    (word,) = names
    named = next((c for c in connections if c.kind == "link" and c.name == word.text), None)
    if named is not None:
        known.refer(item, word, "links")
        return named
    if word.text in known.parts and word.text not in known.points:
        raise item.drop("read.given_member", word, name=word.text, hint="hint.given_link")
    point = known.point(item, word).name
    here = [c for c in connections if c.kind != "link" and c.points[0] == point and (c.kind != "pin" or GROUND in c.parts)]
    here += [c for c in connections if c.kind == "link" and c.points[0] == point and GROUND in c.parts and c.direction]
    here.sort(key=lambda c: GROUND not in c.parts)
    if not here:
        raise item.drop("read.given_nothing", word, point=point, hint="hint.given_what")
    return here[0]


def _size(known: Context, item: Item, said: GivenSaid, dimension: Dimension) -> Quantity:
    if said.amount is None:
        unit = known.unit(dimension)
        return Quantity(Fraction(0), dimension, "0", "", unit.symbol)
    found = quantity(known, item, said.amount, dimension)
    if sign(found.value) < 0:
        raise item.drop("read.negative", said.amount, hint="hint.negative")
    return found


def _axial(known: Context, item: Item, said: GivenSaid, pulls_only: bool = False) -> Quantity:
    """Tension positive."""
    size = _size(known, item, said, FORCE)
    if said.direction is not None or said.turn is not None:
        raise item.drop("read.given_axial", said.names[0], hint="hint.given_axial")
    if said.sense is None and not pulls_only and sign(size.value):
        raise item.drop("read.given_axial", said.names[0], hint="hint.given_axial")
    if said.sense is not None and said.sense.text == "compression":
        if pulls_only and sign(size.value):
            raise item.drop("read.given_slack", said.sense)
        return replace(size, value=-size.value)
    return size


def _pushed(known: Context, item: Item, said: GivenSaid, c: Connection) -> Fixed:
    """The force of a support or contact; positive along its assumed sense on its first part."""
    kind, point = KINDS[c.kind], c.points[0]
    if said.sense is not None:
        raise item.drop("read.given_way", said.sense, point=point, hint="hint.given_way")
    if said.turn is not None:
        if "couple" not in kind.pushes:
            raise item.drop("read.given_way", said.turn, point=point, hint="hint.given_way")
        size = _size(known, item, said, MOMENT)
        return Fixed(c.name, point, "couple", replace(size, value=-size.value) if said.turn.text == "clockwise" else size)
    pushes = [p for p in kind.pushes if p != "couple"]
    if said.direction is None:
        if len(pushes) > 1:
            raise item.drop("read.given_many", said.names[0], point=point, hint="hint.given_many")
        return Fixed(c.name, point, pushes[0], _size(known, item, said, FORCE))
    way = direction(known, item, said.direction, point)
    for push in pushes:
        own = push_direction(push, c, known.at).vector
        if not parallel(own, way.vector) or (len(pushes) > 1 and not axis_of(way.vector)):
            continue
        size = _size(known, item, said, FORCE)
        along = sign(own[0] * way.vector[0] + own[1] * way.vector[1])
        if kind.push_only and along < 0 and sign(size.value):
            raise item.drop("read.given_pull", said.names[0], point=point)
        return Fixed(c.name, point, push, size if along > 0 else replace(size, value=-size.value))
    raise item.drop("read.given_way", said.names[0], point=point, hint="hint.given_way")
