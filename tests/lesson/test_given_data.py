"""What is given is told as it was given: its own figures, its own pieces, each thing once."""

import pytest

from lessons import worked_text
from unpin.lesson.build import build
from unpin.render import terminal

HEAD = "units: m, kN\npoints: {A: [0, 0], B: A right 4, C: A right 6, D: A right 10}\n"
LETTERED = HEAD + ("letters: {w: 6}\nmembers: {beam: A B C D}\nsupports: {A: pin, D: roller}\n"
                   "loads: [499.2w to 748.8w kN/m down from A to D]\nfind: [A, D]\n")
CROSSING = HEAD + ("members: {near: A B C, far: C D}\nsupports: {A: pin, B: roller, D: roller}\n"
                   "loads: [2 to 12 kN/m down from A to D]\nfind: [A, B, D]\n")
JUMP = CROSSING.replace("[2 to 12 kN/m down from A to D]", "[2 kN/m down from A to C, 5 kN/m down from C to D]")
WEIGHTS = HEAD + ("members: {near: A B C, far: C D}\nsupports: {A: pin, B: roller, D: roller}\n"
                  "loads: [weight of near 3 kN at B, mass 250 kg hangs at D]\nfind: [A, B, D]\n")
TRUSS = ("units: m, N\npoints: {A: [0, 0], B: A right 2, C: A right 1 up 1}\nlinks: [A-B, B-C, A-C]\nsupports: {A: pin, B: roller}\n"
         "loads: [50 N at C down]\nfind: [A-B]\n")
SQUARE = ("units: m, N\npoints: {A: [0, 0], B: A right 3 up 3, C: A right 1 up 1}\nmembers: {ladder: A C B}\nsupports: {A: fixed}\n"
          "loads: [\"30 N at C square to A B, down\"]\nfind: [A]\n")


def said(text: str) -> str:
    return " ".join(terminal.write(build(worked_text(text), drawn=False)).split())


def given(text: str) -> str:
    return said(text).split(" Given ")[1].split(" Find ")[0]


def test_given_data_and_exact_products_of_them_are_not_rounded():
    assert "changing evenly from 2995.2 kN/m at A to 4492.8 kN/m at D" in given(LETTERED)
    assert "(2995.2 kN/m)(10 m)" in said(LETTERED)


def test_a_spread_load_that_crosses_a_hinge_is_given_in_one_piece_without_ends_of_ours():
    assert given(CROSSING).count("distributed load") == 1
    assert "• A distributed load, changing evenly from 2 kN/m at A to 12 kN/m at D, downward" in given(CROSSING)


def test_a_body_carries_its_own_piece_of_a_spread_load():
    assert "It carries the distributed load from 8 kN/m at C to 12 kN/m at D, downward." in said(CROSSING)


def test_two_spread_loads_stay_two():
    assert given(JUMP).count("distributed load") == 2


def test_weights_and_masses_name_their_member_once_and_are_short_where_they_are_carried():
    assert "The weight of member near, 3 kN, at B" in given(WEIGHTS)
    assert "A mass of 250 kg at D on member far; with g = 9.81 m/s² its weight is 2.4525 kN" in given(WEIGHTS)
    assert "It carries the weight 2.4525 kN at D." in said(WEIGHTS)
    assert said(WEIGHTS).count("mass") == 1


def test_the_links_of_a_truss_are_given_in_one_line():
    assert "Light links pinned at both ends: AB, BC and AC" in given(TRUSS)
    assert given(TRUSS).count("pinned at both ends") == 1


@pytest.mark.parametrize("side", ["down", "up"])
def test_a_direction_square_to_a_line_says_to_which_side(side):
    text = SQUARE.replace(", down", f", {side}")

    assert f"square to the line AB, {side}ward" in given(text)
