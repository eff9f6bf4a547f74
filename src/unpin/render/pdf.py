"""A lesson as a handout: PDF/UA-1, every formula and figure with its text alternative, the same bytes each time."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path

from unpin.base.record import record
from unpin.lesson.flow import flow
from unpin.lesson.formula import Amount, Formula, Over, children
from unpin.lesson.nodes import Block, Boxed, Bullets, Cell, Drawing, Lesson, Node, Paragraph, Section, Space, Table, Text, Working, drawings, panels
from unpin.render.maths import spoken, typeset
from unpin.render.maths import text as plain
from unpin.render.maths.rows import rows
from unpin.render.maths.typeset import quoted
from unpin.render.picture import description, svg
from unpin.render.typeset import compile_document
from unpin.words.sentences import say

WIDE, CHARACTER = 104, 4.55
"""Characters of a line of working across the page before it is broken, and the width one takes, pt."""
PAGE, GUTTER = 498.9, 20.0
PAGES = {"a4": PAGE, "us-letter": 515.6, "us-legal": 515.6}
"""Width of the text of a page by its paper, of A4 first, and between a figure and what stands beside it; pt."""
COLUMN, LEAST_SUMS, LEAST_TEXT = 215.0, 205.0, 180.0
"""Least width of the column of figures; least room for sums and for prose beside it. No figure is scaled down to a column, so that
its letters keep their size: one that leaves less room than that stands above instead."""

WIDEST = 34
"""A result of more signs has its sense below it instead of beside it."""
HEAD_GAP, STEP_GAP, PAIR_GAP, TEXT_GAP = 24.0, 12.4, 10.5, 9.0
"""Above a heading, a step, a row of two columns, and between paragraphs, pt."""
TOGETHER = 4
"""Short workings that stand in two columns on one page."""
FEW = 5
"""Ruled rows by themselves that are not torn."""
NEAR = 8
"""Rows of room for working that stay on the page of their problem."""

HALF = 18
"""Rows of one half of a table; a longer one goes on in the other half, then below."""

_HEAD = Path(__file__).with_name("handout.typ").read_text("utf-8")
"""How pages look and how they are filled; capitals stand for what a lesson puts in."""


def write(lesson: Lesson) -> bytes:
    """The whole handout."""
    return compile_document(*document(lesson), "pdf")


def document(lesson: Lesson) -> tuple[str, dict[str, str]]:
    """What the typesetter is given: the source, and the pictures by name."""
    drawn = pictures(lesson)
    return _source(lesson, drawn), drawn


def in_lines(lesson: Lesson) -> list[bytes]:
    """Every page as SVG for a screen: what the PDF shows, in its colours."""
    from unpin.render import typeset as typesetter

    standing = {f"{d.id}.svg": svg(d, "embed", lesson.language, "light") for d in drawings(lesson)}
    return typesetter.in_lines(*document(lesson), standing)


def pictures(lesson: Lesson) -> dict[str, str]:
    return {f"{d.id}.svg": svg(d, "name", lesson.language) for d in drawings(lesson)}


def source(lesson: Lesson) -> str:
    """The Typst source. Words go in as strings of code, so that nothing the author wrote can be taken for markup."""
    return _source(lesson, pictures(lesson))


def _source(lesson: Lesson, drawn: dict[str, str]) -> str:
    sizes = {name.removesuffix(".svg"): tuple(float(re.search(rf' {side}="([0-9.]+)pt"', text)[1]) for side in ("width", "height"))
             for name, text in drawn.items()}
    return _Sheet(lesson.language, sizes, PAGES[lesson.house.paper]).lesson(lesson)


class _Sheet:
    """`sizes`: width and height of each drawing by id, `page`: width of the text, pt; `room`: characters of a line of working where it is being written."""

    def __init__(self, language: str, sizes: dict[str, tuple[float, ...]], page: float):
        self.page, self.wide = page, int(page / PAGE * WIDE)
        self.language, self.room = language, self.wide
        self.sized = False
        # A figure wider than the page is made as wide as the page.
        self.widths = {id: min(width, page) for id, (width, _) in sizes.items()}
        self.heights = {id: high * self.widths[id] / wide for id, (wide, high) in sizes.items()}

    def lesson(self, lesson: Lesson) -> str:
        title = lesson.title or say("lesson.title.untitled", self.language)
        credit = [f"#{quoted(lesson.house.credit)}"] if lesson.house.credit else []
        closing = " ".join([*(self._say(t) for t in lesson.closing), *credit])
        head = f"#text(size: 9.5pt, fill: luma(70))[#{quoted(lesson.house.heading)}]\n\n" if lesson.house.heading else ""
        # All at once, for the words that are put in may hold a mark themselves.
        put_in = {"PAPER": lesson.house.paper, "CLOSING": closing, "LANGUAGE": quoted(self.language), "TITLE": quoted(title)}
        template = re.sub("|".join(put_in), lambda m: put_in[m[0]], _HEAD)
        first, *others = [f"#{quoted(p)}" for p in lesson.text.split("\n\n") if p.strip()] or [""]
        filled = _calls([_Piece(0, f"{head}= #{quoted(title)}\n\n{first}"), *(_Piece(TEXT_GAP, p) for p in others)])
        filled += [call for s in lesson.sections for call in self._section(s)]
        return template + "#compose(\n" + "".join(call + ",\n" for call in filled) + ")\n"

    def _section(self, section: Section) -> list[str]:
        """The section as the calls that fill pages with it."""
        head = f"== {self._say(section.title, capital=True)}\n\n"
        drawn = [n for n in section.children if _holds_drawing(n)]
        rest = [n for n in section.children if not _holds_drawing(n)]
        if section.kind in ("found", "ways"):
            return self._headed(head, self._pairs(rest, section.kind == "ways"))
        if not drawn:
            out = self._headed(head, self._pieces(section.children))
            return ["fresh", *out] if section.kind == "back" else out
        if any(isinstance(n, Table) for n in rest):
            return self._headed(head, self._pieces([*rest, *drawn]))
        if section.kind in ("answers", "plan"):
            return self._window(head, drawn, rest, after=True)
        stretches = panels(section)
        if len(stretches) > 1:
            return [call for nodes in stretches for call in self._panel(head if nodes is stretches[0] else "", nodes)]
        if section.kind == "body":
            return self._body(head, drawn, rest)
        if section.kind == "exercise":
            return self._exercise(head, drawn, rest)
        return self._window(head, drawn, rest)

    def _headed(self, head: str, pieces: list[_Piece]) -> list[str]:
        """The heading with the first of what it stands over."""
        first, *others = pieces or [_Piece(TEXT_GAP, "")]
        return _calls([replace(first, gap=HEAD_GAP, body=head + first.body), *others])

    def _exercise(self, head: str, drawn: list[Node], rest: list[Node]) -> list[str]:
        """A problem with the first of the room for its working on the same page."""
        rows = sum(n.rows for n in rest if isinstance(n, Space))
        said = self._beside(drawn, [n for n in rest if not isinstance(n, Space)])
        near = min(rows, NEAR)
        return [_Piece(HEAD_GAP, f"{head}{said}#blank({near})").call(), f"room({rows - near})"]

    def _beside(self, drawn: list[Node], rest: list[Node]) -> str:
        """Drawings on the left and all else on the right, or below where there is no room; never torn."""
        left = self._column(drawn, LEAST_TEXT)
        if not left:
            return self._nodes(drawn) + self._nodes(rest)
        columns = f"columns: ({left:.2f}pt, 1fr), column-gutter: {GUTTER}pt"
        return f"#grid({columns}, [\n{self._nodes(drawn)}], [\n{self._nodes(rest)}])\n\n"

    def _window(self, head: str, drawn: list[Node], rest: list[Node], after: bool = False) -> list[str]:
        """Drawings on the left with what finds a place beside them, the rest below over the whole page. `after`: what is said on the
        left and the drawing that sums it up on the right, or below."""
        figures = [d for n in drawn for d in _drawings_of(n)]
        wide = max(self.widths[d.id] for d in figures) if after else self._column(drawn, LEAST_TEXT)
        if not wide or self.page - GUTTER - wide < LEAST_TEXT:
            return self._headed(head, self._pieces([*rest, *drawn] if after else [*drawn, *rest]))
        shape = f'window: true, flip: {"true" if after else "false"}'
        return [self._alongside(head, wide, drawn, _calls(self._pieces(rest)), shape)]

    def _pairs(self, rest: list[Node], small: bool) -> list[_Piece]:
        """What is short, in two columns: each sentence with the lines or the list that it introduces."""
        title = "".join(f"=== #{quoted(say(f'lesson.step.{n.name}', self.language))}\n\n" for n in rest if isinstance(n, Block))
        cells: list[list[Node]] = []
        nodes = [c for n in rest for c in (n.children if isinstance(n, Block) else (n,))]
        lists = any(isinstance(n, Bullets) for n in nodes)
        for node, after in zip(nodes, [*nodes[1:], None]):
            # What closes a list belongs to it.
            if not cells or (isinstance(node, Paragraph) and (not lists or isinstance(after, Bullets))):
                cells.append([])
            cells[-1].append(node)
        self.room = int((self.page - GUTTER) / 2 / CHARACTER)
        written = [f"[\n{self._nodes(cell)}]" for cell in cells]
        self.room = self.wide
        some = 2 if small else TOGETHER
        groups = ["#balanced(" + ", ".join(written[k:k + some]) + ")" for k in range(0, len(written), some)]
        groups = [f"#aside[{group}]" for group in groups] if small else groups
        return [_Piece(PAIR_GAP, ("" if k else title) + group) for k, group in enumerate(groups)]

    def _panel(self, head: str, nodes: tuple[Node, ...]) -> list[str]:
        """One body of several with its diagram; or the sums on all of them, across the page."""
        drawn, rest = [n for n in nodes if _holds_drawing(n)], [n for n in nodes if not _holds_drawing(n)]
        if drawn:
            return self._body(head, drawn, rest)
        pieces = self._pieces(rest)
        return self._headed(head, pieces) if head else _calls(pieces)

    def _column(self, drawn: list[Node], room: float) -> float:
        """Width of the column that holds the drawings at their natural width, 0 where less than `room` would be left beside it."""
        left = max([COLUMN, *(self.widths[d.id] for n in drawn for d in _drawings_of(n))])
        return left if self.page - GUTTER - left >= room else 0.0

    def _body(self, head: str, drawn: list[Node], rest: list[Node]) -> list[str]:
        """Diagram on the left, sums on the right, or a wide diagram above; no short sum is torn, and the diagram comes again on the
        next page."""
        left = self._column(drawn, LEAST_SUMS)
        self.room = int((self.page - GUTTER - left) / CHARACTER) if left else self.wide
        steps: list[list[Node]] = []
        for node in rest:
            # A sum with its working and its result are one step.
            if not steps or (isinstance(node, Block) and node.name in ("sum", "count")):
                steps.append([])
            steps[-1].append(node)
        cells = []
        for step in steps:
            calls = _calls(self._pieces(step))
            cells.append(calls[0] if len(calls) == 1 else f"({', '.join(calls)})")
        self.room = self.wide
        drawn = [replace(n, name="diagram_again") if isinstance(n, Block) and n.name == "diagram" else n for n in drawn]
        return [self._alongside(head, left, drawn, cells, "" if left else "over: true")]

    def _alongside(self, head: str, column: float, drawn: list[Node], cells: list[str], shape: str) -> str:
        """The call that puts `cells` beside the drawings, which may be made a little smaller where they just fit."""
        rest = self.page - GUTTER - column if column else self.page
        self.sized = True
        figure = f"(again, size) => [\n{self._nodes(drawn)}]"
        self.sized = False
        above = f"[\n{head}]" if head else "none"
        drawn_high = sum(self.heights[d.id] for n in drawn for d in _drawings_of(n))
        widths = f"{column or self.page:.2f}pt, {rest:.2f}pt, {drawn_high:.2f}pt"
        return f"alongside({HEAD_GAP}pt, {above}, {widths}, {figure}, ({''.join(f'{c}, ' for c in cells)}), {shape})"

    def _pieces(self, nodes: Iterable[Node]) -> list[_Piece]:
        """The nodes as pieces: what introduces a working or a list with it, boxes of answers together, ruled room row by row."""
        groups: list[list[Node]] = []
        for node in nodes:
            before = groups[-1][-1] if groups else None
            joined = (isinstance(before, Boxed) and isinstance(node, Boxed)) or (
                isinstance(before, Paragraph) and isinstance(node, Working | Bullets | Space)) or (
                isinstance(before, Block) and isinstance(node, Block) and before.name == "solve" and node.name == "result")
            if joined:
                groups[-1].append(node)
            else:
                groups.append([node])
        out: list[_Piece] = []
        for group in groups:
            gap = STEP_GAP if isinstance(group[0], Block) else TEXT_GAP
            if isinstance(group[0], Space) and group[0].form == "ruled" and group[0].rows > FEW:
                out += [_Piece(TEXT_GAP if k == 0 else 0, "#ruled(1)") for k in range(group[0].rows)]
            elif isinstance(group[0], Boxed):
                out.append(_Piece(gap, "", tuple(self._boxed(box) for box in group)))
            elif said := self._nodes(group):
                out.append(_Piece(gap, said))
        return out

    def _nodes(self, nodes) -> str:
        out = []
        nodes = tuple(nodes)
        for k, node in enumerate(nodes):
            if isinstance(node, Paragraph) and isinstance(nodes[k + 1] if k + 1 < len(nodes) else None, Working):
                out.append(f"#block(sticky: true, spacing: 0.85em)[{self._say(node.text)}]\n\n")
            else:
                out.append(self._node(node))
        return "".join(out)

    def _node(self, node: Node) -> str:
        match node:
            case Paragraph(text, _):
                return self._say(text) + "\n\n"
            case Bullets(items):
                return "#list(" + ", ".join(f"[{self._say(t, capital=True)}]" for t in items) + ")\n\n"
            case Working():
                return self._working(node)
            case Drawing():
                return self._drawing(node)
            case Table():
                return self._table(node)
            case Boxed():
                return self._boxed(node) + "\n\n"
            case Space(rows, form):
                return f"#{form}({rows})\n\n"
            case Block("diagram_again", children):
                once, again = (quoted(say(f"lesson.step.{name}", self.language)) for name in ("diagram", "diagram_again"))
                return f"=== #if again {{ {again} }} else {{ {once} }}\n\n{self._nodes(children)}"
            case Block(name, children):
                title = quoted(say(f"lesson.step.{name}", self.language))
                return f"=== #{title}\n\n{self._nodes(children)}" if children else ""
        raise TypeError(f"a handout cannot show a {type(node).__name__}")

    def _working(self, working: Working) -> str:
        out = []
        if working.header is not None:
            out.append(self._line(working.header))
        for line in working.lines:
            for k, row in enumerate(rows(line.formula, self.room)):
                text = self._line(row)
                # The typesetter counts a fraction as no higher than a letter.
                left, around = 16 if k else 0, 3.5 if _stacked(row) else 0
                text = f"#pad(left: {left}pt, y: {around}pt)[{text}]" if left or around else text
                out.append(f"#box(stroke: (bottom: 0.9pt + black), inset: (bottom: 3pt))[{text}]" if line.name == "result" else text)
        return "#working[\n" + "\n\n".join(out) + "\n]\n\n"

    def _line(self, formula: Formula) -> str:
        """A line of working at full size, set from the left."""
        return f"#math.equation(alt: {quoted(spoken.write(formula, self.language))}, $display({typeset.write(formula)})$)"

    def _drawing(self, drawing: Drawing) -> str:
        # The caption says in short what the alternative says in full.
        told = quoted(description(drawing, self.language))
        size = " * size" if self.sized else ""
        return (f"#figure(alt: {told}, caption: [{self._say(drawing.caption)}], "
                f'align(left, image("{drawing.id}.svg", width: {self.widths[drawing.id]:.2f}pt{size}, alt: {told})))\n\n')

    def _boxed(self, box: Boxed) -> str:
        head = f"#strong[{self._say(box.asked, capital=True)}]"
        if not box.found:
            return f"#boxed[{head} \\ {self._say(Text('answer.not_found', {'what': box.asked}))}]"
        if any(len(plain.write(r.formula)) > WIDEST for r in box.results):
            rows_ = ", ".join(f"[{self._found(r.formula)}], [#h(1em){self._say(r.sense)} #{quoted(r.arrow)}]" for r in box.results)
            return f"#boxed[{head}\n#v(-2pt)\n#grid(columns: 1, row-gutter: 7pt, {rows_})]"
        cells = ", ".join(f"[{self._found(r.formula)}], [{self._say(r.sense)}], [#{quoted(r.arrow)}]" for r in box.results)
        return f"#boxed[{head}\n#v(-2pt)\n#grid(columns: 3, column-gutter: 12pt, row-gutter: 7pt, align: left + horizon, {cells})]"

    def _table(self, table: Table) -> str:
        """A long table in stretches of two halves side by side, each with its heads, so that it reads page by page."""
        parts = [table.rows[k:k + 2 * HALF] for k in range(0, len(table.rows), 2 * HALF)]
        out = [f"#block(sticky: true, above: 1.2em)[#strong[{self._say(table.caption, capital=True)}]]\n\n"]
        for part in parts:
            middle = (len(part) + 1) // 2 if len(table.rows) > HALF else len(part)
            halves = [self._listed(table, half) for half in (part[:middle], part[middle:]) if half]
            halves = halves if len(halves) == 1 else [f"grid(columns: (1fr, 1fr), column-gutter: {GUTTER}pt, {halves[0]}, {halves[1]})"]
            out.append(f"#block(breakable: false, above: 1em)[#{halves[0]}]\n\n")
        return "".join(out)

    def _listed(self, table: Table, part: tuple[tuple[Cell, ...], ...]) -> str:
        heads = ", ".join(f"[#strong[{self._say(h, capital=True)}]]" for h in table.heads)
        cells = ", ".join(self._cell(c) for row in part for c in row)
        columns = ", ".join(["auto"] * (len(table.heads) - 1) + ["1fr"])
        return f"listed(({columns}), table.header({heads}), {cells})"

    def _cell(self, cell: Cell) -> str:
        if cell is None:
            return "v(14pt)"
        return f"[{self._say(cell)}]" if isinstance(cell, Text) else f"[{self._inline(cell)}]"

    def _found(self, formula: Formula) -> str:
        """A result in its box; a fraction stands at full size."""
        return f"#pad(y: 6pt)[{self._line(formula)}]" if _stacked(formula) else self._inline(formula)

    def _inline(self, formula: Formula) -> str:
        return f"#math.equation(alt: {quoted(spoken.write(formula, self.language))}, ${typeset.write(formula)}$)"

    def _say(self, text: Text, capital: bool = False) -> str:
        run = flow(text, self.language, capital)
        return "".join(f"#{quoted(p)}" if isinstance(p, str) else self._inline(p) for p in run)


@record
class _Piece:
    """What stands across a page or a column and is not torn: the `gap` above it, pt, and its `body`. `boxes`: answers that stand beside
    each other below that."""

    gap: float
    body: str
    boxes: tuple[str, ...] = ()

    def call(self) -> str:
        """The call that fills a page with it (`handout.typ`)."""
        if self.boxes:
            return f"boxes({self.gap}pt, [{self.body}], " + ", ".join(f"[{box}]" for box in self.boxes) + ")"
        return f"piece({self.gap}pt)[\n{self.body}]"


def _calls(pieces: Iterable[_Piece]) -> list[str]:
    return [piece.call() for piece in pieces]


def _stacked(formula: Formula) -> bool:
    """Whether a fraction stands in it."""
    if isinstance(formula, Amount) and formula.shape is not None:
        return _stacked(formula.shape)
    return isinstance(formula, Over) or any(map(_stacked, children(formula)))


def _drawings_of(node: Node) -> list[Drawing]:
    if isinstance(node, Drawing):
        return [node]
    return [c for c in node.children if isinstance(c, Drawing)] if isinstance(node, Block) else []


def _holds_drawing(node: Node) -> bool:
    return bool(_drawings_of(node))
