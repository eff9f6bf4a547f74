"""A teacher's sum, typed after the problem has been read."""

from __future__ import annotations

from unpin.base.diagnostic import Diagnostic, Place
from unpin.base.units import BY_SPELLING
from unpin.model.problem import Problem
from unpin.model.values import WantedSum
from unpin.read.asked import wanted_sum
from unpin.read.context import Context, Item
from unpin.read.report import Dropped, Report
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
