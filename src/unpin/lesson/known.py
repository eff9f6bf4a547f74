"""Forces of connections that are given, in words: where they are given, and where they act on a body that is cut loose."""

from __future__ import annotations

from unpin.exact.number import sign
from unpin.lesson import phrases
from unpin.lesson.nodes import Text
from unpin.lesson.sheet import Sheet, symbol
from unpin.model.action import Action, FreeBody, Structure
from unpin.model.problem import GROUND, Problem
from unpin.model.values import Direction
from unpin.statics.answers import sense_of
from unpin.statics.assemble import assemble
from unpin.statics.isolate import lifts


def given(problem: Problem, sheet: Sheet) -> list[Text]:
    """Each given force once, in the order of the file."""
    first: dict[tuple, Action] = {}
    for a in assemble(problem).actions:
        if is_known(a) and (_at_pin(a, problem) or (a.source, a.symbol) not in first):
            first[a.source, a.symbol] = a
    return [_given(a, problem, sheet) for a in first.values()]


def is_known(a: Action) -> bool:
    """Whether an action is the given force of a connection or a cord, neither a load nor to be found."""
    return not a.unknown and a.load is None


def _given(a: Action, problem: Problem, sheet: Sheet) -> Text:
    said = {"letter": symbol(a.symbol), "size": sheet.size(a.value.value, a.value.dimension)}
    if any(c.name == a.source for c in problem.cords):
        return Text("given.known_cord", said)
    if a.sense == "tension":
        sense = Text(f"sense.{sense_of(a, a.value.value)}")
        if any(p.name == a.source for p in problem.parts):
            return Text("given.known_member", {**said, "name": a.source, "sense": sense})
        ends = next(c.points for c in problem.connections if c.kind == "link" and c.name == a.source)
        return Text("given.known_link", {**said, "a": phrases.letter_like(ends[0]), "b": phrases.letter_like(ends[1]), "sense": sense})
    point = {"point": phrases.letter_like(a.point)}
    if sign(a.value.value) == 0:
        return Text("given.known_zero", {**said, **point})
    if a.kind == "couple":
        return Text("given.known_couple", {**said, **point, "sense": Text(f"sense.{sense_of(a, a.value.value)}")})
    on = {"part": phrases.thing(a.on)} if _at_pin(a, problem) else {}
    return Text("given.known_pin" if on else "given.known_force", {**said, **point, **on, "toward": phrases.toward(_way(a), sheet)})


def _at_pin(a: Action, problem: Problem) -> bool:
    """Whether it is what was given of the force on this part at a pin of parts."""
    return a.by != GROUND and any((g.point, g.part) == (a.point, a.on) for g in problem.at_pins)


def cut(body: FreeBody, structure: Structure, sheet: Sheet) -> list[Text]:
    """The given forces that act on a body from outside, and where it just lifts."""
    inside = set(body.parts)
    idle = [a for a in structure.actions if a.on in inside and a.by not in inside and is_known(a) and lifts(a)]
    return [_cut(a, sheet) for a in (*idle, *(a for a in body.actions if is_known(a)))]


def _cut(a: Action, sheet: Sheet) -> Text:
    said = {"letter": symbol(a.symbol), "size": sheet.size(a.value.value, a.value.dimension)}
    if sign(a.value.value) == 0:
        return Text("cut.known_zero", {**said, "point": phrases.letter_like(a.point)})
    if a.kind == "couple":
        return Text("cut.known_couple", {**said, "sense": Text(f"sense.{sense_of(a, a.value.value)}")})
    toward = {"toward": phrases.toward(_way(a), sheet)}
    if not a.point:
        return Text("cut.known_strand", {**said, **toward})
    return Text("cut.known_force", {**said, **toward, "point": phrases.letter_like(a.point)})


def _way(a: Action) -> Direction:
    """The way it really acts."""
    return a.direction if sign(a.value.value) >= 0 else a.direction.reversed()
