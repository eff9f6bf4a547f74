"""Sums of square roots with rational coefficients: the field Q(√2, √3, √5, …), rung 2 of the ladder."""

from __future__ import annotations

import math
from fractions import Fraction
from functools import cache


@cache
def split_square(n: int) -> tuple[int, int]:
    """n = s² d with d square-free; returns (s, d). Trial division; what is left above 10^6 is kept whole."""
    square, rest = 1, 1
    for p in _small_primes():
        if p * p > n:
            break
        while n % (p * p) == 0:
            n //= p * p
            square *= p
        if n % p == 0:
            n //= p
            rest *= p
    whole = math.isqrt(n)
    if whole * whole == n:
        return square * whole, rest
    return square, rest * n


@cache
def _small_primes() -> tuple[int, ...]:
    limit = 2000
    sieve = bytearray([1]) * limit
    sieve[0:2] = b"\0\0"
    for i in range(2, math.isqrt(limit) + 1):
        if sieve[i]:
            sieve[i * i :: i] = bytes(len(range(i * i, limit, i)))
    return tuple(i for i in range(limit) if sieve[i])


def prime_factors(d: int) -> list[int]:
    """Of a square-free radicand."""
    out, f = [], 2
    while f * f <= d and f < 2000:
        if d % f == 0:
            out.append(f)
            d //= f
        else:
            f += 1
    return out + [d] if d > 1 else out


def root_of_fraction(x: Fraction) -> Fraction | Surd:
    """√x for x >= 0."""
    square, rest = split_square(x.numerator * x.denominator)
    value = Fraction(square, x.denominator)
    return value if rest == 1 or value == 0 else Surd._make({rest: value})


class Surd:
    """sum of q_d √d over square-free d (d = 1 is the rational part); at least one d > 1 is present."""

    __slots__ = ("terms",)

    def __init__(self, terms: dict[int, Fraction]):
        self.terms = terms

    @staticmethod
    def _make(terms: dict[int, Fraction]) -> Fraction | Surd:
        terms = {d: q for d, q in terms.items() if q}
        if not terms:
            return Fraction(0)
        if len(terms) == 1 and 1 in terms:
            return terms[1]
        return Surd(terms)

    @staticmethod
    def _terms(x: object) -> dict[int, Fraction] | None:
        if isinstance(x, Surd):
            return x.terms
        if isinstance(x, (int, Fraction)):
            return {1: Fraction(x)}
        return None

    def __add__(self, other):
        theirs = self._terms(other)
        if theirs is None:
            return NotImplemented
        total = dict(self.terms)
        for d, q in theirs.items():
            total[d] = total[d] + q if d in total else q
        return self._make(total)

    __radd__ = __add__

    def __neg__(self):
        return Surd({d: -q for d, q in self.terms.items()})

    def __pos__(self):
        return self

    def __sub__(self, other):
        if self._terms(other) is None:
            return NotImplemented
        return self + (-other)

    def __rsub__(self, other):
        if self._terms(other) is None:
            return NotImplemented
        return (-self) + other

    def __mul__(self, other):
        theirs = self._terms(other)
        if theirs is None:
            return NotImplemented
        total: dict[int, Fraction] = {}
        for d, q in self.terms.items():
            for e, r in theirs.items():
                common = math.gcd(d, e)
                key = (d // common) * (e // common)
                product = q * r * common if common > 1 else q * r
                total[key] = total[key] + product if key in total else product
        return self._make(total)

    __rmul__ = __mul__

    def __truediv__(self, other):
        if isinstance(other, (int, Fraction)):
            return Surd({d: q / other for d, q in self.terms.items()})
        if not isinstance(other, Surd):
            return NotImplemented
        return self * other.inverse()

    def __rtruediv__(self, other):
        if self._terms(other) is None:
            return NotImplemented
        return self.inverse() * other

    def inverse(self) -> Fraction | Surd:
        """1/x by multiplying with conjugates, one prime at a time."""
        top: Fraction | Surd = Fraction(1)
        bottom: Fraction | Surd = self
        while isinstance(bottom, Surd):
            # A factor shared by the radicands, not the largest radicand, must change its sign everywhere.
            prime = _a_factor(bottom.terms)
            mate = Surd._make({d: -q if d % prime == 0 else q for d, q in bottom.terms.items()})
            top, bottom = top * mate, bottom * mate
        return top / bottom

    def __pow__(self, power: int):
        if not isinstance(power, int):
            return NotImplemented
        if power < 0:
            return self.inverse() ** -power
        result: Fraction | Surd = Fraction(1)
        for _ in range(power):
            result = result * self
        return result

    def root(self) -> Fraction | Surd | None:
        """√(a + b√d) as √u + √v when that opens in rationals, else None."""
        if len(self.terms) > 2 or 1 not in self.terms:
            return None
        a = self.terms[1]
        d, b = next((d, q) for d, q in self.terms.items() if d != 1)
        inner = a * a - b * b * d
        if inner < 0:
            return None
        r = root_of_fraction(inner)
        if isinstance(r, Surd):
            return None
        u, v = (a + r) / 2, (a - r) / 2
        if u < 0 or v < 0:
            return None
        first, second = root_of_fraction(u), root_of_fraction(v)
        return first + second if b > 0 else first - second

    def __eq__(self, other):
        theirs = self._terms(other)
        if theirs is None:
            return NotImplemented
        return self.terms == theirs

    def __hash__(self):
        return hash(frozenset(self.terms.items()))

    def __float__(self):
        try:
            parts = [float(q) * math.sqrt(d) for d, q in self.terms.items()]
        except OverflowError:  # a root of more than 300 places
            from unpin.exact.digits import Digits

            return float(Digits.of(self))
        total = math.fsum(parts)
        if abs(total) < 1e-6 * max(map(abs, parts)):
            from unpin.exact.digits import Digits

            return float(Digits.of(self))
        return total

    def __bool__(self):
        return True

    def __abs__(self):
        return self if float(self) > 0 else -self

    def __lt__(self, other):
        return float(self - other) < 0

    def __gt__(self, other):
        return float(self - other) > 0

    def __le__(self, other):
        return self == other or self < other

    def __ge__(self, other):
        return self == other or self > other

    def __repr__(self):
        return "Surd(" + " + ".join(f"{q}*sqrt({d})" for d, q in sorted(self.terms.items())) + ")"


def _a_factor(terms: dict[int, Fraction]) -> int:
    """A divisor > 1 of some radicand such that every radicand is either a multiple of it or prime to it."""
    factor = max(terms)
    for d in terms:
        common = math.gcd(factor, d)
        if 1 < common < factor:
            factor = common
    # One pass can leave a smaller common divisor with an earlier radicand; repeat until none is left.
    while True:
        smaller = next((math.gcd(factor, d) for d in terms if 1 < math.gcd(factor, d) < factor), 0)
        if not smaller:
            return factor
        factor = smaller
