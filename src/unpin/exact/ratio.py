"""Quotients of polynomials in sines, cosines and square roots: rung 3 of the ladder.

A monomial is a sorted tuple of (generator, power). Generators are ("cos", angle) and ("sin", angle) with
0 < angle < 45 in degrees, and ("root", prime). Roots and sines never reach the second power: √p² = p, sin² = 1 - cos².
No greatest common divisor is taken, only common constants and monomials: a chain of a dozen scalar steps stays small,
and what grows past `MOST_TERMS` goes to fifty digits.
"""

from __future__ import annotations

from fractions import Fraction

from unpin.exact.digits import BySize, Digits, digits_cos, digits_sin
from unpin.exact.surd import prime_factors

MOST_TERMS = 40

Monomial = tuple[tuple[tuple[str, Fraction], int], ...]
Polynomial = dict[Monomial, Fraction]

_ONE: Polynomial = {(): Fraction(1)}


def _from(x: object) -> Polynomial | None:
    if isinstance(x, (int, Fraction)):
        return {(): Fraction(x)} if x else {}
    terms = getattr(x, "terms", None)
    if terms is None:
        return None
    return {tuple((("root", Fraction(p)), 1) for p in prime_factors(d)): q for d, q in terms.items()}


def _times(a: Polynomial, b: Polynomial) -> Polynomial:
    total: Polynomial = {}
    for m, q in a.items():
        for n, r in b.items():
            for k, s in _monomials(m, n).items():
                total[k] = total.get(k, 0) + q * r * s
    return {m: q for m, q in total.items() if q}


