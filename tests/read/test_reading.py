"""What a file means: points, members, connections, loads, questions and sums."""

from fractions import Fraction as F
from pathlib import Path

import pytest

from unpin.base.units import BY_SPELLING, FORCE, LENGTH, MOMENT
from unpin.exact.number import cos_deg, sin_deg, sqrt
from unpin.model.problem import GROUND, Asked
from unpin.model.values import WantedSum
from unpin.read import parse_sum, read_text

ROOT = Path(__file__).parents[2]
POINTS = "{O: [0, 0], A: [0, 3], C: [0, 2.4], B: [0, 1.2], D: C right 1.6, E: C right 2.4}"


def frame(**sections: str):
    """A post and an arm with a stay; sections replaced by the arguments."""
    whole = {
        "points": POINTS,
        "members": "{post: A C B O, arm: C D E}",
        "links": "[B-D]",
        "supports": "{A: pin, O: roller pushes right}",
        "loads": "[300 N at E right 3 down 4]",
        "find": "[O, B-D, C on arm]",
    } | sections
    return read_text("".join(f"{k}: {v}\n" for k, v in whole.items() if v))


def sound(**sections: str):
    reading = frame(**sections)
    assert not [d for d in reading.diagnostics if d.is_error], reading.diagnostics
    return reading.problem


def load(phrase: str, **sections: str):
    (found,) = sound(loads=f"['{phrase}']", **sections).loads
    return found


def test_parts_connections_loads_and_questions_stand_in_the_order_of_the_file():
    p = sound()
    assert [(x.name, x.points) for x in p.parts] == [("post", ("A", "C", "B", "O")), ("arm", ("C", "D", "E"))]
    assert [(c.name, c.kind, c.points, c.parts) for c in p.connections] == [
        ("C", "pin", ("C",), ("post", "arm")),
        ("BD", "link", ("B", "D"), ("post", "arm")),
        ("A", "pin", ("A",), ("post", GROUND)),
        ("O", "roller", ("O",), ("post", GROUND)),
    ]
    assert p.loads[0].magnitude.value == 300 and p.loads[0].direction.legs == (3, -4) and p.loads[0].part == "arm"
    assert [(a.kind, a.subject, a.part) for a in p.asked] == [("reaction", "O", ""), ("link", "BD", ""), ("pin", "C", "arm")]


@pytest.mark.parametrize(
    ("said", "at"),
    [
        ("C right 1.6 down 0.4", (F(8, 5), 2)),
        ("C left 200 mm", (F(-1, 5), F(12, 5))),
        ("2 from C at 30 deg", (sqrt(F(3)), F(17, 5))),
        ("1 from O at 90 deg", (0, 1)),
        ("2 from C at 30 deg below left", (-sqrt(F(3)), F(7, 5))),
        ("1 from O at 20 deg left of up", (-sin_deg(F(20)), cos_deg(F(20)))),
        ("5 from O at slope right 3 up 4", (3, 4)),
        ("5 from O right 3 up 4", (3, 4)),
        ("1 from O towards A", (0, 1)),
        ("midpoint of O A", (0, F(3, 2))),
        ("1/3 of O A", (0, 1)),
        ("[a, 2a + 0.5 m]", (2, F(9, 2))),
        ("where line O A meets line from F right 1 up 1", (0, -4)),
        ("where line from O along up meets line F C", (0, F(12, 5))),
        ("on F C at y = 1.2", (2, F(6, 5))),
        ("[sqrt(2)*1 m, 1/3]", (sqrt(F(2)), F(1, 3))),
    ],
)
def test_a_point_is_where_its_construction_says(said, at):
    reading = read_text(f"letters: {{a: 2 m}}\npoints:\n  O: [0, 0]\n  A: [0, 3]\n  C: [0, 2.4]\n  F: [4, 0]\n  X: {said}\n")
    assert not [d for d in reading.diagnostics if d.path.startswith("points") and d.is_error]
    assert reading.problem.point("X").at == at
    assert reading.problem.point("X").made == ("" if said.startswith("[") else said)


