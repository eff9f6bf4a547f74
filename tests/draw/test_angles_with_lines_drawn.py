"""The figure shows the angle a force was given by, with its line, and not the angle with the level."""

import math

import pytest
from frames import LETTERING

from unpin.draw.figure import draw, problem_figure
from unpin.draw.geometry import page_angle
from unpin.draw.meter import meter
from unpin.draw.scene import Path, Text, leaves
from unpin.read import read_text
from unpin.statics.assemble import assemble

FILE = """title: Arm
points: {{A: [0, 0], C: A {way}, E: C {way}}}
members: {{arm: A C E}}
supports: {{A: fixed}}
loads: [200 N at E at {said} from C E]
find: [A]
"""


def drawing(said, way):
    scene = draw(problem_figure(assemble(read_text(FILE.format(said=said, way=way)).problem), LETTERING))
    assert not meter(scene)
    return list(leaves(scene.marks))


@pytest.mark.parametrize("way", ["right 2", "right 2 up 1", "right 1 up 2"])
@pytest.mark.parametrize(("said", "expected"), [("60 deg clockwise", 60), ("110 deg clockwise", 110), ("35 deg anticlockwise", 35)])
def test_the_arc_spans_the_angle_between_the_line_and_the_force(said, expected, way):
    marks = drawing(said, way)
    (sweep,) = [m.spots for m in marks if isinstance(m, Path) and m.role == "angle"]
    (ray,) = [m.spots for m in marks if isinstance(m, Path) and m.role == "reference"]
    apex = ray[0]
    ends = [page_angle((x - apex[0], y - apex[1])) for x, y in (sweep[0], sweep[-1])]
    line = page_angle((ray[1][0] - apex[0], ray[1][1] - apex[1]))
    x, y = {"right 2": (1, 0), "right 2 up 1": (2, 1), "right 1 up 2": (1, 2)}[way]

    assert abs((ends[1] - ends[0] + 180) % 360 - 180) == pytest.approx(expected, abs=0.01)
    assert abs((line - math.degrees(math.atan2(y, x)) + 90) % 180 - 90) < 0.01


@pytest.mark.parametrize(("said", "shown"), [("60 deg clockwise", "60°"), ("110 deg anticlockwise", "110°")])
def test_the_angle_is_lettered_as_it_was_given(said, shown):
    notes = ["".join(run.text for run in m.label) for m in drawing(said, "right 2 up 1") if isinstance(m, Text) and m.role == "angle"]

    assert notes == [shown]
