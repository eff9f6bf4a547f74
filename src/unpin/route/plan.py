"""A route as a value: steps, each a sum or a block of sums, with the unknowns they find and why they were chosen."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from fractions import Fraction

from unpin.base.record import record
from unpin.exact.number import Number
from unpin.model.equation import Equation


@record
class Reason:
    """Why this sum: a code of the catalogue and what fills it. `drops`: unknowns on the body that have no term,
    each with how: `through` (line passes through the centre), `square` (square to the direction), `known`."""

    code: str
    arguments: Mapping[str, object] = field(default_factory=dict)
    drops: tuple[tuple[str, str], ...] = ()


@record
class Step:
    """One move. `equations`: one sum, or the k sums of a block; `finds`: the unknowns it settles, in order;
    `values`: unknown id to exact value in SI (filled in by execution); `uses`: unknowns found earlier that it needs."""

    equations: tuple[Equation, ...]
    finds: tuple[str, ...]
    reason: Reason
    cost: Fraction = Fraction(0)
    uses: tuple[str, ...] = ()
    values: Mapping[str, Number] = field(default_factory=dict)


@record
class Route:
    """`count`: scalar sums written down. `lower`: the proved lower bound; `claim` is `fewest` when count == lower for
    the stated move set, `between` otherwise, `recommended` for the least-cost route."""

    steps: tuple[Step, ...]
    count: int
    cost: Fraction
    claim: str
    lower: int
    move_set: Mapping[str, object] = field(default_factory=dict)
