"""A built-in end: a hatched wall square across the end of the member."""

from __future__ import annotations

from unpin.draw.geometry import Spot
from unpin.draw.symbols.ground import DEPTH, ground
from unpin.draw.symbols.symbol import Frame, Symbol

HALF = 14.0
LEVEL = 3.8
"""The wall touches the rounded end of the member."""


def fixed(at: Spot, up: Spot, owner: str) -> Symbol:
    """`up`: from the wall into the member."""
    f = Frame(at, up)
    room = (f.strip((-HALF, -LEVEL - DEPTH / 2), (HALF, -LEVEL - DEPTH / 2), DEPTH / 2 + 0.8),)
    return Symbol(ground(f, -LEVEL, HALF, owner), room, f.box(HALF, -LEVEL - DEPTH, 4), "fixed_support")
