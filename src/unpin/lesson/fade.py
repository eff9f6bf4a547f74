"""Faded lessons: the last steps are left to the reader, who finds ruled room where they stood.

Level 1 takes out the check, 2 the solving and with it every result, 3 the numbers put in, 4 the sum in letters, 5 the choice of the
sum, 6 the free-body diagram (backward fading: Atkinson, Renkl & Merrill 2003, J. Educ. Psychol. 95:774). What is taken out is in no
part of the tree any more, so no format can show it; the key of every level is the whole lesson.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from unpin.lesson import terms
from unpin.lesson.formula import Amount, Formula, Function, Letter, Over, Product, Relation, Root, Signed, Squared, Sum, children
from unpin.lesson.nodes import Block, Boxed, Bullets, Lesson, Line, Listing, Node, Paragraph, Section, Space, Table, Text, Working, walk

CHECK, SOLVE, SUBSTITUTE, WRITE, CHOOSE, DIAGRAM = range(1, 7)
LEVELS = range(CHECK, DIAGRAM + 1)

_GOES_AT = {"substitute": SUBSTITUTE, "write": WRITE}
"""The level from which a line of a working is left out; every other line is part of the solving."""

_DIAGRAM_ROWS = 8


def fade(lesson: Lesson, level: int) -> Lesson:
    """The lesson with its last `level` kinds of step left out. From level CHOOSE on it must have been built with `centres` False, or
    the diagrams would tell the choice. A lesson without a solution comes back as it is. Raises ValueError for a level there is none of."""
    if level not in LEVELS:
        raise ValueError(level)
    if not any(s.kind == "check" for s in lesson.sections):
        return lesson
    faded = _Faded(level, results(lesson))
    return replace(lesson, sections=tuple(faded.section(s) for s in lesson.sections if s.kind != "ways"))


def results(lesson: Lesson) -> dict[str, Letter]:
    """The letter of every unknown whose value stands in the lesson, by the id of the unknown."""
    out = {}
    for section in lesson.sections:
        for node in walk(section.children):
            if isinstance(node, Working):
                for line in node.lines:
                    f = line.formula
                    if line.name == "result" and isinstance(f, Relation) and isinstance(f.left, Letter) and isinstance(f.right, Amount):
                        out[f.right.source] = f.left
    return {u: named for u, named in out.items() if u}


class _Faded:
    """One pass over the tree. `letters`: of unknowns, which take the place of their values from SOLVE on."""

    def __init__(self, level: int, letters: Mapping[str, Letter]):
        self.level, self.letters = level, letters

    def section(self, section: Section) -> Section:
        if section.kind == "plan" and self.level >= DIAGRAM:
            return replace(section, children=(Space(3),))
        if section.kind == "answers" and self.level >= SOLVE:
            return replace(section, children=tuple(n for box in section.children if isinstance(box, Boxed | Table) for n in _open(box)))
        if section.kind == "check":
            return replace(section, children=self._check(section.children))
        if section.kind in ("body", "found"):
            return replace(section, children=self._nodes(section.children))
        return section

    def _nodes(self, nodes: tuple[Node, ...]) -> tuple[Node, ...]:
        return _joined([n for node in nodes for n in self._node(node)])

    def _node(self, node: Node) -> tuple[Node, ...]:
        if isinstance(node, Working):
            return self._working(node)
        if isinstance(node, Block):
            kept = self._block(node)
            return (replace(node, children=kept),) if kept is not node.children else (node,)
        if isinstance(node, Paragraph) and node.role == "sense" and self.level >= SOLVE:
            return (Space(1),)
        if isinstance(node, Paragraph) and node.role == "why" and self.level >= CHOOSE:
            return _named(node)
        return (node,)

    def _block(self, block: Block) -> tuple[Node, ...]:
        if block.name == "diagram" and self.level >= DIAGRAM:
            return (Space(_DIAGRAM_ROWS, "frame"),)
        if block.name in ("body", "count") and self.level >= DIAGRAM:
            return (Space(sum(len(n.items) if isinstance(n, Bullets) else 1 for n in block.children)),)
        return self._nodes(block.children)

    def _working(self, working: Working) -> tuple[Node, ...]:
        kept: list[Line] = []
        gone = 0
        for line in working.lines:
            shown = self._line(line, working, kept)
            if shown is None:
                gone += rows_of(line.formula)
            else:
                kept.append(shown)
        header = working.header if self.level < CHOOSE else None
        gone += header is not working.header
        left = (replace(working, header=header, lines=tuple(kept)),) if header is not None or kept else ()
        return (*left, Space(gone)) if gone else left

    def _line(self, line: Line, working: Working, before: list[Line]) -> Line | None:
        """The line as it may be shown; None where it goes, or says no more than the line above once results are letters again."""
        if self.level >= _GOES_AT.get(line.name, SOLVE):
            return None
        if line.name != "substitute" or self.level < SOLVE:
            return line
        if working.id.startswith("found"):
            return None
        shown = _lettered(line.formula, self.letters)
        if before and terms.printed(shown) == terms.printed(before[-1].formula):
            return None
        return replace(line, formula=shown)

    def _check(self, nodes: tuple[Node, ...]) -> tuple[Node, ...]:
        """What is to be summed, while the choice is given, and room to do it."""
        rows = sum(rows_of(line.formula) for n in nodes if isinstance(n, Working) for line in n.lines) + 1
        intro = [n for n in nodes if isinstance(n, Paragraph) and n.text.code == "check.intro"]
        if intro and self.level < CHOOSE:
            return (intro[0], Space(rows))
        return (Paragraph(Text("fade.check")), Space(max(rows, 4)))


def _named(why: Paragraph) -> tuple[Node, ...]:
    """Room for the reasons; of what follows from the sums it is still said what it is for."""
    items = why.text.arguments["all"].items if isinstance(why.text.arguments.get("all"), Listing) else (why.text,)
    said = [t for t in items if isinstance(t, Text) and t.code.startswith("found.for")]
    return (Paragraph(said[0], "why"), Space(1)) if said else (Space(2),)


def _open(box: Boxed | Table) -> tuple[Node, ...]:
    """A box or a table to be filled in; what statics does not fix is said as before."""
    if isinstance(box, Table):
        return (replace(box, rows=tuple((name, *(None for _ in cells)) for name, *cells in box.rows)),)
    return (Paragraph(Text("fade.answer", {"what": box.asked})), Space(max(1, len(box.results)))) if box.found else (box,)


def _joined(nodes: list[Node]) -> tuple[Node, ...]:
    """Neighbouring ruled rooms as one."""
    out: list[Node] = []
    for node in nodes:
        if isinstance(node, Space) and out and isinstance(out[-1], Space) and out[-1].form == node.form:
            out[-1] = Space(out[-1].rows + node.rows, node.form)
        else:
            out.append(node)
    return tuple(out)


def rows_of(formula: Formula) -> int:
    """Rows of handwriting that a line takes: three terms a row."""
    left = formula.left if isinstance(formula, Relation) else formula
    return max(1, -(-len(children(left)) // 3)) if isinstance(left, Sum) else 1


def _lettered(formula: Formula, letters: Mapping[str, Letter]) -> Formula:
    """The formula with the values of unknowns as letters again."""
    def again(f: Formula) -> Formula:
        return _lettered(f, letters)

    match formula:
        case Amount(_, source):
            return letters.get(source, formula)
        case Function(_, of, _):
            return replace(formula, of=again(of))
        case Over(top, bottom):
            return Over(again(top), again(bottom))
        case Root(of):
            return Root(again(of))
        case Squared(of):
            return Squared(again(of))
        case Product(factors):
            return Product(tuple(map(again, factors)))
        case Signed(way, of, action):
            return Signed(way, again(of), action)
        case Sum(items, continued):
            return Sum(tuple(map(again, items)), continued)
        case Relation(left, right, sign):
            return Relation(again(left), again(right), sign)
    return formula


def hides_centres(level: int) -> bool:
    """Whether the diagrams of a level are drawn without the centre of their moments."""
    return level >= CHOOSE

