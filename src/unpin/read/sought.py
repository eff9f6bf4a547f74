"""Letters whose value is to be found: which load has one for its size, and how many times."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from unpin.base.units import NUMBER
from unpin.exact.expression import Apply, Expression, Name, names
from unpin.exact.number import Number, sign
from unpin.read.context import Context, Item
from unpin.read.phrases import Amount, LoadSaid
from unpin.read.quantities import measure

SIGNS = {"unknown", "to find", "?"}
"""What stands in the place of a value."""


def with_sought(known: Context, item: Item, said: LoadSaid) -> LoadSaid:
    """The phrase with the letter to be found that is its size; Dropped where the letter stands in another way."""
    inside = [n for a in said.amounts if a for n in names(a.expression) if n.name in known.sought]
    if not inside:
        return said
    letter = inside[0]
    known.used_letters.update(n.name for n in inside)
    known.refer(item, letter, "letters")
    c = said.clauses
    along = lies_along(said)
    if along and c.over:
        raise item.drop("read.sought_pressure", letter, name=letter.name, hint="hint.sought_pressure")
    if said.form not in ("plain", "weight", "varying") or said.label or len({n.name for n in inside}) > 1:
        raise item.drop("read.sought_elsewhere", letter, name=letter.name, hint="hint.sought")
    times = [_checked(known, item, amount, letter.name) for amount in said.amounts]
    if not any(map(sign, times)):
        raise item.drop("read.zero", said.amounts[0])
    kind = "spread" if along else "couple" if c.turn else "force"
    if known.sought[letter.name] not in ("", kind):
        raise item.drop("read.sought_two_kinds", letter, name=letter.name)
    known.sought[letter.name] = kind
    return replace(said, sought=letter.name, multiple=times[0], last=times[-1])


def lies_along(said: LoadSaid) -> bool:
    """Whether what is to be found lies along a member: it says from where to where, or on which member and not at which point."""
    c = said.clauses
    return bool(said.form == "varying" or c.span or c.per or c.over or (c.on and not c.at and not c.turn and said.form == "plain"))


def _checked(known: Context, item: Item, amount: Amount, letter: str) -> Number:
    """How many times the letter an amount is, not below zero. One end of a spread load may be zero."""
    if not names(amount.expression) and not sign(measure(known, item, amount)[0]):
        return Fraction(0)
    times = _times(known, item, amount.expression, letter)
    if times is None:
        raise item.drop("read.sought_linear", amount, name=letter, hint="hint.sought")
    if sign(times) < 0:
        raise item.drop("read.negative", amount, hint="hint.negative")
    return times


def _times(known: Context, item: Item, e: Expression, letter: str) -> Number | None:
    """How many times the letter an expression is, None where it is anything else."""
    if isinstance(e, Name):
        return Fraction(1)
    if not isinstance(e, Apply):
        return None
    held = [any(n.name == letter for n in names(o)) for o in e.operands]
    if e.operation in ("+", "-") and all(held):
        first, second = (_times(known, item, o, letter) for o in e.operands)
        if first is None or second is None:
            return None
        return first + second if e.operation == "+" else first - second
    if e.operation not in ("neg", "*", "/") or sum(held) != 1 or (e.operation == "/" and held[1]):
        return None
    mine = _times(known, item, e.operands[held.index(True)], letter)
    if mine is None:
        return None
    if e.operation == "neg":
        return -mine
    rest = e.operands[held.index(False)]
    value, dimension = measure(known, item, Amount(rest, rest.start, rest.end))
    if dimension != NUMBER:
        return None
    if e.operation == "*":
        return mine * value
    return mine / value if value != 0 else None
