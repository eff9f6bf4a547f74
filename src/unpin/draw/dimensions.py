"""Dimension lines after ISO 129-1: outside the figure, arrowheads, extension lines with a gap, the text above the line.

Lengths along x stand below the figure or above it, lengths along y beside it, wherever their extension lines are short
and cross least. Dimensions of one chain share a line; others each have their own.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import partial

from unpin.draw import label as lettering
from unpin.draw.candidates import led, on_dimension
from unpin.draw.geometry import Box, Spot, apart, between, segment_to_segment
from unpin.draw.items import DimensionItem
from unpin.draw.place import Wanted
from unpin.draw.scene import SMALL_SIZE, Arrow, Mark, Path
from unpin.draw.symbols.symbol import Strip

FIRST, NEXT_ROW, OVER, EXTENSION_GAP = 13.0, 15.0, 2.0, 2.5
NARROW = 15.0
"""Between closer extension lines the arrows come from outside."""
STEPS = 3
"""Lines on which close neighbours take turns."""
DIMENSION_HEAD = (5.0, 1.5)
STROKE = 1.8
"""Half of the side of an oblique stroke, pt."""


@dataclass
class Laid:
    marks: list[Mark] = field(default_factory=list)
    strips: list[Strip] = field(default_factory=list)
    wanted: list[Wanted] = field(default_factory=list)
    labels: dict[str, tuple] = field(default_factory=dict)

    def draw_line(self, start: Spot, end: Spot, owner: str, struck: bool = False) -> None:
        """The line with its arrowheads, or struck through at its ends, and the room both take."""
        marks = struck_line(start, end, owner) if struck else dimension_line(start, end, owner)
        self.marks += marks
        self.strips += [(m.spots[0], m.spots[-1], 0.8) for m in marks if isinstance(m, (Arrow, Path))]


def lay(
    items: list[tuple[DimensionItem, Spot, Spot]], spots: list[Spot], obstacles: list[Strip], crossing: list[Strip], frame: Box
) -> Laid:
    """`items` with their ends on the page; `spots`: every named point on the page; `obstacles`: all the room taken, `crossing`:
    those of them an extension line had better not cross; `frame`: the box of all that is drawn."""
    laid = Laid()
    for axis in ("x", "y"):
        mine = [i for i in items if i[0].axis == axis]
        spans = _spans(axis, obstacles) if mine else []
        taken: dict[int, list[list[tuple[float, float]]]] = {1: [], -1: []}
        outermost: dict[tuple[int, float], tuple[float, Spot]] = {}
        for chain in dict.fromkeys(i[0].chain for i in mine):
            links = [i for i in mine if i[0].chain == chain]
            side = _side(axis, links, spots, spans, crossing, frame, len(taken[1]), len(taken[-1]))
            _lay_chain(axis, side, links, frame, taken[side], outermost, laid)
        _extend(axis, outermost, spots, spans, laid)
    return laid


def _side(axis: str, items, spots: list[Spot], spans: list[Span], crossing: list[Strip], frame: Box, *rows: int) -> int:
    """+1 below or right, -1 above or left; below and left unless the other is clearly better."""
    costs = {}
    for side, row in zip((1, -1), rows):
        level = _level(axis, side, frame, row)
        cost = 12.0 * row
        for value in _values(axis, items):
            spot = _nearest(axis, side, value, spots)
            begin = _begin(axis, side, value, spot, spans)
            start, end = ((value, begin), (value, level)) if axis == "x" else ((begin, value), (level, value))
            cost += _far(spot, end) + 30 * _crossings(axis, start, end, crossing)
        costs[side] = cost
    liked = 1 if axis == "x" else -1
    return liked if costs[liked] <= costs[-liked] + 45 else -liked


def _crossings(axis: str, start: Spot, end: Spot, strips: list[Strip]) -> int:
    """How many strips a level or upright line comes across."""
    k, value = (0, start[0]) if axis == "x" else (1, start[1])
    low, high = min(start[1 - k], end[1 - k]), max(start[1 - k], end[1 - k])
    return sum(
        segment_to_segment(start, end, p, q) < half
        for p, q, half in strips
        if (p[k] - half < value or q[k] - half < value)
        and (p[k] + half > value or q[k] + half > value)
        and (p[1 - k] - half < high or q[1 - k] - half < high)
        and (p[1 - k] + half > low or q[1 - k] + half > low)
    )


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


def _lay_chain(axis: str, side: int, items, frame: Box, taken: list[list[tuple[float, float]]], outermost, laid: Laid) -> None:
    """Each level of the chain on the first line, counted outwards, where it overlaps nothing and lies beyond the level before."""
    k = 0 if axis == "x" else 1
    row = 0
    levels = _staggered(k, items)
    crowded = any(step for _, step in levels.values())
    for level in sorted(set(levels.values())):
        mine = [(item, *sorted((a, b), key=lambda s: s[k])) for item, a, b in items if levels[item.owner] == level]
        if level[1]:
            row += 1
        while row < len(taken) and any(a[k] < high - 1 and low < b[k] - 1 for _, a, b in mine for low, high in taken[row]):
            row += 1
        while row >= len(taken):
            taken.append([])
        line = _level(axis, side, frame, row)
        for item, a, b in mine:
            taken[row].append((a[k], b[k]))
            start, end = ((a[0], line), (b[0], line)) if axis == "x" else ((line, b[1]), (line, a[1]))
            laid.draw_line(start, end, item.owner, crowded and b[k] - a[k] < NARROW)
            size = (lettering.width(item.label, SMALL_SIZE), lettering.height(item.label, SMALL_SIZE))
            key = f"dimension {item.owner}"
            laid.labels[key] = (item.label, SMALL_SIZE, "dimension", item.owner)
            near = on_dimension(start, end, size, axis == "y")
            laid.wanted.append(
                Wanted(key, near, ((start, end, 0.0),), partial(led, between(start, end, 0.5), 0.5, size), jealous=False)
            )
            for spot in (a, b):
                place = (side, round(spot[k], 3))
                before = outermost.get(place)
                if before is None or side * line > side * before[0]:
                    outermost[place] = (line, spot)


def _staggered(k: int, items) -> dict[str, tuple[int, int]]:
    """Level of each dimension of a chain, then its step within it: neighbours that are all too close for arrows between their
    lines take turns on lines of their own, so that each number is beside the interval that it measures."""
    out: dict[str, tuple[int, int]] = {}
    before: tuple[float, int] | None = None
    for item, low, high in sorted(((i, *sorted((a[k], b[k]))) for i, a, b in items), key=lambda i: (i[0].level, i[1], i[2])):
        narrow = high - low < NARROW
        step = (before[1] + 1) % STEPS if narrow and before is not None and abs(before[0] - low) < 0.02 else 0
        out[item.owner] = (item.level, step)
        before = (high, step) if narrow else None
    return out


def _extend(axis: str, outermost, spots: list[Spot], spans: list[Span], laid: Laid) -> None:
    """One extension line for each place and side, out to the furthest dimension line that ends there."""
    for (side, value), (line, _) in sorted(outermost.items()):
        spot = _nearest(axis, side, value, spots)
        begin = _begin(axis, side, value, spot, spans)
        end = line + side * OVER
        if side * (end - begin) > 2:
            path = ((value, begin), (value, end)) if axis == "x" else ((begin, value), (end, value))
            laid.marks.append(Path(path, "extension"))
            laid.strips.append((path[0], path[1], 0.3))


Span = tuple[float, float, Strip]
"""From where to where a strip reaches along an axis, its thickness counted, and the strip."""


def _spans(axis: str, obstacles: list[Strip]) -> list[Span]:
    k = 0 if axis == "x" else 1
    return [(min(p[k], q[k]) - half, max(p[k], q[k]) + half, (p, q, half)) for p, q, half in obstacles]


def _begin(axis: str, side: int, value: float, spot: Spot, spans: list[Span]) -> float:
    """Where the extension line begins: past the point and past whatever of its symbol lies in the way."""
    k = 0 if axis == "x" else 1
    reach = spot[1 - k]
    met = [strip for low, high, strip in spans if low <= value <= high]
    for p, q, half in sorted(met, key=lambda s: side * min(side * s[0][1 - k], side * s[1][1 - k])):
        low, high = sorted((side * p[1 - k], side * q[1 - k]))
        if p[k] != q[k] and abs(p[k] - q[k]) > 2 * half:
            share = min(1.0, max(0.0, (value - p[k]) / (q[k] - p[k])))
            low = high = side * (p[1 - k] + share * (q[1 - k] - p[1 - k]))
        if low - half <= side * reach + 4:
            reach = side * max(side * reach, high + half)
    return reach + side * EXTENSION_GAP


def dimension_line(start: Spot, end: Spot, owner: str) -> list[Mark]:
    """With arrowheads between its ends, or from outside where they are close."""
    length = apart(start, end)
    if length >= NARROW:
        return [Arrow((start, end), "dimension", owner, "both", head=DIMENSION_HEAD)]
    way = ((end[0] - start[0]) / length, (end[1] - start[1]) / length)
    out = 11.0
    before = (start[0] - out * way[0], start[1] - out * way[1])
    after = (end[0] + out * way[0], end[1] + out * way[1])
    return [
        Path((start, end), "extension", owner),
        Arrow((before, start), "dimension", owner, head=DIMENSION_HEAD),
        Arrow((after, end), "dimension", owner, head=DIMENSION_HEAD),
    ]


def struck_line(start: Spot, end: Spot, owner: str) -> list[Mark]:
    """With oblique strokes at its ends: among close neighbours arrows from outside would seem to measure what lies between."""
    strokes = [Path(((x - STROKE, y + STROKE), (x + STROKE, y - STROKE)), "extension", owner) for x, y in (start, end)]
    return [Path((start, end), "extension", owner), *strokes]
