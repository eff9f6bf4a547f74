"""Exact numbers as residues modulo a prime near 2^61: zero tests for the route search at the price of integers.

The map is a ring homomorphism wherever it is defined, so what is zero stays zero; what is not zero vanishes with a
chance of about 1e-18 a test. The prime leaves remainder 1 on division by 360000, so the field holds roots of unity for every
angle given to a thousandth of a degree, and identities between sines hold there as they do in truth. √2, √3 and √5 are
taken from those same roots of unity, so cos 45° and √2 agree; any other root is a square root modulo the prime.
Numbers of the fourth rung have no residue: `ResidueError`, and the search falls back to digits.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache

from unpin.exact.number import Number
from unpin.exact.ratio import Ratio
from unpin.exact.surd import Surd, prime_factors

TURN = 360000


class ResidueError(ValueError):
    """The number has no image in the field."""


@cache
def _prime(roots: frozenset[int]) -> int:
    """The largest prime below 2^61 of the form 360000 k + 1 modulo which every one of `roots` is a square."""
    p = (2**61 // TURN) * TURN + 1
    while True:
        p -= TURN
        if all(pow(r, (p - 1) // 2, p) == 1 for r in roots) and _is_prime(p):
            return p


def _is_prime(n: int) -> bool:
    """Miller–Rabin with the first twelve primes as bases: certain below 3.3e24 (Sorenson and Webster 2015, from memory)."""
    bases = (2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37)
    if any(n % b == 0 for b in bases):
        return n in bases
    d, s = n - 1, 0
    while d % 2 == 0:
        d, s = d // 2, s + 1
    for b in bases:
        x = pow(b, d, n)
        if x in (1, n - 1):
            continue
        for _ in range(s - 1):
            x = x * x % n
            if x == n - 1:
                break
        else:
            return False
    return True


def _square_root(a: int, p: int) -> int:
    """Tonelli and Shanks."""
    q, s = p - 1, 0
    while q % 2 == 0:
        q, s = q // 2, s + 1
    z = 2
    while pow(z, (p - 1) // 2, p) != p - 1:
        z += 1
    m, c, t, r = s, pow(z, q, p), pow(a, q, p), pow(a, (q + 1) // 2, p)
    while t != 1:
        i, u = 0, t
        while u != 1:
            u = u * u % p
            i += 1
        b = pow(c, 1 << (m - i - 1), p)
        m, c = i, b * b % p
        t, r = t * c % p, r * b % p
    return r


class Residues:
    """One field and its map. `roots`: the primes whose square roots occur in the problem."""

    def __init__(self, roots: frozenset[int] = frozenset()):
        self.p = p = _prime(roots - {2, 3, 5})
        g = 2
        while any(pow(pow(g, (p - 1) // TURN, p), TURN // q, p) == 1 for q in (2, 3, 5)):
            g += 1
        self.unit = pow(g, (p - 1) // TURN, p)
        self._roots = {2: 2 * self.cosine(Fraction(45)) % p, 3: 2 * self.cosine(Fraction(30)) % p,
                       5: (4 * self.cosine(Fraction(36)) - 1) % p}

    def cosine(self, degrees: Fraction) -> int:
        z = self._point(degrees)
        return (z + pow(z, -1, self.p)) * pow(2, -1, self.p) % self.p

    def sine(self, degrees: Fraction) -> int:
        return self.cosine(degrees - 90)

    def _point(self, degrees: Fraction) -> int:
        k = degrees * 1000
        if k.denominator == 1:
            return pow(self.unit, int(k) % TURN, self.p)
        # Finer than a thousandth of a degree: a point that is its own, powers of it still agree with multiples.
        base = pow(3, 10**9 + k.denominator, self.p)
        return pow(base, int(k.numerator), self.p)

    def root(self, prime: int) -> int:
        if prime not in self._roots:
            self._roots[prime] = _square_root(prime % self.p, self.p)
        return self._roots[prime]

    def of(self, x: Number) -> int:
        """The residue of a number of the first three rungs."""
        p = self.p
        if isinstance(x, Fraction):
            if x.denominator == 1:
                return x.numerator % p
            return x.numerator * pow(x.denominator, -1, p) % p
        if isinstance(x, Surd):
            total = 0
            for d, q in x.terms.items():
                part = self.of(q)
                for f in prime_factors(d):
                    part = part * self.root(f) % p
                total += part
            return total % p
        if isinstance(x, Ratio):
            return self._polynomial(x.top) * pow(self._polynomial(x.bottom), -1, p) % p
        raise ResidueError(repr(x))

    def _polynomial(self, polynomial) -> int:
        total = 0
        for monomial, q in polynomial.items():
            part = self.of(q)
            for (name, argument), power in monomial:
                value = {"cos": self.cosine, "sin": self.sine}[name](argument) if name != "root" else self.root(int(argument))
                part = part * pow(value, power, self.p) % self.p
            total += part
        return total % self.p


def roots_in(numbers) -> frozenset[int]:
    """Every prime under a root in the numbers."""
    found: set[int] = set()
    for x in numbers:
        if isinstance(x, Surd):
            for d in x.terms:
                found.update(prime_factors(d))
        elif isinstance(x, Ratio):
            for polynomial in (x.top, x.bottom):
                found.update(int(g[1]) for m in polynomial for g, _ in m if g[0] == "root")
    return frozenset(found)
