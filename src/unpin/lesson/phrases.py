"""Phrases about things of the problem: bodies, directions, senses. Codes and arguments only."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction

from unpin.exact.expression import Apply, Literally, Name
from unpin.exact.number import Number, approx, sign
from unpin.lesson.formula import Amount, Letter, letter
from unpin.lesson.nodes import Listing, Text
from unpin.lesson.sheet import Sheet, symbol
from unpin.model.action import Action, FreeBody, Structure
from unpin.model.directions import axis_of, from_slope, level_angle, small_legs, steepness
from unpin.model.problem import GROUND
from unpin.model.values import Direction, Vector
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
            return Text("thing.with_pins", {"body": thing(rigid[0]), "points": points(pins), "count": len(pins)})
        return Text("thing.group", {"members": Listing(tuple(rigid))})
    return thing(body.parts[0])


def letter_like(point: str) -> Letter:
    """A point's name, set as the figure sets it."""
    return letter(point)


def points(names: Iterable[str]) -> Listing:
    return Listing(tuple(letter_like(n) for n in names))


def bodies(several: Iterable[FreeBody]) -> Listing:
    return Listing(tuple(free_body(b) for b in several))


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
        return Text("toward.slope", {"across": Text(f"toward.{across}"), "a": sheet.whole(abs(x)), "upright": Text(f"word.{up}"),
                                     "b": sheet.whole(abs(y))})
    if direction.form == "angle" and direction.angle is not None and direction.points:
        (bx, by), (tx, ty) = direction.base, direction.turn
        a, b = (letter_like(n) for n in direction.points)
        way = "anticlockwise" if sign_of(bx * ty - by * tx) > 0 else "clockwise"
        return Text(f"toward.angle_{way}", {"angle": Amount(numbers.angle(direction.angle, sheet.style)), "a": a, "b": b})
    if direction.form == "angle" and direction.angle is not None and axis_of(direction.base):
        if 0 < approx(direction.angle) < 90:
            return _acute(direction, sheet)
        return Text("toward.angle", {"angle": Amount(numbers.angle(direction.angle, sheet.style)), "base": Text(f"word.{axis_word(direction.base)}"),
                                     "turn": Text(f"word.{axis_word(direction.turn)}")})
    if direction.points:
        ends = {"a": letter_like(direction.points[0]), "b": letter_like(direction.points[1])}
        if direction.form == "square":
            return Text("toward.square", {**ends, "side": Text(f"toward.{_side(direction.vector)}")})
        return Text("toward.line", ends)
    x, y = small_legs(direction.vector) or direction.vector
    return Text("toward.components", {"across": Text(f"toward.{axis_word((x, 0))}"), "a": sheet.whole(x * sign(x)),
                                      "upright": Text(f"word.{axis_word((0, y))}"), "b": sheet.whole(y * sign(y))})


def worked_toward(direction: Direction, sheet: Sheet) -> Text:
    """The same where a sum is to be written: an angle with a sloping line is followed by the one with the level, of which the sum takes the cosine."""
    said = toward(direction, sheet)
    if not from_slope(direction):
        return said
    x, y = direction.vector
    angle = level_angle(direction)
    level = from_level(steepness(direction) if angle is None else angle, axis_word((x, 0)), axis_word((0, y)), sheet)
    return Text("toward.so", {"said": said, "level": level})


def from_level(angle: Number, across: str, upright: str, sheet: Sheet) -> Text:
    """So many degrees above or below the horizontal. `across` right or left, `upright` up or down."""
    return Text(f"toward.angle_level_{upright}", {"angle": Amount(numbers.angle(angle, sheet.style)), "across": Text(f"toward.{across}")})


def _acute(direction: Direction, sheet: Sheet) -> Text:
    """A sloped direction by its given angle to the horizontal or the vertical."""
    base, turn = axis_word(direction.base), axis_word(direction.turn)
    if base in ("right", "left"):
        return from_level(direction.angle, base, turn, sheet)
    angle = {"angle": Amount(numbers.angle(direction.angle, sheet.style))}
    return Text("toward.angle_upright", {**angle, "upright": Text(f"word.{base}"), "across": Text(f"toward.{turn}")})


def _side(vector: Vector) -> str:
    """To which of its two sides a sloped direction points: up or down, unless it is nearly level."""
    level = abs(approx(vector[0])) > abs(approx(vector[1]))
    return axis_word((vector[0], 0)) if level else axis_word((0, vector[1]))


def axis_word(vector: Vector) -> str:
    x, y = sign_of(vector[0]), sign_of(vector[1])
    if y == 0:
        return "right" if x > 0 else "left"
    return "up" if y > 0 else "down"


def sign_of(x: Number | int) -> int:
    return (x > 0) - (x < 0) if isinstance(x, int) else sign(x)


def sense(code: str, degrees: float | None, sheet: Sheet, lean: Number | None = None) -> Text:
    """A true sense in words; a sloped one by its acute angle to the horizontal, or by the tangent of it where `lean` is given."""
    if code != "along" or degrees is None:
        return Text(f"sense.{code}")
    upward, acute = degrees > 0, min(abs(degrees), 180 - abs(degrees))
    side = "right" if abs(degrees) < 90 else "left"
    if lean is not None:
        said, amount = tilt(lean, sheet)
        return Text(f"sense.{'up' if upward else 'down'}_{side}{said}", {"angle": amount})
    return Text(f"sense.{'up' if upward else 'down'}_{side}", {"angle": angle_amount(acute, sheet)})


def tilt(lean: Number, sheet: Sheet) -> tuple[str, Amount]:
    """A slope in letters: the angle itself where its tangent, or that of its complement, is that of a letter angle ("" and the
    angle), else `_tangent` and the tangent."""
    amount = Amount(numbers.ratio(lean, sheet.style))
    match amount.printed.shape:
        case Apply("tan", (of,)):
            return "", Amount(numbers.in_expression(of, sheet.style))
        case Apply("/", (Literally(one), Apply("tan", (of,)))) if one == 1:
            right = Apply("*", (Literally(Fraction(90), 0, 0), Name("°", 0, 0)), 0, 0)
            return "", Amount(numbers.in_expression(Apply("-", (right, of), 0, 0), sheet.style))
    return "_tangent", amount


def angle_amount(degrees: float, sheet: Sheet) -> Amount:
    """A computed angle: one decimal."""
    tenths = numbers.rounded(Fraction(degrees), sheet.style, places=1)
    return Amount(replace(tenths, unit="°", exact=False))


ARROWS = {"right": "→", "left": "←", "up": "↑", "down": "↓", "anticlockwise": "↺", "clockwise": "↻"}


def arrow(code: str, degrees: float | None = None) -> str:
    """The sense as a sign; "" for tension, compression, zero."""
    if code != "along" or degrees is None:
        return ARROWS.get(code, "")
    return ("↗" if abs(degrees) < 90 else "↖") if degrees > 0 else ("↘" if abs(degrees) < 90 else "↙")


def opposite(action: Action, structure: Structure) -> Action | None:
    """The other half of a pair, where it acts on a body that may be isolated."""
    if not action.pair:
        return None
    other = structure.action(action.pair)
    return None if other.on == GROUND else other
