"""A wheel is seen behind its own pin, and the pin of a small wheel stands on ground beyond the rim."""

from fractions import Fraction as F

from frames import LETTERING, at, force

from unpin.draw.figure import draw, problem_figure
from unpin.draw.scene import Path, leaves
from unpin.draw.symbols.hinge import RADIUS
from unpin.model import directions
from unpin.model.problem import GROUND, Connection, Part, Problem
from unpin.statics.assemble import assemble


def drawn(radius: F):
    """Marks of a wheel of that radius at the end of a six metre beam, held by a pin at each end."""
    problem = Problem(
        at(A=(0, 0), B=(6, 0)),
        (Part("beam", ("A", "B")), Part("wheel", ("B",), "disc", radii=(radius,))),
        (Connection("A", "pin", ("A",), ("beam", GROUND)), Connection("B", "pin", ("B",), ("beam", "wheel", GROUND))),
        (force(50, "A", directions.DOWN, "beam"),),
    )
    return list(leaves(draw(problem_figure(assemble(problem), LETTERING)).marks))


def rim(marks) -> Path:
    return next(m for m in marks if isinstance(m, Path) and m.role == "disc")


def test_a_wheel_far_smaller_than_its_frame_is_still_wider_than_its_pin():
    assert rim(drawn(F(1, 1000))).radius > RADIUS + 1


def test_the_ground_of_the_pin_of_a_small_wheel_lies_beyond_its_rim():
    marks = drawn(F(1, 2))
    wheel = rim(marks)
    ((x, y),) = wheel.spots
    triangles = [m for m in marks if isinstance(m, Path) and m.role == "symbol" and m.closed and m.owner == "B"]

    assert [max(abs(p - x) for p, _ in t.spots) > wheel.radius or max(q - y for _, q in t.spots) > wheel.radius for t in triangles] == [True]
