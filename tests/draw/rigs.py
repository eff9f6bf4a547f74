"""Structures with discs, cords and blocks for the tests of the drawings: a crane arm, a tackle, a drum, a trestle, a knot, a ring."""

from __future__ import annotations

from fractions import Fraction as F

from frames import DOWN, angled, at, force

from unpin.base.units import FORCE
from unpin.model import directions
from unpin.model.problem import GROUND, Connection, Cord, Load, Part, Problem, Stop
from unpin.model.values import Quantity


def weight(size, point: str, part: str) -> Load:
    return Load("weight", point, part, Quantity(F(size), FORCE), DOWN)


def crane() -> Problem:
    """An arm with a stay, a pulley on its end, a cord from the wall over it to a sack."""
    return Problem(
        at(A=(0, 0), B=(2, 0), C=(3, 0), G=(2, -2), W=(0, 0.2), K=(3.2, -1)),
        (Part("arm", ("A", "B", "C")), Part("pulley", ("C",), "disc", radii=(F(1, 5),)), Part("sack", ("K",), "block")),
        (
            Connection("C", "pin", ("C",), ("arm", "pulley")),
            Connection("A", "pin", ("A",), ("arm", GROUND)),
            Connection("BG", "link", ("B", "G"), ("arm", GROUND)),
        ),
        (weight(500, "K", "sack"),),
        cords=(Cord("T", (Stop("W", GROUND), Stop("C", "pulley", "over", F(1, 5)), Stop("K", "sack"))),),
    )


def tackle() -> Problem:
    """A movable pulley with a hook, a fixed one, and a free end that is pulled down."""
    return Problem(
        at(W=(0, 2), M=(0.1, 0.5), F=(0.3, 2), S=(0.1, 0.3)),
        (Part("lower", ("M",), "disc", radii=(F(1, 10),)), Part("upper", ("F",), "disc", radii=(F(1, 10),)), Part("hook", ("M", "S"))),
        (Connection("M", "pin", ("M",), ("lower", "hook")), Connection("F", "pin", ("F",), ("upper", GROUND))),
        (force(400, "S", DOWN, "hook"),),
        cords=(
            Cord(
                "T",
                (
                    Stop("W", GROUND),
                    Stop("M", "lower", "under", F(1, 10)),
                    Stop("F", "upper", "over", F(1, 10)),
                    Stop(direction=DOWN),
                ),
            ),
        ),
    )


def guyed() -> Problem:
    """A post whose cord slopes to the ground, and whose free end is pulled at an angle."""
    return Problem(
        at(A=(0, 0), B=(0, 3), W=(2.5, 0)),
        (Part("post", ("A", "B")), Part("wheel", ("B",), "disc", radii=(F(1, 4),))),
        (Connection("B", "pin", ("B",), ("post", "wheel")), Connection("A", "fixed", ("A",), ("post", GROUND))),
        (force(80, "B", directions.X, "post"),),
        cords=(Cord("T", (Stop("W", GROUND), Stop("B", "wheel", "over", F(1, 4)), Stop(direction=angled(40, (-1, 0), (0, -1))))),),
    )


def drum() -> Problem:
    """A drum with two radii, built on a crank with a load to be found, and two cords wound on it."""
    return Problem(
        at(C=(0, 0), H=(0.6, 0), K=(-0.1, -0.7), L=(0.3, -0.8), P=(-0.1, 0), Q=(0.3, 0)),
        (
            Part("drum", ("C",), "disc", radii=(F(1, 10), F(3, 10))),
            Part("crank", ("C", "H")),
            Part("load", ("K",), "block"),
            Part("counter", ("L",), "block"),
        ),
        (Connection("C", "fixed", ("C",), ("drum", "crank")), Connection("support C", "pin", ("C",), ("crank", GROUND))),
        (weight(600, "K", "load"), weight(100, "L", "counter"), Load("force", "H", "crank", None, DOWN, name="P")),
        cords=(
            Cord("S", (Stop("K", "load"), Stop("P", "drum", radius=F(1, 10)))),
            Cord("T", (Stop("L", "counter"), Stop("Q", "drum", radius=F(3, 10)))),
        ),
    )


def trestle() -> Problem:
    """Two legs that are kept together by a cord."""
    return Problem(
        at(A=(0, 0), B=(2, 0), C=(1, 2), D=(0.25, 0.5), E=(1.75, 0.5)),
        (Part("one", ("A", "D", "C")), Part("two", ("B", "E", "C"))),
        (
            Connection("C", "pin", ("C",), ("one", "two")),
            Connection("A", "pin", ("A",), ("one", GROUND)),
            Connection("B", "roller", ("B",), ("two", GROUND), directions.Y),
        ),
        (force(400, "C", DOWN, "one"),),
        cords=(Cord("T", (Stop("D", "one"), Stop("E", "two"))),),
    )


def lamp() -> Problem:
    """A lamp under a knot of three cords, of which one runs on through a ring that is held by a fourth."""
    return Problem(
        at(A=(0, 2), B=(4, 2.5), K=(1, 1), L=(1, 0), R=(2.5, 2), D=(2.5, 3)),
        (Part("lamp", ("L",), "block"), Part("K", ("K",), "block"), Part("ring", ("R",), "block")),
        (),
        (weight(120, "L", "lamp"),),
        cords=(
            Cord("T", (Stop("A", GROUND), Stop("K", "K"))),
            Cord("S", (Stop("K", "K"), Stop("R", "ring", "through", F(0)), Stop("B", GROUND))),
            Cord("U", (Stop("L", "lamp"), Stop("K", "K"))),
            Cord("V", (Stop("R", "ring"), Stop("D", GROUND))),
        ),
    )


RIGS = {"crane": crane, "tackle": tackle, "guyed": guyed, "drum": drum, "trestle": trestle, "lamp": lamp}
