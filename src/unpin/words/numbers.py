"""How a number is printed: figures, groups, minus, units. One function rounds, and nothing is rounded twice.

Three significant figures, four when the first is a 1 (a setting; common practice in the trade), trailing zeros kept,
half away from zero, never "-0", a true minus, narrow spaces between groups of three from five digits on (NIST SP 811, ch. 10).

>>> rounded(Fraction(-2000, 3), Style()).text
'−667'
>>> measure(Fraction(12000), unit("kN"), Style()).text
'12.00\\u202fkN'
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import field, replace
from fractions import Fraction
from functools import lru_cache

from unpin.base.record import record
from unpin.base.units import BY_SPELLING, DIMENSION_NAMES, FORCE, LENGTH, MOMENT, NUMBER, SPREAD, Dimension, Unit
from unpin.exact.expression import Apply, Expression
from unpin.exact.lettered import Lettered, is_lettered
from unpin.exact.number import Number
from unpin.exact.number import sign as sign_of
from unpin.exact.rounding import digits
from unpin.exact.surd import Surd

MINUS = "\u2212"
THIN = "\u202f"
_DEFAULT = {"length": "m", "force": "N", "moment": "N·m", "spread": "N/m", "mass": "kg", "acceleration": "m/s²", "angle": "°"}
_AS_TYPED = re.compile(r"([0-9]+(?:\.[0-9]+)?|\.[0-9]+)\s*(\D*)", re.ASCII)


@record
class Style:
    """`figures`: significant figures; `leading_one`: one more when the first figure is 1. `places`: decimal places of results instead,
    if given. `decimal`: the decimal sign. `sine`: the sign of that function."""

    figures: int = 3
    leading_one: bool = True
    places: int | None = None
    decimal: str = "."
    sine: str = "sin"


STANDARD = Style()
"""Three figures, a decimal point."""


@record
class Printed:
    """A number as it stands on paper. `sign` -1, 0 or 1; `digits` with its groups, without sign; `unit` its symbol, "" for a bare
    number; `exact` False where it was rounded; `comma`: numbers of its kind hold a decimal comma, though this one may not. `shape`: of
    a value with letters the expression that `digits` writes in a line; `sine`: the sign of that function in it."""

    sign: int
    digits: str
    unit: str = ""
    exact: bool = True
    comma: bool = field(default=False, compare=False)
    shape: Expression | None = field(default=None, compare=False)
    sine: str = field(default="sin", compare=False)

    @property
    def text(self) -> str:
        gap = "" if self.unit in ("", "°") else THIN
        if self.sign < 0 and self.is_sum:
            return f"{MINUS}({self.digits})"
        return f"{MINUS if self.sign < 0 else ''}{self.digits}{gap}{self.unit}"

    @property
    def is_sum(self) -> bool:
        """Whether it is printed as several terms."""
        return isinstance(self.shape, Apply) and self.shape.operation in ("+", "-")

    @property
    def size(self) -> Printed:
        """Without its sign."""
        return replace(self, sign=abs(self.sign))


def unit(symbol: str) -> Unit:
    """The unit of a symbol or spelling; KeyError if there is none."""
    return BY_SPELLING[symbol]


def units_of(chosen: Mapping[str, str]) -> dict[Dimension, Unit]:
    """The unit of every dimension: what was chosen, then what fits it (a moment in force times length), then SI."""
    names = dict(_DEFAULT)
    names.update(chosen)
    force, length = names["force"], names["length"]
    for name, fitting in (("moment", f"{force}·{length}"), ("spread", f"{force}/{length}")):
        if name not in chosen and fitting in BY_SPELLING:
            names[name] = fitting
    return {d: BY_SPELLING[names[n]] for d, n in DIMENSION_NAMES.items() if n in names} | {NUMBER: PURE}


def consistent(units: Mapping[Dimension, Unit]) -> bool:
    """Whether force times length is the moment and force per length the spread, so that a line of numbers adds up."""
    return units[MOMENT].factor == units[FORCE].factor * units[LENGTH].factor and fits_spread(units)


def fits_spread(units: Mapping[Dimension, Unit]) -> bool:
    """Whether the unit of a spread load is that of force by that of length."""
    return units[SPREAD].factor == units[FORCE].factor / units[LENGTH].factor


def rounded(value: Number, style: Style, places: int | None = None) -> Printed:
    """A bare number, rounded once: to significant figures, or to `places` decimals where that is given (angles)."""
    # One value stands at several places of a page, and most stay as they are from edit to edit.
    return _remembered(value, style, places) if isinstance(value, (Fraction, Surd)) else _rounded(value, style, places)


@lru_cache(maxsize=2048, typed=True)
def _remembered(value: Fraction | Surd, style: Style, places: int | None) -> Printed:
    return _rounded(value, style, places)


def _rounded(value: Number, style: Style, places: int | None) -> Printed:
    if value == 0:
        return Printed(0, "0" if not places else f"0{style.decimal}{'0' * places}")
    first = digits(value, style.figures + 1)
    wanted = style.figures + (1 if style.leading_one and first[1][0] == "1" else 0)
    if places is not None:
        wanted = first[2] + places
        if wanted < 1:
            return _tiny(value, places, style)
    sign, text, exponent = digits(value, wanted)
    if places is not None:
        if exponent < first[2]:
            # The coarse rounding went up to the next power of ten, the fine one does not.
            wanted = exponent + places
            if wanted < 1:
                return _tiny(value, places, style)
            sign, text, exponent = digits(value, wanted)
        text = text.ljust(exponent + places, "0")[: exponent + places]
    return Printed(sign, grouped(_point(text, exponent), style.decimal), exact=_is_exact(value, sign, text, exponent))


def exactly(value: Number, most: int, decimal: str = ".") -> Printed | None:
    """A terminating decimal of at most `most` significant figures, digit for digit; None for anything else."""
    if isinstance(value, int):
        value = Fraction(value)
    return _exactly(value, most, decimal) if isinstance(value, Fraction) else None


@lru_cache(maxsize=2048)
def _exactly(value: Fraction, most: int, decimal: str) -> Printed | None:
    bottom = value.denominator
    for prime in (2, 5):
        while bottom % prime == 0:
            bottom //= prime
    if bottom != 1:
        return None
    if value == 0:
        return Printed(0, "0")
    sign, text, exponent = digits(value, most)
    if not _is_exact(value, sign, text, exponent):
        return None
    text = text.rstrip("0")
    return Printed(sign, grouped(_point(text.ljust(max(exponent, 1), "0") if exponent > 0 else text, exponent), decimal))


def in_letters(value: Lettered, of: Unit, style: Style, spare: bool = False) -> Printed:
    """A value in which letters are left: no unit stands behind it, the letters bring theirs. `spare`: its numbers are carried on."""
    from unpin.words import lettered

    way, shape = lettered.written(value, of)
    shape = rounded_in(shape, carried(style) if spare else replace(style, places=None))
    return replace(in_expression(shape, style), sign=way)


def rounded_in(shape: Expression, style: Style) -> Expression:
    """An expression with its numbers rounded where they are not short."""
    from unpin.words import lettered

    def shortened(x: Fraction) -> Fraction:
        if exactly(x, SHORT):
            return x
        made = rounded(x, style)
        return Fraction(made.digits.replace(THIN, "").replace(style.decimal, ".")) * (made.sign or 1)

    return lettered.with_numbers(shape, shortened)


def in_expression(shape: Expression, style: Style) -> Printed:
    """An expression with letters, positive as drawn, whose numbers are rounded already."""
    from unpin.words import lettered

    line = lettered.text(shape, lambda x: exactly(x, 20, style.decimal).digits, style.sine)
    return Printed(1, line, comma=style.decimal == ",", shape=shape, sine=style.sine)


def measure(value: Number, of: Unit, style: Style) -> Printed:
    """A result in SI, shown in a unit, rounded."""
    if is_lettered(value):
        return in_letters(value, of, style)
    return replace(rounded(value / of.factor, style, style.places), unit=of.symbol)


PURE = Unit("", NUMBER, Fraction(1), "both")
"""The unit of a bare number."""

SHORT = 6
"""A number of at most so many figures is printed as it is, where it is given or follows exactly from what is given."""

CARRIED = 2
"""So many figures more than a result has a number that is carried on, so that a calculator comes to the printed result."""


def plain(value: Number, of: Unit, style: Style) -> Printed:
    """A given quantity, a length, a constant on the way: digit for digit when that is short, else with figures to spare."""
    if is_lettered(value):
        return in_letters(value, of, style, spare=True)
    shown = value / of.factor
    spare = carried(style)
    if style.places is not None:
        # As many places to spare as figures, unless the number is small.
        spare = replace(spare, figures=max(spare.figures, digits(shown, 1)[2] + style.places + CARRIED if shown != 0 else 1))
    return replace(exactly(shown, max(SHORT, spare.figures), style.decimal) or rounded(shown, spare), unit=of.symbol)


def carried(style: Style) -> Style:
    """The rounding of a number that is carried on, in significant figures."""
    return Style(style.figures + CARRIED, leading_one=False, decimal=style.decimal, sine=style.sine)


def reused(value: Number, of: Unit, style: Style) -> Printed:
    """A result put into a later sum: as it was printed when that is all of it, else with figures to spare."""
    printed = measure(value, of, style)
    return printed if printed.exact else plain(value, of, style)


def given(value: Number, written: str, of: Unit, style: Style) -> Printed:
    """A given quantity: the author's own digits when they are in this unit, else as `plain`. `2.50 m` stays 2.50 m."""
    typed = _AS_TYPED.fullmatch(written.strip())
    if typed:
        own = BY_SPELLING.get(typed[2].strip())
        if own is not None and own.symbol == of.symbol and value == Fraction(typed[1]) * of.factor:
            text = typed[1] if not typed[1].startswith(".") else "0" + typed[1]
            return Printed(0 if value == 0 else 1, grouped(text, style.decimal), of.symbol)
    return plain(value, of, style)


