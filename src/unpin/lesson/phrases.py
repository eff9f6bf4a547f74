"""Phrases about things of the problem: bodies, directions, senses, loads. Codes and arguments only."""

from __future__ import annotations

from collections.abc import Iterable

from unpin.base.units import BY_SPELLING
from unpin.exact.number import Number, sign
from unpin.lesson.formula import Amount, Formula, Letter, Relation, letter
from unpin.lesson.nodes import Listing, Text
from unpin.lesson.sheet import Sheet, symbol
from unpin.model.action import Action, FreeBody, Structure
from unpin.model.directions import axis_of, small_legs
from unpin.model.problem import GROUND, Load, Problem, Stretch
from unpin.model.values import Direction, Quantity, Vector
from unpin.words import numbers

PIN = "pin "


def thing(name: str) -> Text:
    """A body by its name: a member, a pin, or the ground."""
    if name == GROUND:
        return Text("thing.ground")
    if name.startswith(PIN):
        return Text("thing.pin", {"point": letter_like(name[len(PIN):])})
    return Text("thing.member", {"name": name})


def free_body(body: FreeBody) -> Text:
    if body.kind == "whole":
        return Text("thing.whole")
    if body.kind == "group":
        rigid = [p for p in body.parts if not p.startswith(PIN)]
        pins = [p[len(PIN):] for p in body.parts if p.startswith(PIN)]
        if not rigid:
            return Text("thing.pins_together", {"points": points(pins)})
        if len(rigid) == 1 and pins:
            return Text("thing.member_with_pins" if len(pins) > 1 else "thing.member_with_pin",
                        {"name": rigid[0], "points": points(pins)})
        return Text("thing.group", {"members": Listing(tuple(rigid))})
    return thing(body.parts[0])


def letter_like(point: str) -> Letter:
    """A point's name, set as the figure sets it."""
    return Letter(point)


def points(names: Iterable[str]) -> Listing:
    return Listing(tuple(letter_like(n) for n in names))


def unknowns(structure: Structure, ids: Iterable[str]) -> Listing:
    """The letters of unknowns."""
    return Listing(tuple(symbol(structure.unknown(u).symbol) for u in ids))


def toward(direction: Direction, sheet: Sheet) -> Text:
    """A direction the way its author said it."""
    axis = axis_of(direction.vector)
    if axis:
        return Text(f"toward.{axis_word(direction.vector)}")
    if direction.form == "slope" and direction.legs:
        x, y = direction.legs
        across, up = axis_word((x, 0)), axis_word((0, y))
        return Text("toward.slope", {"across": Text(f"word.{across}"), "a": sheet.whole(abs(x)), "upright": Text(f"word.{up}"),
                                     "b": sheet.whole(abs(y))})
    if direction.form == "angle" and direction.angle is not None and axis_of(direction.base):
        return Text("toward.angle", {"angle": Amount(numbers.angle(direction.angle)), "base": Text(f"word.{axis_word(direction.base)}"),
                                     "turn": Text(f"word.{axis_word(direction.turn)}")})
    if direction.points:
        code = "toward.square" if direction.form == "square" else "toward.line"
        return Text(code, {"a": letter_like(direction.points[0]), "b": letter_like(direction.points[1])})
    x, y = small_legs(direction.vector) or direction.vector
    return Text("toward.components", {"across": Text(f"word.{axis_word((x, 0))}"), "a": sheet.whole(x * sign(x)),
                                      "upright": Text(f"word.{axis_word((0, y))}"), "b": sheet.whole(y * sign(y))})


def axis_word(vector: Vector) -> str:
    x, y = sign_of(vector[0]), sign_of(vector[1])
    if y == 0:
        return "right" if x > 0 else "left"
    return "up" if y > 0 else "down"


def sign_of(x: Number | int) -> int:
    return (x > 0) - (x < 0) if isinstance(x, int) else sign(x)


def sense(code: str, degrees: float | None, sheet: Sheet) -> Text:
    """A true sense in words; a sloped one by its acute angle to the horizontal."""
    if code != "along" or degrees is None:
        return Text(f"sense.{code}")
    upward, acute = degrees > 0, min(abs(degrees), 180 - abs(degrees))
    side = "right" if abs(degrees) < 90 else "left"
    return Text(f"sense.{'up' if upward else 'down'}_{side}", {"angle": angle_amount(acute)})


