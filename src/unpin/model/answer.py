"""Answers: what was asked, with a value and a sense."""

from __future__ import annotations

from unpin.base.record import record
from unpin.base.units import Dimension
from unpin.exact.number import Number
from unpin.model.action import Symbol
from unpin.model.problem import Asked


@record
class Component:
    """One printed number of an answer. `sense`: a code: right, left, up, down, anticlockwise, clockwise, tension,
    compression, along (with the angle in `angle`, degrees anticlockwise from +x), zero;
    drawn or against for an unknown load that pulls several ways. `value` keeps the sign of the
    assumed sense; the magnitude is its absolute value. `unknown`: id behind it, "" for a resultant. `lean`: up over across of a
    sloped one, where letters are in it, so that no number of degrees can be said."""

    symbol: Symbol
    value: Number
    dimension: Dimension
    sense: str
    unknown: str = ""
    angle: float | None = None
    lean: Number | None = None


@record
class Answer:
    """`found` is False where statics alone does not fix it; then there are no components."""

    asked: Asked
    components: tuple[Component, ...]
    found: bool = True
