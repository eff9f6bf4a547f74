"""Chapters of bodies: two bodies under one block, three forces on one, rollers that hold down, contacts that open."""

from itertools import pairwise

import pytest

from lessons import EXAMPLES, lesson, worked, worked_text
from unpin.lesson import ways
from unpin.lesson.build import build, chosen_route
from unpin.lesson.nodes import Bullets, walk
from unpin.render import terminal
from unpin.render.maths.sentence import written

HELD = """
units: m, N
points: {A: [0, 0], B: A right 2, C: A right 6}
members: {board: A B C}
supports: {A: roller, B: pin}
loads: [300 N at C down]
find: [A, B]
"""

THREE = """
units: m, N
points: {A: [0, 0], B: A right 3, C: A right 3 up 2, D: A right 1}
members: {shelf: A D B}
links: [B-C]
supports: {A: pin, C: pin}
loads: [90 N at D down]
find: [A]
"""


def said(one) -> str:
    return " ".join(terminal.write(one).split())


def test_a_block_over_two_bodies_names_both_in_the_plan_and_in_the_title():
    text = said(lesson("garden-arch"))

    assert "First isolate member west and the whole structure, each by itself: together they give A_x and A_y." in text
    assert "Part 1: member west and the whole structure" in text
    assert "One sum stands on member west. Take moments about C." in text


@pytest.mark.parametrize("name", EXAMPLES)
def test_a_chapter_cuts_loose_only_the_bodies_of_its_title(name):
    groups = ways.by_body(chosen_route(worked(name), ""))
    sections = [s for s in lesson(name).sections if s.kind == "body"]

    assert len(groups) == len(sections)
    for (bodies, steps), section in zip(groups, sections):
        assert {b.parts for b in bodies} == {e.body.parts for s in steps for e in s.equations}
        assert len([n for n in walk(section.children) if isinstance(n, Bullets)]) <= len(bodies)
    assert all([b.parts for b in one[0]] != [b.parts for b in two[0]] for one, two in pairwise(groups))


def test_a_roller_that_pulls_must_be_held_down():
    assert "The roller at A has to pull: it must be held down to its track" in said(build(worked_text(HELD)))
    assert "has to pull" not in said(build(worked_text(HELD.replace("300 N at C down", "300 N at C up"))))


def test_three_forces_on_one_part_meet_in_a_point_or_are_parallel():
    told = "Only three forces act on member shelf, at B, A and D. In balance their lines meet in one point, or all three are parallel. "
    slanted = THREE.replace("C: A right 3 up 2", "C: A up 2")

    assert told + "Here two are parallel, so the force at A is parallel to them." in said(build(worked_text(THREE)))
    assert told + "Here two of the lines are known and meet at (1 m, 1.3333 m), so the line of the force at A passes through it too." in \
        said(build(worked_text(slanted))).replace("\u202f", " ")
    assert "three forces" not in said(build(worked_text(THREE.replace("90 N at D down", "90 N at D down, 5 N m on shelf anticlockwise"))))


def test_a_result_is_worked_with_its_sign_and_the_answer_says_the_true_sense():
    text = said(build(worked_text(HELD)))

    assert "A_y = −600 N that is 600 N downward ↓" in text
    assert "B_y = 900 N upward ↑" in text


def test_the_check_begins_plainly_when_no_sum_was_kept_back():
    one = build(worked_text(THREE.replace("[A]", "[B-C]")))

    check = next(s for s in one.sections if s.kind == "check")
    first = written(next(n for n in walk(check.children) if hasattr(n, "text")).text)
    assert first.startswith(("One more sum", "The program has confirmed"))
