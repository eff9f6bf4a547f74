"""Slots and collars in figures: where the slot runs, what is over what, and which part keeps what when they are taken apart."""

from __future__ import annotations

import math

import pytest
from frames import LETTERING

from unpin.draw.figure import apart_figure, draw, problem_figure
from unpin.draw.geometry import apart
from unpin.draw.items import JointItem, SupportItem
from unpin.draw.scene import leaves
from unpin.draw.symbols import slot
from unpin.read import read_text
from unpin.statics.assemble import assemble

PRESS = (
    "points: {A: [0, 0], K: [3, 4], B: [6, 8], O: [0, 4], P: [1.5, 2], Q: [4.5, 6]}\n"
    "members: {lever: A P K Q B, crank: O K}\n%s\nsupports: {A: pin, O: pin}\nloads: [100 N at B right, 20 N m clockwise on crank]\n"
)
SAID = {
    "slot": "slots: {K: crank in lever}",
    "ends": "slots: {K: crank in lever from P to Q}",
    "collar": "collars: {K: crank on lever}",
    "sleeve": "collars: {K: crank on lever built on}",
}


def structure(said: str):
    return assemble(read_text(PRESS % SAID[said]).problem)


def looks(said: str) -> dict[tuple[str, str], str]:
    return {(piece.name, i.owner): i.look for piece in apart_figure(structure(said), LETTERING).pieces for i in piece.of(JointItem)}


def test_a_slot_runs_between_its_ends():
    (piece,) = problem_figure(structure("ends"), LETTERING).pieces
    (item,) = [i for i in piece.of(SupportItem) if i.kind == "slot"]

    assert item.reach == pytest.approx((2.5, 2.5))
    assert item.up == pytest.approx((-0.8, 0.6))


def test_a_long_hole_is_as_long_as_it_is_said_and_as_wide_as_its_pin():
    plate, hole, pin = slot.slot((0.0, 0.0), (0.0, -1.0), "K", False, (40.0, 60.0)).marks[:3]

    xs, ys = zip(*hole.spots)
    assert (min(xs), max(xs)) == pytest.approx((-40, 60), abs=0.2)
    assert max(ys) - min(ys) == pytest.approx(2 * slot.HOLE, abs=0.1)
    assert all(math.hypot(*s) <= slot.HOLE for s in pin.spots)
    assert max(s[0] for s in plate.spots) > max(xs)


def test_the_direction_of_a_slot_in_a_member_is_not_marked_a_second_time():
    (piece,) = problem_figure(structure("slot"), LETTERING).pieces

    assert [i.notes for i in piece.of(SupportItem) if i.kind == "slot"] == [()]


@pytest.mark.parametrize(("said", "lever", "crank"), [("slot", "hole", "hinge"), ("collar", "hinge", "collar"), ("sleeve", "knot", "sleeve")])
def test_the_slot_stays_with_its_member_and_a_collar_goes_with_the_one_it_is_on(said, lever, crank):
    found = looks(said)

    assert (found["lever", "K"], found["crank", "K"]) == (lever, crank)


@pytest.mark.parametrize("said", SAID)
def test_the_pin_of_a_slot_is_drawn_at_its_point_over_the_member(said):
    scene = draw(problem_figure(structure(said), LETTERING))
    marks = list(leaves(scene.marks))
    bar = max(n for n, m in enumerate(marks) if m.role == "flesh" and m.owner == "lever")
    box = max(n for n, m in enumerate(marks) if m.owner == "K" and m.role in ("symbol", "block"))

    assert box > bar
    assert said == "sleeve" or any(m.role == "hinge" and m.owner == "K" for m in marks[box:])
    assert all(apart(marks[box].spots[0], s) < 400 for s in marks[box].spots)


def test_a_block_in_a_slot_of_the_ground_slides_between_two_walls_that_clear_it():
    problem = read_text(
        "points: {A: [0, 0], B: [1, 1]}\nblocks: {slide: at A}\nlinks: [A-B]\nslots: {A: slide in ground along right}\n"
        "supports: {B: pin}\nloads: [3 N at A right]\n"
    ).problem
    marks = list(leaves(draw(problem_figure(assemble(problem), LETTERING)).marks))
    (box,) = [m for m in marks if m.role == "block" and m.owner == "slide"]
    walls = [m for m in marks if m.role == "ground" and m.owner == "A"]
    top, low = min(s[1] for s in box.spots), max(s[1] for s in box.spots)

    assert len(walls) == 2
    assert all(not top <= s[1] <= low for wall in walls for s in wall.spots)
