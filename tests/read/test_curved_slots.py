"""Slots along an arc: the pin is held as by a link to the arc's centre, and a pin that is off the arc is told how far."""

import math

import pytest

from unpin.draw.bodies import reach_of
from unpin.exact.number import approx
from unpin.read import read_text
from unpin.route.work import work

ARM = """
points: {{O: [0, 0], K: 0.5 from O at 60 deg, P: 0.5 from O at 20 deg, Q: {end}, A: K left 0.6, B: K right 0.2}}
members: {{arm: A K B, plate: O P}}
{held}
supports: {{O: fixed, A: pin}}
loads: [60 N at B down]
find: [A, {asked}]
"""


def read(held="slots: {K: arm in plate round O from P to Q}", end="0.5 from O at 100 deg", asked="K on arm"):
    return read_text(ARM.format(held=held, end=end, asked=asked))


def values(reading):
    assert reading.sound, [d.code for d in reading.diagnostics]
    worked = work(reading.problem)
    assert worked.proof.passed
    return [(c.symbol.base, approx(c.value)) for a in worked.answers for c in a.components]


@pytest.mark.parametrize("slot", ["slots: {K: arm in plate round O from P to Q}", "slots: {K: arm in ground around O}"])
def test_the_pin_is_held_as_by_a_link_to_the_centre_of_the_arc(slot):
    """A point that moves on a circle is guided alike by a curved slot and by a link pinned at the centre (common practice, no source)."""
    *reaction, push = values(read(slot, asked="K on arm" if "plate" in slot else "K"))
    *alike, link = values(read("links: [O-K]", asked="O-K"))

    assert reaction == pytest.approx(alike) if not reaction else [v for _, v in reaction] == pytest.approx([v for _, v in alike])
    assert abs(push[1]) == pytest.approx(abs(link[1]))


def test_the_pin_must_be_between_the_ends_and_on_the_arc():
    beyond = read(end="0.5 from O at 50 deg")
    off = read(end="0.45 from O at 100 deg")
    rounded = read(end="[-0.0868, 0.4924]")

    assert [d.code for d in beyond.diagnostics if d.is_error] == ["read.slide_beyond"]
    assert [(d.code, d.arguments["off"]) for d in off.diagnostics if d.is_error] == [("read.arc_off", "0.05 m")]
    assert rounded.sound


@pytest.mark.parametrize("end, far, near", [("300", True, False), ("100", False, True), ("60", True, True)])
def test_an_arc_may_run_the_long_way_round(end, far, near):
    """From 20 deg to 300 deg the short way runs over 340 deg, the long way over the pin at 60 deg."""
    for way, sound in ((" the long way", far), ("", near)):
        reading = read(f"slots: {{K: arm in plate round O from P to Q{way}}}", end=f"0.5 from O at {end} deg")
        assert [d.code for d in reading.diagnostics if d.is_error] == ([] if sound else ["read.slide_beyond"])
        if sound:
            assert values(reading) == values(read())


def test_a_long_arc_is_drawn_from_end_to_end():
    problem = read("slots: {K: arm in plate round O from P to Q the long way}", end="0.5 from O at 300 deg").problem
    slot = next(c for c in problem.connections if c.kind == "slot")
    left, right, bend = reach_of(slot, {p.name: tuple(map(float, p.at)) for p in problem.points})

    assert abs(bend) == pytest.approx(0.5)
    assert sorted((left, right)) == pytest.approx([0.5 * math.radians(40), 0.5 * math.radians(240)])


@pytest.mark.parametrize("held, code", [
    ("slots: {K: arm in plate round O the long way}", "read.arc_long"),
    ("slots: {K: arm in ground along right the long way}", "read.arc_long"),
    ("slots: {K: arm in plate round K}", "read.no_line"),
    ("slots: {K: arm in arm round O}", "read.slide_itself"),
    ("slots: {K: \"arm in ground round O, along right\"}", "read.arc_own_way"),
    ("collars: {K: arm on plate round O}", "read.arc_slot_only"),
])
def test_a_slip_in_a_curved_slot_is_told(held, code):
    assert [d.code for d in read(held).diagnostics if d.is_error] == [code]
