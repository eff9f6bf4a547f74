"""Entries put in, taken out and changed, in lists and mappings of every style; each function gives the edits of the text."""

from __future__ import annotations

from collections.abc import Collection

from unpin.read.edits.edit import Edit
from unpin.read.edits.layout import Entry, Node, line_end, line_start, signs
from unpin.read.edits.spelling import Value, folded, spell, spelled


class Unfit(Exception):
    """The place is written in a way in which this cannot be changed by itself."""


# Putting in.


def put_in(text: str, home: Node, at: int, key: str, value: Value | None, written: str = "") -> list[Edit]:
    """A new entry before entry `at` of a list or mapping (at its end where `at` is their number). `written`: the value as
    YAML, where it is not a phrase; in a block its further lines are indented already."""
    body = written or spelled(value, home.flow)
    if key:
        said = spell(key, home.flow, key=True)
        body = said + ":" + body if body.startswith("\n") else f"{said}: {body}"
    if home.flow:
        return _put_in_flow(text, home, at, body)
    indent = _indent(text, home)
    if home.kind == "list":
        body = "- " + body
    if at == 0:
        start = line_start(text, home.entries[0].start)
        return [Edit(start, start, indent + body + "\n")]
    end = _rest(text, home.entries[at - 1].end)
    return [Edit(end, end, "\n" + indent + body)]


def _indent(text: str, home: Node) -> str:
    if not home.entries:
        return ""
    first = home.entries[0].start
    before = text[line_start(text, first) : first]
    if before.strip():
        raise Unfit
    return before


def _rest(text: str, at: int) -> int:
    """The end of a line on which nothing but a remark follows."""
    end = line_end(text, at)
    if any(True for _ in signs(text, at, end)):
        raise Unfit
    return end


def _put_in_flow(text: str, home: Node, at: int, body: str) -> list[Edit]:
    entries = home.entries
    if not entries:
        return [Edit(home.start + 1, home.start + 1, body)]
    lead = _own_line(text, home)
    if at < len(entries):
        start = entries[at].start
        return [Edit(start, start, body + (",\n" + lead if lead is not None else ", "))]
    last = entries[-1].end
    comma = next((i for i in signs(text, last, home.end - 1) if text[i] == ","), None)
    if lead is None:
        return [Edit(comma + 1, comma + 1, f" {body},")] if comma is not None else [Edit(last, last, f", {body}")]
    after = comma + 1 if comma is not None else last
    end = line_end(text, after)
    if any(True for _ in signs(text, after, min(end, home.end))):
        end = after  # the bracket stands on this line
    line = f"\n{lead}{body}"
    if comma is not None:
        return [Edit(end, end, line + ",")]
    return [Edit(last, last, "," + line)] if end == last else [Edit(last, last, ","), Edit(end, end, line)]


def _own_line(text: str, home: Node) -> str | None:
    """The white space before an entry, where the last one begins its line and an earlier one ended before it."""
    last = home.entries[-1]
    before = text[line_start(text, last.start) : last.start]
    return before if not before.strip() and line_start(text, last.start) > home.start else None


# Taking out.


def take_out(text: str, home: Node, gone: Collection[int]) -> list[Edit]:
    """Some entries less, but not all of a list or mapping. Remarks on lines of their own stay."""
    if not home.flow:
        return [lines(text, e.start, e.end) for n, e in enumerate(home.entries) if n in gone]
    last_kept = max(n for n in range(len(home.entries)) if n not in gone)
    out: list[Edit] = []
    for n in sorted(gone):
        entry = home.entries[n]
        if n < last_kept:
            comma = _comma(text, entry.end, home.entries[n + 1].start)
            out.append(_piece(text, entry.start, entry.end, comma + 1))
        else:
            comma = _comma(text, home.entries[n - 1].end, entry.start)
            if "#" not in text[comma : entry.start] and "\n" not in text[comma : entry.start]:
                out.append(Edit(comma, entry.end))
            else:
                out += [Edit(comma, comma + 1), _piece(text, entry.start, entry.end, entry.end)]
    return out


def _comma(text: str, start: int, end: int) -> int:
    return next(i for i in signs(text, start, end) if text[i] == ",")


def _piece(text: str, start: int, end: int, stop: int) -> Edit:
    """The edit that takes out an entry of a flow list up to `stop`, and the line where it stood alone on it."""
    first, last = line_start(text, start), line_end(text, stop)
    alone, ends = not text[first:start].strip(), not text[stop:last].strip()
    if alone and ends and last < len(text):
        return Edit(first, last + 1)
    if "#" in text[end:stop]:
        # A remark stands between the entry and its comma: it stays, and so does its line.
        raise Unfit
    if ends:
        return Edit(len(text[:start].rstrip(" \t")), stop) if not alone else Edit(start, stop)
    blank = len(text[stop:last]) - len(text[stop:last].lstrip(" \t"))
    return Edit(start, stop if text[stop + blank] == "#" else stop + blank)