def angle_amount(degrees: float) -> Amount:
    """A computed angle: one decimal."""
    from dataclasses import replace
    from fractions import Fraction

    tenths = numbers.rounded(Fraction(degrees), numbers.Style(), places=1)
    return Amount(replace(tenths, unit="°", exact=False))


ARROWS = {"right": "→", "left": "←", "up": "↑", "down": "↓", "anticlockwise": "↺", "clockwise": "↻"}


def arrow(code: str, degrees: float | None = None) -> str:
    """The sense as a sign; "" for tension, compression, zero."""
    if code != "along" or degrees is None:
        return ARROWS.get(code, "")
    return ("↗" if abs(degrees) < 90 else "↖") if degrees > 0 else ("↘" if abs(degrees) < 90 else "↙")


def load(item: Load, problem: Problem, sheet: Sheet, on: str = "") -> Text:
    """A load as it is given; `on`: the part that is spoken of anyway and need not be named."""
    where = {"point": letter_like(item.point)}
    if item.kind == "spread":
        return _spread(item, sheet, on)
    size = named(item.name, item.magnitude, sheet)
    if item.kind == "couple":
        turn = "anticlockwise" if sign(item.magnitude.value) >= 0 else "clockwise"
        shown = named(item.name, item.magnitude, sheet, size_only=True)
        return Text("load.couple_here" if item.part == on else "load.couple", {"size": shown, "sense": Text(f"sense.{turn}"), "part": thing(item.part)})
    if item.kind == "weight" and item.mass is not None:
        mass = sheet.given(item.mass, own_unit=True)
        return Text("load.mass", {**where, "mass": mass, "size": sheet.given(item.magnitude),
                                  "g": gravity(problem.gravity, sheet)})
    if item.kind == "weight":
        return Text("load.weight", {**where, "size": size})
    code = "load.force_on" if item.part and item.part != on else "load.force"
    return Text(code, {**where, "size": size, "part": thing(item.part) if item.part else "", "toward": toward(item.direction, sheet)})


def gravity(quantity: Quantity | None, sheet: Sheet) -> Formula:
    from unpin.base.units import ACCELERATION, STANDARD_GRAVITY

    quantity = quantity or Quantity(STANDARD_GRAVITY["si"], ACCELERATION, unit="m/s²")
    return sheet.given(quantity, own_unit=True)


def named(name: str, quantity: Quantity, sheet: Sheet, size_only: bool = False) -> Formula:
    """`P = 300 N` for a load with a letter, `300 N` for one without."""
    amount = sheet.given(quantity, own_unit=True)
    if size_only:
        amount = Amount(amount.printed.size, amount.source)
    label = name or quantity.letter
    return Relation(letter(label), amount) if label else amount


def _spread(item: Load, sheet: Sheet, on: str) -> Text:
    ends = item.stretches
    even = all(s.start_intensity.value == s.end_intensity.value == ends[0].start_intensity.value for s in ends)
    common = {"part": thing(item.part), "start": _end(ends[0], True, sheet), "end": _end(ends[-1], False, sheet),
              "toward": toward(item.direction, sheet), "per": Text(f"per.{ends[0].per}"),
              "where": Text("load.nowhere") if item.part == on else Text("load.on", {"part": thing(item.part)})}
    if even:
        return Text("load.spread_even", {**common, "size": intensity(ends[0].start_intensity, sheet)})
    return Text("load.spread_varying", {**common, "first": intensity(ends[0].start_intensity, sheet),
                                        "last": intensity(ends[-1].end_intensity, sheet)})


def intensity(quantity: Quantity, sheet: Sheet) -> Formula:
    if sign(quantity.value) == 0:
        return sheet.ratio(quantity.value)
    return named("", quantity, sheet)


def _end(stretch: Stretch, start: bool, sheet: Sheet):
    name, at = (stretch.start_name, stretch.start) if start else (stretch.end_name, stretch.end)
    if name:
        return letter_like(name)
    return Text("place", {"x": sheet.length(at[0]), "y": sheet.length(at[1])})


def opposite(action: Action, structure: Structure) -> Action | None:
    """The other half of a pair, where it acts on a body that may be isolated."""
    if not action.pair:
        return None
    other = structure.action(action.pair)
    return None if other.on == GROUND else other


def in_unit(quantity: Quantity) -> str:
    return quantity.unit if quantity.unit in BY_SPELLING else ""
