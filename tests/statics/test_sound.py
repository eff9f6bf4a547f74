"""What is said of structures that move, are held too often, or only just stand."""

from __future__ import annotations

from fractions import Fraction as F

import pytest

from build import DOWN, LEFT, RIGHT, UP, angle, components, couple, force, frame, link, pin, slope, spread, support, towards, weight
from unpin.model.problem import GROUND, Asked, Cord, Part, Point, Problem, Stop
from unpin.model.space import velocity
from unpin.route.work import work
from unpin.statics import assemble, sound
from unpin.statics.sound import moves

BEAM = {"A": (0, 0), "C": (2, 0), "B": (4, 0), "D": (2, 1)}


def beam(*things, asked=("everything",)):
    return frame(BEAM, {"beam": "A C B"}, *things, asked=asked)


def verdict(problem):
    return sound(assemble(problem))


def codes(found):
    return [c.code for c in found]


def test_a_sound_beam_has_nothing_said_against_it():
    s = verdict(beam(support("pin", "A", "beam"), support("roller", "B", "beam", UP), force(10, "C", "beam")))

    assert s.determinate and s.solvable and s.holds
    assert (s.freedoms, s.self_stresses, s.causes, s.remarks) == ((), (), (), ())
    assert (s.unknowns, s.sums) == (3, 3)


def test_a_beam_on_a_pin_alone_turns_about_it_and_its_load_does_work():
    s = verdict(beam(support("pin", "A", "beam"), force(10, "C", "beam")))

    (motion,) = s.freedoms
    assert motion.centres["beam"] == (0, 0)
    assert abs(motion.work) == 20 and not s.holds and not s.solvable
    assert codes(s.causes) == ["too_few_unknowns"]
    # The sum that fails: moments about the pin.
    assert motion.failing.functional.kind == "about" and motion.failing.functional.point == "A"
    assert [t.coefficient for t in motion.failing.terms] == [-2]


def test_a_beam_on_upright_rollers_slides_sideways_but_stands_under_an_upright_load():
    s = verdict(beam(support("roller", "A", "beam", UP), support("roller", "B", "beam", UP), force(10, "C", "beam")))

    (motion,) = s.freedoms
    assert motion.twists["beam"][1:] == (0, 0) and motion.twists["beam"][0] != 0 and not motion.centres
    assert motion.work == 0 and s.holds
    assert s.solvable and not s.determinate


def test_the_same_beam_pushed_sideways_has_no_equilibrium_and_the_failing_sum_is_along_x():
    s = verdict(beam(support("roller", "A", "beam", UP), support("roller", "B", "beam", UP), force(10, "C", "beam", slope(3, -4))))

    assert not s.holds
    (motion,) = s.freedoms
    failing = motion.failing
    assert failing.functional.kind == "along" and failing.functional.direction.vector[1] == 0
    assert [abs(t.coefficient) for t in failing.terms] == [F(3, 5)] and not failing.unknowns


def test_three_upright_rollers_move_and_are_ambiguous_at_once_because_they_are_parallel():
    s = verdict(beam(support("roller", "A", "beam", UP), support("roller", "B", "beam", UP), support("roller", "C", "beam", UP),
                     force(10, "C", "beam")))

    assert len(s.freedoms) == len(s.self_stresses) == 1
    assert set(s.self_stresses[0].unknowns) == {"A_y", "B_y", "C_y"}
    assert s.holds and s.found == ((Asked("everything"), False),)
    assert codes(s.causes) == ["lines_parallel"]


def test_three_rollers_through_one_point_let_the_beam_turn_about_it():
    s = verdict(beam(support("roller", "A", "beam", towards("A", "D")), support("roller", "B", "beam", towards("B", "D")),
                     support("roller", "C", "beam", towards("C", "D")), force(10, "A", "beam")))

    (motion,) = s.freedoms
    assert motion.centres["beam"] == (2, 1)
    assert not s.holds and motion.failing.functional.point == "D"
    (cause,) = s.causes
    assert cause.code == "lines_concurrent" and cause.arguments["point"] == "D"


def test_a_pin_and_a_roller_that_pushes_through_it_do_not_hold_a_beam():
    s = verdict(beam(support("pin", "A", "beam"), support("roller", "B", "beam", RIGHT), force(10, "C", "beam")))

    assert len(s.freedoms) == 1 and not s.holds
    assert codes(s.causes) == ["lines_concurrent"] and s.causes[0].arguments["point"] == "A"


def test_three_parallel_links_let_a_plate_slide():
    at = {"A": (0, 0), "B": (4, 0), "C": (2, 0), "P": (1, 3), "Q": (5, 3), "R": (3, 3)}
    s = verdict(frame(at, {"plate": "P R Q"}, link("P", "A", "plate"), link("Q", "B", "plate"), link("R", "C", "plate"),
                      force(10, "R", "plate", RIGHT)))

    assert codes(s.causes) == ["lines_parallel"] and not s.holds
    assert s.freedoms[0].twists["plate"][2] == 0


