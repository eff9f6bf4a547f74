"""Cords over discs: tangent strands, one tension, and the three confirmations."""

import math
from fractions import Fraction as F

from unpin.base.units import FORCE
from unpin.exact.number import approx
from unpin.model import directions
from unpin.model.problem import GROUND, Asked, Connection, Cord, Load, Part, Point, Problem, Stop
from unpin.model.values import Quantity
from unpin.route.work import work
from unpin.statics.cords import strands


def point(name, x, y):
    return Point(name, (F(x), F(y)))


def crane(side="over"):
    """An arm pinned at A and propped at B, a pulley of radius 0.2 on its end C, a cord from a wall over it to a sack of 500 N."""
    up = F(1, 5) if side == "over" else F(-1, 5)
    points = (point("A", 0, 0), point("C", 3, 0), point("B", 2, 0), point("G", 2, -2), point("W", 0, up), point("K", F(16, 5), -1))
    parts = (Part("arm", ("A", "B", "C")), Part("pulley", ("C",), "disc", radii=(F(1, 5),)), Part("sack", ("K",), "block"))
    held = (Connection("C", "pin", ("C",), ("arm", "pulley")), Connection("A", "pin", ("A",), ("arm", GROUND)),
            Connection("BG", "link", ("B", "G"), ("arm", "")), Connection("G", "pin", ("G",), ("", GROUND)))
    cord = Cord("T", (Stop("W", GROUND), Stop("C", "pulley", side, F(1, 5)), Stop("K", "sack")))
    weight = Load("weight", "K", "sack", Quantity(F(500), FORCE), directions.DOWN)
    asked = (Asked("link", subject="T"), Asked("reaction", point="A"), Asked("link", subject="BG"))
    return Problem(points, parts, held, (weight,), asked, cords=(cord,))


def test_a_cord_over_a_pulley_has_one_tension_and_leaves_at_the_tangents():
    # By hand: T = 500; arm and pulley together: A_x = T; moments about A: 2 F = 500 * 3.2 - 500 * 0.2 with F upward at B.
    w = work(crane())

    tension, reaction, prop = w.answers
    assert [c.value for c in tension.components] == [500]
    assert [c.value for c in reaction.components[:2]] == [500, -250]
    assert [c.value for c in prop.components] == [-750]
    assert w.proof.passed
    assert not w.soundness.freedoms


def test_strands_touch_their_discs_squarely():
    # Tangent: square to the radius, at the radius from the centre (Euclid, book III).
    discs = (Part("one", ("P",), "disc", radii=(F(1),)), Part("two", ("Q",), "disc", radii=(F(2),)))
    points = (point("A", -5, -4), point("P", 0, 0), point("Q", 7, 1), point("B", 12, -6))
    for sides in (("over", "over"), ("over", "under"), ("under", "over"), ("under", "under")):
        cord = Cord("T", (Stop("A", GROUND), Stop("P", "one", sides[0], F(1)), Stop("Q", "two", sides[1], F(2)), Stop("B", GROUND)))
        for s in strands(Problem(points, discs, cords=(cord,)), cord):
            d = [approx(c) for c in s.direction]

            assert math.isclose(math.hypot(*d), 1)
            for stop, spot in ((s.first, s.start), (s.second, s.end)):
                if stop.side:
                    centre = next(p.at for p in points if p.name == stop.point)
                    r = [approx(a - b) for a, b in zip(spot, centre)]
                    assert math.isclose(math.hypot(*r), approx(stop.radius))
                    assert math.isclose(r[0] * d[0] + r[1] * d[1], 0, abs_tol=1e-12)
                    assert r[1] > 0 if stop.side == "over" else r[1] < 0


def test_a_tackle_of_two_strands_halves_the_pull():
    # A movable pulley: 2 T = 600 (any book on pulleys).
    points = (point("W", 0, 5), point("M", 1, 0), point("E", 2, 5))
    parts = (Part("pulley", ("M",), "disc", radii=(F(1),)),)
    cord = Cord("T", (Stop("W", GROUND), Stop("M", "pulley", "under", F(1)), Stop("E", GROUND)))
    load = Load("force", "M", "pulley", Quantity(F(600), FORCE), directions.DOWN)
    w = work(Problem(points, parts, (), (load,), (Asked("link", subject="T"),), cords=(cord,)))

    assert [c.value for c in w.answers[0].components] == [300]
    assert w.proof.passed
