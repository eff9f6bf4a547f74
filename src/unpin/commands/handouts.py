"""A folder of problems to handouts."""

from __future__ import annotations

import sys
from argparse import Namespace
from pathlib import Path

from unpin.commands.stop import DEFECT, FAULTY, MISUSE, SOLVED, UNWRITTEN, Stop
from unpin.words.sentences import say


def run(chosen: Namespace) -> int:
    """Write a document for each problem and say how many are solved; returns the exit status, the worst of all."""
    from unpin.handouts import write_all
    from unpin.register import files_of

    try:
        files = files_of(chosen.folder)
    except NotADirectoryError as fault:
        raise Stop(MISUSE, "no_folder", folder=chosen.folder) from fault
    if not files:
        raise Stop(MISUSE, "no_problems", folder=chosen.folder)
    folder = Path(chosen.output)
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as fault:
        raise Stop(UNWRITTEN, "not_written", file=chosen.output, reason=fault.strerror or str(fault)) from fault
    statuses = []
    for status, said in write_all(files, folder, chosen.form, _options(chosen), chosen.jobs):
        statuses.append(status)
        sys.stderr.write(said)
    solved = statuses.count(SOLVED)
    print(say("cli.handouts_done", chosen.tongue, solved=solved, count=len(files), folder=chosen.output))
    # What is wrong with the program or the disk is worse than what is wrong with a problem.
    return next((s for s in (DEFECT, UNWRITTEN, MISUSE, FAULTY) if s in statuses), SOLVED)


def _options(chosen: Namespace) -> list[str]:
    out = ["--short"] if chosen.short else []
    for name in ("fade", "figures", "route", "house", "language"):
        value = getattr(chosen, name)
        out += [f"--{name}", str(value)] if value else []
    return out
