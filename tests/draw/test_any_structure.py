"""Structures nobody chose: every one can be drawn, and in the plainer ones no label meets anything."""

from fractions import Fraction as F

import pytest
from frames import LETTERING

from structures import structure
from unpin.draw.figure import apart_figure, draw, final_figure, free_body_figure, problem_figure
from unpin.draw.meter import meter
from unpin.statics.assemble import assemble
from unpin.statics.inspect import inspect
from unpin.statics.isolate import isolate


def figures(problem):
    seen = inspect(problem)
    yield problem_figure(assemble(problem), LETTERING)
    yield apart_figure(seen, LETTERING)
    yield from (free_body_figure(isolate(seen, [b.name]), seen, LETTERING, centre=problem.points[0].name) for b in seen.bodies)
    yield final_figure(seen, LETTERING, {u.id: F((-1) ** n * (7 + n)) for n, u in enumerate(seen.unknowns)})


@pytest.mark.parametrize("seed", range(24))
@pytest.mark.parametrize("numbers", ["rational", "angle"])
def test_no_label_meets_anything_in_a_structure_of_two_steps(seed, numbers):
    for figure in figures(structure(seed, steps=2, loads=1, numbers=numbers)):
        meets = [f for f in meter(draw(figure)) if f.code.startswith("label_meets")]

        assert meets == [], (figure.kind, [str(f) for f in meets])


@pytest.mark.parametrize("seed", range(100, 106))
def test_even_a_crowded_structure_is_drawn_within_its_page(seed):
    for figure in figures(structure(seed, steps=4, loads=4)):
        assert not [f for f in meter(draw(figure)) if f.code in ("label_outside", "label_small")]
