"""What a class may be asked before an idea is shown: made from the sentences of the lesson itself, so that it asks for what they say."""

from __future__ import annotations

from unpin.lesson.formula import Formula, Letter, symbols
from unpin.lesson.nodes import Listing, Node, Paragraph, Text

_BY_SIGN = {"tension": "axial", "compression": "axial", "as_drawn": "way", "against": "way"}
"""Codes of what a sign says, and the question that they answer."""

_LEAVES = ("reason.leaves", "reason.only")


def letters(text: Text) -> set[Letter]:
    """The quantities that a sentence is about: not the points it names."""
    return {x for name in ("unknowns", "letter") for x in _letters(text.arguments.get(name))}


def _letters(argument) -> list[Letter]:
    if isinstance(argument, Listing):
        return [x for item in argument.items for x in _letters(item)]
    if isinstance(argument, Text):
        return [x for item in argument.arguments.values() for x in _letters(item)]
    return list(symbols(argument)) if argument is not None and not isinstance(argument, (str, int)) else []


def _sentences(node: Node) -> tuple[Text, ...]:
    """The sentences of a paragraph one by one."""
    if not isinstance(node, Paragraph):
        return ()
    held = node.text.arguments.get("all")
    return tuple(t for t in held.items if isinstance(t, Text)) if isinstance(held, Listing) else (node.text,)


def left_over(why: Node) -> list[Letter]:
    """The unknown that is left in a sum, by its reason."""
    return [x for t in _sentences(why) if t.code in _LEAVES for x in _letters(t.arguments["finds"])]


def of_sum(why: Node) -> Text | None:
    """Which point, or which sum, leaves the one unknown that the reason ends with."""
    said = _sentences(why)
    left = next((t for t in said if t.code in _LEAVES), None)
    if left is None:
        return None
    about = any(t.code.startswith("reason.moments") for t in said)
    return Text(f"teach.question.{'point' if about else 'sum'}", {"finds": left.arguments["finds"]})


def of_block(said: tuple[Node, ...]) -> Text | None:
    """Which sums are to be taken together, where none leaves a single unknown."""
    block = next((t for n in said for t in _sentences(n) if t.code == "reason.block"), None)
    return Text("teach.question.together", {"finds": block.arguments["finds"]}) if block is not None else None


def body(why: Node) -> object:
    """The body that a reason says its sum stands on, None where it says none."""
    return next((t.arguments["body"] for t in _sentences(why) if t.code == "reason.on_body"), None)


def centre(why: Node) -> Letter | None:
    """The point about which moments are taken, where the reason names one."""
    for text in _sentences(why):
        if text.code.startswith("reason.moments"):
            found: Formula | None = text.arguments.get("point") or text.arguments.get("centre")
            return found if isinstance(found, Letter) else None
    return None


def halves(sense: Paragraph) -> tuple[tuple[Text, ...], tuple[Text, ...]]:
    """What the sign says of the force itself, and what follows for the neighbour."""
    said = _sentences(sense)
    across = tuple(t for t in said if t.code in ("result.pair", "result.pair_couple"))
    return tuple(t for t in said if t not in across), across


def of_sense(sense: Paragraph) -> Text | None:
    """Tension or compression, or which way; nothing where the sign can say one thing only."""
    for text in _sentences(sense):
        kind = _BY_SIGN.get(text.code.removeprefix("result."))
        if kind:
            return Text(f"teach.question.{kind}", {"letter": text.arguments["letter"]})
    return None


def of_pair(across: tuple[Text, ...]) -> Text:
    """What acts on the neighbour."""
    return Text("teach.question.pair", {"other": across[0].arguments["other"]})
