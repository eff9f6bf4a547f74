"""Sentences of a lesson as plain strings, for formats that hold no mathematics: with signs, or spelt for a voice."""

from __future__ import annotations

from unpin.lesson.flow import flow
from unpin.lesson.nodes import Text
from unpin.render.maths import spoken
from unpin.render.maths import text as signs


def written(text: Text, language: str = "en", capital: bool = False) -> str:
    """With the signs of mathematics: `C_x = 660 N`; `capital`: see `flow`."""
    return "".join(p if isinstance(p, str) else signs.write(p) for p in flow(text, language, capital))


def said(text: Text, language: str = "en", capital: bool = False) -> str:
    """As a voice would say it."""
    return "".join(p if isinstance(p, str) else spoken.write(p, language) for p in flow(text, language, capital))
