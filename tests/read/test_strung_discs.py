"""Discs, blocks, cords and loads to be found: what the phrases mean, and that the answers are those of the hand."""

import math
from fractions import Fraction as F

import pytest

from unpin.exact.number import approx, sqrt
from unpin.model.problem import GROUND, Asked
from unpin.model.strands import turns_of
from unpin.read import parse_sum, read_text
from unpin.route.work import work

CRANE = {
    "points": "{A: [0, 0], B: A right 2, C: A right 3, G: B down 2, W: A up 0.2, K: C right 0.2 down 1}",
    "members": "{arm: A B C}",
    "links": "[B-G]",
    "discs": "{pulley: 0.2 m at C}",
    "blocks": "{sack: at K}",
    "cords": "{T: W over pulley to sack}",
    "supports": "{A: pin, G: pin}",
    "loads": "[weight of sack 500 N]",
    "find": "[T, A, B-G]",
}


def read(**sections):
    whole = CRANE | sections
    return read_text("".join(f"{k}: {v}\n" for k, v in whole.items() if v))


def sound(**sections):
    reading = read(**sections)
    assert reading.diagnostics == ()
    return reading.problem


def answers(problem):
    worked = work(problem)
    assert worked.proof.passed
    return {c.symbol.base + c.symbol.sub: c.value for a in worked.answers for c in a.components}


def stops(**sections):
    return [(s.point, s.part, s.side, s.radius) for s in sound(**sections).cords[0].stops]


def test_a_disc_has_a_centre_and_radii_and_is_pinned_there():
    p = sound(discs="{pulley: 0.1 m and 300 mm at C}", cords="{T: W over pulley at 300 mm to sack}")

    assert (p.part("pulley").kind, p.part("pulley").points, p.part("pulley").radii) == ("disc", ("C",), (F(1, 10), F(3, 10)))
    assert ("pin", ("C",), ("arm", "pulley")) in [(c.kind, c.points, c.parts) for c in p.connections]


def test_a_welded_disc_is_fixed_to_its_member():
    assert ("fixed", ("arm", "pulley")) in [(c.kind, c.parts) for c in sound(pins="{C: welded}").connections]


def test_a_cord_goes_from_stop_to_stop():
    assert stops() == [("W", GROUND, "", None), ("C", "pulley", "over", F(1, 5)), ("K", "sack", "", None)]


@pytest.mark.parametrize(
    "said",
    ["W, over the pulley, to sack", "W over pulley at 0.2 m to K", "sack over pulley to W", "W over pulley then to sack"],
)
def test_the_same_cord_may_be_said_in_several_ways(said):
    assert answers(sound(cords=f"{{T: '{said}'}}")) == answers(sound())


def test_a_cord_over_a_pulley_gives_the_reactions_of_the_hand():
    # T = 500; arm and pulley: A_x = T; about A: 2 F = 500 * 3.2 - 500 * 0.2.
    found = answers(sound())

    assert (found["T"], found["Ax"], found["Ay"], found["FBG"]) == (500, 500, -250, -750)


def test_a_cord_may_leave_in_a_direction_without_an_end():
    p = sound(cords="{T: pulled at 30 deg below left over pulley to sack}", points=CRANE["points"].replace(", W: A up 0.2", ""))

    assert p.cords[0].stops[0].direction.written == "30 deg below left"
    assert answers(p)["Ax"] == 500 * sqrt(F(3)) / 2


def test_a_cord_goes_through_a_ring_with_one_tension():
    # A ring on a cord whose strands rise 3 in 4 on both sides: 2 T (3/5) = 60.
    p = sound(
        points="{A: [-4, 3], R: [0, 0], B: [4, 3]}",
        members="",
        links="",
        discs="",
        blocks="{ring: at R}",
        cords="{T: A through ring to B}",
        supports="",
        loads="[weight of ring 60 N]",
        find="[T]",
    )

    assert answers(p) == {"T": 50}


def test_a_load_on_the_end_of_a_cord_makes_a_knot_there():
    p = sound(blocks="", cords="{T: W over pulley to K}", loads="[mass 50 kg hangs at K]", gravity="10 m/s^2")

    assert (p.part("K").kind, p.cords[0].stops[-1].part, p.loads[0].part) == ("block", "K", "K")
    assert ("knot", {"point": "K"}) in p.assumed
    assert answers(p)["T"] == 500


