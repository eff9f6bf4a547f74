"""A lesson as one self-contained page: native mathematics, drawings inside, the typefaces inside, nothing fetched."""

from __future__ import annotations

import base64
import hashlib
import re
from collections.abc import Mapping, Sequence
from html import escape
from importlib.resources import files

from unpin.draw import fonts
from unpin.lesson.flow import flow
from unpin.lesson.formula import Formula
from unpin.lesson.nodes import Block, Boxed, Bullets, Cell, Drawing, Lesson, Node, Paragraph, Section, Space, Table, Text, Working, panels
from unpin.render.maths import mathml, spoken
from unpin.render.page import teaching
from unpin.render.page.shut import SHUT, named_apart, scoped
from unpin.render.picture import svg
from unpin.words.sentences import say

_CLINGING = ",.;:?!)"
_PAPERS = {"a4": "A4", "us-letter": "letter", "us-legal": "legal"}
"""What a style sheet calls the papers of a house."""
_SCRIPTS = ("script.js", "pen.js", "notes.js", "teach.js")
"""One script in this order: what a page does, and the teaching view with its pen and its second window."""

_FACES = (("Unpin Text", "text", "normal", 400), ("Unpin Text", "text-italic", "italic", 400), ("Unpin Text", "text-bold", "normal", 700),
          ("Unpin Math", "math", "normal", 400))


def write(lesson: Lesson) -> str:
    """The whole page. All text of the author is escaped; scripts and styles are allowed by their hash only."""
    return _Page(lesson.language).lesson(lesson)


def chapter(section: Section, language: str = "en") -> str:
    """One chapter by itself, for a page that grows."""
    return _Page(language)._section(section)


def content(nodes, language: str = "en") -> str:
    """Nodes without a heading, in their order."""
    return _Page(language)._nodes(nodes)


def phrase(text: Text, language: str = "en") -> str:
    """One sentence or phrase, its formulas as mathematics."""
    return _Page(language)._capital(text)


def typefaces() -> str:
    """The style sheet of the typefaces that pages and figures are set in."""
    return _faces()


def fragment(lesson: Lesson, shown: Sequence[Section] | None = None, folded: Sequence[Section] = (), title: str = "") -> str:
    """A lesson as a piece of somebody else's page, such as the output of a notebook: no script, styles that reach nothing outside it, names
    that no other piece has. `shown`: its chapters to show, by default all; `folded`: those behind a line with the `title` that opens them."""
    page, house = _Page(lesson.language), lesson.house
    name = lesson.title or say("lesson.title.untitled", lesson.language)
    lead = "".join(f'<p class="lead">{escape(p)}</p>\n' for p in lesson.text.split("\n\n") if p.strip())
    heading = f'<p class="heading">{escape(house.heading)}</p>\n' if house.heading else ""
    more = "".join(page._section(s) for s in folded)
    more = f"<details><summary>{escape(title)}</summary>\n{more}</details>\n" if more else ""
    sections = "\n".join(page._section(s) for s in (lesson.sections if shown is None else shown))
    foot = f"<p>{escape(house.credit)}</p>" if house.credit else ""
    return piece(f"{heading}<h1>{escape(name)}</h1>\n{lead}<main>\n{sections}\n{more}</main>\n{foot}", lesson.language, house.colours)


def piece(content: str, language: str, colours: str) -> str:
    """Content with its typefaces and styles, shut off from the page around it."""
    look = f' data-colours="{colours}"' if colours != "reader" else ""
    style = _faces() + "\n" + scoped(_asset("style.css"), f".{SHUT}")
    return f'<div class="{SHUT}" lang="{escape(language)}"{look}>\n<style>{style}</style>\n{named_apart(content)}\n</div>\n'


