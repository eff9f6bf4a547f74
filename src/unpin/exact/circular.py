"""From tangents of half angles back to sines and cosines.

With t = tan(θ/2) and C = 1 + t²: cos θ = (1 - t²)/C, sin θ = 2t/C, and so 1/C = (1 + cos θ)/2, t/C = sin θ/2, t²/C = (1 - cos θ)/2.
A polynomial of degree 2m (or 2m - 1) in t is C^m times a polynomial in sine and cosine; what is left of C is (2/(1 + cos θ)).
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from itertools import product as pairs
from typing import Any

from unpin.exact.lettered import Lettered
from unpin.exact.letters import Letters
from unpin.exact.number import NoWholeMultiple

Symbol = tuple[str, Any]
"""("letter", name), ("nested", index), ("number", prime), or (sin | cos | tan, angle), an angle being ((name, times), …)."""
Monomial = tuple[tuple[Symbol, int], ...]
Terms = dict[Monomial, Fraction]


def plain(p: Any, letters: Letters) -> Terms:
    """A polynomial as terms of symbols; half angles stay as ("half", name); numbers that are constants are put in."""
    out: Terms = {}
    for powers, c in p.terms():
        value, held = Fraction(int(c)), []
        for k, power in enumerate(powers):
            g = letters.generators[k] if power else None
            if g is None:
                continue
            if g.kind in ("turn", "digits"):
                value *= Fraction(g.drawn.value) ** int(power)
            else:
                held.append(((g.kind, k if g.kind == "nested" else g.name), int(power)))
        key = tuple(sorted(held, key=repr))
        out[key] = out.get(key, Fraction(0)) + value
    return {k: v for k, v in out.items() if v}


def times(a: Mapping[Monomial, Fraction], b: Mapping[Monomial, Fraction]) -> Terms:
    out: Terms = {}
    for (m, v), (n, w) in pairs(a.items(), b.items()):
        powers = dict(m)
        for s, k in n:
            powers[s] = powers.get(s, 0) + k
        key = tuple(sorted(((s, k) for s, k in powers.items() if k), key=repr))
        out[key] = out.get(key, Fraction(0)) + v * w
    return {k: v for k, v in out.items() if v}


def power(a: Terms, k: int) -> Terms:
    out: Terms = {(): Fraction(1)}
    for _ in range(k):
        out = times(out, a)
    return out


def opened(terms: Terms, name: str, m: int) -> Terms:
    """Terms with t of one angle, divided by C^m, in its sine and cosine."""
    angle = ((name, 1),)
    cosine, sine = {((("cos", angle), 1),): Fraction(1, 2)}, {((("sin", angle), 1),): Fraction(1, 2)}
    low = {(): Fraction(1, 2), **cosine}
    high = {(): Fraction(1, 2), **{k: -v for k, v in cosine.items()}}
    out: Terms = {}
    for monomial, c in terms.items():
        j = sum(k for s, k in monomial if s == ("half", name))
        rest = {tuple(x for x in monomial if x[0] != ("half", name)): c}
        share = times(times(power(high, j // 2), power(sine, j % 2)), power(low, m - j // 2 - j % 2))
        for key, value in times(rest, share).items():
            out[key] = out.get(key, Fraction(0)) + value
    return {k: v for k, v in out.items() if v}


def degree(terms: Terms, name: str) -> int:
    return max((sum(k for s, k in m if s == ("half", name)) for m in terms), default=0)


def shortest(terms: Terms, name: str, parts: int = 1) -> Terms:
    """The same with fewer terms where the square of the cosine, or one in its place, gives fewer; ties to the plain form. Of an angle that
    stands in two parts the whole is taken where no half is left over."""
    angle = ((name, 1),)
    c, s = ("cos", angle), ("sin", angle)
    both = {((c, 2),): Fraction(1), ((s, 2),): Fraction(1)}
    forms = [terms, _replaced(terms, c, {(): Fraction(1), ((s, 2),): Fraction(-1)})]
    if any(dict(m).get(c, 0) == 2 for m in terms):
        flat = {m: v for m, v in terms.items() if not any(x in (c, s) for x, _ in m)}
        if flat:
            spread: Terms = {}
            for m, v in (*((m, v) for m, v in terms.items() if m not in flat), *times(flat, both).items()):
                spread[m] = spread.get(m, Fraction(0)) + v
            forms.append({m: v for m, v in spread.items() if v})
    if parts == 2 and (whole := _doubled(terms, name)) is not None:
        forms.insert(0, whole)
    return min(forms, key=weight)


def _doubled(terms: Terms, name: str) -> Terms | None:
    """cos² = (1 + cos 2β)/2, sin² = (1 - cos 2β)/2, sin cos = sin 2β/2; None where a term has an odd power of both together."""
    c, s = ("cos", ((name, 1),)), ("sin", ((name, 1),))
    cosine, sine = ((("cos", ((name, 2),)), 1),), ((("sin", ((name, 2),)), 1),)
    half = Fraction(1, 2)
    forms = {c: {(): half, cosine: half}, s: {(): half, cosine: -half}}
    out: Terms = {}
    for m, v in terms.items():
        powers = dict(m)
        i, j = powers.pop(c, 0), powers.pop(s, 0)
        if (i + j) % 2:
            return None
        share = times(power(forms[c], i // 2), power(forms[s], j // 2))
        if i % 2:
            share = times(share, {sine: half})
        for key, value in times({tuple(powers.items()): v}, share).items():
            out[key] = out.get(key, Fraction(0)) + value
    out = {k: v for k, v in out.items() if v}
    return out if all(len([x for x, _ in k if x[0] in ("sin", "cos") and x[1] == ((name, 2),)]) < 2 for k in out) else None


def _replaced(terms: Terms, symbol: Symbol, square: Terms) -> Terms:
    out: Terms = {}
    for m, v in terms.items():
        k = dict(m).get(symbol, 0)
        rest = tuple((x, n if x != symbol else k % 2) for x, n in m if x != symbol or k % 2)
        for key, value in times({rest: v}, power(square, k // 2)).items():
            out[key] = out.get(key, Fraction(0)) + value
    return {k: v for k, v in out.items() if v}


def weight(terms: Terms) -> tuple[int, int]:
    """Terms, then symbols in them."""
    return len(terms), sum(k for m in terms for _, k in m)


def added(terms: Terms) -> Terms:
    """sin a cos b ± cos a sin b, cos a cos b ± sin a sin b as one function of the sum or difference."""
    if len(terms) != 2:
        return terms
    (m, v), (n, w) = terms.items()
    shared = tuple(x for x in m if x in n)
    one, two = ([x for x in k if x not in shared] for k in (m, n))
    if abs(v) != abs(w) or len(one) != 2 or len(two) != 2 or any(k != 1 for _, k in (*one, *two)):
        return terms
    kinds = {angle: kind for (kind, angle), _ in one if kind in ("sin", "cos")}
    other = {angle: kind for (kind, angle), _ in two if kind in ("sin", "cos")}
    if len(kinds) != 2 or kinds.keys() != other.keys() or any(kinds[a] == other[a] for a in kinds):
        return terms
    first, second = sorted(kinds, key=repr, reverse=True)
    if kinds[first] == kinds[second]:
        # cos cos and sin sin: the sign of the first is that of the whole.
        cosine, sine = (v, w) if kinds[first] == "cos" else (w, v)
        angle = first + tuple((n, -k) for n, k in second) if cosine * sine > 0 else first + second
        return {tuple(sorted((*shared, (("cos", angle), 1)), key=repr)): cosine}
    lead = v if kinds[first] == "sin" else w
    rest = w if kinds[first] == "sin" else v
    angle = first + second if lead * rest > 0 else first + tuple((n, -k) for n, k in second)
    return {tuple(sorted((*shared, (("sin", angle), 1)), key=repr)): lead}


def cosine_of(angle: Lettered) -> tuple[Fraction, tuple[Any, Any]]:
    """An angle such as 2θ + α - 30 taken apart: its number of degrees, and cosine and sine of the rest by the addition
    formulas. NoWholeMultiple unless it is a sum of whole multiples of letter angles and a number."""
    letters = angle.letters
    if set(angle.sums) != {()} or not angle.sums[()][1].is_constant():
        raise NoWholeMultiple
    top, bottom = angle.sums[()]
    below = int(bottom.leading_coefficient())
    number, point = Fraction(0), (Fraction(1), Fraction(0))
    for powers, c in top.terms():
        share, held = Fraction(int(c), below), [k for k, power in enumerate(powers) if power]
        if not held:
            number = share
            continue
        named = letters.generators[held[0]]
        if sum(powers) != 1 or named.kind != "angle" or share.denominator != 1:
            raise NoWholeMultiple
        one = letters.circle("half", named.name)
        one = one if share > 0 else (one[0], -one[1])
        for _ in range(abs(int(share))):
            point = (point[0] * one[0] - point[1] * one[1], point[0] * one[1] + point[1] * one[0])
    return number, point


def letter_angle(vector: tuple[Any, ...]) -> Any | None:
    """The letter angle between a direction and the level, or 90 less one; None where it is neither."""
    letters = next((c.letters for c in vector if isinstance(c, Lettered)), None)
    if letters is None:
        return None
    x, y = (abs(c) for c in vector)
    for k, g in enumerate(letters.generators):
        if g.kind == "angle":
            cosine, sine = letters.circle("half", g.name)
            for times_ in range(g.parts, 0, -1):
                c, s = (cosine, sine) if times_ == 1 else (cosine * cosine - sine * sine, 2 * sine * cosine)
                if y * c == x * s:
                    return times_ * letters.gen(k)
                if x * c == y * s:
                    return 90 - times_ * letters.gen(k)
    return None
