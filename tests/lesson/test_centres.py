"""Moment centres without a name: a letter that nothing else has, on the figure and in the sum."""

from lessons import worked_text
from unpin.draw.figure import draw
from unpin.draw.label import plain
from unpin.draw.scene import Group
from unpin.draw.scene import Text as Mark
from unpin.lesson.build import build
from unpin.lesson.centres import with_centres
from unpin.lesson.nodes import Working, drawings, walk
from unpin.lesson.sheet import sheet_for
from unpin.model.directions import X
from unpin.model.equation import Equation, Functional
from unpin.render.maths import text as signs
from unpin.render.maths.sentence import written

BRACKET = """
units: m, N
points: {A: [0, 0], B: A right 2, C: A right 3, D: A down 1.5, Q: A right 1}
members: {arm: A Q B C}
links: [D-B]
supports: {A: pin, D: pin}
loads: [50 N at C down on arm, 5 N at Q up on arm]
find: [D-B]
route:
  - moments about (0, 1) on arm
  - forces along x on arm
"""


def marks(items):
    for m in items:
        yield from marks(m.marks) if isinstance(m, Group) else [m]


def test_a_nameless_centre_takes_a_letter_that_nothing_has_and_keeps_it():
    problem = worked_text(BRACKET).problem
    at = ((1, 2), (3, 4))
    sums = [Equation(None, Functional("about", at=at[k % 2]), ()) for k in range(3)] + [Equation(None, Functional("along", direction=X), ())]

    assert with_centres(sheet_for(problem, {}), problem, sums).centres == ((at[0], "O"), (at[1], "S"))


def test_the_letter_stands_in_the_sum_on_the_figure_and_in_its_caption():
    one = build(worked_text(BRACKET))
    body = next(d for d in drawings(one) if d.which == "body")
    first = next(n for s in one.sections if s.kind == "body" for n in walk(s.children) if isinstance(n, Working))

    assert signs.write(first.header) == "↺+ ΣM_O = 0"
    assert written(body.caption) == "Free-body diagram of member arm. The double ring marks O, the centre of the moments."
    assert "O" in [plain(m.label) for m in marks(draw(body.figure).marks) if isinstance(m, Mark)]
    assert "A double ring marks the moment centre O, at (0 m, 1 m)." in " ".join(written(t) for t in body.description).replace("\u202f", " ")


def test_a_named_centre_keeps_its_name():
    one = build(worked_text(BRACKET.replace("(0, 1)", "A")))

    assert written(next(d for d in drawings(one) if d.which == "body").caption).endswith("The double ring marks A, the centre of the moments.")
