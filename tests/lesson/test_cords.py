"""Cords, discs and blocks: as given, where a strand is cut, and what the sign of a tension says."""

from lessons import worked_text
from unpin import api
from unpin.lesson.build import build
from unpin.render import terminal

BUCKET = """
units: m, N
points: {A: [0, 0], C: A right 2, G: C left 1 down 3, E: C right 0.2 down 1}
members: {arm: A C}
discs: {pulley: 0.2 m at C}
blocks: {sack: at E}
cords: {T: sack over pulley to G}
supports: {A: fixed}
loads: [weight of sack 500 N]
find: [A, T]
"""


def said(text: str) -> str:
    return " ".join(terminal.write(build(worked_text(text), drawn=False)).split())


def test_a_cord_is_given_from_end_to_end_with_its_discs():
    text = said(BUCKET)

    assert "pulley, a disc of radius 0.2 m about C" in text
    assert "A light cord with the tension T, from block sack at E over pulley to the ground at G" in text
    assert "Find • The reaction at A • The tension T" in text


def test_a_strand_that_is_cut_pulls_on_the_body_and_a_tension_must_be_positive():
    text = said(BUCKET)

    assert "At E the cord pulls with T, upward." in text
    assert "T is positive: the cord is taut, as it must be." in text
    assert "A block of no size has two sums and no moment." in text


def test_discs_and_blocks_are_called_what_they_are():
    text = said(BUCKET)

    assert "Cut block sack loose" in text and "pulley, a disc of radius" in text
    assert "The weight of block sack, 500 N, at E" in text
    assert "member sack" not in text and "member pulley" not in text and "member arm" in text


def test_a_cord_that_would_have_to_push_goes_slack():
    assert "T is negative: the cord would have to push, which it cannot." in said(BUCKET.replace("weight of sack 500 N", "500 N at E up on sack"))


SLACK = BUCKET.replace("weight of sack 500 N", "500 N at E up on sack")


def test_a_cord_that_would_have_to_push_is_no_solution():
    one = build(worked_text(SLACK), drawn=False)
    text = " ".join(terminal.write(one).split())

    assert not one.solved
    assert "T came out negative. A cord cannot push" in text and "T = −500 N a cord cannot push" in text.replace("\u202f", " ")
    assert "compression" not in text
    assert api.as_data(worked_text(SLACK))["soundness"]["remarks"] == ["slack_cord"]


def test_why_a_cord_has_one_tension_is_said_once():
    text = said(BUCKET)

    assert text.count("A disc that is free to turn on its pin has no moment about its centre, so the cord pulls equally on both sides") == 1
    assert "It only hangs on the cord, so the tension must balance its load." in text


def test_a_pulley_that_stays_on_its_arm_is_said_to():
    text = said(BUCKET.replace("find: [A, T]", "find: [A]\nroute:\n  - forces along y on sack\n  - forces along x on arm + pulley\n"
                               "  - forces along y on arm + pulley\n  - moments about A on arm + pulley\n"))

    assert "Cut member arm with its disc pulley loose. The disc stays on its pin" in text
    assert "The lesson follows the sums that the file asks for." in text


TACKLE = """
units: m, N
points: {W: [0, 2], M: [0.1, 0.5], F: [0.3, 2], S: M down 0.2}
discs: {lower: 0.1 at M, upper: 0.1 at F}
members: {hook: M S}
cords: {T: W under lower over upper pulled down}
supports: {F: pin}
loads: [400 N at S down]
find: [T]
"""


def test_what_can_be_solved_although_it_could_move_is_said_to_be_solvable_first():
    text = said(TACKLE)

    assert "--- The problem can be solved: the loads can be balanced, and everything asked can be found." in text
    assert "Something is not held" not in text
    assert "to its free end (pulled downward)" in text
