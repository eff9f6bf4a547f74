"""Marks that show which two arrows are an action and its reaction: one for each two bodies that meet at one place."""

from __future__ import annotations

from unpin.model.action import Structure
from unpin.model.problem import GROUND


def pair_marks(structure: Structure) -> dict[str, int]:
    """Action id to 1, 2, …; both halves have the same, and so have the components of one force. Loads and the forces of the
    ground have none, for their partners are never drawn."""
    marks: dict[tuple, int] = {}
    out = {}
    on = {a.id: a.on for a in structure.actions}
    for a in structure.actions:
        other = on.get(a.pair, "")
        if not a.pair or GROUND in (a.on, other) or not other:
            continue
        key = (a.source, frozenset((a.on, other)), "" if a.sense == "tension" else a.point)
        out[a.id] = marks.setdefault(key, len(marks) + 1)
    return out
