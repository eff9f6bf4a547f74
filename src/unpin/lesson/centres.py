"""Letters for moment centres that have no name: such as no point, part, letter or cord of the problem has."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from unpin.lesson.sheet import Sheet
from unpin.model.equation import Equation
from unpin.model.problem import Problem


def with_centres(sheet: Sheet, problem: Problem, equations: Iterable[Equation | None]) -> Sheet:
    """The sheet with a letter for each nameless centre, in the order of the sums."""
    places = dict.fromkeys(e.functional.at for e in equations if e is not None and e.functional.kind == "about" and not e.functional.point)
    return replace(sheet, centres=tuple(zip(places, _letters(problem, len(places)))))


def _letters(problem: Problem, count: int) -> list[str]:
    taken = {p.name for p in problem.points} | {p.name for p in problem.parts} | {x.name for x in problem.letters}
    taken |= {load.name for load in problem.loads} | {c.name for c in problem.cords} | {c.name for c in problem.connections}
    free = [x for x in "QOSUVWZKLHGE" if x not in taken]
    number = 1
    while len(free) < count:
        if f"Q{number}" not in taken:
            free.append(f"Q{number}")
        number += 1
    return free[:count]
