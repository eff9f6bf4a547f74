"""Points made as a figure gives them: by two distances, as mirror images, as the foot of an upright; and the units of older books.

Expected places by hand: triangles of 3, 4 and 5 (Euclid), and what a mirror image is.
"""

import math

import pytest

from unpin.base.units import BY_SPELLING
from unpin.exact.number import approx
from unpin.read import read_text
from unpin.route.work import work

BASE = "points: {{A: [0, 0], B: A right 5, D: [0, 3], {}}}\nmembers: {{frame: A B}}\nsupports: {{A: fixed}}\nloads: [1 N at B down]\n"


def place(name, said):
    reading = read_text(BASE.format(said))

    assert reading.problem is not None, reading.diagnostics
    return pytest.approx(tuple(map(approx, reading.problem.coordinates[name])))


@pytest.mark.parametrize(("said", "expected"), [
    ("C: 4 from A and 3 from B above", (3.2, 2.4)),
    ("C: 4 from A and 3 from B below", (3.2, -2.4)),
    ("C: 3 from B and 4 from A below", (3.2, -2.4)),
    ("C: 3 m from A and 300 cm from D right", (3 * math.sqrt(3) / 2, 1.5)),
    ("C: 3 from D and 3 from A left", (-3 * math.sqrt(3) / 2, 1.5)),
])
def test_a_corner_of_a_triangle_is_given_by_the_lengths_of_two_sides(said, expected):
    assert expected == place("C", said)


@pytest.mark.parametrize(("said", "expected"), [
    ("C: B mirrored in line A D", (-5, 0)),
    ("C: D mirrored in A B", (0, -3)),
    ("C: D mirrored in line from B along up", (10, 3)),
    ("E C: D B mirrored in line from A along right 1 up 1", (0, 5)),
    ("E C: A B up 3 left 1", (4, 3)),
    ("C: foot of A on line B D", (45 / 34, 75 / 34)),
    ("C: foot of D on B A", (0, 0)),
])
def test_a_point_is_a_mirror_image_or_the_foot_of_an_upright(said, expected):
    assert expected == place("C", said)


def test_a_length_of_a_side_may_stay_a_letter():
    reading = read_text("letters: {P: a force, a: a length}\npoints: {A: [0, 0], B: A right 2a, C: 2a from A and 2a from B above}\n"
                        "links: [A-C-B, A-B]\nsupports: {A: pin, B: roller}\nloads: [P at C down]\nfind: [A-B]")
    worked = work(reading.problem)

    # An equilateral triangle: half the load, times the tangent of 30 degrees.
    assert worked.proof.passed
    assert approx(worked.answers[0].components[0].value) == pytest.approx(100 / 2 / math.sqrt(3))


@pytest.mark.parametrize(("unit", "newtons"), [("kgf", 9.80665), ("kp", 9.80665), ("tf", 9806.65), ("daN", 10), ("klf", 1000 * 4.4482216152605 / 0.3048),
                                              ("plf", 4.4482216152605 / 0.3048)])
def test_units_of_older_books_have_their_standard_size(unit, newtons):
    """Source: NIST SP 811 (2008), appendix B.8, kilogram-force and pound-force; from memory."""
    assert float(BY_SPELLING[unit].factor) == pytest.approx(newtons, rel=1e-12)


@pytest.mark.parametrize(("said", "expected"), [("20 kip-ft", 20 / 10), ("240 kip-in", 20 / 10), ("20000 ft-lb", 20 / 10), ("2 kip * 4 ft - 3 kip-ft", 5 / 10)])
def test_a_hyphen_between_the_units_of_a_moment_is_a_product(said, expected):
    reading = read_text(f"units: ft, kip\npoints: {{A: [0, 0], B: A right 10}}\nmembers: {{beam: A B}}\nsupports: {{A: pin, B: roller}}\n"
                        f"loads: [{said} clockwise on beam]\nfind: [B]")
    worked = work(reading.problem)

    assert reading.sound and worked.proof.passed
    assert approx(worked.answers[0].components[0].value) == pytest.approx(expected * 4448.2216152605)


def test_a_kilogram_weighs_a_kilogram_force_where_forces_are_in_that_unit():
    reading = read_text("units: cm, kgf\npoints: {A: [0, 0], B: A right 40}\nmembers: {arm: A B}\nsupports: {A: fixed}\nloads: [mass 3 kg hangs at B]\nfind: [A]")
    worked = work(reading.problem)
    by_name = {c.symbol.base: c.value / BY_SPELLING["kgf"].factor for c in worked.answers[0].components}

    assert by_name["M"] * 100 == 120
