"""The dimension that the letters of a number make up: where it is not that of the number, measured numbers hide in it."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from unpin.base.units import Dimension
from unpin.exact.lettered import Lettered
from unpin.exact.letters import Letters


def homogeneous(x: Lettered, dimension: Dimension) -> bool:
    """Whether the letters alone make up the dimension of the number."""
    found = dimension_of(x)
    return found is not None and found == (dimension.length, dimension.force, dimension.mass)


def dimension_of(x: Lettered) -> tuple[Fraction, Fraction, Fraction] | None:
    """Powers of length, force and mass that the letters of a number make up; None where its terms differ in them, or where a
    number of unknown dimension stands in it."""
    letters, found = x.letters, set()
    for key, (n, d) in x.sums.items():
        parts = [(n, Fraction(1)), (d, Fraction(-1)), *((letters.radicands[r], Fraction(1, 2)) for r in key if not isinstance(letters.radicands[r], int))]
        total = [Fraction(0)] * 3
        for p, share in parts:
            one = _polynomial_dimension(p, letters)
            if one is None:
                return None
            total = [a + share * b for a, b in zip(total, one)]
        found.add(tuple(total))
    return found.pop() if len(found) == 1 else None


def _polynomial_dimension(p: Any, letters: Letters) -> tuple[Fraction, ...] | None:
    found = set()
    for powers in p.monoms():
        total = [Fraction(0)] * 3
        for k, power in enumerate(powers):
            if power:
                g = letters.generators[k]
                if g.kind in ("turn", "digits"):
                    return None
                total = [a + int(power) * b for a, b in zip(total, (g.dimension.length, g.dimension.force, g.dimension.mass))]
        found.add(tuple(total))
    return found.pop() if len(found) == 1 else None