class _Page:
    """`marks`: numbers by which the teaching view finds what it shows, by the `id` of the node."""

    def __init__(self, language: str):
        self.language = language
        self.marks: Mapping[int, int] = {}

    def lesson(self, lesson: Lesson) -> str:
        view = teaching.view(lesson)
        self.marks = view.marks
        title, house = lesson.title or say("lesson.title.untitled", self.language), lesson.house
        style = _faces() + _near(_tight(_asset("style.css").replace("size: A4", f"size: {_PAPERS[house.paper]}") + _asset("teach.css")))
        script = _close(_tight("".join(map(_asset, _SCRIPTS))))
        heading = f'<p class="heading">{escape(house.heading)}</p>\n' if house.heading else ""
        policy = f"default-src 'none'; style-src {_hash(style)}; script-src {_hash(script)}; font-src data:; img-src data:; base-uri 'none'; form-action 'none'"
        lead = "".join(f'<p class="lead"{view.lead}>{escape(p)}</p>\n' for p in lesson.text.split("\n\n") if p.strip())
        links = "".join(f'<li><a href="#{s.id}">{self._capital(s.title)}</a></li>' for s in lesson.sections)
        sections = "\n".join(self._section(s) for s in lesson.sections)
        foot = "".join(f"<p>{self._say(t)}</p>" for t in lesson.closing) + (f"<p>{escape(house.credit)}</p>" if house.credit else "")
        colours = f' data-colours="{house.colours}"' if house.colours != "reader" else ""
        return (f'<!DOCTYPE html>\n<html lang="{escape(self.language)}"{colours}>\n<head>\n<meta charset="utf-8">\n'
                f'<meta http-equiv="Content-Security-Policy" content="{policy}">\n'
                f'<meta name="viewport" content="width=device-width, initial-scale=1">\n<title>{escape(title)}</title>\n'
                f"<style>{style}</style>\n</head>\n<body>\n<header>\n{heading}<h1>{escape(title)}</h1>\n{lead}"
                f'<nav aria-label="{escape(say("lesson.title.contents", self.language))}"><ol>{links}</ol></nav>\n'
                f"{teaching.opener(self.language)}</header>\n<main>\n{sections}\n</main>\n<footer>{foot}</footer>\n"
                f"{teaching.stage(view, self._capital, escape(title), self.language)}<script>{script}</script>\n</body>\n</html>\n")

    def _section(self, section: Section) -> str:
        head = f'<section id="{section.id}" class="{section.kind}">\n<h2>{self._capital(section.title)}</h2>\n'
        stretches = panels(section)
        if len(stretches) > 1:
            return head + "".join(self._panel(nodes) for nodes in stretches) + "</section>"
        drawn = [n for n in section.children if _holds_drawing(n)]
        rest = [n for n in section.children if not _holds_drawing(n)]
        below = [n for n in rest if isinstance(n, Space)] if section.kind == "exercise" else []
        rest = [n for n in rest if n not in below]
        if not drawn or section.kind in ("answers", "plan"):
            return head + self._nodes(section.children) + "</section>"
        return f"{head}{self._panel((*drawn, *rest))}{self._nodes(below)}</section>"

    def _panel(self, nodes) -> str:
        """What is drawn on the left, what is said about it on the right."""
        drawn, rest = [n for n in nodes if _holds_drawing(n)], [n for n in nodes if not _holds_drawing(n)]
        if not drawn:
            return self._nodes(rest)
        return (f'<div class="beside">\n<div class="drawn">{self._nodes(drawn)}</div>\n'
                f'<div class="said">{self._nodes(rest)}</div>\n</div>\n')

    def _nodes(self, nodes) -> str:
        out, boxes = [], []
        for node in nodes:
            if isinstance(node, Boxed):
                boxes.append(self._marked(self._boxed(node), node))
                continue
            if boxes:
                out.append(_boxes(boxes))
                boxes = []
            out.append(self._marked(self._node(node), node))
        if boxes:
            out.append(_boxes(boxes))
        return "".join(out)

    def _marked(self, made: str, shown: object) -> str:
        """The first element of what was made of a node with its number, if it has one."""
        number = self.marks.get(id(shown))
        return made if number is None else re.sub(r"^<\w+", rf'\g<0> data-i="{number}"', made, count=1)

    def _node(self, node: Node) -> str:
        match node:
            case Paragraph(text, role):
                mark = f' class="{role}"' if role != "plain" else ""
                return f"<p{mark}>{self._say(text)}</p>\n"
            case Bullets(items):
                return "<ul>" + "".join(self._marked(f"<li>{self._capital(t)}</li>", t) for t in items) + "</ul>\n"
            case Working():
                return self._working(node)
            case Drawing():
                return self._drawing(node)
            case Table():
                return self._table(node)
            case Space(rows, form):
                told = escape(say(f"lesson.fade.{'frame' if form == 'frame' else 'space'}", self.language))
                return f'<div class="space {form}" role="img" aria-label="{told}">{"<div></div>" * rows}</div>\n'
            case Block(name, children):
                title = escape(say(f"lesson.step.{name}", self.language))
                return f'<div class="block {name}"><h3>{title}</h3>\n{self._nodes(children)}</div>\n' if children else ""
        raise TypeError(f"a page cannot show a {type(node).__name__}")

    def _working(self, working: Working) -> str:
        out = []
        if working.header is not None:
            out.append(self._marked(self._row("header", working.header), working.header))
        out += [self._marked(self._row(line.name, line.formula), line) for line in working.lines]
        return f'<div class="working" id="{working.id}">{"".join(out)}</div>\n'

    def _row(self, name: str, formula: Formula) -> str:
        """A line of working that may be broken at its signs; a voice reads it as one."""
        said = escape(spoken.write(formula, self.language))
        return f'<div class="row {name}"><span class="line" role="math" aria-label="{said}">{"".join(mathml.pieces(formula))}</span></div>'

    def _drawing(self, drawing: Drawing) -> str:
        caption = f"<figcaption>{self._say(drawing.caption)}</figcaption>"
        return f'<figure id="{drawing.id}">{svg(drawing, fonts="page", language=self.language)}{caption}</figure>\n'

    def _boxed(self, box: Boxed) -> str:
        head = f"<h3>{self._capital(box.asked)}</h3>"
        if not box.found:
            return f'<div class="boxed">{head}<p>{self._say(Text("answer.not_found", {"what": box.asked}))}</p></div>'
        lines = "".join(f"<tr><td>{self._inline(r.formula)}</td><td>{self._say(r.sense)}</td>"
                        f"<td class=\"arrow\" aria-hidden=\"true\">{r.arrow}</td></tr>" for r in box.results)
        return f'<div class="boxed">{head}<table>{lines}</table></div>'

    def _table(self, table: Table) -> str:
        heads = "".join(f'<th scope="col">{self._capital(h)}</th>' for h in table.heads)
        rows = "".join(f'<tr><th scope="row">{self._cell(name)}</th>' + "".join(f"<td>{self._cell(c)}</td>" for c in cells) + "</tr>\n"
                       for name, *cells in table.rows)
        return (f'<table class="listed" id="{table.id}"><caption>{self._say(table.caption)}</caption>\n<thead><tr>{heads}</tr></thead>\n'
                f"<tbody>\n{rows}</tbody></table>\n")

    def _cell(self, cell: Cell) -> str:
        if cell is None:
            return f'<span class="blank" role="img" aria-label="{escape(say("lesson.fade.space", self.language))}"></span>'
        return self._say(cell) if isinstance(cell, Text) else self._inline(cell)

    def _inline(self, formula: Formula) -> str:
        return mathml.write(formula)

    def _say(self, text: Text) -> str:
        return self._run(flow(text, self.language))

    def _run(self, run: list[str | Formula]) -> str:
        """Words and formulas; a stop or comma after a formula is kept on its line."""
        out = []
        for k, piece in enumerate(run):
            if isinstance(piece, str):
                tied = len(piece) - len(piece.lstrip(_CLINGING)) if k and not isinstance(run[k - 1], str) else 0
                out.append(escape(piece[tied:]))
                continue
            after = run[k + 1] if k + 1 < len(run) else ""
            tail = after[:len(after) - len(after.lstrip(_CLINGING))] if isinstance(after, str) else ""
            out.append(f'<span class="tied">{self._inline(piece)}{escape(tail)}</span>' if tail else self._inline(piece))
        return "".join(out)

    def _capital(self, text: Text) -> str:
        """With a capital first letter, unless it begins with a formula or a name."""
        return self._run(flow(text, self.language, capital=True))


