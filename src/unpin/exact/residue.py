"""Exact numbers as residues modulo a prime near 2^61: zero tests for the route search at the price of integers.

The map is a ring homomorphism wherever it is defined, so what is zero stays zero; what is not zero vanishes with a
chance of about 1e-18 a test. The prime leaves remainder 1 on division by 360000, so the field holds roots of unity for every
angle given to a thousandth of a degree, and identities between sines hold there as they do in truth. √2, √3 and √5 are
taken from those same roots of unity, so cos 45° and √2 agree; any other root is a square root modulo the prime.
Numbers of the fourth rung have no residue: `ResidueError`, and the search falls back to digits. A letter without a value is a
residue drawn by a fixed rule, again until every polynomial under a root is a square; so what is zero is zero for all its values.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from itertools import count

from unpin.exact.lettered import Lettered
from unpin.exact.letters import Generator, Letters
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

    def __init__(self, roots: frozenset[int] = frozenset(), letters: Letters | None = None):
        self.p = p = _prime(roots - {2, 3, 5})
        g = 2
        while any(pow(pow(g, (p - 1) // TURN, p), TURN // q, p) == 1 for q in (2, 3, 5)):
            g += 1
        self.unit = pow(g, (p - 1) // TURN, p)
        self._roots = {2: 2 * self.cosine(Fraction(45)) % p, 3: 2 * self.cosine(Fraction(30)) % p,
                       5: (4 * self.cosine(Fraction(36)) - 1) % p}
        self.letters = letters
        self._under: dict[int, int] = {}
        self._at = self._drawn(letters) if letters else []

    def _drawn(self, letters: Letters) -> list[int]:
        """A residue for every generator, such that all radicands are squares."""
        radicands = [(k, r) for k, r in enumerate(letters.radicands) if not isinstance(r, int)]
        for attempt in count(1):
            self._at = [self._generator(g, 10**6 * attempt + k) for k, g in enumerate(letters.generators)]
            values = {k: self._of_terms(r) for k, r in radicands}
            if all(pow(v, (self.p - 1) // 2, self.p) == 1 for v in values.values()):
                self._under = {k: _square_root(v, self.p) for k, v in values.items()}
                return self._at
        raise AssertionError

    def _generator(self, g: Generator, number: int) -> int:
        if g.kind == "turn":
            return self.sine(g.made) * pow(1 + self.cosine(g.made), -1, self.p) % self.p
        if g.kind == "digits":
            return self.of(Fraction(round(float(g.drawn) * 10**12), 10**12))
        return pow(number * 2654435761 + 40503, 7, self.p)

    def _of_terms(self, polynomial) -> int:
        total = 0
        for powers, c in polynomial.terms():
            part = int(c) % self.p
            for k, power in enumerate(powers):
                if power:
                    part = part * pow(self._at[k], int(power), self.p) % self.p
            total += part
        return total % self.p

    def _lettered(self, x: Lettered) -> int:
        total = 0
        for key, (top, bottom) in x.sums.items():
            part = self._of_terms(top) * pow(self._of_terms(bottom), -1, self.p) % self.p
            for r in key:
                have = x.letters.radicands[r]
                part = part * (self.root(have) if isinstance(have, int) else self._under[r]) % self.p
            total += part
        return total % self.p

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
        """The residue of a number of the first three rungs, or with letters."""
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
        if isinstance(x, Lettered) and self.letters is x.letters:
            return self._lettered(x)
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
        elif isinstance(x, Lettered):
            found.update(r for key in x.sums for k in key if isinstance(r := x.letters.radicands[k], int))
    return frozenset(found)


def letters_in(numbers) -> Letters | None:
    """The letters of a problem, if one of its numbers holds any."""
    return next((x.letters for x in numbers if isinstance(x, Lettered)), None)
