"""Structures built by hand for the tests of the drawings: an awning, a trailer, a hoist."""

from __future__ import annotations

from fractions import Fraction as F

from unpin.base.units import ANGLE, FORCE, LENGTH, MOMENT, NUMBER, SPREAD
from unpin.draw import label as labels
from unpin.draw.lettering import Lettering
from unpin.exact.number import ONE, ZERO, as_number, cos_deg, length, sin_deg
from unpin.model import directions
from unpin.model.problem import GROUND, Connection, Load, Part, Point, Problem, Stretch
from unpin.model.values import Direction, Quantity

RIGHT = directions.X
DOWN = directions.DOWN


def text(quantity: Quantity) -> labels.Label:
    value = float(quantity.value)
    unit = {LENGTH: " m", FORCE: " N", ANGLE: "°", MOMENT: " N·m", SPREAD: " N/m", NUMBER: ""}[quantity.dimension]
    return labels.upright(f"{value:.4g}{unit}")


LETTERING = Lettering(text=text)


def at(**spots) -> tuple[Point, ...]:
    return tuple(Point(n, (as_number(F(str(x))), as_number(F(str(y))))) for n, (x, y) in spots.items())


def slope(x: int, y: int) -> Direction:
    vector = (as_number(x), as_number(y))
    return Direction(vector, length(vector), "slope", legs=vector)


def angled(degrees: int, base: tuple[int, int], turn: tuple[int, int]) -> Direction:
    a = F(degrees)
    b, t = tuple(map(as_number, base)), tuple(map(as_number, turn))
    vector = tuple(cos_deg(a) * p + sin_deg(a) * q for p, q in zip(b, t))
    return Direction(vector, ONE, "angle", angle=a, base=b, turn=t)


def force(size, point: str, direction: Direction, part: str = "", name: str = "") -> Load:
    return Load("force", point, part, Quantity(F(size), FORCE), direction, name=name)


def awning() -> Problem:
    """Post and arm with a strut between them, a sloped load at the tip and a couple on the arm."""
    return Problem(
        at(O=(0, 0), A=(0, 3), C=(0, 2.4), B=(0, 1.2), D=(1.6, 2.4), E=(2.4, 2.4)),
        (Part("post", ("A", "C", "B", "O")), Part("arm", ("C", "D", "E"))),
        (
            Connection("C", "pin", ("C",), ("post", "arm")),
            Connection("B-D", "link", ("B", "D"), ("post", "arm")),
            Connection("A", "pin", ("A",), ("post", GROUND)),
            Connection("O", "roller", ("O",), ("post", GROUND), RIGHT),
        ),
        (force(300, "E", slope(3, -4)), force(150, "D", DOWN)),
    )


def bent_frame() -> Problem:
    """A bent frame on a pin and a roller on a slope, tied by a link, with a spread load, a push at an angle and a couple."""
    run = Stretch((ZERO, F(3)), (F(3), F(3)), "B", "C", Quantity(F(200), SPREAD), Quantity(F(200), SPREAD))
    return Problem(
        at(A=(0, 0), B=(0, 3), C=(3, 3), D=(5, 3), E=(5, 0), G=(0, 1.5), H=(5, 1.5)),
        (Part("left", ("A", "G", "B", "C")), Part("right", ("C", "D", "H", "E"))),
        (
            Connection("C", "pin", ("C",), ("left", "right")),
            Connection("G-H", "link", ("G", "H"), ("left", "right")),
            Connection("A", "pin", ("A",), ("left", GROUND)),
            Connection("E", "roller", ("E",), ("right", GROUND), angled(20, (0, 1), (-1, 0))),
        ),
        (
            Load("spread", "", "left", direction=DOWN, stretches=(run,)),
            force(500, "D", angled(30, (-1, 0), (0, -1)), "right"),
            Load("couple", "H", "right", Quantity(F(120), MOMENT)),
        ),
    )


def bracket() -> Problem:
    """A built-in post with an arm, a triangular load and a weight."""
    run = Stretch((ZERO, F(2)), (F(2), F(2)), "B", "C", Quantity(F(0), SPREAD), Quantity(F(300), SPREAD))
    return Problem(
        at(A=(0, 0), B=(0, 2), C=(2, 2)),
        (Part("bracket", ("A", "B", "C")),),
        (Connection("A", "fixed", ("A",), ("bracket", GROUND)),),
        (
            Load("spread", "", "bracket", direction=DOWN, stretches=(run,)),
            Load("weight", "C", "bracket", Quantity(F(90), FORCE), DOWN),
        ),
    )


def crossed() -> Problem:
    """Folding stool: two legs that cross at a pin, a cord as a link, one foot on a contact."""
    return Problem(
        at(A=(0, 0), B=(1, 1), C=(2, 2), D=(2, 0), E=(0, 2), G=(F(1, 2), F(1, 2)), H=(F(3, 2), F(1, 2))),
        (Part("first", ("A", "G", "B", "C")), Part("second", ("D", "H", "B", "E"))),
        (
            Connection("B", "pin", ("B",), ("first", "second")),
            Connection("G-H", "link", ("G", "H"), ("first", "second")),
            Connection("A", "pin", ("A",), ("first", GROUND)),
            Connection("D", "contact", ("D",), ("second", GROUND), directions.Y),
        ),
        (force(400, "C", DOWN, "first"), force(400, "E", DOWN, "second")),
    )


ALL = {"awning": awning, "bent_frame": bent_frame, "bracket": bracket, "crossed": crossed}
