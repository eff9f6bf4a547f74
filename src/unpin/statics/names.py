"""The names that the house style gives to forces: which pattern goes to which unknown, and what to do when two would be one.

Only `Symbol.shown` is set. Everything that decides by a name decides by the program's own.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from unpin.model.action import Structure, Symbol, Unknown
from unpin.model.answer import Answer, Component
from unpin.model.house import House, filled
from unpin.model.problem import GROUND, Problem

Names = dict[str, tuple[str, tuple[str, str]]]
"""By id of an unknown: the kind of its name, and base and subscript."""


def lettered(structure: Structure) -> Structure:
    """The structure with every unknown and every arrow lettered as the house does it; itself for a house without names of its own.
    Kinds of name by which two forces would be called alike are left as the program names them (see `clashes`)."""
    house = structure.problem.house
    if not house.names:
        return structure
    names = _unique(structure, _wished(structure))
    if not names:
        return structure

    def shown(of: Symbol, unknown: str) -> Symbol:
        return replace(of, shown=names[unknown][1]) if unknown in names else of

    return replace(structure, unknowns=tuple(replace(u, symbol=shown(u.symbol, u.id)) for u in structure.unknowns),
                   actions=tuple(replace(a, symbol=shown(a.symbol, a.unknown)) if a.unknown else a for a in structure.actions))


def clashes(structure: Structure) -> dict[str, tuple[str, ...]]:
    """Kinds of name that the house could not have here, each with the program's own names of two forces that would be called alike."""
    wished = _wished(structure)
    kept = _unique(structure, wished)
    out: dict[str, tuple[str, ...]] = {}
    for kind in dict.fromkeys(kind for kind, _ in wished.values()):
        if not any(k == kind for k, _ in kept.values()):
            alike = next((pair for pair in _alike(structure, wished) if kind in {wished[u][0] for u in pair if u in wished}), ())
            out[kind] = tuple(alike)
    return out


def renamed(answer: Answer, structure: Structure) -> Answer:
    """The components of an answer that are no unknowns, components and sizes put together from several, in the names of the house."""
    house = structure.problem.house
    if not house.names:
        return answer
    shown = {u.id: u.symbol.shown for u in structure.unknowns}
    return replace(answer, components=tuple(_component(c, answer, structure.problem, shown) for c in answer.components))


def _component(c: Component, answer: Answer, problem: Problem, shown) -> Component:
    if c.unknown in shown:
        return replace(c, symbol=replace(c.symbol, shown=shown[c.unknown]))
    return replace(c, symbol=part_of(c.symbol, problem, held=answer.asked.kind != "pin"))


def part_of(symbol: Symbol, problem: Problem, held: bool) -> Symbol:
    """A component or a size that is no unknown of its own, at a point that is `held` by a support or is a pin."""
    axis = symbol.sub
    kind = ("reaction" if held else "pin") if axis in ("x", "y") else "" if axis else "resultant"
    patterns = problem.house.names.get(kind, ())
    if not patterns:
        return symbol
    return replace(symbol, shown=filled(patterns[-1 if axis == "y" else 0], kind, symbol.base))


def _wished(structure: Structure) -> Names:
    house, out = structure.problem.house, {}
    held = {c.name: c for c in structure.problem.connections if GROUND in c.parts and c.kind != "link"}
    for u in structure.unknowns:
        found = _wish(u, house, held, structure)
        if found:
            out[u.id] = found
    return out


def _wish(u: Unknown, house: House, held, structure: Structure) -> tuple[str, tuple[str, str]] | None:
    if u.drives != "connection":
        return None
    first = structure.action(u.actions[0])
    if u.axial:
        kind, name, place = "link", u.symbol.sub, 0
    elif u.kind == "couple":
        kind, name, place = "couple", u.symbol.sub, 0
    else:
        alone = sum(x.source == u.source and x.kind == "force" for x in structure.unknowns) == 1
        kind = ("roller" if alone else "reaction") if u.source in held else "pin"
        name, place = first.point, -1 if u.symbol.sub == "y" else 0
        if kind == "pin" and alone:
            return None
    patterns = house.names.get(kind, ())
    return (kind, filled(patterns[place], kind, name)) if patterns else None


def _unique(structure: Structure, names: Names) -> Names:
    """Without the kinds by which two forces would be called alike; taking one kind back may bring up another."""
    names = dict(names)
    while True:
        taken = {names[u][0] for pair in _alike(structure, names) for u in pair if u in names}
        if not taken:
            return names
        names = {u: found for u, found in names.items() if found[0] not in taken}


def _alike(structure: Structure, names: Names) -> Iterable[tuple[str, str]]:
    """Pairs of things that bear one name: unknowns by id, loads with a letter by that letter."""
    first: dict[tuple, str] = {}
    loads = {a.symbol.base for a in structure.actions if a.load is not None and a.symbol is not None and not a.unknown}
    for name in sorted(loads):
        first[(*_split(name), "")] = name
    for u in structure.unknowns:
        base, sub = names[u.id][1] if u.id in names else (u.symbol.base, u.symbol.sub)
        if u.drives != "connection":
            base, sub = _split(base) if not sub else (base, sub)
        key = (base, sub, u.symbol.on)
        if key in first:
            yield first[key], u.id
        else:
            first[key] = u.id


def _split(name: str) -> tuple[str, str]:
    """`P_1` and `P1` are both P with the subscript 1."""
    base, under, sub = name.partition("_")
    if under:
        return base, sub
    short = name.rstrip("0123456789") or name
    return short, name[len(short):]
