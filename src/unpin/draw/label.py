"""Labels: short lines of text in runs, and how wide they come out in the shipped typeface."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from unpin.draw import fonts

RunStyle = Literal["upright", "italic", "bold", "sub", "subitalic"]
SUB_SIZE, SUB_DROP = 0.78, 0.18
"""Size of a subscript and how far it stands below the line, both of the label's size."""


@dataclass(frozen=True)
class Run:
    """A stretch of text in one style; `sub` and `subitalic` are subscripts."""

    text: str
    style: RunStyle = "upright"

    @property
    def is_sub(self) -> bool:
        return self.style in ("sub", "subitalic")


Label = tuple[Run, ...]


def upright(text: str) -> Label:
    return (Run(text, "upright"),)


def italic(text: str) -> Label:
    return (Run(text, "italic"),)


def symbol(base: str, sub: str = "") -> Label:
    """A quantity symbol with its subscript, both italic (a subscript of a point or an axis is itself a symbol)."""
    return (Run(base, "italic"), Run(sub, "subitalic")) if sub else (Run(base, "italic"),)


def plain(label: Iterable[Run]) -> str:
    """The label as a string, for spoken names."""
    return "".join(run.text for run in label)


@lru_cache(maxsize=4096)
def width(label: Label, size: float) -> float:
    """Advance width in pt at `size` pt. A character the typeface lacks counts as a wide one."""
    total = 0.0
    for run in label:
        face = "text-italic" if run.style in ("italic", "subitalic") else "text-bold" if run.style == "bold" else "text"
        table = fonts.advances(face)
        share = sum(table.get(c, 900) for c in run.text) / 1000
        total += share * size * (SUB_SIZE if run.is_sub else 1)
    return total


def reach(label: Label, size: float) -> tuple[float, float]:
    """How far its box reaches above and below its line, in pt: the ascent and descent of the typeface, as a browser counts
    them, with or without letters that go so far."""
    below = fonts.DESCENT
    if any(run.is_sub for run in label):
        below = max(below, SUB_DROP + SUB_SIZE * fonts.DESCENT)
    return fonts.ASCENT * size, below * size


def height(label: Label, size: float) -> float:
    return sum(reach(label, size))
