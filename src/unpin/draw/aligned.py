"""Dimension lines along a sloping member: beside it, on the side where they meet least."""

from __future__ import annotations

from unpin.draw import label as lettering
from unpin.draw.candidates import beside_line, led
from unpin.draw.dimensions import EXTENSION_GAP, OVER, Laid
from unpin.draw.geometry import Spot, between, plus, segment_to_segment, square, unit
from unpin.draw.items import DimensionItem
from unpin.draw.place import Wanted
from unpin.draw.scene import SMALL_SIZE, Path
from unpin.draw.symbols.symbol import Strip

OFFSETS = (16.0, 30.0, 44.0, 56.0)
NEAR = 8.0
"""What is so near to a dimension line disturbs it, pt."""


def lay_along(items: list[tuple[DimensionItem, Spot, Spot]], obstacles: list[Strip]) -> Laid:
    """Every chain beside its own run; a chain stays together."""
    from functools import partial

    laid = Laid()
    for chain in dict.fromkeys(i[0].chain for i in items):
        mine = [i for i in items if i[0].chain == chain]
        first, last = mine[0][1], mine[-1][2]
        normal = square(unit((last[0] - first[0], last[1] - first[1])))
        taken = [*obstacles, *laid.strips]
        _, _, offset, way = min(
            (
                (_crossed(first, last, n, off, taken) + off / 20, k, off, n)
                for k, (off, n) in enumerate((off, n) for off in OFFSETS for n in (normal, (-normal[0], -normal[1])))
            )
        )
        for item, a, b in mine:
            start, end = plus(a, way, offset), plus(b, way, offset)
            laid.draw_line(start, end, item.owner)
            key = f"dimension {item.owner}"
            size = (lettering.width(item.label, SMALL_SIZE), lettering.height(item.label, SMALL_SIZE))
            laid.labels[key] = (item.label, SMALL_SIZE, "dimension", item.owner)
            near = beside_line(start, end, size, 0.2, shares=(0.5, 0.4, 0.6, 0.3, 0.7))
            laid.wanted.append(
                Wanted(key, near, ((start, end, 0.0),), partial(led, between(start, end, 0.5), 0.5, size), jealous=False)
            )
        for spot in dict.fromkeys(s for _, a, b in mine for s in (a, b)):
            path = (plus(spot, way, 3.8 + EXTENSION_GAP), plus(spot, way, offset + OVER))
            laid.marks.append(Path(path, "extension"))
            laid.strips.append((*path, 0.3))
    return laid


def _crossed(first: Spot, last: Spot, way: Spot, offset: float, obstacles: list[Strip]) -> float:
    start, end = plus(first, way, offset), plus(last, way, offset)
    (left, right), (top, bottom) = (sorted((start[k], end[k])) for k in (0, 1))
    cost = 0.0
    for p, q, half in obstacles:
        near = half + NEAR
        if max(p[0], q[0]) > left - near and min(p[0], q[0]) < right + near and max(p[1], q[1]) > top - near and min(p[1], q[1]) < bottom + near:
            gap = segment_to_segment(start, end, p, q)
            cost += 3.0 * (gap < half + 1.5) + 1.0 * (gap < near)
    return cost
