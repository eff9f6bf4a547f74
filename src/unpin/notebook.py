"""How problems, solutions, lessons and figures show themselves in a notebook, by the methods that notebooks look for.

The records themselves know nothing of this: `unpin.api` puts the methods on them when it is imported. Nothing is drawn before a notebook
asks. A solution shows its answers with the working folded away behind them; ask `unpin.explain` for a lesson that is open.
"""

from __future__ import annotations

import base64
from typing import TYPE_CHECKING

from unpin.lesson.nodes import Drawing, Lesson
from unpin.model.problem import Problem
from unpin.route.worked import Worked

if TYPE_CHECKING:
    from unpin.lesson.nodes import Section


def install() -> None:
    """Put the methods on the records."""
    for kind, methods in _METHODS.items():
        for name, method in methods.items():
            setattr(kind, name, method)


def _first(worked: Worked, drawn: bool = True) -> Lesson:
    """The lesson of a problem that is only stated: one chapter."""
    from dataclasses import replace

    from unpin.lesson.build import build

    lesson = build(worked, drawn=drawn)
    return replace(lesson, sections=lesson.sections[:1], closing=())


def _checked(problem: Problem) -> Worked:
    from unpin import api

    return api.check(problem)


def _problem_html(problem: Problem) -> str:
    from unpin.render import html

    return html.fragment(_first(_checked(problem)))


def _problem_svg(problem: Problem) -> str:
    from unpin.lesson.nodes import drawings

    lesson = _first(_checked(problem))
    return _svg(drawings(lesson)[0], lesson.language)


def _problem_markdown(problem: Problem) -> str:
    return _lesson_markdown(_first(_checked(problem)))


def _problem_plain(problem: Problem, printer, cycle: bool) -> None:
    from unpin.words.sentences import say

    printer.text(problem.title or say("lesson.title.problem", problem.house.language or "en"))


def _worked_html(worked: Worked) -> str:
    from unpin.lesson.build import build
    from unpin.render import html
    from unpin.words.sentences import say

    lesson = build(worked)
    shown = _answers(lesson) or lesson.sections
    rest = [s for s in lesson.sections if s not in shown]
    return html.fragment(lesson, shown, rest, say("lesson.title.untitled", lesson.language))


def _answers(lesson: Lesson) -> list[Section]:
    return [s for s in lesson.sections if s.kind == "answers"]


def _worked_markdown(worked: Worked) -> str:
    """Without figures: a notebook keeps every form, and the first has them."""
    from unpin.lesson.build import build

    return _lesson_markdown(build(worked, drawn=False))


def _worked_latex(worked: Worked) -> str | None:
    """The boxed results, one below the other; None where there are none, so that a notebook takes the next form."""
    from unpin.lesson.nodes import Line
    from unpin.render.maths import latex

    lines = [Line("", r.formula) for r in _results(worked)]
    return f"$$\n{latex.working(None, lines, 84)}\n$$" if lines else None


def _worked_plain(worked: Worked, printer, cycle: bool) -> None:
    """The results in one line, each with its true sense; of a problem that is not sound, what is said of it."""
    from unpin.lesson.build import sound_section
    from unpin.lesson.nodes import Paragraph
    from unpin.render.maths import text
    from unpin.render.maths.sentence import written

    language = worked.problem.house.language or "en"
    said = [f"{text.write(r.formula)} {written(r.sense, language)}".strip() for r in _results(worked)]
    said = said or [written(n.text, language) for n in sound_section(worked).children if isinstance(n, Paragraph)]
    printer.text("\n".join([*([worked.problem.title] if worked.problem.title else []), *said]))


def _results(worked: Worked):
    from unpin.lesson.build import build
    from unpin.lesson.nodes import Boxed

    lesson = build(worked, drawn=False)
    return [r for s in _answers(lesson) for n in s.children if isinstance(n, Boxed) for r in n.results]


def _lesson_html(lesson: Lesson) -> str:
    from unpin.render import html

    return html.fragment(lesson)


def _lesson_markdown(lesson: Lesson) -> str:
    """With the figures inside."""
    from unpin.render import markdown

    text = markdown.write(lesson, "figures")
    for name, data in markdown.pictures(lesson).items():
        text = text.replace(f"](figures/{name})", f"](data:image/svg+xml;base64,{base64.b64encode(data).decode()})")
    return text


def _lesson_plain(lesson: Lesson, printer, cycle: bool) -> None:
    from unpin.words.sentences import say

    printer.text(lesson.title or say("lesson.title.untitled", lesson.language))


def _svg(drawing: Drawing, language: str = "en") -> str:
    from unpin.render.picture import svg

    return svg(drawing, language=language)


def _drawing_plain(drawing: Drawing, printer, cycle: bool) -> None:
    from unpin.render.maths.sentence import written

    printer.text(written(drawing.caption))


_METHODS = {
    Problem: {"_repr_html_": _problem_html, "_repr_svg_": _problem_svg, "_repr_markdown_": _problem_markdown, "_repr_pretty_": _problem_plain},
    Worked: {"_repr_html_": _worked_html, "_repr_latex_": _worked_latex, "_repr_markdown_": _worked_markdown, "_repr_pretty_": _worked_plain},
    Lesson: {"_repr_html_": _lesson_html, "_repr_markdown_": _lesson_markdown, "_repr_pretty_": _lesson_plain},
    Drawing: {"_repr_svg_": _svg, "_repr_pretty_": _drawing_plain},
}
