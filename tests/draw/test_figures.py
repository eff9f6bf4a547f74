"""Figures: all that acts is drawn once at its place, nothing that was cut away is drawn, and every label is clear."""

import math
from dataclasses import replace
from fractions import Fraction as F

import pytest
from frames import ALL, LETTERING, RIGHT, at, awning, bent_frame, bracket, crossed, force, slope

from unpin.draw import label as labels
from unpin.draw.compose import scale_of
from unpin.draw.figure import apart_figure, draw, final_figure, free_body_figure, motion_figure, problem_figure
from unpin.draw.geometry import boxes_meet, page_angle, spot_to_segment
from unpin.draw.items import BodyItem, CentreItem, DimensionItem, ForceItem, SupportItem
from unpin.draw.meter import meter
from unpin.draw.pairs import pair_marks
from unpin.draw.scene import Arrow, Group, Text, leaves, mark_box
from unpin.model.findings import Freedom
from unpin.model.problem import GROUND, Connection, Part, Problem
from unpin.statics.assemble import assemble
from unpin.statics.inspect import inspect
from unpin.statics.isolate import isolate

EVERY = [pytest.param(make, id=name) for name, make in ALL.items()]


def whole(structure):
    return isolate(structure, [b.name for b in structure.bodies])


def every_figure(problem):
    structure = inspect(problem)
    yield problem_figure(assemble(problem), LETTERING)
    yield apart_figure(structure, LETTERING)
    for names in ([b.name for b in structure.bodies], *([b.name] for b in structure.bodies)):
        body = isolate(structure, names)
        yield free_body_figure(body, structure, LETTERING)
        yield free_body_figure(body, structure, LETTERING, centre=problem.points[0].name)
        yield free_body_figure(body, structure, LETTERING, axis=RIGHT)
    yield final_figure(structure, LETTERING, {u.id: F(-7) for u in structure.unknowns})


def arrows(scene, role="force"):
    return {m.owner: m for m in leaves(scene.marks) if isinstance(m, Arrow) and m.role == role}


def texts(scene):
    return [labels.plain(m.label) for m in leaves(scene.marks) if isinstance(m, Text)]


@pytest.mark.parametrize("make", EVERY)
def test_no_label_meets_anything_in_any_figure(make):
    for figure in every_figure(make()):
        assert meter(draw(figure)) == [], figure.kind


@pytest.mark.parametrize("make", EVERY)
def test_no_figure_is_wider_than_its_column(make):
    for figure in every_figure(make()):
        assert draw(figure).width <= figure.width + 95, figure.kind


@pytest.mark.parametrize("make", EVERY)
def test_every_action_on_a_free_body_is_drawn_exactly_once(make):
    structure = inspect(make())
    for body in (whole(structure), *(isolate(structure, [b.name]) for b in structure.bodies)):
        scene = draw(free_body_figure(body, structure, LETTERING))
        drawn = [m.owner for m in scene.marks if isinstance(m, Group) and m.role in ("action", "load")]

        assert sorted(o for o in drawn if o in {a.id for a in body.actions}) == sorted(a.id for a in body.actions)


@pytest.mark.parametrize("make", EVERY)
def test_a_drawn_force_has_the_direction_and_the_line_of_its_action(make):
    structure = inspect(make())
    body = whole(structure)
    scene, scale = draw(free_body_figure(body, structure, LETTERING)), scale_of(problem_figure(structure, LETTERING).span)
    drawn = arrows(scene)
    for a in body.actions:
        if a.kind == "force":
            tail, tip = drawn[a.id].spots
            way = math.degrees(math.atan2(float(a.direction.vector[1]), float(a.direction.vector[0])))
            spot = (float(a.at[0]) * scale, -float(a.at[1]) * scale)

            assert page_angle((tip[0] - tail[0], tip[1] - tail[1])) == pytest.approx(way, abs=1e-6)
            assert min(math.dist(spot, tail), math.dist(spot, tip)) < 60 and spot_to_segment(spot, tail, tip) < 60


def test_a_free_body_shows_no_support_and_no_other_part():
    structure = assemble(awning())
    (piece,) = free_body_figure(isolate(structure, ["arm"]), structure, LETTERING).pieces

    assert not piece.of(SupportItem)
    assert [b.owner for b in piece.of(BodyItem)] == ["arm"]


def test_a_link_inside_the_free_body_is_drawn_and_a_cut_one_is_not():
    structure = assemble(awning())
    (together,) = free_body_figure(whole(structure), structure, LETTERING).pieces

    assert "B-D" in [b.owner for b in together.of(BodyItem)]


def test_arms_are_measured_from_the_moment_centre_each_on_its_own_line():
    structure = assemble(awning())
    figure = free_body_figure(whole(structure), structure, LETTERING, centre="O")
    (piece,) = figure.pieces
    found = {labels.plain(d.label): d.level for d in piece.of(DimensionItem)}

    assert {"1.6 m", "2.4 m", "3 m"} == set(found) and found["1.6 m"] == 0 and found["3 m"] == 1
    assert [c.owner for c in piece.of(CentreItem)] == ["O"]


def test_a_force_sum_needs_no_lengths():
    structure = assemble(awning())
    (piece,) = free_body_figure(isolate(structure, ["arm"]), structure, LETTERING, axis=RIGHT).pieces

    assert not piece.of(DimensionItem)


