"""A collar: a short box round the rod, hinged to its member (a circle) or built on it (filled like the member)."""

from __future__ import annotations

from unpin.draw.geometry import Spot
from unpin.draw.scene import Mark, Path
from unpin.draw.symbols.ground import DEPTH, ground
from unpin.draw.symbols.hinge import hinge
from unpin.draw.symbols.symbol import Frame, Symbol

LONG, HIGH = 9.0, 5.6
"""Half the length and half the height of the box."""
ROD, WALL = 30.0, 6.0
"""How far a rod of the ground goes each way, and half the width of the ground at its ends."""


def collar(at: Spot, up: Spot, owner: str, grounded: bool = True, reach: tuple[float, float] | None = None) -> Symbol:
    """`up`: square to the rod; `reach`: how far a rod of the ground goes left and right of the collar in that frame, pt."""
    return _collar(at, up, owner, grounded, reach, (*_box(Frame(at, up), owner, "symbol"), *hinge(at, owner).marks), "collar_support")


def sleeve(at: Spot, up: Spot, owner: str, grounded: bool = True, reach: tuple[float, float] | None = None) -> Symbol:
    """A collar built on its member."""
    return _collar(at, up, owner, grounded, reach, _box(Frame(at, up), owner, "block"), "sleeve_support")


def _box(f: Frame, owner: str, role: str) -> tuple[Mark, ...]:
    corners = ((-LONG, -HIGH), (LONG, -HIGH), (LONG, HIGH), (-LONG, HIGH))
    return (Path(tuple(f.spot(*c) for c in corners), role, owner, closed=True),)


def _collar(at: Spot, up: Spot, owner: str, grounded: bool, reach, box: tuple[Mark, ...], spoken: str) -> Symbol:
    f = Frame(at, up)
    marks: list[Mark] = []
    room = [f.strip((-LONG, 0), (LONG, 0), HIGH + 0.8)]
    left, right = reach or (ROD, ROD)
    if grounded:
        ends = f.spot(-left, 0), f.spot(right, 0)
        marks += [Path(ends, role, owner) for role in ("link-edge", "link-flesh")]
        for end, way in zip(ends, (f.right, (-f.right[0], -f.right[1]))):
            wall = Frame(end, way)
            marks += ground(wall, 0, WALL, owner)
            room.append(wall.strip((-WALL - 1, -DEPTH / 2), (WALL, -DEPTH / 2), DEPTH / 2 + 0.6))
        room.append((*ends, 2.6))
    return Symbol((*marks, *box), tuple(room), f.box(LONG if not grounded else max(left, right), -HIGH, HIGH), spoken)
