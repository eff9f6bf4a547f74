"""Phrases that follow something from stop to stop, as a cord is followed: from the touched things in the order in which they were touched.

What may stand between comes from the table of phrases: forms such as `… over | under | left of | right of DISC …` and `… through BLOCK …`.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any

from unpin.read.forms import FORMS
from unpin.read.reader import read_text
from unpin.read.schema import Section
from unpin.workbench.editing import free_name

_BETWEEN = re.compile(r"… (?P<ways>[a-z |]+) (?P<kind>[A-Z]+) …")
_END = re.compile(r"… (?P<word>[a-z]+) (?P<kind>[A-Z]+)")


def threaded(section: Section, touched: Sequence[str], text: str) -> list[dict[str, Any]]:
    """Every way past all that is touched, one phrase for each way that the first kind of stop can be passed; none where nothing stands
    between or at the ends that has a size or a name of its own."""
    between = {m["kind"]: (m["ways"].split(" | "), form) for form in _forms(section) if (m := _BETWEEN.fullmatch(form.form))}
    ends = {m["kind"]: (m["word"], form) for form in _forms(section) if (m := _END.fullmatch(form.form))}
    stops = _stops(touched, text)
    if len(stops) < 2 or not between or all(kind == "POINT" for kind, _ in stops) or stops[0][0] not in ends | {"POINT": ()}:
        return []
    (last_kind, last), inner = stops[-1], stops[1:-1]
    to = next(iter(ends.values()))[0] if ends else ""
    if any(kind not in between for kind, _ in inner):
        return []
    if last_kind in between and last_kind not in ends:
        inner, tail, blank = stops[1:], "pulled ", "down"
    else:
        tail, blank = f"{to} {last}", ""
    count = max((len(between[kind][0]) for kind, _ in inner), default=1)
    out = []
    for way in range(count):
        way_past = [f"{between[kind][0][min(way, len(between[kind][0]) - 1)]} {name}" for kind, name in inner]
        phrase = " ".join([stops[0][1], *way_past, tail]).rstrip(" ") + (f" {blank}" if blank else "")
        form = between[inner[0][0]][1] if inner else ends[last_kind][1]
        out.append({"section": section.name, "name": free_name(text, section.name), "phrase": phrase, "means": form.meaning, "form": form.form,
                    "blanks": [[len(phrase) - len(blank), len(phrase)]] if blank else []})
    return out


def _forms(section: Section):
    return [f for f in FORMS if f.kind == section.phrase]


def _stops(touched: Sequence[str], text: str) -> list[tuple[str, str]]:
    """What is touched, as the kind of stop it is: a disc or a block also by the point that it is at."""
    problem = read_text(text).problem
    if problem is None:
        return []
    kinds = {p.name: p.kind.upper() for p in problem.parts if p.kind in ("disc", "block")}
    at = {p.points[0]: p.name for p in problem.parts if p.name in kinds}
    points = {p.name for p in problem.points}
    out: list[tuple[str, str]] = []
    for one in touched:
        what, _, name = one.partition(" ")
        name = at.get(name, name) if what == "point" else name
        stop = (kinds.get(name, "POINT"), name)
        if stop[0] == "POINT" and name not in points:
            return []
        if stop not in out:
            out.append(stop)
    return out
