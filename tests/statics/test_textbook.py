"""Closed forms and worked numbers that any class knows, with where each comes from."""

from __future__ import annotations

from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from build import DOWN, LEFT, RIGHT, UP, angle, couple, force, frame, link, pin, slope, spread, support, weight, weld
from unpin.exact.number import cos_deg, sin_deg, sqrt
from unpin.model.problem import Asked
from unpin.route.work import work
from unpin.statics import assemble, solve

positive = st.fractions(min_value=F(1, 2), max_value=20, max_denominator=4)


def values(problem):
    found = solve(assemble(problem))
    assert found is not None
    return found


@given(positive, positive, st.fractions(min_value=0, max_value=1, max_denominator=8))
def test_a_point_load_on_a_simple_beam_is_shared_by_the_levers(span, load, share):
    # Law of the lever: R_A = P b / L, R_B = P a / L (any book).
    points = {"A": (0, 0), "C": (span * share, 0), "B": (span, 0)} if 0 < share < 1 else {"A": (0, 0), "C": (span / 2, 0), "B": (span, 0)}
    a = points["C"][0]
    v = values(frame(points, {"beam": "A C B"}, support("pin", "A", "beam"), support("roller", "B", "beam", UP), force(load, "C", "beam")))

    assert (v["A_x"], v["A_y"], v["B_y"]) == (0, load * (span - a) / span, load * a / span)


@given(positive, positive)
def test_a_triangular_load_is_half_the_base_times_the_height_at_a_third(span, peak):
    # Resultant q L / 2 at L / 3 from the tall end (any handbook of areas), so R = q L / 6 and q L / 3.
    v = values(frame({"A": (0, 0), "B": (span, 0)}, {"beam": "A B"}, support("pin", "A", "beam"), support("roller", "B", "beam", UP),
                     spread("beam", "A", "B", 0, peak)))

    assert (v["A_y"], v["B_y"]) == (peak * span / 6, peak * span / 3)


@given(positive, positive, positive)
def test_a_cantilever_carries_a_trapezoidal_load(span, first, last):
    # w1 L + (w2 - w1) L / 2, and moments about the wall w1 L²/2 + (w2 - w1) L²/3 (areas).
    v = values(frame({"A": (0, 0), "B": (span, 0)}, {"beam": "A B"}, support("fixed", "A", "beam"), spread("beam", "A", "B", first, last)))

    assert v["A_x"] == 0 and v["A_y"] == (first + last) * span / 2
    assert v["M_A"] == first * span**2 / 2 + (last - first) * span**2 / 3


@given(positive, positive)
def test_a_spread_load_that_changes_sign_has_both_its_triangles(span, w):
    # w at one end and -w at the other: no resultant, a couple w L² / 6 (areas).
    v = values(frame({"A": (0, 0), "B": (span, 0)}, {"beam": "A B"}, support("fixed", "A", "beam"), spread("beam", "A", "B", w, -w)))

    assert (v["A_y"], v["M_A"]) == (0, -w * span**2 / 6)


@given(positive, positive, positive)
def test_the_thrust_of_a_three_hinged_arch_is_w_l_squared_over_8_f(span, rise, w):
    # H = w L² / 8 f, V = w L / 2 for a load w per horizontal length (common practice, no source).
    v = values(frame({"A": (0, 0), "C": (span / 2, rise), "B": (span, 0)}, {"left": "A C", "right": "C B"}, pin("C", "left", "right"),
                     support("pin", "A", "left"), support("pin", "B", "right"), spread("left", "A", "C", w, per="x"),
                     spread("right", "C", "B", w, per="x")))

    assert (v["A_x"], v["B_x"]) == (w * span**2 / 8 / rise, -w * span**2 / 8 / rise)
    assert (v["A_y"], v["B_y"], v["C_y"]) == (w * span / 2, w * span / 2, 0)


@given(positive, positive, st.fractions(min_value=0, max_value=1, max_denominator=6), st.fractions(min_value=0, max_value=1, max_denominator=6))
def test_a_couple_acts_alike_wherever_it_is_laid_on(span, m, here, there):
    # A couple is a free vector: R = M / L.
    for share in (here, there):
        at = {"A": (0, 0), "C": (span * (1 + share) / 3, 0), "B": (span, 0)}
        v = values(frame(at, {"beam": "A C B"}, support("pin", "A", "beam"), support("roller", "B", "beam", UP), couple(m, "beam", "C")))
        assert (v["A_y"], v["B_y"]) == (m / span, -m / span)