def _monomials(m: Monomial, n: Monomial) -> Polynomial:
    powers = dict(m)
    for g, k in n:
        powers[g] = powers.get(g, 0) + k
    constant = Fraction(1)
    squares = []
    for g, k in list(powers.items()):
        if k >= 2 and g[0] == "root":
            constant *= g[1] ** (k // 2)
            powers[g] = k % 2
        elif k >= 2 and g[0] == "sin":
            powers[g] = k % 2
            squares.append((g[1], k // 2))
    out: Polynomial = {tuple(sorted((g, k) for g, k in powers.items() if k)): constant}
    for angle, times in squares:
        cosine = ("cos", angle)
        for _ in range(times):
            out = _plus(out, _times(out, {((cosine, 2),): Fraction(-1)}))
    return out


def _plus(a: Polynomial, b: Polynomial, factor: int = 1) -> Polynomial:
    total = dict(a)
    for m, q in b.items():
        total[m] = total.get(m, 0) + factor * q
    return {m: q for m, q in total.items() if q}


class Ratio(BySize):
    """`top`/`bottom`, both polynomials; `bottom` is never zero."""

    __slots__ = ("top", "bottom", "_digits")

    def __init__(self, top: Polynomial, bottom: Polynomial):
        self.top, self.bottom = top, bottom
        self._digits: Digits | None = None

    @classmethod
    def cosine(cls, angle: Fraction) -> Ratio:
        return cls({((("cos", angle), 1),): Fraction(1)}, _ONE)

    @classmethod
    def sine(cls, angle: Fraction) -> Ratio:
        return cls({((("sin", angle), 1),): Fraction(1)}, _ONE)

    @staticmethod
    def _make(top: Polynomial, bottom: Polynomial):
        if not top:
            return Fraction(0)
        if len(bottom) == 1 and () in bottom:
            scale = bottom[()]
            if scale != 1:
                top, bottom = {m: q / scale for m, q in top.items()}, _ONE
            if len(top) == 1 and () in top:
                return top[()]
        else:
            top, bottom = _cancel(top, bottom)
        if len(bottom) == 1 and () in bottom and len(top) == 1 and () in top:
            return top[()] / bottom[()]
        made = Ratio(top, bottom)
        return made if len(top) + len(bottom) <= MOST_TERMS else made.__digits__()

    def _pair(self, x: object) -> tuple[Polynomial, Polynomial] | None:
        if isinstance(x, Ratio):
            return x.top, x.bottom
        top = _from(x)
        return None if top is None else (top, _ONE)

    def __add__(self, other, factor: int = 1):
        pair = self._pair(other)
        if pair is None:
            return NotImplemented
        if pair[1] == self.bottom:
            return self._make(_plus(self.top, pair[0], factor), self.bottom)
        top = _plus(_times(self.top, pair[1]), _times(pair[0], self.bottom), factor)
        return self._make(top, _times(self.bottom, pair[1]))

    __radd__ = __add__

    def __neg__(self):
        return Ratio({m: -q for m, q in self.top.items()}, self.bottom)

    def __sub__(self, other):
        return self.__add__(other, -1)

    def __rsub__(self, other):
        return (-self).__add__(other)

    def __mul__(self, other):
        pair = self._pair(other)
        if pair is None:
            return NotImplemented
        return self._make(_times(self.top, pair[0]), _times(self.bottom, pair[1]))

    __rmul__ = __mul__

    def __truediv__(self, other):
        pair = self._pair(other)
        if pair is None:
            return NotImplemented
        if other == 0:
            raise ZeroDivisionError
        return self._make(_times(self.top, pair[1]), _times(self.bottom, pair[0]))

    def __rtruediv__(self, other):
        pair = self._pair(other)
        if pair is None:
            return NotImplemented
        if self == 0:
            raise ZeroDivisionError
        return self._make(_times(pair[0], self.bottom), _times(pair[1], self.top))

    def __digits__(self) -> Digits:
        if self._digits is None:
            self._digits = _evaluate(self.top) / _evaluate(self.bottom)
        return self._digits

    def __eq__(self, other):
        pair = self._pair(other)
        if pair is None:
            return NotImplemented
        if self.top == pair[0] and self.bottom == pair[1]:
            return True
        return self.__digits__() == Digits.of(other)

    def __hash__(self):
        return hash(round(float(self), 9))

    def __bool__(self):
        return not self.__digits__().is_zero()

    def __repr__(self):
        return f"Ratio({_show(self.top)} / {_show(self.bottom)})"


def atom_of(x: object) -> tuple[str, Fraction] | None:
    """("cos", angle) or ("sin", angle) when the number is just that, else None."""
    if isinstance(x, Ratio) and x.bottom == _ONE and len(x.top) == 1:
        (monomial, q), = x.top.items()
        if q == 1 and len(monomial) == 1 and monomial[0][1] == 1 and monomial[0][0][0] != "root":
            return monomial[0][0]
    return None


def _cancel(top: Polynomial, bottom: Polynomial) -> tuple[Polynomial, Polynomial]:
    """Divide both by the powers of cosines and angles that every monomial holds, and by the constant in front."""
    shared = None
    for m in (*top, *bottom):
        powers = dict(m)
        shared = powers if shared is None else {g: min(k, powers[g]) for g, k in shared.items() if g in powers}
        if not shared:
            break
    if shared:
        top, bottom = ({tuple((g, k - shared.get(g, 0)) for g, k in m if k > shared.get(g, 0)): q for m, q in p.items()}
                       for p in (top, bottom))
    front = bottom[min(bottom)]
    if front != 1:
        top = {m: q / front for m, q in top.items()}
        bottom = {m: q / front for m, q in bottom.items()}
    if len(bottom) == 1:
        # One monomial below: its roots and sines are cleared, its cosines stay.
        (monomial,) = bottom
        for g, _ in monomial:
            if g[0] == "root":
                top = {m: q / g[1] for m, q in _times(top, {((g, 1),): Fraction(1)}).items()}
                bottom = {tuple(x for x in n if x[0] != g): q for n, q in bottom.items()}
    if len(top) == len(bottom) and top.keys() == bottom.keys():
        first = min(top)
        times = top[first] / bottom[first]
        if all(q == times * bottom[m] for m, q in top.items()):
            return {(): times}, _ONE
    return top, bottom


def _evaluate(p: Polynomial) -> Digits:
    total = Digits.of(Fraction(0))
    for monomial, q in p.items():
        part = Digits.of(q)
        for (name, argument), power in monomial:
            argument = Digits.of(argument)
            value = argument.sqrt() if name == "root" else (digits_cos if name == "cos" else digits_sin)(argument)
            part = part * value**power
        total = total + part
    return total


def _show(p: Polynomial) -> str:
    return " + ".join(f"{q}" + "".join(f"*{n}({a})" + (f"^{k}" if k > 1 else "") for (n, a), k in m) for m, q in p.items()) or "0"