def lines(text: str, start: int, end: int) -> Edit:
    """The edit that takes out the lines of an entry, with the remark behind it."""
    first, last = line_start(text, start), _rest(text, end)
    if text[first:start].strip():
        raise Unfit
    if last < len(text):
        return Edit(first, last + 1)
    return Edit(max(first - 1, 0), last)


def take_out_whole(text: str, home: Node, at: int) -> list[Edit]:
    """An entry that holds a list or mapping, with all of that; remarks on lines between stay."""
    entry = home.entries[at]
    if len(home.entries) == 1:
        raise Unfit
    if home.flow or entry.value.kind == "text" or entry.value.flow or not entry.value.entries:
        return take_out(text, home, {at})
    inner = entry.value.entries
    return [lines(text, entry.start, _colon(text, entry) + 1), *(lines(text, e.start, e.end) for e in inner)]


# Changing.


def set_value(text: str, home: Node, entry: Entry, value: Value) -> list[Edit]:
    """What an entry holds, written anew in the quotes and lines it had, as far as it can be."""
    old = entry.value
    if old.kind == "text" and isinstance(value, str):
        if old.style in ("|", ">"):
            kept = folded(text, old, value)
            return [Edit(old.start, old.end, kept if kept is not None else spell(value, home.flow))]
        new = spell(value, home.flow, style=old.style)
        return [Edit(old.start, old.end, new if old.end > old.start else " " + new)]
    if old.kind == "list" and isinstance(value, tuple) and len(old.entries) == len(value):
        texts = [e.value.kind == "text" for e in old.entries]
        if all(texts):
            return [
                edit
                for inner, new in zip(old.entries, value)
                if inner.value.text != new
                for edit in set_value(text, old, inner, new)
            ]
    new = spelled(value, home.flow)
    if old.kind == "text" or old.flow:
        return [Edit(old.start, old.end, new if old.end > old.start else " " + new)]
    if entry.key is None:
        raise Unfit
    inner = [lines(text, e.start, e.end) for e in old.entries]
    after = _colon(text, entry) + 1
    return [Edit(after, after, " " + new), *inner]


def become_list(text: str, top: Node, entry: Entry, value: str) -> list[Edit]:
    """A section that is one phrase, or says nothing, with one phrase more."""
    old = entry.value
    if top.flow or not old.text:
        if not old.text and not top.flow:
            return _begin_block(text, top, entry, "list", "- " + spell(value, False))
        held = [spell(old.text, True, style=old.style)] if old.text else []
        written = "[" + ", ".join([*held, spell(value, True)]) + "]"
        return [Edit(old.start, old.end, written if old.text else " " + written)]
    step = _step(text, top, "list")
    if "\n" in text[old.start : old.end]:
        both = [spell(t, False) for t in (" ".join(old.text.split()), value)]
        return [Edit(_colon(text, entry) + 1, old.end, "".join(f"\n{step}- {t}" for t in both))]
    end = _rest(text, old.end)
    return [Edit(_colon(text, entry) + 1, old.start, f"\n{step}- "), Edit(end, end, f"\n{step}- {spell(value, False)}")]


def become_names(text: str, top: Node, entry: Entry, key: str, value: Value) -> list[Edit]:
    """A section that says nothing, with its first entry."""
    body = f"{spell(key, top.flow, key=True)}: {spelled(value, top.flow)}"
    if top.flow:
        return [Edit(entry.value.start, entry.value.end, " {" + body + "}")]
    return _begin_block(text, top, entry, "names", body)


def _begin_block(text: str, top: Node, entry: Entry, kind: str, body: str) -> list[Edit]:
    end = _rest(text, entry.end)
    return [Edit(end, end, f"\n{_step(text, top, kind)}{body}")]


def _colon(text: str, entry: Entry) -> int:
    return next(i for i in signs(text, entry.key.end, entry.value.start) if text[i] == ":")


def _step(text: str, top: Node, kind: str) -> str:
    """The indentation of a list or of names within a section: that of the first that stands on lines of its own, else two."""
    base = _indent(text, top)
    for entry in top.entries:
        value = entry.value
        if value.kind != "text" and not value.flow and value.entries:
            before = text[line_start(text, value.entries[0].start) : value.entries[0].start]
            if not before.strip() and (len(before) > len(base) or value.kind == kind == "list"):
                return before
    return base + "  "


def new_section(text: str, top: Node, key: str, value: Value) -> str:
    """What a new section holds, as YAML: within brackets where the file writes all its lists so, else a line each."""
    inner = [e.value for e in top.entries if e.value.kind != "text"]
    flow = top.flow or inner and all(v.flow for v in inner)
    body = f"{spell(key, True, key=True)}: {spelled(value, True)}" if key else spelled(value, True)
    if flow:
        return "{" + body + "}" if key else "[" + body + "]"
    step = _step(text, top, "names" if key else "list")
    return f"\n{step}{spell(key, False, key=True)}: {spelled(value, False)}" if key else f"\n{step}- {spelled(value, False)}"
