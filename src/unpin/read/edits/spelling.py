"""Texts as YAML writes them: quotes where they are needed and as they were, and where each character of a text stands."""

from __future__ import annotations

import json
import re
import textwrap
from collections.abc import Iterator

from unpin.read.edits.layout import Node, line_end

Value = str | tuple[str, ...]
"""A phrase, or several side by side (two coordinates, the strokes of a member)."""

_ESCAPE = re.compile(r"\\(x[0-9a-fA-F]{2}|u[0-9a-fA-F]{4}|U[0-9a-fA-F]{8}|\n[ \t]*|.)|(.)", re.S)
WIDE = 120


def spell(text: str, flow: bool, key: bool = False, style: str = "") -> str:
    """A text for a place within brackets (`flow`) or not, in the quotes it had (`style`) or in those it needs."""
    if style == "'" and "\n" not in text:
        return single(text)
    if style == '"':
        return double(text)
    if _stands_bare(text, flow, key):
        return text
    return single(text) if ('"' in text or "\\" in text) and text.isprintable() else double(text)


def spelled(value: Value, flow: bool) -> str:
    """A phrase, or a list of them on one line."""
    if isinstance(value, str):
        return spell(value, flow)
    return "[" + ", ".join(spell(v, True) for v in value) + "]"


def single(text: str) -> str:
    return "'" + text.replace("'", "''") + "'"


def double(text: str) -> str:
    return json.dumps(text, ensure_ascii=False)


def _stands_bare(text: str, flow: bool, key: bool) -> bool:
    """Whether YAML reads a text without quotes as that text, in a mapping and in a list."""
    import yaml

    if not text or text != text.strip() or "\n" in text:
        return False
    places = ["{%s: a}" if flow else "%s: a"] if key else ["{a: %s}", "[%s]", "[a, %s, b]"] if flow else ["a: %s", "- %s"]
    loader = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
    for place in places:
        try:
            events = list(yaml.parse(place % text, Loader=loader))
        except yaml.YAMLError:
            return False
        found = [e for e in events if isinstance(e, yaml.ScalarEvent)]
        right = place.count("a") + place.count("b") + 1
        ours = [e for e in found if e.value == text and not e.style and not e.anchor and not e.tag]
        # Six events begin and end the stream, the document and the list or mapping.
        if len(found) != right or not ours or len(events) != right + 6:
            return False
    return True


def inside(text: str, style: str) -> str:
    """A piece of a text for the inside of quotes."""
    if style == "'":
        return text.replace("'", "''")
    return double(text)[1:-1] if style == '"' else text


def folded(source: str, node: Node, text: str) -> str | None:
    """A text in the way of an old one that runs over lines after `>` or `|`, None where it cannot be kept."""
    head, *body = source[node.start : node.end].split("\n")
    first = next((line for line in body if line.strip()), "")
    indent = first[: len(first) - len(first.lstrip())]
    if not indent or not text.strip() or text != text.strip() or node.style == ">" and "\n" in text:
        return None
    room = max(WIDE - len(indent), 20)
    lines = text.split("\n") if node.style == "|" else textwrap.wrap(text, room, break_long_words=False, break_on_hyphens=False)
    return "\n".join([head, *((indent + line).rstrip() for line in lines)])


def spots(source: str, node: Node) -> list[tuple[int, int]] | None:
    """Where each character of a text that is no white space is written; None where that cannot be told."""
    found = list(_characters(source, node))
    wanted = [c for c in node.text if not c.isspace()]
    if [c for c, _, _ in found[: len(wanted)]] != wanted:
        return None
    return [(start, end) for _, start, end in found[: len(wanted)]]


def _characters(source: str, node: Node) -> Iterator[tuple[str, int, int]]:
    start, end = node.start, node.end
    if node.style in ("|", ">"):
        start = min(line_end(source, start), end)
    elif node.style:
        start, end = start + 1, end - 1
    if node.style == '"':
        for m in _ESCAPE.finditer(source, start, end):
            char = m[2] or (chr(int(m[1][1:], 16)) if m[1][0] in "xuU" and len(m[1]) > 1 else m[1])
            if not char.isspace() and (m[2] or m[1] in ('"', "\\", "/") or len(m[1]) > 2):
                yield char, m.start(), m.end()
        return
    at = start
    while at < end:
        wide = 2 if node.style == "'" and source[at] == "'" else 1
        if not source[at].isspace():
            yield source[at], at, at + wide
        at += wide
