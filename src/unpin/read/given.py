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
from unpin.model.problem import GROUND, Connection, Cord, GivenAtPin, Problem
from unpin.model.twoforce import two_force
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


@record
class Claim:
    """Something given that only the whole problem can bear out: the force in a member by its name or by two `points`, or a
    force at a pin (`at`) on it."""

    item: Item
    part: str
    points: frozenset[str] = frozenset()
    at: str = ""


@record
class Given:
    """The same connections and cords with the forces that are given in them, forces at pins, and what is still to be borne out."""

    connections: list[Connection]
    cords: list[Cord]
    at_pins: tuple[GivenAtPin, ...]
    claims: tuple[Claim, ...]


def given(page: Skeleton, known: Context, connections: list[Connection], cords: list[Cord]) -> Given:
    """Everything that is given; a member with its force is put among the parts."""
    claims: list[Claim] = []
    found: list[Fixed] = [
        Fixed(c.name, "", "line", known.letters[c.name].value) for c in cords if _is_force(known, c.name)
    ]
    known.used_letters.update(f.name for f in found)
    for item in page.listed("given"):
        fixed = attempt(_given, known, item, connections, cords, claims)
        if fixed is None:
            continue
        if any((f.name, f.point, f.push) == (fixed.name, fixed.point, fixed.push) for f in found):
            item.report.error("read.given_twice", item.place(), item.path)
            continue
        found.append(fixed)
    known.given = {(f.name, f.point): f.push for f in found}
    for f in found:
        if f.push == MEMBER:
            known.parts[f.name] = replace(known.parts[f.name], given=f.size)
    pinned = {(claim.at, claim.part) for claim in claims if claim.at}
    at_pins = tuple(GivenAtPin(f.point, f.name, f.push, f.size) for f in found if (f.point, f.name) in pinned)
    strung = [
        replace(c, given=f.size) if (f := next((f for f in found if f.name == c.name and not f.point), None)) else c for c in cords
    ]
    return Given([_held(c, found) for c in connections], strung, at_pins, tuple(claims))


def borne_out(problem: Problem, claims: Iterable[Claim]) -> None:
    """Remarks where a member whose force is given is no two-force member, or a pin at which one is given holds such members."""
    seen = {p.name: two_force(problem, p) for p in problem.parts} if claims else {}
    for claim in claims:
        report, place, path = claim.item.report, claim.item.place(), claim.item.path
        mine = seen[claim.part]
        if claim.at:
            here = [p.name for p in problem.parts if claim.at in p.points]
            free = [name for name in here if seen[name] is None]
            if mine or len(free) < 2:
                names = tuple(name for name in here if seen[name])
                report.error("read.given_pin_in_line", place, path, point=claim.at, names=names, hint="hint.given_pin_in_line")
        elif mine is None:
            report.error("read.given_no_two_force", place, path, name=claim.part, hint="hint.given_no_two_force")
        elif claim.points and claim.points != set(mine.points):
            report.error("read.given_no_link", place, path, first=min(claim.points), second=max(claim.points), hint="hint.given_link")


def _is_force(known: Context, name: str) -> bool:
    letter = known.letters.get(name)
    return letter is not None and letter.value is not None and letter.value.dimension == FORCE


def _held(c: Connection, found: Iterable[Fixed]) -> Connection:
    mine = tuple((f.push, f.size) for f in found if (f.name, f.point) == (c.name, c.points[0]))
    return replace(c, given=mine) if mine else c


MEMBER = "member"
"""What stands for a push where the force of a whole member is given."""


def _given(known: Context, item: Item, connections: list[Connection], cords: list[Cord], claims: list[Claim]) -> Fixed:
    said: GivenSaid = item.phrase("given")
    cord = next((c for c in cords if len(said.names) == 1 and c.name == said.names[0].text), None)
    if cord is not None:
        known.refer(item, said.names[0], "cords")
        return Fixed(cord.name, "", "line", _axial(known, item, said, pulls_only=True))
    if said.on is not None:
        return _on_part(known, item, said, said.on, connections, claims)
    if member := _member(known, item, said.names, connections):
        size = _axial(known, item, said)
        claims.append(Claim(item, member, frozenset(w.text for w in said.names) if len(said.names) > 1 else frozenset()))
        return Fixed(member, "", MEMBER, size)
    c = _meant(known, item, said.names, connections)
    if c.kind == "link":
        return Fixed(c.name, c.points[0], "line", _axial(known, item, said))
    return _pushed(known, item, said, c)


def _member(known: Context, item: Item, names: tuple[Word, ...], connections: list[Connection]) -> str:
    """The member that is meant by its name or its two ends; "" where something else is."""
    if len(names) == 1:
        (word,) = names
        if word.text not in known.parts or word.text in known.points or any(c.kind == "link" and c.name == word.text for c in connections):
            return ""
        return known.part(item, word).name
    ends = {w.text for w in names}
    if not ends <= known.points.keys() or any(c.kind == "link" and set(c.points) == ends for c in connections):
        return ""
    between = [p.name for p in known.parts.values() if p.kind == "member" and {p.points[0], p.points[-1]} == ends]
    if len(between) != 1:
        return ""
    for word in names:
        known.point(item, word)
    return between[0]


def _on_part(known: Context, item: Item, said: GivenSaid, on: Word, connections: list[Connection], claims: list[Claim]) -> Fixed:
    """A component of what the rest does to a part at a point: of a pin of parts, else of what else joins it there."""
    part, point = known.part(item, on).name, known.point(item, said.names[0]).name
    mine = [c for c in connections if c.kind != "link" and c.points[0] == point and part in c.parts]
    pinned = [c for c in mine if c.kind == "pin" and GROUND not in c.parts]
    if pinned:
        fixed = _pushed(known, item, said, Connection(point, "pin", (point,), (part, "")))
        claims.append(Claim(item, part, at=point))
        return replace(fixed, name=part)
    if not mine:
        raise item.drop("read.given_nothing", said.names[0], point=point, hint="hint.given_what")
    way = 1 if mine[0].parts[0] == part else -1
    fixed = _pushed(known, item, said, mine[0], way)
    return fixed


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


def _pushed(known: Context, item: Item, said: GivenSaid, c: Connection, way_on: int = 1) -> Fixed:
    """The force of a support or contact; positive along its assumed sense on its first part. `way_on`: -1 where it is said of the
    second."""
    kind, point = KINDS[c.kind], c.points[0]
    if said.sense is not None:
        raise item.drop("read.given_way", said.sense, point=point, hint="hint.given_way")
    if said.turn is not None:
        if "couple" not in kind.pushes:
            raise item.drop("read.given_way", said.turn, point=point, hint="hint.given_way")
        size = _size(known, item, said, MOMENT)
        turned = (said.turn.text == "clockwise") != (way_on < 0)
        return Fixed(c.name, point, "couple", replace(size, value=-size.value) if turned else size)
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
        along = sign(own[0] * way.vector[0] + own[1] * way.vector[1]) * way_on
        if kind.push_only and along < 0 and sign(size.value):
            raise item.drop("read.given_pull", said.names[0], point=point)
        return Fixed(c.name, point, push, size if along > 0 else replace(size, value=-size.value))
    raise item.drop("read.given_way", said.names[0], point=point, hint="hint.given_way")
