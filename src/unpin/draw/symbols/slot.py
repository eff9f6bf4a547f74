"""A slot: a long hole with rounded ends in a plate of the member that has it, or between hatched ground, and the pin in it."""

from __future__ import annotations

from unpin.draw.geometry import Spot, arc, page_angle
from unpin.draw.scene import Mark, Path
from unpin.draw.symbols.ground import DEPTH, ground
from unpin.draw.symbols.hinge import hinge
from unpin.draw.symbols.symbol import Frame, Symbol

HOLE, RIM, REACH = 3.2, 2.6, 19.0
"""Half the width of the hole, the plate left beside it, and how far it goes each way where its ends are not given."""


def slot(at: Spot, up: Spot, owner: str, grounded: bool = True, reach: tuple[float, float] | None = None) -> Symbol:
    """`up`: square to the slot; `reach`: how far it goes left and right of the pin in that frame, pt."""
    f = Frame(at, up)
    left, right = reach or (REACH, REACH)
    marks: list[Mark] = []
    if grounded:
        for turned, lo, hi in ((f, left, right), (Frame(at, (-up[0], -up[1])), right, left)):
            middle = Frame(turned.spot((hi - lo) / 2, 0), turned.up)
            marks += ground(middle, -HOLE - 0.8, (lo + hi) / 2, owner)
    else:
        marks.append(Path(_long(f, up, left + RIM, right + RIM, HOLE + RIM), "block", owner, closed=True))
        marks.append(Path(_long(f, up, left, right, HOLE), "symbol", owner, closed=True))
    outer = HOLE + 0.8 + DEPTH if grounded else HOLE + RIM
    room = (f.strip((-left, 0), (right, 0), outer + 0.6),)
    return Symbol((*marks, *hinge(at, owner).marks), room, f.box(max(left, right), -outer, outer), "slot_support")


def hole(at: Spot, up: Spot, owner: str, reach: tuple[float, float] | None = None) -> Symbol:
    """The slot of a member that is drawn by itself, without the pin."""
    whole = slot(at, up, owner, False, reach)
    return Symbol(whole.marks[:2], whole.room, whole.grab, "slot")


def _long(f: Frame, up: Spot, left: float, right: float, half: float) -> tuple[Spot, ...]:
    """The outline of a long hole of this half width whose ends are `left` and `right` of the frame's middle."""
    north = page_angle(up)
    near = f.spot(right - half, 0), f.spot(half - left, 0)
    return (*arc(near[0], half, north, north - 180), *arc(near[1], half, north - 180, north - 360))
