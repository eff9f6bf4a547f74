"""A point that stands in a row with others, set free: each point of the row gets a line of its own and stays where it is."""

from __future__ import annotations

import re
from decimal import Decimal

from unpin.read.edits import add, remove
from unpin.read.grammar import Misread, parse_phrase
from unpin.read.reader import read_text
from unpin.workbench.places import Entry, Places

_AXES = ("right", "left", "up", "down")
_NUMBER = re.compile(r"(\d+(?:\.\d+)?)((?:\s*[^\W\d][\w/]*)?)")


def row_of(text: str, name: str) -> Entry | None:
    """The entry of several points in which a point stands."""
    rows = [e for e in Places(text, read_text(text)).entries("points") if len(e.key.replace(",", " ").split()) > 1]
    return next((e for e in rows if name in e.key.replace(",", " ").split()), None)


def freed(text: str, name: str) -> str:
    """The text with the row of a point taken apart; as it is where the point stands in none, or the row cannot be said otherwise."""
    row = row_of(text, name)
    if row is None:
        return text
    names = row.key.replace(",", " ").split()
    made = text
    for k, one in enumerate(names, 1):
        phrase = _alone(row.phrase, k, len(names))
        if not phrase:
            return text
        made = add(made, "points", phrase, one, before=row.key, faulty=True).text
    made = remove(made, "points", row.key, faulty=True).text
    return made if _where(made) == _where(text) else text


def _where(text: str) -> dict[str, object]:
    problem = read_text(text).problem
    return {p.name: p.at for p in problem.points} if problem else {}


def _alone(phrase: str, k: int, count: int) -> str:
    """What the k-th of a row says by itself: a share of the way, or so many steps from the base."""
    word, _, rest = phrase.partition(" ")
    if word == "evenly" and (ends := re.fullmatch(r"from (\S+) to (\S+)", rest)):
        return f"{k}/{count + 1} of {ends[1]} {ends[2]}"
    way, _, base = rest.rpartition(" from ")
    words = way.split()
    for split in range(1, len(words)):
        size, direction = _times(k, " ".join(words[:split])), " ".join(words[split:])
        said = f"{base} {direction} {size}" if direction in _AXES else f"{size} from {base} {direction}"
        if word == "every" and not isinstance(parse_phrase("point", said), Misread):
            return said
    return ""


def _times(k: int, step: str) -> str:
    """So many steps as one length."""
    if k == 1:
        return step
    if plain := _NUMBER.fullmatch(step):
        return f"{Decimal(plain[1]) * k}{plain[2]}"
    return f"{k}{step}" if step.isidentifier() else f"{k}*({step})"
