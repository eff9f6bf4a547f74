"""A figure of a problem as a file."""

from __future__ import annotations

from argparse import Namespace
from typing import TYPE_CHECKING

from unpin.commands.problem import bodies, on_picture, problem_of, worked_out
from unpin.commands.stop import FAULTY, MISUSE, SOLVED, Stop
from unpin.commands.writing import ending_of, save_as, typeset

if TYPE_CHECKING:
    from unpin.lesson.nodes import Drawing
    from unpin.model.problem import Problem


def run(chosen: Namespace) -> int:
    """Write the figure; returns the exit status."""
    ending = ending_of(chosen.output, (".svg", ".png"))
    which = chosen.which or ("body" if chosen.body else "problem")
    if which == "body" and not chosen.body:
        raise Stop(MISUSE, "body_needs_name")
    if chosen.beneath and which != "problem":
        raise Stop(MISUSE, "beneath.which")
    problem = on_picture(problem_of(chosen)[0], chosen)
    drawing = _drawing(problem, which, chosen)
    from unpin.render import picture

    save_as(chosen.output, typeset(lambda: picture.made(drawing, ending, chosen.tongue, problem.house.colours)), chosen.file)
    return SOLVED


def _drawing(problem: Problem, which: str, chosen: Namespace) -> Drawing:
    from unpin import api
    from unpin.lesson.figures import Studio
    from unpin.lesson.sheet import sheet_for

    worked = worked_out(problem) if which in ("final", "body") else api.check(problem)
    studio = Studio(worked, sheet_for(problem, worked.values or {}))
    nodes = studio.named(which, bodies(worked.structure, chosen.body) if which == "body" else ())
    if not nodes:
        raise Stop(FAULTY, "not_drawn", name=which)
    return nodes[0]
