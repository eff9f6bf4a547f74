"""A phrase turned, or a load carried to another point, by its words: only the direction, or only the name of the point, is another."""

from __future__ import annotations

import re
from collections.abc import Iterator

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


def carried(phrase: str, old: str, new: str) -> Iterator[str]:
    """The phrases of a load with one point's name put for another, for each place where the name stands."""
    for found in re.finditer(rf"(?<![\w']){re.escape(old)}(?![\w'])", phrase):
        made = phrase[: found.start()] + new + phrase[found.end() :]
        if _reads("load", made):
            yield made


def _reads(kind: str, phrase: str) -> bool:
    return not isinstance(parse_phrase(kind, phrase), Misread)
