"""Symbols, sums and quotients as expressions, in the order in which they are printed."""

from __future__ import annotations

import math
from fractions import Fraction

from unpin.base.units import Dimension
from unpin.exact.circular import Monomial, Symbol, Terms
from unpin.exact.expression import Apply, Expression, Literally, Name
from unpin.exact.homogeneous import dimension_of
from unpin.exact.letters import Letters

MOST_BELOW = 16
"""A fraction with a larger number below is printed as a decimal where it ends."""


class Writer:
    """Symbols, sums and quotients as expressions."""

    def __init__(self, letters: Letters, measured: bool):
        self.letters, self.measured = letters, measured
        self.place = {g.name: k for k, g in enumerate(letters.generators) if g.kind in ("letter", "angle")}

    def rank(self, s: Symbol) -> tuple:
        """Roots of numbers, forces and masses, accelerations, lengths, other letters, functions."""
        if s[0] == "number":
            return (-1, s[1])
        if s[0] == "letter":
            d = next(g.dimension for g in self.letters.generators if g.kind == "letter" and g.name == s[1])
            return (0 if d.force > 0 and d.mass >= 0 or d.mass > 0 else 0.5 if d.mass < 0 else 1, self.place[s[1]])
        if s[0] == "nested":
            return (1.8, s[1])
        return (2, ("tan", "sin", "cos").index(s[0]), tuple(self.place[n] for n, _ in s[1]))

    def symbol(self, s: Symbol) -> Expression:
        if s[0] == "number":
            return number(Fraction(s[1]))
        if s[0] == "letter":
            return Name(s[1], 0, 0)
        if s[0] == "nested":
            from unpin.exact.shape import shape

            made = self.letters.generators[s[1]].made
            return Apply("sqrt", (shape(made, Dimension(*(dimension_of(made) or ())))[1],), 0, 0)
        return Apply(s[0], (self.angle(s[1]),), 0, 0)

    def angle(self, of: tuple[tuple[str, int], ...]) -> Expression:
        parts = sorted(of, key=lambda p: (p[1] < 0, self.place[p[0]]))
        return added([(1 if k > 0 else -1, times_name(Fraction(abs(k), self.letters.parts_of(n)), n)) for n, k in parts])

    def ordered(self, terms: Terms) -> list[Monomial]:
        """Monomials in the order of print: by powers of the letters, numbers first, then one that is added leads."""
        symbols = sorted({s for m in terms for s, _ in m}, key=self.rank)
        key = lambda m: tuple(-dict(m).get(s, 0) for s in symbols)  # noqa: E731
        out = sorted(terms, key=key)
        if () in terms and all(s[0] in ("sin", "cos", "tan") for s in symbols):
            out = [(), *(m for m in out if m)]
        lead = next((m for m in out if terms[m] > 0), out[0])
        return [lead, *(m for m in out if m != lead)]

    def sum(self, terms: Terms) -> Expression:
        """Signs as they are: the sum is positive as drawn."""
        return added([(1 if terms[m] > 0 else -1, self.monomial(m, abs(terms[m]))) for m in self.ordered(terms)])

    def monomial(self, m: Monomial, c: Fraction) -> Expression:
        factors = [raised(self.symbol(s), k) for s, k in sorted(m, key=lambda x: self.rank(x[0]))]
        if c == 1 and factors:
            return multiplied(factors)
        if c.denominator != 1 and not self.measured:
            top = multiplied([number(Fraction(c.numerator))] * (c.numerator != 1) + factors) if factors or c.numerator != 1 else number(Fraction(1))
            return Apply("/", (top, number(Fraction(c.denominator))), 0, 0)
        return multiplied([number(c), *factors])

    def roots(self, under: list[Expression]) -> list[Expression]:
        """One root of everything that is one symbol or number, one for each sum."""
        sums = [e for e in under if isinstance(e, Apply) and e.operation in ("+", "-")]
        lone = [e for e in under if e not in sums]
        numbers = [e.value for e in lone if isinstance(e, Literally)]
        lone = [e for e in lone if not isinstance(e, Literally)]
        if numbers:
            lone.insert(0, number(product(numbers)))
        return ([Apply("sqrt", (multiplied(lone),), 0, 0)] if lone else []) + [Apply("sqrt", (e,), 0, 0) for e in sums]

    def quotient(self, c: Fraction, top: list[Expression], bottom: list[Expression]) -> Expression:
        ends = terminates(c.denominator)
        if ends and (self.measured or c.denominator > MOST_BELOW) or self.measured and max(c.denominator, c.numerator) > MOST_BELOW:
            top = [number(c), *top] if c != 1 or not top else top
        else:
            top = [number(Fraction(c.numerator)), *top] if c.numerator != 1 or not top else top
            bottom = [number(Fraction(c.denominator)), *bottom] if c.denominator != 1 else bottom
        above = multiplied(top)
        return Apply("/", (above, multiplied(bottom)), 0, 0) if bottom else above


def terminates(n: int) -> bool:
    for prime in (2, 5):
        while n % prime == 0:
            n //= prime
    return n == 1


def number(value: Fraction) -> Literally:
    return Literally(value, 0, 0)


def times_name(size: Fraction, name: str) -> Expression:
    """`alpha`, `2 alpha`, `alpha/2`, `3 alpha/2`."""
    top = multiplied([number(Fraction(size.numerator))] * (size.numerator != 1) + [Name(name, 0, 0)])
    return top if size.denominator == 1 else Apply("/", (top, number(Fraction(size.denominator))), 0, 0)


def multiplied(factors: list[Expression]) -> Expression:
    out = factors[0]
    for f in factors[1:]:
        out = Apply("*", (out, f), 0, 0)
    return out


def added(terms: list[tuple[int, Expression]]) -> Expression:
    way, out = terms[0]
    out = Apply("neg", (out,), 0, 0) if way < 0 else out
    for way, e in terms[1:]:
        out = Apply("+" if way > 0 else "-", (out, e), 0, 0)
    return out


def raised(e: Expression, power: int) -> Expression:
    return e if power == 1 else Apply("^", (e, number(Fraction(power))), 0, 0)


def product(values) -> Fraction:
    out = Fraction(1)
    for v in values:
        out *= v
    return out


def content(values) -> Fraction:
    """The greatest number that leaves whole numbers, where they are rational."""
    values = [abs(v) for v in values]
    bottom = math.lcm(*(v.denominator for v in values))
    return Fraction(math.gcd(*(int(v * bottom) for v in values)), bottom)
