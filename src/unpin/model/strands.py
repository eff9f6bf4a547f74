"""The straight strands of a cord between its stops, tangent to the discs it passes.

A disc of radius r that the cord passes anticlockwise (sense s = +1) or clockwise (-1) counts as a = r s; a point as a = 0. With V
from one stop's centre to the next and a the difference of their two numbers, the strand has length √(V² - a²) and direction
d = (length V - a R V) / V², where R turns a quarter clockwise; it leaves a disc at its centre + a R d. One formula covers
points, single discs, and open and crossed strands between discs (plane trigonometry; derivation ours).

`over`, `under`, `left of` and `right of` give the sense by where the stops before and after lie. Where those lie one above the
other (beside each other for a side), as in a tackle, they leave it open; then the cord is passed so that it does not cross itself.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Mapping

from unpin.base.record import record
from unpin.base.tolerance import TOUCHES
from unpin.exact.number import ZERO, Number, sign, sqrt
from unpin.model.problem import Cord, Stop
from unpin.model.space import difference
from unpin.model.values import Vector

Segment = tuple[tuple[float, float], tuple[float, float]]
SIDES: dict[str, tuple[int, int]] = {"over": (0, 1), "under": (0, -1), "left": (-1, 0), "right": (1, 0)}


@record
class Strand:
    """A straight stretch of cord: `start` and `end` where it leaves one stop and meets the next (None: an open end), and its
    unit direction from the first to the second."""

    first: Stop
    second: Stop
    start: Vector | None
    end: Vector | None
    direction: Vector


class Slack(ValueError):
    """The cord cannot be drawn: between stops `at` and `at` + 1 one lies within a disc of the other (`why` is within), or the
    side of the disc at stop `at` does not tell which way the cord passes it (side)."""

    def __init__(self, name: str, why: str, at: int):
        self.name, self.why, self.at = name, why, at
        super().__init__(f"{name}: {why} at stop {at + 1}")


def strands_between(at: Mapping[str, Vector], cord: Cord) -> tuple[Strand, ...]:
    """The strands in order; `at`: the place of every point. Raises Slack."""
    return _strands(at, cord, turns_of(at, cord))


def turns_of(at: Mapping[str, Vector], cord: Cord) -> tuple[Number, ...]:
    """For each stop, radius times the sense in which the cord passes the disc; 0 for an end and for a ring of no size. Raises
    Slack where the sides leave a sense open and none, or more than one, keeps the cord from crossing itself."""
    told = [turned(at, cord, k) for k in range(len(cord.stops))]
    unsure = [k for k, turn in enumerate(told) if turn is None]
    if not unsure:
        return tuple(told)
    clear = []
    for senses in itertools.product((1, -1), repeat=len(unsure)) if len(unsure) <= MOST_UNSURE else ():
        tried = dict(zip(unsure, senses))
        turns = tuple(tried[k] * cord.stops[k].radius if k in tried else told[k] for k in range(len(told)))
        try:
            if not crosses(at, cord, _strands(at, cord, turns)):
                clear.append(turns)
        except Slack:
            continue
    if len(clear) != 1:
        raise Slack(cord.name, "side", next((k for k in unsure if len({t[k] for t in clear}) != 1), unsure[0]))
    return clear[0]


MOST_UNSURE = 6
"""With more senses left open than this, no choice is tried."""


def _strands(at: Mapping[str, Vector], cord: Cord, turns: tuple[Number, ...]) -> tuple[Strand, ...]:
    out = []
    for k, (one, two) in enumerate(zip(cord.stops, cord.stops[1:])):
        a, b = turns[k], turns[k + 1]
        if one.direction is not None or two.direction is not None:
            said = two.direction or one.direction.reversed()
            d = tuple(c / said.length for c in said.vector)
        else:
            d = tangent(difference(at[two.point], at[one.point]), a - b)
            if d is None:
                raise Slack(cord.name, "within", k)
        start = None if one.direction is not None else touch(at[one.point], a, d)
        end = None if two.direction is not None else touch(at[two.point], b, d)
        out.append(Strand(one, two, start, end, d))
    return tuple(out)


def turned(at: Mapping[str, Vector], cord: Cord, k: int) -> Number | None:
    """Radius times the sense that the side of stop `k` tells by itself; None where it leaves the sense open."""
    stop = cord.stops[k]
    if not stop.side or stop.radius == 0:
        return ZERO
    across = _across(at, cord, k, stop.side)
    return None if across == 0 else stop.radius * sign(across)


def other_sides(at: Mapping[str, Vector], cord: Cord, k: int) -> tuple[str, str] | None:
    """The two sides that do tell a sense where that of stop `k` does not: the anticlockwise one, the clockwise one."""
    pair = ("left", "right") if cord.stops[k].side in ("over", "under") else ("over", "under")
    across = sign(_across(at, cord, k, pair[0]))
    return None if across == 0 else pair if across > 0 else pair[::-1]


def crosses(at: Mapping[str, Vector], cord: Cord, strands: tuple[Strand, ...]) -> bool:
    """Whether two strands of the cord cross; one pulled from outside goes on as far as the stops are apart."""
    stops = [at[s.point] for s in cord.stops if s.point]
    reach = 1.0 + math.hypot(*(float(max(s[c] for s in stops) - min(s[c] for s in stops)) for c in (0, 1)))
    return any(_cross(a, b) for a, b in itertools.combinations(_segments(strands, reach), 2))


def _segments(strands: tuple[Strand, ...], reach: float) -> Iterator[Segment]:
    for s in strands:
        x, y = (float(c) * reach for c in s.direction)
        start, end = (None if e is None else (float(e[0]), float(e[1])) for e in (s.start, s.end))
        if start is not None or end is not None:
            yield start or (end[0] - x, end[1] - y), end or (start[0] + x, start[1] + y)


def _cross(one: Segment, two: Segment) -> bool:
    (p, q), (r, s) = one, two
    u, v, w = ((b[0] - a[0], b[1] - a[1]) for a, b in ((p, q), (r, s), (p, r)))
    area = u[0] * v[1] - u[1] * v[0]
    if abs(area) <= TOUCHES * math.hypot(*u) * math.hypot(*v):
        return False
    shares = ((w[0] * v[1] - w[1] * v[0]) / area, (w[0] * u[1] - w[1] * u[0]) / area)
    return all(TOUCHES < share < 1 - TOUCHES for share in shares)


def _across(at: Mapping[str, Vector], cord: Cord, k: int, name: str) -> Number:
    """How far the stop after lies from the stop before, anticlockwise as seen from a disc that the cord touches on that side."""
    side = SIDES[name]
    before, after = (_guide(at, cord, cord.stops[k], j) for j in (k - 1, k + 1))
    return (after[0] - before[0]) * -side[1] + (after[1] - before[1]) * side[0]


def _guide(at: Mapping[str, Vector], cord: Cord, stop: Stop, j: int) -> Vector:
    """Roughly where the cord comes from or goes to, seen from a disc."""
    other = cord.stops[j]
    if other.direction is None:
        return at[other.point]
    centre = at[stop.point]
    return tuple(c + v for c, v in zip(centre, other.direction.vector))


def tangent(v: Vector, a: Number) -> Vector | None:
    """Unit direction of the strand from one stop to another that is `v` away; `a`: the difference of their signed radii. None
    where one lies within the other's disc."""
    square = v[0] * v[0] + v[1] * v[1]
    left = square - a * a
    if sign(left) <= 0:
        return None
    length = sqrt(left)
    # R V = (V_y, -V_x)
    return ((length * v[0] - a * v[1]) / square, (length * v[1] + a * v[0]) / square)


def touch(centre: Vector, a: Number, d: Vector) -> Vector:
    """Where a strand of direction `d` leaves or meets a disc of signed radius `a`."""
    return (centre[0] + a * d[1], centre[1] - a * d[0])