@pytest.mark.parametrize("degrees", [20, 30, 45, 60, 73])
def test_two_bars_hold_a_load_by_the_closed_triangle_of_forces(degrees):
    # Symmetric bracket: each bar carries P / (2 sin α) (triangle of forces).
    d = F(degrees)
    high = sin_deg(d) / cos_deg(d)
    v = values(frame({"A": (-1, high), "B": (1, high), "C": (0, 0)}, {}, link("C", "A"), link("C", "B"), force(100, "C")))

    assert v["F_CA"] == v["F_CB"]
    assert v["F_CA"] * 2 * sin_deg(d) == 100


def test_a_beam_with_a_sloped_roller_a_couple_a_triangle_and_a_mass():
    # Computed values (fixture R1): N = 12.6383, A_x = 0.3192, A_y = 7.4092 kN.
    v = values(frame({"A": (0, 0), "P": (2, 0), "M": (3, 0), "B": (6, 0)}, {"beam": "A P M B"}, support("pin", "A", "beam"),
                     support("roller", "B", "beam", angle(30, UP, LEFT)), force(12, "P", "beam", angle(60, RIGHT, DOWN)),
                     couple(-9, "beam", "M"), spread("beam", "M", "B", 0, 4), weight("1.962", "M", "beam")))

    assert v["R_B"] == (12 * sqrt(F(3)) + 9 + 30 + F("5.886")) / (3 * sqrt(F(3)))
    assert [round(float(v[k]), 4) for k in ("R_B", "A_x", "A_y")] == [12.6383, 0.3192, 7.4092]


def test_a_bracket_on_a_bent_link_is_held_along_the_chord():
    # Computed values (fixture R2): F = 10 kN compression, A_x = -8, A_y = -3 kN.
    w = work(frame({"A": (0, 0), "B": (2, 0), "C": (4, 0), "D": (0, "-1.5"), "K": ("0.5", "-0.5")}, {"arm": "A B C", "strut": "D K B"},
                   pin("B", "arm", "strut"), support("pin", "A", "arm"), support("pin", "D", "strut"), force(3, "C", "arm"),
                   asked=(Asked("link", subject="strut"), Asked("reaction", point="A"))))

    strut, reaction = w.answers
    assert [(c.value, c.sense) for c in strut.components] == [(-10, "compression")]
    assert [(c.value, c.sense) for c in reaction.components[:2]] == [(-8, "left"), (-3, "down")]
    assert reaction.components[2].value == sqrt(F(73))
    assert w.structure.two_force[0].bent and w.proof.passed


def test_a_cantilever_with_a_load_at_its_end():
    # Computed values (fixture R5): M_A = 10 kN·m.
    v = values(frame({"A": (0, 0), "B": (2, 0)}, {"beam": "A B"}, support("fixed", "A", "beam"), force(5, "B", "beam")))

    assert (v["A_x"], v["A_y"], v["M_A"]) == (0, 5, 10)


def test_two_bars_at_45_degrees_under_a_load_at_the_apex():
    # Computed values (fixture R6): 10 kN on two 45° bars, F = -7.071 kN.
    v = values(frame({"A": (0, 0), "B": (2, 0), "C": (1, 1)}, {}, link("A", "C", "ground", ""), link("C", "B"), force(10, "C")))

    assert v["F_AC"] == v["F_CB"] == -5 * sqrt(F(2))


def test_the_awning_of_the_first_page():
    # By hand: moments about C on the arm, then the whole (our own example).
    w = work(frame({"O": (0, 0), "A": (0, 3), "C": (0, "2.4"), "B": (0, "1.2"), "D": ("1.6", "2.4"), "E": ("2.4", "2.4")},
                   {"post": "A C B O", "arm": "C D E"}, pin("C", "post", "arm"), link("B", "D", "post", "arm"), support("pin", "A", "post"),
                   support("roller", "O", "post", RIGHT), force(300, "E", "arm", slope(3, -4)),
                   asked=(Asked("reaction", point="O"), Asked("link", subject="BD"), Asked("pin", point="C", part="arm"))))

    assert [[(abs(c.value), c.sense) for c in a.components[:2]] for a in w.answers] == [
        [(156, "right")], [(600, "compression")], [(660, "left"), (120, "down")]]
    assert w.fewest.count == w.fewest.lower == 4


def test_a_joint_and_a_support_at_one_point_have_names_that_say_on_whom_they_act():
    """The support keeps the short names, the weld's say the member."""
    problem = frame({"A": (0, 0), "C": (2, 0), "D": (2, 1)}, {"sill": "A C", "post": "C D"}, weld("C", "sill", "post"),
                    support("pin", "C", "sill"), support("roller", "A", "sill", UP), force(50, "D", "post", RIGHT))

    assert [(u.symbol.base, u.symbol.sub, u.symbol.on) for u in assemble(problem).unknowns if u.symbol.sub != "y" or u.symbol.base == "C"][:5] == [
        ("C", "x", "sill"), ("C", "y", "sill"), ("M", "C", "sill"), ("C", "x", ""), ("C", "y", "")]
