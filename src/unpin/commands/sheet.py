"""A sheet of problems with its answers."""

from __future__ import annotations

import sys
from argparse import Namespace

from unpin.commands.problem import problem_of, worked_out
from unpin.commands.stop import FAULTY, MISUSE, SOLVED, Stop
from unpin.commands.writing import ending_of, publish_as


def run(chosen: Namespace) -> int:
    """A sheet of problems; nothing is written while one of them is faulty or not fully solved."""
    from unpin import api
    from unpin.lesson.paper import misfit
    from unpin.publish import ENDINGS

    ending_of(chosen.output, ENDINGS)
    if chosen.marks and len(chosen.marks) != len(chosen.files):
        raise Stop(MISUSE, "marks", count=len(chosen.files), given=len(chosen.marks))
    several, faulty = [], []
    for file in chosen.files:
        chosen.file = file
        try:
            worked = worked_out(problem_of(chosen)[0])
            if worked.proof is None or not all(a.found for a in worked.answers):
                raise Stop(FAULTY, "unsound", file=file)
            several.append(worked)
        except Stop as stop:  # the other files are still looked at, so that all faults are told at once
            faulty.append(stop)
    if faulty:
        print(*(f"{stop.message(chosen.tongue)}\n" for stop in faulty[:-1] if stop.code), sep="", end="", file=sys.stderr)
        raise faulty[-1]
    if chosen.marks and (wrong := misfit(several, chosen.marks)) is not None:
        parts = {"number": wrong + 1, "file": chosen.files[wrong], "count": len(several[wrong].problem.asked), "given": len(chosen.marks[wrong])}
        raise Stop(MISUSE, "marks_of_parts", **parts)
    publish_as(api.paper(several, chosen.title, chosen.marks, chosen.answers, chosen.figures), chosen.output, tuple(chosen.files))
    return SOLVED
