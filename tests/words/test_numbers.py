"""Printed numbers: figures, zeros, groups, signs, units."""

from decimal import ROUND_HALF_UP, Context, Decimal
from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from unpin.base.units import FORCE, LENGTH, MOMENT, SPREAD, UNITS
from unpin.exact.number import sin_deg, sqrt
from unpin.words import numbers
from unpin.words.numbers import MINUS, THIN, Style
from unpin.words.sentences import catalogue

THREE = Style()


@pytest.mark.parametrize("value, printed", [
    (F(2, 3), "0.667"), (F(12), "12.00"), (F(120), "120.0"), (F(600), "600"), (F(5), "5.00"), (F(12345), f"12{THIN}350"),
    (F(9999, 10000), "1.00"), (F(99996, 100000), "1.000"), (F(19996, 10000), "2.00"), (F(1, 8000), f"0.000{THIN}125{THIN}0"),
    (F(2345), "2350"), (F(2355), "2360"), (F(0), "0"),
])
def test_three_figures_and_four_after_a_leading_one(value, printed):
    assert numbers.rounded(value, THREE).text == printed
    assert numbers.rounded(-value, THREE).text == (MINUS + printed if value else printed)


def test_a_setting_turns_the_extra_figure_off_or_asks_for_more():
    assert numbers.rounded(F(12), Style(3, False)).text == "12.0"
    assert numbers.rounded(F(2, 3), Style(5)).text == f"0.666{THIN}67"


@given(st.fractions(min_value=F(-10**7), max_value=F(10**7), max_denominator=10**6).filter(lambda x: abs(x) > F(1, 10**4)), st.integers(2, 6))
def test_what_is_printed_is_the_decimal_library_s_rounding_half_up(value, figures):
    printed = numbers.rounded(value, Style(figures, leading_one=False))

    high = Context(prec=60).divide(Decimal(value.numerator), Decimal(value.denominator))
    expected = Context(prec=figures, rounding=ROUND_HALF_UP).plus(high)
    assert Decimal(printed.text.replace(THIN, "").replace(MINUS, "-")) == expected


@given(st.fractions(min_value=F(-500), max_value=F(500), max_denominator=1000))
def test_an_angle_has_one_decimal_and_is_off_by_half_of_it_at_most(value):
    text = numbers.rounded(value, THREE, places=1).text.replace(MINUS, "-")

    assert text.partition(".")[2].__len__() == 1 or value == 0
    assert abs(F(text) - value) <= F(1, 20)
    assert text != "-0.0"


def test_roots_and_sines_are_printed_from_their_exact_value():
    assert numbers.rounded(sqrt(F(2)), THREE).text == "1.414"
    assert numbers.rounded(sin_deg(F(20)), THREE).text == "0.342"


@pytest.mark.parametrize("written, unit, printed", [
    ("2.50 m", "m", f"2.50{THIN}m"), ("2.50 m", "mm", f"2500{THIN}mm"), (".5 m", "m", f"0.5{THIN}m"), ("2*1.25 m", "m", f"2.5{THIN}m"),
])
def test_given_digits_stay_as_typed_in_their_own_unit(written, unit, printed):
    value = F(1, 2) if written == ".5 m" else F(5, 2)

    assert numbers.given(value, written, numbers.unit(unit), THREE).text == printed


def test_a_short_number_on_the_way_is_not_rounded_and_a_long_one_has_two_figures_to_spare():
    assert numbers.plain(F(6, 5), numbers.unit("m"), THREE).text == f"1.2{THIN}m"
    assert numbers.plain(F(29952, 10), numbers.unit("m"), THREE).text == f"2995.2{THIN}m"
    assert numbers.plain(F(1, 3), numbers.unit("m"), THREE).text == f"0.333{THIN}33{THIN}m"
    assert numbers.plain(F(10, 7), numbers.unit("m"), THREE).text == f"1.4286{THIN}m"
    assert numbers.exactly(F(1, 3), 9) is None
    assert numbers.exactly(sqrt(F(2)), 9) is None


def test_a_result_that_is_used_again_shows_more_figures_only_where_it_was_rounded():
    assert numbers.reused(F(25), numbers.unit("N"), THREE).text == f"25.0{THIN}N"
    assert numbers.reused(F(-7987), numbers.unit("N"), THREE).text == f"{MINUS}7987{THIN}N"
    assert numbers.reused(F(200, 3), numbers.unit("N"), THREE).text == f"66.667{THIN}N"


def test_degrees_take_no_space_before_their_sign():
    assert numbers.angle(F(36870, 1000)).text == "36.87°"
    assert numbers.angle(F(110, 3)).text == "36.7°"


def test_the_moment_unit_follows_force_and_length():
    units = numbers.units_of({"force": "kip", "length": "ft"})

    assert (units[MOMENT].symbol, units[SPREAD].symbol) == ("kip·ft", "kip/ft")
    assert numbers.consistent(units)
    assert not numbers.consistent(numbers.units_of({"force": "N", "length": "mm", "moment": "N·m"}))
    assert numbers.units_of({})[FORCE].symbol == "N" and numbers.units_of({})[LENGTH].symbol == "m"


def test_every_unit_has_a_spoken_name():
    words = catalogue("speech")

    assert not [u.symbol for u in UNITS if f"unit.{u.symbol}" not in words]