@pytest.mark.parametrize(
    ("said", "vector", "form"),
    [
        ("down", (0, -1), "axis"),
        ("right 3 down 4", (3, -4), "slope"),
        ("down 4 right 3", (3, -4), "slope"),
        ("at slope left 1 up 2", (-1, 2), "slope"),
        ("at 40 deg", (cos_deg(F(40)), sin_deg(F(40))), "angle"),
        ("at 40 deg below left", (-cos_deg(F(40)), -sin_deg(F(40))), "angle"),
        ("at 270 deg", (0, -1), "axis"),
        ("at 40 deg right of down", (sin_deg(F(40)), -cos_deg(F(40))), "angle"),
        ("at phi", (cos_deg(F(25)), sin_deg(F(25))), "angle"),
        ("towards B", (F(-12, 5), F(-6, 5)), "line"),
        ("along arm", (1, 0), "axis"),
        ("along arm left", (-1, 0), "axis"),
        ("along D B", (F(-8, 5), F(-6, 5)), "line"),
        ("along BD", (F(8, 5), F(6, 5)), "line"),
        ("square to arm, down", (0, -1), "axis"),
        ("square to B D, up", (F(-6, 5), F(8, 5)), "square"),
        ("square to BD right", (F(6, 5), F(-8, 5)), "square"),
    ],
)
def test_a_direction_is_kept_as_it_was_said(said, vector, form):
    found = load(f"10 N at E {said}", letters="{phi: 25 deg}").direction
    assert (found.vector, found.form) == (vector, form)
    assert found.length**2 == vector[0] ** 2 + vector[1] ** 2


def test_an_angle_keeps_its_base_and_the_way_it_turns():
    found = load("10 N at E at 40 deg right of down").direction
    assert (found.angle, found.base, found.turn) == (40, (0, -1), (1, 0))


@pytest.mark.parametrize(
    ("said", "vector"),
    [
        ("roller", (0, 1)),
        ("roller pushes left", (-1, 0)),
        ("roller on slope right 4 up 3", (-3, 4)),
        ("roller on slope left 4 up 3", (3, 4)),
        ("roller on slope right 1 down 1", (1, 1)),
        ("contact on slope right 4 up 3", (-3, 4)),
        ("guide along right", (0, 1)),
        ("guide along up", (1, 0)),
        ("guide along B D", (F(-6, 5), F(8, 5))),
    ],
)
def test_a_support_pushes_square_to_its_surface_on_the_upper_side(said, vector):
    found = sound(supports=f"{{A: fixed, O: {said}}}").connections[-1]
    # A slide straight up has no upper side; to the right is taken.
    assert found.direction.vector == vector


def test_where_several_members_meet_a_link_or_support_acts_on_the_pin():
    p = read_text(
        "points: {A: [0, 0], B: [1, 0], C: [2, 0], D: [1, -1]}\n"
        "members: [A B, B C]\n"
        "links: [B-D]\n"
        "supports: {D: pin, A: pin, B: roller, C: fixed on BC}\n"
        "find: [A]\n"
    ).problem
    assert {(c.name, c.parts) for c in p.connections} == {
        ("B", ("AB", "BC")),
        ("BD", ("", "")),
        ("D", ("", GROUND)),
        ("A", ("AB", GROUND)),
        ("B", ("", GROUND)),
        ("C", ("BC", GROUND)),
    }


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("not joined", []),
        ("pinned", [("pin", ("post", "arm", "tie"))]),
        ("tie not joined", [("pin", ("post", "arm"))]),
        ("arm welded to post", [("pin", ("arm", "tie")), ("fixed", ("arm", "post"))]),
        ("welded", [("fixed", ("post", "arm")), ("fixed", ("post", "tie"))]),
    ],
)
def test_pins_can_be_welded_or_left_out(said, expected):
    p = read_text(
        f"points: {POINTS}\n"
        f"members: {{post: A C B O, arm: C D E, tie: C B}}\n"
        f"links: [B-D]\n"
        f"pins: {{C: {said}, B: not joined}}\n"
        f"find: [A]\n"
    ).problem
    assert [(c.kind, c.parts) for c in p.connections if c.name == "C"] == expected


