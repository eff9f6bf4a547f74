"""A lesson as a handout: PDF/UA-1, every formula and figure with its text alternative, the same bytes each time."""

from __future__ import annotations

import re
from dataclasses import replace

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
"""Least width of the column of figures; least room for sums and for prose beside it. A figure is never scaled down, so that its
letters keep their size: one that leaves less room than that stands above instead."""

WIDEST = 34
"""A result of more signs has its sense below it instead of beside it."""
NEAR = 8
"""Rows of room for working that stay on the page of their problem."""

HALF = 18
"""Rows of one half of a table; a longer one goes on in the other half, then below."""

_HEAD = """\
#set document(title: TITLE)
#set page(paper: "PAPER", margin: (x: 17mm, top: 18mm, bottom: 20mm), fill: white, footer: context [
  #set text(size: 8.5pt, fill: luma(70))
  CLOSING #h(1fr) #counter(page).display()
])
#set text(font: ("Unpin Text", "Unpin Math"), size: 10.5pt, lang: LANGUAGE, hyphenate: false)
#show math.equation: set text(font: ("Unpin Math", "Unpin Text"))
#set par(leading: 0.62em, spacing: 0.85em)
#set list(marker: "•", indent: 0.2em, body-indent: 0.55em, spacing: 0.6em)
#show heading: set block(sticky: true)
#show heading.where(level: 1): set text(size: 20pt)
#show heading.where(level: 2): set text(size: 14pt)
#show heading.where(level: 2): set block(above: 1.7em, below: 0.8em)
#show heading.where(level: 3): set text(size: 9.5pt, fill: luma(70))
#show heading.where(level: 3): set block(above: 1.3em, below: 0.6em)
#set figure(numbering: none, supplement: none)
#show figure: set align(left)
#show figure.caption: set text(size: 9pt, fill: luma(70))
#show figure.caption: set align(left)
#let working(body) = block(inset: (left: 8pt, y: 3pt), stroke: (left: 1.2pt + black), above: 0.7em, below: 0.9em, breakable: false, {
  set par(leading: 0.6em, spacing: 0.95em)
  body
})
// A body that runs on to another page takes its diagram along, so that sums and diagram are seen together; nobody is told to
// draw it a second time.
#let again(id, k, figure) = context {
  let marks = query(label(id + "-" + str(k - 1)))
  if marks.len() > 0 and marks.first().location().page() != here().page() { figure }
}
#let mark(id, k) = [#metadata(none)#label(id + "-" + str(k))]
#let rows(id, figure, cells) = cells.enumerate().map(((k, cell)) => (
  [#mark(id, k)#if k == 0 { figure(false) } else { again(id, k, figure(true)) }],
  block(breakable: false, cell),
)).flatten()
#let beside(id, left, right, figure, cells) = context {
  // What stands beside the diagram first: the cut and the count, and the first sum too where the diagram is taller.
  // Later sums go together as far as they fit beside it, for when it comes again.
  let tall(body, width) = measure(block(width: width, body)).height
  let height = tall(figure(false), left)
  let joined = (cells.first(),)
  for cell in cells.slice(1) {
    let last = joined.last()
    let fits = if joined.len() == 1 { height > tall(last, right) + 20pt } else { tall(last + cell, right) < height }
    if fits { joined.last() = last + cell } else { joined.push(cell) }
  }
  let cells = joined
  grid(columns: (left, right), column-gutter: 20pt, row-gutter: 1.1em, ..rows(id, figure, cells))
}
#let above(id, figure, cells) = cells.enumerate().map(((k, cell)) => block(breakable: false)[
  #mark(id, k)#if k == 0 { figure(false) } else { again(id, k, figure(true)) }
  #cell
]).join()
#let rule = block(above: 9mm, below: 0pt, line(length: 100%, stroke: 0.4pt + luma(110)))
#let ruled(rows) = block(below: 1.1em, for k in range(rows) { rule })
#let frame(rows) = block(width: 100%, height: rows * 9mm, stroke: 0.6pt + luma(110))
#let blank(rows) = v(rows * 9mm)
#let listed(columns, ..cells) = table(columns: columns, stroke: (x, y) => (bottom: (if y == 0 { 0.9pt } else { 0.3pt }) + luma(110)),
  inset: (x: 0pt, y: 4pt), column-gutter: 12pt, align: left, ..cells)
#let boxed(body) = box(stroke: 1pt + black, inset: (x: 9pt, y: 7pt), body)
"""


def write(lesson: Lesson) -> bytes:
    """The whole handout."""
    return compile_document(*document(lesson), "pdf")


def document(lesson: Lesson) -> tuple[str, dict[str, str]]:
    """What the typesetter is given: the source, and the pictures by name."""
    drawn = pictures(lesson)
    return _source(lesson, drawn), drawn


