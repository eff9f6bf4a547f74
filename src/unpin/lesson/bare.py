"""Sums whose units stand behind results only: one pass over a finished tree. Angles keep their sign, for a bare number would be read as one."""

from __future__ import annotations

from dataclasses import fields, replace
from typing import TypeVar

from unpin.lesson import nodes
from unpin.lesson.formula import Amount, Formula, Function, Over, Product, Relation, Root, Signed, Squared, Sum
from unpin.lesson.nodes import Line, Working
from unpin.lesson.sheet import Sheet
from unpin.words.numbers import consistent

Tree = TypeVar("Tree")


def without_units(tree: Tree) -> Tree:
    """The same node, section or lesson; the lines of its workings are bare but for their results."""
    if isinstance(tree, tuple):
        return tuple(without_units(item) for item in tree)
    if isinstance(tree, Working):
        return replace(tree, lines=tuple(_line(line) for line in tree.lines))
    if type(tree).__module__ != nodes.__name__:
        return tree
    return replace(tree, **{f.name: without_units(getattr(tree, f.name)) for f in fields(tree) if f.name != "figure"})


def housed(tree: Tree, sheet: Sheet) -> Tree:
    """The tree as the house of a sheet writes sums. Where the units do not fit each other, so that bare numbers would not add up to the
    result behind them, they stay."""
    return tree if sheet.house.unit_in_terms or not consistent(sheet.units) else without_units(tree)


def _line(line: Line) -> Line:
    return line if line.name == "result" else replace(line, formula=_bare(line.formula))


def _bare(formula: Formula) -> Formula:
    match formula:
        case Amount(printed) if printed.unit not in ("", "°"):
            return replace(formula, printed=replace(printed, unit=""))
        case Product(factors):
            return Product(tuple(_factor(k, factors) for k in range(len(factors))))
        case Function(name, of):
            return Function(name, _bare(of))
        case Over(top, bottom):
            return Over(_bare(top), _bare(bottom))
        case Root(of):
            return Root(_bare(of))
        case Squared(of):
            return Squared(_bare(of))
        case Signed(_, of, _):
            return replace(formula, of=_bare(of))
        case Sum(terms, _):
            return replace(formula, terms=tuple(_bare(t) for t in terms))
        case Relation(left, right, _):
            return replace(formula, left=_bare(left), right=_bare(right))
    return formula


def _factor(place: int, factors: tuple[Formula, ...]) -> Formula:
    """One factor: beside another number it stands in brackets; at the head, before a letter, it does not (2.8 N_A)."""
    item = factors[place]
    bare = _bare(item)
    alone = place == 0 and (len(factors) == 1 or not isinstance(factors[1], (Amount, Over)))
    return replace(bare, apart=not alone) if isinstance(item, Amount) and item.printed.unit not in ("", "°") else bare
