"""Slots and collars: which way the force acts, what is pinned and what is not, and on which member the rest acts."""

import pytest

from unpin.read import read_text

CRANK = (
    "points: {{A: [0, 0], K: [3, 4], B: [6, 8], O: [0, 4], C: [6, 0]}}\n"
    "members: {{lever: {lever}, crank: O K}}\n"
    "{section}: {{K: '{said}'}}\n"
    "supports: {{A: pin, O: pin}}\n"
    "loads: [100 N at B right, {load}]\n"
    "find: [{ask}]\n"
)


def read(section="slots", said="crank in lever", lever="A K B", load="10 N m clockwise on crank", ask="K on crank"):
    reading = read_text(CRANK.format(section=section, said=said, lever=lever, load=load, ask=ask))
    assert [d for d in reading.diagnostics if d.code not in ("read.point_unused", "read.passed_over")] == []
    return reading.problem


def joint(problem):
    return next(c for c in problem.connections if c.points == ("K",))


@pytest.mark.parametrize("lever", ["A K B", "A B", "B K A", "A K B C"])
def test_a_slot_pushes_its_pin_square_to_the_straight_run_there_and_upwards(lever):
    c = joint(read(lever=lever))
    x, y = c.direction.vector
    assert (c.kind, c.parts, x * 3 + y * 4, y > 0, c.direction.form) == ("slot", ("crank", "lever"), 0, True, "square")


def test_an_upright_run_pushes_to_the_right():
    problem = read_text(
        "points: {A: [0, 0], K: [0, 1], B: [0, 2], O: [1, 1]}\nmembers: {lever: A K B, crank: O K}\nslots: {K: crank in lever}\n"
        "supports: {A: pin, O: pin}\nloads: [1 N at B right]"
    ).problem
    assert joint(problem).direction.vector == (1, 0)


def test_members_that_slide_are_not_pinned():
    assert [c.kind for c in read().connections if c.points == ("K",)] == ["slot"]


@pytest.mark.parametrize(
    ("section", "said", "kind"),
    [
        ("collars", "crank on lever", "collar"),
        ("collars", "crank on lever, built on", "sleeve"),
        ("collars", "crank on lever built on", "sleeve"),
        ("slots", "crank in lever from A to B", "slot"),
    ],
)
def test_what_slides_is_of_the_kind_it_is_called(section, said, kind):
    assert joint(read(section, said)).kind == kind


def test_a_load_at_the_pin_of_a_slot_acts_on_the_member_with_the_pin():
    assert read(load="5 N at K down").loads[1].part == "crank"


def test_a_link_at_the_pin_of_a_slot_pulls_the_member_with_the_pin():
    text = CRANK.format(section="slots", said="crank in lever", lever="A K B", load="links", ask="K on crank")
    problem = read_text(text.replace(", links]", "]\nlinks: [K-C]").replace("O: pin}", "O: pin, C: pin}")).problem
    assert next(c for c in problem.connections if c.kind == "link").parts == ("crank", "")


def test_another_member_at_the_pin_of_a_slot_is_pinned_to_it():
    problem = read_text(
        "points: {A: [0, 0], K: [3, 4], B: [6, 8], O: [0, 4], C: [6, 0]}\n"
        "members: {lever: A K B, crank: O K, rod: K C}\nslots: {K: crank in lever}\n"
        "supports: {A: pin, O: pin, C: pin}\nloads: [100 N at B right]"
    ).problem
    assert [(c.kind, c.parts) for c in problem.connections if c.points == ("K",)] == [
        ("pin", ("crank", "rod")),
        ("slot", ("crank", "lever")),
    ]


@pytest.mark.parametrize(("ask", "part"), [("K", "crank"), ("K on crank", "crank"), ("K on lever", "lever")])
def test_the_force_in_a_slot_is_asked_for_by_its_point(ask, part):
    assert [(a.kind, a.point, a.part) for a in read(ask=ask).asked] == [("pin", "K", part)]


@pytest.mark.parametrize(
    ("section", "said", "kind", "vector"),
    [
        ("slots", "crank in ground along right 4 up 3", "slot", (-3, 4)),
        ("slots", "crank in the ground along down", "slot", (1, 0)),
        ("collars", "crank on ground along up", "collar", (1, 0)),
        ("collars", "crank on ground along right, built on", "sleeve", (0, 1)),
        ("slots", "crank in ground along 45 deg", "slot", None),
        ("slots", "crank in ground along 45 deg above right from A to B", "slot", None),
    ],
)
def test_the_ground_may_have_the_slot_or_the_rod(section, said, kind, vector):
    if "from" in said:
        said = said.replace("45 deg above right", "right 3 up 4")
    problem = read(section, said, lever="A B", ask="K")
    c = joint(problem)
    assert (c.kind, c.parts) == (kind, ("crank", "ground"))
    assert vector is None or c.direction.vector == vector
    assert float(c.direction.vector[1]) >= 0
    assert [(a.kind, a.point) for a in problem.asked] == [("reaction", "K")]


@pytest.mark.parametrize(
    ("said", "kind", "vector"),
    [
        ("rocker pushes left", "rocker", (-1, 0)),
        ("knife edge pushes up", "knife_edge", (0, 1)),
        ("knife-edge pushes up", "knife_edge", (0, 1)),
        ("smooth surface on slope right 4 up 3", "surface", (-3, 4)),
        ("smooth wall pushes right", "surface", (1, 0)),
        ("smooth floor pushes up", "surface", (0, 1)),
        ("slot along right", "slot", (0, 1)),
        ("collar along up", "collar", (1, 0)),
    ],
)
def test_supports_of_the_trade_are_read(said, kind, vector):
    problem = read_text(
        f"points: {{A: [0, 0], B: [1, 0]}}\nmembers: {{bar: A B}}\nsupports: {{A: pin, B: {said}}}\nloads: [1 N at B down]"
    ).problem
    c = problem.connections[-1]
    assert (c.kind, c.parts, c.direction.vector) == (kind, ("bar", "ground"), vector)
