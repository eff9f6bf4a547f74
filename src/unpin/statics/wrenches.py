"""Actions and unknowns as wrenches on bodies: the columns of equilibrium."""

from __future__ import annotations

from collections.abc import Iterable

from unpin.exact.number import Number
from unpin.model.action import Action, Structure
from unpin.model.space import ZERO, Wrench, couple, force_at, plus, scaled

NOTHING: Wrench = (ZERO, ZERO, ZERO)


def unit_wrench(action: Action) -> Wrench:
    """Wrench for a unit scalar, per length of the direction's vector (see model.action)."""
    wrench = couple(ZERO + action.turn) if action.kind == "couple" else force_at(action.at, action.direction.vector)
    return wrench if action.share == 1 else scaled(wrench, action.share)


def load_wrench(action: Action) -> Wrench:
    """Wrench of a given action, in N and N·m."""
    if action.kind == "couple":
        return couple(action.value.value * action.turn)
    return scaled(unit_wrench(action), action.value.value / action.direction.length)


def columns(structure: Structure, bodies: Iterable[str] | None = None) -> dict[str, dict[str, Wrench]]:
    """unknown id -> body -> its wrench there per unit scalar."""
    keep = set(bodies) if bodies is not None else {b.name for b in structure.bodies}
    out: dict[str, dict[str, Wrench]] = {u.id: {} for u in structure.unknowns}
    for a in structure.actions:
        if a.unknown and a.on in keep:
            mine = out[a.unknown]
            mine[a.on] = plus(mine[a.on], unit_wrench(a)) if a.on in mine else unit_wrench(a)
    return out


def total_load(structure: Structure) -> dict[str, Wrench]:
    """body -> wrench of everything given."""
    out = {b.name: NOTHING for b in structure.bodies}
    for a in structure.actions:
        if not a.unknown and a.on in out:
            out[a.on] = plus(out[a.on], load_wrench(a))
    return out


def action_force(action: Action, values: dict[str, Number]) -> Number | None:
    """Signed size of the action along its assumed direction, N or N·m; None if its unknown is not known."""
    if not action.unknown:
        return action.value.value
    return values.get(action.unknown)
