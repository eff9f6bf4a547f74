"""Letters that keep no value: what they stand for, and the size with which the figure is drawn."""

from __future__ import annotations

from fractions import Fraction

from unpin.base.units import ACCELERATION, ANGLE, BY_SPELLING, FORCE, LENGTH, MASS, MOMENT, NUMBER, SPREAD, STANDARD_GRAVITY, Dimension
from unpin.exact.letters import Letters
from unpin.exact.number import sign
from unpin.model.problem import Letter
from unpin.model.values import Quantity
from unpin.read.context import Context, Item
from unpin.read.phrases import LetterSaid
from unpin.read.quantities import quantity

WHAT: dict[str, Dimension] = {
    "force": FORCE, "length": LENGTH, "angle": ANGLE, "couple": MOMENT, "mass": MASS, "number": NUMBER, "force per length": SPREAD,
}
"""How a letter says what it stands for."""

_SIZES = tuple(Fraction(n, 10) for n in (10, 8, 13, 6, 11, 7, 14, 9, 12, 5))
_WHOLE = Fraction(2)
_ANGLES = (35, 25, 52, 41, 17, 63, 29, 47)
"""What is drawn where the file says nothing: sizes near one and angles that are not special, no two alike. A foot is small, so a
length is three of them; a force is a hundred."""
_UNITS = {LENGTH: ("m", 1), FORCE: ("N", 100), MOMENT: ("N·m", 100), SPREAD: ("N/m", 100), MASS: ("kg", 10), NUMBER: ("", 1)}
_US_UNITS = {LENGTH: ("ft", 3), FORCE: ("lb", 100), MOMENT: ("lb·ft", 300), SPREAD: ("lb/ft", 30), MASS: ("slug", 1), NUMBER: ("", 1)}


def open_letter(known: Context, item: Item, name: str, said: LetterSaid) -> Letter:
    """A letter without a value: a generator of the file's letters."""
    dimension = WHAT[said.what]
    drawn = quantity(known, item, said.drawn, dimension) if said.drawn else _stated(known, dimension, name)
    value = drawn.value
    if not isinstance(value, Fraction):
        raise item.drop("read.letter_drawn", said.drawn)
    if sign(value) <= 0 or dimension == ANGLE and value >= 90:
        raise item.drop("read.letter_drawn_angle" if dimension == ANGLE else "read.letter_drawn_size", said.drawn)
    if dimension == ANGLE:
        made = known.free.angle(name, value, dimension, 2 if name in known.halved else 1)
    else:
        made = known.free.letter(name, value, dimension)
    return Letter(name, Quantity(made, dimension, name), drawn, item.text, item.place())


def _stated(known: Context, dimension: Dimension, name: str) -> Quantity:
    """The size of the next letter of a dimension. L is mostly the length of the whole, of which the others are parts."""
    before = sum(g.dimension == dimension and g.kind in ("letter", "angle") for g in known.free.generators)
    if dimension == ANGLE:
        return Quantity(Fraction(_ANGLES[before % len(_ANGLES)]), ANGLE, "", "", "°")
    symbol, times = (_US_UNITS if known.unit(LENGTH).system == "us" else _UNITS)[dimension]
    factor = BY_SPELLING[symbol].factor if symbol else Fraction(1)
    size = _WHOLE if dimension == LENGTH and name in ("L", "l") else _SIZES[before % len(_SIZES)]
    return Quantity(size * times * factor, dimension, "", "", symbol)


def lettered_gravity(known: Context) -> Quantity:
    """g as a letter, for a mass that is one."""
    if known.free_gravity is None:
        value = STANDARD_GRAVITY[known.unit(LENGTH).system]
        known.free_gravity = Quantity(known.free.letter("g", value, ACCELERATION), ACCELERATION, "g", "g")
        known.assume("gravity_letter")
    return known.free_gravity


def begin(known: Context, count: int) -> None:
    """Room for the letters of the file, and g."""
    known.free = Letters.of(count + 1, known.angles)


def end(known: Context) -> None:
    """The units in which measured numbers beside letters are printed."""
    if known.free is not None:
        known.free.units = {"length": known.unit(LENGTH).factor, "force": known.unit(FORCE).factor, "mass": known.unit(MASS).factor}
        angles = any(g.kind == "angle" for g in known.free.generators)
        known.assume("letters_and_angles" if angles else "letters_positive")
