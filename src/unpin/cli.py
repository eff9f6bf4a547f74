"""The command: arguments to calls, errors to lines, and an exit status (`commands.stop`). Each command imports what it needs when it runs."""

from __future__ import annotations

import argparse
import importlib
import os
import sys

from unpin.commands.stop import DEFECT, FAULTY, MISUSE, SOLVED, UNWRITTEN, Stop
from unpin.words.sentences import say

__all__ = ["DEFECT", "FAULTY", "MISUSE", "SOLVED", "UNWRITTEN", "Stop", "main", "parser"]
COMMANDS = ("solve", "check", "ways", "draw", "handout", "handouts", "sheet", "index", "rename", "examples", "desk")


def main(arguments: list[str] | None = None) -> int:
    """Run one command; returns the exit status."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(encoding="utf-8", errors="backslashreplace")
    from unpin import options

    language = options.language_asked(sys.argv[1:] if arguments is None else arguments)
    chosen = parser(language).parse_args(arguments)
    chosen.language = chosen.language or chosen.first_language
    chosen.tongue = chosen.language or language
    try:
        status = chosen.run(chosen)
        sys.stdout.flush()
        return status
    except Stop as stop:
        if stop.code:
            print(stop.message(chosen.tongue), file=sys.stderr)
        return stop.status
    except BrokenPipeError:
        # The reader of our output has gone; so do we, without a second complaint at exit.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return UNWRITTEN
    except KeyboardInterrupt:
        return 130
    except Exception as fault:  # the last door: no traceback reaches a teacher
        if os.environ.get("UNPIN_TRACE"):
            raise
        print(say("cli.unexpected", chosen.tongue, what=f"{type(fault).__name__}: {fault}"), file=sys.stderr)
        return DEFECT


def parser(language: str = "en") -> argparse.ArgumentParser:
    """Every command with its help, bound to what it does."""
    from unpin import options

    return options.parser({name: _later(name) for name in COMMANDS}, language)


def _later(name: str):
    """A command is imported when it runs."""
    return lambda chosen: importlib.import_module(f"unpin.commands.{name}").run(chosen)
