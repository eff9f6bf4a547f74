"""What can be said of the things that are touched: the forms of the problem file with the names put in, and blanks for the rest.

Everything comes from the table of phrases, so a kind that is added there can be said here.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from itertools import islice
from typing import Any

from unpin.base.record import record
from unpin.model.problem import GROUND, Problem
from unpin.read.edits.layout import Unreadable, layout
from unpin.read.forms import FORMS, Form
from unpin.read.reader import read_text
from unpin.read.schema import SECTIONS, Section
from unpin.workbench.editing import free_name, reads, said
from unpin.workbench.places import Places
from unpin.workbench.threads import threaded

MOST, AT_A_TIME = 18, 3
"""Offers in all, and of one section before the next has its turn; each is tried on the text before it is offered."""
_BLANKS = {"FORCE": "100 N", "LENGTH": "1", "ANGLE": "30 deg", "DIRECTION": "down", "AXIS": "right", "NUMBER": "1", "MASS": "10 kg",
           "MOMENT": "10 N m", "SIDE": "up", "UNIT": "N", "AREA": "m^2", "LETTER": "P", "NAME": "F"}
CHAINS = ("member", "link")
"""Phrases that are points one after the other."""
SAME = "the same"
"""What a form means that is another spelling of the one before it: of the two one is offered."""
_WORD = re.compile(r"\{?[A-Z]{3,}\}?")
ORDER = ("members", "links", "supports", "find", "loads", "cords", "discs", "blocks", "contacts", "slots", "collars", "pins", "points")


@record
class Touched:
    """Names that are touched, by what they are: points, and parts by their section."""

    points: tuple[str, ...]
    parts: tuple[tuple[str, str], ...]


def sayings(text: str, touched: Iterable[str]) -> list[dict[str, Any]]:
    """Phrases that hold everything touched, the likeliest first; each reads, and fits the text as it stands."""
    touched = [str(one) for one in touched]
    hand = _touched(text, touched)
    asks = list(_asks(text, touched[0])) if len(touched) == 1 else []
    if not hand.points and not hand.parts:
        return [s for s in asks if s["phrase"] not in _phrases(text).get("find", ()) and fits(text, s)] + _unasks(text, asks)
    groups: list[list[dict[str, Any]]] = []
    there, already = _said(text), _phrases(text)
    # Sums are chosen where the problem is solved, with the body before one's eyes.
    for section in sorted((s for s in SECTIONS if s.phrase and s.phrase != "sum"), key=lambda s: ORDER.index(s.name) if s.name in ORDER else 99):
        if section.keyed == "point" and hand.points and hand.points[0] in there.get(section.name, ()):
            continue
        made = [f for form in FORMS if form.kind == section.phrase and form.meaning != SAME and (f := _filled(section, form, hand, text)) is not None]
        made = threaded(section, touched, text) + made
        if section.name == "find":
            made = asks + made
        made = [f for f in made if section.shape != "phrases" or f["phrase"] not in already.get(section.name, ())]
        fresh = {plainly(section, f["phrase"]): f for f in reversed(made)}
        # What is said without a blank is said most often; of loads the forms stand in that order already.
        kept = [f for f in made if fresh[plainly(section, f["phrase"])] is f]
        groups.append(kept if section.name == "loads" else sorted(kept, key=lambda f: len(f["blanks"])))
    return list(islice((s for s in _in_turn(groups) if fits(text, s)), MOST)) + _unasks(text, asks)


def _unasks(text: str, asks: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """The questions that are put already, to be taken back; `drops`: which entry each is."""
    asked = [" ".join(e.phrase.split()) for e in Places(text, read_text(text)).entries("find")]
    return [{**s, "drops": str(asked.index(s["phrase"]) + 1)} for s in asks if s["phrase"] in asked]


def _asks(text: str, one: str) -> Iterator[dict[str, Any]]:
    """What can be asked of a thing that is touched by itself: the force in it, its reaction, its letter, or each force on it."""
    problem = read_text(text).problem
    what, _, name = one.partition(" ")
    if problem is None:
        return
    for pattern, phrase in dict.fromkeys(_questions(problem, what, name)):
        form = next(f for f in FORMS if f.kind == "asked" and f.form == pattern)
        yield {"section": "find", "name": None, "phrase": phrase, "blanks": [], "means": form.meaning, "form": form.form}


def _questions(problem: Problem, what: str, name: str) -> Iterator[tuple[str, str]]:
    """Form and phrase of each question; for a part with several forces on it, of each of them from point to point."""
    things = (*problem.parts, *problem.connections) if what in ("part", "connection") else ()
    if what == "load":
        yield from (("LETTER", load.name) for k, load in enumerate(problem.loads, 1) if load.name and name in (load.name, str(k)))
    for thing in things:
        if thing.name == name and len(thing.points) < 3:
            yield ("POINT-POINT" if len(thing.points) > 1 else "POINT"), "-".join(thing.points)
    parts = [p for p in problem.parts if what != "part" or p.name == name]
    held = {"part": {n for p in parts for n in p.points}, "point": {name}}.get(what) or {n for t in things if t.name == name for n in t.points[1:] or t.points}
    for point in (p.name for p in problem.points if p.name in held):
        if sum(point in p.points for p in problem.parts) > 1:
            yield from (("POINT on MEMBER", f"{point} on {p.name}") for p in parts if point in p.points)
        if what == "part":
            links = [c for c in problem.connections if c.kind == "link" and point in c.points]
            yield from (("POINT-POINT", "-".join(c.points)) for c in links if len(c.points) == 2)
            yield from (("POINT", point) for c in problem.connections if GROUND in c.parts and point in c.points)


def plainly(section: Section, phrase: str) -> str:
    """A phrase without what may be written either way: a chain with strokes or with blanks between its points."""
    return " ".join(re.split(r"[\s-]+", phrase.strip())) if section.phrase in CHAINS else phrase


def _said(text: str) -> dict[str, set[str]]:
    """The names of the entries of each section."""
    try:
        top = layout(text.removeprefix("\ufeff"))
    except Unreadable:
        return {}
    return {e.key.text: {x.key.text for x in e.value.entries if x.key} for e in (top.entries if top else ()) if e.key}


def _phrases(text: str) -> dict[str, set[str]]:
    """What the sections that are lists say."""
    try:
        top = layout(text.removeprefix("\ufeff"))
    except Unreadable:
        return {}
    return {e.key.text: {x.value.text for x in (e.value.entries or [e])} for e in (top.entries if top else ()) if e.key}


def _in_turn(groups: list[list[dict[str, Any]]]) -> Iterator[dict[str, Any]]:
    """A few of each group, then a few more, so that no section hides the others."""
    for start in range(0, max(map(len, groups), default=0), AT_A_TIME):
        for group in groups:
            yield from group[start : start + AT_A_TIME]


def _touched(text: str, ids: Iterable[str]) -> Touched:
    problem = read_text(text).problem
    if problem is None:
        return Touched((), ())
    points, parts = [], []
    kinds = {"member": "MEMBER", "disc": "DISC", "block": "BLOCK"}
    known = {p.name: kinds.get(p.kind, "MEMBER") for p in problem.parts}
    cords = {c.name for c in problem.cords}
    for one in ids:
        what, _, name = str(one).partition(" ")
        if what == "point" and any(p.name == name for p in problem.points):
            points.append(name)
        elif name in known:
            parts.append((name, known[name]))
        elif name in cords:
            parts.append((name, "CORD"))
    return Touched(tuple(points), tuple(parts))


def _filled(section: Section, form: Form, hand: Touched, text: str) -> dict[str, Any] | None:
    """A form with the touched names in it; None where they do not all find a place."""
    pattern = form.form
    lead = pattern.startswith("…")
    if lead:
        return None
    pattern = _chosen(pattern)
    points, parts = list(hand.points), list(hand.parts)
    name = None
    if section.keyed == "point":
        if not points:
            return None
        name = points.pop(0)
    if "…" in pattern:
        pattern = _grown(pattern, len(points))
    words: list[str] = []
    blanks: list[list[int]] = []
    at = 0
    out = ""
    for m in _WORD.finditer(pattern):
        out += pattern[at : m.start()]
        at = m.end()
        kind = m.group()
        said, blank = "", False
        if kind == "POINT":
            if points:
                said = points.pop(0)
            else:
                return None
        elif kind in ("MEMBER", "DISC", "BLOCK", "BODY", "CORD"):
            fit = next((p for p in parts if p[1] == kind or kind in ("MEMBER", "BODY") and p[1] != "CORD"), None)
            if fit is None:
                return None
            parts.remove(fit)
            said = fit[0]
        elif kind in _BLANKS:
            said, blank = ("up" if kind == "DIRECTION" and section.phrase == "support" else _BLANKS[kind]), True
        else:
            return None
        if blank:
            blanks.append([len(out), len(out) + len(said)])
        words.append(said)
        out += said
    out += pattern[at:]
    if points or parts or not reads(section.phrase, out):
        return None
    if section.shape == "phrases by name" and name is None:
        name = free_name(text, section.name, hand.points)
    return {"section": section.name, "name": name, "phrase": out, "blanks": blanks, "means": form.meaning, "form": form.form}


def _chosen(pattern: str) -> str:
    """The first of each pair of alternatives."""
    while (m := re.search(r"(\S+) \| [^|]*?(?=( \||$|\s))", pattern)) is not None:
        pattern = pattern[: m.start()] + m.group(1) + pattern[m.end() :]
    return pattern


def _grown(pattern: str, points: int) -> str:
    """`POINT POINT …` for as many points as there are; other dots are left out."""
    joint = "-" if "POINT-POINT" in pattern else " "
    if re.match(r"POINT[- ]POINT", pattern):
        rest = pattern[pattern.rfind("…") + 1 :] if pattern.count("…") == 1 else ""
        return joint.join(["POINT"] * max(points, 2)) + rest
    return pattern.replace(" …", "").replace("…", "")


def fits(text: str, saying: dict[str, Any]) -> bool:
    """Whether the phrase can be put there, and the text says nothing worse with it than without."""
    return said(text, saying["section"], saying["phrase"], saying["name"] or "", faulty=False)[0].made
