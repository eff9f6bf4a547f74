"""Half a letter angle: sines and cosines of both, printed as a textbook would, and the same number whatever the angle."""

import math
from fractions import Fraction as F

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lettered_problems import value
from unpin.base.units import ANGLE, FORCE, LENGTH
from unpin.exact.circular import letter_angle
from unpin.exact.holds import condition
from unpin.exact.letters import Letters
from unpin.exact.number import NoWholeMultiple, approx, cos_deg, sin_deg, tan_deg
from unpin.exact.shape import shape
from unpin.lesson.build import build
from unpin.read import read_text
from unpin.render.terminal import write
from unpin.route.work import work
from unpin.words.lettered import degrees, text

L = Letters.of(4)
P, a = L.letter("P", F(1000), FORCE), L.letter("a", F(1), LENGTH)
alpha, theta = L.angle("alpha", F(50), ANGLE, 2), L.angle("theta", F(35), ANGLE)


def printed(x):
    return text(shape(x, FORCE)[1], str)


@pytest.mark.parametrize(("x", "expected"), [
    (P / (2 * sin_deg(alpha / 2)), "P/(2 sin (α/2))"),
    (P * tan_deg(alpha / 2) / 2, "P tan (α/2)/2"),
    (2 * P * sin_deg(alpha / 2) * cos_deg(alpha / 2), "P sin α"),
    (P * (cos_deg(alpha / 2) ** 2 - sin_deg(alpha / 2) ** 2), "P cos α"),
    (P * sin_deg(alpha) / cos_deg(alpha), "P tan α"),
    (P * cos_deg(3 * alpha / 2 - alpha), "P cos (α/2)"),
    (P * cos_deg(theta + alpha / 2), "P cos (α/2 + θ)"),
])
def test_halves_and_wholes_are_printed_as_a_textbook_prints_them(x, expected):
    assert printed(x) == expected


@given(st.lists(st.tuples(st.integers(-3, 3), st.sampled_from([alpha / 2, alpha, 3 * alpha / 2, theta]), st.sampled_from([sin_deg, cos_deg])), min_size=1, max_size=3))
@settings(max_examples=60, deadline=None)
def test_what_is_printed_has_the_size_of_the_number(terms):
    x = sum((k * P * f(angle) for k, angle, f in terms), F(0))
    if x == 0:
        return
    way, e, _ = shape(x, FORCE)
    true = sum(k * 1000 * {sin_deg: math.sin, cos_deg: math.cos}[f](math.radians(approx(angle))) for k, angle, f in terms)

    assert way * value(e, {"P": 1000.0, "alpha": 50.0, "theta": 35.0}) == pytest.approx(true)
    assert approx(x) == pytest.approx(true)


def test_an_angle_keeps_its_name_in_degrees():
    assert text(degrees(alpha)[1], str) == "α"
    assert text(degrees(90 - alpha / 2)[1], str) == "90° − α/2"
    assert letter_angle((cos_deg(alpha / 2), sin_deg(alpha / 2))) == alpha / 2
    assert letter_angle((cos_deg(alpha), sin_deg(alpha))) == alpha
    assert letter_angle((sin_deg(alpha), cos_deg(alpha))) == 90 - alpha


def test_signs_that_hold_below_a_right_angle_need_no_condition():
    assert condition(P * cos_deg(alpha)) is None
    assert condition(P * (cos_deg(alpha / 2) - sin_deg(alpha / 2))) is None
    assert condition(P * (2 * cos_deg(alpha / 2) - 1)) is None
    assert condition(P * (1 - 2 * sin_deg(alpha))) is not None


def test_a_quarter_is_refused():
    with pytest.raises(NoWholeMultiple):
        cos_deg(alpha / 4)


def test_a_problem_with_half_an_angle_gets_its_answer_in_letters():
    # By hand: at the lifted ring 2 F cos(α/2) = W.
    reading = read_text("letters: {W: a force, alpha: an angle drawn 70 deg, a: a length}\n"
                        "points: {O: [0, 0], L: a from O at alpha/2 left of down, R: a from O at alpha / 2 right of down}\n"
                        "links: [O-L, O-R, L-R]\nsupports: {O: pin}\nloads: [\"W/2 down at L, R\"]\nfind: [O-L, L-R]")
    worked = work(reading.problem)
    said = write(build(worked))

    assert worked.proof.passed
    assert "F_OL = W/(2 cos (α/2))  tension" in said
    assert "F_LR = −W tan (α/2)/2" in said


def test_the_name_of_any_length_is_looked_for_in_no_time():
    assert read_text("title: " + "a" * 19000).diagnostics
