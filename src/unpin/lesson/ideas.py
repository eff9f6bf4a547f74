"""A lesson told an idea at a time: which nodes, lines and arrows come with each, and what a class may be asked before.

The list is made from the finished tree and from nothing else, so what a faded lesson leaves out is in no idea either. An idea adds
to the board of its scene; a scene is one figure and what is said beside it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from unpin.lesson import asking
from unpin.lesson.board import ARMS, LEAD, Idea, Scene, Shown, Told, acting, rings
from unpin.lesson.formula import Header, Letter, Relation, Sum, actions, symbols
from unpin.lesson.formula import letter as letter_of
from unpin.lesson.nodes import Block, Boxed, Bullets, Drawing, Lesson, Line, Node, Paragraph, Section, Space, Table, Text, Working, panels, sentences, walk
from unpin.lesson.sheet import symbol_of
from unpin.lesson.stations import placed
from unpin.model.problem import GROUND

_LONG = 5
"""What follows from results in more lines than these goes on to a fresh board after each result."""
_BEFORE_ARMS = ("body", "diagram", "inspection", "count", "pair")
"""Kinds of idea that need no distances yet: these come with the choice of the sum."""

def told(lesson: Lesson) -> Told:
    """The ideas of a lesson in their order; of any lesson: whole, short, faded, unsound, or a sheet of several problems."""
    teller = _Teller(lesson)
    for section in lesson.sections:
        teller.chapter(section)
    teller.last(lesson.sections)
    end = len(teller.ideas)
    for section in lesson.sections:
        if section.kind == "ways":
            teller.ways(section)
    scenes = tuple(teller.scenes)
    return Told(scenes, placed(scenes, teller.ideas), end)


class _Teller:
    """Goes through the chapters once. `figures`: the free-body diagrams so far, by the body they are of. `apart_from_lines`: what was
    said does not stand beside the lines it leads to, for it is of another figure."""

    def __init__(self, lesson: Lesson):
        self.lead = bool(lesson.text.strip()) and any(s.kind == "problem" for s in lesson.sections)
        self.scenes: list[Scene] = []
        self.ideas: list[Idea] = []
        self.figures: dict[str, Drawing] = {}
        self.problem: Drawing | None = None
        self.apart: Drawing | None = None
        self.measured: set[str] = set()
        self.apart_from_lines = False

    def scene(self, section: Section, figure: Drawing | None) -> None:
        """A fresh board, unless the present one is of the same kind and still empty."""
        if self.scenes and not any(i.scene == len(self.scenes) - 1 for i in self.ideas):
            self.scenes.pop()
        self.scenes.append(Scene(section, figure))

    @property
    def figure(self) -> Drawing | None:
        return self.scenes[-1].figure

    def add(self, kind: str, *shows: Shown, arrows: Sequence[str] = (), lit: Sequence[str] = (), terms: int = 0,
            aside: tuple[Node, ...] = (), question: Text | None = None) -> None:
        figure = self.figure
        drawn = tuple(arrows)
        if figure is not None and figure.which == "body" and kind not in _BEFORE_ARMS and figure.id not in self.measured:
            self.measured.add(figure.id)
            drawn += (ARMS,)
        there = {a.id for a in acting(figure)}
        shining = tuple(a for a in dict.fromkeys(lit) if a in there)
        self.ideas.append(Idea(kind, len(self.scenes) - 1, shows, drawn, shining, terms, aside, question))

    def named(self, spoken: Iterable[Letter]) -> list[str]:
        """The arrows of the present figure that have one of these letters."""
        wanted = set(spoken)
        return [a.id for a in acting(self.figure) if a.symbol is not None and symbol_of(a) in wanted]

    def chapter(self, section: Section) -> None:
        match section.kind:
            case "problem":
                self._problem(section)
            case "plan":
                self._plan(section)
            case "body":
                for stretch in panels(section):
                    self._stretch(section, stretch)
            case "sound":
                self._sound(section)
            case "check":
                self._check(section)
            case "ways":
                return
            case _:
                drawn = next((n for n in walk(section.children) if isinstance(n, Drawing)), None)
                self.scene(section, drawn if section.kind != "answers" else None)
                if isinstance(drawn, Drawing) and section.kind == "exercise":
                    self.add("figure")
                kind = {"answers": "answer", "back": "answer"}.get(section.kind, "find")
                for node in section.children:
                    self._node(section, node, kind)

    def _problem(self, section: Section) -> None:
        self.problem = next((n for n in section.children if isinstance(n, Drawing)), None)
        self.scene(section, self.problem)
        blocks = {n.name: n for n in section.children if isinstance(n, Block)}
        if self.problem is not None or self.lead:
            self.add("figure", *((LEAD,) if self.lead else ()))
        if "given" in blocks:
            self.scene(section, self.problem)
            self.add("given", *blocks["given"].children)
        if "find" in blocks:
            self.scene(section, self.problem)
            self.add("find", *blocks["find"].children, aside=tuple(blocks[n] for n in ("assumed",) if n in blocks))

    def _sound(self, section: Section) -> None:
        moved = next((n for n in section.children if isinstance(n, Drawing)), None)
        self.scene(section, moved or self.problem)
        question: Text | None = Text("teach.question.sound")
        for node in section.children:
            if isinstance(node, Paragraph):
                self.add("sound", node, question=question)
                question = None
            else:
                self._node(section, node, "sound")

    def _plan(self, section: Section) -> None:
        self.apart = next((n for n in section.children if isinstance(n, Drawing)), None)
        seen = [n for n in section.children if isinstance(n, Block) and n.name == "inspection"]
        self.scene(section, self.problem)
        for block in seen:
            for node in block.children:
                self._node(section, node, "inspection")
        if self.apart is not None:
            self.scene(section, self.apart)
            self.add("apart", Text("teach.apart"))
            unknown = [a for a in acting(self.apart) if a.load is None]
            pairs, held = [a.id for a in unknown if a.by != GROUND], [a.id for a in unknown if a.by == GROUND]
            if pairs:
                self.add("pair", Text("teach.pairs"), arrows=pairs, question=Text("teach.question.apart"))
            if held:
                self.add("pair", Text("teach.held"), arrows=held, lit=held, question=Text("teach.question.held"))
        self.scene(section, self.apart or self.problem)
        question: Text | None = Text("teach.question.plan")
        for node in section.children:
            if node not in seen and not isinstance(node, Drawing):
                self._node(section, node, "plan", question)
                question = None

    def _stretch(self, section: Section, stretch: tuple[Node, ...]) -> None:
        """A body cut loose, or the sums on bodies that were cut loose before."""
        figure = next((n for n in walk(stretch) if isinstance(n, Drawing)), None)
        if figure is not None:
            self.figures[figure.subject] = figure
            self.scene(section, figure)
        elif not self.scenes or self.scenes[-1].section is not section:
            self.scene(section, None)
        later = [a for a in acting(figure) if a.load is None]
        for node in stretch:
            match node:
                case Block("body", children):
                    later = self._cut(section, children, figure, later)
                case Block("diagram", children):
                    told_of = [n for n in children if not isinstance(n, Drawing)]
                    if later and len(told_of) < len(children):
                        self.add("diagram", *told_of[:1], arrows=[a.id for a in later])
                        told_of, later = told_of[1:], []
                    for inner in told_of:
                        self._node(section, inner, "diagram")
                case Drawing():
                    self.add("diagram", arrows=[*(a.id for a in later), ARMS])
                    self.measured.add(node.id)
                case Block("count", children):
                    self.scene(section, self.figure)
                    for inner in children:
                        self._node(section, inner, "count", Text("teach.question.count"))
                case Block("sum", children):
                    self._why(section, children)
                case _:
                    self._node(section, node, "result")

    def _cut(self, section: Section, children: tuple[Node, ...], figure: Drawing | None, later: list) -> list:
        """The part with what it carries, then each connection with its forces; what is left is drawn with the last."""
        opening = [n for n in children if isinstance(n, Paragraph)][:1]
        items = [t for n in children if isinstance(n, Bullets) for t in n.items]
        carried = [t for t in items if t.code == "cut.load"]
        others = [t for t in items if t not in carried]
        if opening:
            self.add("body", *opening, *carried)
        else:
            for node in children:
                self._node(section, node, "body")
        question = Text("teach.question.forces", {"body": figure.caption.arguments["body"]}) if figure is not None else None
        for k, item in enumerate(others):
            spoken = asking.letters(item)
            mine = [a for a in later if a.symbol is not None and symbol_of(a) in spoken]
            later = [a for a in later if a not in mine]
            if k == len(others) - 1:
                mine, later = [*mine, *later], []
            self.add("diagram", item, arrows=[a.id for a in mine], lit=[a.id for a in mine], question=question)
            question = None
        for node in children:
            if isinstance(node, Paragraph) and node not in opening:
                self._node(section, node, "inspection")
        return later

    def _why(self, section: Section, children: tuple[Node, ...]) -> None:
        """The choice of a sum begins a board of its own."""
        self.scene(section, self.figure)
        several = sum(isinstance(n, Paragraph) for n in children) > 1
        together = asking.of_block(children)
        for node in children:
            question = together if several else asking.of_sum(node)
            together = None
            if several and (other := self._of(asking.body(node))) not in (None, self.figure):
                self.scene(section, other)
                self.apart_from_lines = True
            ring = rings(asking.centre(node), self.figure) if isinstance(node, Paragraph) and not several else ()
            if isinstance(node, Paragraph):
                self.add("sum", node, arrows=ring, lit=self.named(asking.left_over(node)), question=question)
            else:
                self._node(section, node, "sum", question, ring)

    def _check(self, section: Section) -> None:
        """The sum kept back beside its figure, then what else confirms the result, on a board of its own."""
        self.scene(section, None)
        confirmed: list[Node] = []
        for node in section.children:
            if confirmed or isinstance(node, Paragraph) and node.text.code.startswith("check.proof"):
                confirmed.append(node)
            else:
                if isinstance(node, Paragraph) and "body" in node.text.arguments:
                    # The figure of its body would answer which sum is left.
                    self.scene(section, self.problem)
                    self.apart_from_lines = True
                self._node(section, node, "check")
        if confirmed:
            self.scene(section, None)
            self.add("check", *confirmed)

    def _node(self, section: Section, node: Node, kind: str, question: Text | None = None, arrows: Sequence[str] = ()) -> None:
        match node:
            case Block(_, children):
                for inner in children:
                    self._node(section, inner, kind)
            case Working():
                self._working(section, node)
            case Bullets(items) if kind == "inspection":
                for item in items:
                    self.add(kind, item, question=question, arrows=arrows)
                    question = None
            case Paragraph(_, "sense"):
                self._sense(section, node)
            case Space(_, form) if form == "blank":
                return
            case Space() if self.ideas and self.ideas[-1].kind == "space" and self.ideas[-1].scene == len(self.scenes) - 1:
                self.ideas[-1] = replace(self.ideas[-1], shows=(*self.ideas[-1].shows, node))
            case Space():
                self.add("space", node)
            case Drawing():
                return
            case Paragraph(_, "why") if section.kind == "found":
                self.scene(section, None)
                self.add(kind, node)
            case Paragraph(text) if text.code == "check.intro":
                self.add(kind, node, question=Text("teach.question.check"))
            case _:
                self.add(kind, node, question=question, arrows=arrows)

    def _working(self, section: Section, working: Working) -> None:
        figure = self._beside(working)
        if self.apart_from_lines or self._begun() or figure is not self.figure and not self._said():
            self.scene(section, figure)
            self.apart_from_lines = False
        elif figure is not self.figure:
            # What was said leads to these lines: it stays beside the figure they belong to.
            self.scenes[-1] = Scene(section, figure)
        header = working.header
        if header is not None:
            ring = rings(letter_of(header.sub), figure) if isinstance(header, Header) and header.kind == "moments" else ()
            self.add("header", header, arrows=ring)
        for place, line in enumerate(working.lines):
            if header is None and place and line.name == "write" and working.lines[place - 1].name == "result" and len(working.lines) > _LONG:
                self.scene(section, figure)
            count = _countable(line)
            for k in range(1, count):
                self.add(line.name, line, lit=actions(line.formula.left.terms[k - 1]), terms=k)
            last = actions(line.formula.left.terms[-1]) if count > 1 else actions(line.formula)
            found = line.formula.left if isinstance(line.formula, Relation) else line.formula
            there = {a.id for a in acting(self.figure)}
            named = self.named(symbols(line.formula if last else found)) or self.named(symbols(line.formula))
            self.add(line.name, line, lit=last if there & set(last) else named)

    def _begun(self) -> bool:
        """Whether the present board has a working already."""
        return any(i.scene == len(self.scenes) - 1 and i.kind in ("header", "write", "substitute", "result") for i in self.ideas)

    def _said(self) -> bool:
        return any(i.scene == len(self.scenes) - 1 for i in self.ideas)

    def _of(self, body: object) -> Drawing | None:
        """The diagram of a body, by what it is called."""
        return next((f for f in self.figures.values() if f.caption.arguments.get("body") == body), None)

    def _beside(self, working: Working) -> Drawing | None:
        """The figure that holds the arrows of a working: of its own body, else the latest that has them all."""
        if working.body in self.figures:
            return self.figures[working.body]
        wanted = {a for line in working.lines for a in actions(line.formula)}
        if not wanted:
            spoken = {x for line in working.lines for x in symbols(line.formula)}
            return next((f for f in reversed(self.figures.values()) if any(a.symbol is not None and symbol_of(a) in spoken for a in acting(f))),
                        self.figure)
        for figure in reversed(self.figures.values()):
            if wanted <= {a.id for a in acting(figure)}:
                return figure
        return self.figure if self.figure is not None and wanted <= {a.id for a in acting(self.figure)} else self.apart

    def _sense(self, section: Section, node: Paragraph) -> None:
        """What the sign says; then the other half of the pair, on the structure taken apart."""
        own, across = asking.halves(node)
        spoken = {x for text in own for x in asking.letters(text)}
        if not across or self.apart is None:
            self.add("result", node, lit=self.named(spoken), question=asking.of_sense(node))
            return
        self.add("result", sentences(*own), lit=self.named(spoken), question=asking.of_sense(node))
        figure = self.figure
        self.scene(section, self.apart)
        self.add("pair", sentences(*across), lit=self.named(spoken), question=asking.of_pair(across))
        self.scene(section, figure)

    def ways(self, section: Section) -> None:
        """Each other way on a board of its own; the author's own sums one after the other, with what is to be said of each."""
        one_by_one = False
        for place, node in enumerate(section.children):
            after = section.children[place + 1:place + 2]
            if isinstance(node, Bullets) and one_by_one:
                for item in node.items:
                    self.add("way", item)
            elif isinstance(node, Paragraph) and after and isinstance(after[0], Bullets):
                self.scene(section, self.apart or self.problem)
                one_by_one = node.text.code == "ways.own_title"
                self.add("way", node, *(() if one_by_one else after))
            elif not isinstance(node, Bullets):
                self.add("way", node)

    def last(self, sections: Sequence[Section]) -> None:
        """All answers together once more, with the figure of the result: what is left standing at the end."""
        answers = next((s for s in sections if s.kind == "answers"), None)
        if answers is None or not any(s.kind == "check" for s in sections):
            return
        boxes = [n for n in answers.children if isinstance(n, Boxed) or isinstance(n, Table) and all(c is not None for r in n.rows for c in r)]
        if boxes and not any(isinstance(n, Space) for n in answers.children):
            self.scene(answers, next((n for n in answers.children if isinstance(n, Drawing)), None))
            self.add("answer", *boxes)


def _countable(line: Line) -> int:
    """How many terms a line of symbols has that are written one after the other."""
    f = line.formula
    return len(f.left.terms) if line.name == "write" and isinstance(f, Relation) and isinstance(f.left, Sum) else 1
