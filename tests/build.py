"""Small problems in few words, for tests: `frame({"A": (0, 0), ...}, {"beam": "A B"}, support("pin", "A", "beam"), ...)`."""

from __future__ import annotations

from fractions import Fraction as F

from unpin.base.units import FORCE, MOMENT, SPREAD
from unpin.exact.number import cos_deg, length, sin_deg
from unpin.model import directions
from unpin.model.problem import GROUND, Asked, Connection, Load, Part, Point, Problem, Stretch
from unpin.model.space import square_to
from unpin.model.values import Direction, Quantity

RIGHT, UP, DOWN = directions.X, directions.Y, directions.DOWN
LEFT = RIGHT.reversed()


def number(x):
    """Ints, strings and fractions as exact numbers."""
    return F(str(x)) if isinstance(x, (int, str)) else x


def frame(points: dict, parts: dict, *things, asked=("everything",)) -> Problem:
    """Points by name, parts as strings of point names, then connections and loads in the order of the file."""
    at = {name: tuple(map(number, xy)) for name, xy in points.items()}
    made = [thing(at) if callable(thing) else thing for thing in things]
    questions = tuple(Asked(a) if isinstance(a, str) else a for a in asked)
    return Problem(tuple(Point(n, xy) for n, xy in at.items()), tuple(Part(n, tuple(p.split())) for n, p in parts.items()),
                   tuple(c for c in made if isinstance(c, Connection)), tuple(x for x in made if isinstance(x, Load)), questions)


# Directions. Those between points need the coordinates, so they are functions of them.

def slope(x, y) -> Direction:
    vector = (number(x), number(y))
    return Direction(vector, length(vector), "slope", legs=vector)


def components(x, y) -> Direction:
    vector = (number(x), number(y))
    return Direction(vector, length(vector), "components")


def angle(degrees, base: Direction = RIGHT, turn: Direction = UP) -> Direction:
    a = number(degrees)
    vector = tuple(b * cos_deg(a) + t * sin_deg(a) for b, t in zip(base.vector, turn.vector))
    return Direction(vector, F(1), "angle", angle=a, base=base.vector, turn=turn.vector)


def towards(a: str, b: str):
    return lambda at: directions.line((a, b), at[a], at[b])


def square(a: str, b: str):
    """A quarter turn anticlockwise from the line a to b."""
    def made(at):
        d = directions.line((a, b), at[a], at[b])
        vector = square_to(d.vector)
        return Direction(vector, d.length, "axis" if directions.axis_of(vector) else "square", points=(a, b))
    return made


def _way(direction, at):
    return direction(at) if callable(direction) else direction


# Connections.

def pin(point: str, *parts: str) -> Connection:
    return Connection(point, "pin", (point,), parts)


def weld(point: str, first: str, second: str) -> Connection:
    return Connection(point, "fixed", (point,), (first, second))


def support(kind: str, point: str, part: str = "", direction=None, name: str = ""):
    return lambda at: Connection(name or point, kind, (point,), (part, GROUND), _way(direction, at))


def between(kind: str, point: str, first: str, second: str, direction=None):
    return lambda at: Connection(f"{kind} {point}", kind, (point,), (first, second), _way(direction, at))


def link(a: str, b: str, first: str = "", second: str = GROUND) -> Connection:
    """From `a` on `first` to `b` on `second`; "" is the pin itself."""
    return Connection(f"{a}{b}", "link", (a, b), (first, second))


# Loads, in N, N·m and N/m.

def force(size, point: str, part: str = "", direction=DOWN):
    return lambda at: Load("force", point, part, Quantity(number(size), FORCE), _way(direction, at))


def weight(size, point: str, part: str = "") -> Load:
    return Load("weight", point, part, Quantity(number(size), FORCE), DOWN)


def couple(size, part: str, point: str) -> Load:
    return Load("couple", point, part, Quantity(number(size), MOMENT))


def spread(part: str, a: str, b: str, first, last=None, direction=DOWN, per: str = "member"):
    last = first if last is None else last

    def made(at):
        stretch = Stretch(at[a], at[b], a, b, Quantity(number(first), SPREAD), Quantity(number(last), SPREAD), per)
        return Load("spread", "", part, None, _way(direction, at), stretches=(stretch,))
    return made
