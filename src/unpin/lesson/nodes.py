"""The tree of a lesson: a few plain kinds of node, in the order a person would teach.

Text is only ever a code of the catalogue with its arguments; an argument is a name, a formula, another text, or a list of
these. So a format decides how a formula looks, and a language how a sentence runs.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import Union

from unpin.base.record import record
from unpin.lesson.formula import Formula
from unpin.model.house import PLAIN, House

Argument = Union[str, int, Formula, "Text", "Listing"]


@record
class Text:
    """A sentence or phrase: `code` in the catalogue of the lesson, `arguments` fill it."""

    code: str
    arguments: Mapping[str, Argument] = field(default_factory=dict, hash=False)


@record
class Listing:
    """Several things in a sentence, joined by commas and a last word. `join`: `and`, `or`; `sentence` for whole sentences
    that follow each other."""

    items: tuple[Argument, ...]
    join: str = "and"


def sentences(*texts: Text) -> Text:
    """Sentences one after the other, as one text."""
    return texts[0] if len(texts) == 1 else Text("sentences", {"all": Listing(texts, "sentence")})


@record
class Paragraph:
    """`role`: plain, why, sense, insight, remark, caution: what the sentence is for."""

    text: Text
    role: str = "plain"


@record
class Bullets:
    items: tuple[Text, ...]


@record
class Line:
    """One line of a working: `name` is one of the step names write, substitute, solve, result."""

    name: str
    formula: Formula


@record
class Working:
    """One sum worked out: its header, then lines that stand under each other. `step` counts the sums of the lesson from
    1, 0 for the check. `body`: name of the free body. `header` None: what follows from results that stand already."""

    id: str
    step: int
    body: str
    header: Formula | None
    lines: tuple[Line, ...]


@record
class Drawing:
    """A figure: `which` kind (problem, apart, body, motion, final), `subject` what of it, `figure` the figure of the drawing
    room (None where it could not be drawn), `caption` under it, `description` its text alternative."""

    id: str
    which: str
    subject: str
    caption: Text
    description: tuple[Text, ...]
    figure: object = field(default=None, compare=False)


@record
class Result:
    """One boxed number of an answer: symbol = amount, with the sign of the sense it was drawn in, then the true sense in words;
    where the amount is negative, `sense` says the size again (`that is 37.5 lb to the left`). `arrow`: the true sense as a
    sign, "" if none."""

    formula: Formula
    sense: Text
    arrow: str = ""


@record
class Boxed:
    """The answer to one thing asked. No results: statics alone does not fix it."""

    asked: Text
    results: tuple[Result, ...]
    found: bool = True


Cell = Union[Text, Formula, None]


@record
class Table:
    """Rows under `heads`, one for each column. The first cell of a row names it; None is a cell that is to be filled in."""

    id: str
    caption: Text
    heads: tuple[Text, ...]
    rows: tuple[tuple[Cell, ...], ...]


@record
class Block:
    """Content under one of the fixed step names (`read`, `body`, `diagram`, `count`, `sum`, `solve`, …)."""

    name: str
    children: tuple[Node, ...]


@record
class Space:
    """Room for the reader's own work, so many `rows` of handwriting. `form`: ruled, frame (for a drawing) or blank."""

    rows: int
    form: str = "ruled"


Node = Paragraph | Bullets | Working | Drawing | Boxed | Table | Space | Block


@record
class Section:
    """A chapter. `kind`: problem, sound, plan, body, found, answers, check, ways; on a sheet of several problems exercise, and back
    for what begins a page of its own. In a `body` section the first drawing stands beside everything else."""

    id: str
    kind: str
    title: Text
    children: tuple[Node, ...]


@record
class Lesson:
    """`title` and `text` in the author's words; `closing`: what stands small at the foot. `solved`: whether everything asked
    was found. `house`: how pages look, and the lines at their head and foot."""

    title: str
    text: str
    sections: tuple[Section, ...]
    closing: tuple[Text, ...]
    solved: bool
    language: str = "en"
    house: House = PLAIN


def panels(section: Section) -> tuple[tuple[Node, ...], ...]:
    """The children of a chapter in the stretches that belong beside one figure: one for each body of a chapter of several, then
    the sums on them together; everything at once for any other chapter."""
    counted = [k for k, n in enumerate(section.children) if isinstance(n, Block) and n.name == "count"]
    if section.kind != "body" or len(counted) < 2:
        return (section.children,)
    edges = [0, *(k + 1 for k in counted), len(section.children)]
    return tuple(section.children[a:b] for a, b in zip(edges, edges[1:]) if b > a)


def walk(nodes: tuple[Node, ...]):
    """Every node, parents first, in reading order."""
    for node in nodes:
        yield node
        if isinstance(node, Block):
            yield from walk(node.children)


def drawings(lesson: Lesson) -> list[Drawing]:
    return [n for s in lesson.sections for n in walk(s.children) if isinstance(n, Drawing)]
