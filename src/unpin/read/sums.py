"""A teacher's own sums: those of the file, and one that is typed after the problem has been read."""

from __future__ import annotations

from unpin.base.diagnostic import Diagnostic, Place
from unpin.base.units import BY_SPELLING, LENGTH
from unpin.model.problem import Problem
from unpin.model.values import WantedSum
from unpin.read.asked import refer_link
from unpin.read.context import Context, Item
from unpin.read.directions import direction
from unpin.read.phrases import Word
from unpin.read.quantities import quantity
from unpin.read.report import Dropped, Report
from unpin.read.sum_phrases import CUTS
from unpin.read.tree import Scalar, clean


def parse_sum(text: str, problem: Problem) -> WantedSum | tuple[Diagnostic, ...]:
    """`moments about A on arm` as a sum of this problem, or the remarks on it."""
    report = Report()
    text = clean(text, report).replace("\n", " ")
    known = Context(report)
    known.shown = {u.dimension: u for s in problem.units.values() if (u := BY_SPELLING.get(s))}
    known.letters = {letter.name: letter for letter in problem.letters}
    known.points = {p.name: p for p in problem.points}
    known.parts = {p.name: p for p in problem.parts}
    known.links = {c.name: c for c in problem.connections if c.kind == "link"}
    known.cords = {c.name for c in problem.cords}
    item = Item(text, Scalar(text, Place(1, 1, len(text) + 1)), (), report)
    try:
        found = wanted_sum(known, item)
    except Dropped:
        return report.in_order()
    return report.in_order() or found


def wanted_sum(known: Context, item: Item) -> WantedSum:
    """A sum in the teacher's words: the bodies by name, and moments about a point or forces along a direction."""
    said = item.phrase("sum")
    parts = []
    for word in said.parts:
        name = _body(known, item, word)
        if name and name not in parts:
            parts.append(name)
    if "whole" in parts and len(parts) > 1:
        raise item.drop("read.whole_and", said.parts[1])
    if not parts:
        raise item.drop("read.sum_on_links", said.parts[0])
    place = item.place()
    if said.along is not None:
        way = direction(known, item, said.along)
        return WantedSum(tuple(parts), along=way, written=item.text, place=place)
    if isinstance(said.about, tuple):
        about = tuple(quantity(known, item, a, LENGTH).value for a in said.about)
        return WantedSum(tuple(parts), about=about, written=item.text, place=place)
    return WantedSum(tuple(parts), about=known.point(item, said.about).name, written=item.text, place=place)


def _body(known: Context, item: Item, word: Word) -> str:
    """The name of a body; "" for a link, whose force is the same wherever it is cut."""
    if word.text in known.parts:
        known.refer_part(item, word)
    if word.text == "whole" or word.text in known.parts:
        return word.text
    if word.text in known.links or word.text in known.cords:
        refer_link(known, item, (word,))
        return ""
    if word.text.startswith("pin "):
        point = word.text[4:]
        named = Word(point, word.end - len(point), word.end)
        if point not in known.points and point in known.parts:
            known.refer_part(item, named)
            return point
        if point not in known.points:
            raise known.unknown(
                item, named, "read.unknown_point", known.points, "points"
            )
        known.refer(item, named, "points")
        return word.text
    if word.text.lower() in CUTS:
        raise item.drop("read.unknown_member", word, name=word.text, hint="hint.section")
    raise known.unknown(item, word, "read.unknown_member", [*known.parts, "whole"], "members")
