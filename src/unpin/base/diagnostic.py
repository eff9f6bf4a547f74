"""What the program has to say about somebody's text: where, what, how bad, and what would cure it.

A diagnostic carries a code and arguments, never a sentence: the sentence is in the message catalogue
(`unpin.words`) under the same code, so that it exists in several languages.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import field
from typing import Any, Literal

from unpin.base.record import record

Severity = Literal["error", "warning", "note"]


@record
class Place:
    """A stretch of one line of a file: line and columns count from 1, `end_column` is one past the last."""

    line: int
    column: int
    end_column: int
    file: str = ""


@record
class Diagnostic:
    """One remark. `code` names the sentence, `arguments` fill it; `path` is grown from the outside in and
    ends with the thing's own name (`supports > A`); `hint` is the code of the sentence with the cure."""

    severity: Severity
    code: str
    place: Place | None = None
    path: str = ""
    arguments: Mapping[str, Any] = field(default_factory=dict)
    hint: str = ""
    related: tuple[Place, ...] = ()

    @property
    def is_error(self) -> bool:
        return self.severity == "error"


class Faulty(Exception):
    """Raised at the doors of the library when a problem has errors; holds every diagnostic of it."""

    def __init__(self, diagnostics: Iterable[Diagnostic]):
        self.diagnostics = tuple(diagnostics)
        super().__init__(", ".join(d.code for d in self.diagnostics))


class Defect(Exception):
    """The program is wrong, not the problem: a proof failed or a promise between rooms was broken."""


def in_file_order(diagnostics: Iterable[Diagnostic]) -> list[Diagnostic]:
    """Sort by place; those without a place come last, in the order they were found."""
    far = Place(10**9, 1, 1)
    return sorted(diagnostics, key=lambda d: (d.place or far).line * 10**6 + (d.place or far).column)
