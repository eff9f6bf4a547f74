"""The entries of a file and the names in them: which entry gives a name, and which use it."""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass, field

from unpin.base.diagnostic import Diagnostic, Place
from unpin.base.record import record
from unpin.read.edits.edit import Edit, Sheet, sheet
from unpin.read.edits.layout import Entry, Node, layout
from unpin.read.edits.spelling import inside, spots
from unpin.read.reader import Reading, read_text
from unpin.read.references import Reference
from unpin.read.tree import Scalar


@record
class Spot:
    """An entry by its place: section `section` of the file, entry `entry` of it (-1: the section is one text), from 0."""

    section: int
    entry: int


@record
class Used:
    """An entry as it is told to a person. `key`: its name, or its number from 1."""

    section: str
    key: str
    text: str
    place: Place | None = None


@dataclass
class Page:
    """A file open for editing: its text, how it is laid out, and what it says. `top` is None where it says nothing."""

    sheet: Sheet
    top: Node | None
    reading: Reading
    _spots: dict[tuple[int, int], Spot] = field(default_factory=dict)
    _nodes: dict[tuple[int, int], Node] = field(default_factory=dict)

    @property
    def text(self) -> str:
        return self.sheet.text

    def section(self, name: str) -> int:
        """Which entry of the file a section is, -1 where it is not there."""
        entries = self.top.entries if self.top else []
        return next((n for n, e in enumerate(entries) if e.key and e.key.text == name), -1)

    def entry(self, spot: Spot) -> Entry:
        section = self.top.entries[spot.section]
        return section if spot.entry < 0 else section.value.entries[spot.entry]

    def spot_of(self, scalar: Scalar) -> Spot | None:
        """The entry in which a text stands."""
        return self._spots.get((scalar.place.line, scalar.place.column))

    def at(self, place: Place) -> Spot | None:
        """The entry in which a place lies, None where it is in none or in the name of a section."""
        starts = sorted(self._spots)
        before = bisect_right(starts, (place.line, place.column))
        return self._spots[starts[before - 1]] if before else None

    def told(self, spot: Spot) -> Used:
        entry, section = self.entry(spot), self.top.entries[spot.section]
        key = entry.key.text if entry.key and spot.entry >= 0 else str(spot.entry + 1) if spot.entry >= 0 else ""
        node = entry.key or entry.value
        line, column = node.mark
        width = max(1, min(node.end, len(self.text)) - node.start)
        shown = " ".join(self.text[entry.value.start : entry.value.end].split())
        return Used(section.key.text, key, shown[:80], Place(line, column, column + width))

    def known(self, kind: str, name: str) -> list[Reference]:
        """Every place where a name of a kind stands."""
        return [r for r in self.reading.references if r.name == name and r.kind == kind]

    def kinds(self, name: str) -> list[str]:
        """The sections that give a name."""
        return list(dict.fromkeys(r.kind for r in self.reading.references if r.declares and r.name == name))

    def given(self, spot: Spot) -> set[tuple[str, str]]:
        """The names that an entry gives."""
        return {(r.kind, r.name) for r in self.reading.references if r.declares and self.spot_of(r.scalar) == spot}

    def users(self, spot: Spot) -> list[Spot]:
        """Entries that use a name which this one gives, in file order."""
        names = self.given(spot)
        found = {self.spot_of(r.scalar) for r in self.reading.references if not r.declares and (r.kind, r.name) in names}
        return sorted((s for s in found if s and s != spot), key=lambda s: (s.section, s.entry))

    def span(self, reference: Reference) -> tuple[int, int, str] | None:
        """Where a name is written, and in what quotes; None where that cannot be told."""
        scalar, start = reference.scalar, reference.start
        for piece in scalar.pieces:
            if start <= len(piece.text):
                scalar = piece
                break
            start -= len(piece.text) + 2
        node = self._nodes.get((scalar.place.line, scalar.place.column))
        if node is None or (found := spots(self.text, node)) is None:
            return None
        before = sum(not c.isspace() for c in scalar.text[:start])
        mine = found[before : before + len(reference.name)]
        return (mine[0][0], mine[-1][1], node.style) if mine else None

    def renamed(self, reference: Reference, name: str) -> Edit | None:
        """The edit that puts another name in the place of one."""
        found = self.span(reference)
        return Edit(found[0], found[1], inside(name, found[2])) if found else None


def page(raw: str, file: str = "", reading: Reading | None = None) -> Page:
    """A text open for editing. Raises layout.Unreadable."""
    laid = sheet(raw)
    made = Page(laid, layout(laid.text), reading or read_text(raw, file))
    for s, section in enumerate(made.top.entries if made.top else ()):
        value = section.value
        for node in (section.key, value):
            if node is not None:
                _note(made, node, Spot(s, -1))
        for n, entry in enumerate(value.entries):
            for node in (entry.key, entry.value):
                if node is not None:
                    _note(made, node, Spot(s, n))
    return made


def _note(made: Page, node: Node, spot: Spot) -> None:
    made._spots[node.mark] = spot
    if node.kind == "text":
        made._nodes[node.mark] = node
    for entry in node.entries:
        for inner in (entry.key, entry.value):
            if inner is not None:
                _note(made, inner, spot)


def fresh_errors(old: Reading, new: Reading) -> list[Diagnostic]:
    """Errors of the second reading that the first does not have, wherever they stand."""
    had = [_fault(d) for d in old.diagnostics if d.is_error]
    out = []
    for d in new.diagnostics:
        if d.is_error and _fault(d) in had:
            had.remove(_fault(d))
        elif d.is_error:
            out.append(d)
    return out


def _fault(d: Diagnostic) -> tuple:
    return d.code, sorted((k, repr(v)) for k, v in d.arguments.items() if k not in ("line", "known", "nearest"))
