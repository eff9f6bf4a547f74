"""Cutting bodies loose: which actions show on the free-body diagram of a connected set."""

from __future__ import annotations

from collections.abc import Iterable

from unpin.model.action import Action, FreeBody, Structure


def isolate(structure: Structure, names: Iterable[str]) -> FreeBody:
    """The free body of these bodies together. Forces between two of them are internal and left out; a load is always shown.

    Raises KeyError for a name that is no body of the structure.
    """
    wanted = set(names)
    known = {b.name: b for b in structure.bodies}
    for name in sorted(wanted):
        if name not in known:
            raise KeyError(name)
    chosen = tuple(b for b in structure.bodies if b.name in wanted)
    on_them = [a for a in structure.actions if a.on in wanted]
    inside = {a.id for a in on_them}
    actions = tuple(a for a in on_them if a.pair not in inside and not lifts(a))
    rigid = [b.name for b in chosen if b.kind == "part"]
    if len(chosen) == 1:
        kind = chosen[0].kind
    elif len(chosen) == len(structure.bodies) and not _cut_members(structure, actions):
        kind = "whole"
    else:
        kind = "group"
    shown = tuple(b.name for b in chosen)
    name = "whole" if kind == "whole" else " + ".join([*rigid, *_lone_pins(structure, chosen)] or shown)
    return FreeBody(name, kind, shown, actions)


def lifts(action: Action) -> bool:
    """Whether it is the force of a connection that is given to be zero: nothing acts there, and nothing is drawn."""
    return not action.unknown and action.load is None and action.value.value == 0


def _cut_members(structure: Structure, actions: tuple) -> bool:
    """Whether a two-force member is cut off: what is left is then no longer the whole structure."""
    members = {t.member for t in structure.two_force}
    return any(a.source in members for a in actions)


def _lone_pins(structure: Structure, chosen: tuple) -> list[str]:
    """Pins that hold only one part of the set: where the cut runs beside such a pin must be said."""
    rigid = {b.name for b in chosen if b.kind == "part"}
    touching: dict[str, set[str]] = {b.name: set() for b in chosen if b.kind == "pin" and len(chosen) > 1}
    for a in structure.actions:
        if a.on in touching and a.by in rigid:
            touching[a.on].add(a.by)
    return [pin for pin, parts in touching.items() if len(parts) == 1]


def neighbours(structure: Structure) -> dict[str, set[str]]:
    """Which bodies touch which: those that share an unknown."""
    touching: dict[str, set[str]] = {b.name: set() for b in structure.bodies}
    by_unknown: dict[str, set[str]] = {}
    for a in structure.actions:
        if a.unknown and a.on in touching:
            by_unknown.setdefault(a.unknown, set()).add(a.on)
    for bodies in by_unknown.values():
        for b in bodies:
            touching[b] |= bodies - {b}
    return touching
