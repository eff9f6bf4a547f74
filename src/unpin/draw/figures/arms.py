"""Arms of a moment sum that lie along no axis: radii of discs and perpendicular distances."""

from __future__ import annotations

from collections.abc import Mapping
from math import hypot

from unpin.base.units import LENGTH
from unpin.draw.cords import of_cord
from unpin.draw.items import DimensionItem, LeverItem, flat
from unpin.draw.lettering import Lettering
from unpin.exact.number import Number
from unpin.model.action import FreeBody, Structure
from unpin.model.space import difference
from unpin.model.values import Quantity, Vector


def on_rims(body: FreeBody, structure: Structure, centre: Vector | None) -> dict[str, tuple[str, float]]:
    """Pulls of cords that want no dimension along x or y, by id, with their disc and its radius: those on a disc about whose very
    centre moments are taken, and (where no centre is) strands that slope, whose tangent points nobody measures."""
    found: dict[str, tuple[str, float]] = {}
    discs = {p.name: p for p in structure.problem.parts if p.kind == "disc"}
    for a in body.actions:
        if a.on in discs and of_cord(structure, a) is not None:
            hub = structure.problem.coordinates[discs[a.on].points[0]]
            out = hypot(*flat(difference(a.at, hub)))
            if flat(centre) == flat(hub) if centre is not None else 0 not in a.direction.vector:
                found[a.id] = (a.on, min(map(float, discs[a.on].radii), key=lambda r: abs(r - out)))
    return found


def perpendicular(body: FreeBody, centre: Vector, levers: Mapping[str, Number], lettering: Lettering) -> list[LeverItem | DimensionItem]:
    """For each force in `levers` (id to perpendicular distance, m) that distance from the centre to its line."""
    items: list[LeverItem | DimensionItem] = []
    x, y = flat(centre)
    for a in body.actions:
        if a.id in levers and a.direction is not None:
            (px, py), (dx, dy) = flat(a.at), flat(a.direction.vector)
            share = ((x - px) * dx + (y - py) * dy) / (dx * dx + dy * dy)
            text = lettering.text(Quantity(levers[a.id], LENGTH))
            if abs(share) * hypot(dx, dy) > 1e-9:
                items.append(LeverItem(a.id, (x, y), (px + share * dx, py + share * dy), (px, py), text))
            else:
                items.append(DimensionItem(f"along:{a.id}", "along", (x, y), (px, py), text, chain=f"along {a.id}"))
    return items
