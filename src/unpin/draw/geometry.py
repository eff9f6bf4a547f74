"""Plane geometry on the page, in plain floats: points in pt, x right, y down; boxes are (left, top, right, bottom)."""

from __future__ import annotations

import math
from collections.abc import Iterable

Spot = tuple[float, float]
Box = tuple[float, float, float, float]


def plus(a: Spot, b: Spot, times: float = 1.0) -> Spot:
    """a + times * b."""
    return (a[0] + times * b[0], a[1] + times * b[1])


def minus(a: Spot, b: Spot) -> Spot:
    return (a[0] - b[0], a[1] - b[1])


def unit(v: Spot) -> Spot:
    size = math.hypot(v[0], v[1]) or 1.0
    return (v[0] / size, v[1] / size)


def square(v: Spot) -> Spot:
    """Turned a quarter clockwise as seen on the page."""
    return (-v[1], v[0])


def turned(v: Spot, degrees: float) -> Spot:
    """Turned anticlockwise as seen on the page."""
    a = math.radians(degrees)
    return (v[0] * math.cos(a) + v[1] * math.sin(a), -v[0] * math.sin(a) + v[1] * math.cos(a))


def between(a: Spot, b: Spot, share: float) -> Spot:
    return (a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1]))


def apart(a: Spot, b: Spot) -> float:
    return math.hypot(a[0] - b[0], a[1] - b[1])


def angle_between(a: Spot, b: Spot) -> float:
    """Degrees between two directions, 0 to 180."""
    return abs(math.degrees(math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1])))


def box_of(spots: Iterable[Spot]) -> Box:
    xs, ys = zip(*spots)
    return (min(xs), min(ys), max(xs), max(ys))


def grown(box: Box, by: float) -> Box:
    return (box[0] - by, box[1] - by, box[2] + by, box[3] + by)


def union(boxes: Iterable[Box]) -> Box:
    left, top, right, bottom = zip(*boxes)
    return (min(left), min(top), max(right), max(bottom))


def centre_of(box: Box) -> Spot:
    return ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)


def boxes_meet(a: Box, b: Box) -> bool:
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]


def segment_meets_box(p: Spot, q: Spot, box: Box) -> bool:
    """Does the segment pass through the open box? Clipping of the segment by the four sides in turn, written out: labels ask it
    a thousand times a figure."""
    (px, py), (qx, qy), (left, top, right, bottom) = p, q, box
    near, far = 0.0, 1.0
    step = qx - px
    if -1e-9 < step < 1e-9:
        if px <= left or px >= right:
            return False
    else:
        a, b = (left - px) / step, (right - px) / step
        if a > b:
            a, b = b, a
        if a > near:
            near = a
        if b < far:
            far = b
        if near >= far:
            return False
    step = qy - py
    if -1e-9 < step < 1e-9:
        return not (py <= top or py >= bottom)
    a, b = (top - py) / step, (bottom - py) / step
    if a > b:
        a, b = b, a
    return (a if a > near else near) < (b if b < far else far)


Tilt = tuple[float, float, float, float]
"""A box that is turned about its middle: cosine and sine of the angle (anticlockwise on the page), half its width and height.
Its plain `Box` is then the upright one around it."""


def tilt_of(size: Spot, degrees: float) -> Tilt:
    a = math.radians(degrees)
    return (math.cos(a), math.sin(a), size[0] / 2, size[1] / 2)


def around_tilt(centre: Spot, tilt: Tilt) -> Box:
    """The upright box around a tilted one."""
    cos, sin, w, h = tilt
    x, y = abs(cos) * w + abs(sin) * h, abs(sin) * w + abs(cos) * h
    return (centre[0] - x, centre[1] - y, centre[0] + x, centre[1] + y)


def in_tilt(p: Spot, box: Box, tilt: Tilt) -> Spot:
    """A spot as seen along the sides of a tilted box from its middle."""
    x, y = p[0] - (box[0] + box[2]) / 2, p[1] - (box[1] + box[3]) / 2
    return (x * tilt[0] - y * tilt[1], x * tilt[1] + y * tilt[0])


def core(tilt: Tilt, by: float = 0.0) -> Box:
    """The tilted box in its own frame, grown."""
    return (-tilt[2] - by, -tilt[3] - by, tilt[2] + by, tilt[3] + by)


def corners(box: Box, tilt: Tilt | None, by: float = 0.0) -> tuple[Spot, ...]:
    """The four corners of a box, tilted or not, grown by so much."""
    if tilt is None:
        x0, y0, x1, y1 = grown(box, by)
        return ((x0, y0), (x1, y0), (x1, y1), (x0, y1))
    (x, y), (cos, sin, w, h) = centre_of(box), tilt
    w, h = w + by, h + by
    return tuple((x + a * w * cos + b * h * sin, y - a * w * sin + b * h * cos) for a, b in ((-1, -1), (1, -1), (1, 1), (-1, 1)))


