"""Making directions: the axes, lines between points, and the square to one."""

from __future__ import annotations

from fractions import Fraction

from unpin.exact.lettered import as_drawn, is_lettered
from unpin.exact.number import cos_deg, length, sin_deg
from unpin.model.space import ONE, RIGHT, UP, ZERO, difference
from unpin.model.values import Direction, Vector

X = Direction(RIGHT, ONE, "axis", written="right")
Y = Direction(UP, ONE, "axis", written="up")
DOWN = Direction((ZERO, -ONE), ONE, "axis", written="down")


def line(names: tuple[str, str], start: Vector, end: Vector) -> Direction:
    """From `start` to `end`; an axis when it runs along one, so that it is written as one. ValueError if they are one point."""
    vector = difference(end, start)
    if vector[0] == 0 and vector[1] == 0:
        raise ValueError("a line needs two points")
    axis = axis_of(vector)
    if axis:
        as_drawn(vector[0] + vector[1])
        sign = ONE if float(vector[0] + vector[1]) > 0 else -ONE
        unit = (sign, ZERO) if axis == "x" else (ZERO, sign)
        return Direction(unit, ONE, "axis", points=names)
    return Direction(vector, length(vector), "line", points=names)


def axis_of(vector: Vector) -> str:
    """ "x" or "y" when the vector is along that axis, "" otherwise."""
    if vector[1] == 0:
        return "x"
    return "y" if vector[0] == 0 else ""


def angle_of(vector: Vector) -> float:
    """Degrees anticlockwise from +x, in (-180, 180]."""
    import math

    return math.degrees(math.atan2(float(vector[1]), float(vector[0])))


def from_slope(d: Direction) -> bool:
    """Whether a direction that is no axis is given by its angle with a sloping line, without letters."""
    return d.form == "angle" and bool(d.points) and not axis_of(d.base) and not axis_of(d.vector) and not any(map(is_lettered, d.vector))


def steepness(d: Direction, digits: int = 2) -> Fraction:
    """The acute angle with the level, degrees, rounded."""
    import math

    return Fraction(round(math.degrees(math.atan2(abs(float(d.vector[1])), abs(float(d.vector[0])))) * 10**digits), 10**digits)


def level_angle(d: Direction) -> Fraction | None:
    """The acute angle with the level, degrees, of a direction given by its angle with a sloping line, where it is exact to a
    thousandth of a degree; None for any other."""
    import math

    if not from_slope(d):
        return None
    degrees = math.degrees(math.atan2(abs(float(d.vector[1])), abs(float(d.vector[0]))))
    near = steepness(d, 3)
    if abs(float(near) - degrees) > 1e-9 or not parallel((abs(d.vector[0]), abs(d.vector[1])), (cos_deg(near), sin_deg(near))):
        return None
    return near


def parallel(a: Vector, b: Vector) -> bool:
    return a[0] * b[1] - a[1] * b[0] == 0


def small_legs(vector: Vector) -> tuple[Fraction, Fraction] | None:
    """The legs of a rational slope as the smallest whole numbers, None if the ratio is not rational or not small."""
    import math

    x, y = vector
    if not isinstance(x, Fraction) or not isinstance(y, Fraction):
        ratio = x / y if y != 0 else None
        if not isinstance(ratio, Fraction):
            return None
        x, y = ratio * (1 if float(y) > 0 else -1), Fraction(1 if float(y) > 0 else -1)
    common = math.lcm(x.denominator, y.denominator)
    a, b = int(x * common), int(y * common)
    divisor = math.gcd(a, b) or 1
    return Fraction(a // divisor), Fraction(b // divisor)
