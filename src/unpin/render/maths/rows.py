"""Where a long line is broken: between terms, so that no term is torn."""

from __future__ import annotations

from unpin.lesson.formula import Formula, Relation, Signed, Sum
from unpin.render.maths.text import write


def rows(formula: Formula, room: int) -> list[Formula]:
    """The formula in pieces of at most `room` characters where its terms allow; continued sums begin with their sign."""
    if not isinstance(formula, Relation) or not isinstance(formula.left, Sum) or len(write(formula)) <= room:
        return [formula]
    chunks: list[list[Signed]] = [[]]
    for term in formula.left.terms:
        # Six characters are kept for the relation, four for the indent of what follows.
        if chunks[-1] and len(write(Sum((*chunks[-1], term), len(chunks) > 1))) > room - 10:
            chunks.append([])
        chunks[-1].append(term)
    sums = [Sum(tuple(c), k > 0) for k, c in enumerate(chunks)]
    return [*sums[:-1], Relation(sums[-1], formula.right, formula.sign)]
