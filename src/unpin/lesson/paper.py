"""A sheet of several problems: statement, figure, parts, marks and room to work, the answers at the back. It is a lesson tree like
any other, so every format shows it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from unpin.lesson import bars, outcome, statement
from unpin.lesson.figures import Studio
from unpin.lesson.kinds import with_kinds
from unpin.lesson.nodes import Bullets, Drawing, Lesson, Node, Paragraph, Section, Space, Text
from unpin.lesson.own_words import kept_together
from unpin.lesson.sheet import sheet_for
from unpin.model.house import PLAIN
from unpin.route.worked import Worked
from unpin.words.sentences import say

_ROWS = 4
"""Rows of room for each part, and as many again for the diagram."""

Marks = tuple[int, ...]
"""Marks of one problem: none, one number for the whole, or one for each part."""


def paper(several: Sequence[Worked], title: str = "", marks: Sequence[Marks] = (), answers: bool = False, figures: int = 0,
          language: str = "") -> Lesson:
    """The sheet, in the house of its first problem. `marks`: for each problem, or nothing; `answers`: whether they stand at the back. Every problem must be solved: the sheet
    of one that is not sound would ask for what cannot be found. Raises ValueError when the marks do not fit (`marks_fit`)."""
    house = several[0].problem.house if several else PLAIN
    language = language or house.language or "en"
    given = tuple(marks) or ((),) * len(several)
    if not marks_fit(several, given):
        raise ValueError("marks")
    sections = [_exercise(k, worked, mark, figures, language) for k, (worked, mark) in enumerate(zip(several, given), 1)]
    if answers:
        sections += [_answers(k, worked, figures, language) for k, worked in enumerate(several, 1)]
    total = sum(map(sum, given))
    opening = say("lesson.paper.total", language, count=total) if total else ""
    named = title or say("lesson.paper.untitled_sheet", language)
    return Lesson(named, opening, tuple(_numbered(sections)), (Text("caution.teaching"),), True, language, house)


def misfit(several: Sequence[Worked], marks: Sequence[Marks]) -> int | None:
    """The first problem, from 0, that has not none, one, or as many marks as it has parts; None where all fit."""
    return next((n for n, (w, m) in enumerate(zip(several, marks)) if len(m) not in (0, 1, len(w.problem.asked))), None)


def marks_fit(several: Sequence[Worked], marks: Sequence[Marks]) -> bool:
    """Whether there are marks for each problem: none, one, or as many as it has parts."""
    return len(several) == len(marks) and misfit(several, marks) is None


def _exercise(number: int, worked: Worked, marks: Marks, figures: int, language: str) -> Section:
    problem = worked.problem
    sheet = sheet_for(problem, worked.values or {}, figures, language)
    studio = Studio(worked, sheet)
    children: list[Node] = [replace(d, caption=Text("paper.figure", {"number": number})) for d in studio.problem()]
    children += [Paragraph(Text("paper.words", {"words": kept_together(" ".join(p.split()))})) for p in problem.text.split("\n\n") if p.strip()]
    children += _data(problem, sheet)
    children += [_part(k, a, problem, marks) for k, a in enumerate(problem.asked)]
    children.append(Space(_ROWS * (len(problem.asked) + 1), "blank"))
    return with_kinds(Section(f"problem-{number}", "exercise", _title(number, problem.title, marks), tuple(children)), problem)


def _data(problem, sheet) -> list[Node]:
    """Without words of the author everything that is given; with them only the letters and the gravity that the figure does not show."""
    if not problem.text.strip():
        return [statement.given(problem, sheet)]
    items = [t for n in statement.given(problem, sheet).children for t in n.items if t.code == "given.letter"]
    items += [t for n in statement.assumed(problem, sheet).children for t in n.items if t.code == "assumed.gravity"]
    return [Bullets(tuple(items))] if items else []


def _part(place: int, asked, problem, marks: Marks) -> Paragraph:
    said = {"letter": "abcdefghijklmnopqrstuvwxyz"[place % 26], "what": statement.asked(asked, problem)}
    if len(problem.asked) == 1:
        return Paragraph(Text("paper.single", {"what": said["what"]}))
    if len(marks) > 1:
        return Paragraph(Text("paper.part_marks", {**said, "marks": Text("paper.marks", {"count": marks[place]})}))
    return Paragraph(Text("paper.part", said))


def _title(number: int, title: str, marks: Marks) -> Text:
    said = {"number": number, "title": title}
    code = "paper.problem" if title else "paper.untitled"
    named = Text(code, said)
    return Text("paper.with_marks", {"problem": named, "marks": Text("paper.marks", {"count": sum(marks)})}) if marks else named


def _answers(number: int, worked: Worked, figures: int, language: str) -> Section:
    sheet = sheet_for(worked.problem, worked.values or {}, figures, language)
    shown = frozenset(u.id for u in bars.tabled(worked))
    boxes = (*outcome.answers(worked, sheet, shown), *bars.table(worked, sheet, f"bars-{number}"))
    made = Section(f"answers-{number}", "back" if number == 1 else "answers", Text("paper.answers", {"number": number}), boxes)
    return with_kinds(made, worked.problem)


def _numbered(sections: list[Section]) -> list[Section]:
    """Every figure under an id of its own."""
    count = 0
    out = []
    for section in sections:
        children = []
        for node in section.children:
            if isinstance(node, Drawing):
                count += 1
                node = replace(node, id=f"figure-{count}")
            children.append(node)
        out.append(replace(section, children=tuple(children)))
    return out