def test_three_pins_in_line_let_the_middle_one_move():
    at = {"A": (0, 0), "C": (2, 0), "B": (5, 0)}
    s = verdict(frame(at, {"left": "A C", "right": "C B"}, pin("C", "left", "right"), support("pin", "A", "left"),
                      support("pin", "B", "right"), force(10, "C", "left")))

    (motion,) = s.freedoms
    assert "pins_in_line" in codes(s.causes)
    assert velocity(motion.twists["left"], (2, 0)) == velocity(motion.twists["right"], (2, 0)) != (0, 0)
    assert motion.centres == {"left": (0, 0), "right": (5, 0)}
    assert not s.holds


def test_a_four_bar_linkage_moves_as_its_instant_centres_say():
    # The coupler's centre is where the cranks meet (Kennedy and Aronhold).
    at = {"A": (0, 0), "B": (0, 2), "C": (3, 2), "D": (4, 0), "M": (1, 2)}
    problem = frame(at, {"crank": "A B", "coupler": "B M C", "rocker": "C D"}, pin("B", "crank", "coupler"), pin("C", "coupler", "rocker"),
                    support("pin", "A", "crank"), support("pin", "D", "rocker"), force(10, "M", "coupler"))
    s = verdict(problem)

    (motion,) = s.freedoms
    # x = 0 and 2 (x - 4) = -(y - 0) · ... : the line DC from (4, 0) through (3, 2) meets x = 0 at y = 8.
    assert motion.centres["coupler"] == (0, 8)
    assert motion.centres["crank"] == (0, 0) and motion.centres["rocker"] == (4, 0)
    assert moves(motion, assemble(problem))["B"][1] == 0
    assert codes(s.causes) == ["too_few_unknowns"]


def test_a_beam_built_in_at_both_ends_is_three_times_indeterminate():
    s = verdict(beam(support("fixed", "A", "beam"), support("fixed", "B", "beam"), force(10, "C", "beam")))

    assert len(s.self_stresses) == 3 and not s.freedoms and s.holds
    assert codes(s.causes) == ["too_many_unknowns"] and s.causes[0].arguments["over"] == 3


def test_in_an_ambiguous_structure_what_is_fixed_is_still_found():
    # Two pins: the upright reactions are fixed, how they thrust against each other is not.
    w = work(beam(support("pin", "A", "beam"), support("pin", "B", "beam"), force(12, "C", "beam", slope(3, -4)),
                  asked=(Asked("reaction", point="A", component="y"), Asked("reaction", point="B", component="x"))))

    assert [found for _, found in w.soundness.found] == [True, False]
    assert set(w.soundness.self_stresses[0].unknowns) == {"A_x", "B_x"}
    assert [a.found for a in w.answers] == [True, False]
    assert w.answers[0].components[0].value == F(12 * 4, 5) / 2
    assert w.proof.passed and w.recommended.count == 1


def test_tongs_that_nothing_holds_are_no_error_while_their_loads_balance():
    at = {"A": (-2, 1), "B": (-2, -1), "C": (0, 0), "D": (1, 1), "E": (1, -1)}
    tongs = [{"one": "A C E", "two": "B C D"}, pin("C", "one", "two"), link("D", "E", "two", "one")]
    w = work(frame(at, *tongs, force(40, "A", "one", DOWN), force(40, "B", "two", UP), asked=(Asked("link", subject="DE"),)))

    assert len(w.soundness.freedoms) == 3 and w.soundness.holds and w.soundness.solvable
    # Moments about C on one half: 40 · 2 = F · 1.
    assert w.answers[0].components[0].value == -80 and w.answers[0].components[0].sense == "compression"
    assert w.proof.passed


def test_the_same_tongs_squeezed_unequally_have_no_equilibrium():
    at = {"A": (-2, 1), "B": (-2, -1), "C": (0, 0), "D": (1, 1), "E": (1, -1)}
    w = work(frame(at, {"one": "A C E", "two": "B C D"}, pin("C", "one", "two"), link("D", "E", "two", "one"),
                   force(40, "A", "one", DOWN), force(50, "B", "two", UP)))

    assert not w.soundness.holds and w.recommended is None
    assert any(f.failing and not f.failing.unknowns for f in w.soundness.freedoms)


def test_the_failing_sum_is_told_although_a_pin_is_a_body_of_its_own():
    at = {"A": (-2, 0), "C": (0, 0), "B": (2, 0), "G": (0, 2)}
    s = verdict(frame(at, {"left": "A C", "right": "C B", "mast": "C G"}, pin("C", "left", "right", "mast"), link("G", "A", "mast", "left"),
                      link("G", "B", "mast", "right"), support("pin", "A", "left"), force(10, "B", "right")))

    (motion,) = s.freedoms
    assert motion.failing is not None and motion.failing.functional.point == "A"


@pytest.mark.parametrize("typed, remark", [("0.866", True), ("0.8660254", True), ("0.85", False)])
def test_loads_that_miss_balance_by_rounding_are_put_down_to_it(typed, remark):
    s = verdict(beam(support("roller", "A", "beam", UP), support("roller", "B", "beam", UP), force(100, "C", "beam", angle(30)),
                     force(100 * F(typed), "B", "beam", LEFT)))

    assert not s.holds
    assert ("off_balance" in codes(s.remarks)) == remark
    if remark:
        share = next(r for r in s.remarks if r.code == "off_balance").arguments["share"]
        assert share == pytest.approx(abs(float(typed) - 0.75**0.5) / 0.75**0.5, rel=1e-3)


