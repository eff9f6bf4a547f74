"""Message catalogues: every sentence a person reads, by code, one folder a language, one file a subject.

A code is `file.name` (`diagnostics.unknown_point`). Files are read when first needed. A sentence may hold
`{placeholders}`; `fill` puts text in, `pieces` splits it so that a renderer can set numbers and symbols as mathematics.

>>> say("diagnostics.kind.error")
'error'
"""

from __future__ import annotations

import tomllib
from functools import cache
from importlib.resources import files
from string import Formatter


@cache
def catalogue(subject: str, language: str = "en") -> dict[str, str]:
    """All sentences of one subject, flattened: nested tables become dotted names."""
    text = files("unpin.words").joinpath("catalogue", language, f"{subject}.toml").read_text("utf-8")
    return dict(_flatten(tomllib.loads(text)))


def _flatten(table: dict, prefix: str = ""):
    for key, value in table.items():
        if isinstance(value, dict):
            yield from _flatten(value, f"{prefix}{key}.")
        else:
            yield prefix + key, value


def template(code: str, language: str = "en") -> str:
    subject, _, name = code.partition(".")
    return catalogue(subject, language)[name]


def pieces(code: str, language: str = "en") -> list[tuple[str, str]]:
    """The sentence as (literal, placeholder) pairs in order; the last placeholder may be empty."""
    return [(literal, name or "") for literal, name, _, _ in Formatter().parse(template(code, language))]


def say(code: str, language: str = "en", /, **arguments: object) -> str:
    """The sentence with its arguments as plain text."""
    return template(code, language).format(**arguments)
