"""The house style of a problem at the edge of the program: looked for or named, put on, and what there is to say about it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import TYPE_CHECKING

from unpin.base.diagnostic import Diagnostic
from unpin.model.house import PLAIN, House
from unpin.model.problem import Problem

if TYPE_CHECKING:
    from pathlib import Path

NONE = "none"
"""What is said in the place of a file to have no house style at all."""


def style_for(problem: str | Path, said: str | Path = "", opened: str | Path = "") -> tuple[House, tuple[Diagnostic, ...]]:
    """The house style for a problem file, and the remarks on it: the file that is `said`, `none` for none, "" for what is found beside the
    problem or above it up to the folder that was `opened` (by default the current one). A note says which file was used."""
    from unpin.read.house_file import find_house

    path = None if said == NONE else said or find_house(problem, opened)
    if path is None:
        return PLAIN, ()
    from unpin.read.house import read_house
    from unpin.words.sentences import languages

    found = read_house(_short(path), languages())
    if not found.sound:
        return found.house, found.diagnostics
    used = Diagnostic("note", "house.used", arguments={"file": found.house.source})
    return found.house, (*found.diagnostics, used)


def _short(path: str | Path) -> str:
    """From the current folder where it lies in that."""
    from pathlib import Path

    try:
        return str(Path(path).relative_to(Path.cwd()))
    except ValueError:
        return str(path)


def put_on(problem: Problem, house: House, language: str = "") -> tuple[Problem, tuple[Diagnostic, ...]]:
    """The problem in its house, and a remark for every kind of name that it cannot have here. `language`: instead of the house's."""
    made = problem.in_house(replace(house, language=language) if language else house)
    return made, tuple(_clashes(made)) if house.names else ()


def _clashes(problem: Problem) -> Iterable[Diagnostic]:
    from unpin.statics.contacts import settle
    from unpin.statics.inspect import inspect
    from unpin.statics.names import clashes

    for kind, (first, second) in clashes(inspect(settle(problem)[0])).items():
        yield Diagnostic("warning", "house.clash", path=f"names > {kind}", arguments={"first": first, "second": second})