def angle(degrees: Number, style: Style = STANDARD) -> Printed:
    """An angle as given: digit for digit when it has at most three decimals, else one decimal."""
    if is_lettered(degrees):
        return in_letters(degrees, BY_SPELLING["°"], style)
    found = exactly(degrees, 6, style.decimal)
    return replace(found or rounded(degrees, style, places=1), unit="°")


def ratio(value: Number, style: Style) -> Printed:
    """A bare number: digit for digit when short, else with figures to spare."""
    if is_lettered(value):
        return in_letters(value, PURE, style, spare=True)
    return exactly(value, style.figures + CARRIED, style.decimal) or rounded(value, carried(style))


def sine_sign(language: str) -> str:
    """The sign that a language writes for the sine."""
    from unpin.words.sentences import catalogue

    return catalogue("language", language).get("function.sin", "sin")


def decimal_sign(language: str) -> str:
    """The decimal sign that a language writes."""
    from unpin.words.sentences import catalogue

    return catalogue("language", language).get("decimal", ".")


def grouped(text: str, decimal: str = ".") -> str:
    """Groups of three on both sides of the point, from five digits on; then the point as the style writes it."""
    whole, dot, rest = text.partition(".")
    if len(whole) > 4:
        whole = THIN.join(_chunks_from_right(whole))
    if len(rest) > 4:
        rest = THIN.join(rest[i:i + 3] for i in range(0, len(rest), 3))
    return whole + (decimal if dot else "") + rest


def _chunks_from_right(text: str) -> list[str]:
    head = len(text) % 3
    return ([text[:head]] if head else []) + [text[i:i + 3] for i in range(head, len(text), 3)]


def _point(text: str, exponent: int, places: int = 0) -> str:
    """0.text times 10^exponent as a plain decimal."""
    if exponent <= 0:
        return "0." + "0" * -exponent + text
    if exponent >= len(text):
        return text + "0" * (exponent - len(text)) + ("." + "0" * places if places else "")
    return text[:exponent] + "." + text[exponent:]


def _tiny(value: Number, places: int, style: Style) -> Printed:
    """Smaller than the last place: zero, or one unit of it."""
    way = sign_of(value)
    if sign_of(value * (2 * way) - Fraction(10) ** -places) < 0:
        return Printed(0, f"0{style.decimal}{'0' * places}" if places else "0", exact=False)
    return Printed(way, grouped(_point("1", 1 - places), style.decimal), exact=False)


def _is_exact(value: Number, sign: int, text: str, exponent: int) -> bool:
    if not isinstance(value, (int, Fraction)):
        return False
    return value == sign * Fraction(int(text)) * Fraction(10) ** (exponent - len(text))
