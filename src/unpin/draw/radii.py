"""The radius of a disc, on a line from its centre where it meets least: the head inside the rim, or outside it for a small disc."""

from __future__ import annotations

from functools import partial

from unpin.draw import label as lettering
from unpin.draw.angles import DirectionMark
from unpin.draw.candidates import beside_arrow, led
from unpin.draw.dimensions import DIMENSION_HEAD
from unpin.draw.geometry import Spot, plus, segment_to_segment, spot_to_box, turned
from unpin.draw.label import Label
from unpin.draw.place import Wanted
from unpin.draw.scene import SMALL_SIZE, Arrow, Path
from unpin.draw.symbols.force import arrow_room
from unpin.draw.symbols.symbol import Strip

HUB, OUTSIDE = 3.2, 12.0
ROOMY = 18.0
"""From this radius (pt) on the head has room within."""
ANGLES = tuple(sorted(range(0, 360, 15), key=lambda a: (min(abs(a - b) for b in (45, 135, 225, 315)), a)))


def radius_mark(owner: str, at: Spot, radius: float, label: Label, obstacles: list[Strip]) -> DirectionMark:
    """`radius` in pt. The line runs on past the rim to its label."""
    size = (lettering.width(label, SMALL_SIZE), lettering.height(label, SMALL_SIZE))
    reach = radius + OUTSIDE + max(size)
    near = [s for s in obstacles if segment_to_segment(s[0], s[1], at, at) < reach + s[2] and not _on_rim(s, at, radius)]
    ways = [turned((1.0, 0.0), a) for a in ANGLES]
    way = min(ways, key=lambda w: _crowd(at, w, radius, size, near))
    rim, out = plus(at, way, radius), plus(at, way, radius + OUTSIDE)
    if radius >= ROOMY:
        marks = (Arrow((plus(at, way, HUB), rim), "dimension", owner, head=DIMENSION_HEAD), Path((rim, out), "extension", owner))
        room = (*arrow_room(marks[0]), (rim, out, 0.5))
    else:
        marks = (Path((plus(at, way, HUB), rim), "extension", owner), Arrow((out, rim), "dimension", owner, head=DIMENSION_HEAD))
        room = ((plus(at, way, HUB), rim, 0.5), *arrow_room(marks[1]))
    key = f"radius {owner}"
    wanted = Wanted(key, beside_arrow(out, rim, size), ((rim, out, 0.0),), partial(led, out, 0.5, size), jealous=False)
    return DirectionMark(marks, room, (wanted,), {key: (label, SMALL_SIZE, "dimension", owner)})


def _on_rim(strip: Strip, at: Spot, radius: float) -> bool:
    """The rims of the disc itself, and cords that lie on them, are no obstacle to a line across."""
    return all(abs(((s[0] - at[0]) ** 2 + (s[1] - at[1]) ** 2) ** 0.5 - radius) < 1.0 for s in strip[:2]) and strip[0] != strip[1]


def _crowd(at: Spot, way: Spot, radius: float, size: Spot, near: list[Strip]) -> float:
    """What the line would run over and what stands where its label would."""
    start, end = plus(at, way, 7.0), plus(at, way, radius + OUTSIDE)
    middle = plus(end, way, 3 + (abs(way[0]) * size[0] + abs(way[1]) * size[1]) / 2)
    box = (middle[0] - size[0] / 2, middle[1] - size[1] / 2, middle[0] + size[0] / 2, middle[1] + size[1] / 2)
    cost = 0.0
    for p, q, half in near:
        gap = segment_to_segment(start, end, p, q) - half
        cost += 8.0 if gap < 0.5 else 2.0 if gap < 3.0 else 0.0
        gap = min(spot_to_box(p, box), spot_to_box(q, box), segment_to_segment(p, q, middle, middle) - min(size) / 2) - half
        cost += 5.0 if gap < 0.5 else 1.0 if gap < 3.0 else 0.0
    return cost
