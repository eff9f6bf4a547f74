"""Fifty good digits, for what has no short exact form: rung 4 of the ladder.

The standard library's decimal arithmetic (sixty working digits) is used for its speed; mpmath gives the sines.
"""

from __future__ import annotations

from decimal import Context, Decimal
from fractions import Fraction
from functools import cache

CONTEXT = Context(prec=60)
AGREE = Decimal(10) ** -40
"""Two numbers of rung 4 are equal when they differ by less than this part of the larger scale that made them."""


class BySize:
    """What an exact number has once it knows its digits: order, absolute value, whole powers. The ladder is one field, and a number in it is
    as large as its digits say; those who inherit give `__digits__`, negation, product and inverse."""

    __slots__ = ()

    def __pos__(self):
        return self

    def __float__(self):
        return float(self.__digits__())

    def __abs__(self):
        return self if float(self) >= 0 else -self

    def __lt__(self, other):
        return self.__digits__() < Digits.of(other)

    def __gt__(self, other):
        return self.__digits__() > Digits.of(other)

    def __le__(self, other):
        return not self > other

    def __ge__(self, other):
        return not self < other

    def __pow__(self, power: int):
        if not isinstance(power, int):
            return NotImplemented
        result = Fraction(1)
        for _ in range(abs(power)):
            result = result * self
        return 1 / result if power < 0 else result


class Digits:
    """A decimal with sixty working digits. `scale`: the largest magnitude that went into it, so that a difference of two
    large equal numbers is recognised as zero."""

    __slots__ = ("value", "scale")

    def __init__(self, value: Decimal, scale: Decimal | None = None):
        self.value = value
        self.scale = abs(value) if scale is None else scale

    @classmethod
    def of(cls, x: object) -> Digits:
        """From any rung."""
        if isinstance(x, Digits):
            return x
        if isinstance(x, (int, Fraction)):
            return cls(CONTEXT.divide(Decimal(x.numerator), Decimal(x.denominator)))
        return x.__digits__() if hasattr(x, "__digits__") else _surd(x)

    def _other(self, x: object) -> Digits | None:
        if isinstance(x, Digits):
            return x
        if isinstance(x, float) or hasattr(x, "letters") or not (isinstance(x, (int, Fraction)) or hasattr(x, "terms") or hasattr(x, "__digits__")):
            return None
        return Digits.of(x)

    def __add__(self, other):
        o = self._other(other)
        if o is None:
            return NotImplemented
        return Digits(CONTEXT.add(self.value, o.value), max(self.scale, o.scale))

    __radd__ = __add__

    def __neg__(self):
        return Digits(CONTEXT.minus(self.value), self.scale)

    def __pos__(self):
        return self

    def __sub__(self, other):
        o = self._other(other)
        if o is None:
            return NotImplemented
        return Digits(CONTEXT.subtract(self.value, o.value), max(self.scale, o.scale))

    def __rsub__(self, other):
        return (-self) + other

    def __mul__(self, other):
        o = self._other(other)
        if o is None:
            return NotImplemented
        scale = max(CONTEXT.multiply(self.scale, abs(o.value)), CONTEXT.multiply(abs(self.value), o.scale))
        return Digits(CONTEXT.multiply(self.value, o.value), scale)

    __rmul__ = __mul__

    def __truediv__(self, other):
        o = self._other(other)
        if o is None:
            return NotImplemented
        if o.is_zero():
            raise ZeroDivisionError
        return Digits(CONTEXT.divide(self.value, o.value), CONTEXT.divide(self.scale, abs(o.value)))

    def __rtruediv__(self, other):
        return Digits.of(other) / self

    def __pow__(self, power: int):
        if not isinstance(power, int):
            return NotImplemented
        result = Digits(Decimal(1))
        for _ in range(abs(power)):
            result = result * self
        return 1 / result if power < 0 else result

    def __abs__(self):
        return Digits(CONTEXT.abs(self.value), self.scale)

    def sqrt(self) -> Digits:
        return Digits(Decimal(0) if self.is_zero() else CONTEXT.sqrt(self.value))

    def is_zero(self) -> bool:
        return abs(self.value) <= self.scale * AGREE

    def __eq__(self, other):
        o = self._other(other)
        if o is None:
            return NotImplemented
        return (self - o).is_zero()

    def __hash__(self):
        # Numbers that agree to forty digits have the same nearest double, but for a chance of about 1e-24.
        return hash(float(self.value))

    def __bool__(self):
        return not self.is_zero()

    def __lt__(self, other):
        return self != other and self.value < Digits.of(other).value

    def __gt__(self, other):
        return self != other and self.value > Digits.of(other).value

    def __le__(self, other):
        return not self > other

    def __ge__(self, other):
        return not self < other

    def __float__(self):
        return float(self.value)

    def __repr__(self):
        return f"Digits({CONTEXT.create_decimal(self.value).normalize():.50g})"


def _surd(x) -> Digits:
    """A sum of roots; ninety digits first, so that cancelling terms keep fifty."""
    wide = Context(prec=120)
    total, scale = Decimal(0), Decimal(0)
    for d, q in x.terms.items():
        part = wide.multiply(wide.divide(Decimal(q.numerator), Decimal(q.denominator)), wide.sqrt(Decimal(d)))
        total, scale = wide.add(total, part), max(scale, abs(part))
    # The exact zero was excluded by Surd itself, so what is left is a good number, not noise.
    return Digits(CONTEXT.plus(total))


@cache
def _trigonometric(name: str, degrees: str) -> Decimal:
    import mpmath

    with mpmath.workdps(70):
        return Decimal(mpmath.nstr(getattr(mpmath, name)(mpmath.mpf(degrees) * mpmath.pi / 180), 65))


def digits_cos(angle: Digits) -> Digits:
    """Cosine of an angle in degrees."""
    return Digits(_trigonometric("cos", str(angle.value)))


def digits_sin(angle: Digits) -> Digits:
    """Sine of an angle in degrees."""
    return Digits(_trigonometric("sin", str(angle.value)))
