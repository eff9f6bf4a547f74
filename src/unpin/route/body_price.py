"""How natural a free body is: what a person pays for cutting it loose, by the cost table."""

from __future__ import annotations

from unpin.model.action import FreeBody, Structure
from unpin.model.kinds import KINDS
from unpin.model.problem import GROUND
from unpin.route.cost import CostTable


def riders(structure: Structure) -> dict[str, str]:
    """Discs that one other body carries and nothing else but cords touches: a pulley is left on its arm."""
    discs = {p.name for p in structure.problem.parts if p.kind == "disc"}
    touching: dict[str, set[str]] = {d: set() for d in discs}
    for a in structure.actions:
        if a.on in touching and a.unknown and a.source not in {c.name for c in structure.problem.cords}:
            touching[a.on].add(a.by)
    return {d: next(iter(by)) for d, by in touching.items() if len(by) == 1}


def body_cost(body: FreeBody, costs: CostTable, structure: Structure, sets: frozenset[frozenset[str]], carried: dict[str, str]) -> int:
    """What drawing and thinking of a free body costs, in hundredths of a plain sum. `sets`: all sets of bodies that are looked at;
    `carried`: the `riders`."""
    if body.kind == "whole":
        return costs.few_pins if _hung_from_ends(structure) else costs.whole
    if body.kind == "part":
        return costs.part
    if body.kind == "pin":
        return costs.pin
    rest = frozenset(b.name for b in structure.bodies) - frozenset(body.parts)
    if not rest:
        return costs.few_pins if _hung_from_ends(structure) else costs.whole
    core = [p for p in body.parts if carried.get(p) not in body.parts]
    if len(core) == 1 and core != list(body.parts):
        return costs.part if not core[0].startswith("pin ") else costs.pin
    rigid = _rigid_parts([p for p in core if not p.startswith("pin ")], structure)
    size = max(rigid, 1)
    if rigid == 1 and len(core) > 1 and _on_the_part(core, structure):
        # A part with the pins on it: as natural as the part, but the pins must be said.
        return costs.part + costs.pin * sum(p.startswith("pin ") for p in core)
    # What is left over being a pin alone means "all but one pin": nobody's choice.
    lone_pin = len(rest) == 1 and next(iter(rest)).startswith("pin ")
    if not rigid and len(body.parts) <= 3 and len(rest) > 3:
        return costs.few_pins
    side = rest in sets and not lone_pin
    return (costs.section if side else costs.group) + costs.each_more * (size - 1 if rigid else 0)


def _hung_from_ends(structure: Structure) -> bool:
    """Whether the whole is two or three pins held by links and cords alone, as knots in a cord are: nobody draws the pins together, since
    each by itself shows the same links cut."""
    names = {b.name for b in structure.bodies}
    standing = any(a.by == GROUND and a.on in names and a.unknown for a in structure.actions)
    return 1 < len(names) <= 3 and not standing and all(n.startswith("pin ") for n in names)


def _rigid_parts(parts: list[str], structure: Structure) -> int:
    """How many rigid things some parts are: those that nothing lets move against each other count as one."""
    groups = {p: {p} for p in parts}
    for c in structure.problem.connections:
        if not KINDS[c.kind].freedoms and len(c.parts) == 2 and c.parts[0] in groups and c.parts[1] in groups:
            joined = groups[c.parts[0]] | groups[c.parts[1]]
            groups.update(dict.fromkeys(joined, joined))
    return len({frozenset(g) for g in groups.values()})


def _on_the_part(core: list[str], structure: Structure) -> bool:
    """Whether one rigid thing and some pins belong together: each pin is a point of it."""
    points = {n for p in structure.problem.parts if p.name in core for n in p.points}
    return all(p.removeprefix("pin ") in points for p in core if p.startswith("pin "))
