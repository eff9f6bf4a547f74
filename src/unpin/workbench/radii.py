"""The radius of a disc typed over in the figure: the amount of its phrase, or the letter that stands there by itself."""

from __future__ import annotations

import re
from typing import Any

from unpin.base.record import record
from unpin.read.edits import Revision, change
from unpin.read.grammar import Misread, parse_phrase
from unpin.read.reader import read_text
from unpin.workbench.folder import Refused
from unpin.workbench.places import Entry, Places

RADIUS = re.compile(r"(\S+) ([\d.e+-]+)")
"""How the figure calls a radius: its disc and its size, metres."""


@record
class Radius:
    """Which entry says a radius, where in its phrase, and the letter that it is the value of, else ""."""

    entry: Entry
    start: int
    end: int
    letter: str
    value: str


def radius(text: str, called: str) -> Radius:
    found = RADIUS.fullmatch(called)
    reading = read_text(text)
    places = Places(text, reading)
    disc = next((p for p in (reading.problem.parts if reading.problem else ()) if found and p.name == found[1] and p.radii), None)
    entry = next((e for e in places.entries("discs") if disc and e.key == disc.name), None)
    said = parse_phrase("disc", entry.phrase) if entry else None
    if found is None or disc is None or entry is None or isinstance(said, Misread):
        raise Refused("thing", 422)
    k = min(range(len(disc.radii)), key=lambda n: abs(float(disc.radii[n]) - float(found[2])))
    amount = said.radii[k]
    now = entry.phrase[amount.start : amount.end].strip()
    letter = next((e for e in places.entries("letters") if e.key == now), None)
    return Radius(entry, amount.start, amount.end, letter.key if letter else "", letter.phrase if letter else now)


def asked(text: str, called: str) -> dict[str, Any]:
    found = radius(text, called)
    return {"ok": True, "phrase": found.value, "letter": found.letter}


def resized(text: str, called: str, value: str) -> tuple[Revision, list[str]]:
    found = radius(text, called)
    if found.letter:
        return change(text, "letters", found.letter, value), []
    phrase = found.entry.phrase
    return change(text, "discs", found.entry.key, phrase[: found.start] + value + phrase[found.end :]), [f"part {found.entry.key}"]
