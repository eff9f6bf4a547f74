"""Carrying values from the inspected structure back to the one in the file, across the pins by action and reaction."""

from __future__ import annotations

from collections.abc import Mapping

from unpin.exact.number import Number
from unpin.model.action import Structure
from unpin.model.directions import axis_of
from unpin.model.space import ZERO


def transfer(apart: Structure, inspected: Structure, values: Mapping[str, Number]) -> dict[str, Number]:
    """What values of the inspected structure say about unknowns of `apart`: the same unknown where it has the same name and
    the same first body, and the pin components of a two-force member from the force along its line (N, N·m)."""
    out: dict[str, Number] = {}
    mine = {u.id: u for u in inspected.unknowns}
    first_of = {u.id: inspected.action(u.actions[0]) for u in inspected.unknowns}
    for u in apart.unknowns:
        if u.id in values and u.id in mine:
            a, b = apart.action(u.actions[0]), first_of[u.id]
            if a.on == b.on and a.point == b.point and a.sense == b.sense:
                out[u.id] = values[u.id]
    for seen in inspected.two_force:
        force = next((u for u in inspected.unknowns if u.source == seen.member and u.axial), None)
        if force is None or force.id not in values:
            continue
        per_length = values[force.id] / force.scale
        for id in force.actions:
            end = inspected.action(id)
            # The member pulls its neighbour along `direction`; the pin pulls the member the other way.
            vector = tuple(-c * per_length for c in end.direction.vector)
            out.update(_pin_components(apart, seen.member, end.point, vector))
    return out


def _pin_components(apart: Structure, member: str, point: str, vector) -> dict[str, Number]:
    """The components at one end of a member, where a single pin and nothing else holds it there."""
    acting = [a for a in apart.actions if a.on == member and a.point == point and a.unknown]
    if [a.direction and axis_of(a.direction.vector) for a in acting] != ["x", "y"]:
        return {}
    found = {}
    for a in acting:
        index = 0 if a.direction.vector[0] != 0 else 1
        found[a.unknown] = vector[index] * a.direction.vector[index] / a.direction.length + ZERO
    return found