def test_three_cords_that_end_at_one_point_of_nothing_are_a_knot_and_two_are_tied_to_the_ground():
    points = "{A: [-3, 4], B: [3, 4], R: [0, 0], K: [0, -2]}"
    structure = {"points": points, "members": "", "links": "", "discs": "", "supports": "", "loads": "[weight of sack 80 N]"}
    three = sound(**structure, cords="{S: A to R, T: B to R, U: R to sack}", find="[S, U]")
    # By hand: 2 S (4/5) = 80.
    assert [s.part for s in three.cords[0].stops] == [GROUND, "R"]
    assert answers(three) == {"S": 50, "U": 80}

    two = sound(**structure | {"points": "{A: [0, 1], K: [0, 0], B: [1, 0]}"}, cords="{S: A to sack, T: A to B}", find="[S]")
    assert [s.part for s in two.cords[1].stops] == [GROUND, GROUND]


def test_a_cord_winds_onto_a_drum_where_it_touches_it():
    # A winch: drum of 0.3 m on an axle, a bucket on its right, a couple that holds it: M = 0.3 * 100.
    p = sound(
        points="{C: [0, 0], K: [0.3, -2]}",
        members="",
        links="",
        discs="{drum: 0.3 m at C}",
        blocks="{bucket: at K}",
        cords="{T: bucket winds onto drum on its right}",
        supports="{C: pin}",
        letters="{M: unknown}",
        loads="[weight of bucket 100 N, M anticlockwise on drum]",
        find="[M, C]",
    )

    end = p.cords[0].stops[-1]
    assert (end.part, p.point(end.point).at, p.point(end.point).made) == ("drum", (F(3, 10), 0), GROUND)
    assert (answers(p)["M"], answers(p)["Cy"]) == (30, 100)


def test_a_tackle_of_discs_and_cords_alone_is_a_problem():
    # A movable pulley: 2 T = 600.
    p = sound(
        points="{W: [0, 5], M: [1, 0], E: [2, 5]}",
        members="",
        links="",
        discs="{pulley: 1 m at M}",
        blocks="",
        cords="{T: W under pulley to E}",
        supports="",
        loads="[600 N at M down]",
        find="[tension in T]",
    )

    assert answers(p) == {"T": 300}


def test_a_cord_may_end_at_a_support():
    p = sound(supports="{A: pin, G: pin, W: pin}", find="[W]")

    assert p.cords[0].stops[0].part == ""
    assert answers(p)["Wx"] == -500


def test_all_cords_and_a_cord_by_its_end_may_be_asked():
    assert [a.subject for a in sound(find="[all cords]").asked] == ["T"]
    assert sound(find="[W]").asked == (Asked("link", subject="T", written="W"),)


def test_a_sum_may_be_taken_on_discs_and_blocks():
    p = sound(route="[moments about C on arm and pulley, forces along y on sack]")

    assert [w.parts for w in p.wanted_route] == [("arm", "pulley"), ("sack",)]
    assert parse_sum("moments about C on pulley", p).parts == ("pulley",)


def test_a_load_to_be_found_is_a_letter_and_how_many_times_it_acts():
    # Law of the lever: 2 P + 2 P (1) = 2 * 100.
    p = sound(
        letters="{P: unknown}",
        points="{A: [0, 0], D: [1, 0], B: [2, 0], C: [4, 0]}",
        members="{lever: A D B C}",
        links="",
        discs="",
        blocks="",
        cords="",
        supports="{B: pin}",
        loads="[P at A down, 2P at D down, 100 N at C down]",
        find="[P]",
    )

    assert [(one.name, one.magnitude, one.multiple) for one in p.loads[:2]] == [("P", None, 1), ("P", None, 2)]
    assert (p.asked[0].kind, p.asked[0].subject) == ("load", "P")
    assert answers(p) == {"P": 50}


@pytest.mark.parametrize(
    ("said", "times"), [("P/2", F(1, 2)), ("1/2 P", F(1, 2)), ("P + 2P", 3), ("3*P/4", F(3, 4)), ("sqrt(4) P", 2)]
)
def test_the_multiple_may_be_any_number(said, times):
    (one,) = sound(letters="{P: unknown}", loads=f"['{said} at K down']", find="[P]").loads
    assert one.multiple == times


def test_a_weight_may_be_what_is_to_be_found():
    p = sound(letters="{P: unknown}", loads="[weight of sack P, 30 N at B down]", find="[P]")
    assert (p.loads[0].kind, p.loads[0].part, p.loads[0].magnitude) == ("force", "sack", None)


