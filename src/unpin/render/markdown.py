"""A lesson as Markdown with LaTeX mathematics between dollar signs, and its figures as SVG files in a folder beside it."""

from __future__ import annotations

import re
from urllib.parse import quote

from unpin.lesson.flow import flow
from unpin.lesson.nodes import Block, Boxed, Bullets, Cell, Drawing, Lesson, Node, Paragraph, Section, Space, Table, Text, Working, drawings
from unpin.render.maths import latex
from unpin.render.picture import description, svg
from unpin.words.sentences import say

ROOM = 84
"""Characters of a line of working before it is broken."""

_SPECIAL = re.compile(r"([\\`*_{}\[\]<>#$~|^&])")
_OPENING = re.compile(r"^(\s*)([-+=]|\d+(?=[.)]))")


def write(lesson: Lesson, folder: str) -> str:
    """The text, ending in a newline; `folder` is the name of the folder of figures as the text refers to it."""
    return _Page(lesson.language, folder).lesson(lesson)


def pictures(lesson: Lesson) -> dict[str, bytes]:
    """Name and content of every file of the folder."""
    return {f"{d.id}.svg": svg(d, language=lesson.language).encode() for d in drawings(lesson)}


def escaped(text: str) -> str:
    """Words that no converter takes for markup."""
    text = _SPECIAL.sub(r"\\\1", " ".join(text.split()))
    return _opening(text)


def _opening(text: str) -> str:
    """Without what would begin a list or underline a heading."""
    return _OPENING.sub(lambda m: m[1] + (f"\\{m[2]}" if m[2] in "-+=" else f"{m[2]}\\"), text)


class _Page:
    def __init__(self, language: str, folder: str):
        self.language, self.folder = language, folder

    def lesson(self, lesson: Lesson) -> str:
        title = lesson.title or say("lesson.title.untitled", self.language)
        house = lesson.house
        out = [*([f"*{escaped(house.heading)}*"] if house.heading else []), f"# {escaped(title)}", *(escaped(p) for p in lesson.text.split("\n\n") if p.strip())]
        for section in lesson.sections:
            out += self._section(section)
        out += ["---", *(self._say(t) for t in lesson.closing), *([escaped(house.credit)] if house.credit else [])]
        return "\n\n".join(out) + "\n"

    def _section(self, section: Section) -> list[str]:
        return [f"## {self._say(section.title, capital=True)}", *self._nodes(section.children)]

    def _nodes(self, nodes: tuple[Node, ...]) -> list[str]:
        return [block for node in nodes for block in self._node(node)]

    def _node(self, node: Node) -> list[str]:
        match node:
            case Paragraph(text, role):
                said = self._say(text)
                return [f"> {said}" if role == "remark" else said]
            case Bullets(items):
                return ["\n".join(f"- {self._say(t, capital=True)}" for t in items)]
            case Working(_, _, _, header, lines):
                return [f"$$\n{latex.working(header, lines, ROOM)}\n$$"]
            case Drawing():
                return self._drawing(node)
            case Boxed():
                return self._boxed(node)
            case Table():
                return self._table(node)
            case Space(rows, form):
                blank = ["&nbsp;", "---"] if form == "ruled" else ["&nbsp;"]
                return [*(["---"] if form == "frame" else []), *blank * rows, *(["---"] if form == "frame" else [])]
            case Block(name, children):
                return [f"### {say(f'lesson.step.{name}', self.language)}", *self._nodes(children)] if children else []
        raise TypeError(f"Markdown cannot show a {type(node).__name__}")

    def _drawing(self, drawing: Drawing) -> list[str]:
        told = escaped(description(drawing, self.language))
        return [f"![{told}]({quote(self.folder)}/{drawing.id}.svg)", f"*{self._say(drawing.caption)}*"]

    def _boxed(self, box: Boxed) -> list[str]:
        head = f"**{self._say(box.asked, capital=True)}**"
        if not box.found:
            return [head, self._say(Text("answer.not_found", {"what": box.asked}))]
        lines = []
        for r in box.results:
            sense = self._say(r.sense)
            lines.append(f"- $\\boxed{{{latex.write(r.formula)}}}$" + (f" {sense}" if sense else ""))
        return [head, "\n".join(lines)]

    def _table(self, table: Table) -> list[str]:
        heads = [self._say(h, capital=True) for h in table.heads]
        lines = [heads, ["---"] * len(heads), *([self._cell(c) for c in row] for row in table.rows)]
        return [f"**{self._say(table.caption)}**", "\n".join(f"| {' | '.join(cells)} |" for cells in lines)]

    def _cell(self, cell: Cell) -> str:
        if cell is None:
            return "&nbsp;"
        return self._say(cell) if isinstance(cell, Text) else f"${latex.write(cell)}$"

    def _say(self, text: Text, capital: bool = False) -> str:
        return latex.inline(flow(text, self.language, capital), _between)


def _between(words: str, place: int) -> str:
    """Words among formulas; only the first can be taken for the mark of a list."""
    kept = _SPECIAL.sub(r"\\\1", re.sub(r"\s+", " ", words))
    return kept if place else _opening(kept)