def test_both_halves_of_a_pair_are_in_the_figure_of_the_parts_with_the_same_mark():
    structure = assemble(awning())
    marks = pair_marks(structure)
    drawn = arrows(draw(apart_figure(structure, LETTERING)))
    pairs = [(a.id, a.pair) for a in structure.actions if a.id in marks]

    assert pairs
    for one, other in pairs:
        assert drawn[one].tail == drawn[other].tail == marks[one] > 0


def test_components_of_one_pin_force_share_a_mark_and_the_link_has_another():
    marks = pair_marks(assemble(awning()))

    assert marks["C_x>post"] == marks["C_y>arm"] != marks["F_BD>arm@D"]


def test_parts_taken_apart_do_not_overlap():
    scene = draw(apart_figure(assemble(bent_frame()), LETTERING))
    bodies = [mark_box(m) for m in scene.marks if isinstance(m, Group) and m.role == "body"]

    assert len(bodies) == 2 and not boxes_meet(*bodies)


def test_a_negative_result_turns_its_arrow_round_and_a_zero_one_is_left_out():
    structure = assemble(awning())
    values = {u.id: F(10) for u in structure.unknowns} | {"A_x": F(-416), "A_y": F(0)}
    drawn = arrows(draw(final_figure(structure, LETTERING, values)))

    assert drawn["A_x>post"].spots[1][0] < drawn["A_x>post"].spots[0][0]
    assert "A_y>post" not in drawn


def test_final_sizes_have_no_sign():
    structure = assemble(awning())
    scene = draw(final_figure(structure, LETTERING, {u.id: F(-416) for u in structure.unknowns}))

    assert "416 N" in texts(scene) and "-416 N" not in texts(scene)


def test_each_length_is_given_once_and_none_that_others_make_up():
    (piece,) = problem_figure(assemble(awning()), LETTERING).pieces
    found = sorted((d.axis, labels.plain(d.label)) for d in piece.of(DimensionItem))

    assert found == [("x", "0.8 m"), ("x", "1.6 m"), ("y", "0.6 m"), ("y", "1.2 m"), ("y", "1.2 m")]


def test_loads_and_rollers_show_their_direction_as_it_was_given():
    scene = draw(problem_figure(assemble(bent_frame()), LETTERING))
    sloped = draw(problem_figure(assemble(awning()), LETTERING))

    assert {"30°", "20°"} <= set(texts(scene))
    assert {"3", "4"} <= set(texts(sloped))


def test_a_resultant_stands_at_the_centroid_and_its_load_is_only_outlined():
    structure = assemble(bracket())
    scene = draw(free_body_figure(whole(structure), structure, LETTERING))
    scale = scale_of(problem_figure(structure, LETTERING).span)

    assert arrows(scene)["load1.1a"].spots[1][0] == pytest.approx(4 / 3 * scale)
    assert not arrows(scene, "spread")


def test_an_empty_label_leaves_an_arrow_without_text():
    structure = assemble(awning())
    plain = replace(LETTERING, labels={"load1": (), **{p.name: () for p in structure.problem.points}})
    scene = draw(problem_figure(structure, plain, dimensions=False))

    assert "300 N" not in texts(scene) and "A" not in texts(scene)


def test_the_facts_are_enough_to_draw_it_again():
    facts = problem_figure(assemble(crossed()), LETTERING).facts()
    codes = [f.code for f in facts]

    assert codes.count("point") == 7 and codes.count("member") == 2 and codes.count("link") == 1
    assert codes.count("support") == 2 and codes.count("joint") == 1 and codes.count("force") == 2


def test_free_body_and_whole_have_one_scale():
    structure = assemble(awning())
    one = problem_figure(structure, LETTERING).span

    assert free_body_figure(isolate(structure, ["arm"]), structure, LETTERING).span == one
    assert apart_figure(structure, LETTERING).span == one


def test_a_motion_is_shown_dashed_with_arrows_where_it_goes():
    problem = Problem(at(A=(0, 0), B=(2, 0)), (Part("bar", ("A", "B")),), (Connection("A", "pin", ("A",), ("bar", GROUND)),))
    structure = assemble(problem)
    freedom = Freedom({"bar": (F(0), F(0), F(1))}, {"bar": (F(0), F(0))}, F(0))
    scene = draw(motion_figure(structure, freedom, LETTERING))
    moved = arrows(scene, "motion")["B"].spots

    assert moved[1][0] == pytest.approx(moved[0][0]) and moved[1][1] < moved[0][1]
    assert any(m.role == "ghost-edge" for m in leaves(scene.marks))


def test_a_moment_centre_without_a_name_is_marked_where_it_is():
    structure = assemble(awning())
    scene = draw(free_body_figure(isolate(structure, ["arm"]), structure, LETTERING, centre=(F(1), F(1))))
    scale = scale_of(problem_figure(structure, LETTERING).span)
    (ring,) = [m for m in leaves(scene.marks) if m.role == "centre"]

    assert ring.spots[0] == pytest.approx((scale, -scale))


def test_two_loads_at_one_point_in_one_line_do_not_cover_each_other():
    base = awning()
    problem = replace(
        base,
        loads=(
            *base.loads,
            force(80, "D", slope(0, -1)),
        ),
    )
    assert meter(draw(problem_figure(assemble(problem), LETTERING))) == []


def test_forces_are_chosen_the_same_way_each_time():
    structure = assemble(crossed())

    assert draw(apart_figure(structure, LETTERING)) == draw(apart_figure(structure, LETTERING))
    assert [i.owner for i in problem_figure(structure, LETTERING).pieces[0].of(ForceItem)] == ["load1", "load2"]
