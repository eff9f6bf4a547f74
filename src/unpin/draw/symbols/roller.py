"""A roller: a pad under the hinge, two wheels between the pad and hatched ground (textbook practice)."""

from __future__ import annotations

from unpin.draw.geometry import Spot
from unpin.draw.scene import Path, circle
from unpin.draw.symbols.ground import DEPTH, ground
from unpin.draw.symbols.hinge import hinge
from unpin.draw.symbols.symbol import Frame, Symbol

PAD, HALF, WHEEL = 9.0, 6.6, 2.3
LEVEL = PAD + 2 * WHEEL + 0.6


def roller(at: Spot, up: Spot, owner: str, grounded: bool = True) -> Symbol:
    """`up`: the way it pushes on the part. Not `grounded`: between two parts, without ground."""
    f = Frame(at, up)
    pad = Path((at, f.spot(HALF, -PAD), f.spot(-HALF, -PAD)), "symbol", owner, closed=True)
    wheels = tuple(circle(f.spot(x, -PAD - WHEEL - 0.3), WHEEL, "symbol", owner) for x in (-3.4, 3.4))
    under = ground(f, -LEVEL, HALF + 5, owner) if grounded else ()
    room = (
        f.strip((0, 0), (0, -2), 3.2),
        f.strip((0, 0), (HALF, -PAD), 1),
        f.strip((0, 0), (-HALF, -PAD), 1),
        f.strip((0, -2), (0, -PAD), 3),
        f.strip((-3.4, -PAD - WHEEL), (3.4, -PAD - WHEEL), WHEEL + 1),
        *((f.strip((-HALF - 6, -LEVEL - DEPTH / 2), (HALF + 5, -LEVEL - DEPTH / 2), DEPTH / 2 + 0.6),) if grounded else ()),
    )
    return Symbol((*under, pad, *wheels, *hinge(at, owner).marks), room, f.box(HALF + 5, -LEVEL - DEPTH, 3), "roller_support")
