"""The house style file, read with all its faults told at once."""

from __future__ import annotations

import re
from collections.abc import Callable, Collection
from typing import TYPE_CHECKING, Any

from unpin.base.diagnostic import Diagnostic
from unpin.base.record import record
from unpin.base.units import DIMENSION_NAMES, Unit
from unpin.model.house import PLAIN, House, Pattern
from unpin.read.context import shown_units
from unpin.read.house_schema import BY_NAME, NAMES, Entry
from unpin.read.quantities import all_spellings, unit_named
from unpin.read.report import Report, nearest
from unpin.read.tree import Entries, Node, Scalar, clean, tree_of

if TYPE_CHECKING:
    from pathlib import Path

LARGEST, LONGEST = 32 * 1024, 200
_PATTERN = re.compile(r"([^\W\d_]+)(?:_([^\W_]+))?")


@record
class HouseReading:
    """The house style as far as it could be understood, and every remark on its file. `sound`: whether it may be used."""

    house: House
    diagnostics: tuple[Diagnostic, ...]

    @property
    def sound(self) -> bool:
        return not any(d.is_error for d in self.diagnostics)


def read_house(path: str | Path, languages: Collection[str]) -> HouseReading:
    """Read a house style file. `languages`: codes of those there are."""
    name = str(path)
    try:
        with open(path, "rb") as stream:
            data = stream.read(LARGEST + 1)
    except OSError as fault:
        code = "read.no_file" if isinstance(fault, FileNotFoundError) else "read.folder" if isinstance(fault, IsADirectoryError) else "read.closed_file"
        return HouseReading(PLAIN, (Diagnostic("error", code, arguments={"file": name}),))
    if len(data) > LARGEST:
        return HouseReading(PLAIN, (Diagnostic("error", "read.large_file", arguments={"most": LARGEST // 1024}),))
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError:
        return HouseReading(PLAIN, (Diagnostic("error", "read.not_text_file", arguments={"file": name}, hint="hint.utf8"),))
    return read_house_text(text, languages, name)


def read_house_text(text: str, languages: Collection[str], file: str = "") -> HouseReading:
    """Read the text of a house style file; what is wrong is in the diagnostics."""
    report = Report(file)
    tree, _ = tree_of(clean(text, report), report)
    page = _Page(report, tuple(languages))
    for key, node in tree.entries if tree else ():
        page.entry(key, node)
    page.together()
    return HouseReading(House(**page.found, source=file), report.in_order())


class _Page:
    """`found`: fields of the house; `places`: where an entry stands."""

    def __init__(self, report: Report, languages: tuple[str, ...]):
        self.report, self.languages = report, languages
        self.found: dict[str, Any] = {}
        self.places: dict[str, Scalar] = {}

    def entry(self, key: Scalar, node: Node) -> None:
        entry = BY_NAME.get(key.text)
        if entry is None:
            near = nearest(key.text, list(BY_NAME))
            self.report.error("house.unknown", key.place, (key.text[:40],), name=key.text[:40], nearest=near,
                              known=tuple(BY_NAME), hint="hint.nearest" if near else "hint.known")
            return
        self.places[entry.name] = key
        if entry.shape == "names":
            value = self.names(node)
        elif not isinstance(node, Scalar):
            self.report.error("read.not_text", node.place, (entry.name,), hint="hint.quotes_phrase")
            return
        elif not node.text.strip():
            self.report.error("read.nothing_said", node.place, (entry.name,))
            return
        else:
            value = _SHAPES[entry.shape](self, entry, node)
        if value is not None:
            self.found[entry.field or entry.name] = value

    def together(self) -> None:
        """Entries that cannot both hold."""
        if "figures" in self.places and "decimals" in self.places:
            second = max(self.places["figures"], self.places["decimals"], key=lambda s: (s.place.line, s.place.column))
            self.report.error("house.figures_and_decimals", second.place, (second.text,), hint="house.cure.one_of_both")

    def choice(self, entry: Entry, said: Scalar) -> Any:
        text = " ".join(said.text.split())
        found = next((c for c in entry.choices if c.lower() == text.lower()), None)
        if found is None:
            self.refuse("house.choice", entry, said, tuple(entry.choices))
            return None
        return entry.choices[found]

    def whole(self, entry: Entry, said: Scalar) -> int | None:
        text = said.text.strip()
        if not text.isascii() or not text.isdigit() or not entry.least <= int(text[:9]) <= entry.most:
            self.report.error("read.figures", said.place, (entry.name,), text=text[:40], least=entry.least, most=entry.most)
            return None
        return int(text)

    def text(self, entry: Entry, said: Scalar) -> str | None:
        text = " ".join(said.text.split())
        if len(text) > LONGEST:
            self.report.error("read.too_long", said.place, (entry.name,), most=LONGEST)
            return None
        return text

    def language(self, entry: Entry, said: Scalar) -> str | None:
        code = said.text.strip().lower()
        if code not in self.languages:
            self.refuse("house.language", entry, said, self.languages)
            return None
        return code

    def units(self, entry: Entry, said: Scalar) -> dict[str, str] | None:
        chosen: list[Unit] = []
        for piece in said.text.split(","):
            unit = unit_named(piece)
            if unit is None:
                near = nearest(piece.strip(), all_spellings())
                self.report.error("read.unknown_unit", said.place, (entry.name,), name=piece.strip()[:40], nearest=near,
                                  hint="hint.nearest" if near else "")
                return None
            other = next((u for u in chosen if u.dimension == unit.dimension), None)
            if other:
                self.report.error("read.unit_twice", said.place, (entry.name,), first=other.symbol, second=unit.symbol)
                return None
            chosen.append(unit)
        return {DIMENSION_NAMES[d]: u.symbol for d, u in shown_units(chosen).items() if d in DIMENSION_NAMES}

    def names(self, node: Node) -> dict[str, tuple[Pattern, ...]] | None:
        if not isinstance(node, Entries):
            self.report.error("read.not_mapping", node.place, ("names",), hint="house.cure.names")
            return None
        out = {}
        for key, said in node.entries:
            path = ("names", key.text[:40])
            if key.text not in NAMES:
                near = nearest(key.text, list(NAMES))
                self.report.error("house.unknown_name", key.place, path, name=key.text[:40], nearest=near, known=tuple(NAMES),
                                  hint="hint.nearest" if near else "hint.known")
            elif not isinstance(said, Scalar):
                self.report.error("read.not_text", said.place, path, hint="hint.quotes_phrase")
            elif found := self.patterns(key.text, said, path):
                out[key.text] = found
        return out

    def patterns(self, kind: str, said: Scalar, path: tuple[str, str]) -> tuple[Pattern, ...]:
        count, _, usual = NAMES[kind]
        pieces = [p.strip() for p in said.text.split(",")]
        if len(pieces) != count:
            self.report.error("house.names", said.place, path, count=count, text=said.text[:40], example=usual, hint="house.cure.example")
            return ()
        out = []
        for piece in pieces:
            found = _PATTERN.fullmatch(piece)
            if not found:
                self.report.error("house.pattern", said.place, path, text=piece[:40], example=usual, hint="house.cure.example")
                return ()
            out.append((found[1], found[2] or ""))
        if len(set(out)) < count:
            self.report.error("house.same_pattern", said.place, path, text=pieces[0][:40], hint="house.cure.example", example=usual)
            return ()
        return tuple(out)

    def refuse(self, code: str, entry: Entry, said: Scalar, known: tuple[str, ...]) -> None:
        text = said.text.strip()[:40]
        self.report.error(code, said.place, (entry.name,), text=text, name=text, nearest=nearest(text, known), known=known, wanted=known)


_SHAPES: dict[str, Callable[[_Page, Entry, Scalar], Any]] = {
    "choice": _Page.choice, "whole": _Page.whole, "text": _Page.text, "language": _Page.language, "units": _Page.units,
}
