"""Equations as they are written on paper: a free body, a functional, and a list of terms with their factors."""

from __future__ import annotations

from typing import Literal

from unpin.base.record import record
from unpin.exact.number import Number
from unpin.model.action import Action, FreeBody
from unpin.model.values import Direction, Vector


@record
class Functional:
    """What is summed. `along`: forces along `direction` (its sense is the positive one). `about`: moments about the
    point `at`, anticlockwise positive; `point` is its name, "" for a point that has none."""

    kind: Literal["along", "about"]
    direction: Direction | None = None
    point: str = ""
    at: Vector = ()


@record
class Factor:
    """One factor of a term, positive, with what it comes from.

    cos, sin: of `angle` degrees. leg: `legs[0]/legs[1]`, a leg of a slope triangle over its hypotenuse. arm: the
    length `value` (metres) from the moment centre, measured along x (`axis` "x"), y, or square to the force
    (`axis` "square"), `points` the names of its ends where they have names. run: the length over which a spread load
    that is to be found lies. number: anything else.
    """

    kind: Literal["cos", "sin", "leg", "arm", "run", "number"]
    value: Number
    angle: Number | None = None
    legs: tuple[Number, Number] | None = None
    axis: str = ""
    points: tuple[str, str] = ("", "")


@record
class Term:
    """sign * (product of factors) * action; `coefficient` is that product with its sign, for the action's *force*
    (not per length). A sloped force gives up to two terms in one moment sum, one for each component."""

    action: Action
    sign: int
    factors: tuple[Factor, ...]
    coefficient: Number


@record
class Equation:
    """The terms add up to zero. Actions that the functional does not see have no term."""

    body: FreeBody
    functional: Functional
    terms: tuple[Term, ...]

    @property
    def unknowns(self) -> tuple[str, ...]:
        totals: dict[str, Number] = {}
        for t in self.terms:
            if t.action.unknown:
                before = totals.get(t.action.unknown)
                totals[t.action.unknown] = t.coefficient if before is None else before + t.coefficient
        # A tension on both sides of a pulley, or one load at two places, may cancel in the sum.
        return tuple(u for u, total in totals.items() if total != 0)