def pictures(lesson: Lesson) -> dict[str, str]:
    return {f"{d.id}.svg": svg(d, "name", lesson.language) for d in drawings(lesson)}


def source(lesson: Lesson) -> str:
    """The Typst source. Words go in as strings of code, so that nothing the author wrote can be taken for markup."""
    return _source(lesson, pictures(lesson))


def _source(lesson: Lesson, drawn: dict[str, str]) -> str:
    widths = {name.removesuffix(".svg"): float(re.search(r' width="([0-9.]+)pt"', text)[1]) for name, text in drawn.items()}
    return _Sheet(lesson.language, widths, PAGES[lesson.house.paper]).lesson(lesson)


class _Sheet:
    """`widths`: of each drawing by id, `page`: of the text, pt; `room`: characters of a line of working where it is being written."""

    def __init__(self, language: str, widths: dict[str, float], page: float):
        self.page, self.wide = page, int(page / PAGE * WIDE)
        self.language, self.room = language, self.wide
        # Only a figure wider than the page is made smaller.
        self.widths = {id: min(width, page) for id, width in widths.items()}

    def lesson(self, lesson: Lesson) -> str:
        title = lesson.title or say("lesson.title.untitled", self.language)
        credit = [f"#{quoted(lesson.house.credit)}"] if lesson.house.credit else []
        closing = " ".join([*(self._say(t) for t in lesson.closing), *credit])
        head = f"#text(size: 9.5pt, fill: luma(70))[#{quoted(lesson.house.heading)}]\n\n" if lesson.house.heading else ""
        # All at once, for the words that are put in may hold a mark themselves.
        put_in = {"PAPER": lesson.house.paper, "CLOSING": closing, "LANGUAGE": quoted(self.language), "TITLE": quoted(title)}
        out = [re.sub("|".join(put_in), lambda m: put_in[m[0]], _HEAD), f"{head}= #{quoted(title)}\n\n"]
        out += [f"#{quoted(p)}\n\n" for p in lesson.text.split("\n\n") if p.strip()]
        out += [self._section(s) for s in lesson.sections]
        return "".join(out)

    def _section(self, section: Section) -> str:
        head = f"{'#pagebreak(weak: true)' if section.kind == 'back' else ''}\n== {self._say(section.title, capital=True)}\n\n"
        drawn = [n for n in section.children if _holds_drawing(n)]
        rest = [n for n in section.children if not _holds_drawing(n)]
        if section.kind in ("found", "ways"):
            return head + self._pairs(rest)
        if not drawn:
            return head + self._nodes(section.children)
        if any(isinstance(n, Table) for n in rest):
            return head + self._nodes(rest) + self._nodes(drawn)
        if section.kind in ("answers", "plan"):
            return head + self._after(drawn, rest)
        stretches = panels(section)
        if len(stretches) > 1:
            return head + "".join(self._panel(f"{section.id}-{k}", nodes) for k, nodes in enumerate(stretches))
        if section.kind == "body":
            return head + self._body(section.id, drawn, rest)
        if section.kind == "exercise":
            return self._exercise(head, drawn, rest)
        return head + self._beside(drawn, rest)

    def _exercise(self, head: str, drawn: list[Node], rest: list[Node]) -> str:
        """A problem with the first of the room for its working on the same page."""
        room = sum(n.rows for n in rest if isinstance(n, Space))
        said = self._beside(drawn, [n for n in rest if not isinstance(n, Space)])
        near = min(room, NEAR)
        return f"#block(breakable: false)[\n{head}{said}#blank({near})\n]\n\n#blank({room - near})\n\n"

    def _beside(self, drawn: list[Node], rest: list[Node]) -> str:
        """Drawings on the left and all else on the right, or below where there is no room."""
        left = self._column(drawn, LEAST_TEXT)
        if not left:
            return self._nodes(drawn) + self._nodes(rest)
        columns = f"columns: ({left:.2f}pt, 1fr), column-gutter: {GUTTER}pt"
        return f"#grid({columns}, [\n{self._nodes(drawn)}], [\n{self._nodes(rest)}])\n\n"

    def _after(self, drawn: list[Node], rest: list[Node]) -> str:
        """What is said on the left and the drawing that sums it up on the right, or below where there is no room."""
        right = max(self.widths[d.id] for n in drawn for d in _drawings_of(n))
        if self.page - GUTTER - right < LEAST_TEXT:
            return self._nodes(rest) + self._nodes(drawn)
        columns = f"columns: (1fr, {right:.2f}pt), column-gutter: {GUTTER}pt"
        return f"#grid({columns}, [\n{self._nodes(rest)}], [\n{self._nodes(drawn)}])\n\n"

    def _pairs(self, rest: list[Node]) -> str:
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
        written = ", ".join(f"block(breakable: false)[\n{self._nodes(cell)}]" for cell in cells)
        self.room = self.wide
        return f"{title}#grid(columns: (1fr, 1fr), column-gutter: {GUTTER}pt, row-gutter: 1em, {written})\n\n"

    def _panel(self, id: str, nodes: tuple[Node, ...]) -> str:
        """One body of several with its diagram; or the sums on all of them, across the page."""
        drawn, rest = [n for n in nodes if _holds_drawing(n)], [n for n in nodes if not _holds_drawing(n)]
        return self._body(id, drawn, rest) if drawn else self._nodes(rest)

    def _column(self, drawn: list[Node], room: float) -> float:
        """Width of the column that holds the drawings at their natural width, 0 where less than `room` would be left beside it."""
        left = max([COLUMN, *(self.widths[d.id] for n in drawn for d in _drawings_of(n))])
        return left if self.page - GUTTER - left >= room else 0.0

    def _body(self, id: str, drawn: list[Node], rest: list[Node]) -> str:
        """Diagram on the left, sums on the right, or a wide diagram above; no sum is torn, and the diagram comes again on the
        next page."""
        left = self._column(drawn, LEAST_SUMS)
        right = self.page - GUTTER - left
        self.room = int(right / CHARACTER) if left else self.wide
        groups: list[list[Node]] = [[]]
        for node in rest:
            if isinstance(node, Block) and node.name == "sum":
                groups.append([])
            groups[-1].append(node)
        cells = ", ".join(f"[\n{self._nodes(group)}]" for group in groups)
        self.room = self.wide
        drawn = [replace(n, name="diagram_again") if isinstance(n, Block) and n.name == "diagram" else n for n in drawn]
        figure = f"repeated => [\n{self._nodes(drawn)}]"
        if not left:
            return f'#above("{id}", {figure}, ({cells},))\n\n'
        return f'#beside("{id}", {left:.2f}pt, {right:.2f}pt, {figure}, ({cells},))\n\n'

    def _nodes(self, nodes) -> str:
        out, boxes = [], []
        nodes = tuple(nodes)
        for k, node in enumerate((*nodes, None)):
            if isinstance(node, Boxed):
                boxes.append(self._boxed(node))
                continue
            if boxes:
                out.append("#par(leading: 1.2em)[" + " #h(8pt) ".join(boxes) + "]\n\n")
                boxes = []
            if isinstance(node, Paragraph) and isinstance(nodes[k + 1] if k + 1 < len(nodes) else None, Working):
                out.append(f"#block(sticky: true, spacing: 0.85em)[{self._say(node.text)}]\n\n")
            elif node is not None:
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
            case Space(rows, form):
                return f"#{form}({rows})\n\n"
            case Block("diagram_again", children):
                once, again = (quoted(say(f"lesson.step.{name}", self.language)) for name in ("diagram", "diagram_again"))
                return f"=== #if repeated {{ {again} }} else {{ {once} }}\n\n{self._nodes(children)}"
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
        return (f"#figure(alt: {told}, caption: [{self._say(drawing.caption)}], "
                f'align(left, image("{drawing.id}.svg", width: {self.widths[drawing.id]:.2f}pt, alt: {told})))\n\n')

    def _boxed(self, box: Boxed) -> str:
        head = f"#strong[{self._say(box.asked, capital=True)}]"
        if not box.found:
            return f"#boxed[{head} \\ {self._say(Text('answer.not_found', {'what': box.asked}))}]"
        if any(len(plain.write(r.formula)) > WIDEST for r in box.results):
            rows_ = ", ".join(f"[{self._found(r.formula)}], [#h(1em){self._say(r.sense)} #{quoted(r.arrow)}]" for r in box.results)
            return f"#boxed[{head}\n#v(-2pt)\n#grid(columns: 1, row-gutter: 7pt, {rows_})]"
        cells = ", ".join(f"[{self._found(r.formula)}], [{self._say(r.sense)}], [#{quoted(r.arrow)}]" for r in box.results)
        return f"#boxed[{head}\n#v(-2pt)\n#grid(columns: 3, column-gutter: 12pt, row-gutter: 7pt, {cells})]"

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
        return f"#pad(y: 4pt)[{self._line(formula)}]" if _stacked(formula) else self._inline(formula)

    def _inline(self, formula: Formula) -> str:
        return f"#math.equation(alt: {quoted(spoken.write(formula, self.language))}, ${typeset.write(formula)}$)"

    def _say(self, text: Text, capital: bool = False) -> str:
        run = flow(text, self.language, capital)
        return "".join(f"#{quoted(p)}" if isinstance(p, str) else self._inline(p) for p in run)


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
