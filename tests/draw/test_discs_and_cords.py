"""Discs, cords and blocks: strands touch rims, cut ones pull away from what they hold, and every label is clear."""

import math
from fractions import Fraction as F

import pytest
from frames import LETTERING, RIGHT, force, slope
from rigs import RIGS, crane, drum, guyed, lamp, tackle, trestle

from unpin.base.units import MOMENT
from unpin.draw import label as labels
from unpin.draw.compose import scale_of
from unpin.draw.figure import apart_figure, draw, final_figure, free_body_figure, motion_figure, problem_figure
from unpin.draw.items import BlockItem, BodyItem, CordItem, DimensionItem, DiscItem, ForceItem, JointItem, LeverItem, NameItem, RadiusItem, SupportItem
from unpin.draw.lettering import Lettering
from unpin.draw.meter import meter
from unpin.draw.scene import Arrow, Group, Path, Text, leaves, mark_box
from unpin.model.findings import Freedom
from unpin.model.problem import GROUND, Connection, Load, Problem
from unpin.model.values import Quantity
from unpin.statics.assemble import assemble
from unpin.statics.inspect import inspect
from unpin.statics.isolate import isolate

EVERY = [pytest.param(make, id=name) for name, make in RIGS.items()]


def named(problem):
    """Cords by their letter, as the lesson has them."""
    return Lettering({c.name: labels.italic(c.name) for c in problem.cords}, LETTERING.text)


def body(problem, *names, **more):
    structure = inspect(problem)
    names = names or [b.name for b in structure.bodies]
    return free_body_figure(isolate(structure, names), structure, LETTERING, **more)


def shown(figure, *kinds):
    return [i for piece in figure.pieces for i in piece.items if isinstance(i, kinds)]


def pulls(figure, cord):
    return [i for i in shown(figure, ForceItem) if i.owner.startswith(f"{cord}>")]


def every_figure(problem):
    structure, lettering = inspect(problem), named(problem)
    yield problem_figure(assemble(problem), lettering)
    yield apart_figure(structure, LETTERING)
    for names in ([b.name for b in structure.bodies], *([b.name] for b in structure.bodies)):
        loose = isolate(structure, names)
        yield free_body_figure(loose, structure, LETTERING)
        yield free_body_figure(loose, structure, LETTERING, centre=problem.points[0].name)
    yield final_figure(structure, lettering, {u.id: F(7) for u in structure.unknowns})


@pytest.mark.parametrize("make", EVERY)
def test_every_label_of_every_figure_is_clear(make):
    for figure in every_figure(make()):
        assert not meter(draw(figure)), (figure.kind, figure.pieces[0].name)


@pytest.mark.parametrize("make", EVERY)
def test_every_force_is_drawn_once(make):
    structure = inspect(make())

    figure = apart_figure(structure, LETTERING)

    on = {b.name for b in structure.bodies}
    assert sorted(i.owner for i in shown(figure, ForceItem)) == sorted(a.id for a in structure.actions if a.on in on and a.kind == "force")


@pytest.mark.parametrize("make", [pytest.param(RIGS[n], id=n) for n in ("crane", "tackle", "guyed")])
def test_a_strand_touches_the_rim_squarely_and_the_arc_goes_on_from_there(make):
    figure = problem_figure(assemble(make()), LETTERING)
    discs = shown(figure, DiscItem)

    (cord,) = shown(figure, CordItem)
    assert len(cord.arcs) == len(discs)
    for disc, arc in zip(discs, cord.arcs):
        assert all(math.isclose(math.dist(s, disc.at), disc.radii[0]) for s in arc)
    for start, end in cord.strands:
        along = (end[0] - start[0], end[1] - start[1])
        for spot in (start, end):
            for disc, arc in zip(discs, cord.arcs):
                if math.isclose(math.dist(spot, disc.at), disc.radii[0]):
                    assert abs((spot[0] - disc.at[0]) * along[0] + (spot[1] - disc.at[1]) * along[1]) < 1e-9
                    assert min(math.dist(spot, arc[0]), math.dist(spot, arc[-1])) < 1e-9


def test_a_disc_is_drawn_to_scale_with_its_pin_in_the_middle():
    problem = crane()
    figure = problem_figure(assemble(problem), LETTERING)
    scene = draw(figure)

    (disc,) = [m for m in leaves(scene.marks) if isinstance(m, Path) and m.role == "disc"]
    pins = [m.spots[0] for m in leaves(scene.marks) if isinstance(m, Path) and m.role == "hinge" and m.owner == "C"]
    assert disc.radius >= 0.2 * scale_of(figure.span) - 1e-9
    assert disc.spots[0] in pins


def test_a_disc_with_two_radii_has_two_rims():
    scene = draw(problem_figure(assemble(drum()), LETTERING))

    rims = [m.radius for m in leaves(scene.marks) if isinstance(m, Path) and m.role in ("disc", "rim")]
    assert len(rims) == 2
    assert math.isclose(max(rims), 3 * min(rims))


