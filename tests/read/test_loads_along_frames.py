"""A spread load along members that are not in line, over several whole members, and on the face of a block.

Expected values by hand, the formulas beside them; that of the parabola: a three-hinged arch under a load uniform over its span has
H = w L² / 8 f (any text on structures, from memory).
"""

import pytest

from unpin.exact.number import approx
from unpin.read import read_text
from unpin.route.work import work

ARCH = """units: m, kN
points: {{A: [0, 0], C: A right 10 up 4, B: A right 20}}
members: [A C, C B]
supports: {{A: pin, B: pin}}
loads: ["{}"]
find: [A, B]
"""
DAM = """units: m, kN
letters: {gamma: 9.81 kN/m^3}
points: {A: [0, 0], B: A right 4, C: A up 6, D: C right 1, E: A up 5, G: A right 1.5 up 2.5}
blocks: {dam: A B D C}
supports: {A: contact pushes up, B: pin}
loads: [gamma*5 m to 0 kN/m^2 over 1 m right on dam from A to E, weight of dam 360 kN at G]
find: [A, B]
"""


def found(text):
    worked = work(read_text(text).problem)

    assert worked.proof.passed
    return {f"{c.symbol.base}_{c.symbol.sub}": abs(approx(c.value)) / 1000 for a in worked.answers for c in a.components}


@pytest.mark.parametrize("load", ["10 kN/m down from A to B per horizontal length", "10 kN/m down on AC and CB per horizontal length",
                                  "10 kN/m down on AC and CB from A to B per horizontal length"])
def test_a_load_goes_along_members_that_are_not_in_line(load):
    values = found(ARCH.format(load))

    assert values["A_y"] == pytest.approx(10 * 20 / 2)
    assert values["A_x"] == pytest.approx(10 * 20**2 / (8 * 4))


def test_water_stands_against_a_part_of_the_face_of_a_block():
    values = found(DAM)
    push = 9.81 * 5**2 / 2

    assert values["B_x"] == pytest.approx(push)
    assert values["A_y"] == pytest.approx((360 * 2.5 - push * 5 / 3) / 4)


def test_of_two_ways_round_none_is_chosen():
    text = ("points: {A: [0, 0], B: [0, 3], C: [4, 3], D: [4, 0]}\nmembers: [A B, B C, A D, D C]\nsupports: {A: fixed}\n"
            "loads: [3 N/m down from A to C]\nfind: [A]")

    assert [d.code for d in read_text(text).diagnostics if d.is_error] == ["read.spread_gap"]


@pytest.mark.parametrize("kind", ["knife edge", "rocker", "smooth floor", "rocker support", "roller support"])
def test_what_a_beam_rests_on_pushes_up_where_nothing_is_said(kind):
    values = found(f"units: m, kN\npoints: {{A: [0, 0], B: A right 4, M: A right 1}}\nmembers: {{beam: A M B}}\n"
                   f"supports: {{A: pin support, B: {kind}}}\nloads: [8 kN at M down]\nfind: [B]")

    assert values["B_y"] == pytest.approx(2)


BOOM = """units: m, kN
letters: {{P: {}}}
points: {{O: [0, 0], T: O up 6, B: O right 6 up 2, G: O left 5}}
links: [T-B, T-G]
members: {{mast: O T, boom: O B}}
supports: {{O: pin, G: pin}}
loads: [{} down]
{}
"""


@pytest.mark.parametrize(("load", "rest"), [("P at B", "find: [boom, T-B]"), ("P at B", "find: [O-B, T-B]")])
def test_the_force_in_a_boom_with_its_load_at_the_held_end_is_that_along_it(load, rest):
    # The triangle of forces is like the triangle of the figure: P : F = 6 : √40.
    text = BOOM.format("30 kN", load, rest)

    assert found(text)["F_OB"] == pytest.approx(30 * 40**0.5 / 6)
    assert ("load_on_pin", {"point": "B"}) in read_text(text).problem.assumed


def test_the_force_in_such_a_boom_may_be_given():
    assert found(BOOM.format("unknown", "P at B", "given: [boom 20 kN compression]\nfind: [P]"))["P_"] == pytest.approx(20 * 6 / 40**0.5)


def test_a_load_that_is_said_to_be_on_the_boom_stays_on_it():
    refused = read_text(BOOM.format("30 kN", "P at B on boom", "find: [boom]"))

    assert [d.code for d in refused.diagnostics if d.is_error] == ["read.ask_of_member"]


def test_a_weight_of_each_length_lies_on_a_bent_member_from_end_to_end():
    text = ("units: m, kN\npoints: {A: [0, 0], B: A right 4, C: B up 3}\nmembers: {bent: A B C, tie: C A}\nsupports: {A: pin, C: roller pushes right}\n"
            "loads: [weight of bent 2 kN/m, weight of tie 1 kN]\nfind: [A]")
    values = found(text)

    assert values["A_y"] == pytest.approx(2 * 7 + 1)
    assert values["A_x"] == pytest.approx((8 * 2 + 6 * 4 + 1 * 2) / 3)
    assert not any(code == "weights_neglected" and "bent" in arguments.get("parts", ("bent",)) for code, arguments in read_text(text).problem.assumed)


def test_a_member_whose_weight_is_to_be_found_is_not_called_weightless():
    text = ("letters: {Q: unknown}\npoints: {A: [0, 0], B: A right 2, C: A right 3}\nmembers: {plank: A B C}\nsupports: {A: knife edge, B: knife edge}\n"
            "loads: [weight of plank Q at A, 40 N at C down]\ngiven: [A just lifts]\nfind: [Q]")

    assert not any(code == "weights_neglected" for code, _ in read_text(text).problem.assumed)
