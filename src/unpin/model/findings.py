"""What the kernel found out about a problem: soundness, values, proof. Data only; `statics` makes them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

from unpin.base.record import record
from unpin.exact.number import Number
from unpin.model.equation import Equation
from unpin.model.problem import Asked
from unpin.model.values import Vector

Twist = tuple[Number, Number, Number]
"""(v_x, v_y, omega): velocity of the point of the body at the origin, and the turn anticlockwise."""


@record
class Cause:
    """Why something can move or is ambiguous, as a code with arguments (`three_lines_concurrent`, `pins_in_line`…)."""

    code: str
    arguments: Mapping[str, object] = field(default_factory=dict)


@record
class Freedom:
    """One instantaneous motion. `twists` by body name (those that stand still are left out); `centres`: body name to
    its instant centre (absent: it translates); `work`: work of the loads in it; nonzero means no equilibrium."""

    twists: Mapping[str, Twist]
    centres: Mapping[str, Vector]
    work: Number
    failing: Equation | None = None


@record
class SelfStress:
    """A set of forces in balance without any load; `unknowns` share the ambiguity."""

    unknowns: tuple[str, ...]
    values: Mapping[str, Number]


@record
class Soundness:
    """The four statements, each by itself. `unknowns` and `sums` are the first count (3 per part, 2 per pin,
    less the sums that only say that a pulley does not spin or a hanging block does not sway);
    `found` pairs each asked thing with whether it is fixed by the loads; `holds`: the loads are in balance;
    `remarks`: near misses and assumptions, as codes."""

    freedoms: tuple[Freedom, ...]
    self_stresses: tuple[SelfStress, ...]
    found: tuple[tuple[Asked, bool], ...]
    causes: tuple[Cause, ...]
    unknowns: int
    sums: int
    holds: bool
    remarks: tuple[Cause, ...] = ()

    @property
    def solvable(self) -> bool:
        return self.holds and all(f for _, f in self.found)

    @property
    def determinate(self) -> bool:
        return not self.freedoms and not self.self_stresses


@record
class WorkCheck:
    """Virtual work for one asked unknown: released, the structure moves with `twists`; the work of the loads plus
    value times the released motion adds up to zero. `value`: what that work says the unknown is."""

    unknown: str
    twists: Mapping[str, Twist]
    value: Number
    agrees: bool


@record
class Balance:
    """The three (pin: two) sums of one body with all forces put back, all zero if `holds`."""

    body: str
    residuals: tuple[Number, ...]
    holds: bool


@record
class Proof:
    """Three independent confirmations. `full_solve`: values of an elimination without any inspection agree;
    `balances` of every body and the whole; `work` for each asked unknown. `closing`: one sum of the other kind that
    the route did not use, for the last step of the lesson."""

    full_solve: bool
    balances: tuple[Balance, ...]
    work: tuple[WorkCheck, ...]
    closing: Equation | None
    passed: bool
    failures: tuple[str, ...] = ()
