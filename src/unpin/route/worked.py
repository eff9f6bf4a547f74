"""The whole way from a problem to a proved solution, one call a phase, on one screen."""

from __future__ import annotations

from collections.abc import Mapping

from unpin.base.record import record
from unpin.exact.number import Number
from unpin.model.action import Structure
from unpin.model.answer import Answer
from unpin.model.findings import Proof, Soundness
from unpin.model.problem import Problem
from unpin.route.plan import Route
from unpin.statics.contacts import Opened


@record
class Worked:
    """Everything a lesson is made from.

    `apart`: the structure as the file says; `structure`: with two-force members turned into unknowns, the one the
    routes are written on. `fewest`, `recommended`: the two routes (None when the problem is not solvable);
    `others`: next best; `wanted`: the teacher's own, followed as far as it goes. `values`: id of every unknown of both
    structures that statics fixes, in SI (N, N·m). `rung`: 1 rationals, 2 roots, 3 angles, 4 fifty digits.
    `opened`: smooth contacts that would have had to pull; both structures are without them, `problem` is as given.
    """

    problem: Problem
    apart: Structure
    structure: Structure
    soundness: Soundness
    fewest: Route | None = None
    recommended: Route | None = None
    others: tuple[Route, ...] = ()
    wanted: object | None = None
    values: Mapping[str, Number] | None = None
    answers: tuple[Answer, ...] = ()
    proof: Proof | None = None
    rung: int = 1
    opened: tuple[Opened, ...] = ()