def test_a_member_of_several_strokes_passes_all_their_points_and_no_other_lines():
    p = read_text(
        "points: {A: [0, 0], B: [1, 0], C: [2, 0], D: [1, 1]}\nmembers:\n  tee: A B C, B D\nsupports: {A: fixed}\nfind: [A]\n"
    ).problem
    chain = p.part("tee").points
    assert {frozenset(run) for run in zip(chain, chain[1:])} == {frozenset("AB"), frozenset("BC"), frozenset("BD")}


def test_strokes_come_in_any_order_and_join_at_any_of_their_points():
    p = read_text(
        "points: {A: [0, 0], B: [2, 0], C: [1, 0], D: [1, 1], E: [1, 2]}\n"
        'members: {tee: "A C, E D, B C, D C"}\nsupports: {A: fixed}\nloads: [1 N at E down]\nfind: [A]\n'
    ).problem
    chain = p.part("tee").points
    assert {frozenset(run) for run in zip(chain, chain[1:])} == {frozenset("AC"), frozenset("BC"), frozenset("CD"), frozenset("DE")}


@pytest.mark.parametrize(
    ("said", "value", "unit", "name"),
    [
        ("2 kN at E down", 2000, "kN", ""),
        ("P at E down", 250, "N", "P"),
        ("2P at E down", 500, "", ""),
        ("Q = 3 at E down", 3, "N", "Q"),
        ("(30 right, 40 down) kN at E", 50000, "kN", ""),
        ("(30 N right, 40 N down) at E", 50, "N", ""),
        ("10 lb at E down", 10 * BY_SPELLING["lb"].factor, "lb", ""),
    ],
)
def test_a_force_has_its_size_in_newtons_and_the_unit_it_was_given_in(said, value, unit, name):
    found = load(said, letters="{P: 250 N}")
    assert (found.kind, found.magnitude.value, found.magnitude.unit, found.name, found.magnitude.dimension) == (
        "force",
        value,
        unit,
        name,
        FORCE,
    )


def test_a_load_at_a_shared_point_is_on_the_pin_unless_the_file_says_on_which_member():
    assert load("2 kN at C down").part == ""
    assert load("2 kN at C on arm down").part == "arm"
    assert ("load_on_pin", {"point": "C"}) in sound(loads="[2 kN at C down]").assumed


@pytest.mark.parametrize(
    ("said", "value"),
    [
        ("1.5 kN m anticlockwise on arm", 1500),
        ("1.5 kN*m clockwise on arm at D", -1500),
        ("200 N·mm clockwise at E", F(-1, 5)),
        ("40 clockwise on arm", -40),
    ],
)
def test_a_couple_is_positive_anticlockwise(said, value):
    found = load(said)
    assert (found.kind, found.part, found.magnitude.value, found.magnitude.dimension) == ("couple", "arm", value, MOMENT)


def stretches(one) -> list[tuple]:
    return [(s.start_name, s.end_name, s.start_intensity.value, s.end_intensity.value, s.per) for s in one.stretches]


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        ("4 kN/m down on arm from D to E", [("D", "E", 4000, 4000, "member")]),
        ("4 kN/m down on arm from E to D", [("E", "D", 4000, 4000, "member")]),
        ("0 to 3 kN/m down on arm", [("C", "E", 0, 3000, "member")]),
        ("6 to 3 kN/m down from C to E", [("C", "E", 6000, 3000, "member")]),
        ("2 right on post per vertical length", [("A", "O", 2, 2, "y")]),
    ],
)
def test_a_spread_load_is_split_at_bends_alone_and_varies_evenly(said, expected):
    assert stretches(load(said)) == expected


