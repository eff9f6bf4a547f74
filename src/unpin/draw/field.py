"""Boxes that labels may fill and the field of obstacles they keep out of: strips (segments with thickness) in a grid of cells."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from unpin.draw.geometry import Box, Spot, Tilt, segment_meets_box, segment_meets_rect
from unpin.draw.symbols.symbol import Strip

CELL = 28.0
CLEAR = 1.6
"""Side of a cell; least clearance of a label from everything, pt."""


class Candidate(NamedTuple):
    """A box a label may fill. `cost`: dislike; `turn`: degrees anticlockwise of the text; `leader`: line to the owner, if one is
    needed; `tilt`: of the box, where the text is turned but not upright."""

    box: Box
    cost: float
    turn: float = 0.0
    leader: tuple[Spot, ...] = ()
    tilt: Tilt | None = None


ORIGIN = (0.0, 0.0)


class Offer:
    """Candidates in order of liking, made only as they are looked at: places relative to a spot, which repeat from label to label
    and are remembered, and the spots they are wanted at."""

    def __init__(self, *parts: tuple[Spot, tuple[Candidate, ...]]):
        self.parts = parts

    def __iter__(self) -> Iterator[Candidate]:
        for (x, y), places in self.parts:
            for (left, top, right, bottom), cost, turn, _, tilt in places:
                yield Candidate((left + x, top + y, right + x, bottom + y), cost, turn, (), tilt)

    def __len__(self) -> int:
        return sum(len(places) for _, places in self.parts)

    def __add__(self, other: Offer) -> Offer:
        return Offer(*self.parts, *other.parts)


def about(spot: Spot, far: float, strips: Iterable[Strip]) -> list[Strip]:
    """Those strips of which some part may be within so much of a spot, in their order."""
    left, top, right, bottom = spot[0] - far, spot[1] - far, spot[0] + far, spot[1] + far
    return [
        (p, q, half)
        for p, q, half in strips
        if (p[0] - half < right or q[0] - half < right)
        and (p[0] + half > left or q[0] + half > left)
        and (p[1] - half < bottom or q[1] - half < bottom)
        and (p[1] + half > top or q[1] + half > top)
    ]


class Field:
    """Obstacles in cells, so that a box meets only what is around it. Each is kept with the box it fills and its clearance;
    for one along an axis that box says all."""

    def __init__(self, strips: Iterable[Strip] = ()):
        self.last: tuple | None = None
        self.cells: dict[tuple[int, int], list[tuple[float, float, float, float, bool, Strip]]] = {}
        for strip in strips:
            self.add(strip)

    def add(self, strip: Strip) -> None:
        (ax, ay), (bx, by), half = strip
        grow = half + CLEAR
        x0, x1, y0, y1 = min(ax, bx) - grow, max(ax, bx) + grow, min(ay, by) - grow, max(ay, by) + grow
        entry = (x0, y0, x1, y1, abs(ax - bx) < 1e-6 or abs(ay - by) < 1e-6, strip)
        for i in range(int(x0 // CELL), int(x1 // CELL) + 1):
            for j in range(int(y0 // CELL), int(y1 // CELL) + 1):
                self.cells.setdefault((i, j), []).append(entry)

    def around(self, box: Box) -> Iterator[Strip]:
        """Strips whose own box, with clearance, meets the box."""
        left, top, right, bottom = box
        for i in range(int(left // CELL), int(right // CELL) + 1):
            for j in range(int(top // CELL), int(bottom // CELL) + 1):
                for x0, y0, x1, y1, _, strip in self.cells.get((i, j), ()):
                    if x0 < right and x1 > left and y0 < bottom and y1 > top:
                        yield strip

    def meets(self, box: Box, tilt: Tilt | None = None) -> bool:
        return next(self.free((Candidate(box, 0.0, tilt=tilt),)), None) is None

    def free(self, near: Iterable[Candidate]) -> Iterator[Candidate]:
        """Those candidates that meet nothing. The innermost loop of the room, so it is written out."""
        cells, last = self.cells, None
        for (dx, dy), places in near.parts if isinstance(near, Offer) else ((ORIGIN, near),):
            for place in places:
                (left, top, right, bottom), tilt = place[0], place[4]
                left, top, right, bottom = left + dx, top + dy, right + dx, bottom + dy
                # What stopped the place before mostly stops the next one too.
                if last is not None and last[0] < right and last[2] > left and last[1] < bottom and last[3] > top and tilt is None:
                    if last[4]:
                        continue
                    p, q, half = last[5]
                    grow = half + CLEAR
                    if segment_meets_box(p, q, (left - grow, top - grow, right + grow, bottom + grow)):
                        continue
                stopped = False
                for i in range(int(left // CELL), int(right // CELL) + 1):
                    for j in range(int(top // CELL), int(bottom // CELL) + 1):
                        for entry in cells.get((i, j), ()):
                            if entry[0] < right and entry[2] > left and entry[1] < bottom and entry[3] > top:
                                if entry[4] and tilt is None:
                                    last, stopped = entry, True
                                    break
                                p, q, half = entry[5]
                                grow = half + CLEAR
                                if tilt is None:
                                    stopped = segment_meets_box(p, q, (left - grow, top - grow, right + grow, bottom + grow))
                                else:
                                    stopped = segment_meets_rect(p, q, (left, top, right, bottom), tilt, grow)
                                if stopped:
                                    last = entry
                                    break
                        if stopped:
                            break
                    if stopped:
                        break
                if not stopped:
                    yield Candidate((left, top, right, bottom), place[1], place[2], place[3], tilt)