def test_a_cord_leaves_its_end_along_the_tangent():
    found = answers(sound(points=CRANE["points"].replace("W: A up 0.2", "W: A up 1"), find="[A]"))

    # By angles: the line to the centre falls by atan(1/3), and the tangent above it rises from that by asin(r/√10).
    angle = math.asin(0.2 / math.sqrt(10)) - math.atan(1 / 3)
    assert math.isclose(approx(found["Ax"]), 500 * math.cos(angle))


# Equal drums one above the other: an open strand is upright; a crossed one leaves the upright by asin(2 r / distance).
CROSSED = math.sqrt(1 - (2 / 20) ** 2)


@pytest.mark.parametrize(
    ("first", "second", "across"),
    [
        ("right", "right", (1, 1)),
        ("left", "left", (-1, -1)),
        ("left", "right", (-CROSSED, CROSSED)),
        ("right", "left", (CROSSED, -CROSSED)),
    ],
)
def test_a_cord_may_go_from_drum_to_drum(first, second, across):
    p = sound(
        points="{A: [0, 0], C: [0, 20]}",
        members="",
        links="",
        blocks="",
        discs="{one: 1 at A, other: 1 at C}",
        cords=f"{{T: winds off one on its {first} winds onto other on its {second}}}",
        supports="{A: pin, C: pin}",
        letters="{M: unknown}",
        loads="[M clockwise on one, 5 N m clockwise on other]",
        find="[T]",
    )

    assert [approx(p.point(s.point).at[0]) for s in p.cords[0].stops] == pytest.approx(across)


LUFF = {
    "points": "{M: [0, 0], S: M down 0.3, B: M up 0.15, F: [-0.05, 1.5]}",
    "members": "{hook: B M S}",
    "discs": "{lower: 0.1 at M, upper: 0.05 at F}",
    "supports": "{F: pin}",
}
GUN = {
    "points": "{F: [0, 3], B: F down 0.3, M: [-0.1, 1], S: M down 0.3}",
    "members": "{block: F B, hook: M S}",
    "discs": "{upper: 0.2 at F, lower: 0.1 at M}",
    "supports": "{F: pin}",
}
TACKLE = {"links": "", "blocks": "", "loads": "[600 N at S down]", "find": "[T]"}


@pytest.mark.parametrize(
    ("tackle", "cord", "parts"),
    [(LUFF, "B over upper under lower pulled up", 3), (GUN, "B under lower over upper pulled down", 2)],
)
def test_a_tackle_is_passed_so_that_its_cord_does_not_cross_itself(tackle, cord, parts):
    problem = sound(**TACKLE | tackle, cords=f"{{T: {cord}}}")

    assert answers(problem)["T"] == F(600, parts)


def test_a_cord_that_crosses_itself_gets_a_warning():
    reading = read(**TACKLE | LUFF, cords="{T: B right of upper under lower pulled up}")

    assert [(d.severity, d.code) for d in reading.diagnostics] == [("warning", "read.cord_crosses")]
    assert read(**TACKLE | LUFF, cords="{T: B left of upper under lower pulled up}").diagnostics == ()


def test_the_side_that_a_hint_names_takes_the_cord_round_as_it_says():
    above = {"points": "{A: [0, 0], C: [3, 0], W: [3, 4], K: [3, -2]}", "members": "{arm: A C}", "links": "", "supports": "{A: fixed}"}
    hint = read(**above).diagnostics[0].arguments
    where = {"C": (F(3), F(0)), "W": (F(3), F(4)), "K": (F(3), F(-2))}

    for way, sense in (("anticlockwise", 1), ("clockwise", -1)):
        cord = sound(**above, cords=f"{{T: W {hint[way]} pulley to sack}}", find="[A]").cords[0]
        assert turns_of(where, cord)[1] == sense * F(1, 5)


HOIST = """points: {O: [0, 0], L: [0.015, -1]}
discs: {top: 0.12 m and 0.15 m at O, lower: 0.135 m at L}
cords:
  U: winds off top on its right at 0.15 m under lower winds onto top on its left at 0.12 m
  S: SAID
supports: {O: pin}
loads: [1000 N at L down]
find: [U, S, O]
"""


