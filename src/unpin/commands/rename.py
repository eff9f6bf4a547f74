"""Another name for a thing, in the problem file itself."""

from __future__ import annotations

import sys
from argparse import Namespace

from unpin.commands.stop import FAULTY, MISUSE, SOLVED, UNWRITTEN, Stop


def run(chosen: Namespace) -> int:
    """Said `A to B`, or `A B`."""
    from unpin.amend import amend
    from unpin.read.edits import rename as renamed
    from unpin.words.remarks import render

    words = chosen.words
    if len(words) not in (2, 3) or len(words) == 3 and words[1] != "to":
        raise Stop(MISUSE, "renaming", file=chosen.file)
    try:
        revision, lines = amend(chosen.file, lambda text: renamed(text, words[0], words[-1], chosen.kind), not chosen.dry_run)
    except OSError as fault:
        raise Stop(UNWRITTEN, "not_written", file=chosen.file, reason=fault.strerror or str(fault)) from fault
    for d in (*revision.refused, *revision.notes):
        print(render(d, chosen.tongue), file=sys.stderr)
    sys.stdout.write(lines)
    return SOLVED if revision.made else FAULTY
