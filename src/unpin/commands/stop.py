"""Exit statuses, and the way a command ends early.

0 solved; 1 the problem has faults or is unsound for what it asks; 2 wrong use; 3 a defect of the program; 4 a library is
missing or the output could not be written.
"""

from __future__ import annotations

from unpin.words.sentences import say

SOLVED, FAULTY, MISUSE, DEFECT, UNWRITTEN = 0, 1, 2, 3, 4


class Stop(Exception):
    """Ends the command with a message for standard error and a status."""

    def __init__(self, status: int, code: str = "", **arguments: object):
        self.status, self.code, self.arguments = status, code, arguments
        super().__init__(code)

    def message(self, language: str) -> str:
        return say(f"cli.{self.code}", language, **self.arguments) if self.code else ""
