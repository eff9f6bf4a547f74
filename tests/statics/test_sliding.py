"""Slots, collars and supports that only push: closed forms, and what is seen of two-force members that slide."""

from __future__ import annotations

from fractions import Fraction as F

from hypothesis import given
from hypothesis import strategies as st

from build import LEFT, RIGHT, UP, between, couple, force, frame, link, slope, square, support, weight
from unpin.model.problem import GROUND, Connection, Part, Problem
from unpin.model.space import square_to
from unpin.model.values import Direction
from unpin.statics import assemble, inspect, solve

positive = st.fractions(min_value=F(1, 2), max_value=20, max_denominator=4)


def values(problem):
    found = solve(assemble(problem))
    assert found is not None
    return found


@given(st.sampled_from([(3, 4, 5), (5, 12, 13), (8, 6, 10), (15, 8, 17)]), positive, positive)
def test_a_slotted_lever_is_turned_by_its_pin_with_the_ratio_of_the_levers(triangle, more, load):
    # Moments about A: N |AK| = P |AB| for a force square to the lever (law of the lever). The crank from O, level with K and
    # straight above A, holds that N with the couple N x (x / |AK|).
    x, y, long = triangle
    times = 1 + more
    points = {"A": (0, 0), "K": (x, y), "B": (x * times, y * times), "O": (0, y)}
    problem = frame(points, {"lever": "A K B", "crank": "O K"}, support("pin", "A", "lever"), support("fixed", "O", "crank"),
                    between("slot", "K", "crank", "lever", square("A", "B")), force(load, "B", "lever", square("A", "B")))
    structure = assemble(problem)
    v = values(problem)
    (slot,) = [u for u in structure.unknowns if u.source == "slot K"]

    assert v[slot.id] == load * times
    assert v["M_O"] == -load * times * F(x * x, long)


@given(positive, positive, positive)
def test_a_weight_on_a_collar_is_held_on_a_sloping_rod_by_its_weight_times_the_slope(run, rise, size):
    # A smooth collar on a rod of slope rise/run is kept from sliding by a level force W rise/run (forces along the rod).
    way = (F(run), F(rise))
    normal = Direction(square_to(way), slope(run, rise).length, "slope", legs=square_to(way))
    problem = frame({"K": (0, 0), "S": (-5, 0)}, {}, weight(size, "K", "ring"), link("S", "K", GROUND, "ring"))
    rod = Connection("K", "collar", ("K",), ("ring", GROUND), normal)
    problem = Problem(problem.points, (Part("ring", ("K",), "block"),), (*problem.connections, rod), problem.loads, problem.asked)
    v = values(problem)

    # The link, level and from the left, has to push.
    assert v["F_SK"] == -size * rise / run


@given(positive, positive)
def test_a_bracket_on_a_built_on_collar_has_the_couple_of_its_load(arm, size):
    # An upright rod takes no upright force: the cord above the collar does, and the couple is load times arm (any book, cantilever).
    problem = frame({"A": (0, 0), "B": (arm, 0), "C": (0, 2)}, {"bracket": "A B"}, support("sleeve", "A", "bracket", RIGHT),
                    link("A", "C", "bracket"), force(size, "B", "bracket"))
    v = values(problem)

    assert (v["A_x"], v["M_A"]) == (0, size * arm)


@given(positive, positive, positive)
def test_a_ladder_between_a_smooth_wall_and_the_floor_pushes_the_wall_by_half_its_weight_times_the_slope(run, rise, size):
    # Moments about the foot: N rise = W run / 2 (any book).
    problem = frame({"A": (0, 0), "M": (run / 2, rise / 2), "B": (run, rise)}, {"ladder": "A M B"}, support("pin", "A", "ladder"),
                    support("surface", "B", "ladder", LEFT), weight(size, "M", "ladder"))

    assert values(problem)["B_x"] == size * run / 2 / rise


@given(positive, positive, positive)
def test_a_plank_on_a_knife_edge_and_a_rocker_is_shared_by_the_levers(first, second, size):
    points = {"A": (0, 0), "C": (first, 0), "B": (first + second, 0), "Z": (-1, 0)}
    problem = frame(points, {"plank": "A C B"}, support("knife_edge", "A", "plank", UP), support("rocker", "B", "plank", UP),
                    link("A", "Z", "plank"), force(size, "C", "plank"))
    v = values(problem)

    assert (v["A_y"], v["B_y"]) == (size * second / (first + second), size * first / (first + second))


ROD = {"A": (0, 0), "K": (3, 4), "O": (3, 0), "B": (6, 4)}


def test_a_bar_with_a_pin_in_a_slot_of_the_ground_is_a_two_force_member_and_the_slot_holds_its_pin():
    problem = frame(ROD, {"lever": "O B", "bar": "A K"}, support("pin", "A", "bar"), support("slot", "K", "bar", UP), force(9, "K", "", RIGHT))

    assert [(t.member, t.points) for t in inspect(problem).two_force] == [("bar", ("A", "K"))]


def test_a_bar_with_a_pin_in_a_slot_of_another_is_left_to_its_sums_and_has_no_force_across_the_slot():
    problem = frame(ROD, {"lever": "O K", "bar": "A K"}, support("fixed", "O", "lever"), support("pin", "A", "bar"),
                    between("slot", "K", "bar", "lever", square("O", "K")), couple(12, "bar", "A"))

    assert inspect(problem).two_force == ()
    # N times the upright arm 4 holds the couple of 12.
    assert {abs(v) * 4 for k, v in values(problem).items() if k.startswith("K")} == {12}


def test_a_collar_built_on_spoils_a_two_force_member():
    problem = frame(ROD, {"bar": "A K"}, support("pin", "A", "bar"), support("sleeve", "K", "bar", UP))

    assert inspect(problem).two_force == ()
