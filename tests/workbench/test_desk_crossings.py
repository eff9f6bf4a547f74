"""Two members that cross are pinned by a new point on both; its place is exact, or it is not offered."""

import pytest

from unpin.read.reader import read_text
from unpin.workbench.crossings import pins
from unpin.workbench.editing import edited

BRACE = "points: {{A: [0, 0], B: [3, 2], C: [0, 1], D: [2, 0]{more}}}\nmembers: {{AB: A B, CD: C D}}\nsupports: {{A: pin, C: pin}}\nloads: [5 N at D down]\n"
BOTH = ["part AB", "part CD"]


def test_the_point_stands_where_the_lines_meet_and_both_members_pass_it():
    text = BRACE.format(more="")
    (one,) = pins(text, BOTH)
    after = edited(text, one["acts"])["text"]

    # The lines y = 2x/3 and y = 1 - x/2 meet at x = 6/7, y = 4/7.
    assert (one["name"], one["phrase"], one["pins"]) == ("E", "[6/7, 4/7]", ["AB", "CD"])
    assert "E: [6/7, 4/7]" in after and "AB: A E B" in after and "CD: C E D" in after
    reading = read_text(after)
    assert reading.sound
    assert any(c.kind == "pin" and c.points == ("E",) and set(c.parts) == {"AB", "CD"} for c in reading.problem.connections)


def test_coordinates_are_in_the_unit_of_the_file():
    text = "units: mm, N\n" + BRACE.format(more="").replace("[3, 2]", "[400, 300]").replace("[0, 1]", "[0, 300]").replace("[2, 0]", "[400, 0]")
    assert [s["phrase"] for s in pins(text, BOTH)] == ["[200, 150]"]


def test_a_point_that_is_there_already_is_taken():
    text = BRACE.format(more=", P: [6/7, 4/7]")
    (one,) = pins(text, BOTH)

    assert one["name"] == "P" and [a["do"] for a in one["acts"]] == ["through", "through"]
    assert "AB: A P B" in edited(text, one["acts"])["text"]


@pytest.mark.parametrize("points", ["A: [0, 0], B: [3, sqrt(2)], C: [0, 1], D: [2, 0]", "A: [0, 0], B: [3, 2], C: [1, -1], D: [2, -1]", "A: [0, 0], B: [3, 2], C: [3, 0], D: [6, 2]"])
def test_where_no_place_can_be_said_exactly_nothing_is_offered(points):
    """An irrational place; members that would cross only if drawn out; parallel ones."""
    assert pins(BRACE.format(more="").replace("A: [0, 0], B: [3, 2], C: [0, 1], D: [2, 0]", points), BOTH) == []


def test_members_that_share_a_point_may_cross_once_more_and_are_not_pinned_there_again():
    text = BRACE.format(more="").replace("CD: C D", "CD: A C D")
    assert [s["phrase"] for s in pins(text, BOTH)] == ["[6/7, 4/7]"]


def test_a_bent_member_is_led_through_between_the_right_points():
    text = "points: {A: [0, 0], B: [2, 0], C: [2, 2], D: [0, 1], E: [3, 1]}\nmembers: {frame: A B C, tie: D E}\nsupports: {A: fixed, D: pin}\nloads: [5 N at C right]\n"
    (one,) = pins(text, ["part tie"], ["part frame", "part tie", "point A"])

    assert one["pins"] == ["frame", "tie"]
    assert "frame: A B F C" in edited(text, one["acts"])["text"]


def test_of_several_crossings_a_hand_is_offered_the_one_it_is_at():
    text = "points: {A: [0, 0], B: [4, 0], C: [0, 1], D: [1, -1], E: [2, 1], F: [3, -1]}\nmembers: {bar: A B, zig: C D E F}\nsupports: {A: fixed}\n"
    assert len(pins(text, ["part bar", "part zig"])) == 3
    assert [s["phrase"] for s in pins(text, ["part bar"], ["part bar", "part zig"], (1.45, 0.02), 0.2)] == ["[1.5, 0]"]
