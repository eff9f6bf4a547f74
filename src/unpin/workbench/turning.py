"""A phrase turned, or a load carried to another point, by its words: only the direction, or only the name of the point, is another."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from unpin.base.units import BY_SPELLING
from unpin.model.problem import Load
from unpin.read.edits.changes import written
from unpin.read.grammar import Misread, parse_phrase


def turned(phrase: str, way: str, kind: str = "load") -> Iterator[str]:
    """The phrases of a kind with another direction in the place of a stretch that reads as one, the longest first."""
    words = list(re.finditer(r"\S+", phrase))
    stretches = ((words[i].start(), words[i + size - 1].end()) for size in range(len(words), 0, -1) for i in range(len(words) - size + 1))
    for start, end in stretches:
        end -= phrase[start:end].endswith(",")
        made = phrase[:start] + way + phrase[end:]
        if _reads("point", f"1 from A {phrase[start:end]}") and _reads(kind, made):
            yield made


def by_components(load: Load) -> bool:
    return load.kind == "force" and load.direction is not None and load.direction.form == "components"


def is_exact(load: Load) -> bool:
    """Whether the size of a force is a plain number, so that it can be said without its components."""
    return load.magnitude is not None and isinstance(load.magnitude.value, Fraction)


def resized(phrase: str, way: str, load: Load) -> Iterator[str]:
    """The phrases of a force by components, with its size and a direction instead: only where that size is exact."""
    said = parse_phrase("load", phrase)
    if isinstance(said, Misread) or said.form != "components" or not is_exact(load):
        return
    first, second, outer = said.amounts
    unit = BY_SPELLING.get(load.magnitude.unit)
    start, end = phrase.rindex("(", 0, first.start), outer.end if outer else phrase.index(")", second.end) + 1
    size = f"{written(load.magnitude.value / unit.factor)} {unit.symbol}" if unit else written(load.magnitude.value)
    lead, rest = phrase[:start] + size, phrase[end:].rstrip()
    yield from (made for made in (f"{lead} {rest.lstrip()} {way}", f"{lead} {way} {rest.lstrip()}") if _reads("load", made))


def carried(phrase: str, old: str, new: str) -> Iterator[str]:
    """The phrases of a load with one point's name put for another, for each place where the name stands."""
    for found in re.finditer(rf"(?<![\w']){re.escape(old)}(?![\w'])", phrase):
        made = phrase[: found.start()] + new + phrase[found.end() :]
        if _reads("load", made):
            yield made


def _reads(kind: str, phrase: str) -> bool:
    return not isinstance(parse_phrase(kind, phrase), Misread)
