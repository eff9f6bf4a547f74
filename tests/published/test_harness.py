"""The comparison with printed answers is strict where the records allow it."""

from fractions import Fraction as F

import pytest

import harness
from unpin.base.units import FORCE
from unpin.model.action import Symbol
from unpin.model.answer import Component

HELD = {"A": Component(Symbol("A"), F(1230), FORCE, "along", angle=-143.13), "R_B": Component(Symbol("R", "B"), F(-500), FORCE, "up")}


def agrees(**answer) -> bool:
    return harness.compare({"ours": "A", "unit": "N", "printed": "1230", **answer}, HELD).agrees


@pytest.mark.parametrize(
    ("answer", "expected"),
    [
        ({}, True),
        ({"printed": "1231"}, True),
        ({"printed": "1232"}, False),
        ({"printed": "1.2e3"}, True),
        ({"printed": "1.2e3", "solved": 1229}, True),
        ({"printed": "1.2e3", "solved": 1228}, False),
        ({"printed": "1.23", "unit": "kN", "solved": 1.23}, True),
        ({"rounded_by_author": True, "printed": "1180", "solved": 1230.4}, True),
        ({"rounded_by_author": True, "printed": "1230", "solved": 1180}, False),
        ({"angle": "-143.1"}, True),
        ({"angle": "216.8"}, True),
        ({"angle": "-143.4"}, False),
        ({"sense": "up"}, False),
        ({"ours": "R_B", "printed": "500", "sense": "up"}, True),
        ({"ours": "R_B", "printed": "500", "angle": "90"}, False),
        ({"ours": "C", "printed": "500"}, False),
    ],
)
def test_an_answer_agrees_with_what_is_printed_and_with_what_the_authors_numbers_give(answer, expected):
    assert agrees(**answer) is expected


@pytest.mark.parametrize(
    ("answer", "expected"),
    [
        ({"printed": "1250", "solved": 1230}, True),
        ({"printed": "1230", "solved": 1230}, False),
        ({"printed": "1230.0", "solved": 1230.5}, False),
        ({"printed": "1250", "solved": 1250}, False),
        ({"printed": "1230", "solved": 1230, "sense": "along", "printed_sense": "up"}, True),
        ({"printed": "1250", "solved": 1230, "sense": "up"}, False),
    ],
)
def test_an_answer_that_is_printed_wrongly_must_be_what_its_data_give_and_not_what_is_printed(answer, expected):
    assert agrees(wrong="a slip", **answer) is expected
