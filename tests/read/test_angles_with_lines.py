"""A direction given by its angle with a line of the figure.

Expected vectors by hand: the way of the line turned by the angle. The moment F L sin(theta) of a force that makes the angle theta
with an arm of length L is the definition of the moment, in every textbook of statics (from memory).
"""

import math

import pytest

from unpin.exact.number import approx
from unpin.read import read_text
from unpin.route.work import work

FILE = """{letters}points: {{A: [0, 0], C: 2 from A {way}, E: 3 from A {way}}}
members: {{arm: A C E}}
supports: {{A: fixed}}
loads: [200 N at E {said}]
find: [A]
"""


def problem(said, way="right", letters=""):
    reading = read_text(FILE.format(said=said, way=way, letters=letters))

    assert reading.problem is not None, reading.diagnostics
    return reading.problem


def degrees(said, way="right"):
    x, y = map(approx, problem(said, way).loads[0].direction.vector)
    return math.degrees(math.atan2(y, x))


@pytest.mark.parametrize(("said", "way", "expected"), [
    ("at 60 deg anticlockwise from C E", "right", 60),
    ("at 60 deg counterclockwise from C E", "right", 60),
    ("at 60 deg clockwise from C E", "right", -60),
    ("at 60 deg clockwise from E C", "right", 120),
    ("at 110 deg clockwise from C E", "right", -110),
    ("at 70 deg clockwise from C E", "at 20 deg", -50),
    ("at 60 deg anticlockwise from C E", "right 4 up 3", 60 + math.degrees(math.atan2(3, 4))),
    ("at 30 deg clockwise from A E", "up", 60),
    ("at 70 deg anticlockwise from A E", "at 20 deg", 90),
])
def test_the_way_from_one_point_to_another_is_turned_by_the_angle(said, way, expected):
    assert degrees(said, way) == pytest.approx(expected)


def test_a_letter_may_be_the_angle():
    direction = problem("at beta clockwise from C E", "right 4 up 3", "letters: {beta: an angle drawn 25 deg}\n").loads[0].direction

    x, y = map(approx, direction.vector)
    assert math.degrees(math.atan2(y, x)) == pytest.approx(math.degrees(math.atan2(3, 4)) - 25)
    assert direction.points == ("C", "E")


def test_a_couple_is_still_said_by_its_turn_after_the_point():
    load = read_text("points: {A: [0, 0], B: [2, 0]}\nmembers: {arm: A B}\nsupports: {A: fixed}\nloads: [5 N m at B clockwise]\nfind: [A]\n").problem.loads[0]

    assert load.kind == "couple"


@pytest.mark.parametrize("way", ["right", "up", "at 20 deg", "right 4 up 3", "left 5 up 12"])
@pytest.mark.parametrize("angle", [25, 60, 130])
def test_the_moment_at_the_wall_is_force_times_arm_times_sine_of_the_angle(way, angle):
    worked = work(problem(f"at {angle} deg clockwise from C E", way))
    moment = next(approx(v) for u, v in worked.values.items() if u.startswith("M_A"))

    assert moment == pytest.approx(200 * 3 * math.sin(math.radians(angle)))


def test_a_slope_given_so_is_the_way_of_the_surface():
    text = "points: {A: [0, 0], B: [2, 0]}\nmembers: {arm: A B}\nsupports: {A: pin, B: roller on slope at 25 deg anticlockwise from A B}\nloads: [5 N at B down]\nfind: [A]\n"
    x, y = map(approx, read_text(text).problem.connections[-1].direction.vector)

    assert math.degrees(math.atan2(y, x)) == pytest.approx(115)
