"""When a number with letters has the sign that it has as drawn: always, or under a condition.

Letters are positive, letter angles between 0 and 90 degrees. A polynomial of which all coefficients have one sign keeps it; for
t = tan(θ/2) between 0 and 1 the coefficients in u with t = u/(1 + u) are asked. What this does not settle becomes a condition.
"""

from __future__ import annotations

from typing import Any

from unpin.base.record import record
from unpin.exact.expression import Expression
from unpin.exact.lettered import Lettered, Letters
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


def condition_of(p: Any, letters: Letters) -> Condition | None:
    """The same for one polynomial that is positive as drawn."""
    from unpin.exact.shape import inequality

    return None if definite(p, letters) else Condition(*inequality(letters, {(): p}))


def definite(p: Any, letters: Letters) -> bool:
    """Whether a polynomial has one sign for all positive letters and angles below 90 degrees."""
    from unpin.exact.circular import plain

    degrees, opened = p.degrees(), p
    for k, g in enumerate(letters.generators):
        if degrees[k] and g.kind == "half":
            opened = _shifted(opened, k, int(degrees[k]), letters.ring)
    return len({c > 0 for c in plain(opened, letters).values()}) == 1


def _shifted(p: Any, k: int, degree: int, ring: Any) -> Any:
    """(1 + u)^degree p(u/(1 + u)) in the place of t."""
    u, out = ring.gen(k), ring.constant(0)
    for powers, c in p.terms():
        part = ring.constant(int(c))
        for j, power in enumerate(powers):
            if power and j != k:
                part *= ring.gen(j) ** int(power)
        out += part * u ** int(powers[k]) * (1 + u) ** (degree - int(powers[k]))
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
