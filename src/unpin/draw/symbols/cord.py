"""A cord: a thin line, its arcs on rims, the eye it is tied to, and the anchor of one that ends at the ground."""

from __future__ import annotations

import itertools

from unpin.draw.geometry import Spot, box_of
from unpin.draw.scene import Path, circle
from unpin.draw.symbols.ground import DEPTH, ground
from unpin.draw.symbols.symbol import Frame, Symbol

HALF, EYE, RING = 0.65, 2.0, 3.8
ANCHOR = 8.0


def cord(strands: tuple[tuple[Spot, Spot], ...], arcs: tuple[tuple[Spot, ...], ...], owner: str) -> Symbol:
    marks = tuple(Path(spots, "cord", owner) for spots in (*strands, *arcs))
    room = tuple((a, b, HALF + 0.3) for spots in (*strands, *(a[::2] for a in arcs)) for a, b in itertools.pairwise(spots))
    return Symbol(marks, room, box_of(s for m in marks for s in m.spots), "cord")


def eye(at: Spot, owner: str, radius: float = EYE) -> Symbol:
    """Where a cord is tied; a ring that it runs through is larger."""
    x, y = at
    return Symbol((circle(at, radius, "eye", owner),), ((at, at, radius + 0.6),), (x - 5, y - 5, x + 5, y + 5), "eye")


def anchor(at: Spot, up: Spot, owner: str) -> Symbol:
    """Ground behind the eye of a cord; `up`: along the cord, away from the ground."""
    f = Frame(at, up)
    room = (f.strip((-ANCHOR, -EYE - DEPTH / 2), (ANCHOR, -EYE - DEPTH / 2), DEPTH / 2 + 0.6),)
    return Symbol(ground(f, -EYE, ANCHOR, owner), room, f.box(ANCHOR, -EYE - DEPTH, 2), "anchor")
