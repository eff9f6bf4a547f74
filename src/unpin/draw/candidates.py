"""Where a label of a given size may stand around a spot, an arrow, a line or an arc: boxes in order of liking."""

from __future__ import annotations

import math
from functools import lru_cache

from unpin.draw.field import ORIGIN, Candidate, Offer
from unpin.draw.geometry import Box, Spot, around_tilt, between, page_angle, plus, square, tilt_of, unit

_COMPASS = tuple((math.cos(math.radians(a)), -math.sin(math.radians(a))) for a in range(0, 360, 15))
_LIKING = {45: 0.0, 135: 0.2, 315: 0.3, 225: 0.4, 90: 0.6, 270: 0.7, 0: 0.8, 180: 0.9}


def box_at(centre: Spot, size: Spot) -> Box:
    w, h = size
    return (centre[0] - w / 2, centre[1] - h / 2, centre[0] + w / 2, centre[1] + h / 2)


def touching(spot: Spot, way: Spot, gap: float, size: Spot) -> Box:
    """The box whose nearest edge or corner is about `gap` from `spot`, on the side `way` (a unit vector)."""
    w, h = size
    # Towards a corner the box may come closer: the share of each half that counts falls off between side and corner.
    cx = max(-1.0, min(1.0, way[0] * 1.45)) * w / 2 + way[0] * gap
    cy = max(-1.0, min(1.0, way[1] * 1.45)) * h / 2 + way[1] * gap
    return box_at((spot[0] + cx, spot[1] + cy), size)


def _round(*spots: Spot) -> tuple[Spot, ...]:
    return tuple((round(x, 3), round(y, 3)) for x, y in spots)


def around(spot: Spot, radius: float, size: Spot) -> Offer:
    return Offer((spot, _around(radius, *_round(size))))


@lru_cache(maxsize=512)
def _around(radius: float, size: Spot) -> tuple[Candidate, ...]:
    out = []
    for gap in (2.2, 3.3, 4.5, 6.0, 7.5, 9.5, 12.0):
        for k, way in enumerate(_COMPASS):
            out.append(Candidate(touching(ORIGIN, way, radius + gap, size), _LIKING.get(k * 15, 1.3) + 1.15 * (gap - 2.2)))
    return tuple(sorted(out, key=lambda c: c.cost))


def led(spot: Spot, radius: float, size: Spot) -> tuple[Candidate, ...]:
    """Further out, with a leader line back to the spot."""
    out = []
    for ring, gap in enumerate((16.0, 24.0, 33.0, 44.0, 58.0, 74.0, 92.0)):
        for way in _COMPASS:
            box = touching(spot, way, radius + gap, size)
            end = (min(max(spot[0], box[0]), box[2]), min(max(spot[1], box[1]), box[3]))
            back = unit((spot[0] - end[0], spot[1] - end[1]))
            out.append(Candidate(box, 20.0 + 4 * ring, leader=(plus(end, back, 1.2), plus(spot, back, -radius - 0.8))))
    return tuple(out)


def beside_arrow(outer: Spot, inner: Spot, size: Spot) -> Offer:
    """At the outer end of a straight arrow, straight on or beside its shaft."""
    return Offer((outer, _beside_arrow(*_round((inner[0] - outer[0], inner[1] - outer[1]), size))))


@lru_cache(maxsize=512)
def _beside_arrow(inner: Spot, size: Spot) -> tuple[Candidate, ...]:
    outer, ray = ORIGIN, unit((-inner[0], -inner[1]))
    side = square(ray)
    wide = 1.8 if abs(ray[0]) > 0.8 else 0.0  # straight on from a level arrow a figure only grows wider
    out = [Candidate(touching(outer, ray, gap, size), cost + wide) for gap, cost in ((3.0, 0.0), (6.0, 2.0), (10.0, 5.0))]
    for gap, more in ((2.6, 0.0), (5.0, 2.0), (8.5, 4.0)):
        for share, cost in ((0.2, 0.6), (0.35, 0.8), (0.5, 1.2), (0.05, 1.2), (0.65, 2.5)):
            for n, (x, y) in enumerate((side, (-side[0], -side[1]))):
                # Upright and level shafts read best with the label to the right or above.
                liked = 0.0 if (x > 0.3 or y < -0.7) else 0.25
                spot = between(outer, inner, share)
                half = abs(x) * size[0] / 2 + abs(y) * size[1] / 2
                out.append(Candidate(box_at(plus(spot, (x, y), gap + half), size), cost + more + liked + 0.01 * n))
    for angle in (25, -25, 50, -50):
        c, s = math.cos(math.radians(angle)), math.sin(math.radians(angle))
        way = (ray[0] * c - ray[1] * s, ray[0] * s + ray[1] * c)
        out.append(Candidate(touching(outer, way, 3.2, size), 0.9 + abs(angle) / 100))
    return tuple(sorted(out, key=lambda c: c.cost))


def beside_line(
    a: Spot,
    b: Spot,
    size: Spot,
    off: float,
    shares=(0.5, 0.4, 0.6, 0.28, 0.72, 0.15, 0.85),
    way: Spot | None = None,
    both: bool = True,
    more: float = 0.0,
) -> Offer:
    """Along a line, on both sides or on the side `way` only."""
    run, size = _round((b[0] - a[0], b[1] - a[1]), size)
    return Offer((a, _beside_line(run, size, off, shares, way and _round(way)[0], both, more)))


