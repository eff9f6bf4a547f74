"""From a text to a run of words and formulas: the one place that fills sentences, for every format alike."""

from __future__ import annotations

from unpin.lesson.formula import (
    Amount,
    Formula,
    Function,
    Header,
    Letter,
    Over,
    Product,
    Relation,
    Root,
    Signed,
    Squared,
    Sum,
)
from unpin.lesson.nodes import Argument, Listing, Text
from unpin.words.sentences import pieces, say

FORMULAS = (Amount, Letter, Function, Over, Root, Squared, Product, Signed, Sum, Relation, Header)


def flow(text: Text, language: str = "en") -> list[str | Formula]:
    """The sentence as a list of strings and formulas, neighbouring strings joined."""
    return _joined(_text(text, language))


def _text(text: Text, language: str):
    for literal, name in pieces(f"lesson.{text.code}", language, _count(text)):
        if literal:
            yield literal
        if name:
            yield from _argument(text.arguments[name], language)


def _count(text: Text) -> int | None:
    """The number that decides the form of a sentence."""
    count = text.arguments.get("count")
    return count if isinstance(count, int) else None


def _argument(argument: Argument, language: str):
    if isinstance(argument, Text):
        yield from _text(argument, language)
    elif isinstance(argument, Listing):
        items = argument.items
        for k, item in enumerate(items):
            if k:
                yield _between(argument.join, k, len(items), language)
            yield from _argument(item, language)
    elif isinstance(argument, FORMULAS):
        yield argument
    else:
        yield str(argument)


def _between(join: str, place: int, count: int, language: str) -> str:
    """What stands before the item at `place`."""
    if join == "sentence":
        return " "
    if place < count - 1:
        return say("lesson.list.comma", language)
    return say(f"lesson.list.{join}.last_two" if count == 2 else f"lesson.list.{join}.last", language)


def _joined(run) -> list[str | Formula]:
    out: list[str | Formula] = []
    for item in run:
        if isinstance(item, str) and out and isinstance(out[-1], str):
            out[-1] += item
        else:
            out.append(item)
    if out and isinstance(out[0], str):
        out[0] = out[0][:1].upper() + out[0][1:] if _opens_sentence(out) else out[0]
    return out


def _opens_sentence(run: list[str | Formula]) -> bool:
    """A run that ends with a stop is a sentence and begins with a capital."""
    return isinstance(run[-1], str) and run[-1].rstrip().endswith((".", "?", "!", ":"))
