"""Units and phrases of one lesson."""

from fractions import Fraction as F

import pytest

from lessons import worked
from unpin.base.units import FORCE, MOMENT
from unpin.exact.number import length, sqrt
from unpin.lesson import phrases
from unpin.lesson.sheet import sheet_for
from unpin.model import directions
from unpin.model.values import Direction
from unpin.render.maths.sentence import written


@pytest.mark.parametrize(("largest", "unit"), [(F(5), "N"), (F(999_999), "N"), (F(2_000_000), "kN")])
def test_the_unit_of_force_moves_only_when_numbers_would_be_unreadable(largest, unit):
    problem = worked("market-awning").problem

    sheet = sheet_for(problem, {"x": -largest})

    assert sheet.units[FORCE].symbol == unit
    assert sheet.units[MOMENT].symbol == f"{unit}·m"
    assert sheet.line_moment.factor == sheet.units[FORCE].factor


def test_every_number_of_a_moment_sum_is_in_force_times_length():
    from dataclasses import replace

    problem = replace(worked("market-awning").problem, units={"length": "mm", "force": "N", "moment": "N·m"})
    sheet = sheet_for(problem, {})

    assert sheet.line_moment.symbol == "N·mm"
    assert sheet.units[MOMENT].symbol == "N·m"


def slope(x, y, form="components", **more):
    vector = (F(x), F(y))
    return Direction(vector, length(vector), form, **more)


@pytest.mark.parametrize(("direction", "said"), [
    (directions.X, "to the right"),
    (directions.DOWN, "downward"),
    (slope(3, -4, "slope", legs=(F(3), F(-4))), "on a slope of 3 to the right and 4 down"),
    (slope(-6, 2), "in the direction 3 to the left, 1 up"),
    (slope(1, 2, "line", points=("A", "B")), "from A towards B"),
    (slope(1, 2, "square", points=("A", "B")), "square to the line AB, upward"),
    (slope(-4, -1, "square", points=("A", "B")), "square to the line AB, to the left"),
    (Direction((sqrt(F(3)) / 2, F(-1, 2)), F(1), "angle", angle=F(30), base=(F(1), F(0)), turn=(F(0), F(-1))), "30° below the horizontal, to the right"),
])
def test_a_direction_is_told_the_way_it_was_given(direction, said):
    sheet = sheet_for(worked("market-awning").problem, {})

    assert written(phrases.toward(direction, sheet)) == said


@pytest.mark.parametrize(("code", "degrees", "said", "arrow"), [
    ("along", 35.54, "up to the right, 35.5° above the horizontal", "↗"),
    ("along", 144.46, "up to the left, 35.5° above the horizontal", "↖"),
    ("along", -10.0, "down to the right, 10.0° below the horizontal", "↘"),
    ("along", -170.0, "down to the left, 10.0° below the horizontal", "↙"),
    ("clockwise", None, "clockwise", "↻"),
    ("tension", None, "tension", ""),
])
def test_a_sense_is_told_with_its_acute_angle_and_an_arrow(code, degrees, said, arrow):
    sheet = sheet_for(worked("market-awning").problem, {})

    assert written(phrases.sense(code, degrees, sheet)) == said
    assert phrases.arrow(code, degrees) == arrow
