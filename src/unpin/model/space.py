"""Vectors, wrenches, twists and functionals in a basis. `PLANE` is the one in use; three dimensions is another `Basis`.

Plane: wrench (F_x, F_y, M_O), twist (v_x, v_y, omega), both about the origin, x right, y up, anticlockwise positive.
Their product F_x v_x + F_y v_y + M_O omega is the power. A functional is a row applied to a wrench; moments about P are
(P_y, -P_x, 1), which is also the twist of a turn about P: summing moments about P is virtual work of a turn about P.
"""

from __future__ import annotations

from fractions import Fraction

from unpin.base.record import record
from unpin.exact.number import Number
from unpin.model.values import Vector

ZERO, ONE = Fraction(0), Fraction(1)
Wrench = tuple[Number, ...]


@record
class Basis:
    """`axes` forces first, then moments; `sums` how many sums a rigid part has."""

    axes: tuple[str, ...]
    dimension: int
    sums: int


PLANE = Basis(axes=("x", "y", "turn"), dimension=2, sums=3)
RIGHT: Vector = (ONE, ZERO)
UP: Vector = (ZERO, ONE)


def force_at(at: Vector, vector: Vector) -> Wrench:
    """Wrench about the origin of a force `vector` at the point `at`: M_O = x F_y - y F_x."""
    return (vector[0], vector[1], at[0] * vector[1] - at[1] * vector[0])


def couple(size: Number) -> Wrench:
    """Wrench of a couple, anticlockwise positive."""
    return (ZERO, ZERO, size)


def along(direction: Vector) -> Wrench:
    """Functional: forces along `direction` (times its length)."""
    return (direction[0], direction[1], ZERO)


def about(point: Vector) -> Wrench:
    """Functional: moments about `point`: M_P = M_O - (x_P F_y - y_P F_x)."""
    return (point[1], -point[0], ONE)


def turn_about(point: Vector) -> Wrench:
    """Twist of a turn of 1 rad/s anticlockwise about `point`."""
    return (point[1], -point[0], ONE)


def slide(direction: Vector) -> Wrench:
    """Twist of a translation."""
    return (direction[0], direction[1], ZERO)


def product(row: Wrench, column: Wrench) -> Number:
    """Functional applied to a wrench, or power of a wrench in a twist."""
    return row[0] * column[0] + row[1] * column[1] + row[2] * column[2]


def cross(a: Wrench, b: Wrench) -> Wrench:
    """The functional that vanishes on two wrenches."""
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def plus(a: Wrench, b: Wrench) -> Wrench:
    return (a[0] + b[0], a[1] + b[1], a[2] + b[2])


def scaled(a: Wrench, factor: Number) -> Wrench:
    return (a[0] * factor, a[1] * factor, a[2] * factor)


def difference(to: Vector, start: Vector) -> Vector:
    """Vector from `start` to `to`."""
    return tuple(b - a for a, b in zip(start, to))


def square_to(vector: Vector) -> Vector:
    """The vector turned a quarter anticlockwise."""
    return (-vector[1], vector[0])


def velocity(twist: Wrench, at: Vector) -> Vector:
    """Velocity of the point `at` of a body with this twist: v_O + omega x r."""
    return (twist[0] - twist[2] * at[1], twist[1] + twist[2] * at[0])
