"""The library in a handful of calls; the command line does nothing that these cannot.

>>> import unpin
>>> problem = unpin.loads("points: {A: [0, 0], B: A right 2}\\nmembers: {beam: A B}\\nsupports: {A: fixed}\\nloads: [3 N at B down]\\nfind: [A]")
>>> worked = unpin.solve(problem)
>>> [(a["name"], a["value"], a["unit"], a["sense"]) for a in unpin.as_data(worked)["answers"]][-1]
('M_A', 6.0, 'N·m', 'anticlockwise')
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Any

from unpin.base.diagnostic import Defect, Faulty
from unpin.lesson.nodes import Lesson
from unpin.model.problem import Problem
from unpin.route.worked import Worked


def load(path: str | Path) -> Problem:
    """The problem in a file. Raises Faulty, which holds every diagnostic, when it has errors."""
    from unpin.read import read_file

    return _checked(read_file(path))


def loads(text: str, name: str = "") -> Problem:
    """The problem in a text; `name` stands for the file in diagnostics. Raises Faulty."""
    from unpin.read import read_text

    return _checked(read_text(text, name))


def _checked(reading) -> Problem:
    if not reading.sound:
        raise Faulty(reading.diagnostics)
    return reading.problem


def check(problem: Problem) -> Worked:
    """Only taken apart and judged sound or not: nothing is solved."""
    from unpin.statics.assemble import assemble
    from unpin.statics.contacts import settle
    from unpin.statics.inspect import inspect
    from unpin.statics.sound import sound

    settled, opened = settle(problem)
    apart = assemble(settled)
    return Worked(problem, apart, inspect(settled), sound(apart), opened=opened)


def solve(problem: Problem) -> Worked:
    """Soundness, routes, values, answers and proof. An unsound problem comes back without routes (see `worked.soundness`).

    Raises Defect when the proof fails: then the program is wrong and nothing it found is to be used.
    """
    from unpin.route.work import work

    worked = work(problem)
    if worked.proof is not None and not worked.proof.passed:
        raise Defect("proof", worked.proof.failures)
    return worked


def explain(worked: Worked, figures: int = 0, route: str = "", drawn: bool = True, short: bool = False, fade: int = 0) -> Lesson:
    """The lesson. `figures`: significant figures, 0 for what the problem says; `route`: recommended, fewest or own, "" for the
    file's own where it reaches everything asked and else recommended; `drawn` False leaves the figures out, which is quicker.
    `short`: plan, diagrams, sums and results only; `fade`: that many of its last kinds of step (1 to 6) left to the reader.
    Raises ValueError for a route or a level there is none of."""
    from unpin.lesson.build import build

    if fade:
        from unpin.lesson.fade import fade as faded
        from unpin.lesson.fade import hides_centres

        return faded(build(worked, figures, route, drawn=drawn, centres=not hides_centres(fade)), fade)
    made = build(worked, figures, route, drawn=drawn)
    if short:
        from unpin.lesson.short import short as shortened

        return shortened(made)
    return made


def paper(several: Sequence[Worked], title: str = "", marks: Sequence[tuple[int, ...]] = (), answers: bool = False,
          figures: int = 0) -> Lesson:
    """A sheet of several problems that are solved. `marks`: of each problem one number, or one for each part; `answers`: whether they
    stand at the back. Raises ValueError when a problem is not solved or the marks do not fit."""
    from unpin.lesson.paper import paper as sheet

    return sheet(several, title, marks, answers, figures)


def as_text(lesson: Lesson) -> str:
    """Plain text, 80 columns."""
    from unpin.render.terminal import write

    return write(lesson)


def as_page(lesson: Lesson) -> str:
    """One self-contained HTML page."""
    from unpin.render.html import write

    return write(lesson)


def as_pdf(lesson: Lesson) -> bytes:
    """A handout, PDF/UA-1."""
    from unpin.render.pdf import write

    return write(lesson)


def as_markdown(lesson: Lesson, folder: str = "figures") -> tuple[str, dict[str, bytes]]:
    """Markdown with LaTeX mathematics that refers to figures in `folder`, and those figures by name."""
    from unpin.render.markdown import pictures, write

    return write(lesson, folder), pictures(lesson)


def as_latex(lesson: Lesson, folder: str = "figures") -> tuple[str, dict[str, bytes]]:
    """LaTeX source that refers to figures in `folder`, and those figures by name."""
    from unpin.render.latex import pictures, write

    return write(lesson, folder), pictures(lesson)


def as_data(worked: Worked, figures: int = 0) -> dict[str, Any]:
    """The solution as plain data, in the format of docs/reference/solution.schema.json."""
    from unpin.lesson.build import chosen_route
    from unpin.lesson.sheet import sheet_for
    from unpin.render.json import data

    lesson = explain(worked, figures, drawn=False)
    route = chosen_route(worked, "") if worked.recommended else None
    return data(worked, lesson, sheet_for(worked.problem, worked.values or {}, figures), route=route)
