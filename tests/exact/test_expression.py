"""Expressions: what they are worth, where they stop, and what they refuse."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from unpin.exact.expression import CannotEvaluate, NotAnExpression, evaluate, names, parse, parse_at, tokens
from unpin.exact.number import cos_deg, sqrt

LETTERS = {"a": Fraction(3), "kN": Fraction(1000), "m": Fraction(1, 2), "theta": Fraction(30)}


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("2", 2),
        ("0.1", Fraction(1, 10)),
        (".5", Fraction(1, 2)),
        ("3/4", Fraction(3, 4)),
        ("1 - 2 - 3", -4),
        ("8/4/2", 1),
        ("2^3^2", 512),
        ("-2^2", -4),
        ("2^-1", Fraction(1, 2)),
        ("2*-3", -6),
        ("+-+2", -2),
        ("2a", 6),
        ("1/2 a", Fraction(3, 2)),
        ("2(a + 1)", 8),
        ("(a)(a)", 9),
        ("4 kN/m", 8000),
        ("a sin(30)", Fraction(3, 2)),
        ("2·a", 6),
        ("3 − 1", 2),
        ("a²", 9),
        ("sqrt(9/4)", Fraction(3, 2)),
        ("sqrt(2)^2", 2),
        ("cos(60) + tan(45)", Fraction(3, 2)),
        ("cos(theta)", cos_deg(Fraction(30))),
        ("sqrt(2)*sqrt(8)", 4),
        ("1/sqrt(2)", sqrt(Fraction(1, 2))),
    ],
)
def test_an_expression_is_worth_its_exact_value(text, value):
    assert evaluate(parse(text), LETTERS) == value


@pytest.mark.parametrize(
    ("text", "index", "wanted"),
    [
        ("", 0, "number"),
        ("2 +", 2, "number"),
        ("2 3", 1, "operator"),
        ("(2", 2, "closing"),
        ("sqrt 2", 1, "bracket"),
        ("2 ) 3", 1, "operator"),
        ("a b", 1, "operator"),
        ("*2", 0, "number"),
        ("1_000", 1, "operator"),
        ("2 @ 3", 1, "operator"),
        ("(" * 21 + "1" + ")" * 21, 21, "shorter"),
        ("1" * 31, 0, "shorter"),
        ("1+" * 150 + "1", 200, "shorter"),
    ],
)
def test_what_is_no_expression_is_refused_where_it_stops_being_one(text, index, wanted):
    with pytest.raises(NotAnExpression) as caught:
        parse(text)

    assert (caught.value.index, caught.value.wanted) == (index, wanted)


@pytest.mark.parametrize(
    ("text", "code", "piece"),
    [
        ("2 + x", "unknown_name", "x"),
        ("1 + 2/(1 - 1)", "division_by_zero", "2/(1 - 1)"),
        ("sqrt(-2)", "negative_root", "sqrt(-2)"),
        ("2^0.5", "power", "2^0.5"),
        ("2^21", "power", "2^21"),
        ("(10^20)^3", "out_of_range", "(10^20)^3"),
        ("tan(90)", "division_by_zero", "tan(90)"),
        ("0^-1", "division_by_zero", "0^-1"),
    ],
)
def test_what_has_no_value_is_refused_with_its_place(text, code, piece):
    with pytest.raises(CannotEvaluate) as caught:
        evaluate(parse(text), {})

    assert (caught.value.code, text[caught.value.start : caught.value.end]) == (code, piece)


def test_an_expression_ends_before_a_stop_word():
    line = tokens("2a at C")
    found, after = parse_at(line, 0, {"at"})
    assert (evaluate(found, LETTERS), line[after].text) == (6, "at")


def test_names_are_given_from_left_to_right():
    assert [n.name for n in names(parse("b + 2a*sqrt(c)"))] == ["b", "a", "c"]


TREES = st.recursive(
    st.integers(0, 99).map(str),
    lambda inner: st.tuples(inner, st.sampled_from("+-*"), inner).map(lambda t: f"({t[0]} {t[1]} {t[2]})"),
    max_leaves=12,
)


@given(TREES)
def test_whole_numbers_are_reckoned_as_python_does(text):
    expected = eval(text)  # noqa: S307 - the text is made here, of digits and signs
    if abs(expected) < 10**39:
        assert evaluate(parse(text), {}) == expected
