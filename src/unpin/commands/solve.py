"""The worked solution, as text or as data."""

from __future__ import annotations

import sys
from argparse import Namespace

from unpin.commands.problem import as_data, lesson_of, problem_of, worked_out
from unpin.commands.stop import FAULTY, SOLVED


def run(chosen: Namespace) -> int:
    """Tell the solution; returns the exit status."""
    problem, diagnostics = problem_of(chosen)
    worked = worked_out(problem)
    lesson = lesson_of(worked, chosen, drawn=False)
    if chosen.json:
        from unpin.lesson.build import chosen_route
        from unpin.lesson.sheet import sheet_for
        from unpin.render.json import write

        route = chosen_route(worked, chosen.route) if worked.recommended else None
        sys.stdout.write(write(worked, lesson, sheet_for(problem, worked.values or {}, chosen.figures), as_data(diagnostics, chosen.tongue), route))
    else:
        from unpin.render.terminal import write as write_text

        sys.stdout.write(write_text(lesson))
    return SOLVED if lesson.solved else FAULTY
