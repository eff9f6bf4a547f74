"""Structures of very many points: as wide as the page, and a label has a free place of its own or none."""

from __future__ import annotations

import pytest

from unpin.draw.figure import draw
from unpin.draw.geometry import rects_meet
from unpin.draw.items import crowded
from unpin.draw.scene import Text, leaves, text_box, text_tilt
from unpin.lesson.build import build
from unpin.lesson.nodes import drawings
from unpin.read import read_text
from unpin.route.work import work


def ladder(rungs: int):
    """An upright row of braced squares on two supports, pushed at its top: large, and as high as others are wide."""
    points = "".join(f"  A{k}: [0, {k}]\n  B{k}: [1, {k}]\n" for k in range(rungs))
    bars = [f"{c}{k}-{c}{k + 1}" for k in range(rungs - 1) for c in "AB"] + [f"A{k}-B{k + 1}" for k in range(rungs - 1)]
    bars += [f"A{k}-B{k}" for k in range(1, rungs)] + ["A0-B0"]
    text = f"units: m, kN\npoints:\n{points}links: [{', '.join(bars)}]\nsupports: {{A0: pin, B0: roller}}\n"
    return read_text(text + f"loads:\n  - 3 kN at A{rungs - 1} right\nfind: [everything]\n").problem


@pytest.fixture(scope="module")
def figures():
    return {d.which: d for d in drawings(build(work(ladder(18)))) if d.which in ("problem", "final")}


def test_the_figures_are_crowded_and_say_that_something_may_be_left_out(figures):
    for drawing in figures.values():
        assert crowded(drawing.figure.pieces[0])
        assert "caption.left_out" in str(drawing.caption)


def test_no_label_lies_on_another(figures):
    for drawing in figures.values():
        texts = [t for t in leaves(draw(drawing.figure).marks) if isinstance(t, Text)]
        assert len(texts) > 10
        for k, a in enumerate(texts):
            for b in texts[:k]:
                assert not rects_meet(text_box(a), text_tilt(a), text_box(b), text_tilt(b)), (a.runs if hasattr(a, "runs") else a, b)


def test_the_figure_fits_the_page(figures):
    for drawing in figures.values():
        scene = draw(drawing.figure)
        assert scene.width < 500 and scene.height < 700


def test_few_points_do_not_crowd_a_figure():
    problem = next(d for d in drawings(build(work(ladder(4)))) if d.which == "problem")
    assert not crowded(problem.figure.pieces[0])
    assert "caption.left_out" not in str(problem.caption)
