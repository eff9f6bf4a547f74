"""A cord is said by touching what it passes, in order."""

import pytest

from unpin.workbench.sayings import sayings

FRAME = """\
points: {W: [0, 2], O: [0, 0], B: [0, 1.5], C: [1.6, 1.5], K: [1.8, 0.5]}
members: {post: O B W, beam: B C}
discs: {wheel: 0.2 at C}
blocks: {sack: at K}
supports: {O: fixed}
"""


@pytest.mark.parametrize("touched", [["point W", "part wheel", "part sack"], ["point W", "point C", "point K"], ["point W", "point C", "part wheel", "point K", "part sack"]])
def test_the_touched_things_are_the_stops_of_a_cord_in_their_order(touched):
    said = [s["phrase"] for s in sayings(FRAME, touched) if s["section"] == "cords"]

    assert said[0] == "W over wheel to sack"
    assert "W under wheel to sack" in said


def test_a_cord_that_ends_at_a_disc_is_pulled_in_a_direction_to_be_filled_in():
    cord = next(s for s in sayings(FRAME, ["part sack", "part wheel"]) if s["section"] == "cords")
    start, end = cord["blanks"][0]

    assert cord["phrase"] == "sack over wheel pulled down"
    assert cord["phrase"][start:end] == "down"


def test_points_alone_make_a_straight_cord_as_before():
    assert [s["phrase"] for s in sayings(FRAME, ["point W", "point B"]) if s["section"] == "cords"] == ["W to B"]
