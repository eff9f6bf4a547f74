"""Decimal places and the decimal sign of a house style, against the decimal library."""

from decimal import ROUND_HALF_UP, Context, Decimal
from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from unpin.words import numbers
from unpin.words.numbers import MINUS, THIN, Style

N = numbers.unit("N")
PLACES = st.integers(0, 6)
VALUES = st.fractions(min_value=F(-10**6), max_value=F(10**6), max_denominator=10**5)


def plain(text: str) -> Decimal:
    return Decimal(text.replace(THIN, "").replace(MINUS, "-"))


@given(VALUES, PLACES)
def test_a_result_to_so_many_places_is_the_decimal_library_s_rounding_half_up(value, places):
    printed = numbers.measure(value, N, Style(places=places))

    exact = Context(prec=80).divide(Decimal(value.numerator), Decimal(value.denominator))
    wanted = exact.quantize(Decimal(1).scaleb(-places), rounding=ROUND_HALF_UP, context=Context(prec=80))
    found = plain(printed.digits) * (printed.sign or 1)
    assert found == wanted
    assert -found.as_tuple().exponent == places
    assert printed.text[0] != MINUS or found != 0


@given(VALUES, PLACES)
def test_a_number_on_the_way_has_at_least_two_places_to_spare_or_is_exact(value, places):
    style = Style(places=places)
    printed = numbers.plain(value, N, style)

    error = abs(F(plain(printed.digits)) * (printed.sign or 1) - value)
    assert error <= F(1, 2) * F(10) ** -(places + numbers.CARRIED)


@given(VALUES, PLACES | st.none())
def test_a_comma_stands_where_the_point_stood_and_nothing_else_changes(value, places):
    for make in (lambda s: numbers.measure(value, N, s), lambda s: numbers.plain(value, N, s), lambda s: numbers.angle(value, s),
                 lambda s: numbers.given(abs(value), "2.50 N", N, s)):
        point, comma = make(Style(places=places)), make(Style(places=places, decimal=","))
        assert comma.digits == point.digits.replace(".", ",")


@pytest.mark.parametrize(("value", "places", "printed"), [
    (F(0), 2, "0.00"), (F(0), 0, "0"), (F(1, 1000), 2, "0.00"), (F(1, 200), 2, "0.01"), (F(-1, 1000), 2, "0.00"), (F(12345), 1, f"12{THIN}345.0"),
    (F(199, 2), 0, "100"), (F(-2, 3), 3, f"{MINUS}0.667"),
])
def test_small_and_large_numbers_to_places(value, places, printed):
    assert numbers.measure(value, N, Style(places=places)).text == f"{printed}{THIN}N"


@pytest.mark.parametrize(("language", "sign"), [("en", "."), ("es", ",")])
def test_a_language_has_its_decimal_sign(language, sign):
    # ISO 80000-1 allows both signs; Spanish usage in Spain is the comma (common practice, no source).
    assert numbers.decimal_sign(language) == sign
