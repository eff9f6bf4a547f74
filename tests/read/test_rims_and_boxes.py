"""Wheels that touch, and blocks with corners: places and pushes follow from the figure."""

import math

import pytest

from unpin.exact.number import approx
from unpin.read import read_text
from unpin.route.work import work


def solved(text):
    reading = read_text(text)
    assert reading.sound, [d.code for d in reading.diagnostics]
    worked = work(reading.problem)
    assert worked.proof.passed
    return {c.symbol.base + c.symbol.sub: approx(c.value) for a in worked.answers for c in a.components}


def faults(text):
    return [d.code for d in read_text(text).diagnostics if d.is_error]


PIPES = """
points: {{C: [0, 0], D: 0.5 from C at {angle} deg}}
discs: {{lower: 0.25 m at C, upper: 0.25 m at D}}
contacts: {{F: ground pushes lower up, W: ground pushes lower right, K: lower pushes upper, V: ground pushes upper left}}
loads: [weight of lower 400 N, weight of upper 400 N]
find: [F, W, V, K on upper]
"""


@pytest.mark.parametrize("angle", [20, 35, 60])
def test_two_pipes_between_walls_push_along_the_line_of_their_centres(angle):
    # By hand: N sin = 400, the walls take N cos, the floor both weights.
    found = solved(PIPES.format(angle=angle))
    push = 400 / math.sin(math.radians(angle))

    assert found["Fy"] == 800
    assert found["RK"] == pytest.approx(push)
    assert found["Wx"] == pytest.approx(push * math.cos(math.radians(angle)))
    assert abs(found["Vx"]) == pytest.approx(found["Wx"])


def test_a_roller_comes_over_a_kerb_when_its_foot_just_lifts():
    # By hand, moments about the edge: P (r - h) = W sqrt(r² - (r - h)²), with r = 0.25 m, h = 0.1 m: P = 500 (0.2 / 0.15).
    found = solved("points: {C: [0, 0.25], E: [0.2, 0.1]}\nletters: {P: unknown}\ndiscs: {roller: 0.25 m at C}\n"
                   "contacts: {E: ground pushes roller, F: ground pushes roller up}\n"
                   "loads: [weight of roller 500 N, P at C right]\ngiven: [F just lifts]\nfind: [P, E]")

    assert found["P"] == pytest.approx(500 * 0.2 / 0.15)
    assert found["RE"] == pytest.approx(math.hypot(500, found["P"]))


def test_a_wheel_on_a_member_is_pushed_square_to_it_and_the_other_way_round_alike():
    text = ("points: {{A: [0, 0], B: [2, 0], C: [0.6, 0.3], N: [2, -1]}}\nmembers: {{board: A B}}\nlinks: [B-N]\n"
            "discs: {{drum: 0.3 m at C}}\ncontacts: {{K: {}}}\nsupports: {{A: pin, N: pin}}\nloads: [weight of drum 300 N]\nfind: [B-N, {}]")

    one, two = solved(text.format("board pushes drum", "K on drum")), solved(text.format("drum pushes board", "K on board"))

    assert one["FBN"] == two["FBN"] == pytest.approx(-90)
    assert one["Ky"] == two["Ky"] == pytest.approx(300)


@pytest.mark.parametrize("contact, code", [
    ("K: small pushes small", "read.touch_itself"),
    ("K: small pushes far", "read.rim_gap"),
    ("K: board pushes far", "read.rim_gap"),
    ("K: ground pushes small", "read.ground_way"),
    ("K: ground pushes board up", "read.ground_rim"),
    ("E: ground pushes small", "read.rim_gap"),
    ("E: ground pushes small up", "read.rim_point"),
    ("board: ground pushes small up", "read.name_taken"),
])
def test_a_slip_at_a_rim_is_told(contact, code):
    text = ("points: {A: [0, 0], B: [2, 0], C: [0.6, 0.3], D: [5, 5], E: [0.6, 1]}\nmembers: {board: A B}\n"
            f"discs: {{small: 0.3 m at C, far: 0.3 m at D}}\ncontacts: {{{contact}}}\nsupports: {{A: fixed}}\nloads: [9 N at B down]\nfind: [A]")

    assert faults(text) == [code]


CUPBOARD = ("points: {{A: [0, 0], B: A right 0.6, C: B up 1.8, D: A up 1.8, K: A up 1.2, S: B up 0.3}}\nletters: {{P: {load}}}\n"
            "blocks: {{cupboard: A B C D}}\n"
            "supports: {{A: smooth floor pushes up, B: smooth floor pushes up, S: smooth wall pushes left}}\n"
            "loads: [weight of cupboard 300 N, P at K right]\n{given}\nfind: [{find}]")


def test_a_block_with_corners_weighs_at_its_middle_and_tips_about_its_edge():
    # By hand, moments about B: P (1.2 - 0.3) = 300 (0.3) when A just lifts, since the wall takes P at 0.3 m.
    tips = solved(CUPBOARD.format(load="unknown", given="given: [A just lifts]", find="P, B"))
    stands = solved(CUPBOARD.format(load="40 N", given="", find="A, B, S"))

    assert tips == {"P": pytest.approx(100), "By": 300}
    assert {k: abs(v) for k, v in stands.items()} == {"Ay": pytest.approx(90), "By": pytest.approx(210), "Sx": 40}


def test_a_block_that_is_pushed_too_hard_tips():
    worked = work(read_text(CUPBOARD.format(load="120 N", given="", find="A, B")).problem)

    assert [o.connection.name for o in worked.opened] == ["A"]
    assert not worked.soundness.holds


@pytest.mark.parametrize("corners", ["A C B D", "A B B C", "A K D C"])
def test_corners_that_do_not_go_round_are_told(corners):
    assert "read.box_corners" in faults(CUPBOARD.format(load="3 N", given="", find="A").replace("cupboard: A B C D", f"cupboard: {corners}"))


def test_teeth_of_gears_push_in_the_direction_that_is_given():
    # By hand: the tangential part of the push times each radius; it leans 20° from the common tangent (common practice, no source).
    found = solved("units: mm, N\npoints: {A: [0, 0], B: A right 150}\ndiscs: {small: 50 mm at A, large: 100 mm at B}\n"
                   "contacts: {K: small pushes large at 20 deg right of down}\nletters: {M: unknown}\nsupports: {A: pin, B: pin}\n"
                   "loads: [10 N m clockwise on small, M clockwise on large]\nfind: [M, K on large]")

    assert found["M"] == pytest.approx(20)
    assert found["RK"] == pytest.approx(200 / math.cos(math.radians(20)))


def test_a_kerb_right_below_the_centre_takes_the_whole_weight():
    found = solved("points: {C: [0, 0.25], E: [0, 0]}\ndiscs: {roller: 0.25 m at C}\ncontacts: {E: ground pushes roller}\n"
                   "loads: [mass of roller 10 kg]\nfind: [E]")

    assert found == {"Ey": pytest.approx(98.1)}
