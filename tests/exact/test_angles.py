"""Sines and cosines of given angles, and the fifty digits below them, against mpmath."""

from __future__ import annotations

from fractions import Fraction

import mpmath
import pytest
from hypothesis import given
from hypothesis import strategies as st

from unpin.exact.digits import Digits
from unpin.exact.number import cos_deg, length, rung, sign, sin_deg, sqrt, tan_deg, to_digits

angles = st.one_of(st.integers(-720, 720).map(Fraction), st.fractions(-180, 180, max_denominator=10))
rationals = st.fractions(min_value=-9, max_value=9, max_denominator=6)


def real(x) -> mpmath.mpf:
    return mpmath.mpf(str(to_digits(x).value))


def close(x, y: mpmath.mpf, scale=1) -> bool:
    return abs(real(x) - y) <= mpmath.mpf(10) ** -45 * (scale + abs(y))


@given(angles)
def test_sine_cosine_and_tangent_are_true_to_forty_digits(angle):
    with mpmath.workdps(80):
        there = mpmath.mpf(angle.numerator) / angle.denominator * mpmath.pi / 180
        assert close(cos_deg(angle), mpmath.cos(there))
        assert close(sin_deg(angle), mpmath.sin(there))
        if cos_deg(angle) != 0:
            assert close(tan_deg(angle), mpmath.tan(there), 1 + abs(mpmath.tan(there)))
        else:
            with pytest.raises(ZeroDivisionError):
                tan_deg(angle)


@given(angles)
def test_the_squares_of_sine_and_cosine_add_up_to_exactly_one(angle):
    total = sin_deg(angle) ** 2 + cos_deg(angle) ** 2
    assert total == 1 and rung(total) == 1
    assert length((cos_deg(angle), sin_deg(angle))) == 1


def test_multiples_of_fifteen_degrees_are_roots():
    assert all(rung(cos_deg(Fraction(15 * k))) <= 2 for k in range(24))
    assert cos_deg(Fraction(75)) * 4 == sqrt(Fraction(6)) - sqrt(Fraction(2))


@given(st.integers(1, 89).map(Fraction), st.integers(1, 89).map(Fraction))
def test_identities_between_angles_that_the_form_does_not_show_are_found(a, b):
    assert sin_deg(a + b) == sin_deg(a) * cos_deg(b) + cos_deg(a) * sin_deg(b)
    assert sin_deg(2 * a) - 2 * sin_deg(a) * cos_deg(a) == 0
    assert not sin_deg(a) * cos_deg(b) - cos_deg(a) * sin_deg(b) + sin_deg(b - a)


@st.composite
def mixed(draw):
    """A number made from rationals, roots, and sines by the four operations, and its value by mpmath."""
    kind = draw(st.integers(0, 2))
    q = draw(rationals)
    if kind == 0:
        return q, mpmath.mpf(q.numerator) / q.denominator
    if kind == 1:
        n = draw(st.integers(2, 12))
        return q * sqrt(Fraction(n)), mpmath.mpf(q.numerator) / q.denominator * mpmath.sqrt(n)
    angle = draw(st.integers(1, 359))
    return cos_deg(Fraction(angle)) * q, mpmath.cos(mpmath.mpf(angle) * mpmath.pi / 180) * q.numerator / q.denominator


@given(st.data())
def test_a_chain_of_operations_over_all_rungs_keeps_the_true_value(data):
    with mpmath.workdps(80):
        x, there = data.draw(mixed())
        for _ in range(data.draw(st.integers(1, 5))):
            y, other = data.draw(mixed())
            operation = data.draw(st.sampled_from("+-*/"))
            if operation == "/" and y == 0:
                continue
            x = {"+": lambda a, b: a + b, "-": lambda a, b: a - b, "*": lambda a, b: a * b, "/": lambda a, b: a / b}[operation](x, y)
            there = {"+": lambda a, b: a + b, "-": lambda a, b: a - b, "*": lambda a, b: a * b, "/": lambda a, b: a / b}[operation](
                there, other)
        assert close(x, there, abs(there) + 10**6)
        assert sign(x) == (0 if abs(there) < mpmath.mpf(10) ** -40 else mpmath.sign(there))


@given(st.data())
def test_operations_mean_the_same_from_either_side(data):
    with mpmath.workdps(80):
        (x, _), (y, _) = data.draw(mixed()), data.draw(mixed())
    y = to_digits(y) if data.draw(st.booleans()) else y
    assert x + y == y + x and x - y == -(y - x) and x * y == y * x
    if x != 0 and y != 0:
        assert (x / y) * (y / x) == 1
    assert (x == y) == (y == x)


def test_what_should_vanish_in_digits_vanishes_and_stays_zero():
    root = to_digits(sqrt(Fraction(7)))
    nothing = root * root - 7
    assert nothing == 0
    assert nothing * 10**6 == 0
    assert nothing * nothing == 0 and nothing**2 == 0
    assert nothing.sqrt() == 0 and length((nothing, Fraction(0))) == 0
    with pytest.raises(ZeroDivisionError):
        1 / nothing


def test_a_small_number_in_digits_is_not_taken_for_zero():
    assert Digits.of(Fraction(1, 10**30)) != 0
    assert to_digits(sqrt(Fraction(2))) + Fraction(1, 10**30) != to_digits(sqrt(Fraction(2)))


def test_the_size_of_a_number_in_digits_keeps_all_of_them():
    root = -to_digits(sqrt(Fraction(2)))
    assert abs(root) == -root and abs(root) * abs(root) == 2
