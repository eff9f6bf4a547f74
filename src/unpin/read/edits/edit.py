"""An edit is a stretch of a text and what is to stand there instead; undoing it is another."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable

from unpin.base.record import record
from unpin.read.report import Report
from unpin.read.tree import clean


@record
class Edit:
    """`start`, `end`: characters of the text it was made for, from 0; the same twice where something is put in."""

    start: int
    end: int
    text: str = ""


def in_order(edits: Iterable[Edit]) -> tuple[Edit, ...]:
    """Edits of one text from front to back, without those that change nothing; removals that meet are one."""
    out: list[Edit] = []
    for edit in sorted(edits, key=lambda e: (e.start, e.end)):
        if edit.start == edit.end and not edit.text:
            continue
        if out and edit.start < out[-1].end:
            assert not edit.text and not out[-1].text, "two edits of one text overlap"
            out[-1] = Edit(out[-1].start, max(edit.end, out[-1].end))
            continue
        out.append(edit)
    return tuple(out)


def apply(text: str, edits: Iterable[Edit]) -> str:
    """The text with all edits made; every one counts its characters in the text as it was."""
    out, done = [], 0
    for edit in in_order(edits):
        out += [text[done : edit.start], edit.text]
        done = edit.end
    return "".join(out) + text[done:]


def inverse(text: str, edits: Iterable[Edit]) -> tuple[Edit, ...]:
    """The edits of the new text that give the old one back."""
    out, moved = [], 0
    for edit in in_order(edits):
        start = edit.start + moved
        out.append(Edit(start, start + len(edit.text), text[edit.start : edit.end]))
        moved += len(edit.text) - (edit.end - edit.start)
    return tuple(out)


@record
class Sheet:
    """A text as it is (`raw`) and as the reader takes it (`text`): one kind of line end, no byte order mark. `doubled`: the line
    ends of `text` that are two characters in `raw`; `newline`: the line end that `raw` has most."""

    raw: str
    text: str
    doubled: tuple[int, ...]
    newline: str

    def edits(self, made: Iterable[Edit]) -> tuple[Edit, ...]:
        """Edits of `text` as edits of `raw`."""
        return in_order(Edit(self._at(e.start), self._at(e.end), e.text.replace("\n", self.newline)) for e in made)

    def span(self, start: int, end: int) -> tuple[int, int]:
        """A stretch of `text` as a stretch of `raw`."""
        return self._at(start), self._at(end)

    def within(self, start: int, end: int) -> tuple[int, int]:
        """A stretch of `raw` as a stretch of `text`."""
        return tuple(len(self.raw[:at].removeprefix("\ufeff").replace("\r\n", "\n")) for at in (start, end))

    def _at(self, place: int) -> int:
        return place + bisect_left(self.doubled, place) + self.raw.startswith("\ufeff")


def sheet(raw: str) -> Sheet:
    """A text laid out for editing."""
    body = raw.removeprefix("\ufeff")
    doubled, at = [], body.find("\r\n")
    while at >= 0:
        doubled.append(at - len(doubled))
        at = body.find("\r\n", at + 2)
    single, old = body.count("\n") - len(doubled), body.count("\r") - len(doubled)
    newline = max((("\n", single), ("\r\n", len(doubled)), ("\r", old)), key=lambda kind: kind[1])[0]
    return Sheet(raw, clean(raw, Report()), tuple(doubled), newline)
