"""The YAML skeleton of a problem file as a tree of texts with places; every scalar is kept as the author typed it.

YAML's own readings are not wanted (`on` is not true, `3:4` is not 184), nor are its anchors, aliases, tags and merges. The
tree is built from the parser's events without recursion, and what was understood before a fault is kept.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import field
from typing import Union

from unpin.base.diagnostic import Place
from unpin.base.record import open_record, record
from unpin.read.report import Report
from unpin.read.schema import BY_NAME

DEEPEST, MOST_NODES, LONGEST_TEXT, MOST_BREAKS = 8, 20_000, 20_000, 5
_CONTROL = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\ud800-\udfff\ufeff\ufffe\uffff]")

_WORD = re.compile(r"[^\s,:{}\[\]]+")


@record
class Scalar:
    """A text. `shift`: how far its first character stands behind `place.column`; `whole`: it runs over several lines or
    holds escapes, so that columns inside it cannot be told; `pieces`: the texts it was joined of, with a comma and a space between."""

    text: str
    place: Place
    shift: int = 0
    whole: bool = False
    pieces: tuple[Scalar, ...] = ()

    def part(self, start: int, end: int) -> Place:
        """The place of some characters of it."""
        if self.whole:
            return self.place
        first = self.place.column + self.shift
        return Place(self.place.line, first + start, first + max(end, start + 1), self.place.file)


@record
class Items:
    """A list."""

    items: list[Node]
    place: Place


@record
class Entries:
    """A mapping, in file order; duplicate keys are reported and left out when it is made."""

    entries: list[tuple[Scalar, Node]]
    place: Place


Node = Union[Scalar, Items, Entries]


@open_record
class _Open:
    """A list or mapping that is still being filled."""

    node: Items | Entries
    path: tuple[str, ...]
    key: Scalar | None = None
    waiting: bool = False
    seen: dict[str, Scalar] = field(default_factory=dict)


def clean(text: str, report: Report) -> str:
    """Line ends made alike, the byte order mark taken off, control characters reported and blanked."""
    text = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")
    found = _CONTROL.search(text)
    if found:
        line = text.count("\n", 0, found.start()) + 1
        column = found.start() - (text.rfind("\n", 0, found.start()) + 1) + 1
        report.error("read.control_character", report.place(line, column), character=f"U+{ord(found.group()):04X}")
        text = _CONTROL.sub(" ", text)
    return text


def tree_of(text: str, report: Report) -> tuple[Entries | None, bool]:
    """The top-level mapping (None when there is none) and whether all of it could be read. After a fault of the skeleton
    the block it stands in is left out and the rest is read."""
    lines = text.split("\n")
    whole = True
    for n, line in enumerate(lines):
        # `title Shelf`: YAML would run on into the next line and break there, once for every line that follows.
        word = _WORD.match(line)
        if word and word.group() in BY_NAME and ":" not in line:
            report.error("read.skeleton", report.place(n + 1, 1, word.end() + 1), hint="hint.colon_after", name=word.group())
            lines[n], whole = "", False
    for _ in range(MOST_BREAKS):
        builder = _Builder(report)
        fault = builder.run("\n".join(lines))
        if fault is None:
            return builder.top, whole and not builder.left_out
        whole = False
        first, last = _block(lines, fault)
        if first == last:
            break
        lines[first:last] = [""] * (last - first)
    builder = _Builder(report)
    builder.run("\n".join(lines))
    return builder.top, False


def _block(lines: list[str], line: int) -> tuple[int, int]:
    """The top-level block around a line, as a range of lines that is not empty."""
    line = min(line, len(lines) - 1)
    starts = [i for i, text in enumerate(lines) if text.strip() and text[0] not in " \t#-]}"]
    first = max((i for i in starts if i <= line), default=0)
    last = min((i for i in starts if i > line), default=len(lines))
    while first < last and not any(t.strip() for t in lines[first:last]):
        first = max((i for i in starts if i < first), default=first)
        break
    return (first, last) if any(t.strip() for t in lines[first:last]) else (line, line)


class _Builder:
    def __init__(self, report: Report):
        self.report = report
        self.top: Entries | None = None
        self.open: list[_Open] = []
        self.nodes = 0
        self.left_out = False

    def run(self, text: str) -> int | None:
        """Read; None when it went well, else the line (from 0) of the fault, which has been reported."""
        import yaml

        loader = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
        report = self.report
        try:
            for event in _events(yaml, text, loader):
                self.nodes += 1
                if self.nodes > MOST_NODES:
                    report.error("read.too_much", report.place(event.start_mark.line + 1, 1), most=MOST_NODES)
                    self.left_out = True
                    return None
                if not self.take(yaml, event):
                    return event.start_mark.line if self.left_out else None
        except yaml.YAMLError as fault:
            problem = getattr(fault, "problem_mark", None)
            context = getattr(fault, "context_mark", None) or problem
            said_of = str(getattr(fault, "context", "") or "")
            # An opening bracket or quote that is never closed is the fault, not the line where that was noticed.
            mark = context if "flow" in said_of or "quoted" in said_of or "simple key" in said_of else problem
            line, column = (mark.line, mark.column) if mark else (0, 0)
            hint, more = _cure(str(getattr(fault, "problem", "") or ""), said_of, _tab(text, line)), {}
            if "simple key" in said_of and (entry := _WORD.match("".join(text.split("\n")[line : line + 1]), column)):
                hint, more = "hint.colon_after", {"name": entry.group()[:40]}
            elif "flow" in said_of and problem and (slip := _uncut(text.split("\n"), problem.line, problem.column)):
                hint, more = "hint.comma_before", {"name": slip[1][:40]}
                line, column = problem.line, slip[0]
            report.error("read.skeleton", report.place(line + 1, column + 1), hint=hint, **more)
            return line
        return None

    def take(self, yaml, event) -> bool:
        report = self.report
        kind = type(event).__name__
        if kind in ("ScalarEvent", "SequenceStartEvent", "MappingStartEvent", "AliasEvent"):
            place = _place(report, event)
            if kind == "AliasEvent" or event.anchor:
                report.error("read.alias", place, self.here(), hint="hint.alias")
                self.put(None, place)
                self.left_out = True
                return kind != "SequenceStartEvent" and kind != "MappingStartEvent"
            if event.tag and event.tag != "!":
                report.error(
                    "read.tag", place, self.here(), hint="hint.tag", tag=event.tag.replace("tag:yaml.org,2002:", "!!")[:30]
                )
            if kind == "ScalarEvent":
                self.put(self.scalar(event, place), place)
                return True
            if len(self.open) >= DEEPEST:
                report.error("read.too_deep", place, self.here(), most=DEEPEST)
                self.left_out = True
                return False
            node: Node = Items([], place) if kind == "SequenceStartEvent" else Entries([], place)
            path = self.here()
            self.put(node, place)
            self.open.append(_Open(node, path))
        elif kind in ("SequenceEndEvent", "MappingEndEvent"):
            self.open.pop()
        elif kind == "DocumentStartEvent" and self.top is not None:
            report.error("read.second_document", _place(report, event))
            return False
        return True

    def here(self) -> tuple[str, ...]:
        """The path of what comes next."""
        if not self.open:
            return ()
        top = self.open[-1]
        if isinstance(top.node, Items):
            return (*top.path, str(len(top.node.items) + 1))
        return (*top.path, top.key.text[:40]) if top.key else top.path

    def scalar(self, event, place: Place) -> Scalar | None:
        text = event.value
        if len(text) > LONGEST_TEXT:
            self.report.error("read.too_long", place, self.here(), most=LONGEST_TEXT)
            self.left_out = True
            return None
        if (found := _CONTROL.search(text)) is not None:  # written as "\e": a screen would obey it, and a picture with it is none
            self.report.error("read.control_character", place, self.here(), character=f"U+{ord(found.group()):04X}")
            text = _CONTROL.sub(" ", text)
        quoted = event.style in ("'", '"')
        width = event.end_mark.column - event.start_mark.column - (2 if quoted else 0)
        whole = event.start_mark.line != event.end_mark.line or event.style in ("|", ">") or width != len(text)
        return Scalar(text.strip() if event.style in ("|", ">") else text, place, int(quoted), whole)

    def put(self, node: Node | None, place: Place) -> None:
        report = self.report
        if not self.open:
            if isinstance(node, Entries):
                self.top = node
            elif not (isinstance(node, Scalar) and not node.text):
                report.error("read.not_sections", place, hint="hint.sections")
            return
        top = self.open[-1]
        if isinstance(top.node, Items):
            if node is not None:
                top.node.items.append(node)
        elif not top.waiting:
            top.waiting = True
            top.key = node if isinstance(node, Scalar) else None
            if node is not None and top.key is None:
                report.error("read.key_not_text", place, top.path)
        else:
            top.waiting = False
            key, top.key = top.key, None
            if key is None or node is None:
                return
            if key.text in top.seen:
                report.error(
                    "read.twice",
                    key.place,
                    (*top.path, key.text[:40]),
                    related=(top.seen[key.text].place,),
                    name=key.text[:40],
                    line=top.seen[key.text].place.line,
                )
            else:
                top.seen[key.text] = key
                top.node.entries.append((key, node))


def _place(report: Report, event) -> Place:
    start, end = event.start_mark, event.end_mark
    last = end.column + 1 if end.line == start.line and end.column > start.column else start.column + 2
    return Place(start.line + 1, start.column + 1, last, report.file)


def _cure(problem: str, context: str, tab: bool) -> str:
    """The hint for what the YAML parser says."""
    if "quoted" in context:
        return "hint.closing_quote"
    if "flow" in context:
        return "hint.bracket"
    if "mapping values" in problem:
        return "hint.colon"
    if tab:
        return "hint.tab"
    return "hint.quotes" if "cannot start" in problem else "hint.indent"


def _uncut(lines: list[str], line: int, column: int) -> tuple[int, str] | None:
    """Column and name of an entry within brackets that no comma cuts off from the one before: `B: A right 3 C: A right 5`, where the
    parser stops at the second colon, or `A: [0, 0] B: [1, 0]`, where it stops at the name."""
    here = "".join(lines[line : line + 1])
    before, after = here[:column], here[column:]
    if after.startswith(":"):
        name = re.search(r"[^\s,:{}\[\]]+$", before.rstrip())
        return (name.start(), name.group()) if name and name.start() > 0 else None
    name = _WORD.match(after)
    return (column, name.group()) if name and before.rstrip().endswith(("]", "}", '"', "'")) else None


def _tab(text: str, line: int) -> bool:
    lines = text.split("\n")
    return line < len(lines) and lines[line].lstrip(" ").startswith("\t")


def _events(yaml, text: str, loader) -> Iterator:
    return yaml.parse(text, Loader=loader)
