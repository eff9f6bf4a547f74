"""Message catalogues: every sentence a person reads, by code, one folder a language, one file a subject.

A code is `file.name` (`diagnostics.unknown_point`). Files are read when first needed. A sentence may hold
`{placeholders}`; `say` puts text in, `pieces` splits it so that a renderer can set numbers and symbols as mathematics.
Where the argument `count` matters to the grammar, a sentence has forms (`name.one`, `name.other`; see `words.plurals`).

>>> say("diagnostics.kind.error")
'error'
"""

from __future__ import annotations

import os
import tomllib
from functools import cache
from string import Formatter

_CATALOGUES = os.path.join(os.path.dirname(__file__), "catalogue")


@cache
def languages() -> tuple[str, ...]:
    """The codes of the languages there are."""
    return tuple(sorted(entry.name for entry in os.scandir(_CATALOGUES) if entry.is_dir()))


@cache
def catalogue(subject: str, language: str = "en") -> dict[str, str]:
    """All sentences of one subject, flattened: nested tables become dotted names."""
    with open(os.path.join(_CATALOGUES, language, f"{subject}.toml"), "rb") as file:
        return dict(_flatten(tomllib.load(file)))


def _flatten(table: dict, prefix: str = ""):
    for key, value in table.items():
        if isinstance(value, dict):
            yield from _flatten(value, f"{prefix}{key}.")
        else:
            yield prefix + key, value


def template(code: str, language: str = "en", count: object = None) -> str:
    """The sentence of a code, in the form that goes with the number. KeyError if there is none."""
    subject, _, name = code.partition(".")
    known = catalogue(subject, language)
    if isinstance(count, int) and f"{name}.other" in known:
        from unpin.words.plurals import category

        return known.get(f"{name}.{category(count, language)}", known[f"{name}.other"])
    return known[name]


@cache
def pieces(code: str, language: str = "en", count: object = None) -> tuple[tuple[str, str], ...]:
    """The sentence as (literal, placeholder) pairs in order; the last placeholder may be empty."""
    return tuple((literal, name or "") for literal, name, _, _ in Formatter().parse(template(code, language, count)))


def say(code: str, language: str = "en", /, **arguments: object) -> str:
    """The sentence with its arguments as plain text."""
    return template(code, language, arguments.get("count")).format(**arguments)
