"""When a number with letters has the sign that it has as drawn: always, or under a condition.

Letters are positive, letter angles between 0 and 90 degrees. A polynomial of which all coefficients have one sign keeps it; for
t = tan(θ/2) between 0 and 1 the coefficients in u with t = u/(1 + u) are asked; a² - a b + b² is positive since it has no root. What
this does not settle becomes a condition.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from unpin.base.record import record
from unpin.exact.circular import Terms, plain
from unpin.exact.circular import times as multiplied
from unpin.exact.expression import Expression
from unpin.exact.lettered import Lettered
from unpin.exact.letters import Letters
from unpin.exact.quotient import generators_in


@record
class Condition:
    """`greater` > `less`, as it is at the size that is drawn."""

    greater: Expression
    less: Expression


def condition(x: Any) -> Condition | None:
    """What must hold for a number to have the sign that it has as drawn; None where it has it for all values of its letters.
    Zero has no other sign."""
    if not isinstance(x, Lettered) or not x.lettered:
        return None
    from unpin.exact.shape import common, inequality

    letters = x.letters
    outside, inside = common(x)
    deciding = [f for p in outside for f in _indefinite(p, letters)]
    if len(inside) == 1:
        deciding += _indefinite(next(iter(inside.values())), letters)
    elif _outweighed(inside, letters):
        pass
    elif len({letters.value(p) > 0 for p in inside.values()}) > 1 or any(_indefinite(p, letters) for p in inside.values()):
        way = letters.ring.constant(1 if sum(letters.element({k: (p, letters.ring.constant(1))}) for k, p in inside.items()) > 0 else -1)
        return Condition(*inequality(letters, {k: way * p for k, p in inside.items()}))
    if not deciding:
        return None
    # cos(θ + α) is a product of two polynomials of half angles: the one that is positive anyway makes it readable.
    mates = [f for p in (*outside, *inside.values()) for f, _ in p.factor()[1] if f not in deciding and -f not in deciding]
    deciding += [f for f in mates if any(len(_halves(f, letters)) > 1 and _halves(f, letters) == _halves(g, letters) for g in deciding)]
    product = letters.ring.constant(1)
    for f in deciding:
        product *= f
    product = product if letters.value(product) > 0 else -product
    return Condition(*inequality(letters, {(): product}))


def _outweighed(inside: dict[tuple[int, ...], Any], letters: Letters) -> bool:
    """Whether one of two terms polynomial √radicand is always the larger: √(a² + h²) - a, by the squares of both."""
    if len(inside) != 2 or not all(definite(p, letters) for p in inside.values()):
        return False
    squares = []
    for key, p in inside.items():
        square = p * p
        for r in key:
            have = letters.radicands[r]
            square *= letters.ring.constant(have) if isinstance(have, int) else have
        squares.append(square)
    return definite(squares[0] - squares[1], letters)


def condition_of(p: Any, letters: Letters) -> Condition | None:
    """The same for one polynomial that is positive as drawn."""
    from unpin.exact.shape import inequality

    return None if definite(p, letters) else Condition(*inequality(letters, {(): p}))


def definite(p: Any, letters: Letters) -> bool:
    """Whether a polynomial has one sign for all positive letters and angles below 90 degrees."""
    degrees, opened = p.degrees(), p
    for k, g in enumerate(letters.generators):
        if degrees[k] and g.kind == "half":
            t = letters.ring.gen(k)
            if g.parts == 2 and p in (t * t + 2 * t - 1, 1 - 2 * t - t * t):
                return True  # the factor of cos 2β that is zero at 45 degrees, where β ends
            opened = _shifted(opened, k, int(degrees[k]), letters.ring, *(_QUARTER if g.parts == 2 else (1, 1)))
    terms = plain(opened, letters)
    return _positive(terms, DEPTH) or _positive({m: -c for m, c in terms.items()}, DEPTH)


DEPTH, MOST_TERMS = 3, 40
"""How often a polynomial is taken apart by one letter, and how long one may be that is."""


def _positive(terms: Terms, depth: int) -> bool:
    """Whether terms of positive symbols are positive together: each of them is, or they are A x² + B x + C in a power x of one
    symbol with A and C positive and B too or 4 A C - B²: then no x is a root (any book on quadratic equations)."""
    if all(c > 0 for c in terms.values()):
        return bool(terms)
    if not depth or len(terms) > MOST_TERMS:
        return False
    for symbol in dict.fromkeys(s for m in terms for s, _ in m):
        by_power: dict[int, Terms] = {}
        for m, c in terms.items():
            powers = dict(m)
            by_power.setdefault(powers.pop(symbol, 0), {})[tuple(powers.items())] = c
        top = max(by_power)
        if top % 2 or not by_power.keys() <= {0, top // 2, top} or 0 not in by_power:
            continue
        a, b, c = by_power[top], by_power.get(top // 2, {}), by_power[0]
        if _positive(a, depth - 1) and _positive(c, depth - 1):
            if not b or _positive(b, depth - 1) or _positive(_minus({m: 4 * v for m, v in multiplied(a, c).items()}, multiplied(b, b)), depth - 1):
                return True
    return False


def _minus(a: Terms, b: Terms) -> Terms:
    out = dict(a)
    for m, v in b.items():
        out[m] = out.get(m, Fraction(0)) - v
    return {m: v for m, v in out.items() if v}


_QUARTER = (169, 408)
"""Just above tan 22.5° = √2 - 1, where the tangent of a quarter of an angle below 90 degrees ends: a convergent of its continued fraction."""


def _shifted(p: Any, k: int, degree: int, ring: Any, top: int = 1, bottom: int = 1) -> Any:
    """(1 + u)^degree p(r u/(1 + u)) in the place of t, with r = top/bottom the largest t, times bottom^degree."""
    u, out = ring.gen(k), ring.constant(0)
    for powers, c in p.terms():
        part = ring.constant(int(c))
        for j, power in enumerate(powers):
            if power and j != k:
                part *= ring.gen(j) ** int(power)
        out += part * (top * u) ** int(powers[k]) * (bottom * (1 + u)) ** (degree - int(powers[k]))
    return out


def _indefinite(p: Any, letters: Letters) -> list[Any]:
    """The irreducible factors that decide the sign, positive as drawn."""
    out = []
    for f, times in p.factor()[1]:
        if int(times) % 2 and letters.holds_letters(f) and not definite(f, letters):
            out.append(f if letters.value(f) > 0 else -f)
    return out


def _halves(p: Any, letters: Letters) -> set[int]:
    return {k for k in generators_in(p) if letters.generators[k].kind == "half"}
