"""A block: a small box about its point."""

from __future__ import annotations

from unpin.draw.geometry import Spot
from unpin.draw.scene import Path
from unpin.draw.symbols.ground import DEPTH, ground
from unpin.draw.symbols.symbol import Frame, Symbol

HALF = 6.5


def block(at: Spot, up: Spot, owner: str) -> Symbol:
    f = Frame(at, up)
    spots = (f.spot(-HALF, -HALF), f.spot(HALF, -HALF), f.spot(HALF, HALF), f.spot(-HALF, HALF))
    return Symbol((Path(spots, "block", owner, closed=True),), (f.strip((-1, 0), (1, 0), HALF + 0.6),), f.box(HALF, -HALF, HALF), "block")


def floor(at: Spot, up: Spot, owner: str) -> Symbol:
    """The surface a block stands on."""
    f, half = Frame(at, up), 2.6 * HALF
    level = HALF + 1.0
    room = (f.strip((-half, -level - DEPTH / 2), (half, -level - DEPTH / 2), DEPTH / 2 + 0.6),)
    return Symbol(ground(f, -level, half, owner), room, f.box(half, -level - DEPTH, 0), "floor")


def channel(at: Spot, up: Spot, owner: str) -> Symbol:
    """The two walls between which a block slides."""
    one, two = floor(at, up, owner), floor(at, (-up[0], -up[1]), owner)
    outer = HALF + 1.0 + DEPTH
    return Symbol((*one.marks, *two.marks), (*one.room, *two.room), Frame(at, up).box(2.6 * HALF, -outer, outer), "channel")
