"""A text before and after a change: what was edited, what the new text says, and why a change was refused.

Every change is proved before it is given back: the new text is read, its skeleton must be the one that was meant, and it may have
no error that the old one had not.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import wraps
from typing import Any, ParamSpec

from unpin.base.diagnostic import Diagnostic, Place
from unpin.base.record import record
from unpin.read.edits.edit import Edit, apply, inverse
from unpin.read.edits.entries import Unfit
from unpin.read.edits.layout import Unreadable, layout, plain
from unpin.read.edits.places import Page, Used, fresh_errors, page
from unpin.read.reader import Reading, read_text

P = ParamSpec("P")


@record
class Revision:
    """`text` with its `reading`: the new one, or the old one where the change was `refused`. `edits` are of the old text, `undo`
    of the new one. `dependants`: what was taken out as well, or, when it was refused, what stands in the way. `notes`: what a
    person may want to look at."""

    text: str
    reading: Reading
    edits: tuple[Edit, ...] = ()
    undo: tuple[Edit, ...] = ()
    refused: tuple[Diagnostic, ...] = ()
    dependants: tuple[Used, ...] = ()
    notes: tuple[Diagnostic, ...] = ()

    @property
    def made(self) -> bool:
        return not self.refused


class Refused(Exception):
    """A change that is not made, with the reasons."""

    def __init__(self, *reasons: Diagnostic, dependants: tuple[Used, ...] = ()):
        self.reasons, self.dependants = reasons, dependants
        super().__init__(", ".join(d.code for d in reasons))


def refusal(code: str, path: Iterable[str] = (), hint: str = "", place: Place | None = None, **arguments: Any) -> Refused:
    """What to raise for one reason."""
    return Refused(Diagnostic("error", code, place, " > ".join(path), arguments, hint))


def revising(make: Callable[P, Revision]) -> Callable[P, Revision]:
    """Make of a function that raises one that gives back the old text with the reasons. Its first argument is the text."""

    @wraps(make)
    def revise(*arguments: P.args, **named: P.kwargs) -> Revision:
        try:
            return make(*arguments, **named)
        except Refused as refused:
            reasons, dependants = refused.reasons, refused.dependants
        except Unfit:
            reasons, dependants = (Diagnostic("error", "edit.layout", hint="edit.cure.layout"),), ()
        except Unreadable:
            reasons, dependants = (), ()
        text = str(arguments[0])
        reading = read_text(text)
        errors = tuple(d for d in reading.diagnostics if d.is_error)
        return Revision(text, reading, refused=reasons or (Diagnostic("error", "edit.skeleton"), *errors), dependants=dependants)

    return revise


def finish(p: Page, edits: Iterable[Edit], meant: Any, *, faulty: bool = False, dependants: tuple[Used, ...] = (),
           notes: tuple[Diagnostic, ...] = ()) -> Revision:
    """The revision that some edits of the page's text make, or Refused. `meant`: the skeleton that must come out, None where that is
    checked in another way; `faulty`: take a text with new errors too, as long as its skeleton can be read."""
    raw = p.sheet.raw
    made = p.sheet.edits(edits)
    text = apply(raw, made)
    try:
        after = page(text)
    except Unreadable:
        raise Unfit from None
    if meant is not None and plain(after.top) != meant:
        raise Unfit
    errors = fresh_errors(p.reading, after.reading)
    if errors and not faulty:
        raise Refused(*errors, dependants=dependants)
    return Revision(text, after.reading, made, inverse(raw, made), dependants=dependants, notes=notes)


def skeleton(text: str) -> Any:
    """What is written in a text, without how. Raises Unreadable."""
    return plain(layout(text))
