"""A slot: a long hole with rounded ends in a plate of the member that has it, or between hatched ground, and the pin in it."""

from __future__ import annotations

import itertools
import math

from unpin.draw.geometry import Spot, arc, page_angle
from unpin.draw.scene import Mark, Path
from unpin.draw.symbols.ground import DEPTH, ground
from unpin.draw.symbols.hinge import hinge
from unpin.draw.symbols.symbol import Frame, Symbol

HOLE, RIM, REACH = 3.2, 2.6, 19.0
"""Half the width of the hole, the plate left beside it, and how far it goes each way where its ends are not given."""


def slot(at: Spot, up: Spot, owner: str, grounded: bool = True, reach: tuple[float, ...] | None = None) -> Symbol:
    """`up`: square to the slot; `reach`: how far it goes left and right of the pin in that frame, pt, and for a curved one how far
    up its centre is."""
    if reach is not None and len(reach) == 3:
        return _curved(at, up, owner, grounded, reach)
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


def hole(at: Spot, up: Spot, owner: str, reach: tuple[float, ...] | None = None) -> Symbol:
    """The slot of a member that is drawn by itself, without the pin."""
    whole = slot(at, up, owner, False, reach)
    return Symbol(whole.marks[:2], whole.room, whole.grab, "slot")


def _curved(at: Spot, up: Spot, owner: str, grounded: bool, reach: tuple[float, ...]) -> Symbol:
    """A slot along an arc: in a plate of its member, or in ground hatched along both sides."""
    f, (left, right, bend) = Frame(at, up), reach
    count = max(STEPS, round(math.degrees((left + right) / abs(bend)) / SMOOTH))

    def spot(along: float, height: float) -> Spot:
        turn = along / bend
        return f.spot((bend - height) * math.sin(turn), bend - (bend - height) * math.cos(turn))

    def outline(half: float, more: float) -> tuple[Spot, ...]:
        lo, hi = -left - more, right + more
        steps = [lo + (hi - lo) * k / count for k in range(count + 1)]
        round_ = [math.radians(90 * k / 4) for k in range(-3, 4)]
        cap = [spot(hi - half + half * math.cos(a), half * math.sin(a)) for a in reversed(round_)]
        back = [spot(lo + half - half * math.cos(a), half * math.sin(a)) for a in round_]
        inner = [s for s in steps if lo + half <= s <= hi - half]
        return (*(spot(s, half) for s in inner), *cap, *(spot(s, -half) for s in reversed(inner)), *back)

    marks: list[Mark] = []
    if grounded:
        for side in (1, -1):
            level = side * (HOLE + 0.8)
            strokes = max(3, round((left + right) / 4.4))
            places = [-left + (left + right) * (k + 0.5) / strokes for k in range(strokes)]
            marks += [Path((spot(s, level), spot(s - DEPTH * side, level + side * DEPTH)), "hatch", owner) for s in places]
            marks.append(Path(tuple(spot(-left + (left + right) * k / count, level) for k in range(count + 1)), "ground", owner))
    else:
        marks.append(Path(outline(HOLE + RIM, RIM), "block", owner, closed=True))
        marks.append(Path(outline(HOLE, 0.0), "symbol", owner, closed=True))
    outer = HOLE + 0.8 + DEPTH if grounded else HOLE + RIM
    coarse = count // 3
    line = [spot(-left + (left + right) * k / coarse, 0.0) for k in range(coarse + 1)]
    room = tuple((a, b, outer + 0.6) for a, b in itertools.pairwise(line))
    xs, ys = [s[0] for s in line], [s[1] for s in line]
    grab = (min(xs) - outer, min(ys) - outer, max(xs) + outer, max(ys) + outer)
    return Symbol((*marks, *hinge(at, owner).marks), room, grab, "slot_support")


STEPS, SMOOTH = 24, 4.0
"""Straight strokes of a curved slot at least, and how many degrees of it one may take."""


def _long(f: Frame, up: Spot, left: float, right: float, half: float) -> tuple[Spot, ...]:
    """The outline of a long hole of this half width whose ends are `left` and `right` of the frame's middle."""
    north = page_angle(up)
    near = f.spot(right - half, 0), f.spot(half - left, 0)
    return (*arc(near[0], half, north, north - 180), *arc(near[1], half, north - 180, north - 360))
