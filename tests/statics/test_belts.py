"""Strands of belts: tangent to both rims, each with its own tension."""

import math

import pytest

from unpin.exact.number import approx
from unpin.read import read_text
from unpin.route.work import work
from unpin.statics.cords import strands

DRIVE = """
letters: {{T: 400 N, S: 120 N, M: unknown, Q: unknown}}
points: {{A: [0, 0], B: [1.2, 0]}}
discs: {{motor: 0.1 m at A, stone: 0.3 m at B}}
cords: {{T: belt from top of motor to {one} of stone, S: belt from bottom of motor to {other} of stone}}
supports: {{A: pin, B: pin}}
loads: [M anticlockwise on motor, Q clockwise on stone]
find: [M, Q, A]
"""


@pytest.mark.parametrize("one, other, radii, way", [("top", "bottom", 0.2, 1), ("bottom", "top", 0.4, -1)])
def test_a_belt_turns_its_discs_by_the_difference_of_its_tensions(one, other, radii, way):
    """Torque on a pulley is (T1 - T2) r; the strands lean by arcsin of the difference of the radii (crossed: their sum) over the
    distance (any handbook of machine elements, from memory)."""
    reading = read_text(DRIVE.format(one=one, other=other))
    worked = work(reading.problem)
    values = {c.symbol.base + c.symbol.sub: approx(c.value) for a in worked.answers for c in a.components}

    assert reading.sound and worked.proof.passed
    assert values["M"] == pytest.approx((400 - 120) * 0.1)
    assert values["Q"] == pytest.approx((400 - 120) * 0.3 * way)
    assert values["Ax"] == pytest.approx(-(400 + 120) * math.cos(math.asin(radii / 1.2)))
    tight = strands(reading.problem, reading.problem.cords[0])[0]
    assert abs(float(tight.direction[1])) == pytest.approx(radii / 1.2)


def test_a_strand_may_leave_a_disc_in_a_direction():
    worked = work(read_text("letters: {M: unknown, S: 120 N}\npoints: {A: [0, 0]}\ndiscs: {motor: 0.1 m at A}\n"
                            "cords: {S: belt from bottom of motor pulled right}\nsupports: {A: pin}\n"
                            "loads: [M clockwise on motor]\nfind: [M, A]").problem)

    assert worked.proof.passed
    assert [approx(c.value) for c in worked.answers[0].components] == [pytest.approx(12)]