def _holds_drawing(node: Node) -> bool:
    return isinstance(node, Drawing) or (isinstance(node, Block) and any(isinstance(c, Drawing) for c in node.children))


def _boxes(boxes: list[str]) -> str:
    return f'<div class="boxes">{"".join(boxes)}</div>\n'


def _asset(name: str) -> str:
    return "\n" + files("unpin.render.page").joinpath(name).read_text("utf-8")


def _tight(text: str) -> str:
    """Without the room and the remarks that only an author needs. No text of ours runs over a line's end."""
    lines = (line.strip() for line in text.splitlines())
    return "\n" + "\n".join(line for line in lines if line and not line.startswith(("//", "/**")))


_WORDS = re.compile(r"""("[^"\n]*"|'[^'\n]*'|`[^`]*`)""")
_ROOM = re.compile(r" ?([-+*/%=<>!&|?:;,(){}\[\]]) ?")


def _close(script: str) -> str:
    """A script without the room round its signs, and with the lines that a sign ends run together; what stands in quotation marks is
    left alone. Two signs that would become another (`a + +b`) we do not write, nor a pattern with a blank."""
    near = "".join(piece if k % 2 else _ROOM.sub(r"\1", piece) for k, piece in enumerate(_WORDS.split(script)))
    return re.sub(r"(?<=[;{,])\n|\n(?=[}.])", "", near)


def _near(style: str) -> str:
    """A style sheet without the room round its signs; none of ours holds words in quotation marks that it could change."""
    return re.sub(r"(?<=[\w-]): (?=[^{}]*\})", ":", re.sub(r"\s*([{};,])\s*", r"\1", style)).replace(";}", "}")


def _hash(text: str) -> str:
    return f"'sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()}'"


def _faces() -> str:
    """The four typefaces as data, so that the page looks the same everywhere."""
    return "".join(f"\n@font-face{{font-family:'{family}';font-style:{slant};font-weight:{weight};"
                   f"src:url(data:font/woff2;base64,{base64.b64encode(fonts.woff2(name)).decode()}) format('woff2')}}"
                   for family, name, slant, weight in _FACES)
