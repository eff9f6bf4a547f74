"""Exact numbers on a ladder of rungs, all of which mix freely with `+ - * /`.

1. rationals: `fractions.Fraction`;
2. sums of square roots: `Surd`, an element of Q(√2, √3, √5, …);
3. sines and cosines of given angles as atoms: `Ratio`, a quotient of polynomials in them;
4. beyond that, fifty digits: `Digits`;
5. what holds letters without a value: `Lettered`, sums of roots over the rational functions of the letters.

An operation gives the lowest rung that holds its result. Equality is exact on the first two rungs; on the third an
identity between sines that the polynomials do not show is found with fifty digits; on the fourth two numbers are
equal when they agree to forty digits. With letters, equality means for all their values; signs and order are those of the size
that is drawn.

>>> from unpin.exact.number import sqrt, cos_deg, approx
>>> 3 * sqrt(Fraction(52)) / 2 == 3 * sqrt(Fraction(13))
True
>>> cos_deg(Fraction(30)) ** 2
Fraction(3, 4)
"""

from __future__ import annotations

from fractions import Fraction
from typing import Union

from unpin.exact.digits import Digits, digits_cos, digits_sin
from unpin.exact.lettered import Lettered
from unpin.exact.ratio import Ratio
from unpin.exact.surd import Surd, root_of_fraction

Number = Union[Fraction, Surd, Ratio, Digits, Lettered]

LETTERS = 5
"""The rung of numbers with letters."""

ZERO = Fraction(0)
ONE = Fraction(1)


class NoWholeMultiple(ValueError):
    """An angle that is not made of whole multiples of letters and a number of degrees."""


def as_number(x: int | Fraction | Surd | Ratio | Digits | Lettered) -> Number:
    """Ints become Fractions; everything else is returned as it is. Floats are refused."""
    if isinstance(x, int):
        return Fraction(x)
    if isinstance(x, (Fraction, Surd, Ratio, Digits, Lettered)):
        return x
    raise TypeError(f"not an exact number: {x!r}")


def is_zero(x: Number) -> bool:
    return x == 0


def sign(x: Number) -> int:
    """-1, 0 or 1. Never wrong on the first two rungs; on the others decided with fifty digits."""
    if isinstance(x, Fraction):
        return (x.numerator > 0) - (x.numerator < 0)
    if x == 0:
        return 0
    value = to_digits(x).value
    return 1 if value > 0 else -1


def approx(x: Number) -> float:
    """The nearest double, or close to it."""
    return float(x)


def to_digits(x: Number) -> Digits:
    """The same number with sixty working digits."""
    return x if isinstance(x, Digits) else Digits.of(x)


def rung(x: Number) -> int:
    """1 rational, 2 square roots, 3 angles as atoms, 4 fifty digits, 5 letters."""
    return {Fraction: 1, int: 1, Surd: 2, Ratio: 3, Digits: 4, Lettered: 5}[type(x)]


def sqrt(x: Number) -> Number:
    """The non-negative square root: exact for rationals and where a root of a root opens, else fifty digits.

    Raises ValueError for a negative number.
    """
    x = as_number(x)
    if sign(x) < 0:
        raise ValueError("square root of a negative number")
    if isinstance(x, Fraction):
        return root_of_fraction(x)
    if isinstance(x, Lettered):
        return x.letters.root(x)
    if isinstance(x, Surd):
        opened = x.root()
        if opened is not None:
            return opened
    return to_digits(x).sqrt()


_EXACT_COSINES = {0: ONE, 90: ZERO, 60: Fraction(1, 2)}


def cos_deg(angle: Number) -> Number:
    """Cosine of an angle in degrees: with roots for multiples of 15°, an atom for other rationals, else fifty digits."""
    angle = as_number(angle)
    if isinstance(angle, Lettered):
        from unpin.exact.circular import cosine_of

        whole, (cosine, sine) = cosine_of(angle)
        return cosine * cos_deg(whole) - sine * sin_deg(whole)
    if not isinstance(angle, Fraction):
        return digits_cos(to_digits(angle))
    angle = abs(angle) % 360
    if angle > 180:
        angle = 360 - angle
    if angle > 90:
        return -cos_deg(180 - angle)
    if angle in _EXACT_COSINES:
        return _EXACT_COSINES[int(angle)]
    if angle == 45:
        return root_of_fraction(Fraction(1, 2))
    if angle == 30:
        return root_of_fraction(Fraction(3, 4))
    if angle in (15, 75):
        six, two = root_of_fraction(Fraction(3, 8)), root_of_fraction(Fraction(1, 8))
        return six + two if angle == 15 else six - two
    return Ratio.cosine(angle) if angle < 45 else Ratio.sine(90 - angle)


def sin_deg(angle: Number) -> Number:
    """Sine of an angle in degrees, held as `cos_deg` holds it."""
    angle = as_number(angle)
    if not isinstance(angle, (Fraction, Lettered)):
        return digits_sin(to_digits(angle))
    return cos_deg(angle - 90)


def tan_deg(angle: Number) -> Number:
    """Tangent; ZeroDivisionError at 90°."""
    return sin_deg(angle) / cos_deg(angle)


def length(vector: tuple[Number, ...]) -> Number:
    """Euclidean length, exact where it can be."""
    return sqrt(sum((c * c for c in vector), ZERO))
