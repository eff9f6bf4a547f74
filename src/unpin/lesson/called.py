"""What a connection is called from where it stands. To the mechanics it is its kind; a teacher says weld, edge or arc."""

from __future__ import annotations

from unpin.model.kinds import KINDS
from unpin.model.problem import GROUND, Connection, Problem

_ALSO = {"fixed": ("weld",), "knife_edge": ("edge",), "slot": ("arc",)}
"""What a kind may be called besides."""

CALLED = tuple(name for kind in KINDS for name in (kind, *_ALSO.get(kind, ())))
"""Every name of a connection, in the order of `model.kinds`."""


def called(c: Connection, problem: Problem) -> str:
    """One of `CALLED`: a fixed joint of two parts is a weld, a wheel meets the edge of a step and no knife edge, a slot may be an arc."""
    if c.kind == "fixed" and GROUND not in c.parts:
        return "weld"
    if c.kind == "knife_edge" and any(p.kind == "disc" and p.name in c.parts for p in problem.parts):
        return "edge"
    return "arc" if c.kind == "slot" and c.centre else c.kind