def rects_meet(a: Box, tilt_a: Tilt | None, b: Box, tilt_b: Tilt | None, by: float = 0.0) -> bool:
    """Do two boxes share an area, the first grown by so much? They do not if a line along a side of one parts them."""
    if not boxes_meet(grown(a, by), b):
        return False
    if tilt_a is None and tilt_b is None:
        return True
    p, q = corners(a, tilt_a, by), corners(b, tilt_b)
    for tilt in (tilt_a, tilt_b):
        cos, sin = (tilt[0], tilt[1]) if tilt else (1.0, 0.0)
        for x, y in ((cos, -sin), (sin, cos)):
            one, two = [c[0] * x + c[1] * y for c in p], [c[0] * x + c[1] * y for c in q]
            if max(one) <= min(two) or max(two) <= min(one):
                return False
    return True


def segment_meets_rect(p: Spot, q: Spot, box: Box, tilt: Tilt | None, by: float = 0.0) -> bool:
    """The same for a box that may be tilted, grown by so much."""
    if tilt is None:
        return segment_meets_box(p, q, grown(box, by))
    return segment_meets_box(in_tilt(p, box, tilt), in_tilt(q, box, tilt), core(tilt, by))


def segment_to_rect(p: Spot, q: Spot, box: Box, tilt: Tilt | None) -> float:
    """Distance of a segment or a spot from a box that may be tilted."""
    if tilt is not None:
        p, q, box = in_tilt(p, box, tilt), in_tilt(q, box, tilt), core(tilt)
    return spot_to_box(p, box) if p == q else segment_to_box(p, q, box)


def spot_to_box(p: Spot, box: Box) -> float:
    dx = max(box[0] - p[0], 0.0, p[0] - box[2])
    dy = max(box[1] - p[1], 0.0, p[1] - box[3])
    return math.hypot(dx, dy)


def spot_to_segment(s: Spot, p: Spot, q: Spot) -> float:
    dx, dy = q[0] - p[0], q[1] - p[1]
    size = dx * dx + dy * dy
    share = 0.0 if size == 0 else min(1.0, max(0.0, ((s[0] - p[0]) * dx + (s[1] - p[1]) * dy) / size))
    return math.hypot(s[0] - p[0] - share * dx, s[1] - p[1] - share * dy)


def segment_to_box(p: Spot, q: Spot, box: Box) -> float:
    """Distance of a segment from a box, 0 where they meet."""
    if p[0] == q[0] or p[1] == q[1]:
        low, high = (p[0], q[0]) if p[0] < q[0] else (q[0], p[0])
        top, bottom = (p[1], q[1]) if p[1] < q[1] else (q[1], p[1])
        return math.hypot(max(box[0] - high, 0.0, low - box[2]), max(box[1] - bottom, 0.0, top - box[3]))
    if segment_meets_box(p, q, box):
        return 0.0
    left, top, right, bottom = box
    (ax, ay), (bx, by) = p, q
    least = min(spot_to_box(p, box), spot_to_box(q, box)) ** 2
    dx, dy = bx - ax, by - ay
    size = dx * dx + dy * dy
    for x, y in ((left - ax, top - ay), (right - ax, top - ay), (left - ax, bottom - ay), (right - ax, bottom - ay)):
        share = x * dx + y * dy
        if 0 < share < size:  # else an end is nearest, and that was counted
            across = x * dy - y * dx
            least = min(least, across * across / size)
    return math.sqrt(least)


def segments_cross(p: Spot, q: Spot, r: Spot, s: Spot) -> bool:
    (px, py), (qx, qy), (rx, ry), (sx, sy) = p, q, r, s
    dx, dy, ex, ey = qx - px, qy - py, sx - rx, sy - ry
    if (dx * (ry - py) - dy * (rx - px)) * (dx * (sy - py) - dy * (sx - px)) >= 0:
        return False
    return (ex * (py - ry) - ey * (px - rx)) * (ex * (qy - ry) - ey * (qx - rx)) < 0


def segment_to_segment(p: Spot, q: Spot, r: Spot, s: Spot) -> float:
    if segments_cross(p, q, r, s):
        return 0.0
    least = math.inf
    for (ax, ay), (bx, by), ends in ((r, s, (p, q)), (p, q, (r, s))):
        dx, dy = bx - ax, by - ay
        size = dx * dx + dy * dy
        for x, y in ends:
            x, y = x - ax, y - ay
            if size:
                share = (x * dx + y * dy) / size
                share = 0.0 if share < 0 else 1.0 if share > 1 else share
                x, y = x - share * dx, y - share * dy
            square_of = x * x + y * y
            if square_of < least:
                least = square_of
    return math.sqrt(least)


def arc(centre: Spot, radius: float, start: float, end: float, steps: int = 0) -> tuple[Spot, ...]:
    """Spots of an arc from angle `start` to `end` (degrees anticlockwise from +x as seen on the page)."""
    steps = steps or max(4, int(abs(end - start) / 12))
    angles = (math.radians(start + (end - start) * k / steps) for k in range(steps + 1))
    return tuple((centre[0] + radius * math.cos(a), centre[1] - radius * math.sin(a)) for a in angles)


def page_angle(v: Spot) -> float:
    """Degrees anticlockwise from +x as seen on the page."""
    return math.degrees(math.atan2(-v[1], v[0]))
