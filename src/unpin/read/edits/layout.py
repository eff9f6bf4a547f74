"""How a problem file is laid out: every text, list and mapping of its YAML with the characters it covers.

The reader keeps what a file says; this keeps how it is written, so that one stretch of it can be changed and no other.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any


class Unreadable(Exception):
    """The text is no YAML that can be changed by parts."""


@dataclass
class Node:
    """`start`, `end`: its first character and the one after its last, without white space or remarks behind it. `style`: the
    quote of a text, `|`, `>` or ""; `flow`: a list or mapping within brackets; `mark`: line and column, from 1."""

    kind: str
    start: int
    end: int
    mark: tuple[int, int]
    text: str = ""
    style: str = ""
    flow: bool = False
    entries: list[Entry] = field(default_factory=list)


@dataclass
class Entry:
    """One entry of a mapping, or of a list (without a key), from its dash or question mark, if it has one, to its end."""

    key: Node | None
    value: Node
    start: int
    end: int


def layout(text: str) -> Node | None:
    """The mapping at the top of a text; None where the text says nothing. Raises Unreadable."""
    import yaml

    loader = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
    try:
        roots = _roots(text, yaml.parse(text, Loader=loader))
    except yaml.YAMLError as fault:
        raise Unreadable from fault
    if not roots or len(roots) == 1 and roots[0].kind == "text" and not roots[0].text:
        return None
    if len(roots) > 1 or roots[0].kind != "names":
        raise Unreadable
    return roots[0]


def _roots(text: str, events: Iterator[Any]) -> list[Node]:
    roots: list[Node] = []
    open_: list[Node] = []
    keys: list[Node | None] = []
    for event in events:
        name = type(event).__name__
        if name == "AliasEvent" or getattr(event, "anchor", None):
            raise Unreadable
        start = event.start_mark
        mark = (start.line + 1, start.column + 1)
        if name in ("SequenceEndEvent", "MappingEndEvent"):
            node, _ = open_.pop(), keys.pop()
            node.end = event.end_mark.index if node.flow else node.entries[-1].end
        elif name == "ScalarEvent":
            stop = event.end_mark.index
            if event.style in ("|", ">"):
                stop = start.index + len(text[start.index : stop].rstrip())
            node = Node("text", start.index, stop, mark, event.value, event.style or "")
        elif name in ("SequenceStartEvent", "MappingStartEvent"):
            kind = "list" if name.startswith("Seq") else "names"
            open_.append(Node(kind, start.index, event.end_mark.index, mark, flow=bool(event.flow_style)))
            keys.append(None)
            continue
        else:
            continue
        if not open_:
            roots.append(node)
        elif open_[-1].kind == "names" and keys[-1] is None:
            keys[-1] = node
        else:
            _enter(text, open_[-1], keys[-1], node)
            keys[-1] = None
    return roots


def _enter(text: str, parent: Node, key: Node | None, value: Node) -> None:
    """Add an entry to a list or mapping."""
    before = parent.entries[-1].end if parent.entries else parent.start + parent.flow
    first = key or value
    lead = [i for i in signs(text, before, first.start) if text[i] in ("?" if key else "-")]
    start = lead[-1] if lead and (key or not parent.flow) else first.start
    end = value.end
    if value.start == value.end:
        # Nothing is said: the entry ends with the sign after which it should be.
        colon = [i for i in signs(text, key.end, value.start) if text[i] == ":"] if key else []
        end = value.start = value.end = colon[0] + 1 if colon else key.end if key else start + 1
    parent.entries.append(Entry(key, value, start, end))


def signs(text: str, start: int, end: int) -> Iterator[int]:
    """Where, between two texts, anything but white space and remarks stands."""
    i = start
    while i < end:
        if text[i] == "#":
            i = line_end(text, i)
        elif not text[i].isspace():
            yield i
        i += 1


def line_start(text: str, at: int) -> int:
    return text.rfind("\n", 0, at) + 1


def line_end(text: str, at: int) -> int:
    end = text.find("\n", at)
    return len(text) if end < 0 else end


def plain(node: Node | None) -> Any:
    """What is written, without how: texts, lists, and lists of pairs."""
    if node is None:
        return []
    if node.kind == "text":
        return node.text.strip() if node.style in ("|", ">") else node.text
    if node.kind == "list":
        return [plain(e.value) for e in node.entries]
    return [(plain(e.key), plain(e.value)) for e in node.entries]
