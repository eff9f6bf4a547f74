"""Whether a problem is sound: faults of the file, then the four statements about the problem."""

from __future__ import annotations

import sys
from argparse import Namespace

from unpin.commands.problem import as_data, problem_of
from unpin.commands.stop import FAULTY, SOLVED
from unpin.commands.writing import print_data


def run(chosen: Namespace) -> int:
    """Faults of the file, then the four statements about the problem."""
    problem, diagnostics = problem_of(chosen)
    from unpin import api
    from unpin.lesson.build import sound_section
    from unpin.render.terminal import section

    worked = api.check(problem)
    found = worked.soundness
    if chosen.json:
        from unpin.render.json import soundness

        print_data({"format": "unpin check", "version": 1, "soundness": soundness(worked, sound_section(worked), chosen.tongue),
                     "diagnostics": list(as_data(diagnostics, chosen.tongue))})
    else:
        sys.stdout.write(section(sound_section(worked), chosen.tongue))
    return SOLVED if found.solvable else FAULTY
