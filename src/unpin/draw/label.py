"""Labels: short lines of text in runs, and how wide they come out in the shipped typeface."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from typing import Literal

from unpin.base.record import record
from unpin.draw import fonts

RunStyle = Literal["upright", "italic", "bold", "sub", "subitalic"]
SUB_SIZE, SUB_DROP = 0.78, 0.18
"""Size of a subscript and how far it stands below the line, both of the label's size."""


@record
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


_LOW = frozenset("(),;@Q[\\]_gjpqy{|}¡¦§±µ¶¸¿ÇçýþÿĄąĘęğģĮįĵĶķĻļŅņŊŋŖŗŞşŢţŲųŷβγζημξρςφχψϕ‖„†‡↑↓↕↺↻∑∓√∥≠≤≥△")
_LOW_ITALIC = frozenset("fzØßźżžſ")
TALL, HIGH, LOW, LEVEL = 0.93, 0.72, 0.22, 0.02
"""Reach of the ink above the line with accents of capitals and without, below it with descenders and without; of the size."""


@lru_cache(maxsize=4096)
def reach(label: Label, size: float) -> tuple[float, float]:
    """How far the ink of a label reaches above and below its line, in pt."""
    above = below = 0.0
    for run in label:
        share, drop = (SUB_SIZE, SUB_DROP) if run.is_sub else (1.0, 0.0)
        low = any(c in _LOW or (c in _LOW_ITALIC and "italic" in run.style) for c in run.text)
        tall = any("À" <= c <= "Ž" and c.isupper() or c == "√" for c in run.text)
        above = max(above, share * (TALL if tall else HIGH) - drop)
        below = max(below, drop + share * (LOW if low else LEVEL))
    return above * size, below * size


def height(label: Label, size: float) -> float:
    """From the top of its ink to the bottom."""
    return sum(reach(label, size))
