"""The sections of a file and the phrases in them, with remarks where the YAML has another shape than the schema says."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import field
from typing import TypeVar

from unpin.base.record import open_record
from unpin.read.context import Item
from unpin.read.phrases import Word
from unpin.read.pieces import AXES, KEYWORDS, WAYS, is_name
from unpin.read.report import Dropped, Report, nearest
from unpin.read.schema import BY_NAME, MOST, SECTIONS
from unpin.read.synonyms import SECTIONS as SECTION_SYNONYMS
from unpin.read.tree import Entries, Items, Node, Scalar

T = TypeVar("T")


_GLUED = re.compile(r"([^\W\d][\w']*):(\S.*)")
_CUT_BRACKET = re.compile(r"[^()]*\)")
"""`0)`: what the comma has left of `A: (0, 0)`."""


def attempt(make: Callable[..., T], *arguments: object) -> T | None:
    """The result, or None when it was dropped after a remark."""
    try:
        return make(*arguments)
    except Dropped:
        # What the phrase names is not "never used" for that: it was meant to be.
        for said in (*arguments, getattr(make, "__self__", None)):
            if isinstance(said, Item):
                said.report.mention(said.scalar)
            elif isinstance(said, (Scalar, Items)):
                report = next(a.report for a in arguments if isinstance(a, Skeleton))
                report.mention(said)
        return None


def row_names(key: Scalar) -> list[Word]:
    """The names before a colon: `C E G` or `C, E, G`."""
    return [Word(m.group(), m.start(), m.end()) for m in re.finditer(r"[^\s,]+", key.text)]


@open_record
class Skeleton:
    """`sections`: the place of the name and what it holds; `lost`: sections that are there but cannot be read; `whole`:
    whether the YAML could be read to its end."""

    report: Report
    tree: Entries
    whole: bool
    sections: dict[str, tuple[Scalar, Node]] = field(default_factory=dict)
    lost: set[str] = field(default_factory=set)

    def sort(self) -> None:
        """Find the sections; names that are none are reported, and what they may have meant is counted as lost."""
        for key, node in self.tree.entries:
            if key.text in BY_NAME:
                self.sections[key.text] = (key, node)
            else:
                spring = key.text.lower().startswith("spring")
                near = SECTION_SYNONYMS.get(key.text.lower()) or nearest(key.text, list(BY_NAME))
                self.report.error(
                    "read.unknown_section",
                    key.place,
                    (key.text[:40],),
                    name=key.text[:40],
                    nearest=near,
                    hint="hint.spring" if spring else "hint.nearest" if near else "hint.sections",
                )
                self.lost |= {"links", "supports"} if spring else {near}
        if not self.whole:
            self.lost |= {s.name for s in SECTIONS if s.name not in self.sections}

    def item(self, section: str, name: str, scalar: Scalar) -> Item:
        return Item(scalar.text, scalar, (section, name[:40]) if name else (section,), self.report)

    def scalar(self, section: str, name: str, node: Node) -> Item | None:
        """A text, or None after a remark."""
        path = (section, name[:40]) if name else (section,)
        if not isinstance(node, Scalar):
            self.report.error("read.not_text", node.place, path, hint="hint.quotes_phrase")
        elif not node.text.strip():
            self.report.error("read.nothing_said", node.place, path, hint="hint.comma" if name else "")
        else:
            return self.item(section, name, node)
        return None

    def named(self, section: str, rows: bool = False) -> Iterator[tuple[str, Scalar, Node]]:
        """Entries of a mapping: name, its place, and what it holds; names that are none are reported. `rows`: several names
        may stand before one colon."""
        if section not in self.sections:
            return
        _, node = self.sections[section]
        if not isinstance(node, Entries):
            if not (isinstance(node, Scalar) and not node.text):
                self.report.error("read.not_mapping", node.place, (section,), hint="hint.mapping")
                self.lost.add(section)
            return
        for key, value in self.counted(section, node.entries):
            half = isinstance(value, Scalar) and not value.text
            if rows and not half and len(row := row_names(key)) > 1 and all(is_name(w.text) for w in row):
                yield key.text, key, value
                continue
            if not is_name(key.text):
                # `{arm: C D, D E}`: the comma has made a name of half a phrase.
                hint, more = "hint.comma" if half else "hint.reserved" if key.text in KEYWORDS else "hint.name", {}
                if half and (glued := _GLUED.fullmatch(key.text)):
                    # `{A:pin}`: to YAML a colon without a space is part of a name.
                    hint, more = "hint.colon_space", {"key": glued[1][:40], "rest": glued[2][:40]}
                elif half and _CUT_BRACKET.fullmatch(key.text):
                    hint = "hint.square_brackets"
                self.report.error("read.name", key.place, (section, key.text[:40]), name=key.text[:40], hint=hint, **more)
                self.report.refuse(key.text, "" if half else value)
                continue
            yield key.text, key, value

    def counted(self, section: str, entries: list) -> list:
        if len(entries) > MOST[section]:
            self.report.error("read.too_many", self.sections[section][0].place, (section,), most=MOST[section])
        return entries[: MOST[section]]

    def listed(self, section: str) -> Iterator[Item]:
        """Phrases of a list; one phrase alone is a list of one."""
        if section not in self.sections:
            return
        _, node = self.sections[section]
        if isinstance(node, Entries):
            self.report.error("read.not_list", node.place, (section,), hint="hint.list")
            self.lost.add(section)
            return
        if isinstance(node, Scalar):
            if node.text.strip():
                yield self.item(section, "", node)
            return
        entries = self.counted(section, node.items)
        for number, entry in enumerate(entries, 1):
            if hint := self._cut(entries, number):
                self.report.error("read.thousands", entry.place, (section, str(number)), hint=hint)
                self.report.mention(entry)
                continue
            if number > 1 and self._cut(entries, number - 1):
                self.report.mention(entry)
                continue
            item = self.scalar(section, str(number), entry)
            if item:
                yield item

    @staticmethod
    def _cut(entries: list[Node], number: int) -> str:
        """The cure where a comma has cut an entry off from the next: `1,500 N`, `1,5 N`, `P at C square to arm, up`; else ""."""
        pair = entries[number - 1 : number + 1]
        if len(pair) < 2 or not all(isinstance(n, Scalar) for n in pair) or pair[0].place.line != pair[1].place.line:
            return ""
        first, second = (n.text.strip() for n in pair)
        if re.fullmatch(r"\d{1,3}", first) and re.match(r"\d{3}(?!\d)\s*[^\W\d]", second):
            return "hint.thousands"
        if re.fullmatch(r"\d+", first) and re.match(r"\d+\s*[^\W\d]", second):
            return "hint.decimal_comma"
        return "hint.comma" if second in AXES or second in WAYS else ""

    # What holds for the whole file.

    def text(self, section: str) -> str:
        if section not in self.sections:
            return ""
        item = self.scalar(section, "", self.sections[section][1])
        return item.text.strip() if item else ""
