"""Cords, discs and blocks: as given, where a strand is cut, and what the sign of a tension says."""

from lessons import worked_text

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

    assert "Cut block sack loose" in text and "the pin joins it to disc pulley" in text
    assert "The weight of block sack, 500 N, at E" in text
    assert "member sack" not in text and "member pulley" not in text and "member arm" in text


def test_a_cord_that_would_have_to_push_goes_slack():
    assert "T is negative: the cord would have to push, which it cannot." in said(BUCKET.replace("weight of sack 500 N", "500 N at E up on sack"))
