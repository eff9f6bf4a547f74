"""Which way a support without a direction stands, and which way the arc of a couple opens."""

from __future__ import annotations

import math

from unpin.draw.field import about
from unpin.draw.geometry import Spot, angle_between, page_angle, plus, segment_to_segment
from unpin.draw.symbols.symbol import Strip


def leaving(spot: Spot, strips: list[Strip]) -> list[Spot]:
    """Directions in which segments leave a spot, both ways where one passes through."""
    out = []
    for p, q, _ in strips:
        if p == q:
            continue
        length = math.hypot(q[0] - p[0], q[1] - p[1])
        away = abs((q[0] - p[0]) * (spot[1] - p[1]) - (q[1] - p[1]) * (spot[0] - p[0])) / length
        share = ((spot[0] - p[0]) * (q[0] - p[0]) + (spot[1] - p[1]) * (q[1] - p[1])) / length
        if away < 1.0 and -9 < share < length + 9:
            u = ((q[0] - p[0]) / length, (q[1] - p[1]) / length)
            if share > 6:
                out.append((-u[0], -u[1]))
            if share < length - 6:
                out.append(u)
    return out


WOUND_UP = 249.0
"""A cord that goes farther round a disc than this (degrees) ends on it, so that only its first strand leaves."""


def hanging(arc: tuple[Spot, ...]) -> list[Spot]:
    """Directions in which the strands of a cord leave the disc that it lies on along `arc`."""
    if not all(math.dist(*two) for two in (arc[:2], arc[1:3], arc[-2:])):
        return []  # so short that nothing is to be seen of it
    ends = [(arc[1], arc[0])]
    if (len(arc) - 1) * angle_between(*(_step(*arc[k : k + 2]) for k in (0, 1))) < WOUND_UP:
        ends.append((arc[-2], arc[-1]))
    return [_step(a, b) for a, b in ends]


def _step(a: Spot, b: Spot) -> Spot:
    length = math.dist(a, b)
    return ((b[0] - a[0]) / length, (b[1] - a[1]) / length)


def support_up(
    kind: str,
    spot: Spot,
    bodies: list[Strip],
    taken: list[Strip],
    middle: Spot,
    strands: tuple[Spot, ...] = (),
    reach: float = 8.0,
) -> Spot:
    """A built-in end faces along its member; a pin stands on the ground below, else against the wall on the outer side, else
    hangs, whichever keeps its triangle off the bodies. `strands`: directions of cords on a disc there; such a pin rather hangs.
    `reach`: how far off the spot the symbol begins to take room, pt."""
    ways = leaving(spot, bodies) + list(strands)
    if kind == "fixed" and ways:
        return ways[0]
    outer = 1.0 if spot[0] < middle[0] else -1.0
    close = [s for s in about(spot, reach + 18.1, taken) if min(math.dist(s[0], spot), math.dist(s[1], spot)) > 2]
    best, least = (0.0, -1.0), math.inf
    for up, dislike in (((0.0, -1.0), 0.0), ((outer, 0.0), 3.0), ((0.0, 1.0), 2.0 if strands else 5.0), ((-outer, 0.0), 6.0)):
        ground = (-up[0], -up[1])
        cost = dislike + sum(
            20.0 if angle_between(ground, w) < 32 else 8.0 if angle_between(ground, w) < 58 else 0.0 for w in ways
        )
        near, far = plus(spot, ground, reach), plus(spot, ground, reach + 9)
        cost += 4.0 * sum(segment_to_segment(near, far, p, q) < half + 9 for p, q, half in close)
        if cost < least:
            best, least = up, cost
    return best


def couple_facing(spot: Spot, room: list[Strip]) -> tuple[Spot, float]:
    """The middle and the sweep of the arc: in the widest gap between all that leaves the spot, short of both sides."""
    angles = sorted({round(page_angle(w), 3) % 360 for w in leaving(spot, [s for s in room if s[2] > 0.5])})
    if not angles:
        return (0.0, -1.0), 250.0
    gaps = [((b - a) % 360 or 360.0, a) for a, b in zip(angles, angles[1:] + angles[:1])]
    widest, start = max(gaps, key=lambda g: (round(g[0]), -abs((g[1] + g[0] / 2) % 360 - 90)))
    middle = math.radians(start + widest / 2)
    return (math.cos(middle), -math.sin(middle)), max(64.0, min(250.0, widest - (60.0 if widest > 130 else 24.0)))
