"""Message catalogues: every sentence a person reads, by code, one folder a language, one file a subject.

A code is `file.name` (`diagnostics.unknown_point`). Files are read, table by table, when first needed. A sentence may hold
`{placeholders}`; `say` puts text in, `pieces` splits it so that a renderer can set numbers and symbols as mathematics.
Where the argument `count` matters to the grammar, a sentence has forms (`name.one`, `name.other`; see `words.plurals`).

>>> say("diagnostics.kind.error")
'error'
"""

from __future__ import annotations

import os
import re
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
    return dict(_flatten(tomllib.loads(_text(subject, language))))


@cache
def sentence(code: str, language: str = "en") -> str | None:
    """The sentence of a code, None if there is none. Of its file only the table in which it stands is read: most of a lesson's
    sentences are for other problems."""
    subject, _, name = code.partition(".")
    tables = _tables(subject, language)
    table = name
    while table:
        table = table.rpartition(".")[0]
        found = _table(subject, language, table).get(name[len(table) + 1 if table else 0 :]) if table in tables else None
        if found is not None:
            return found
    return None


def template(code: str, language: str = "en", count: object = None) -> str:
    """The sentence of a code, in the form that goes with the number. KeyError if there is none."""
    if isinstance(count, int) and (other := sentence(f"{code}.other", language)) is not None:
        from unpin.words.plurals import category

        form = sentence(f"{code}.{category(count, language)}", language)
        return other if form is None else form
    found = sentence(code, language)
    if found is None:
        raise KeyError(code)
    return found


def _text(subject: str, language: str) -> str:
    with open(os.path.join(_CATALOGUES, language, f"{subject}.toml"), encoding="utf-8") as file:
        return file.read()


@cache
def _tables(subject: str, language: str) -> dict[str, str]:
    """The text of each table of a file by its name; "" is what stands above the first."""
    above, *rest = re.split(r"^\[(.+)\]$", _text(subject, language), flags=re.MULTILINE)
    return {"": above, **dict(zip(rest[::2], rest[1::2]))}


@cache
def _table(subject: str, language: str, table: str) -> dict[str, str]:
    return dict(_flatten(tomllib.loads(_tables(subject, language)[table])))


def _flatten(table: dict, prefix: str = ""):
    for key, value in table.items():
        if isinstance(value, dict):
            yield from _flatten(value, f"{prefix}{key}.")
        else:
            yield prefix + key, value


@cache
def pieces(code: str, language: str = "en", count: object = None) -> tuple[tuple[str, str], ...]:
    """The sentence as (literal, placeholder) pairs in order; the last placeholder may be empty."""
    return tuple((literal, name or "") for literal, name, _, _ in Formatter().parse(template(code, language, count)))


def say(code: str, language: str = "en", /, **arguments: object) -> str:
    """The sentence with its arguments as plain text."""
    return template(code, language, arguments.get("count")).format(**arguments)