def test_a_spread_load_is_one_stretch_where_nothing_is_pinned():
    p = read_text(
        "points: {A: [0, 0], B: [1, 0], C: [2, 0], D: [2, 1]}\n"
        "members: {beam: A B C D}\n"
        "supports: {A: pin, B: roller}\n"
        "loads: [3 N/m down on beam]\n"
        "find: [A]\n"
    ).problem
    assert stretches(p.loads[0]) == [("A", "C", 3, 3, "member"), ("C", "D", 3, 3, "member")]


def test_a_spread_load_over_members_in_line_is_one_load_a_member():
    text = (
        "points: {A: [0, 0], B: [1, 0], C: [3, 0]}\n"
        "members: [C B, A B]\n"
        "supports: {A: fixed, C: roller}\n"
        "loads: [0 to 3 kN/m down from A to C]\n"
        "find: [A]\n"
    )
    loads = read_text(text).problem.loads
    assert [(one.part, stretches(one)) for one in loads] == [
        ("AB", [("A", "B", 0, 1000, "member")]),
        ("CB", [("B", "C", 1000, 3000, "member")]),
    ]


def test_a_weight_acts_down_at_the_given_point_or_in_the_middle():
    given, middle, hanging = (
        load(said, gravity="10 m/s^2") for said in ("weight of arm 20 kg at D", "weight of arm 200 N", "mass 5 kg hangs at E")
    )
    assert (given.kind, given.point, given.part, given.magnitude.value, given.mass.value) == ("weight", "D", "arm", 200, 20)
    assert (middle.point, middle.magnitude.value, middle.mass) == ("G", 200, None)
    assert (hanging.point, hanging.part, hanging.magnitude.value) == ("E", "arm", 50)
    assert sound(loads="[weight of arm 200 N]").point("G").at == (F(6, 5), F(12, 5))


def test_without_gravity_that_of_the_unit_system_is_assumed():
    assert sound(loads="[mass 2 kg hangs at E]").loads[0].magnitude.value == F(981, 50)
    us = sound(loads="[mass 2 slug hangs at E]", units="ft, lb")
    assert us.loads[0].magnitude.value == F(644, 10) * BY_SPELLING["lb"].factor
    assert ("gravity", {"value": "32.2 ft/s²"}) in us.assumed
    assert sound().gravity is None


@pytest.mark.parametrize(
    ("said", "units"),
    [
        ("m, kN", {"length": "m", "force": "kN", "moment": "kN·m", "spread": "kN/m"}),
        ("mm, N", {"length": "mm", "force": "N", "moment": "N·mm", "spread": "N/mm"}),
        ("ft, lb", {"length": "ft", "force": "lb", "moment": "lb·ft", "spread": "lb/ft"}),
        ("kip, in", {"length": "in", "force": "kip", "moment": "kip·in", "spread": "lb/ft"}),
        ("mm, N, N m", {"length": "mm", "force": "N", "moment": "N·m", "spread": "N/mm"}),
        ("kN", {"length": "m", "force": "kN", "moment": "kN·m", "spread": "kN/m"}),
    ],
)
def test_units_follow_from_those_named(said, units):
    shown = sound(units=said).units
    assert {k: shown[k] for k in units} == units


def test_a_bare_letter_gets_the_unit_its_use_gives_it():
    p = sound(
        units="mm, kN",
        letters="{P: 2, a: 300, b: 2a}",
        points="{O: [0, 0], A: [0, 3], C: [0, 2.4], B: [0, 1.2], D: C right 1.6, E: [a, b]}",
        members="{post: A C B O, arm: C D E}",
        loads="[P at E down]",
    )
    assert [(x.name, x.value.value, x.value.unit) for x in p.letters] == [
        ("P", 2000, "kN"),
        ("a", F(3, 10), "mm"),
        ("b", F(6, 10), "mm"),
    ]
    assert p.point("E").at == (F(3, 10), F(6, 10))
    assert p.letters[1].value.dimension == LENGTH


