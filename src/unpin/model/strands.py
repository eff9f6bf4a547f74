"""The straight strands of a cord between its stops, tangent to the discs it passes.

A disc of radius r that the cord passes anticlockwise (sense s = +1) or clockwise (-1) counts as a = r s; a point as a = 0. With V
from one stop's centre to the next and a the difference of their two numbers, the strand has length √(V² - a²) and direction
d = (length V - a R V) / V², where R turns a quarter clockwise; it leaves a disc at its centre + a R d. One formula covers
points, single discs, and open and crossed strands between discs (plane trigonometry; derivation ours).
"""

from __future__ import annotations

from collections.abc import Mapping

from unpin.base.record import record
from unpin.exact.number import ZERO, Number, sign, sqrt
from unpin.model.problem import Cord, Stop
from unpin.model.space import difference
from unpin.model.values import Vector

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
    turns = [turned(at, cord, k) for k in range(len(cord.stops))]
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


def turned(at: Mapping[str, Vector], cord: Cord, k: int) -> Number:
    """Radius times the sense in which the cord passes the disc; 0 for an end and for a ring of no size."""
    stop = cord.stops[k]
    if not stop.side or stop.radius == 0:
        return ZERO
    side = SIDES[stop.side]
    before, after = (_guide(at, cord, stop, j) for j in (k - 1, k + 1))
    across = (after[0] - before[0]) * -side[1] + (after[1] - before[1]) * side[0]
    if across == 0:
        raise Slack(cord.name, "side", k)
    return stop.radius * sign(across)


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
