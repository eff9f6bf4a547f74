"""A lesson as LaTeX source for amsmath and graphicx, and its figures as PDF files in a folder beside it.

The source compiles with pdfLaTeX and LuaLaTeX. Letters that pdfLaTeX has no sign for are kept and shown there by their number.
"""

from __future__ import annotations

import re
import unicodedata

from unpin.lesson.flow import flow
from unpin.lesson.nodes import Block, Boxed, Bullets, Cell, Drawing, Lesson, Node, Paragraph, Section, Space, Table, Text, Working, drawings
from unpin.render.maths import latex
from unpin.render.picture import description, pdf
from unpin.words.sentences import say

ROOM = 84
"""Characters of a line of working before it is broken."""

ROWS = 24
"""Rows of a table before it is begun anew."""

_SPECIAL = {"\\": r"\textbackslash{}", "{": r"\{", "}": r"\}", "$": r"\$", "&": r"\&", "#": r"\#", "%": r"\%", "_": r"\_",
            "~": r"\textasciitilde{}", "^": r"\textasciicircum{}", "<": r"\textless{}", ">": r"\textgreater{}", "|": r"\textbar{}",
            '"': "{''}", "\t": " ", "\x7f": "", "\u202f": r"\,", "\u2009": r"\,", "\u00a0": "~", "−": r"\ensuremath{-}", "·": r"\ensuremath{\cdot}",
            "°": r"\ensuremath{^{\circ}}", "²": r"\ensuremath{^{2}}", "³": r"\ensuremath{^{3}}", "½": r"\ensuremath{\tfrac12}",
            "×": r"\ensuremath{\times}", "√": r"\ensuremath{\surd}", "Σ": r"\ensuremath{\Sigma}", "≈": r"\ensuremath{\approx}",
            "–": r"\textendash{}", "—": r"\textemdash{}", "…": r"\dots{}", "’": "'", "‘": "`", "“": "``", "”": "''", "ß": r"\ss{}", "ø": r"\o{}", "Ø": r"\O{}",
            "æ": r"\ae{}", "Æ": r"\AE{}", "œ": r"\oe{}", "Œ": r"\OE{}", "ł": r"\l{}", "Ł": r"\L{}", "å": r"\aa{}", "Å": r"\AA{}",
            "ı": r"\i{}"}
_ACCENTS = {"\u0300": "`", "\u0301": "'", "\u0302": "^", "\u0303": "~", "\u0304": "=", "\u0306": "u", "\u0307": ".", "\u0308": '"',
            "\u030b": "H", "\u030c": "v", "\u0327": "c", "\u0323": "d", "\u0331": "b"}

_PAPERS = {"a4": ("a4paper", 210, 297), "us-letter": ("letterpaper", 215.9, 279.4),
           "us-legal": ("legalpaper", 215.9, 355.6)}
"""The option of the class, width and height in mm."""

_HEAD = r"""\documentclass[PAPER,11pt]{article}
\usepackage{amsmath,amssymb,graphicx}
\ifdefined\pdfminorversion \pdfminorversion=7 \fi
\ifdefined\pdfvariable \pdfvariable minorversion 7 \fi
\setlength{\hoffset}{-1in}\setlength{\voffset}{-1in}
\setlength{\oddsidemargin}{20mm}\setlength{\textwidth}{WIDTHmm}
\setlength{\topmargin}{15mm}\setlength{\headheight}{0pt}\setlength{\headsep}{0pt}\setlength{\textheight}{HEIGHTmm}\setlength{\footskip}{10mm}
\setlength{\parindent}{0pt}\setlength{\parskip}{0.6em plus 0.2em}
\raggedbottom\sloppy
\makeatletter\@ifundefined{KV@Gin@alt}{\define@key{Gin}{alt}{}}{}\makeatother % figures are told in words; old versions skip it
% A new page, unless so much is left of this one.
\newcommand{\roomfor}[1]{\par\vskip 0pt plus #1\penalty-100\vskip 0pt plus -#1}
\newcommand{\ruledrow}{\par\vspace{9mm}\hrule height 0.3pt\par}
\newcommand{\blankframe}[1]{\par\fbox{\parbox[t][#1]{\dimexpr\linewidth-2\fboxsep-2\fboxrule}{\mbox{}}}\par}
"""


def write(lesson: Lesson, folder: str) -> str:
    """The source; `folder` is the name of the folder of figures as the source refers to it."""
    body = _Source(lesson.language, folder).lesson(lesson)
    return _head(lesson.house.paper) + _foreign(body) + "\\begin{document}\n" + body + "\\end{document}\n"


def _head(paper: str) -> str:
    """The preamble: the text is the page but for the margins."""
    option, width, height = _PAPERS[paper]
    return _HEAD.replace("PAPER", option).replace("WIDTH", f"{width - 40:g}").replace("HEIGHT", f"{height - 42:g}")


def pictures(lesson: Lesson) -> dict[str, bytes]:
    """Name and content of every file of the folder."""
    return {f"{d.id}.pdf": pdf(d, lesson.language) for d in drawings(lesson)}


def escaped(text: str) -> str:
    """Words that LaTeX takes for nothing else; accents are written out, so that every engine sets them."""
    kept = "".join(_letter(c) for c in unicodedata.normalize("NFC", " ".join(text.split(" "))) if c in "\n\t" or ord(c) >= 32)
    return kept.replace("--", "-{}-").replace("--", "-{}-")  # two signs and no dash


