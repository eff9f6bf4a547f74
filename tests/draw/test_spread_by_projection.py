"""A spread load that is measured per horizontal or vertical length stands on that length, not on the sloped member."""

from fractions import Fraction as F

import pytest
from frames import DOWN, LETTERING, RIGHT, at

from unpin.base.units import SPREAD
from unpin.draw.figure import draw, free_body_figure, problem_figure
from unpin.draw.meter import meter
from unpin.draw.scene import Arrow, Path, leaves
from unpin.model.problem import GROUND, Connection, Load, Part, Problem, Stretch
from unpin.model.values import Quantity
from unpin.statics.assemble import assemble
from unpin.statics.isolate import isolate


def rafters(per: str, direction=DOWN, first=2000, last=2000) -> Problem:
    """Two rafters that meet at B, each with the load."""
    points = at(A=(0, 0), B=(4, 3), C=(8, 0))
    where = {p.name: p.at for p in points}
    sizes = Quantity(F(first), SPREAD), Quantity(F(last), SPREAD)

    def load(part, a, b):
        return Load("spread", "", part, sizes[0], direction, stretches=(Stretch(where[a], where[b], a, b, *sizes, per),))

    return Problem(
        points,
        (Part("one", ("A", "B")), Part("two", ("B", "C"))),
        (
            Connection("B", "pin", ("B",), ("one", "two")),
            Connection("A", "pin", ("A",), ("one", GROUND)),
            Connection("C", "pin", ("C",), ("two", GROUND)),
        ),
        (load("one", "A", "B"), load("two", "B", "C")) if per != "y" else (load("one", "A", "B"),),
    )


def tips(problem: Problem):
    scene = draw(problem_figure(assemble(problem), LETTERING))
    assert not meter(scene)
    return [m.spots[1] for m in leaves(scene.marks) if isinstance(m, Arrow) and m.role == "spread"]


def test_snow_per_horizontal_length_stands_on_one_level_line_over_both_slopes():
    heights = {round(y, 3) for _, y in tips(rafters("x"))}

    assert len(heights) == 1


def test_a_load_per_length_of_the_member_follows_its_slope():
    heights = {round(y, 3) for _, y in tips(rafters("member"))}

    assert len(heights) > 4


def test_wind_per_vertical_length_stands_beside_the_slope_on_an_upright_line():
    found = tips(rafters("y", RIGHT, 0, 900))

    assert len({round(x, 3) for x, _ in found}) == 1
    assert len({round(y, 3) for _, y in found}) == len(found) > 2


def test_a_load_measured_along_its_own_direction_stays_on_the_member():
    found = tips(rafters("x", RIGHT))

    assert len({round(x, 3) for x, _ in found}) > 4


def test_the_outline_on_a_free_body_is_level_as_well_and_dashes_lead_to_the_eaves():
    structure = assemble(rafters("x"))
    scene = draw(free_body_figure(isolate(structure, ["one"]), structure, LETTERING))
    dashes = [m.spots for m in leaves(scene.marks) if isinstance(m, Path) and m.role == "reference"]
    outline = next(spots for spots in dashes if len(spots) == 4)
    pairs = [spots for spots in dashes if len(spots) == 2]

    assert outline[0][1] == pytest.approx(outline[3][1]) and outline[1][1] == pytest.approx(outline[2][1])
    assert any(a[1] == pytest.approx(b[1]) for a, b in pairs)
    assert any(a[0] == pytest.approx(b[0]) and abs(a[1] - b[1]) > 40 for a, b in pairs)
