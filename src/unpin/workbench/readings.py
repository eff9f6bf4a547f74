"""A typed line: the sections in which it reads, what may come next in it, and, where it reads in none, what was expected."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Any

from unpin.read.edits import rename
from unpin.read.forms import FORMS
from unpin.read.reader import read_text
from unpin.read.schema import BY_NAME, SECTIONS, Section
from unpin.workbench.directions import DIRECTIONS, named
from unpin.workbench.editing import free_name, free_point, is_there, reads, said
from unpin.workbench.sayings import CHAINS, ORDER, fits, plainly

_LONGEST, _MOST = 400, 12
_YET = {"read.support_on_nothing", "read.load_on_nothing", "read.no_support", "read.not_shared", "read.ask_of_member"}
"""Faults that go away when more is said."""


def read(text: str, line: str, touched: Iterable[str] = (), language: str = "en") -> dict[str, Any]:
    """`sayings`: what the line can be; `faults`: why it is nothing that stands as it is, sentence, hint and one right example;
    `options`: what may come next."""
    touched = list(touched)
    found = names(text, line, touched) + readings(text, line, touched)
    sets = bool(found) and bool(found[0].get("sets") or found[0].get("renames"))
    fine = sets or any(s["section"] == "points" or fits(text, s) for s in found)
    tries = [(BY_NAME[s["section"]], s["name"] or "", s["phrase"]) for s in found[:1] if s["section"]] or _tries(line.strip())
    return {"sayings": found, "faults": [] if fine else _faults(text, line, tries, touched, language), "options": continuations(line, language)}


def readings(text: str, line: str, touched: Iterable[str] = ()) -> list[dict[str, Any]]:
    """The sections in which a typed line reads: `A: [0, 0]`, `arm: C D E`, `300 N at E down`, `loads: …`."""
    line = line.strip()
    if not line or len(line) > _LONGEST:
        return []
    tries = _tries(line)
    if len(tries) == 1 and not tries[0][0].phrase:
        section, _, phrase = tries[0]
        return [{"section": section.name, "name": None, "phrase": phrase, "blanks": [], "means": section.doc, "form": "", "sets": True}]
    first = next((str(t).partition(" ")[2] for t in touched if str(t).startswith("point ")), "")
    problem = read_text(text).problem
    points = {p.name for p in problem.points} if problem else set()
    out: dict[tuple[str, str], dict[str, Any]] = {}
    for section, key, phrase in tries:
        pair = section.shape == "points" and re.fullmatch(r"\[[^\[\]]*,[^\[\]]*\]", phrase)
        if not pair and (not reads(section.phrase, phrase) or section.phrase in CHAINS and not _chain(phrase, points)):
            continue
        key = key or (first if section.keyed == "point" else "")
        if not key and section.keyed == "point":
            continue
        if not key and section.shape in ("phrases by name", "points"):
            key = free_point(text) if section.shape == "points" else free_name(text, section.name)
        made = {"section": section.name, "name": key or None, "phrase": phrase, "blanks": [], "means": section.doc, "form": ""}
        out.setdefault((section.name, plainly(section, phrase)), made)
    # A name that stands already is meant again. What only comes too early is offered where nothing else reads: then it is meant.
    fit = [s for s in out.values() if (_stands(text, s) if s["section"] == "points" else fits(text, s))]
    there = [s for s in out.values() if is_there(text, s["section"], s["name"] or "")]
    early = [s for s in there or out.values() if _early(text, s) and (s["section"] != "find" or " " in line)]
    return sorted(fit or early, key=lambda s: (s not in there, _rank(s["section"])))[:_MOST]


def names(text: str, line: str, touched: Iterable[str]) -> list[dict[str, Any]]:
    """A word while one thing that has a name is touched: its new name. Of two points that is an exchange where the other has that name;
    of anything else the word must be nothing yet."""
    touched = list(touched)
    line = line.strip()
    what, _, old = str(touched[0] if len(touched) == 1 else "").partition(" ")
    if what not in ("point", "part", "cord") or line == old or not re.fullmatch(r"[^\W\d]\w*'*", line):
        return []
    problem = read_text(text).problem
    swaps = what == "point" and problem is not None and line in {p.name for p in problem.points}
    if not swaps and (readings(text, line, touched) or not rename(text, old, line, faulty=True).made):
        return []
    return [{"section": "", "name": old, "phrase": line, "blanks": [], "means": "", "form": "", "renames": "swap" if swaps else "name"}]


def _stands(text: str, saying: dict[str, Any]) -> bool:
    """Whether a point has a place with that phrase, whatever the rest of the file lacks or has still to say of it."""
    revision, name = said(text, "points", saying["phrase"], saying["name"] or "")
    problem = read_text(revision.text).problem if revision.made else None
    return problem is not None and any(p.name == name for p in problem.points)


def _early(text: str, saying: dict[str, Any]) -> bool:
    """Whether all that is amiss is that something else has still to be said: what is held or loaded, or is asked of."""
    return all(d.code in _YET for d in said(text, saying["section"], saying["phrase"], saying["name"] or "", faulty=False)[0].refused)


def _rank(section: str) -> int:
    return ORDER.index(section) if section in ORDER else 99


def _tries(line: str) -> list[tuple[Section, str, str]]:
    """Section, name and phrase that a line may mean."""
    name, colon, rest = (piece.strip() for piece in line.partition(":"))
    if colon and name in BY_NAME:
        inner, inner_colon, inner_rest = (piece.strip() for piece in rest.partition(":"))
        whole = not inner_colon or not BY_NAME[name].phrase
        return [(BY_NAME[name], "", rest) if whole else (BY_NAME[name], inner, inner_rest)]
    if colon and re.fullmatch(r"[^\W\d]\w*'*", name):
        return [(s, name, rest) for s in SECTIONS if s.phrase and s.shape != "phrases"]
    word, _, after = line.partition(" ")
    if not colon and word in BY_NAME and BY_NAME[word].phrase and reads(BY_NAME[word].phrase, after):
        return [(BY_NAME[word], "", after.strip())]
    return [(s, "", line) for s in SECTIONS if s.phrase and s.name != "letters"]


def _chain(phrase: str, points: set[str]) -> bool:
    """Whether a phrase goes from point to point: two words at least, and a point among them."""
    words = re.findall(r"[^\W\d]\w*'*", phrase)
    return len(words) > 1 and any(w in points for w in words)


def _faults(text: str, line: str, tries: list[tuple[Section, str, str]], touched: Iterable[str], language: str) -> list[dict[str, str]]:
    """What the reader says of the line in the section that it is likeliest meant for."""
    from unpin.read.grammar import Misread, parse_phrase
    from unpin.words.remarks import hint, sentence

    tries = [t for t in tries if t[0].phrase]
    if not line.strip() or len(line) > _LONGEST or not tries:
        return []

    problem = read_text(text).problem
    points = {p.name for p in problem.points} if problem else set()

    def far(one: tuple[Section, str, str]) -> tuple[bool, bool, bool, int, int]:
        section, name, phrase = one
        parsed = parse_phrase(section.phrase, phrase or "\u00b7")
        reached = parsed.start if isinstance(parsed, Misread) else len(phrase)
        begins = _begins(name, phrase, points)
        whole = not isinstance(parsed, Misread)
        return not whole, section.name != begins, not is_there(text, section.name, name), -reached, _rank(section.name)

    first = next((str(t).partition(" ")[2] for t in touched if str(t).startswith("point ")), "")
    section, name, phrase = min(tries, key=far)
    if section.keyed == "point":
        name = name or first
    if not name and section.shape in ("phrases by name", "points"):
        name = free_point(text) if section.shape == "points" else free_name(text, section.name)
    refused = said(text, section.name, phrase, name, faulty=False)[0].refused
    told = sorted(refused, key=lambda d: not d.path.startswith(section.name))  # of the line, before what it leaves to be said
    right = "E: [2, 1.5]" if phrase.startswith("[") else example(section)
    if phrase and "".join(right.split()).endswith("".join(phrase.split())):
        right = ""  # well said already: what it speaks of is missing
    return [{"section": section.name, "sentence": sentence(d, language), "hint": hint(d, language), "example": right} for d in told[:1]]


def _begins(name: str, phrase: str, points: set[str]) -> str:
    """The section that a line is meant for by how it begins: with a number a load, with a bracket a point, with a word at a point a support."""
    word = re.match(r"\w*", phrase).group()
    if phrase[:1].isdigit():
        return "" if name else "loads"
    return "points" if phrase.startswith("[") else "supports" if name in points and word and word not in points else ""


def example(section: Section) -> str:
    """A line that is right in a section, as it may be typed."""
    form = next((f.example for f in FORMS if f.kind == section.phrase), "")
    if section.shape in ("phrases", "phrases or phrases by name"):
        return form
    return f"E: {form}" if section.keyed == "point" or section.shape == "points" else f"{section.name}: {section.example.partition('{')[2].rstrip('}').split(',')[0]}"


def continuations(line: str, language: str = "en") -> list[dict[str, str]]:
    """What may come next in a new line: after the place of a force, the directions it may have."""
    if not line.endswith(" ") or not line.strip() or len(line) > _LONGEST:
        return []
    phrase = next((t[2] for t in _tries(line.strip()) if t[0].name == "loads"), "")
    if not re.search(r"\bat [^\W\d]\w*'*$", phrase) or not reads("load", f"{phrase} down"):
        return []
    return [{"insert": way, "means": named(way, word, language)} for way, word in DIRECTIONS]


def completions(text: str, section: str, phrase: str, at: int, language: str = "en") -> list[dict[str, str]]:
    """What may stand at a place of a phrase: names of the problem and words of the grammar that begin as the word there does."""
    from unpin.read.grammar import Misread, parse_phrase

    schema = BY_NAME.get(section)
    if schema is None or not schema.phrase:
        return []
    before = phrase[: max(0, min(at, len(phrase)))]
    begun = re.search(r"[\w']*$", before).group()
    if section == "loads" and not begun and (onward := continuations(before, language)):
        return onward
    problem = read_text(text).problem
    names = [p.name for p in problem.points] + [p.name for p in problem.parts] if problem else []
    found = parse_phrase(schema.phrase, before[: len(before) - len(begun)] + "\u00b7")
    words = [w for w in (found.wanted if isinstance(found, Misread) else ()) if not w.startswith("@")]
    options = [w for w in dict.fromkeys([*words, *names]) if w.startswith(begun) and w != begun]
    return [{"insert": w[len(begun):], "means": w} for w in options[:12]]
