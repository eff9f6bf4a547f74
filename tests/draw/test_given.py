"""What a figure dimensions is what the author gave."""

from fractions import Fraction as F

from frames import LETTERING, at, force

from unpin import bundled
from unpin.draw import label as labels
from unpin.draw.compose import scale_of
from unpin.draw.figure import draw, final_figure, free_body_figure, problem_figure
from unpin.draw.items import AngleItem, DimensionItem, ForceItem
from unpin.draw.meter import meter
from unpin.draw.scene import Arrow, Path, Text, leaves
from unpin.exact.number import cos_deg, length, sin_deg
from unpin.model import directions
from unpin.model.problem import GROUND, Connection, Part, Point, Problem
from unpin.model.values import Direction
from unpin.read import read_file
from unpin.statics.assemble import assemble
from unpin.statics.isolate import isolate


def ramp() -> Problem:
    """A plank at 20° set out by lengths along it, pushed square to itself, on a prop to the ground."""
    c, s = cos_deg(F(20)), sin_deg(F(20))
    points = (*at(A=(0, 0), D=(2, 0)), Point("B", (2 * c, 2 * s)), Point("C", (3 * c, 3 * s)))
    push = Direction((s, -c), length((s, -c)), "square", points=("A", "C"))
    return Problem(
        points,
        (Part("plank", ("A", "B", "C")),),
        (Connection("A", "pin", ("A",), ("plank", GROUND)), Connection("D-B", "link", ("D", "B"), (GROUND, "plank"))),
        (force(50, "C", push, "plank"),),
    )


def shown(problem):
    (piece,) = problem_figure(assemble(problem), LETTERING).pieces
    return piece


def test_lengths_along_a_slope_are_dimensioned_along_it_and_its_angle_is_marked():
    piece = shown(ramp())
    along = [labels.plain(d.label) for d in piece.of(DimensionItem) if d.axis == "along"]

    assert along == ["2 m", "1 m"]
    assert [labels.plain(a.label) for a in piece.of(AngleItem)] == ["20°"]


def test_points_set_out_along_a_slope_get_no_odd_lengths_along_the_axes():
    level = [labels.plain(d.label) for d in shown(ramp()).of(DimensionItem) if d.axis != "along"]

    assert level == ["2 m"]


def test_a_sloping_part_with_whole_coordinates_keeps_its_level_and_upright_lengths():
    problem = Problem(at(A=(0, 0), B=(3, 4)), (Part("bar", ("A", "B")),), (Connection("A", "fixed", ("A",), ("bar", GROUND)),))

    assert {d.axis for d in shown(problem).of(DimensionItem)} == {"x", "y"}


def test_a_force_square_to_its_member_has_a_right_angle_and_no_numbers():
    scene = draw(problem_figure(assemble(ramp()), LETTERING))
    owned = [m for m in leaves(scene.marks) if isinstance(m, Path) and m.owner == "load1" and m.role == "angle"]

    assert len(owned) == 1 and len(owned[0].spots) == 3
    assert meter(scene) == []


def test_a_longer_length_that_shorter_ones_make_up_is_left_out():
    problem = Problem(
        at(A=(0, 0), B=(1, 0), C=(3, 0), D=(0, 1), E=(3, 1)),
        (Part("low", ("A", "B", "C")), Part("high", ("D", "E"))),
        (Connection("A-D", "link", ("A", "D"), ("low", "high")),),
    )
    found = sorted(labels.plain(d.label) for d in shown(problem).of(DimensionItem) if d.axis == "x")

    assert found == ["1 m", "2 m"]


def test_lengths_that_would_lie_over_each_other_stand_on_lines_of_their_own():
    problem = Problem(
        at(A=(0, 0), B=(2, 0), C=(4, 0), D=(0, 1), E=(3, 1), F=(4, 1)),
        (Part("low", ("A", "B", "C")), Part("high", ("D", "E", "F"))),
        (Connection("A-D", "link", ("A", "D"), ("low", "high")),),
    )
    scene = draw(problem_figure(assemble(problem), LETTERING))
    lines = {m.owner: m.spots for m in leaves(scene.marks) if isinstance(m, Arrow) and m.role == "dimension"}
    low = {lines[k][0][1] for k in ("x:A-B", "x:B-C")}
    high = {lines[k][0][1] for k in ("x:D-E", "x:E-F")}

    assert len(low) == len(high) == 1 and low != high


def test_the_ground_acts_at_the_far_end_of_a_link_in_the_final_figure():
    structure = assemble(ramp())
    scene = draw(final_figure(structure, LETTERING, {u.id: F(10) for u in structure.unknowns}))
    link = next(u for u in structure.unknowns if u.axial)
    (arrow,) = [m for m in leaves(scene.marks) if isinstance(m, Arrow) and m.role == "force" and m.owner in link.actions]
    foot = (2 * scale_of(problem_figure(structure, LETTERING).span), 0.0)

    assert min(abs(s[0] - foot[0]) + abs(s[1] - foot[1]) for s in arrow.spots) < 8
    assert arrow.spots[1][1] > 0  # tension: the ground pulls down