@pytest.mark.parametrize("said", ["winds off top on its left at 0.15 m pulled down", "belt from left of top at 0.15 m pulled down"])
def test_a_differential_pulley_is_said_in_two_cords(said):
    reading = read_text(HOIST.replace("SAID", said))
    assert reading.diagnostics == ()
    found = answers(reading.problem)
    # The pull is W (R - r) / 2R, the rule of the differential pulley (from memory); the cord under the load carries half.
    assert (found["S"], found["U"], found["Oy"]) == (100, 500, 1100)


def test_a_support_where_members_are_welded_holds_the_one_rigid_part():
    whole = sound(
        points="{O: [0, 0], H: [0.4, 0], K: O left 0.12 down 1}",
        members="{crank: O H}",
        links=None,
        discs="{drum: 0.12 m at O}",
        pins="{O: welded}",
        blocks="{bucket: at K}",
        cords="{T: bucket winds onto drum on its left}",
        supports="{O: pin}",
        letters="{P: unknown}",
        loads="[weight of bucket 900 N, P at H down]",
        find="[P, O]",
    )
    # By hand, moments about O: P 0.4 = 900 . 0.12.
    assert answers(whole)["P"] == 270


def test_a_letter_that_is_to_be_found_may_be_that_of_a_cord():
    reading = read(letters="{T: unknown}")

    assert not reading.diagnostics
    assert [a.kind for a in reading.problem.asked][:1] == [a.kind for a in read().problem.asked][:1]


TABLE = """points: {E: [0, 0], B: [1, 2], G: E right 2, C: B right 2, P: B right 1}
members: {leg: E B, table: B C P}
blocks: {wheel: at C}
links: [LINK, C-G on wheel]
contacts: {B: leg pushes table up, C: wheel pushes table up}
supports: {E: pin, G: pin}
loads: [10 N at P down]
find: [C-G]
"""


def test_a_link_may_say_at_each_end_on_which_of_several_members_it_is():
    def ends(link):
        return {c.name: c.parts for c in read_text(TABLE.replace("LINK", link)).problem.connections if c.kind == "link"}

    assert ends("B on leg - C on wheel") == {"BC": ("leg", "wheel"), "CG": ("wheel", "")}
    assert ends("E-C on wheel")["EC"] == ("leg", "wheel")
    assert ends("B-G on leg")["BG"] == ("leg", "")


def test_a_link_on_a_member_that_passes_neither_end_is_told():
    found = read_text(TABLE.replace("LINK", "B-G on wheel")).diagnostics

    assert [d.code for d in found] == ["read.not_on_member"]


DRUM = """points: {O: [0, 0], P: 0.12 from O at 30 deg, Q: P right 0.15 up 0.02, K: O left 0.09 down 0.3}
discs: {drum: 0.09 and 0.12 at O}
LINKS
cords: {T: K winds onto drum on its left at 0.09}
supports: {O: pin SUPPORTS}
loads: [90 N at K down LOADS]
find: [O]
"""


def test_a_pawl_on_the_rim_of_a_drum_is_a_link_to_it():
    """Moments about O: 90 N times 0.09 m is the force times the distance of its line from O."""
    text = DRUM.replace("LINKS", "links: [P-Q]").replace("SUPPORTS", ", Q: pin").replace("LOADS", "").replace("[O]", "[P-Q]")
    reading = read_text(text)
    px, py = 0.12 * math.cos(math.pi / 6), 0.12 * math.sin(math.pi / 6)
    run = math.hypot(0.15, 0.02)
    arm = (0.15 * py - 0.02 * px) / run

    assert not reading.diagnostics
    assert float(approx(work(reading.problem).answers[0].components[0].value)) == pytest.approx(90 * 0.09 / arm)


def test_a_load_acts_at_the_rim_of_a_disc_and_on_the_disc_at_any_point_of_it():
    rim = DRUM.replace("LINKS", "letters: {F: unknown}").replace("SUPPORTS", "").replace("[O]", "[F]").replace("Q: P right 0.15 up 0.02", "Q: O right 0.1")
    at_rim, inside, unsaid = (read_text(rim.replace("LOADS", f", F at {where} down").replace(", Q: O right 0.1" if where == "P" else ", P: 0.12 from O at 30 deg", ""))
                              for where in ("P", "Q on drum", "Q"))

    assert float(approx(work(at_rim.problem).answers[0].components[0].value)) == pytest.approx(90 * 0.09 / (0.12 * math.cos(math.pi / 6)))
    assert float(approx(work(inside.problem).answers[0].components[0].value)) == pytest.approx(81)
    assert [d.code for d in unsaid.diagnostics if d.is_error] == ["read.load_on_nothing"]
