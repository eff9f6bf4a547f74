"""Moving, turning, mirroring, scaling, renaming and reordering whole problems, and reading the forces of a solution."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from fractions import Fraction as F

from unpin.exact.number import length
from unpin.model.action import Structure
from unpin.model.directions import axis_of
from unpin.model.problem import GROUND, Load, Problem, Stretch
from unpin.model.space import ZERO, difference
from unpin.model.values import Direction, Quantity, Vector
from unpin.statics.loads import run_of

QUARTER = ((F(0), F(-1)), (F(1), F(0)))
THREE_FOUR_FIVE = ((F(3, 5), F(-4, 5)), (F(4, 5), F(3, 5)))
MIRROR = ((F(-1), F(0)), (F(0), F(1)))
SAME = ((F(1), F(0)), (F(0), F(1)))


def turned(matrix, v: Vector) -> Vector:
    return (matrix[0][0] * v[0] + matrix[0][1] * v[1], matrix[1][0] * v[0] + matrix[1][1] * v[1])


def direction_turned(matrix, d: Direction) -> Direction:
    vector = turned(matrix, d.vector)
    if axis_of(vector):
        unit = tuple(c / d.length for c in vector)
        return Direction(unit, F(1), "axis")
    return Direction(vector, d.length, "components")


def mapped(problem: Problem, matrix=SAME, shift: Vector = (ZERO, ZERO), size: F = F(1), force: F = F(1)) -> Problem:
    """Points times `matrix` times `size` plus `shift`; every force times `force`, every moment times `force` and `size`."""
    handed = matrix[0][0] * matrix[1][1] - matrix[0][1] * matrix[1][0]

    def place(at: Vector) -> Vector:
        return tuple(c * size + s for c, s in zip(turned(matrix, at), shift))

    def way(d: Direction | None) -> Direction | None:
        return d and direction_turned(matrix, d)

    def times(q: Quantity | None, factor) -> Quantity | None:
        return q and replace(q, value=q.value * factor)

    def stretch(s: Stretch) -> Stretch:
        # Per length of the member, which no turn changes.
        share = run_of(s) / length(difference(s.end, s.start)) * force / size
        return replace(s, start=place(s.start), end=place(s.end), start_intensity=times(s.start_intensity, share),
                       end_intensity=times(s.end_intensity, share), per="member")

    def load(x: Load) -> Load:
        factor = force * size * handed if x.kind == "couple" else force
        return replace(x, magnitude=times(x.magnitude, factor), direction=way(x.direction), stretches=tuple(map(stretch, x.stretches)))

    return replace(problem, points=tuple(replace(p, at=place(p.at)) for p in problem.points),
                   connections=tuple(replace(c, direction=way(c.direction)) for c in problem.connections),
                   loads=tuple(map(load, problem.loads)))


def renamed(problem: Problem, new: Callable[[str], str]) -> Problem:
    """Every point, part and connection under another name; the order is kept."""
    def names(old):
        return tuple(n if n in ("", GROUND) else new(n) for n in old)

    def direction(d):
        return d and replace(d, points=names(d.points))

    def load(x: Load) -> Load:
        return replace(x, point=new(x.point) if x.point else "", part=new(x.part) if x.part else "", direction=direction(x.direction),
                       stretches=tuple(replace(s, start_name=new(s.start_name), end_name=new(s.end_name)) for s in x.stretches))

    return replace(problem, points=tuple(replace(p, name=new(p.name)) for p in problem.points),
                   parts=tuple(replace(p, name=new(p.name), points=names(p.points)) for p in problem.parts),
                   connections=tuple(replace(c, name=new(c.name), points=names(c.points), parts=names(c.parts),
                                             direction=direction(c.direction)) for c in problem.connections),
                   loads=tuple(map(load, problem.loads)),
                   asked=tuple(replace(a, subject=names((a.subject,))[0], point=names((a.point,))[0], part=names((a.part,))[0])
                               for a in problem.asked))


def reordered(problem: Problem) -> Problem:
    """Everything in the opposite order: the part named first at each pin is another."""
    connections = []
    for c in reversed(problem.connections):
        if c.kind == "link":
            c = replace(c, points=c.points[::-1], parts=c.parts[::-1])
        elif c.kind == "pin" and GROUND not in c.parts:
            c = replace(c, parts=c.parts[::-1])
        connections.append(c)
    return replace(problem, points=problem.points[::-1], parts=problem.parts[::-1], connections=tuple(connections),
                   loads=problem.loads[::-1])


def forces(structure: Structure, values: Mapping[str, object]) -> dict[tuple[str, str, str], tuple]:
    """(on, source, point) to (F_x, F_y, couple): what acts there on each body, whichever way the unknowns are named."""
    out: dict[tuple[str, str, str], tuple] = {}
    for a in structure.actions:
        if not a.unknown or a.unknown not in values:
            continue
        value = values[a.unknown] * a.multiple
        if a.kind == "couple":
            part = (ZERO, ZERO, value * a.turn)
        else:
            part = (value * a.direction.vector[0] / a.direction.length, value * a.direction.vector[1] / a.direction.length, ZERO)
        key = (a.on, a.source, a.point)
        out[key] = tuple(x + y for x, y in zip(out[key], part)) if key in out else part
    return out