def test_a_roller_that_pushes_sideways_stands_beside_its_point():
    problem = Problem(
        at(A=(0, 0), B=(0, 2)),
        (Part("post", ("A", "B")),),
        (Connection("A", "pin", ("A",), ("post", GROUND)), Connection("B", "roller", ("B",), ("post", GROUND), directions.X)),
    )
    scene = draw(problem_figure(assemble(problem), LETTERING))
    ground = [m for m in leaves(scene.marks) if m.role == "ground" and m.owner == "B"]

    assert all(s[0] < 0 for m in ground for s in m.spots)


def test_a_link_to_the_ground_shows_its_angle_and_no_length_to_its_made_end():
    c, s = -cos_deg(F(40)) / 2, sin_deg(F(40)) / 2
    way = Direction((2 * c, 2 * s), F(1), "angle", F(40), base=(-F(1), F(0)), turn=(F(0), F(1)))
    problem = Problem(
        (*at(A=(0, 0), B=(2, 0)), Point("B'", (2 + c, s), made=GROUND)),
        (Part("jib", ("A", "B")),),
        (
            Connection("A", "pin", ("A",), ("jib", GROUND)),
            Connection("BB'", "link", ("B", "B'"), ("jib", GROUND), way),
        ),
        (force(50, "B", directions.DOWN, "jib"),),
    )
    piece = shown(problem)

    assert [labels.plain(d.label) for d in piece.of(DimensionItem)] == ["2 m"]
    assert [labels.plain(a.label) for a in piece.of(AngleItem)] == ["40°"]


def pushed_bar(vector) -> Problem:
    """A level bar on a link whose line runs along the vector."""
    x, y = vector
    points = (*at(A=(0, 0), B=(2, 0)), Point("C", (2 + x, y)))
    return Problem(
        points,
        (Part("bar", ("A", "B")),),
        (Connection("A", "pin", ("A",), ("bar", GROUND)), Connection("B-C", "link", ("B", "C"), ("bar", GROUND))),
        (force(50, "B", directions.DOWN, "bar"),),
    )


def noted(problem) -> list[str]:
    structure = assemble(problem)
    (piece,) = free_body_figure(isolate(structure, ("bar",)), structure, LETTERING).pieces
    return [labels.plain(n) for item in piece.of(ForceItem) for n in item.notes]


def test_a_line_of_no_whole_number_slope_shows_its_exact_angle_instead_of_two_lengths():
    assert noted(pushed_bar((2 * cos_deg(F(60)), 2 * sin_deg(F(60))))) == ["60°"]


def test_a_line_of_long_legs_shows_its_angle_to_a_tenth_of_a_degree():
    # 38.414° by the arc tangent of the standard library; 1000 to 793 have no common divisor.
    assert noted(pushed_bar((F(1), F(793, 1000)))) == ["38.4°"]


def test_a_line_of_short_legs_keeps_its_slope_triangle():
    assert noted(pushed_bar((F(3), F(4)))) == ["3", "4"]


def test_a_run_whose_length_is_a_round_number_by_chance_is_not_taken_for_set_out_by_an_angle():
    # (0.65, 0.3 sin 60°) has the length 0.7 exactly, but no one gave its angle, 21.787°.
    bar = Problem(
        (*at(A=(0, 0)), Point("B", (F(65, 100), F(3, 10) * sin_deg(F(60))))),
        (Part("bar", ("A", "B")),),
        (Connection("A", "pin", ("A",), ("bar", GROUND)),),
        (force(50, "B", directions.DOWN, "bar"),),
    )

    assert shown(bar).of(AngleItem) == []
    assert "0.7 m" not in [labels.plain(d.label) for d in shown(bar).of(DimensionItem)]


def example(name):
    (piece,) = problem_figure(assemble(read_file(bundled.path_of(name)).problem), LETTERING).pieces
    return piece


def test_of_two_members_that_are_images_of_each_other_one_is_dimensioned_and_both_have_their_angle():
    piece = example("window-lift")
    along = [d.owner for d in piece.of(DimensionItem) if d.axis == "along"]

    assert along == ["along:A-E", "along:E-C"]
    assert len(piece.of(AngleItem)) == 2


def test_what_lengths_and_angles_along_slopes_tell_gets_no_length_along_an_axis():
    piece = example("window-lift")

    # The floor is as high as the ends of the legs; only where the load stands on it is to be said.
    assert [d.owner for d in piece.of(DimensionItem) if d.axis != "along"] == ["x:A-M"]


def test_the_slope_of_a_face_stands_where_nothing_hides_it():
    scene = draw(problem_figure(assemble(read_file(bundled.path_of("jacking-wedge")).problem), LETTERING))
    numbers = [t for t in leaves(scene.marks) if isinstance(t, Text) and t.role == "slope"]

    assert len(numbers) == 2
    assert not any(t.leader for t in numbers)