@pytest.mark.parametrize(
    ("said", "asked"),
    [
        ("O", Asked("reaction", "O", "O")),
        ("O x", Asked("reaction", "O", "O", component="x")),
        ("reaction at O", Asked("reaction", "O", "O")),
        ("BD", Asked("link", "BD")),
        ("force in B-D", Asked("link", "BD")),
        ("D-B", Asked("link", "BD")),
        ("C on arm", Asked("pin", "C", "C", "arm")),
        ("C", Asked("pin", "C", "C", "post")),
        ("C on arm y", Asked("pin", "C", "C", "arm", "y")),
        ("everything", Asked("everything")),
        ("D on arm", Asked("link", "BD")),
        ("A on post", Asked("reaction", "A", "A")),
    ],
)
def test_what_is_asked_is_a_reaction_a_link_or_a_pin(said, asked):
    (found,) = sound(find=f"[{said}]").asked
    assert (found.kind, found.subject, found.point, found.part, found.component) == (
        asked.kind,
        asked.subject,
        asked.point,
        asked.part,
        asked.component,
    )
    assert found.written == said


def test_asking_nothing_asks_everything():
    reading = frame(find="")
    assert [a.kind for a in reading.problem.asked] == ["everything"]
    assert reading.sound


def test_a_sum_names_its_bodies_and_one_functional():
    p = sound()
    moments = parse_sum("moments about A on arm and the post", p)
    assert (moments.parts, moments.about, moments.along) == (("arm", "post"), "A", None)
    forces = parse_sum("forces along right 3 down 4 on pin C", p)
    assert (forces.parts, forces.about, forces.along.vector) == (("pin C",), None, (3, -4))
    assert parse_sum("moments about (1, 2 m) on whole", p).about == (1, 2)
    assert parse_sum("forces along x on the whole", p).along.vector == (1, 0)
    assert parse_sum("forces square to BD, up on arm", p).along.vector == (F(-6, 5), F(8, 5))
    assert sound(route="[moments about A on arm]").wanted_route == (
        WantedSum(("arm",), about="A", written="moments about A on arm"),
    )


@pytest.mark.parametrize("said", ["pins O, B and C", "the pins O, B, and C", "joints O and B and pin C", "pin O, pin B and pin C"])
def test_a_sum_may_be_taken_on_several_pins_in_a_row(said):
    assert parse_sum(f"moments about A on {said}", sound()).parts == ("pin O", "pin B", "pin C")


def test_a_member_may_stand_among_the_pins():
    assert parse_sum("forces along x on pins B and arm", sound()).parts == ("pin B", "arm")


def test_a_sum_that_makes_no_sense_gets_remarks():
    (remark,) = parse_sum("moments about Z on arm", sound())
    assert (remark.code, remark.place.column) == ("read.unknown_point", 15)


def test_what_was_not_given_is_noted_as_assumed():
    assert [code for code, _ in sound().assumed] == [
        "units",
        "pin_smooth",
        "members_rigid",
        "weights_neglected",
        "roller_both_ways",
    ]
    assert "units" not in [code for code, _ in sound(units="m, N").assumed]
    assert ("weights_neglected", {"parts": ("post",)}) in sound(loads="[weight of arm 5 N]").assumed


# Less typing.


ROW = "points:\n  A: [0, 0]\n  {row}\n"


@pytest.mark.parametrize(
    ("row", "places"),
    [
        ("C E G: every 4 right from A", {"C": (4, 0), "E": (8, 0), "G": (12, 0)}),
        ("C, E: every 5 left 3 up 4 from A", {"C": (-3, 4), "E": (-6, 8)}),
        ("C E: every 500 mm at 90 deg from A", {"C": (0, F(1, 2)), "E": (0, 1)}),
        ("E: every 2 up from A", {"E": (0, 2)}),
    ],
)
def test_a_row_of_points_goes_on_step_by_step(row, places):
    reading = read_text(ROW.format(row=row))
    assert not [d for d in reading.diagnostics if d.is_error and d.path.startswith("points")]
    assert {n: reading.problem.point(n).at for n in places} == places
    assert {reading.problem.point(n).made for n in places} == {row.split(": ")[1]}


