"""A rocker: a foot with a rounded sole under the hinge, on hatched ground (textbook practice)."""

from __future__ import annotations

import math

from unpin.draw.geometry import Spot, arc, page_angle
from unpin.draw.scene import Path
from unpin.draw.symbols.ground import DEPTH, ground
from unpin.draw.symbols.hinge import hinge
from unpin.draw.symbols.symbol import Frame, Symbol

FOOT, HALF, SOLE = 9.0, 7.0, 8.6
"""Height of the corners of the foot under the hinge, half its width, and the radius of its sole."""
LEVEL = FOOT - (SOLE**2 - HALF**2) ** 0.5 + SOLE


def rocker(at: Spot, up: Spot, owner: str, grounded: bool = True) -> Symbol:
    """`up`: the way it pushes on the part."""
    f = Frame(at, up)
    centre, low = f.spot(0, SOLE - LEVEL), page_angle((-up[0], -up[1]))
    sweep = math.degrees(math.asin(HALF / SOLE))
    sole = arc(centre, SOLE, low - sweep, low + sweep)
    foot = Path((at, *sole), "symbol", owner, closed=True)
    under = ground(f, -LEVEL, HALF + 4, owner) if grounded else ()
    room = (
        f.strip((0, 0), (HALF, -FOOT), 1),
        f.strip((0, 0), (-HALF, -FOOT), 1),
        f.strip((0, -2), (0, -FOOT), 3),
        f.strip((-HALF + 2, -FOOT - 1), (HALF - 2, -FOOT - 1), 3),
        *((f.strip((-HALF - 5, -LEVEL - DEPTH / 2), (HALF + 4, -LEVEL - DEPTH / 2), DEPTH / 2 + 0.6),) if grounded else ()),
    )
    return Symbol((*under, foot, *hinge(at, owner).marks), room, f.box(HALF + 4, -LEVEL - DEPTH, 3), "rocker_support")
