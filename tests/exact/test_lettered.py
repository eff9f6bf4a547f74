"""Numbers with letters: arithmetic, equality for all values, residues, the printed form, and the conditions of a sign."""

import math
from fractions import Fraction as F

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lettered_problems import value
from unpin.base.units import ANGLE, FORCE, LENGTH, NUMBER, SPREAD
from unpin.exact.expression import grammar, parse
from unpin.exact.holds import condition, condition_of
from unpin.exact.lettered import Lettered
from unpin.exact.letters import Letters
from unpin.exact.number import NoWholeMultiple, approx, cos_deg, sin_deg, sqrt, tan_deg
from unpin.exact.residue import Residues, letters_in, roots_in
from unpin.exact.shape import shape
from unpin.words.lettered import text

L = Letters.of(8)
P, W = L.letter("P", F(1000), FORCE), L.letter("W", F(700), FORCE)
w = L.letter("w", F(1000), SPREAD)
l, a, h = L.letter("l", F(2), LENGTH), L.letter("a", F(1), LENGTH), L.letter("h", F(3, 2), LENGTH)  # noqa: E741
theta, alpha = L.angle("theta", F(35), ANGLE), L.angle("alpha", F(25), ANGLE)
DRAWN = {"P": 1000.0, "W": 700.0, "w": 1000.0, "l": 2.0, "a": 1.0, "h": 1.5, "theta": 35.0, "alpha": 25.0}


@pytest.mark.parametrize("x, dimension, printed", [
    (3 * P * a / h, FORCE, "3 P a/h"),
    (P * sqrt(a * a + h * h) / h, FORCE, "P √(a² + h²)/h"),
    (P * a / sqrt(a * a + h * h), FORCE, "P a/√(a² + h²)"),
    (P / (2 * tan_deg(alpha)), FORCE, "P/(2 tan α)"),
    (F(3, 2) * cos_deg(alpha) / sin_deg(alpha), NUMBER, "3/(2 tan α)"),
    (P * sin_deg(theta) / cos_deg(theta), FORCE, "P tan θ"),
    (w * (l * l - a * a) / (2 * l), FORCE, "w (l² − a²)/(2 l)"),
    (P * cos_deg(theta) + W * sin_deg(theta), FORCE, "P cos θ + W sin θ"),
    (P * sin_deg(theta + alpha) / cos_deg(theta), FORCE, "P sin (θ + α)/cos θ"),
    (P * cos_deg(theta - alpha), FORCE, "P cos (θ − α)"),
    (P * a * cos_deg(theta) / (a * cos_deg(theta) + h * sin_deg(theta)), FORCE, "P a cos θ/(a cos θ + h sin θ)"),
    (P * cos_deg(theta) / (1 - sin_deg(theta)), FORCE, "P (1 + sin θ)/cos θ"),
    (P * (a * cos_deg(theta) ** 2 + h * sin_deg(theta) ** 2) / l, FORCE, "P (a (cos θ)² + h (sin θ)²)/l"),
    (P / sqrt(F(2)), FORCE, "P/√2"),
    (P * sqrt(F(3)) / 2, FORCE, "P √3/2"),
    (P * (a + sqrt(a * a + h * h)) / h, FORCE, "P (a + √(a² + h²))/h"),
    (P * (2 * a - h) / h, FORCE, "P (2 a − h)/h"),
    (sqrt(P * P + W * W + 2 * P * W * cos_deg(theta)), FORCE, "√(P² + 2 P W cos θ + W²)"),
    (P * sqrt(2 + 2 * sin_deg(theta)), FORCE, "P √2 √(1 + sin θ)"),
])
def test_a_value_is_printed_as_a_textbook_prints_it(x, dimension, printed):
    way, expression, measured = shape(x, dimension)

    assert text(expression, str) == printed
    assert way == 1 and not measured
    assert math.isclose(value(expression, DRAWN), approx(x), rel_tol=1e-12)


@pytest.mark.parametrize("zero", [
    cos_deg(theta) ** 2 + sin_deg(theta) ** 2 - 1,
    sin_deg(theta + alpha) - sin_deg(theta) * cos_deg(alpha) - cos_deg(theta) * sin_deg(alpha),
    sin_deg(90 - theta) - cos_deg(theta),
    cos_deg(2 * theta) - 1 + 2 * sin_deg(theta) ** 2,
    cos_deg(theta + 30) - cos_deg(theta) * sqrt(F(3)) / 2 + sin_deg(theta) / 2,
    sqrt(a * a + h * h) ** 2 - a * a - h * h,
    sqrt(4 * a * a) - 2 * a,
    sqrt(a * a * h + a * h * h) - sqrt(a) * sqrt(h) * sqrt(a + h),
    1 / (sqrt(a) + sqrt(h)) - (sqrt(a) - sqrt(h)) / (a - h),
    sqrt(1 + sqrt(a / h)) ** 2 - 1 - sqrt(a / h),
    sqrt(a + sqrt(h)) * sqrt(a + sqrt(h)) - a - sqrt(h),
    P * cos_deg(F(40)) - 2 * P * cos_deg(F(20)) ** 2 + P,
    P * tan_deg(F(35)) * cos_deg(F(35)) - P * sin_deg(F(35)),
])
def test_what_is_equal_for_all_values_is_equal(zero):
    assert zero == 0


