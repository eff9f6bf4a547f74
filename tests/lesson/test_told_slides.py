"""What is said of slots, collars and supports that only push: as given, where they are cut, and which face is pressed."""

import pytest

from lessons import worked_text
from unpin.lesson.build import build
from unpin.render import terminal

PRESS = """
units: m, N
points: {A: [0, 0], K: [3, 4], B: [6, 8], O: [0, 4]}
members: {lever: A K B, crank: O K}
letters: {M: unknown}
%s
supports: {A: pin, O: pin}
loads: [100 N at B %s, M anticlockwise on crank]
find: [K on lever, M]
"""
SLOT = "slots: {K: crank in lever}"
COLLAR = "collars: {K: crank on lever}"
BAR = """
units: m, N
points: {A: [0, 0], B: [1, 0], C: [2, 0]}
members: {bar: A B C}
supports: {A: pin, C: %s}
loads: [%s at B %s]
find: [C]
"""


def said(text: str) -> str:
    return " ".join(terminal.write(build(worked_text(text), drawn=False)).split())


def test_a_slot_is_given_by_who_slides_in_whom():
    assert "A pin of member crank that slides at K in a smooth slot of member lever" in said(PRESS % (SLOT, "right"))
    assert "Slots, collars and guides are without friction." in said(PRESS % (SLOT, "right"))


def test_each_side_of_a_slot_is_told_as_it_is_and_the_second_as_the_pair_of_the_first():
    text = said(PRESS.replace("[K on lever, M]", "[K on lever, O, M]") % (SLOT, "right"))

    assert "At K the pin of member crank presses on its slot, square to it, so one force acts: R_K" in text
    assert "opposite to that on member lever (action and reaction)" in text


@pytest.mark.parametrize(("what", "way", "face"), [
    (SLOT, "right", "The upper face of the slot is pressed."),
    (SLOT, "left", "The lower face of the slot is pressed."),
    (COLLAR, "right", "The collar bears on the lower side of the rod."),
    (COLLAR, "left", "The collar bears on the upper side of the rod."),
])
def test_the_sign_tells_which_face_is_pressed(what, way, face):
    text = said(PRESS % (what, way))

    assert face in text
    assert text.count("face of the slot is pressed") + text.count("bears on the") == 1


@pytest.mark.parametrize(("way", "face"), [("right", "left"), ("left", "right")])
def test_an_upright_slot_has_a_left_and_a_right_face(way, face):
    text = said("units: m, N\npoints: {A: [0, 0], B: [0, 1], C: [0, 2]}\nmembers: {post: A B C}\nblocks: {}\n"
                f"supports: {{A: pin, C: slot along up}}\nloads: [80 N at B {'left' if way == 'right' else 'right'}]\nfind: [C]")

    assert f"to the {way}" in text
    assert f"The {face} face of the slot is pressed." in text


def test_a_collar_that_is_built_on_has_a_couple_and_tells_no_face_of_it():
    text = said("units: m, N\npoints: {A: [0, 0], B: [1, 0], C: [1, 1]}\nmembers: {bracket: A B}\nlinks: [B-C]\n"
                "collars:\n  A: bracket on ground along up, built on\nsupports: {C: pin}\nloads: [80 N at B right 1 down 1]\nfind: [A]")

    assert "a smooth rod of the ground, on which a collar slides, built on at A" in text.lower().replace("at a;", "at A;")
    assert "so a force and a couple act: A_x and M_A" in text


@pytest.mark.parametrize(("support", "given", "cut"), [
    ("rocker pushes up", "A rocker at C; it can only push, upward", "At C the rocker can only push"),
    ("knife edge pushes up", "A knife edge at C; it can only push, upward", "At C it rests on a knife edge"),
    ("smooth floor pushes up", "A smooth surface at C; it can only push, upward", "At C the smooth surface can only push"),
])
def test_supports_that_only_push_are_called_by_their_names(support, given, cut):
    text = said(BAR % (support, "90 N", "down"))

    assert given in text and cut in text


@pytest.mark.parametrize("support", ["rocker pushes up", "knife edge pushes up", "smooth floor pushes up"])
def test_what_only_pushes_opens_rather_than_pull(support):
    work = worked_text(BAR % (support, "90 N", "up"))

    assert [o.connection.points for o in work.opened] == [("C",)]
    assert not work.soundness.holds


def test_a_couple_to_be_found_that_is_given_clockwise_and_positive_acts_clockwise():
    text = said((PRESS % (SLOT, "right")).replace("M anticlockwise", "M clockwise"))

    assert "M is negative: it acts opposite to the way it is drawn, that is, anticlockwise." in text
