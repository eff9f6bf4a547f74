"""Arrows of force, couple and motion."""

from __future__ import annotations

import itertools

from unpin.draw.geometry import Spot, arc, box_of, page_angle, plus
from unpin.draw.scene import HEAD_HALF, HEAD_LENGTH, Arrow, Path, heads_of
from unpin.draw.symbols.symbol import Strip, Symbol

COUPLE_RADIUS, CROWDED_RADIUS = 12.0, 17.0
COUPLE_SWEEP = 250.0


def arrow_room(arrow: Arrow) -> tuple[Strip, ...]:
    """The shaft, and a wider strip under the head."""
    spots = arrow.spots
    coarse = spots if len(spots) < 9 else (*spots[:-1:4], spots[-1])  # an arc needs no finer room than this
    strips: list[Strip] = [(a, b, 0.8 if coarse is spots else 1.2) for a, b in itertools.pairwise(coarse)]
    ends = [spots[-2:]] + ([spots[1::-1]] if arrow.heads == "both" else [])
    for back, tip in ends:
        length = max(1e-6, ((tip[0] - back[0]) ** 2 + (tip[1] - back[1]) ** 2) ** 0.5)
        strips.append(
            (plus(tip, ((back[0] - tip[0]) / length, (back[1] - tip[1]) / length), min(HEAD_LENGTH, length)), tip, HEAD_HALF)
        )
    if arrow.tail:
        strips.append((spots[0], spots[0], 3.2))
    return tuple(strips)


def outline(arrow: Arrow) -> tuple[Strip, ...]:
    """Its very lines, without room: what a label is nearer to or farther from."""
    spots = arrow.spots if len(arrow.spots) < 9 else (*arrow.spots[:-1:2], arrow.spots[-1])
    edges = [edge for a, b, c in heads_of(arrow) for edge in ((a, b), (b, c), (c, a))]
    return tuple((a, b, 0.0) for a, b in (*itertools.pairwise(spots), *edges))


def force(tail: Spot, tip: Spot, owner: str, mark: int = 0) -> Symbol:
    arrow = Arrow((tail, tip), "force", owner, tail=mark)
    return Symbol((arrow,), arrow_room(arrow), box_of((tail, tip)), "force")


def couple(
    at: Spot, turn: int, facing: Spot, owner: str, mark: int = 0, sweep: float = COUPLE_SWEEP, radius: float = COUPLE_RADIUS
) -> Symbol:
    """An arc about `at` of `sweep` degrees, anticlockwise for `turn` +1, its middle towards `facing`."""
    middle = page_angle(facing)
    start, end = middle - sweep / 2, middle + sweep / 2
    spots = arc(at, radius, start, end, 30) if turn > 0 else arc(at, radius, end, start, 30)
    arrow = Arrow(spots, "couple", owner, tail=mark)
    return Symbol((arrow,), arrow_room(arrow), box_of(spots), "couple")


def spread(start: Spot, end: Spot, along: Spot, heights: tuple[float, float], owner: str) -> Symbol:
    """A row of arrows with their tips on the run from `start` to `end`, along the unit vector `along`, and the line on their
    tails; `heights` at the ends in pt, negative against `along`."""
    run = ((end[0] - start[0]) ** 2 + (end[1] - start[1]) ** 2) ** 0.5
    count = max(2, round(run / 15))
    marks: list[Arrow | Path] = []
    tails = []
    for k in range(count + 1):
        share = k / count
        tip = (start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1]))
        height = heights[0] + share * (heights[1] - heights[0])
        tail = plus(tip, along, -height)
        tails.append(tail)
        if abs(height) > 5.5:
            marks.append(Arrow((tail, tip), "spread", owner, head=(5.0, 1.9)))
    marks.append(Path((tails[0], tails[-1]), "spread-line", owner))
    # The whole area is taken: a label between two arrows would read as one of them.
    room: list[Strip] = [(tails[0], tails[-1], 0.8)]
    room += [(plus(start, along, 0), tails[0], 0.8), (end, tails[-1], 0.8)]
    for m in [m for m in marks if isinstance(m, Arrow)][1:-1]:
        height = ((m.spots[0][0] - m.spots[1][0]) ** 2 + (m.spots[0][1] - m.spots[1][1]) ** 2) ** 0.5
        half = max(0.8, min(8.0, height / 2 - 0.5))
        way = 1.0 if (m.spots[1][0] - m.spots[0][0]) * along[0] + (m.spots[1][1] - m.spots[0][1]) * along[1] > 0 else -1.0
        room.append((plus(m.spots[0], along, way * half), plus(m.spots[1], along, -way * min(half, 2.0)), half))
    return Symbol(tuple(marks), tuple(room), box_of([*tails, start, end]), "spread")


def centre(at: Spot, owner: str) -> Symbol:
    """A moment centre: a ring with a dot, apart from the small ring of a pin."""
    from unpin.draw.scene import circle

    marks = (circle(at, 5.2, "centre", owner), circle(at, 1.3, "knot", owner))
    return Symbol(marks, ((at, at, 6.0),), (at[0] - 6, at[1] - 6, at[0] + 6, at[1] + 6), "centre")
