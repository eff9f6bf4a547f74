"""The map into the prime field keeps sums and products, so that a zero test there is a zero test of the number."""

from __future__ import annotations

from fractions import Fraction

import pytest
import sympy
from hypothesis import given
from hypothesis import strategies as st

from unpin.exact.number import cos_deg, rung, sin_deg, sqrt, to_digits
from unpin.exact.residue import ResidueError, Residues, _is_prime, roots_in

small = st.fractions(min_value=-9, max_value=9, max_denominator=8)
FIELD = Residues(frozenset({7, 11, 13}))


@st.composite
def numbers(draw):
    """Rationals, roots of products of 2, 3, 5, 7, 11, 13, and sines of angles to a thousandth of a degree."""
    kind = draw(st.integers(0, 3))
    if kind == 0:
        return draw(small)
    if kind == 1:
        return draw(small) + draw(small) * sqrt(Fraction(draw(st.sampled_from([2, 3, 5, 6, 7, 10, 11, 13, 14, 15, 21, 30, 77, 91]))))
    angle = draw(st.one_of(st.integers(0, 359).map(Fraction), st.integers(1, 359999).map(lambda k: Fraction(k, 1000))))
    return draw(small) * (cos_deg(angle) if kind == 2 else sin_deg(angle))


@given(numbers(), numbers())
def test_sums_products_and_quotients_map_to_sums_products_and_quotients(x, y):
    f, p = FIELD.of, FIELD.p
    if any(rung(z) > 3 for z in (x + y, x * y)):
        return
    assert f(x + y) == (f(x) + f(y)) % p
    assert f(x * y) == f(x) * f(y) % p
    assert f(-x) == -f(x) % p
    if y != 0 and rung(x / y) < 4:
        assert f(x / y) * f(y) % p == f(x)


@given(numbers(), numbers())
def test_only_zero_maps_to_zero(x, y):
    if rung(x - y) < 4:
        assert (FIELD.of(x - y) == 0) == (x == y)


@given(st.integers(1, 359999), st.integers(1, 359999))
def test_identities_between_angles_hold_in_the_field(a, b):
    a, b = Fraction(a, 1000), Fraction(b, 1000)
    p, c, s = FIELD.p, FIELD.cosine, FIELD.sine
    assert c(a + b) == (c(a) * c(b) - s(a) * s(b)) % p
    assert (c(a) ** 2 + s(a) ** 2) % p == 1
    assert s(180 - a) == s(a) and c(-a) == c(a)


@pytest.mark.parametrize("root", [2, 3, 5, 7, 11, 13])
def test_a_root_squares_back(root):
    assert FIELD.root(root) ** 2 % FIELD.p == root


def test_roots_and_the_angles_that_give_them_agree():
    p, of = FIELD.p, FIELD.of
    for angle in range(0, 360, 15):
        assert of(cos_deg(Fraction(angle))) == FIELD.cosine(Fraction(angle))
    # The golden ratio: 4 cos 36° = 1 + √5, which is no multiple of 15°.
    assert (4 * FIELD.cosine(Fraction(36)) - 1) % p == of(sqrt(Fraction(5)))
    assert of(cos_deg(Fraction(36)) * 4) == of(1 + sqrt(Fraction(5)))


def test_the_field_is_a_field_of_the_promised_size():
    assert sympy.isprime(FIELD.p) and FIELD.p % 360000 == 1
    assert 2**60 < FIELD.p < 2**61
    assert pow(FIELD.unit, 360000, FIELD.p) == 1
    assert all(pow(FIELD.unit, 360000 // q, FIELD.p) != 1 for q in (2, 3, 5))


@given(st.integers(2, 10**12))
def test_primes_are_told_from_products(n):
    assert _is_prime(n) == sympy.isprime(n)


def test_the_roots_a_problem_needs_are_collected():
    numbers = [Fraction(3), sqrt(Fraction(14)), cos_deg(Fraction(20)) * sqrt(Fraction(11)), cos_deg(Fraction(10))]
    assert roots_in(numbers) == {2, 7, 11}


def test_fifty_digits_have_no_residue():
    with pytest.raises(ResidueError):
        FIELD.of(to_digits(sqrt(Fraction(2))))
