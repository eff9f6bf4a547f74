"""The library in a handful of calls; the command line does nothing that these cannot.

>>> import unpin
>>> problem = unpin.loads("points: {A: [0, 0], B: A right 2}\\nmembers: {beam: A B}\\nsupports: {A: fixed}\\nloads: [3 N at B down]\\nfind: [A]")
>>> worked = unpin.solve(problem)
>>> [(a["name"], a["value"], a["unit"], a["sense"]) for a in unpin.as_data(worked)["answers"]][-1]
('M_A', 6.0, 'N·m', 'anticlockwise')
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from unpin.base.diagnostic import Defect, Faulty
from unpin.lesson.nodes import Lesson
from unpin.model.house import House
from unpin.model.problem import Problem
from unpin.notebook import install
from unpin.route.worked import Worked

if TYPE_CHECKING:
    from pathlib import Path

    from unpin.read.edits import Revision

install()


def load(path: str | Path, style: str | Path | House = "", language: str = "") -> Problem:
    """The problem in a file, in its house style. `style`: a house style or its file, "none" for none, "" for the file house.style beside the
    problem or above it, up to the current folder. `language`: that of everything it is shown in, instead of the style's.
    Raises Faulty, which holds every diagnostic, when the problem or the style has errors."""
    from unpin.read import read_file

    return _housed(_checked(read_file(path)), path, style, language)


def loads(text: str, name: str = "", style: str | Path | House = "none", language: str = "") -> Problem:
    """The problem in a text; `name` stands for the file in diagnostics, `style` and `language` as for `load`. Raises Faulty."""
    from unpin.read import read_text

    return _housed(_checked(read_text(text, name)), name, style, language)


def house(path: str | Path) -> House:
    """The house style in a file. Raises Faulty."""
    from unpin.houses import style_for

    found, remarks = style_for("", path)
    if any(d.is_error for d in remarks):
        raise Faulty(remarks)
    return found


def _housed(problem: Problem, path: str | Path, style: str | Path | House, language: str) -> Problem:
    from unpin.houses import put_on, style_for

    remarks = ()
    if not isinstance(style, House):
        style, remarks = style_for(path, style)
    if any(d.is_error for d in remarks):
        raise Faulty(remarks)
    return put_on(problem, style, language)[0]


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


def index(folder: str | Path) -> tuple:
    """Every problem of a folder from easy to hard, as `unpin.register.Entry`: parts, kinds of connection, what it teaches, sums, minutes;
    files with faults last, with their diagnostics. NotADirectoryError when it is no folder."""
    from unpin.register import index as listed

    return listed(folder)


def paper(several: Sequence[Worked], title: str = "", marks: Sequence[tuple[int, ...]] = (), answers: bool = False,
          figures: int = 0) -> Lesson:
    """A sheet of several problems that are solved. `marks`: of each problem one number, or one for each part; `answers`: whether they
    stand at the back. Raises ValueError when a problem is not solved or the marks do not fit."""
    from unpin.lesson.paper import paper as sheet

    return sheet(several, title, marks, answers, figures)


def rename(text: str, old: str, new: str, kind: str = "") -> Revision:
    """The text of a problem file with another name for a point, member, letter… wherever it is meant. A change that would break the file
    is refused: see `Revision.refused`. `Revision.undo` takes it back. The same holds for the five below."""
    from unpin.read.edits import rename as change

    return change(text, old, new, kind)


def add_entry(text: str, section: str, phrase: str | Sequence[Any], name: str = "", before: str | int = "") -> Revision:
    """With one entry more, at the end of its section or before another; remarks, order, spacing and quotes of the rest stay."""
    from unpin.read.edits import add

    return add(text, section, phrase, name, before)


def change_entry(text: str, section: str, key: str | int, phrase: str | Sequence[Any]) -> Revision:
    """With another phrase in an entry. `key`: its name, or its number in a list, from 1."""
    from unpin.read.edits import change

    return change(text, section, key, phrase)


def remove_entry(text: str, section: str, key: str | int, dependants: bool = False) -> Revision:
    """With one entry less; what cannot be without it stands in the way, or goes too where `dependants` says so."""
    from unpin.read.edits import remove

    return remove(text, section, key, dependants)


def place_point(text: str, point: str, at: str | Sequence[Any]) -> Revision:
    """With a point somewhere else: two coordinates (right, up) in the file's unit of length, or a construction."""
    from unpin.read.edits import place

    return place(text, point, at)


def set_section(text: str, section: str, value: str) -> Revision:
    """With another title, text, units, gravity or figures; without a value the section goes."""
    from unpin.read.edits import put

    return put(text, section, value)


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
