"""Sums of square roots against mpmath at two hundred digits and sympy's own radicals."""

from __future__ import annotations

from fractions import Fraction

import mpmath
import pytest
import sympy
from hypothesis import given
from hypothesis import strategies as st

from unpin.exact.number import rung, sign, sqrt
from unpin.exact.surd import Surd, prime_factors, root_of_fraction, split_square

small = st.fractions(min_value=-20, max_value=20, max_denominator=12)


@st.composite
def surds(draw, most: int = 3):
    """A number of the first two rungs: a rational plus up to `most` roots."""
    total = draw(small)
    for _ in range(draw(st.integers(0, most))):
        total = total + draw(small) * sqrt(Fraction(draw(st.integers(2, 60))))
    return total


def exact(x) -> mpmath.mpf:
    """The number by mpmath, which knows nothing of our classes."""
    terms = x.terms if isinstance(x, Surd) else {1: x}
    return mpmath.fsum(mpmath.mpf(q.numerator) / q.denominator * mpmath.sqrt(d) for d, q in terms.items())


def same(a: mpmath.mpf, b: mpmath.mpf) -> bool:
    return abs(a - b) < mpmath.mpf(10) ** -150 * (1 + abs(a) + abs(b))


@given(surds(), surds())
def test_sums_products_and_differences_are_those_of_the_real_numbers(x, y):
    with mpmath.workdps(200):
        assert same(exact(x + y), exact(x) + exact(y))
        assert same(exact(x - y), exact(x) - exact(y))
        assert same(exact(x * y), exact(x) * exact(y))


@given(surds(), surds(), surds())
def test_surds_form_a_field(x, y, z):
    assert x + y == y + x and x * y == y * x
    assert (x + y) + z == x + (y + z) and (x * y) * z == x * (y * z)
    assert x * (y + z) == x * y + x * z
    assert x - x == 0 and rung(x - x) == 1


@given(surds())
def test_a_number_times_its_inverse_is_one(x):
    if x == 0:
        with pytest.raises(ZeroDivisionError):
            1 / x
        return
    assert x * (1 / x) == 1
    assert 1 / (1 / x) == x


@given(surds(2), surds(2))
def test_equality_and_hash_agree_with_a_vanishing_difference(x, y):
    with mpmath.workdps(200):
        vanishes = abs(exact(x) - exact(y)) < mpmath.mpf(10) ** -100
    assert (x == y) == vanishes == (x - y == 0)
    if x == y:
        assert hash(x) == hash(y)


@given(surds(), surds())
def test_order_and_sign_are_those_of_the_real_numbers(x, y):
    with mpmath.workdps(200):
        there = mpmath.sign(exact(x) - exact(y)) if x != y else 0
    assert sign(x - y) == there
    assert (x < y, x > y, x <= y, x >= y) == (there < 0, there > 0, there <= 0, there >= 0)


def test_the_sign_of_two_roots_that_nearly_cancel_is_not_lost_in_rounding():
    # Convergents of √2: the difference is below the last digit of a double.
    p, q = 1, 1
    for _ in range(40):
        p, q = p + 2 * q, p + q
    near = sqrt(Fraction(2)) - Fraction(p, q)
    expected = 1 if 2 * q * q > p * p else -1
    assert sign(near) == expected
    assert (near > 0) == (expected > 0) and (float(near) > 0) == (expected > 0)


@given(st.integers(1, 10**7))
def test_a_square_is_split_off_whole(n):
    square, rest = split_square(n)
    assert square * square * rest == n
    assert all(e == 1 for e in sympy.factorint(rest).values())
    assert sorted(prime_factors(rest)) == sorted(sympy.factorint(rest))


@given(st.fractions(min_value=0, max_value=500, max_denominator=40))
def test_the_root_of_a_fraction_squares_back_and_is_in_sympys_form(x):
    root = root_of_fraction(x)
    assert root * root == x
    expected = sympy.sqrt(sympy.Rational(x.numerator, x.denominator))
    mine = sympy.Add(*(sympy.Rational(q.numerator, q.denominator) * sympy.sqrt(d) for d, q in
                       (root.terms if isinstance(root, Surd) else {1: root}).items()))
    assert sympy.simplify(mine - expected) == 0


@given(small, small, st.sampled_from([2, 3, 5, 6, 7, 10]), st.sampled_from([3, 5, 7, 11]))
def test_a_root_of_a_root_opens_when_it_can(a, b, d, e):
    x = a * sqrt(Fraction(d)) + b * (sqrt(Fraction(e)) if e != d else 1)
    root = sqrt(x * x)
    assert rung(root) <= 2
    assert root == abs(x)


def test_a_root_that_does_not_open_has_fifty_good_digits():
    root = sqrt(1 + sqrt(Fraction(2)))
    assert rung(root) == 4
    with mpmath.workdps(80):
        assert abs(mpmath.mpf(str(root.value)) - mpmath.sqrt(1 + mpmath.sqrt(2))) < mpmath.mpf(10) ** -55


def test_no_real_root_of_a_negative_number():
    with pytest.raises(ValueError):
        sqrt(1 - sqrt(Fraction(2)))


def test_a_root_too_long_for_a_machine_number_still_has_its_size():
    long = Surd({1: Fraction(1), 10**400 + 3: Fraction(1, 10**200)})

    assert float(long) == pytest.approx(2.0)
