"""A letter may stand for a bare number (a width, a count): it is given as one."""

from unpin.lesson.build import build
from unpin.read import read_text
from unpin.render.terminal import write
from unpin.route.work import work

FILE = """
units: ft, lb
letters: {w: 6}
points: {A: [0, 0], B: A right 4}
members: {gate: A B}
supports: {A: pin, B: roller}
loads: [499.2w to 748.8w lb/ft down on gate from A to B]
find: [B]
"""


def test_a_letter_without_a_unit_is_listed_under_given():
    lesson = write(build(work(read_text(FILE).problem), drawn=False))

    assert "w = 6\n" in lesson
