"""A problem with its solution as a document."""

from __future__ import annotations

from argparse import Namespace

from unpin.commands.problem import lesson_of, on_picture, problem_of, worked_out
from unpin.commands.stop import FAULTY, SOLVED
from unpin.commands.writing import ending_of, publish_as


def run(chosen: Namespace) -> int:
    """Write the document; returns the exit status."""
    from unpin.publish import ENDINGS

    ending_of(chosen.output, ENDINGS)
    problem = on_picture(problem_of(chosen)[0], chosen)
    lesson = lesson_of(worked_out(problem), chosen, drawn=True)
    publish_as(lesson, chosen.output, (chosen.file,))
    return SOLVED if lesson.solved else FAULTY
