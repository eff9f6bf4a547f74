"""From a text to a run of words and formulas: the one place that fills sentences, for every format alike."""

from __future__ import annotations

from unpin.lesson.formula import Amount, Formula, Function, Header, Letter, Over, Product, Relation, Root, Signed, Squared, Sum, children
from unpin.lesson.nodes import Argument, Listing, Text
from unpin.words.joining import before
from unpin.words.sentences import pieces, say

FORMULAS = (Amount, Letter, Function, Over, Root, Squared, Product, Signed, Sum, Relation, Header)


class _Name(str):
    """An author's own name for something: it is never given a capital."""


def flow(text: Text, language: str = "en", capital: bool = False) -> list[str | Formula]:
    """The sentence as a list of strings and formulas, neighbouring strings joined. A sentence begins with a capital, and anything
    else where `capital` says so, unless a name or a formula comes first."""
    run = list(_text(text, language))
    named = bool(run) and isinstance(run[0], _Name)
    out = _run_together(_joined(run), language)
    if out and isinstance(out[0], str) and not named and (capital or _opens_sentence(out)):
        out[0] = out[0][:1].upper() + out[0][1:]
    return out


def _text(text: Text, language: str):
    for literal, name in pieces(f"lesson.{text.code}", language, _count(text)):
        if literal:
            yield _APART if literal == ", " and name in ("y", "y1", "y2") and _decimal_comma(text) else literal
        if name:
            yield from _argument(text.arguments[name], language)


_APART = "; "
"""Between the two coordinates of a place whose numbers hold a comma themselves."""


def _decimal_comma(text: Text) -> bool:
    return any(isinstance(a, Amount) and a.printed.comma for a in text.arguments.values())


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
        yield _Name(argument)


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
            out.append(str(item) if isinstance(item, str) else item)
    return out


def _run_together(run: list[str | Formula], language: str) -> list[str | Formula]:
    """Words contracted as the language does it; before a symbol its first letter counts."""
    following = [_first_letter(after) for after in run[1:]] + [""]
    return [before(item, letter, language) if isinstance(item, str) else item for item, letter in zip(run, following)]


def _first_letter(item: str | Formula) -> str:
    while not isinstance(item, (str, Letter)):
        parts = children(item)
        if not parts:
            return ""
        item = parts[0]
    return item.base[:1] if isinstance(item, Letter) else ""


def _opens_sentence(run: list[str | Formula]) -> bool:
    """A run that ends with a stop is a sentence and begins with a capital."""
    return isinstance(run[-1], str) and run[-1].rstrip().endswith((".", "?", "!", ":"))
