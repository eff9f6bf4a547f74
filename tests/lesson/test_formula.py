"""The small maths tree and the rules by which letters and brackets are set."""

from fractions import Fraction as F

import pytest

from unpin.exact.number import sqrt
from unpin.exact.rounding import short_form
from unpin.lesson import formula
from unpin.lesson.formula import Amount, Function, Letter, Over, Product, Relation, Root, Signed, Sum
from unpin.lesson.sheet import exact_formula
from unpin.render.maths import text
from unpin.words.numbers import Printed


def amount(digits: str, unit: str = "", sign: int = 1) -> Amount:
    return Amount(Printed(sign, digits, unit))


@pytest.mark.parametrize("typed, base, sub", [("P", "P", ""), ("P1", "P", "1"), ("P_1", "P", "1"), ("theta", "θ", ""), ("W_tot", "W", "tot"), ("12", "12", "")])
def test_a_letter_is_set_as_its_author_meant_it(typed, base, sub):
    assert formula.letter(typed) == Letter(base, sub)


@pytest.mark.parametrize("value, shown", [(F(5, 2), "5/2"), (sqrt(F(2)) / 2, "√2/2"), (sqrt(F(13)) * 3 / 2, "(3 √13)/2"), (F(-3), "−3"),
                                          (1 + sqrt(F(3)), "1 + √3")])
def test_short_exact_numbers_are_shown_with_their_roots(value, shown):
    assert text.write(exact_formula(short_form(value))) == shown


def test_a_product_reads_ratio_force_function_arm():
    term = Product((Over(amount("4"), amount("5")), amount("300", "N"), amount("2.4", "m")))

    assert text.write(term) == "(4/5)(300\u202fN)(2.4\u202fm)"
    assert text.write(Product((Letter("F", "BD"), Function("sin", amount("30", "°")), amount("2", "m")))) == "F_BD sin 30° (2\u202fm)"


def test_a_negative_number_stands_in_brackets_after_a_sign_and_alone_without():
    minus = amount("5", "N", -1)

    assert text.write(Sum((Signed(1, minus), Signed(-1, minus)))) == "−5\u202fN − (−5\u202fN)"


def test_actions_are_listed_in_the_order_of_the_terms():
    relation = Relation(Sum((Signed(1, Letter("A", "x"), "A_x>arm"), Signed(-1, amount("3", "N"), "load1"))), formula.ZERO)

    assert formula.actions(relation) == ("A_x>arm", "load1")
    assert formula.symbols(Product((Letter("A"), Root(Letter("B")), Letter("A")))) == (Letter("A"), Letter("B"))