def test_a_pulley_left_on_its_arm_is_pulled_away_at_its_tangents():
    figure = body(crane(), "arm", "pulley")

    level, hanging = pulls(figure, "T")
    assert (level.at, level.along) == ((3.0, 0.2), (-1.0, 0.0))
    assert (hanging.at, hanging.along) == ((3.2, 0.0), (0.0, -1.0))
    (cord,) = shown(figure, CordItem)
    assert cord.strands == ()
    assert len(cord.arcs) == 1


def test_the_arrow_of_a_pull_starts_where_its_bit_of_cord_ends():
    figure = body(crane(), "arm", "pulley")
    scene = draw(figure)

    for pull in pulls(figure, "T"):
        (arrow,) = [m for m in leaves(scene.marks) if isinstance(m, Arrow) and m.owner == pull.owner]
        (stub,) = [m for m in leaves(scene.marks) if isinstance(m, Path) and m.role == "cord" and m.owner == pull.owner]
        assert stub.spots[-1] == arrow.spots[0]
        assert math.dist(*stub.spots) >= pull.stub - 1e-9


def test_a_strand_inside_a_body_is_drawn_without_arrows_and_told():
    figure = body(crane())

    (cord,) = shown(figure, CordItem)
    assert cord.strands == (((3.2, 0.0), (3.2, -1.0)),)
    assert [p.owner for p in pulls(figure, "T")] == ["T>pulley@1"]
    assert [f.arguments["ends"][1] for f in figure.facts() if f.code == "strand"] == [crane().point("K").at]


def test_a_cord_inside_a_trestle_is_not_cut_by_the_whole_and_is_by_a_leg():
    assert len(shown(body(trestle()), CordItem)) == 1
    assert not pulls(body(trestle()), "T")
    assert not shown(body(trestle(), "one"), CordItem)
    assert len(pulls(body(trestle(), "one"), "T")) == 1


def test_an_end_at_the_ground_has_an_anchor_and_one_at_a_member_an_eye():
    anchors = [i for i in shown(problem_figure(assemble(crane()), LETTERING), SupportItem) if i.kind == "anchor"]
    eyes = {i.owner for i in shown(problem_figure(assemble(trestle()), LETTERING), JointItem) if i.look == "eye"}

    assert [(i.owner, i.up) for i in anchors] == [("W", (1.0, 0.0))]
    assert eyes == {"D", "E"}


def test_a_free_end_ends_in_the_arrow_of_the_hand():
    figure = problem_figure(assemble(tackle()), named(tackle()))

    (hand,) = pulls(figure, "T")
    assert (hand.at, hand.along, labels.plain(hand.label)) == ((0.4, 2.0), (0.0, -1.0), "T")
    assert not [i for i in shown(figure, NameItem) if i.owner == "T"]


def test_a_block_is_a_box_whose_forces_start_outside_it():
    problem = crane()
    scene = draw(apart_figure(inspect(problem), LETTERING))

    (box,) = [m for m in leaves(scene.marks) if isinstance(m, Path) and m.role == "block"]
    arrows = [m for m in leaves(scene.marks) if isinstance(m, Arrow) and m.owner in ("load1", "T>sack@2")]
    xs, ys = zip(*box.spots)
    assert len(arrows) == 2
    assert all(not (min(xs) < x < max(xs) and min(ys) < y < max(ys)) for a in arrows for x, y in a.spots)


def test_a_block_on_a_slope_stands_square_on_its_ground():
    problem = crane()
    up = slope(-3, 4)
    on_ramp = Problem(problem.points, (problem.part("sack"),), (Connection("K", "contact", ("K",), ("sack", GROUND), up),), problem.loads)
    figure = problem_figure(assemble(on_ramp), LETTERING)

    (box,) = shown(figure, BlockItem)
    (floor,) = shown(figure, SupportItem)
    assert floor.kind == "floor"
    assert box.up == floor.up == (-0.6, 0.8)


def test_a_knot_is_no_box_and_a_ring_is_a_circle():
    figure = problem_figure(assemble(lamp()), LETTERING)

    looks = {i.owner: i.look for i in shown(figure, JointItem)}
    assert [i.owner for i in shown(figure, BlockItem)] == ["lamp"]
    assert (looks["R"], looks["K"]) == ("ring", "eye")


def test_an_unknown_load_is_drawn_with_its_letter():
    figure = problem_figure(assemble(drum()), LETTERING)

    (load,) = [i for i in shown(figure, ForceItem) if i.at == (0.6, 0.0)]
    assert (load.role, load.along) == ("load", (0.0, -1.0))
    assert labels.plain(load.label) == "P"


