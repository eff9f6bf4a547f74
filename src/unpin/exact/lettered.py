"""Numbers in which letters stay letters: rung 5 of the ladder.

A `Lettered` is a sum of square roots whose coefficients are quotients of polynomials: what `Surd` is over the rationals, this
is over the rational functions of a problem's letters. The radicands are products of different irreducible polynomials (or
primes), which are independent, so equality is equality of the parts and means *for all values of the letters*. Order,
`float` and `abs` speak of the size at which the figure is drawn.
"""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import TYPE_CHECKING, Any

from unpin.exact import quotient as q
from unpin.exact.digits import CONTEXT, BySize, Digits
from unpin.exact.ratio import Ratio

if TYPE_CHECKING:
    from unpin.exact.letters import Letters


class Lettered(BySize):
    """Sum of coefficient √radicands; keys are sorted numbers of radicands in `letters`. Made by `Letters.element`."""

    __slots__ = ("letters", "sums", "_digits", "_loose")

    def __init__(self, letters: Letters, terms: dict[tuple[int, ...], q.Quotient]):
        self.letters, self.sums = letters, terms
        self._digits: Digits | None = None
        self._loose: bool | None = None

    def __add__(self, other):
        theirs = self.letters.parts(other)
        if theirs is None:
            return NotImplemented
        total = dict(self.sums)
        for k, v in theirs.items():
            total[k] = q.plus(total[k], v) if k in total else v
        return self.letters.element(total)

    __radd__ = __add__

    def __neg__(self):
        return Lettered(self.letters, {k: (-n, d) for k, (n, d) in self.sums.items()})

    def __sub__(self, other):
        return NotImplemented if self.letters.parts(other) is None else self + -other

    def __rsub__(self, other):
        return NotImplemented if self.letters.parts(other) is None else -self + other

    def __mul__(self, other):
        theirs = self.letters.parts(other)
        if theirs is None:
            return NotImplemented
        total: dict[tuple[int, ...], q.Quotient] = {}
        for a, v in self.sums.items():
            for b, w in theirs.items():
                product = q.times(v, w)
                for r in set(a) & set(b):
                    have = self.letters.radicands[r]
                    square = self.letters.ring.constant(have) if isinstance(have, int) else have
                    product = q.times(product, (square, self.letters.ring.constant(1)))
                key = tuple(sorted(set(a) ^ set(b)))
                total[key] = q.plus(total[key], product) if key in total else product
        return self.letters.element(total)

    __rmul__ = __mul__

    def inverse(self) -> Any:
        """1/x by multiplying with conjugates, one root at a time."""
        top: Any = Fraction(1)
        bottom: Any = self
        while isinstance(bottom, Lettered) and set(bottom.sums) != {()}:
            if len(bottom.sums) == 1:
                (key, value), = bottom.sums.items()
                below = q.inverse(value)
                for r in key:
                    have = self.letters.radicands[r]
                    square = self.letters.ring.constant(have) if isinstance(have, int) else have
                    below = q.times(below, (self.letters.ring.constant(1), square))
                return top * self.letters.element({key: below})
            root = max(r for k in bottom.sums for r in k)
            mate = self.letters.element({k: ((-v[0], v[1]) if root in k else v) for k, v in bottom.sums.items()})
            top, bottom = top * mate, bottom * mate
        if isinstance(bottom, Lettered):
            return top * self.letters.element({(): q.inverse(bottom.sums[()])})
        return top / bottom

    def __truediv__(self, other):
        if self.letters.parts(other) is None:
            return NotImplemented
        if other == 0:
            raise ZeroDivisionError
        return self * (other.inverse() if isinstance(other, Lettered) else Fraction(1) / other)

    def __rtruediv__(self, other):
        if self.letters.parts(other) is None:
            return NotImplemented
        return self.inverse() * other

    def at(self, values: list[Decimal] | None = None) -> Decimal:
        """With values of the generators, sixty digits; as drawn without them."""
        total = Decimal(0)
        for key, (n, d) in self.sums.items():
            part = CONTEXT.divide(self.letters.value(n, values), self.letters.value(d, values))
            for r in key:
                have = self.letters.radicands[r]
                part = CONTEXT.multiply(part, CONTEXT.sqrt(Decimal(have) if isinstance(have, int) else self.letters.value(have, values).copy_abs()))
            total = CONTEXT.add(total, part)
        return total

    @property
    def loose(self) -> bool:
        if self._loose is None:
            polynomials = [p for v in self.sums.values() for p in v]
            self._loose = any(map(self.letters.is_loose, polynomials))
        return self._loose

    @property
    def lettered(self) -> bool:
        """Whether a letter is left in it: what holds only given angles and digits is a number."""
        radicands = [self.letters.radicands[r] for k in self.sums for r in k]
        polynomials = [p for v in self.sums.values() for p in v] + [r for r in radicands if not isinstance(r, int)]
        return any(map(self.letters.holds_letters, polynomials))

    def __digits__(self) -> Digits:
        if self._digits is None:
            self._digits = Digits(self.at())
        return self._digits

    def __eq__(self, other):
        if other is self:
            return True
        if isinstance(other, Lettered) and other.letters is not self.letters:
            return False
        theirs = self.letters.parts(other)
        if theirs is None or self.sums == theirs:
            return NotImplemented if theirs is None else True
        if not (self.loose or isinstance(other, Lettered) and other.loose or isinstance(other, (Ratio, Digits))):
            return False
        point = self.letters.generic()
        mine, left = self.at(point), Lettered(self.letters, theirs).at(point)
        return abs(CONTEXT.subtract(mine, left)) <= Decimal("1e-38") * max(abs(mine), abs(left), Decimal("1e-6"))

    def __hash__(self):
        return hash("loose") if self.loose else hash(tuple(sorted((k, str(n), str(d)) for k, (n, d) in self.sums.items())))

    def __bool__(self):
        return self != 0

    def __repr__(self):
        return f"Lettered({self.sums})"


def as_drawn(x: Any) -> None:
    """Note that the sign which a number has as drawn was used for all values of its letters; nothing for a plain number."""
    if isinstance(x, Lettered):
        x.letters.take(x)


def is_lettered(x: object) -> bool:
    """Whether a letter without a value is left in a number."""
    return isinstance(x, Lettered) and x.lettered


def has_root(x: object) -> bool:
    """Whether a root stands in a number with letters."""
    return isinstance(x, Lettered) and set(x.sums) != {()}