@pytest.mark.parametrize("x", [a - l / 2, P - 1000, sin_deg(theta) - sin_deg(F(35)), l - 2, sqrt(a * a + h * h) - sqrt(F(13)) / 2])
def test_what_is_equal_only_as_drawn_is_not_equal(x):
    assert abs(approx(x)) < 1e-9
    assert x != 0


def test_half_a_letter_angle_is_refused():
    with pytest.raises(NoWholeMultiple):
        cos_deg(theta / 2)


_ATOMS = st.sampled_from([P, W, a, h, l, cos_deg(theta), sin_deg(theta), sin_deg(alpha), sqrt(a * a + h * h), sqrt(a * l), F(2), F(-3, 2), sqrt(F(3))])


def _grow(inner):
    return st.tuples(st.sampled_from("+-*/"), inner, inner).map(_made).filter(lambda x: x is not None)


def _made(parts):
    way, x, y = parts
    if way == "/" and y == 0:
        return None
    made = {"+": lambda: x + y, "-": lambda: x - y, "*": lambda: x * y, "/": lambda: x / y}[way]()
    return made if not isinstance(made, Lettered) or len(made.sums) < 5 and all(len(n) + len(d) < 40 for n, d in made.sums.values()) else None


@settings(max_examples=120, deadline=None)
@given(st.recursive(_ATOMS, _grow, max_leaves=6))
def test_the_printed_form_has_the_value_of_the_number(x):
    if not isinstance(x, Lettered):
        return
    way, expression, _ = shape(x, NUMBER)

    assert math.isclose(way * value(expression, DRAWN), approx(x), rel_tol=1e-9, abs_tol=1e-9)
    assert math.isclose(value(parse(grammar(expression)), DRAWN), value(expression, DRAWN), rel_tol=1e-12)


@settings(max_examples=60, deadline=None)
@given(st.recursive(_ATOMS, _grow, max_leaves=5), st.recursive(_ATOMS, _grow, max_leaves=5))
def test_residues_keep_sums_and_products(x, y):
    numbers = [P, x, y]
    field = Residues(roots_in(numbers), letters_in(numbers))

    assert field.of(x * y) == field.of(x) * field.of(y) % field.p
    assert field.of(x + y) == (field.of(x) + field.of(y)) % field.p


@pytest.mark.parametrize("x, greater, less", [
    ((2 * a - h) * P / h, "2*a", "h"),
    (P * cos_deg(theta) - W * sin_deg(theta), "P*cos(theta)", "W*sin(theta)"),
    (P * a - W * h, "W*h", "P*a"),
    (cos_deg(theta + alpha), "cos(theta + alpha)", "0"),
])
def test_a_sign_that_the_figure_settles_has_a_condition(x, greater, less):
    found = condition(x)

    assert (grammar(found.greater), grammar(found.less)) == (greater, less)


@pytest.mark.parametrize("x", [P * a / h, P * (1 - sin_deg(theta)), P * (2 - cos_deg(theta)), -P * cos_deg(theta), sqrt(a * a + h * h), tan_deg(theta) + 1])
def test_a_sign_that_is_always_the_same_has_none(x):
    assert condition(x) is None


@pytest.mark.parametrize("x", [
    a * a - a * h + h * h,
    P * (l * l - l * a + a * a) / (l * h),
    a * a + h * h - a * h * cos_deg(theta),
    a ** 4 - a * a * h * h + h ** 4,
    l * l + a * a + h * h - l * a,
    sqrt(a * a + h * h) - a,
    a - 2 * sqrt(a * a + h * h),
    P * (sqrt(a * a - a * h + h * h)),
])
def test_what_has_its_sign_for_all_positive_letters_has_no_condition(x):
    assert condition(x) is None


@pytest.mark.parametrize("x", [
    a * a - 3 * a * h + h * h, a * a - a * h - h * h, l * l + a * a - 3 * a * l + h * h, sqrt(a * a + h * h) - 2 * a,
])
def test_what_may_have_another_sign_or_be_zero_keeps_its_condition(x):
    assert condition(x) is not None


@settings(deadline=None, max_examples=60)
@given(st.lists(st.integers(-4, 6), min_size=6, max_size=6), st.lists(st.floats(0.05, 20), min_size=3, max_size=3))
def test_a_sign_without_a_condition_is_the_same_at_every_size(c, sizes):
    quadratic = c[0] * a * a + c[1] * l * l + c[2] * h * h + c[3] * a * l + c[4] * a * h + c[5] * l * h
    if quadratic == 0 or condition(quadratic) is not None:
        return
    u, v, w_ = sizes
    at = c[0] * u * u + c[1] * v * v + c[2] * w_ * w_ + c[3] * u * v + c[4] * u * w_ + c[5] * v * w_

    assert at != 0 and (at > 0) == (approx(quadratic) > 0)


def test_the_root_of_a_square_is_taken_as_drawn_and_its_condition_is_kept():
    before = list(L.positive)
    size = sqrt((l - a) * (l - a))

    assert size == l - a
    assert [p for p in L.positive if p not in before] == [(l - a).sums[()][0]] or (l - a).sums[()][0] in before
    assert condition_of((l - a).sums[()][0], L) is not None
