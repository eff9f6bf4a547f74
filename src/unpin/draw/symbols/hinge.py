"""A pin: a small open circle (ISO 3952, revolute pair)."""

from __future__ import annotations

from unpin.draw.geometry import Spot
from unpin.draw.scene import circle
from unpin.draw.symbols.symbol import Symbol

RADIUS = 2.5


def hinge(at: Spot, owner: str) -> Symbol:
    x, y = at
    return Symbol((circle(at, RADIUS, "hinge", owner),), ((at, at, RADIUS + 0.6),), (x - 6, y - 6, x + 6, y + 6), "pin")


def knot(at: Spot, owner: str) -> Symbol:
    """A named point of a member at which nothing turns: a small dot."""
    x, y = at
    return Symbol((circle(at, 1.15, "knot", owner),), ((at, at, 1.4),), (x - 5, y - 5, x + 5, y + 5), "point")