def test_a_row_of_points_parts_a_line_in_equal_steps():
    p = read_text("points: {A: [0, 0], D: [3, 6], B C: evenly from A to D, X Y: evenly from D to A}\n").problem
    assert [p.point(n).at for n in "BCXY"] == [(1, 2), (2, 4), (2, 4), (1, 2)]


def test_each_point_of_a_row_stands_where_its_name_does():
    p = read_text("points:\n  A: [0, 0]\n  B  C: every 1 up from A\n").problem
    assert [(p.point(n).place.line, p.point(n).place.column, p.point(n).place.end_column) for n in "BC"] == [
        (3, 3, 4),
        (3, 6, 7),
    ]


@pytest.mark.parametrize("said", ["A-C-E-G", "A C E G"])
def test_a_chain_of_points_is_a_link_from_each_to_the_next(said):
    p = read_text(f"points: {{A: [0, 0], C E G: every 1 right from A, B: [1, 1]}}\nlinks: [B-C, {said}, B-G]\n").problem
    assert [(c.name, c.points) for c in p.connections] == [
        ("BC", ("B", "C")),
        ("AC", ("A", "C")),
        ("CE", ("C", "E")),
        ("EG", ("E", "G")),
        ("BG", ("B", "G")),
    ]


@pytest.mark.parametrize(
    "said",
    [
        "300 N at D E right 3 down 4",
        "300 N right 3 down 4 at D, E",
        "300 N right 3 down 4 at D and E",
        "300 N at D, and E, right 3 down 4",
    ],
)
def test_one_phrase_puts_the_same_force_on_several_points(said):
    loads = sound(loads=f"['{said}']").loads
    assert [(x.point, x.part, x.magnitude.value, x.direction.legs, x.written) for x in loads] == [
        ("D", "arm", 300, (3, -4), said),
        ("E", "arm", 300, (3, -4), said),
    ]


@pytest.mark.parametrize("said", ["P at D E at phi", "P at phi at D E", "P at D, E at phi", "P at phi at D and E"])
def test_points_and_an_angle_that_is_a_letter_are_told_apart_in_any_order(said):
    loads = sound(loads=f"['{said}']", letters="{P: 5 N, phi: 25 deg}").loads
    assert [(x.point, x.direction.angle, x.name) for x in loads] == [("D", 25, "P"), ("E", 25, "P")]


def test_an_angle_by_its_letter_may_stand_before_the_one_point():
    found = load("5 N at phi at E", letters="{phi: 25 deg}")
    assert (found.point, found.direction.angle) == ("E", 25)


@pytest.mark.parametrize(
    "said",
    [
        "300 N at E right 3 down 4",
        "300 N right 3 down 4 at E",
        "300 N, right 3 down 4, at E on arm",
        "300 N on arm at E right 3 down 4",
    ],
)
def test_the_parts_of_a_force_stand_in_any_order(said):
    found = load(said)
    assert (found.point, found.part, found.direction.legs, found.magnitude.value) == ("E", "arm", (3, -4), 300)


def test_masses_hang_at_several_points():
    loads = sound(loads="[mass 5 kg hangs at D E]", gravity="10 m/s^2").loads
    assert [(x.kind, x.point, x.magnitude.value, x.mass.value) for x in loads] == [
        ("weight", "D", 50, 5),
        ("weight", "E", 50, 5),
    ]


def test_a_force_towards_a_point_has_a_direction_of_its_own_at_each():
    loads = sound(loads="[5 N at D E towards B]").loads
    assert [x.direction.vector for x in loads] == [(F(-8, 5), F(-6, 5)), (F(-12, 5), F(-6, 5))]


