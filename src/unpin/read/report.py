"""The list of remarks that grows while a file is read, without echoes."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable
from dataclasses import field
from typing import Any

from unpin.base.diagnostic import Diagnostic, Place, Severity, in_file_order
from unpin.base.record import open_record

MOST = 200
_WORDS = re.compile(r"[^\W\d]\w*'*")


class Dropped(Exception):
    """What is being read cannot be understood; it has been reported, or follows from something that has."""


@open_record
class Report:
    """Collects diagnostics of one text. The same remark at the same place is made once.

    `mentioned`: words of phrases that could not be taken; `refused`: texts that stood where a name should and cannot be one.
    """

    file: str = ""
    found: list[Diagnostic] = field(default_factory=list)
    mentioned: set[str] = field(default_factory=set)
    refused: set[str] = field(default_factory=set)

    @property
    def full(self) -> bool:
        """Whether nothing more is taken."""
        return len(self.found) >= MOST

    def place(self, line: int, column: int, end_column: int | None = None) -> Place:
        return Place(line, column, end_column or column + 1, self.file)

    def say(
        self,
        severity: Severity,
        code: str,
        place: Place | None,
        path: Iterable[str] = (),
        *,
        hint: str = "",
        related: tuple[Place, ...] = (),
        **arguments: Any,
    ) -> None:
        remark = Diagnostic(severity, code, place, " > ".join(path), arguments, hint, related)
        if not self.full and remark not in self.found:
            self.found.append(remark)

    def error(self, code: str, place: Place | None, path: Iterable[str] = (), **more: Any) -> None:
        self.say("error", code, place, path, **more)

    def warning(self, code: str, place: Place | None, path: Iterable[str] = (), **more: Any) -> None:
        self.say("warning", code, place, path, **more)

    def drop(self, code: str, place: Place | None, path: Iterable[str] = (), **more: Any) -> Dropped:
        """Report an error and give back what to raise."""
        self.error(code, place, path, **more)
        return Dropped()

    def mention(self, node: Any) -> None:
        """Note the words of a text (or of texts in a list) that could not be taken."""
        for text in (
            (node.text,) if hasattr(node, "text") else [n.text for n in getattr(node, "items", ()) if hasattr(n, "text")]
        ):
            self.mentioned.update(_WORDS.findall(text))

    def refuse(self, name: str, node: Any) -> None:
        """Note a name that cannot be one, and what it was to stand for."""
        if name.strip():
            self.refused.add(name.strip())
        self.mention(node)

    def follows(self, text: str) -> bool:
        """Whether a phrase uses a name that was refused, so that a remark on it would be an echo."""
        return any(re.search(rf"(?<!\w){re.escape(name)}(?!\w)", text) for name in self.refused)

    def in_order(self) -> tuple[Diagnostic, ...]:
        return tuple(in_file_order(self.found))


def nearest(name: str, known: Collection[str]) -> str:
    """The known name most like this one, or ""."""
    from difflib import get_close_matches

    lower = {k.lower(): k for k in known}
    if name.lower() in lower:
        return lower[name.lower()]
    close = get_close_matches(name.lower()[:40], list(lower)[:500], 1, 0.5)
    return lower[close[0]] if close else ""
