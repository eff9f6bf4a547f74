"""A force given by its angle with a line is told and resolved as a person would.

Components by hand, from the definition of sine and cosine: along a level line F cos(theta), square to it F sin(theta); with a line
at 20 degrees and a turn of 70 clockwise the force points 50 degrees below the level.
"""

import pytest

from lessons import worked_text
from unpin.lesson.build import build
from unpin.render import terminal

FILE = """points: {{A: [0, 0], C: 2 from A {way}, E: 3 from A {way}, W: A up 3}}
members: {{boom: A C E}}
links: [C-W]
supports: {{A: pin, W: pin}}
loads: [200 N at E {said}]
find: [A, C-W]
"""
LEANING = """points: {A: [0, 0], C: A right 2 up 1, E: C right 2 up 1}
members: {boom: A C E}
supports: {A: pin, E: roller pushes at 80 deg anticlockwise from C E}
loads: [200 N at C at 60 deg clockwise from E C]
find: [A, E]
"""


def told(text: str) -> str:
    return " ".join(terminal.write(build(worked_text(text), drawn=False)).split())


def test_the_given_list_says_it_as_it_was_said():
    lesson = told(FILE.format(way="right", said="at 60 deg clockwise from C E"))

    assert "A force of 200 N at E on member boom, at 60° clockwise from the line CE" in lesson


@pytest.mark.parametrize(("way", "said", "across", "upright"), [
    ("right", "at 60 deg clockwise from C E", "cos 60°", "sin 60°"),
    ("at 20 deg", "at 70 deg clockwise from C E", "cos 50°", "sin 50°"),
    ("at 30 deg", "at 80 deg clockwise from C E", "cos 50°", "sin 50°"),
])
def test_it_is_resolved_by_the_angle_with_the_axis(way, said, across, upright):
    lesson = told(FILE.format(way=way, said=said))

    assert f"A_x + (200 N) {across}" in lesson
    assert f"A_y − (200 N) {upright}" in lesson


def test_an_angle_with_the_level_that_is_not_round_is_told_before_its_cosine_is_taken():
    # The line falls to the left by atan(1/2) = 26.565 degrees; turned clockwise by 60 it rises there by 33.435: cos 0.8345, 200 cos = 166.9.
    lesson = told(LEANING)

    assert "200 N at C, at 60° clockwise from the line EC, that is 33.43° above the horizontal, to the left" in lesson
    assert "(200 N) cos 33.43°" in lesson or "(200 N) sin 33.43°" in lesson


def test_a_sum_square_to_a_push_given_so_names_the_angle_that_is_left():
    # 90 - 80 = 10 degrees, on the other side of the line.
    assert "Forces at 10° clockwise from the line CE" in told(LEANING)
