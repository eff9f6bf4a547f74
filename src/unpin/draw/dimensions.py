"""Dimension lines after ISO 129-1: outside the figure, arrowheads, extension lines with a gap, the text above the line.

Lengths along x stand below the figure or above it, lengths along y beside it, wherever their extension lines are short
and cross least. Dimensions of one chain share a line; others each have their own.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from unpin.draw import label as lettering
from unpin.draw.candidates import on_dimension
from unpin.draw.geometry import Box, Spot, segment_to_segment
from unpin.draw.items import DimensionItem
from unpin.draw.place import Wanted
from unpin.draw.scene import SMALL_SIZE, Arrow, Mark, Path
from unpin.draw.symbols.symbol import Strip

FIRST, NEXT_ROW, OVER, EXTENSION_GAP = 13.0, 15.0, 2.0, 2.5
NARROW = 15.0
"""Between closer extension lines the arrows come from outside."""
DIMENSION_HEAD = (5.0, 1.5)


@dataclass
class Laid:
    marks: list[Mark] = field(default_factory=list)
    strips: list[Strip] = field(default_factory=list)
    wanted: list[Wanted] = field(default_factory=list)
    labels: dict[str, tuple] = field(default_factory=dict)


def lay(items: list[tuple[DimensionItem, Spot, Spot]], spots: list[Spot], obstacles: list[Strip], crossing: list[Strip],
        frame: Box) -> Laid:
    """`items` with their ends on the page; `spots`: every named point on the page; `obstacles`: all the room taken, `crossing`:
    those of them an extension line had better not cross; `frame`: the box of all that is drawn."""
    laid = Laid()
    for axis in ("x", "y"):
        mine = [i for i in items if i[0].axis == axis]
        if mine:
            side = _side(axis, mine, spots, obstacles, crossing, frame)
            _lay_axis(axis, side, mine, spots, obstacles, frame, laid)
    return laid


def _side(axis: str, items, spots: list[Spot], obstacles: list[Strip], crossing: list[Strip], frame: Box) -> int:
    """+1 below or right, -1 above or left; below and left unless the other is clearly better."""
    costs = {}
    for side in (1, -1):
        level = _level(axis, side, frame, 0)
        cost = 0.0
        for value in _values(axis, items):
            spot = _nearest(axis, side, value, spots)
            begin = _begin(axis, side, value, spot, obstacles)
            start, end = ((value, begin), (value, level)) if axis == "x" else ((begin, value), (level, value))
            cost += _far(spot, end) + 30 * sum(segment_to_segment(start, end, p, q) < half for p, q, half in crossing)
        costs[side] = cost
    liked = 1 if axis == "x" else -1
    return liked if costs[liked] <= costs[-liked] + 45 else -liked


def _far(a: Spot, b: Spot) -> float:
    return abs(a[0] - b[0]) + abs(a[1] - b[1])


def _values(axis: str, items) -> list[float]:
    k = 0 if axis == "x" else 1
    return sorted({round(s[k], 4) for _, a, b in items for s in (a, b)})


def _level(axis: str, side: int, frame: Box, row: int) -> float:
    edge = {("x", 1): frame[3], ("x", -1): frame[1], ("y", 1): frame[2], ("y", -1): frame[0]}[axis, side]
    return edge + side * (FIRST + NEXT_ROW * row)


def _nearest(axis: str, side: int, value: float, spots: list[Spot]) -> Spot:
    """The named point at this coordinate that is nearest to the side."""
    k = 0 if axis == "x" else 1
    at = [s for s in spots if abs(s[k] - value) < 0.02]
    return max(at, key=lambda s: side * s[1 - k]) if at else ((value, 0.0) if k == 0 else (0.0, value))


def _lay_axis(axis: str, side: int, items, spots, obstacles, frame: Box, laid: Laid) -> None:
    rows = {level: n for n, level in enumerate(sorted({i[0].level for i in items}))}
    k = 0 if axis == "x" else 1
    outermost: dict[float, float] = {}
    for item, a, b in items:
        level = _level(axis, side, frame, rows[item.level])
        low, high = sorted((a[k], b[k]))
        start, end = ((low, level), (high, level)) if axis == "x" else ((level, high), (level, low))
        for value in (low, high):
            known = outermost.get(round(value, 4), level)
            outermost[round(value, 4)] = max(known, level) if side > 0 else min(known, level)
        laid.marks += _line(start, end, item.owner)
        laid.strips.append((start, end, 1.3))
        size = (lettering.width(item.label, SMALL_SIZE), lettering.height(item.label, SMALL_SIZE))
        key = f"dimension {item.owner}"
        laid.labels[key] = (item.label, SMALL_SIZE, "dimension", item.owner)
        laid.wanted.append(Wanted(key, on_dimension(start, end, size, axis == "y"), ((start, end, 0.0),)))
    for value, level in sorted(outermost.items()):
        spot = _nearest(axis, side, value, spots)
        begin = _begin(axis, side, value, spot, obstacles)
        end = level + side * OVER
        if side * (end - begin) > 2:
            path = ((value, begin), (value, end)) if axis == "x" else ((begin, value), (end, value))
            laid.marks.append(Path(path, "extension"))
            laid.strips.append((path[0], path[1], 0.3))


def _begin(axis: str, side: int, value: float, spot: Spot, obstacles: list[Strip]) -> float:
    """Where the extension line begins: past the point and past whatever of its symbol lies in the way."""
    k = 0 if axis == "x" else 1
    reach = spot[1 - k]
    for p, q, half in sorted(obstacles, key=lambda s: side * min(side * s[0][1 - k], side * s[1][1 - k])):
        if min(p[k], q[k]) - half <= value <= max(p[k], q[k]) + half:
            low, high = sorted((side * p[1 - k], side * q[1 - k]))
            if p[k] != q[k] and abs(p[k] - q[k]) > 2 * half:
                share = min(1.0, max(0.0, (value - p[k]) / (q[k] - p[k])))
                low = high = side * (p[1 - k] + share * (q[1 - k] - p[1 - k]))
            if low - half <= side * reach + 4:
                reach = side * max(side * reach, high + half)
    return reach + side * EXTENSION_GAP


def _line(start: Spot, end: Spot, owner: str) -> list[Mark]:
    length = _far(start, end)
    if length >= NARROW:
        return [Arrow((start, end), "dimension", owner, "both", head=DIMENSION_HEAD)]
    way = ((end[0] - start[0]) / length, (end[1] - start[1]) / length)
    out = 11.0
    before = (start[0] - out * way[0], start[1] - out * way[1])
    after = (end[0] + out * way[0], end[1] + out * way[1])
    return [Path((start, end), "extension", owner), Arrow((before, start), "dimension", owner, head=DIMENSION_HEAD),
            Arrow((after, end), "dimension", owner, head=DIMENSION_HEAD)]