@pytest.mark.parametrize("size", [F(1, 1000), F(1), F(1000)])
def test_rounding_is_judged_by_a_share_whatever_the_size_of_the_figure(size):
    at = {"A": (0, 0), "C": (2 * size, 0), "B": (4 * size, 0)}
    s = verdict(frame(at, {"beam": "A C B"}, support("pin", "A", "beam"), force(100, "C", "beam"), force(F("50.01"), "B", "beam", UP)))
    off = verdict(frame(at, {"beam": "A C B"}, support("pin", "A", "beam"), force(100, "C", "beam"), force(52, "B", "beam", UP)))

    assert "off_balance" in codes(s.remarks) and "off_balance" not in codes(off.remarks)


@pytest.mark.parametrize("height, remark", [("0.0002", True), ("0.02", False)])
def test_forces_thousands_of_times_the_load_are_called_nearly_critical(height, remark):
    at = {"A": (0, 0), "C": (2, height), "B": (4, 0)}
    s = verdict(frame(at, {"left": "A C", "right": "C B"}, pin("C", "left", "right"), support("pin", "A", "left"),
                      support("pin", "B", "right"), force(10, "C")))

    assert s.determinate and s.holds
    assert ("nearly_critical" in codes(s.remarks)) == remark


@pytest.mark.parametrize("x, remark", [("2.01", True), ("2.2", False), ("2", None)])
def test_three_lines_that_nearly_meet_are_remarked(x, remark):
    # Rollers through D, or nearly so.
    s = verdict(frame({**BEAM, "E": (x, 1)}, {"beam": "A C B"}, support("roller", "A", "beam", towards("A", "D")),
                      support("roller", "B", "beam", towards("B", "D")), support("roller", "C", "beam", towards("C", "E")),
                      force(10, "A", "beam")))

    if remark is None:
        assert "lines_concurrent" in codes(s.causes)
    else:
        assert s.determinate and ("nearly_concurrent" in codes(s.causes)) == remark


def test_a_contact_that_would_have_to_pull_opens_and_one_that_pushes_does_not():
    pulls = work(beam(support("pin", "C", "beam"), support("contact", "B", "beam", UP), force(10, "A", "beam")))
    pushes = work(beam(support("pin", "C", "beam"), support("contact", "B", "beam", DOWN), force(10, "A", "beam")))

    assert [o.connection.points for o in pulls.opened] == [("B",)]
    assert not pulls.soundness.holds and len(pulls.soundness.freedoms) == 1
    assert pushes.opened == () and pushes.proof.passed


def test_a_structure_without_loads_is_found_to_carry_nothing():
    w = work(beam(support("pin", "A", "beam"), support("roller", "B", "beam", UP)))

    assert w.soundness.solvable and w.proof.passed
    assert all(v == 0 for v in w.values.values())


def test_a_part_that_nothing_touches_is_free_three_times_over_and_spoils_nothing_else():
    at = {**BEAM, "X": (8, 8), "Y": (9, 8)}
    w = work(frame(at, {"beam": "A C B", "spare": "X Y"}, support("pin", "A", "beam"), support("roller", "B", "beam", UP),
                   force(10, "C", "beam")))

    assert len(w.soundness.freedoms) == 3 and w.soundness.solvable
    assert all(set(f.twists) == {"spare"} for f in w.soundness.freedoms)
    assert w.proof.passed and w.values["A_y"] == 5


def test_a_couple_alone_cannot_be_held_by_a_pin():
    s = verdict(beam(support("pin", "A", "beam"), couple(10, "beam", "C")))

    assert not s.holds and [t.coefficient for t in s.freedoms[0].failing.terms] == [1]


def test_a_slanted_slide_without_a_stop_names_the_failing_sum_along_it():
    s = verdict(beam(support("guide", "A", "beam", components(1, 1)), spread("beam", "A", "B", 3)))

    failing = s.freedoms[0].failing
    assert failing.functional.kind == "along" and not failing.unknowns and failing.terms


def test_a_disc_that_spins_idly_is_no_mechanism():
    at = {"W": (F(-1, 2), F(2)), "V": (F(1, 2), F(2)), "C": (F(0), F(0))}
    stops = (Stop("W", GROUND), Stop("C", "pulley", "under", F(1, 2)), Stop("V", GROUND))
    problem = Problem(tuple(Point(n, xy) for n, xy in at.items()), (Part("pulley", ("C",), "disc", radii=(F(1, 2),)),), (),
                      (weight(600, "C", "pulley"),), (Asked("everything"),), cords=(Cord("T", stops),))
    w = work(problem)

    assert w.soundness.freedoms == () and w.soundness.causes == () and w.soundness.holds
    assert w.values["T"] == 300 and w.proof.passed
