"""Where an idea stands on the way of a solution: the act it belongs to, the sum in hand, and how many unknowns are found by then."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from unpin.lesson.board import LEAD, Idea, Scene
from unpin.lesson.formula import Header, Letter, Relation
from unpin.lesson.formula import letter as letter_of
from unpin.lesson.nodes import Line, Paragraph, Text

STATIONS = ("state", "plan", "isolate", "sum", "result", "across", "conclude", "compare")
"""The acts of a solution in their order; from `isolate` to `across` they come round again for each body."""

_BY_SECTION = {"problem": "state", "sound": "state", "exercise": "state", "plan": "plan", "found": "conclude", "answers": "conclude", "back": "conclude",
               "check": "conclude", "ways": "compare"}
_BY_KIND = {"body": "isolate", "diagram": "isolate", "inspection": "isolate", "count": "isolate", "result": "result", "pair": "across"}
_IN_HAND = ("header", "write", "substitute", "collect", "solve", "result", "check")
"""Kinds of idea that speak of the sum whose header stands above them. While it is still being chosen its name would be the answer."""


def placed(scenes: Sequence[Scene], ideas: Iterable[Idea]) -> tuple[Idea, ...]:
    """The ideas with their station, the sum they are part of, and the number of unknowns found up to and with each."""
    out: list[Idea] = []
    names: dict[Header, Text] = {}
    sum_: Text | None = None
    found: set[Letter] = set()
    for idea in ideas:
        section = scenes[idea.scene].section
        header = next((x for x in idea.shows if isinstance(x, Header)), None)
        if header is not None:
            sum_ = names.setdefault(header, _named(header))
        elif not out or idea.kind not in _IN_HAND or _opens(idea) or out[-1].scene != idea.scene and not any(isinstance(x, Line) for x in idea.shows):
            sum_ = None
        if section.kind == "body":
            found.update(_finds(idea))
        out.append(replace(idea, station=_station(section.kind, idea, out[-1].station if out else ""), place=sum_, found=len(found)))
    return tuple(out)


def _station(section: str, idea: Idea, before: str) -> str:
    if section in _BY_SECTION:
        return _BY_SECTION[section]
    if idea.kind == "space":
        return before or "state"
    if idea.kind == "result" and _opens(idea):
        return "sum"
    return _BY_KIND.get(idea.kind, "sum")


def _opens(idea: Idea) -> bool:
    """Whether it leads from results to more lines, rather than say what a sign means."""
    return idea.kind == "result" and any(isinstance(x, Paragraph) and x.role != "sense" for x in idea.shows if x != LEAD)


def _finds(idea: Idea) -> Iterable[Letter]:
    for line in idea.shows:
        if isinstance(line, Line) and line.name == "result" and isinstance(line.formula, Relation) and isinstance(line.formula.left, Letter):
            yield line.formula.left


def _named(header: Header) -> Text:
    """The sum as one says it."""
    if header.kind == "moments":
        return Text("check.moments", {"point": letter_of(header.sub)})
    return Text(f"check.forces_{header.sub if header.sub in ('x', 'y') else 'slanted'}")