@pytest.mark.parametrize(
    ("said", "form", "vector"),
    [
        ("cord at 30 deg above left", "angle", (-cos_deg(F(30)), F(1, 2))),
        ("link right 3 up 4", "slope", (3, 4)),
        ("link along right 3 up 4", "slope", (3, 4)),
        ("cord up", "axis", (0, 1)),
        ("link towards B on arm", "line", (F(-12, 5), F(-6, 5))),
    ],
)
def test_a_link_to_the_ground_needs_a_direction_and_no_second_point(said, form, vector):
    p = sound(supports=f"{{A: pin, O: roller pushes right, E: {said}}}", find="[E]")
    link = next(c for c in p.connections if c.name == "EE'")
    assert (link.kind, link.points, link.parts) == ("link", ("E", "E'"), ("arm", GROUND))
    assert (link.direction.form, link.direction.vector) == (form, vector)
    assert [(a.kind, a.subject) for a in p.asked] == [("link", "EE'")]


def test_the_far_end_of_a_link_to_the_ground_is_made_and_marked():
    p = sound(supports="{A: pin, O: roller pushes right, E: cord right 3 up 4}")
    end, start = p.point("E'"), p.point("E")
    run = tuple(a - b for a, b in zip(end.at, start.at))
    assert end.made == GROUND and p.points[-1] == end
    assert run[0] * 4 == run[1] * 3 and run[0] > 0
    # About a fifth of the 3 m that the frame is high.
    assert 0.4 < float(run[0] ** 2 + run[1] ** 2) ** 0.5 < 0.8
    assert ("ground_cord", {"point": "E"}) in p.assumed


def test_the_far_end_of_a_link_to_the_ground_takes_a_name_and_a_place_that_are_free():
    points = POINTS.replace("}", ", E': E right 0.6, F: E up 0.6}")
    p = sound(
        points=points,
        members="{post: A C B O, arm: C D E E', mast: E F}",
        supports="{A: pin, O: fixed, E: link right}",
        find="[A]",
    )
    (link,) = [c for c in p.connections if c.points[0] == "E" and c.kind == "link"]
    assert link.points == ("E", "E''")
    assert p.point("E''").at not in [q.at for q in p.points[:-1]]


DRUM = (
    "points: {A: [0, 0], K: [1, 0], E: [3, 0], O: [1, -1]}\n"
    "members: {lever: A %sE, drum: O K}\n"
    "contacts: {K: drum pushes lever up}\n"
    "supports: {A: pin, O: fixed}\n"
    "loads: [100 N at E down]\n"
    "find: [%s]\n"
)


@pytest.mark.parametrize("through", ["K ", ""])
@pytest.mark.parametrize("question", ["K on lever", "K"])
def test_members_that_touch_are_not_pinned_and_push_one_another(through, question):
    reading = read_text(DRUM % (through, question))
    p = reading.problem
    assert reading.diagnostics == ()
    assert [(c.kind, c.parts, c.direction.vector if c.direction else None) for c in p.connections if c.points == ("K",)] == [
        ("contact", ("lever", "drum"), (0, 1))
    ]
    assert [(a.kind, a.point, a.part) for a in p.asked] == [("pin", "K", "lever")]


@pytest.mark.parametrize(
    ("said", "ends", "unit"),
    [
        ("30 kN/m^2 over 2 m right on post", (60_000, 60_000), "kN/m"),
        ("0 to 30 kN/m² over 1.5 m right on post", (0, 45_000), "kN/m"),
        ("30 to 0 kPa right on post over 500 mm", (15_000, 0), "kN/m"),
        ("62.4 lb/ft^2 over 10 ft right on post", (624 * BY_SPELLING["lb/ft"].factor,) * 2, "lb/ft"),
        (
            "10 psf to 30 psf over b right on post",
            (10 * 2 * BY_SPELLING["lb/ft"].factor, 60 * BY_SPELLING["lb/ft"].factor),
            "lb/ft",
        ),
    ],
)
def test_a_pressure_on_a_strip_is_its_intensity_times_the_width(said, ends, unit):
    found = load(said, letters="{b: 2 ft}" if " b " in said else "")
    intensities = [s.start_intensity for s in found.stretches], [s.end_intensity for s in found.stretches]
    assert (intensities[0][0].value, intensities[1][-1].value) == ends
    assert {q.unit for q in (*intensities[0], *intensities[1])} == {unit}


