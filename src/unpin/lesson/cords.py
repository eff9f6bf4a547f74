"""Discs, blocks and cords in words: as they are given, and where a strand of a cord pulls on a body."""

from __future__ import annotations

from unpin.exact.number import sign
from unpin.lesson import phrases
from unpin.lesson.formula import Letter
from unpin.lesson.nodes import Listing, Text
from unpin.lesson.sheet import Sheet, symbol
from unpin.model.action import Action, Structure
from unpin.model.problem import GROUND, Cord, Part, Problem, Stop


def part(one: Part, sheet: Sheet) -> Text:
    """A part as it is given: a member through its points, a disc with its radii, a block at its point."""
    if one.kind == "disc":
        return Text("given.disc", {"name": one.name, "point": phrases.letter_like(one.points[0]), "count": len(one.radii),
                                   "radii": Listing(tuple(sheet.length(r) for r in one.radii))})
    if one.kind == "block":
        return Text("given.block", {"name": one.name, "point": phrases.letter_like(one.points[0])})
    return Text("given.member", {"name": one.name, "points": phrases.points(one.points)})


def given(cord: Cord, sheet: Sheet) -> Text:
    """A cord from one end over its discs to the other."""
    over = tuple(Text(f"cord.{s.side}", {"disc": s.part}) for s in cord.stops if s.side)
    ends = {"letter": letter(cord), "start": _end(cord.stops[0], sheet), "end": _end(cord.stops[-1], sheet)}
    return Text("given.cord_over", {**ends, "over": Listing(over)}) if over else Text("given.cord", ends)


def letter(cord: Cord) -> Letter:
    """The letter of its tension, as on its arrows: T for a cord of that name, T with the name below for a longer one."""
    return Letter(cord.name) if len(cord.name) == 1 else Letter("T", cord.name)


def _end(stop: Stop, sheet: Sheet) -> Text:
    if stop.direction is not None:
        return Text("cord.hand", {"toward": phrases.toward(stop.direction, sheet)})
    if stop.radius is not None:
        return Text("cord.wound", {"disc": stop.part})
    code = "cord.ground" if stop.part == GROUND else "cord.point"
    return Text(code, {"point": phrases.letter_like(stop.point)})


def find(problem: Problem, name: str) -> Cord | None:
    return next((c for c in problem.cords if c.name == name), None)


def is_cord(structure: Structure, unknown: str) -> bool:
    return structure.unknown(unknown).drives == "cord"


def cut(action: Action, sheet: Sheet) -> Text:
    """One strand that was cut, on the body that it pulls."""
    said = {"letter": symbol(action.symbol), "toward": phrases.toward(action.direction, sheet)}
    return Text("cut.cord_at", {**said, "point": phrases.letter_like(action.point)}) if action.point else Text("cut.cord", said)


def meaning(structure: Structure, unknown: str, value) -> Text:
    """What the sign of a tension says."""
    return Text("result.taut" if sign(value) > 0 else "result.slack", {"letter": symbol(structure.unknown(unknown).symbol)})