def _letter(c: str) -> str:
    if c in _SPECIAL or c.isascii():
        return _SPECIAL.get(c, c)
    if latex._GREEK.get(c):
        return f"\\ensuremath{{{latex._GREEK[c]}}}"
    if latex.arrow(c):
        return f"\\ensuremath{{{latex.arrow(c)}}}"
    apart = unicodedata.normalize("NFD", c)
    if len(apart) == 2 and apart[0].isascii() and apart[1] in _ACCENTS:
        base = {"i": "\\i", "j": "\\j"}.get(apart[0], apart[0]) if _ACCENTS[apart[1]] not in "cdb" else apart[0]
        return f"\\{_ACCENTS[apart[1]]}{{{base}}}"
    return c


def _foreign(body: str) -> str:
    """What pdfLaTeX prints for letters that it has no sign for."""
    out = "".join(f"\\DeclareUnicodeCharacter{{{ord(c):04X}}}{{[U+{ord(c):04X}]}}\n" for c in sorted({c for c in body if not c.isascii()}))
    return f"\\ifdefined\\directlua\\else\n{out}\\fi\n" if out else ""


class _Source:
    def __init__(self, language: str, folder: str):
        self.language, self.folder = language, folder

    def lesson(self, lesson: Lesson) -> str:
        title = lesson.title or say("lesson.title.untitled", self.language)
        house = lesson.house
        out = [f"{{\\small {escaped(house.heading)}\\par}}"] if house.heading else []
        out += [f"{{\\LARGE\\bfseries {escaped(title)}\\par}}", *(escaped(p).strip() for p in lesson.text.split("\n\n") if p.strip())]
        for place, section in enumerate(lesson.sections):
            out += self._section(section, first=place == 0)
        foot = [*(self._say(t) for t in lesson.closing), *([escaped(house.credit)] if house.credit else [])]
        out.append("{\\small " + " ".join(foot) + "\\par}")
        return "\n\n".join(out) + "\n"

    def _section(self, section: Section, first: bool) -> list[str]:
        # Before the first stands only the heading: a page for it alone would be an empty one.
        before = [] if first else {"back": ["\\clearpage"], "exercise": ["\\roomfor{150mm}"]}.get(section.kind, [])
        shown = self._nodes(section.children)
        if section.kind == "ways":
            shown = ["{\\small", *shown, "\\par}"]
        return [*before, f"\\section*{{{self._say(section.title, capital=True)}}}", *shown]

    def _nodes(self, nodes: tuple[Node, ...]) -> list[str]:
        return [block for node in nodes for block in self._node(node)]

    def _node(self, node: Node) -> list[str]:
        match node:
            case Paragraph(text, _):
                return [self._say(text)]
            case Bullets(items):
                lines = [f"\\item {self._say(t, capital=True)}" for t in items]
                return ["\\begin{itemize}\\setlength{\\itemsep}{0pt}\\setlength{\\parskip}{0pt}\n" + "\n".join(lines) + "\n\\end{itemize}"]
            case Working(_, _, _, header, lines):
                return [f"\\hspace*{{1em}}$\\displaystyle\n{latex.working(header, lines, ROOM)}\n$"] if header is not None or lines else []
            case Drawing():
                return [self._drawing(node)]
            case Boxed():
                return [self._boxed(node)]
            case Table():
                return [self._table(node)]
            case Space(rows, form):
                return [{"ruled": "\\ruledrow" * rows, "frame": f"\\blankframe{{{9 * rows}mm}}"}.get(form, f"\\vspace{{{9 * rows}mm}}")]
            case Block(name, children):
                title = escaped(say(f"lesson.step.{name}", self.language))
                return [f"\\subsubsection*{{{title}}}", *self._nodes(children)] if children else []
        raise TypeError(f"LaTeX cannot show a {type(node).__name__}")

    def _drawing(self, drawing: Drawing) -> str:
        told = re.sub(r"[{}\\%#]", "", description(drawing, self.language))
        file = f"\\includegraphics[alt={{{escaped(told)}}}]{{{self.folder}/{drawing.id}.pdf}}"
        return f"{file}\\nopagebreak\n\n{{\\small {self._say(drawing.caption)}\\par}}"

    def _boxed(self, box: Boxed) -> str:
        head = f"\\textbf{{{self._say(box.asked, capital=True)}}}"
        if not box.found:
            return f"{head}\\nopagebreak\n\n{self._say(Text('answer.not_found', {'what': box.asked}))}"
        lines = " \\\\\n".join(f"${latex.write(r.formula)}$ & {self._say(r.sense)}" for r in box.results)
        return f"\\fbox{{\\begin{{tabular}}{{ll}}\n\\multicolumn{{2}}{{l}}{{{head}}} \\\\\n{lines}\n\\end{{tabular}}}}"

    def _table(self, table: Table) -> str:
        """A long table in stretches that fit a page, each with its heads. One to be filled in has room to write."""
        heads = " & ".join(f"\\textbf{{{self._say(h, capital=True)}}}" for h in table.heads)
        columns = "l" * (len(table.heads) - 1) + "p{75mm}"
        out = [f"\\textbf{{{self._say(table.caption)}}}\\nopagebreak"]
        for k in range(0, len(table.rows), ROWS):
            rows = "\n".join(" & ".join(self._cell(c) for c in row) + " \\\\" for row in table.rows[k:k + ROWS])
            out.append(f"\\begin{{tabular}}{{{columns}}}\n{heads} \\\\ \\hline\n{rows}\n\\end{{tabular}}")
        return "\n\n".join(out)

    def _cell(self, cell: Cell) -> str:
        if cell is None:
            return "\\rule[-2mm]{0pt}{8mm}"
        return self._say(cell) if isinstance(cell, Text) else f"${latex.write(cell)}$"

    def _say(self, text: Text, capital: bool = False) -> str:
        return latex.inline(flow(text, self.language, capital), lambda words, _: escaped(words))
