"""Where a long line is broken: between terms, so that no term is torn."""

from __future__ import annotations

from unpin.lesson.formula import Formula, Over, Relation, Signed, Sum, children
from unpin.render.maths.text import write


def rows(formula: Formula, room: int, stacked: bool = True) -> list[Formula]:
    """The formula in pieces of at most `room` characters where its terms allow; continued sums begin with their sign.
    `stacked`: fractions stand upright and take the width of their longer half."""
    if not isinstance(formula, Relation) or not isinstance(formula.left, Sum) or _width(formula, stacked) <= room:
        return [formula]
    chunks: list[list[Signed]] = [[]]
    for term in formula.left.terms:
        # Six characters are kept for the relation, four for the indent of what follows.
        if chunks[-1] and _width(Sum((*chunks[-1], term), len(chunks) > 1), stacked) > room - 10:
            chunks.append([])
        chunks[-1].append(term)
    sums = [Sum(tuple(c), k > 0) for k, c in enumerate(chunks)]
    return [*sums[:-1], Relation(sums[-1], formula.right, formula.sign)]


def _width(formula: Formula, stacked: bool) -> int:
    return len(write(formula)) - (_saved(formula) if stacked else 0)


def _saved(formula: Formula) -> int:
    if isinstance(formula, Over):
        # Two brackets and the stroke go, and the shorter half.
        return 3 + min(len(write(formula.top)), len(write(formula.bottom)))
    return sum(map(_saved, children(formula)))
