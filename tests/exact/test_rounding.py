"""Printed digits against the standard library's decimal, and short exact forms against the number they stand for."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Context, Decimal
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from unpin.exact.number import cos_deg, sqrt, to_digits
from unpin.exact.rounding import digits, short_form

numbers = st.one_of(st.fractions(max_denominator=10**6), st.decimals(allow_nan=False, allow_infinity=False, places=4,
                                                                      min_value=-10**6, max_value=10**6).map(Fraction))


def printed(x, significant: int) -> Fraction:
    way, text, exponent = digits(x, significant)
    return way * Fraction(int(text), 10**significant) * Fraction(10) ** exponent


@given(numbers, st.integers(1, 8))
def test_a_fraction_is_rounded_once_and_a_tie_goes_away_from_zero(x, significant):
    way, text, exponent = digits(x, significant)
    assert len(text) == significant and way == (x > 0) - (x < 0)
    if x == 0:
        assert (text, exponent) == ("0" * significant, 1)
        return
    last = Fraction(10) ** (exponent - significant)
    off = abs(printed(x, significant) - x)
    assert off <= last / 2
    if off == last / 2:
        assert abs(printed(x, significant)) > abs(x)
    assert text[0] != "0"


@given(st.integers(-10**9, 10**9).filter(bool), st.integers(-6, 6), st.integers(1, 9))
def test_typed_decimals_are_rounded_as_the_decimal_module_does(n, shift, significant):
    x = Decimal(n).scaleb(shift)
    expected = Context(prec=significant, rounding=ROUND_HALF_UP).plus(x)
    assert printed(Fraction(x), significant) == Fraction(expected)


def test_ties_go_away_from_zero_and_a_hair_less_does_not():
    assert digits(Fraction("0.125"), 2)[1] == "13"
    assert digits(Fraction("0.135"), 2)[1] == "14"
    assert digits(Fraction("0.125") + Fraction(1, 10**90), 2)[1] == "13"
    assert digits(Fraction("0.135") - Fraction(1, 10**90), 2)[1] == "13"
    assert digits(Fraction(-5, 2), 1) == (-1, "3", 1)


@given(st.integers(2, 10**6), st.integers(1, 10))
def test_roots_are_rounded_to_the_nearest(n, significant):
    root = sqrt(Fraction(n))
    shown = printed(root, significant)
    last = Fraction(10) ** (digits(root, significant)[2] - significant)
    assert (shown - last / 2) ** 2 <= n <= (shown + last / 2) ** 2


def test_nines_carry_into_a_new_figure():
    assert digits(Fraction("9.996"), 3) == (1, "100", 2)
    assert digits(Fraction("0.09996"), 3) == (1, "100", 0)


@given(st.fractions(min_value=-30, max_value=30, max_denominator=9), st.fractions(min_value=-9, max_value=9, max_denominator=9),
       st.integers(2, 50))
def test_a_short_form_is_the_number_itself(a, b, d):
    x = a + b * sqrt(Fraction(d))
    form = short_form(x)
    if form is None:
        return
    assert sum(c * (sqrt(Fraction(r))) for c, r in form.top) / form.bottom == x
    assert all(isinstance(c, int) and isinstance(r, int) for c, r in form.top) and form.bottom > 0


def test_what_is_long_or_has_no_exact_form_is_not_forced_into_one():
    assert short_form(Fraction(123456789, 987654)) is None
    assert short_form(cos_deg(Fraction(20))) is None
    assert short_form(to_digits(Fraction(1, 2))) is None
    assert short_form(sqrt(Fraction(2)) + sqrt(Fraction(3)) + 1) is None
    assert short_form(Fraction(3)) is not None
