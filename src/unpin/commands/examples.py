"""The examples that come with the program: listed, shown or copied."""

from __future__ import annotations

import sys
from argparse import Namespace
from pathlib import Path

from unpin.commands.stop import MISUSE, SOLVED, UNWRITTEN, Stop


def run(chosen: Namespace) -> int:
    """List the examples, print one, or copy them; returns the exit status."""
    from unpin import bundled

    if chosen.name and bundled.path_of(chosen.name) is None:
        raise Stop(MISUSE, "no_example", name=chosen.name, names=", ".join(bundled.names()))
    names = [chosen.name] if chosen.name else bundled.names()
    if chosen.copy:
        from unpin.output import copy

        try:
            copy([bundled.path_of(n) for n in names], Path(chosen.copy))
        except FileExistsError as there:
            raise Stop(UNWRITTEN, "exists", file=there.filename) from there
        except OSError as fault:
            raise Stop(UNWRITTEN, "not_written", file=chosen.copy, reason=fault.strerror or str(fault)) from fault
    elif chosen.name:
        sys.stdout.write(bundled.path_of(chosen.name).read_text("utf-8"))
    else:
        for name in names:
            print(f"{name:20} {bundled.title_of(name)}".rstrip())
    return SOLVED
