"""A lesson as plain text, 80 columns, for reading in a terminal."""

from __future__ import annotations

import textwrap

from unpin.lesson.formula import Formula
from unpin.lesson.nodes import Block, Boxed, Bullets, Cell, Drawing, Lesson, Node, Paragraph, Section, Space, Table, Text, Working
from unpin.render.maths import text as maths
from unpin.render.maths.rows import rows
from unpin.render.maths.sentence import written
from unpin.words.sentences import say

WIDTH = 80
_INDENT = "  "


def write(lesson: Lesson, width: int = WIDTH) -> str:
    """The whole lesson, ending in a newline."""
    return _Page(lesson.language, width).lesson(lesson)


def section(one: Section, language: str = "en", width: int = WIDTH) -> str:
    """One chapter by itself."""
    page = _Page(language, width)
    page._section(one)
    return "\n".join(line.rstrip() for line in page.out).rstrip() + "\n"


class _Page:
    def __init__(self, language: str, width: int):
        self.language = language
        self.width = width
        self.out: list[str] = []

    def lesson(self, lesson: Lesson) -> str:
        title = lesson.title or say("lesson.title.untitled", self.language)
        if lesson.house.heading:
            self._wrap(lesson.house.heading)
        self.out += [title, "=" * min(len(title), self.width), ""]
        if lesson.text:
            self._wrap(lesson.text)
            self.out.append("")
        for section in lesson.sections:
            self._section(section)
        for text in lesson.closing:
            self._wrap(self._say(text))
        if lesson.house.credit:
            self._wrap(lesson.house.credit)
        return "\n".join(line.rstrip() for line in self.out) + "\n"

    def _section(self, section: Section) -> None:
        title = textwrap.wrap(self._heading(section.title), self.width)
        self.out += [*title, "-" * max(map(len, title))]
        for node in section.children:
            self._node(node, "")
        self.out.append("")

    def _node(self, node: Node, indent: str) -> None:
        match node:
            case Paragraph(text, _):
                self._wrap(self._say(text), indent)
            case Bullets(items):
                for item in items:
                    self._wrap(self._heading(item), indent + "• ", indent + "  ")
            case Working():
                self._working(node, indent + _INDENT)
            case Drawing(_, _, _, caption, _, _):
                self._wrap(f"[{self._say(caption).rstrip('.')}]", indent)
            case Boxed():
                self._boxed(node)
            case Table():
                self._table(node, indent)
            case Space(rows, form):
                self.out += (["", indent + "_" * (self.width - len(indent))] if form == "ruled" else [""]) * rows
            case Block(name, children):
                self.out += ["", f"{indent}{say(f'lesson.step.{name}', self.language)}"] if children else []
                for child in children:
                    self._node(child, indent + _INDENT)
            case _:
                raise TypeError(f"the terminal cannot show a {type(node).__name__}")

    def _working(self, working: Working, indent: str) -> None:
        lines = working.lines
        if working.header is not None:
            self._formula(working.header, indent)
        for line in lines:
            self._formula(line.formula, indent + _INDENT)

    def _formula(self, formula: Formula, indent: str) -> None:
        for k, row in enumerate(rows(formula, self.width - len(indent), stacked=False)):
            self.out.append(indent + ("    " if k else "") + maths.write(row))

    def _boxed(self, box: Boxed) -> None:
        if not box.found:
            self._wrap(self._say(Text("answer.not_found", {"what": box.asked})))
            return
        heading = self._heading(box.asked)
        lines = []
        for r in box.results:
            arrow = f" {r.arrow}" if r.arrow else ""
            formula, sense = maths.write(r.formula), f"{self._say(r.sense)}{arrow}"
            one = f"{formula}  {sense}".rstrip()
            lines += [one] if len(one) <= self.width - 4 else [formula, f"  {sense}"]
        inner = max(len(x) for x in (heading, *lines))
        self.out.append("┌" + "─" * (inner + 2) + "┐")
        for line in (heading, *lines):
            self.out.append(f"│ {line.ljust(inner)} │")
        self.out.append("└" + "─" * (inner + 2) + "┘")

    def _table(self, table: Table, indent: str) -> None:
        """Columns under each other; the last runs on below itself where the line is full."""
        cells = [[self._heading(h) for h in table.heads], *([self._cell(c) for c in row] for row in table.rows)]
        widths = [max(len(row[k]) for row in cells) for k in range(len(table.heads))]
        self.out.append("")
        self._wrap(self._say(table.caption), indent)
        before = sum(w + 2 for w in widths[:-1])
        room = self.width - len(indent) - before
        for k, row in enumerate(cells):
            start = indent + "".join(text.ljust(w + 2) for text, w in zip(row, widths[:-1]))
            self.out += textwrap.wrap(row[-1], self.width, initial_indent=start, subsequent_indent=" " * len(start)) if row[-1] else [start]
            if k == 0:
                self.out.append(indent + "─" * (before + min(widths[-1], room)))

    def _cell(self, cell: Cell) -> str:
        if cell is None:
            return "_" * 16
        return self._say(cell) if isinstance(cell, Text) else maths.write(cell)

    def _heading(self, text: Text) -> str:
        return written(text, self.language, capital=True)

    def _say(self, text: Text) -> str:
        return written(text, self.language)

    def _wrap(self, text: str, first: str = "", rest: str | None = None) -> None:
        rest = first if rest is None else rest
        self.out += textwrap.wrap(text, self.width, initial_indent=first, subsequent_indent=rest, break_long_words=False,
                                  break_on_hyphens=False) or [first]
