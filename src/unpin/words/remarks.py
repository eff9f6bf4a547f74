"""Diagnostics as lines of text: `file:line:column: severity: path: sentence`, and the cure on a second line.

>>> from unpin.base.diagnostic import Diagnostic, Place
>>> print(render(Diagnostic("error", "read.unknown_point", Place(14, 9, 10, "awning.yaml"), "loads > 2",
...                         {"name": "F", "nearest": "E"}, "hint.nearest")))
awning.yaml:14:9: error: loads > 2: point "F" is not known
  hint: nearest known is "E"
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from unpin.base.diagnostic import Diagnostic
from unpin.words.joining import joined
from unpin.words.sentences import say


def render(diagnostic: Diagnostic, language: str = "en") -> str:
    """The whole remark, with its hint on a line of its own."""
    d = diagnostic
    place = f"{d.place.file}:{d.place.line}:{d.place.column}: ".lstrip(":") if d.place else ""
    line = say(
        "diagnostics.shape.line",
        language,
        place=place,
        severity=say(f"diagnostics.kind.{d.severity}", language),
        path=f"{d.path}: " if d.path else "",
        sentence=sentence(d, language),
    )
    cure = hint(d, language)
    return f"{line}\n{say('diagnostics.shape.hint', language, sentence=cure)}" if cure else line


def sentence(diagnostic: Diagnostic, language: str = "en") -> str:
    """What was found and what was wanted, without place and path."""
    return joined(say(f"diagnostics.{diagnostic.code}", language, **_words(diagnostic.arguments, language)), language)


def hint(diagnostic: Diagnostic, language: str = "en") -> str:
    """The cure, "" if there is none to offer."""
    if not diagnostic.hint:
        return ""
    return joined(say(f"diagnostics.{diagnostic.hint}", language, **_words(diagnostic.arguments, language)), language)


def _words(arguments: Mapping[str, Any], language: str) -> dict[str, Any]:
    return {name: _list(value, language) if isinstance(value, tuple) else value for name, value in arguments.items()}


def _list(things: tuple, language: str) -> str:
    """Things that were possible: codes after @ in words, everything else in quotes."""
    words = [
        say(f"diagnostics.{t[1:]}", language) if t.startswith("@") else say("diagnostics.shape.quoted", language, text=t)
        for t in things
    ]
    if len(words) < 2:
        return "".join(words)
    return say("diagnostics.shape.between", language).join(words[:-1]) + say("diagnostics.shape.last", language) + words[-1]
