"""Places in a text: from what the reader tells (line and column) to stretches as an editor wants them.

Offsets count characters of the text as the page holds it, from 0.
"""

from __future__ import annotations

from typing import Any

from unpin.base.diagnostic import Diagnostic, Place
from unpin.base.record import record
from unpin.read.edits.edit import Sheet, sheet
from unpin.read.edits.layout import Unreadable
from unpin.read.edits.places import Page, Spot, page
from unpin.read.reader import Reading


@record
class Entry:
    """One entry of the file: its section, its key (a name, or a number from 1), its phrase as written, and where that stands."""

    section: str
    key: str
    phrase: str
    span: tuple[int, int]


class Places:
    """Where the things of one text stand. A text that is no YAML has places of remarks only."""

    def __init__(self, text: str, reading: Reading):
        self.page: Page | None
        try:
            self.page = page(text, reading=reading)
            self.sheet: Sheet = self.page.sheet
        except Unreadable:
            self.page, self.sheet = None, sheet(text)
        self.starts = [0]
        for k, sign in enumerate(self.sheet.text):
            if sign == "\n":
                self.starts.append(k + 1)

    def span(self, place: Place | None) -> list[int] | None:
        """Start and end of what the reader told."""
        if place is None or place.line > len(self.starts):
            return None
        begin, most = self.starts[place.line - 1], len(self.sheet.text)
        return list(self.sheet.span(min(begin + place.column - 1, most), min(begin + place.end_column - 1, most)))

    def entry(self, place: Place | None) -> Entry | None:
        """The entry in which a place lies."""
        spot = self.page.at(place) if self.page is not None and place is not None else None
        return self.told(spot) if spot is not None else None

    def entries(self, section: str) -> list[Entry]:
        """Every entry of a section, in the order of the file."""
        s = self.page.section(section) if self.page is not None and self.page.top is not None else -1
        return [self.told(Spot(s, n)) for n in range(len(self.page.top.entries[s].value.entries))] if self.page and s >= 0 else []

    def phrases(self, section: str) -> list[str]:
        """The phrases of a section, in the order of the file, also where it is one phrase."""
        s = self.page.section(section) if self.page is not None and self.page.top is not None else -1
        if s >= 0 and self.page.top.entries[s].value.kind == "text":
            return [said.phrase] if (said := self.told(Spot(s, -1))).phrase else []
        return [e.phrase for e in self.entries(section)]

    def covering(self, start: int, end: int) -> Spot | None:
        """The entry whose phrase is that stretch."""
        if self.page is None or self.page.top is None:
            return None
        first, last = self.sheet.within(start, end)
        for s, section in enumerate(self.page.top.entries):
            spots = [Spot(s, n) for n in range(len(section.value.entries))] or [Spot(s, -1)]
            for spot in spots:
                value = self.page.entry(spot).value
                if value.start <= first and last <= value.end:
                    return spot
        return None

    def told(self, spot: Spot) -> Entry:
        entry, section = self.page.entry(spot), self.page.top.entries[spot.section]
        node = entry.value
        key = entry.key.text if entry.key and spot.entry >= 0 else str(spot.entry + 1)
        phrase = node.text if node.kind == "text" else self.sheet.text[node.start : node.end]
        return Entry(section.key.text, key, phrase, self.sheet.span(node.start, node.end))


def remark(found: Diagnostic, places: Places, language: str = "en") -> dict[str, Any]:
    """A diagnostic as data, worded."""
    from unpin.words.remarks import hint, sentence

    place = found.place
    return {"severity": found.severity, "code": found.code, "line": place.line if place else None, "column": place.column if place else None,
            "end_column": place.end_column if place else None, "span": places.span(place), "path": found.path,
            "sentence": sentence(found, language), "hint": hint(found, language)}
