"""Cords: the straight strands between their stops, tangent to the discs they pass, and one tension along all of them.

A disc of radius r that the cord passes anticlockwise (sense s = +1) or clockwise (-1) counts as a = r s; a point as a = 0. With V
from one stop's centre to the next and a the difference of their two numbers, the strand has length √(V² - a²) and direction
d = (length V - a R V) / V², where R turns a quarter clockwise; it leaves a disc at its centre + a R d. One formula covers
points, single discs, and open and crossed strands between discs (plane trigonometry; derivation ours).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from unpin.exact.number import ONE, ZERO, Number, sign, sqrt
from unpin.model.action import Action, Symbol, Unknown
from unpin.model.directions import axis_of
from unpin.model.problem import GROUND, Cord, Problem, Stop
from unpin.model.space import difference
from unpin.model.values import Direction, Vector

SIDES: dict[str, tuple[int, int]] = {"over": (0, 1), "under": (0, -1), "left": (-1, 0), "right": (1, 0)}


@dataclass(frozen=True)
class Strand:
    """A straight stretch of cord: `start` and `end` where it leaves one stop and meets the next (None: an open end), and its
    unit direction from the first to the second."""

    first: Stop
    second: Stop
    start: Vector | None
    end: Vector | None
    direction: Vector


class Slack(ValueError):
    """The cord cannot be drawn: a stop lies within a disc, two stops coincide, or the side of a disc does not tell the wrap."""


def strands(problem: Problem, cord: Cord) -> tuple[Strand, ...]:
    """The strands in order. Raises Slack."""
    at = problem.coordinates
    turns = [_turned(at, cord, k) for k in range(len(cord.stops))]
    out = []
    for k, (one, two) in enumerate(zip(cord.stops, cord.stops[1:])):
        a, b = turns[k], turns[k + 1]
        if one.direction is not None or two.direction is not None:
            said = two.direction or one.direction.reversed()
            d = tuple(c / said.length for c in said.vector)
        else:
            d = _along(difference(at[two.point], at[one.point]), a - b)
        start = None if one.direction is not None else _touch(at[one.point], a, d)
        end = None if two.direction is not None else _touch(at[two.point], b, d)
        out.append(Strand(one, two, start, end, d))
    return tuple(out)


def _turned(at: dict[str, Vector], cord: Cord, k: int) -> Number:
    """Radius times the sense in which the cord passes the disc; 0 for an end."""
    stop = cord.stops[k]
    if not stop.side:
        return ZERO
    side = SIDES[stop.side]
    before, after = (_guide(at, cord, stop, j) for j in (k - 1, k + 1))
    across = (after[0] - before[0]) * -side[1] + (after[1] - before[1]) * side[0]
    if across == 0:
        raise Slack(cord.name)
    return stop.radius * sign(across)


def _guide(at: dict[str, Vector], cord: Cord, stop: Stop, j: int) -> Vector:
    """Roughly where the cord comes from or goes to, seen from a disc."""
    other = cord.stops[j]
    if other.direction is None:
        return at[other.point]
    centre = at[stop.point]
    return tuple(c + v for c, v in zip(centre, other.direction.vector))


def _along(v: Vector, a: Number) -> Vector:
    square = v[0] * v[0] + v[1] * v[1]
    left = square - a * a
    if sign(left) <= 0:
        raise Slack("")
    length = sqrt(left)
    # R V = (V_y, -V_x)
    return ((length * v[0] - a * v[1]) / square, (length * v[1] + a * v[0]) / square)


def _touch(centre: Vector, a: Number, d: Vector) -> Vector:
    return (centre[0] + a * d[1], centre[1] - a * d[0])


def cord_actions(problem: Problem, cord: Cord, host: Callable[[str, str], str]) -> tuple[Unknown, list[Action]]:
    """The tension of a cord and every arrow it drives: at both ends of each strand, along it, away from the body it acts on.

    `host(point, part)` names the body behind a part of the file. The two arrows of a strand are each other's pair, so a strand
    inside a free body does not show. Arrows on the ground are kept: they are its reaction there.
    """
    symbol = Symbol(cord.name) if len(cord.name) == 1 else Symbol("T", cord.name)
    actions: list[Action] = []
    for k, s in enumerate(strands(problem, cord), 1):
        ids = [f"{cord.name}>{_place(stop, host)}@{k}" for stop in (s.first, s.second)]
        for stop, spot, way, mine, other in ((s.first, s.start, 1, ids[0], ids[1]), (s.second, s.end, -1, ids[1], ids[0])):
            if spot is None:
                continue
            names = (s.first.point, s.second.point) if way > 0 else (s.second.point, s.first.point)
            direction = _direction(s, way, names)
            pair = other if (s.end if way > 0 else s.start) is not None else ""
            point = "" if stop.side else stop.point
            actions.append(Action(mine, "force", _place(stop, host), cord.name, point, spot, unknown=cord.name, symbol=symbol,
                                  direction=direction, sense="tension", pair=pair, source=cord.name))
    return Unknown(cord.name, symbol, "force", cord.name, tuple(a.id for a in actions), ONE, axial=True, drives="cord"), actions


def _place(stop: Stop, host: Callable[[str, str], str]) -> str:
    if stop.direction is not None:
        return ""
    return stop.part if stop.side else host(stop.point, stop.part) or GROUND


def _direction(strand: Strand, way: int, names: tuple[str, str]) -> Direction:
    said = strand.second.direction or strand.first.direction
    vector = tuple(c * way for c in strand.direction)
    if said is not None:
        outward = strand.second.direction is not None
        unit = said if (way > 0) == outward else said.reversed()
        return Direction(vector, ONE, unit.form, unit.angle, unit.base, unit.turn, unit.legs, unit.points, unit.written)
    if axis_of(vector):
        return Direction(tuple(ONE * sign(c) for c in vector), ONE, "axis", points=names)
    return Direction(vector, ONE, "line", points=names)
