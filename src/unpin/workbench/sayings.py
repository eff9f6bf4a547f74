"""What can be said of the things that are touched: the forms of the problem file with the names put in, and blanks for the rest.

Everything comes from the table of phrases, so a kind that is added there can be said here.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from itertools import islice
from typing import Any

from unpin.base.record import record
from unpin.read.edits.layout import Unreadable, layout
from unpin.read.forms import FORMS, Form
from unpin.read.reader import read_text
from unpin.read.schema import SECTIONS, Section
from unpin.workbench.editing import free_name, name_wanted, reads
from unpin.workbench.threads import threaded

MOST, AT_A_TIME = 18, 3
"""Offers in all, and of one section before the next has its turn; each is tried on the text before it is offered."""
_BLANKS = {"FORCE": "100 N", "LENGTH": "1", "ANGLE": "30 deg", "DIRECTION": "down", "AXIS": "right", "NUMBER": "1", "MASS": "10 kg",
           "MOMENT": "10 N m", "SIDE": "up", "UNIT": "N", "AREA": "m^2", "LETTER": "P", "NAME": "F"}
_WORD = re.compile(r"\{?[A-Z]{3,}\}?")
_ORDER = ("members", "links", "supports", "find", "loads", "cords", "discs", "blocks", "contacts", "slots", "collars", "pins", "points")


@record
class Touched:
    """Names that are touched, by what they are: points, and parts by their section."""

    points: tuple[str, ...]
    parts: tuple[tuple[str, str], ...]


def sayings(text: str, touched: Iterable[str]) -> list[dict[str, Any]]:
    """Phrases that hold everything touched, the likeliest first; each reads, and fits the text as it stands."""
    touched = [str(one) for one in touched]
    hand = _touched(text, touched)
    if not hand.points and not hand.parts:
        return []
    groups: list[list[dict[str, Any]]] = []
    said = _said(text)
    for section in sorted((s for s in SECTIONS if s.phrase), key=lambda s: _ORDER.index(s.name) if s.name in _ORDER else 99):
        if section.keyed == "point" and hand.points and hand.points[0] in said.get(section.name, ()):
            continue
        made = [f for form in FORMS if form.kind == section.phrase and (f := _filled(section, form, hand, text)) is not None]
        made = threaded(section, touched, text) + made
        fresh = {f["phrase"]: f for f in reversed(made)}
        # What is said without a blank is said most often.
        groups.append(sorted((f for f in made if fresh[f["phrase"]] is f), key=lambda f: len(f["blanks"])))
    return list(islice((s for s in _in_turn(groups) if _fits(text, s)), MOST))


def _said(text: str) -> dict[str, set[str]]:
    """The names of the entries of each section."""
    try:
        top = layout(text.removeprefix("\ufeff"))
    except Unreadable:
        return {}
    return {e.key.text: {x.key.text for x in e.value.entries if x.key} for e in (top.entries if top else ()) if e.key}


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
            said, blank = _BLANKS[kind], True
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


def _fits(text: str, saying: dict[str, Any]) -> bool:
    """Whether the phrase can be put there, and the text says nothing worse with it than without."""
    from unpin.read.edits import add

    return add(text, saying["section"], saying["phrase"], name_wanted(text, saying["section"], saying["phrase"], saying["name"])).made


def readings(text: str, line: str, touched: Iterable[str] = ()) -> list[dict[str, Any]]:
    """The sections in which a typed line reads: `A: [0, 0]`, `arm: C D E`, `300 N at E down`, `loads: …`."""
    line = line.strip()
    if not line or len(line) > 400:
        return []
    name, colon, rest = line.partition(":")
    name, rest = name.strip(), rest.strip()
    named = bool(colon) and bool(re.fullmatch(r"[^\W\d]\w*'*", name))
    out = []
    by_name = {s.name: s for s in SECTIONS}
    if named and name in by_name and by_name[name].phrase:
        inner, inner_colon, inner_rest = rest.partition(":")
        tries = [(by_name[name], inner.strip(), inner_rest.strip())] if inner_colon else [(by_name[name], "", rest)]
    elif named and name in by_name:
        return [{"section": name, "name": None, "phrase": rest, "blanks": [], "means": by_name[name].doc, "form": "", "sets": True}]
    elif named:
        tries = [(s, name, rest) for s in SECTIONS if s.phrase and s.shape != "phrases"]
    else:
        tries = [(s, "", line) for s in SECTIONS if s.phrase]
    first = next((str(t).partition(" ")[2] for t in touched if str(t).startswith("point ")), "")
    for section, key, phrase in tries:
        if section.shape == "points" and re.fullmatch(r"\[[^\[\]]*,[^\[\]]*\]", phrase):
            said: Any = phrase
        elif not reads(section.phrase, phrase):
            continue
        else:
            said = phrase
        if not key and section.keyed == "point":
            key = first
            if not key:
                continue
        if not key and section.shape in ("phrases by name", "points"):
            key = _free(text, section)
        made = {"section": section.name, "name": key or None, "phrase": said, "blanks": [], "means": section.doc, "form": ""}
        out.append(made)
    rank = {n: k for k, n in enumerate(_ORDER)}
    # What would be a fault as things stand is offered only where nothing else reads: then it is meant.
    fit = [s for s in out if s["section"] == "points" or _fits(text, s)]
    return sorted(fit or out, key=lambda s: rank.get(s["section"], 99))[:12]


def _free(text: str, section: Section) -> str:
    from unpin.workbench.editing import free_point

    return free_point(text) if section.shape == "points" else free_name(text, section.name)


def completions(text: str, section: str, phrase: str, at: int) -> list[dict[str, str]]:
    """What may stand at a place of a phrase: names of the problem and words of the grammar that begin as the word there does."""
    from unpin.read.grammar import Misread, parse_phrase
    from unpin.read.schema import BY_NAME

    schema = BY_NAME.get(section)
    if schema is None or not schema.phrase:
        return []
    before = phrase[: max(0, min(at, len(phrase)))]
    begun = re.search(r"[\w']*$", before).group()
    problem = read_text(text).problem
    names = [p.name for p in problem.points] + [p.name for p in problem.parts] if problem else []
    found = parse_phrase(schema.phrase, before[: len(before) - len(begun)] + "\u00b7")
    words = [w for w in (found.wanted if isinstance(found, Misread) else ()) if not w.startswith("@")]
    options = [w for w in dict.fromkeys([*words, *names]) if w.startswith(begun) and w != begun]
    return [{"insert": w[len(begun):], "means": w} for w in options[:12]]
