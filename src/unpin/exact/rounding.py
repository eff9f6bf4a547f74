"""From an exact number to the digits that are printed, rounded once; a tie goes away from zero, as a class and its
calculators round (ISO 80000-1 annex B allows this rule beside half to even, from memory)."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Context, Decimal
from fractions import Fraction

from unpin.base.record import record
from unpin.exact.number import Number, to_digits
from unpin.exact.surd import Surd


def digits(x: Number, significant: int) -> tuple[int, str, int]:
    """(sign, digits, exponent): x = sign * 0.d1 d2 d3… * 10^exponent rounded to `significant` figures; zero is
    (0, "0"*significant, 1).

    >>> digits(Fraction(-2, 3), 3)
    (-1, '667', 0)
    >>> digits(Fraction(9999), 3)
    (1, '100', 5)
    """
    if x == 0:
        return 0, "0" * significant, 1
    value = to_digits(x).value
    if isinstance(x, Fraction) and significant < 50:
        # A tie must be seen exactly: sixty digits of a fraction may hide it, integers do not.
        value = _exact_fraction(x, significant)
    rounded = Context(prec=significant, rounding=ROUND_HALF_UP).plus(value)
    sign, figures, exponent = rounded.as_tuple()
    text = "".join(map(str, figures)).ljust(significant, "0")
    return (-1 if sign else 1), text, len(figures) + exponent


def _exact_fraction(x: Fraction, significant: int) -> Decimal:
    """x cut (not rounded) to many digits, with a last 1 when anything was cut, so that ties are told apart."""
    top, bottom = abs(x.numerator), x.denominator
    shift = significant + 5 + len(str(bottom)) - len(str(top))
    scaled = top * 10**shift if shift >= 0 else top
    divisor = bottom if shift >= 0 else bottom * 10**-shift
    whole, left = divmod(scaled, divisor)
    number = Decimal(whole * 10 + (1 if left else 0)).scaleb(-shift - 1, Context(prec=200))
    return -number if x < 0 else number


@record
class ExactForm:
    """(sum of `top` coefficient √radicand) / `bottom`, all integers, radicand 1 for the rational part."""

    top: tuple[tuple[int, int], ...]
    bottom: int


def short_form(x: Number, longest: int = 12) -> ExactForm | None:
    """The exact form when it is short enough to print (at most two terms and `longest` digits in all), else None."""
    if isinstance(x, (int, Fraction)):
        x = Fraction(x)
        form = ExactForm(((x.numerator, 1),), x.denominator)
    elif isinstance(x, Surd) and len(x.terms) <= 2:
        bottom = 1
        for q in x.terms.values():
            bottom = bottom * q.denominator // _gcd(bottom, q.denominator)
        form = ExactForm(tuple((int(q * bottom), d) for d, q in sorted(x.terms.items())), bottom)
    else:
        return None
    size = sum(len(str(abs(c))) + (len(str(d)) if d > 1 else 0) for c, d in form.top) + (len(str(form.bottom)) if form.bottom > 1 else 0)
    return form if size <= longest else None


def _gcd(a: int, b: int) -> int:
    import math

    return math.gcd(a, b)
