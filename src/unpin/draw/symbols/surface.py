"""A smooth surface that the part leans on or stands on: hatched ground, touched in one small round spot, so that it is not
taken for a built-in end."""

from __future__ import annotations

from unpin.draw.geometry import Spot
from unpin.draw.scene import circle
from unpin.draw.symbols.ground import DEPTH, ground
from unpin.draw.symbols.symbol import Frame, Symbol

SIDE, NUB, HALF = 3.4, 1.7, 15.0
"""Half the thickness of a member, radius of the round spot, and half the width of the surface."""
LEVEL = SIDE + 2 * NUB


def surface(at: Spot, up: Spot, owner: str) -> Symbol:
    """`up`: the way it pushes on the part."""
    f = Frame(at, up)
    nub = circle(f.spot(0, -SIDE - NUB), NUB, "symbol", owner)
    room = (
        f.strip((0, -SIDE), (0, -LEVEL), NUB + 0.6),
        f.strip((-HALF - 1, -LEVEL - DEPTH / 2), (HALF, -LEVEL - DEPTH / 2), DEPTH / 2 + 0.6),
    )
    return Symbol((*ground(f, -LEVEL, HALF, owner), nub), room, f.box(HALF, -LEVEL - DEPTH, 3), "surface_support")


RIM = 1.1
"""How far below the rim of a wheel, or the corner of a block, the surface is."""


def rim(at: Spot, up: Spot, owner: str) -> Symbol:
    """The surface that a wheel or a block stands on or leans against."""
    f = Frame(at, up)
    room = (f.strip((-HALF - 1, -RIM - DEPTH / 2), (HALF, -RIM - DEPTH / 2), DEPTH / 2 + 0.6),)
    return Symbol(ground(f, -RIM, HALF, owner), room, f.box(HALF, -RIM - DEPTH, 0), "surface_support")