def test_each_radius_is_dimensioned_once_where_the_problem_is_stated():
    figure = problem_figure(assemble(drum()), LETTERING)

    assert [labels.plain(i.label) for i in shown(figure, RadiusItem)] == ["0.1 m", "0.3 m"]
    assert not shown(final_figure(inspect(drum()), LETTERING, {}), RadiusItem)


def test_where_an_upright_strand_hangs_is_said_by_the_radius_alone():
    figure = problem_figure(assemble(crane()), LETTERING)

    ends = {round(c, 9) for i in shown(figure, DimensionItem) for s in (i.start, i.end) for c in s}
    assert 3.2 not in ends
    assert -1.0 not in ends


def test_about_the_centre_of_a_disc_the_arm_is_its_radius():
    figure = body(crane(), "arm", "pulley", centre="C")

    assert [i.radius for i in shown(figure, RadiusItem)] == [0.2]
    assert all(0.2 not in (abs(i.start[1]), abs(i.end[1])) for i in shown(figure, DimensionItem))


def test_about_another_point_a_tangent_has_the_arm_to_its_arrow():
    figure = body(crane(), "arm", "pulley", centre="A")

    told = {(i.axis, labels.plain(i.label)) for i in shown(figure, DimensionItem)}
    assert ("x", "3.2 m") in told
    assert ("y", "0.2 m") in told


def test_a_perpendicular_arm_is_drawn_square_to_the_line_of_its_force():
    problem = guyed()
    (strand,) = [a for a in inspect(problem).actions if a.id == "T>wheel@1"]
    figure = body(problem, centre="A", levers={strand.id: F(2)})

    (arm,) = shown(figure, LeverItem)
    (x, y), (dx, dy) = arm.foot, (float(c) for c in strand.direction.vector)
    assert abs(x * dx + y * dy) < 1e-9
    assert abs((x - arm.at[0]) * dy - (y - arm.at[1]) * dx) < 1e-9
    assert labels.plain(arm.label) == "2 m"
    assert not meter(draw(figure))


def test_a_force_through_the_moment_centre_has_no_dimension():
    problem = crane()
    pushed = Problem(problem.points, (problem.part("arm"),), problem.connections[1:2], (force(5, "C", RIGHT, "arm"),))

    assert not shown(body(pushed, centre="A"), DimensionItem)


def test_a_strand_between_tangent_points_shows_no_lengths_that_nobody_gave():
    (sloped,) = [p for p in pulls(body(guyed()), "T") if p.owner == "T>wheel@1"]

    assert sloped.notes == ()


def test_in_the_result_each_tension_stands_along_its_longest_strand():
    problem = crane()
    structure = inspect(problem)
    lettering = Lettering({"T": labels.upright("500 N")}, LETTERING.text)
    figure = final_figure(structure, lettering, {u.id: F(500) for u in structure.unknowns})

    (name,) = [i for i in shown(figure, NameItem) if i.owner == "T"]
    assert name.along == ((0.0, 0.2), (3.0, 0.2))
    assert [f.arguments["value"] for f in figure.facts() if f.code == "tension"] == [500]


def test_a_disc_that_moves_is_dashed_where_it_goes():
    problem = crane()
    freedom = Freedom({"pulley": (F(1), F(0), F(0))}, {}, F(0))

    figure = motion_figure(assemble(problem), freedom, LETTERING)

    (ghost,) = [i for i in shown(figure, BodyItem) if i.look == "ghost"]
    xs = [x for x, _ in ghost.chains[0]]
    assert math.isclose(max(xs) - min(xs), 0.4)
    assert max(xs) > 3.2


def test_the_letter_of_a_cord_is_written_once():
    scene = draw(problem_figure(assemble(crane()), named(crane())))

    assert [labels.plain(m.label) for m in leaves(scene.marks) if isinstance(m, Text)].count("T") == 1


def test_two_couples_about_one_point_stand_around_each_other():
    problem = trestle()
    turned = tuple(Load("couple", "C", part, Quantity(F(9), MOMENT)) for part in ("one", "two"))
    both = Problem(problem.points, problem.parts, problem.connections, turned, cords=problem.cords)
    scene = draw(problem_figure(assemble(both), LETTERING))

    inner, outer = [m for m in leaves(scene.marks) if isinstance(m, Arrow) and m.role == "couple"]
    apart = min(math.dist(a, b) for a in inner.spots for b in outer.spots)
    assert apart > 6
    assert not meter(scene)


def test_a_pulley_over_which_cords_hang_has_no_ground_between_them():
    problem = tackle()
    scene = draw(problem_figure(assemble(problem), LETTERING))
    grounds = {g.owner: g for g in scene.marks if isinstance(g, Group) and g.role == "support"}
    pulley = next(p for p in problem.parts if p.kind == "disc" and p.points[0] in grounds)
    hinge = next(mark_box(g) for g in scene.marks if isinstance(g, Group) and g.role == "joint" and g.owner == pulley.points[0])

    assert mark_box(grounds[pulley.points[0]])[3] <= hinge[3] + 8
