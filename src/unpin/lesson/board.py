"""What the teaching view is made of: boards, and the ideas that fill them one after the other."""

from __future__ import annotations

from unpin.base.record import record
from unpin.lesson.formula import Formula, Letter
from unpin.lesson.nodes import Drawing, Line, Listing, Node, Section, Text
from unpin.model.action import Action

ARMS, RING = "~arms", "~ring "
"""Stand among the arrows of an idea: the distances of its figure, and, before the owner of the mark, the ring round a moment centre, which are
drawn with it."""

LEAD = "lead"
"""Stands among what an idea shows: the problem in the words of its author."""

Shown = Node | Line | Formula | Text | str


@record
class Scene:
    """One board: the chapter it is of, and its figure if it has one."""

    section: Section
    figure: Drawing | None = None


@record
class Idea:
    """`kind`: a step name (`write`, `count`, …), or figure, sound, plan, apart, pair, space. `shows`: what is added to the board: nodes of the
    tree, one Line of a working, its header, the text of a list item, LEAD, or a Text of its own. `arrows`: ids of the arrows that are drawn with
    it; `lit`: those it speaks of. `terms`: how many terms of its line are written by now, 0 for all. `aside`: what only the teacher is shown.
    `question`: asked before. `station`, `place`, `found`: where it stands on the way (see `lesson.stations`)."""

    kind: str
    scene: int
    shows: tuple[Shown, ...]
    arrows: tuple[str, ...] = ()
    lit: tuple[str, ...] = ()
    terms: int = 0
    aside: tuple[Node, ...] = ()
    question: Text | None = None
    station: str = ""
    place: Text | None = None
    found: int = 0


@record
class Told:
    """`end`: how many of the ideas are the lesson itself; those after it are the other ways, which are told if somebody asks."""

    scenes: tuple[Scene, ...]
    ideas: tuple[Idea, ...]
    end: int


def acting(figure: Drawing | None) -> list[Action]:
    """The actions that a figure shows, as its text alternative lists them."""
    if figure is None or figure.figure is None:
        return []
    return [f.arguments["action"] for f in figure.figure.facts() if "action" in f.arguments]


def rings(centre: Letter | None, figure: Drawing | None) -> tuple[str, ...]:
    """The ring round this moment centre, where the figure marks it: alone, or among the centres of several sums on one body."""
    if centre is None or figure is None or figure.figure is None:
        return ()
    said = figure.caption.arguments
    many = said.get("centres")
    letters = many.items if isinstance(many, Listing) else (said.get("centre"),)
    places = [f.arguments["centre"] for f in figure.figure.facts() if f.code == "centre"]
    owners = [p if isinstance(p, str) else f"centre {n}" if many else "centre" for n, p in enumerate(places, 1)]
    return tuple(f"{RING}{owner}" for letter, owner in zip(letters, owners) if letter == centre)
