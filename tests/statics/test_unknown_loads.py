"""A load whose size is to be found: one letter may pull at several places, and virtual work confirms it."""

from fractions import Fraction as F

from unpin.base.units import FORCE
from unpin.exact.number import sqrt
from unpin.model import directions
from unpin.model.problem import GROUND, Asked, Connection, Load, Part, Point, Problem
from unpin.model.values import Direction, Quantity
from unpin.route.work import work

SLOPE = Direction((F(1), F(-2)), sqrt(F(5)), "slope", legs=(F(1), F(-2)))


def lever(*loads):
    points = tuple(Point(n, (F(x), F(0))) for n, x in (("A", 0), ("D", 1), ("B", 2), ("C", 4)))
    pin = Connection("B", "pin", ("B",), ("lever", GROUND))
    given = Load("force", "C", "lever", Quantity(F(100), FORCE), directions.DOWN)
    return Problem(points, (Part("lever", ("A", "D", "B", "C")),), (pin,), (*loads, given), (Asked("load", subject="P"),))


def test_a_lever_is_balanced_by_the_load_asked():
    # Law of the lever: 2 P = 2 * 100 (common practice, no source).
    w = work(lever(Load("force", "A", "lever", None, directions.DOWN, name="P")))

    assert [(c.value, c.sense) for c in w.answers[0].components] == [(100, "down")]
    assert w.recommended.count == 1
    assert w.proof.passed


def test_one_letter_at_two_places_is_one_unknown_with_its_multiples():
    # Moments about B by hand: 2 P + (2/√5)(2 P)(1) = 200.
    w = work(lever(Load("force", "A", "lever", None, directions.DOWN, name="P"),
                   Load("force", "D", "lever", None, SLOPE, name="P", multiple=F(2))))

    assert w.answers[0].components[0].value == 200 / (2 + 4 / sqrt(F(5)))
    assert w.proof.passed


def test_an_unknown_load_holds_what_would_else_move():
    w = work(lever(Load("force", "A", "lever", None, directions.DOWN, name="P")))

    assert w.soundness.determinate
