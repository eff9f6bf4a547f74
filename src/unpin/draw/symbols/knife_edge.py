"""A knife edge: a wedge under the part with its edge against it, on hatched ground; nothing joins the two."""

from __future__ import annotations

from unpin.draw.geometry import Spot
from unpin.draw.scene import Path
from unpin.draw.symbols.ground import DEPTH, ground
from unpin.draw.symbols.symbol import Frame, Symbol

EDGE, HEIGHT, HALF = 3.8, 12.0, 5.0
"""Where the edge is under the point (the underside of a member), height of the wedge, and half its width."""
LEVEL = EDGE + HEIGHT


def knife_edge(at: Spot, up: Spot, owner: str) -> Symbol:
    """`up`: the way it pushes on the part."""
    f = Frame(at, up)
    wedge = Path((f.spot(0, -EDGE), f.spot(HALF, -LEVEL), f.spot(-HALF, -LEVEL)), "wedge", owner, closed=True)
    room = (
        f.strip((0, -EDGE), (HALF, -LEVEL), 1),
        f.strip((0, -EDGE), (-HALF, -LEVEL), 1),
        f.strip((0, -EDGE - 4), (0, -LEVEL), 2.4),
        f.strip((-HALF - 6, -LEVEL - DEPTH / 2), (HALF + 5, -LEVEL - DEPTH / 2), DEPTH / 2 + 0.6),
    )
    return Symbol((*ground(f, -LEVEL, HALF + 5, owner), wedge), room, f.box(HALF + 5, -LEVEL - DEPTH, 3), "knife_edge_support")