def asks(**sections):
    return [(a.kind, a.subject, a.part) for a in sound(**sections).asked]


def test_all_links_are_links_and_two_force_members_in_file_order():
    points = POINTS.replace("}", ", F: E down 2.4, G: E right 1}")
    found = asks(
        points=points,
        members="{prop: F E, post: A C B O, arm: C D E, tie: A G, jib: E G}",
        links="[B-D, B-G]",
        supports="{A: pin, O: roller pushes right, F: pin, G: cord up}",
        loads="[30 N at D down]",
        find="[all links]",
    )
    assert found == [("link", n, "") for n in ("prop", "tie", "jib", "BD", "BG", "GG'")]


@pytest.mark.parametrize("support, bar", [("roller", True), ("smooth floor pushes up", True), ("slot in ground along right", True), ("fixed", False)])
def test_a_member_on_a_support_that_lets_it_turn_is_one_of_all_bars(support, bar):
    """A two-force member may stand on anything that resists no turn (common practice, no source)."""
    reading = read_text("points: {A: [0, 0], B: [4, 0], C: [2, 3]}\nmembers: {one: A C, two: B C}\nlinks: [A-B]\n"
                        f"supports: {{A: pin, B: {support}}}\nloads: [6 N at C down]\nfind: [all bars]\n")

    assert ("two" in {a.subject for a in reading.problem.asked}) is bar


def test_a_member_that_is_built_in_is_no_link():
    found = asks(
        members="{post: A C B O, arm: C D E, prop: O D}",
        pins="{O: prop welded to post}",
        supports="{A: pin, O: roller pushes right on post}",
        find="[all links]",
    )
    assert found == [("link", "BD", "")]


def test_all_reactions_are_those_of_each_support_in_file_order():
    found = asks(supports="{O: roller pushes right, E: cord up, A: pin}", find="[all reactions]")
    assert found == [("reaction", "O", ""), ("link", "EE'", ""), ("reaction", "A", "")]


def test_what_is_asked_by_name_and_by_all_is_asked_once():
    assert asks(find="[A, all reactions, C on arm, B-D, all links]") == [
        ("reaction", "A", ""),
        ("reaction", "O", ""),
        ("pin", "C", "arm"),
        ("link", "BD", ""),
    ]


@pytest.mark.parametrize(
    ("said", "vector"), [("downward", (0, -1)), ("upwards", (0, 1)), ("to the right", (1, 0)), ("to the left", (-1, 0))]
)
def test_a_direction_may_be_said_as_in_a_solution(said, vector):
    assert load(f"5 N at E {said}").direction.vector == vector
    assert load(f"5 N {said} at E").direction.vector == vector


@pytest.mark.parametrize(
    ("said", "written"),
    [
        ("at 30 deg below right", "30 deg below right"),
        ("at 20 deg left of up", "20 deg left of up"),
        ("at 40 deg", "40 deg"),
        ("towards B", "towards B"),
        ("along B D", "along B D"),
        ("square to arm, up", "square to arm, up"),
        ("right 3 down 4", "right 3 down 4"),
    ],
)
def test_a_direction_keeps_its_authors_words(said, written):
    assert load(f"5 N at E {said}").direction.written == written


def test_a_letter_that_is_never_used_is_told_and_is_not_among_the_given():
    reading = frame(letters="{a: 3 m, P: 30 N}", loads="[P at E down]")
    assert [d.code for d in reading.diagnostics] == ["read.letter_unused"]
    assert [letter.name for letter in reading.problem.letters] == ["P"]


def test_without_a_question_everything_is_asked_and_nothing_is_said():
    reading = frame(find="")
    assert (reading.diagnostics, [a.kind for a in reading.problem.asked]) == ((), ["everything"])


@pytest.mark.parametrize("said", ["m, kN", "kN, m"])
def test_units_may_stand_in_either_order(said):
    assert sound(units=said).units["moment"] == "kN·m"