@lru_cache(maxsize=512)
def _beside_line(b: Spot, size: Spot, off: float, shares, way: Spot | None, both: bool, dislike: float) -> tuple[Candidate, ...]:
    a = ORIGIN
    side = way or square(unit((b[0] - a[0], b[1] - a[1])))
    if way is None and (side[1] > 0 or (side[1] == 0 and side[0] < 0)):
        side = (-side[0], -side[1])
    out = []
    for gap, more in ((2.3, 0.0), (3.6, 0.8), (5.5, 1.5), (9.0, 3.5)):
        for n, share in enumerate(shares):
            for x, y, worse in ((side[0], side[1], 0.0), *(((-side[0], -side[1], 0.4),) if both else ())):
                half = abs(x) * size[0] / 2 + abs(y) * size[1] / 2
                box = box_at(plus(between(a, b, share), (x, y), off + gap + half), size)
                out.append(Candidate(box, min(0.5 * n, 2.0 + 0.1 * n) + more + worse + dislike))
    return tuple(sorted(out, key=lambda c: c.cost))


def along_line(a: Spot, b: Spot, size: Spot, off: float) -> Offer:
    """Along a member: on a slope turned with it, to be read from below or from the right; level beside it where that is free
    and the turned one is not. `off`: half its thickness."""
    return Offer((a, _along_line(*_round((b[0] - a[0], b[1] - a[1]), size), off)))


@lru_cache(maxsize=512)
def _along_line(b: Spot, size: Spot, off: float) -> tuple[Candidate, ...]:
    a = ORIGIN
    run, length = unit((b[0] - a[0], b[1] - a[1])), math.hypot(b[0] - a[0], b[1] - a[1])
    if run[0] < -1e-6 or (abs(run[0]) <= 1e-6 and run[1] > 0):
        run = (-run[0], -run[1])
    level, upright = abs(run[1]) < 1e-6, abs(run[0]) < 1e-6
    turn = 0.0 if level else page_angle(run)
    tilt = None if level or upright else tilt_of(size, turn)
    w, h = (size[1], size[0]) if upright else size
    above = (run[1], -run[0])
    out = []
    for gap, more in ((2.2, 0.0), (3.4, 0.6), (5.0, 1.5), (8.0, 3.5)):
        for n, share in enumerate((0.5, 0.4, 0.6, 0.32, 0.68, 0.24, 0.76)):
            past = max(0.0, size[0] / 2 - min(share, 1 - share) * length)
            for (x, y), worse in ((above, 0.0), ((-above[0], -above[1]), 0.3)):
                centre = plus(between(a, b, share), (x, y), off + gap + size[1] / 2)
                box = around_tilt(centre, tilt) if tilt else box_at(centre, (w, h))
                out.append(Candidate(box, 0.4 * n + more + worse + 0.2 * past, turn, (), tilt))
    if not level:
        out += [c._replace(cost=c.cost + (0.0 if upright else 1.2)) for c in beside_line(a, b, size, off)]
    return tuple(sorted(out, key=lambda c: c.cost))


NARROW = 13.0
"""Half of an angle that has no room for its number near the arc, degrees."""


def in_angle(apex: Spot, bisector: Spot, radius: float, half: float, size: Spot) -> Offer:
    """Outside the arc of an angle, near its bisector; rather further out than beyond its sides. `half` the angle in degrees."""
    return Offer((apex, _in_angle(*_round(bisector, size), radius, round(half, 3))))


@lru_cache(maxsize=512)
def _in_angle(bisector: Spot, size: Spot, radius: float, half: float) -> tuple[Candidate, ...]:
    apex, out = ORIGIN, []
    for gap, more in ((2.2, 0.0), (5.0, 0.8), (8.5, 1.6), (13.0, 2.6), (19.0, 3.6), (26.0, 4.6), (34.0, 5.6)):
        for angle in (0, 6, -6, 12, -12, 18, -18, 30, -30, 45, -45):
            if gap > 13 and abs(angle) > half:
                continue
            c, s = math.cos(math.radians(angle)), math.sin(math.radians(angle))
            way = (bisector[0] * c - bisector[1] * s, bisector[0] * s + bisector[1] * c)
            # No number fits into a narrow angle: beside its arc it is nearer than far out between the sides.
            beyond = 0.0 if abs(angle) <= half else 5.0 if half > NARROW else 2.0
            out.append(Candidate(touching(apex, way, radius + gap, size), more + abs(angle) / 30 + beyond))
    return tuple(sorted(out, key=lambda c: c.cost))


def on_dimension(a: Spot, b: Spot, size: Spot, upright: bool) -> Offer:
    """Above the middle of a dimension line as read from below or from the right; else on the other side; else further out.

    `size` is width and height of the text as it reads; `upright` for a line along y.
    """
    return Offer((a, _on_dimension(*_round((b[0] - a[0], b[1] - a[1]), size), upright)))


@lru_cache(maxsize=512)
def _on_dimension(b: Spot, size: Spot, upright: bool) -> tuple[Candidate, ...]:
    a = ORIGIN
    middle = between(a, b, 0.5)
    long = abs(b[1] - a[1]) if upright else abs(b[0] - a[0])
    w, h = (size[1], size[0]) if upright else size
    turn = 90 if upright else 0
    out = []
    for away, cost in ((-1, 0.0), (1, 3.0)):
        for shift in (0.0, 0.25, -0.25, 0.5, -0.5):
            for gap, more in ((2.5, 0.0), (4.5, 1.0)) if away < 0 else ((4.2, 0.0), (7.0, 1.0), (12.0, 2.0), (17.0, 3.0)):
                along = shift * (long + size[0]) if abs(shift) == 0.5 else shift * max(0.0, long - size[0])
                if upright:
                    spot = (middle[0] + away * (gap + w / 2), middle[1] + along)
                else:
                    spot = (middle[0] + along, middle[1] + away * (gap + h / 2))
                out.append(Candidate(box_at(spot, (w, h)), cost + more + (6.0 if abs(shift) == 0.5 else abs(shift)), turn))
    return tuple(sorted(out, key=lambda c: c.cost))
