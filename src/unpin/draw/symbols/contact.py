"""A smooth contact that only pushes: a rounded nose resting on hatched ground, with no hinge and no wheels."""

from __future__ import annotations

from unpin.draw.geometry import Spot, arc, page_angle
from unpin.draw.scene import Path
from unpin.draw.symbols.ground import DEPTH, ground
from unpin.draw.symbols.symbol import Frame, Symbol

NOSE, HALF = 4.6, 12.0
LEVEL = 4.0 + NOSE


def contact(at: Spot, up: Spot, owner: str, grounded: bool = True) -> Symbol:
    """`up`: the way it pushes on the part."""
    f = Frame(at, up)
    down = page_angle((-up[0], -up[1]))
    nose = Path(arc(f.spot(0, -4.0), NOSE, down - 90, down + 90), "symbol", owner, closed=True)
    under = ground(f, -LEVEL, HALF, owner) if grounded else ()
    room = (
        f.strip((0, -2), (0, -4), NOSE + 0.6),
        *((f.strip((-HALF - 1, -LEVEL - DEPTH / 2), (HALF, -LEVEL - DEPTH / 2), DEPTH / 2 + 0.6),) if grounded else ()),
    )
    return Symbol((*under, nose), room, f.box(HALF, -LEVEL - DEPTH, 3), "contact_support")
