"""A pin on the ground: a triangle under the hinge, on hatched ground."""

from __future__ import annotations

from unpin.draw.geometry import Spot
from unpin.draw.scene import Path
from unpin.draw.symbols.ground import DEPTH, ground
from unpin.draw.symbols.hinge import hinge
from unpin.draw.symbols.symbol import Frame, Symbol

HEIGHT, HALF = 12.5, 7.5


def pin(at: Spot, up: Spot, owner: str) -> Symbol:
    f = Frame(at, up)
    triangle = Path((at, f.spot(HALF, -HEIGHT), f.spot(-HALF, -HEIGHT)), "symbol", owner, closed=True)
    marks = (*ground(f, -HEIGHT, HALF + 4, owner), triangle, *hinge(at, owner).marks)
    room = (
        f.strip((0, 0), (0, -2), 3.2),
        f.strip((0, 0), (HALF, -HEIGHT), 1),
        f.strip((0, 0), (-HALF, -HEIGHT), 1),
        f.strip((0, -2), (0, -HEIGHT), 3),
        f.strip((-HALF - 5, -HEIGHT - DEPTH / 2), (HALF + 4, -HEIGHT - DEPTH / 2), DEPTH / 2 + 0.6),
    )
    return Symbol(marks, room, f.box(HALF + 4, -HEIGHT - DEPTH, 3), "pin_support")
