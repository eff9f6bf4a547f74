"""A pin on the ground: a triangle under the hinge, on hatched ground."""

from __future__ import annotations

from unpin.draw.geometry import Spot
from unpin.draw.scene import Path
from unpin.draw.symbols.ground import DEPTH, ground
from unpin.draw.symbols.hinge import hinge
from unpin.draw.symbols.symbol import Frame, Symbol

HEIGHT, HALF = 12.5, 7.5


def pin(at: Spot, up: Spot, owner: str, height: float = HEIGHT) -> Symbol:
    """`height`: from the hinge to the ground, pt; taller where the ground is to lie beyond the rim of a wheel."""
    f = Frame(at, up)
    triangle = Path((at, f.spot(HALF, -height), f.spot(-HALF, -height)), "symbol", owner, closed=True)
    marks = (*ground(f, -height, HALF + 4, owner), triangle, *hinge(at, owner).marks)
    room = (
        f.strip((0, 0), (0, -2), 3.2),
        f.strip((0, 0), (HALF, -height), 1),
        f.strip((0, 0), (-HALF, -height), 1),
        f.strip((0, -2), (0, -height), 3),
        f.strip((-HALF - 5, -height - DEPTH / 2), (HALF + 4, -height - DEPTH / 2), DEPTH / 2 + 0.6),
    )
    return Symbol(marks, room, f.box(HALF + 4, -height - DEPTH, 3), "pin_support")
