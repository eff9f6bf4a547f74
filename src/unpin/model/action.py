"""Forces and couples as they stand on a free-body diagram, the scalars behind them, and the bodies they act on.

Notation (see docs/notation.md): a wrench is (F_x, F_y, M_O), M anticlockwise about the origin O. The wrench of an
action is that of its `direction.vector`, *not* of the unit vector: a force per length. For a force along a line between
two rational points it is therefore rational, and the root appears only in `Unknown.scale`.
"""

from __future__ import annotations

from dataclasses import field
from fractions import Fraction
from typing import Literal

from unpin.base.record import record
from unpin.base.units import FORCE, MOMENT, SPREAD, Dimension
from unpin.exact.number import Number
from unpin.model.problem import Load, Problem
from unpin.model.values import Direction, Quantity, Vector


@record
class Symbol:
    """A quantity symbol as printed: `base` italic, `sub` its subscript (`C`, `x`), (`F`, `BD`), (`M`, `A`).
    `on` is the part it acts on where the name would otherwise be shared (`C_x` on arm, `C_x` on post). `shown`: base and subscript as
    the house style writes them, where it has a name of its own for this; the program itself goes by `base` and `sub`."""

    base: str
    sub: str = ""
    on: str = ""
    shown: tuple[str, str] | None = field(default=None, compare=False)


@record
class Action:
    """One arrow: a force at a point or a couple, on one body, by another.

    `id` is unique and stable (`C_x>arm`). `unknown`: id of its scalar, "" for a load. `on`, `by`: names of bodies,
    GROUND, or "" (by: the outside world). `direction`: the assumed sense *on this body*. `turn`: for couples, +1
    anticlockwise, -1 clockwise, times the scalar. `value`: known magnitude of a load. `sense`: how its sense is known:
    `assumed` (pin and support components), `tension` (links: away from the body they act on), `push` (contact),
    `given`. `pair`: id of the opposite action on the other body, "" if that is the outside. `load`: the load it is (for
    a spread load, the resultant of one piece of one stretch: `stretch` and `piece` count from 0, and -1 is no stretch).
    `multiple`: of its unknown that acts here (2 for 2P). `share`: the same for the
    direction's *vector*: 1 for the forces of a connection, whose scalar is a force per length; multiple over length for an
    unknown that drives several arrows of different lengths. Of a spread load to be found the scalar is its intensity, and
    `multiple` the area under it for an intensity of 1.
    """

    id: str
    kind: Literal["force", "couple"]
    on: str
    by: str
    point: str
    at: Vector
    unknown: str = ""
    symbol: Symbol | None = None
    direction: Direction | None = None
    turn: int = 1
    value: Quantity | None = None
    sense: Literal["assumed", "tension", "push", "given"] = "assumed"
    pair: str = ""
    source: str = ""
    load: Load | None = None
    stretch: int = -1
    piece: int = 0
    multiple: Number = Fraction(1)
    share: Number = Fraction(1)

    @property
    def dimension(self) -> Dimension:
        """Of its scalar."""
        if self.unknown and self.stretch >= 0:
            return SPREAD
        return MOMENT if self.kind == "couple" else FORCE


@record
class Unknown:
    """A scalar to find: `scale` times its value per length is the force in newtons (newton metres for a couple).

    `actions`: ids of every arrow it drives; `source`: the connection it comes from; `axial`: tension positive. `drives`: a
    connection's force stands on two bodies; an unknown load on any number, from outside; a cord's tension along every strand.
    """

    id: str
    symbol: Symbol
    kind: Literal["force", "couple", "spread"]
    source: str
    actions: tuple[str, ...]
    scale: Number
    axial: bool = False
    push_only: bool = False
    drives: Literal["connection", "load", "cord"] = "connection"

    @property
    def dimension(self) -> Dimension:
        return {"force": FORCE, "couple": MOMENT, "spread": SPREAD}[self.kind]


@record
class Body:
    """Something that can be isolated by itself. `rank` 3 for a rigid part, 2 for a pin or a block of no size."""

    name: str
    kind: Literal["part", "pin"]
    rank: int
    point: str = ""


@record
class TwoForce:
    """A member seen to be two-force: `points` are the two points at which forces act on it, `bent` if its own line
    leaves the chord."""

    member: str
    points: tuple[str, str]
    bent: bool
    unknown: str


@record
class Structure:
    """The structure taken apart: bodies, all actions on them, and the unknown scalars.

    Two exist of every problem: `statics.assemble(problem)` as the file says, and `statics.inspect(problem)` with the
    two-force members turned into unknowns. In the first `two_force` has only members of which the force is given.
    """

    problem: Problem
    bodies: tuple[Body, ...]
    unknowns: tuple[Unknown, ...]
    actions: tuple[Action, ...]
    two_force: tuple[TwoForce, ...] = ()
    zero: tuple[Insight, ...] = ()

    def unknown(self, id: str) -> Unknown:
        return next(u for u in self.unknowns if u.id == id)

    def action(self, id: str) -> Action:
        return next(a for a in self.actions if a.id == id)

    def actions_on(self, body: str) -> tuple[Action, ...]:
        return tuple(a for a in self.actions if a.on == body)


@record
class Insight:
    """Something seen without a sum. `rule`: `two_force`, `zero_corner`, `zero_tee`, `zero_along`, `pair`, …; `subject`: what it is
    about; `finds`: unknown ids it settles."""

    rule: str
    subject: str
    finds: tuple[str, ...] = ()


@record
class FreeBody:
    """A connected set of bodies cut loose. `actions`: everything that acts on it from outside, in the order of the
    file; internal pairs are left out. `kind`: `whole`, `part`, `pin`, `group`. `parts`: names in file order."""

    name: str
    kind: Literal["whole", "part", "pin", "group"]
    parts: tuple[str, ...]
    actions: tuple[Action, ...]

    @property
    def unknowns(self) -> tuple[str, ...]:
        return tuple(dict.fromkeys(a.unknown for a in self.actions if a.unknown))
