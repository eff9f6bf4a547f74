"""The house style of a problem at the edge of the program: looked for or named, put on, and what there is to say about it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path

from unpin.base.diagnostic import Diagnostic
from unpin.model.house import PLAIN, House
from unpin.model.problem import Problem

NONE = "none"
"""What is said in the place of a file to have no house style at all."""


def style_for(problem: str | Path, said: str | Path = "", opened: str | Path = "") -> tuple[House, tuple[Diagnostic, ...]]:
    """The house style for a problem file, and the remarks on it: the file that is `said`, `none` for none, "" for what is found beside the
    problem or above it up to the folder that was `opened` (by default the current one). A note says which file was used."""
    from unpin.read.house import HouseReading, find_house, read_house
    from unpin.words.sentences import languages

    if said == NONE:
        return PLAIN, ()
    path = Path(said) if said else find_house(problem, opened)
    if path is None:
        return PLAIN, ()
    found: HouseReading = read_house(_short(path), languages())
    if not found.sound:
        return found.house, found.diagnostics
    used = Diagnostic("note", "house.used", arguments={"file": found.house.source})
    return found.house, (*found.diagnostics, used)


def _short(path: Path) -> str:
    """From the current folder where that is shorter."""
    try:
        return str(path.relative_to(Path.cwd()))
    except ValueError:
        return str(path)


def put_on(problem: Problem, house: House, language: str = "") -> tuple[Problem, tuple[Diagnostic, ...]]:
    """The problem in its house, and a remark for every kind of name that it cannot have here. `language`: instead of the house's."""
    from unpin.read.house import housed

    made = housed(problem, replace(house, language=language) if language else house)
    return made, tuple(_clashes(made)) if house.names else ()


def _clashes(problem: Problem) -> Iterable[Diagnostic]:
    from unpin.statics.contacts import settle
    from unpin.statics.inspect import inspect
    from unpin.statics.names import clashes

    for kind, (first, second) in clashes(inspect(settle(problem)[0])).items():
        yield Diagnostic("warning", "house.clash", path=f"names > {kind}", arguments={"first": first, "second": second})
