"""A problem file changed where it lies: read, changed by stretches, shown as a difference or written back whole or not at all."""

from __future__ import annotations

import os
from collections.abc import Callable
from dataclasses import replace
from difflib import unified_diff
from pathlib import Path

from unpin.base.diagnostic import Diagnostic
from unpin.read.edits import Revision
from unpin.read.reader import LARGEST_FILE, read_file


def amend(name: str, change: Callable[[str], Revision], write: bool = True) -> tuple[Revision, str]:
    """Make a change, a function of the text, in the file of this name. Gives the revision and the difference, line by line. Nothing is
    written where the change is refused or changes nothing. OSError when the file cannot be written. From reading to writing no desk that
    is open on the folder writes there."""
    from unpin.lock import alone

    if not write:
        return _amended(name, change, False)
    with alone(Path(os.path.realpath(name)).parent):
        return _amended(name, change, True)


def _amended(name: str, change: Callable[[str], Revision], write: bool) -> tuple[Revision, str]:
    from unpin.output import save

    try:
        with open(name, "rb") as stream:
            data = stream.read(LARGEST_FILE + 1)
        text = data.decode("utf-8")
    except (OSError, UnicodeDecodeError):
        text = None
    if text is None or len(data) > LARGEST_FILE or "\0" in text:
        reading = read_file(name)
        return Revision("", reading, refused=tuple(d for d in reading.diagnostics if d.is_error)), ""
    revision = change(text)
    placed = {part: tuple(_in_file(d, name) for d in getattr(revision, part)) for part in ("refused", "notes")}
    revision = replace(revision, **placed)
    if write and revision.made and revision.text != text:
        save(name, revision.text.encode("utf-8"))
    return revision, difference(text, revision.text, name)


def _in_file(d: Diagnostic, name: str) -> Diagnostic:
    return replace(d, place=replace(d.place, file=name)) if d.place else d


def difference(old: str, new: str, name: str) -> str:
    """Lines that go, after a minus, and lines that come, after a plus, with three lines around them; "" where nothing changes."""
    lines = unified_diff(_lines(old), _lines(new), name, name, lineterm="")
    return "".join(line + "\n" for line in lines)


def _lines(text: str) -> list[str]:
    return text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n").removesuffix("\n").split("\n")
