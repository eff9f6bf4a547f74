"""Where a wheel touches, worked from centres, radii and points alone: the contact's own direction is not used but on a flat floor."""

from __future__ import annotations

from itertools import pairwise

import numpy

from unpin.model.problem import GROUND, Connection, Problem


def wheel_of(problem: Problem, c: Connection):
    """(wheel, what it touches) of a contact in which a disc takes part, None else; of two discs the first is the wheel."""
    parts = {p.name: p for p in problem.parts}
    for one, two in (c.parts, c.parts[::-1]):
        if one in parts and parts[one].kind == "disc" and c.kind in ("contact", "surface", "knife_edge"):
            return parts[one], parts.get(two)
    return None


def run_under(problem: Problem, c: Connection, wheel, other):
    """Of a member or a block with corners the run whose line is one radius from the centre, as two points' names."""
    at = {p.name: numpy.array([float(x) for x in p.at]) for p in problem.points}
    centre, radius = at[wheel.points[0]], float(wheel.radii[0])
    runs = [*pairwise(other.points), *([(other.points[-1], other.points[0])] if other.kind == "box" else [])]

    def off(run) -> float:
        a, b = at[run[0]], at[run[1]]
        v, w = b - a, centre - a
        return abs(abs(v[0] * w[1] - v[1] * w[0]) / numpy.hypot(*v) - radius)

    return min(runs, key=off)


def normal_to(problem: Problem, c: Connection) -> numpy.ndarray:
    """The unit vector from what is touched to the wheel's centre."""
    wheel, other = wheel_of(problem, c)
    at = {p.name: numpy.array([float(x) for x in p.at]) for p in problem.points}
    centre = at[wheel.points[0]]
    if other is not None and other.kind == "disc":
        way = centre - at[other.points[0]]
    elif other is not None:
        a, b = (at[p] for p in run_under(problem, c, wheel, other))
        t = (b - a) @ (centre - a) / ((b - a) @ (b - a))
        way = centre - (a + t * (b - a))
    elif c.kind == "knife_edge":
        way = centre - at[c.points[0]]
    else:
        way = numpy.array([float(v) for v in c.direction.vector]) * (1 if c.parts[1] == GROUND else -1)
    return way / numpy.hypot(*way)
