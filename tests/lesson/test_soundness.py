"""What the chapter on soundness says of problems that move, that are held once too often, and that hold themselves."""

import pytest

from lessons import DOUBLE, FREE, worked_text
from unpin import api
from unpin.lesson.build import build, sound_section
from unpin.lesson.nodes import drawings
from unpin.lesson.soundness import shown_freedom
from unpin.read import read_text
from unpin.render import terminal

PLIERS = """
units: mm, N
points: {P: [0, 0], A: P right 40 down 5, B: P right 40 up 5, C: P left 100 up 20, D: P left 100 down 20}
members: {upper: C P A, lower: D P B}
links: [A-B]
loads: [80 N at C down, 80 N at D up]
find: [A-B]
"""

TRESTLES = """
units: m, N
points: {A: [0, 0], B: A right 2, C: A right 6}
members: {board: A B C}
supports: {A: contact pushes up, B: contact pushes up}
loads: [300 N at C down]
find: [A, B]
"""

LEDGE = """
units: m, N
points: {A: [0, 0], B: A right 2, C: A right 1 up 1}
members: {shelf: A C B}
supports: {A: fixed, B: contact pushes down}
loads: [60 N at C up]
find: [A]
"""


def said(text: str) -> str:
    return " ".join(terminal.section(sound_section(worked_text(text))).split())


def test_a_tool_in_the_hand_is_sound_and_no_error():
    text = said(PLIERS)

    assert text.split("--- ")[-1].startswith("The problem can be solved: everything asked can be found.")
    assert text.endswith("but its loads balance by themselves, so it stays where it is. A first count: 3 unknowns, 6 sums; the three extra sums "
                         "say only that the loads balance.")
    assert build(worked_text(PLIERS), drawn=False).solved


@pytest.mark.parametrize(("text", "count"), [(FREE, "2 unknowns and 3 sums, one unknown too few"), (DOUBLE, "4 unknowns and 3 sums, one unknown too many"),
                                             (TRESTLES, "one unknown and 3 sums, 2 unknowns too few")])
def test_a_count_that_shows_the_fault_is_said_once(text, count):
    assert said(text).count("first count") == 1
    assert f"A first count says so already: {count}." in said(text)


def test_the_motion_that_is_told_and_drawn_is_one_in_which_the_loads_do_work():
    found = worked_text(TRESTLES)

    assert shown_freedom(found.soundness).work != 0
    assert "member board can turn about B. The loads do work in this motion" in said(TRESTLES)
    assert [d for d in drawings(build(found)) if d.which == "motion"]


def test_a_contact_that_would_pull_opens_and_the_check_says_so_too():
    text = said(TRESTLES)

    assert "the contact at A would have to pull with 600 N, which it cannot, so it lifts off. Then nothing is left that could balance the loads" in text
    checked = api.check(read_text(TRESTLES).problem)
    assert [o.connection.points for o in checked.opened] == [("A",)]
    assert checked.soundness.holds is False
    assert " ".join(terminal.section(sound_section(checked)).split()) == text


def test_a_slide_along_an_awkward_line_is_told_by_its_angle():
    ramp = ("units: m, N\npoints: {A: [0, 0], B: 2 from A at 30 deg}\nmembers: {slab: A B}\nsupports: {A: \"roller pushes square to A B, up\", B: \"roller pushes square to A B, up\"}\n"
            "loads: [60 N at B up]\nfind: [A]\n")

    assert "can slide up to the right, 30.0° above the horizontal." in said(ramp)


def test_a_motion_is_told_the_way_the_loads_push():
    hung = "points: {A: [0, 0], W: [0, 1]}\nblocks: {sack: at A}\nsupports: {A: slot along up}\nloads: [weight of sack 5 N]\nfind: [A]\n"

    assert "can slide downward" in said(hung)


def test_one_part_that_moves_with_the_pins_of_its_links_is_told_by_itself():
    shelf = ("points: {A: [0, 0], C: A right 0.8, B: A right 1, D: A up 0.6}\nmembers: {shelf: A C B}\nlinks: [C-D]\nsupports: {A: pin, D: roller}\n"
             "loads: [120 N at B down]\nfind: [A]\n")

    assert "member shelf can turn about A" in said(shelf)


def test_of_what_is_held_too_often_the_ambiguous_forces_are_named():
    assert "sums alone do not fix A_y, B_y and C_y" in said(DOUBLE)
    assert "It is statically indeterminate to degree 1" in said(LEDGE)
