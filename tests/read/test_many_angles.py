"""Many given angles beside letters: there is room for as many as a file speaks of, and a remark where they are not counted."""

import math

import pytest

from unpin.exact.number import approx
from unpin.read import read_text
from unpin.route.work import work

ANGLES = [10 + 1.3 * k for k in range(26)]


def beam(loads, find="B"):
    return read_text("letters: {P: a force drawn 1 N, a: a length drawn 1 m}\npoints: {A: [0, 0], B: A right a, C: B right a}\nmembers: {beam: A B C}\n"
                     f"supports: {{A: pin, B: roller}}\nloads: [{loads}]\nfind: [{find}]")


@pytest.mark.parametrize("unit", [" deg", ""])
def test_two_dozen_forces_and_more_at_angles_of_their_own_beside_a_letter_are_added_up(unit):
    reading = beam(", ".join(f"P at C at {a:.1f}{unit} below right" for a in ANGLES))
    assert reading.sound
    (found,) = work(reading.problem).answers[0].components

    # Moments about A by hand: B a = 2 a sum of P sin.
    assert approx(found.value) == pytest.approx(2 * sum(math.sin(math.radians(a)) for a in ANGLES))


def test_more_numbers_beside_letters_than_were_counted_are_a_remark_and_no_defect():
    points = ", ".join(f"Q{k}: [a*sin({a:.1f}), a*cos({a:.1f})]" for k, a in enumerate(ANGLES))
    reading = read_text("letters: {a: a length}\npoints: {A: [0, 0], " + points + "}\nmembers: {beam: A Q0}\nsupports: {A: fixed}\n"
                        "loads: [5 N at Q0 down]\nfind: [A]")

    assert [d.code for d in reading.diagnostics if d.is_error] == ["read.no_room"]
    assert not reading.sound
