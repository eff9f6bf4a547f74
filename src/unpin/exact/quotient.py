"""Quotients of polynomials with whole coefficients, in lowest terms: what a coefficient of rung 5 is.

A quotient is a pair (top, bottom) of flint polynomials without a common factor, the bottom's leading coefficient positive, so
that equal quotients are equal pairs. flint is imported only where a problem has letters.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

Quotient = tuple[Any, Any]


def context(count: int) -> Any:
    """The ring of polynomials in `count` generators."""
    from flint import fmpz_mpoly_ctx

    return fmpz_mpoly_ctx.get(("x", count), "degrevlex")


def lowest(top: Any, bottom: Any) -> Quotient:
    """The pair in lowest terms. ZeroDivisionError for nothing below."""
    if bottom == 0:
        raise ZeroDivisionError
    if bottom == 1 or top == 0:
        return (top, bottom if top != 0 else top + 1)
    common = top.gcd(bottom)
    if common != 1:
        top, bottom = top / common, bottom / common
    return (-top, -bottom) if bottom.leading_coefficient() < 0 else (top, bottom)


def plus(a: Quotient, b: Quotient) -> Quotient:
    if a[1] == b[1]:
        return lowest(a[0] + b[0], a[1])
    return lowest(a[0] * b[1] + b[0] * a[1], a[1] * b[1])


def times(a: Quotient, b: Quotient) -> Quotient:
    if a[1] == 1 and b[1] == 1:
        return (a[0] * b[0], a[1])
    first, second = lowest(a[0], b[1]), lowest(b[0], a[1])
    return (first[0] * second[0], first[1] * second[1])


def inverse(a: Quotient) -> Quotient:
    if a[0] == 0:
        raise ZeroDivisionError
    return (-a[1], -a[0]) if a[0].leading_coefficient() < 0 else (a[1], a[0])


def of_fraction(ring: Any, x: Fraction) -> Quotient:
    return (ring.constant(x.numerator), ring.constant(x.denominator))


def as_fraction(a: Quotient) -> Fraction | None:
    """The number it is, None if it holds a generator."""
    if not (a[0].is_constant() and a[1].is_constant()):
        return None
    return Fraction(int(a[0].leading_coefficient()) if a[0] != 0 else 0, int(a[1].leading_coefficient()))


def generators_in(p: Any) -> set[int]:
    """Indices of the generators that occur in a polynomial."""
    return {k for k, power in enumerate(p.degrees()) if power > 0}
