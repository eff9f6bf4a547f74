"""What a solution in letters rests on: the conditions under which its senses and its contacts are as in the figure."""

from __future__ import annotations

from dataclasses import replace

from unpin.base.units import FORCE, LENGTH, NUMBER
from unpin.exact.holds import Condition, condition, condition_of
from unpin.exact.homogeneous import homogeneous
from unpin.exact.lettered import Lettered, is_lettered
from unpin.exact.letters import Letters
from unpin.exact.number import Number, sign
from unpin.lesson import phrases
from unpin.lesson.formula import Amount, Letter, Relation, Root, Signed, Squared, Sum
from unpin.lesson.nodes import Argument, Bullets, Node, Paragraph, Result, Text, sentences
from unpin.lesson.sheet import Sheet, symbol
from unpin.model.answer import Component
from unpin.model.problem import Problem
from unpin.route.worked import Worked
from unpin.statics.contacts import Opened
from unpin.words import numbers


def letters_of(problem: Problem) -> Letters | None:
    """The letters without a value of a problem; None where every letter has one."""
    return next((x.value.value.letters for x in problem.letters if x.drawn is not None), None)


def relation(found: Condition, sheet: Sheet) -> Relation:
    """`2 a > b`."""
    greater, less = (Amount(numbers.in_expression(numbers.rounded_in(e, sheet.style), sheet.style)) for e in (found.greater, found.less))
    return Relation(greater, less, ">")


def where(sense: Text, value: Number, sheet: Sheet) -> Text:
    """A sense, with the condition under which it is this one."""
    found = condition(value)
    return Text("sense.where", {"sense": sense, "condition": relation(found, sheet)}) if found else sense


def so_far_as(said: Text, value: Number, sheet: Sheet) -> Text:
    """A sentence on a sense, with another on when it is so."""
    found = condition(value)
    return sentences(said, Text("condition.sense", {"condition": relation(found, sheet)})) if found else said


def balance(work: Number, sheet: Sheet) -> Text | None:
    """Where loads in letters do no work in a motion although in general they do; None where they always do."""
    found = condition(work)
    return Text("sound.balances_where", {"condition": replace(relation(found, sheet), sign="=")}) if found else None


LONG = 45
"""A resultant that takes more signs than this says less than its two components."""


def is_long(amount: Amount) -> bool:
    return amount.printed.shape is not None and len(amount.printed.digits) > LONG


def by_components(c: Component, letter: Letter) -> Result:
    """A resultant that is left as the root of its components squared."""
    legs = tuple(Signed(1, Squared(replace(letter, sub=letter.sub + axis))) for axis in "xy")
    upward, right = (c.angle or 0) > 0, abs(c.angle or 0) < 90
    sense = Text(f"sense.{'up' if upward else 'down'}_{'right' if right else 'left'}_plain")
    return Result(Relation(letter, Root(Sum(legs))), Text("answer.as_drawn", {"sense": sense}), phrases.arrow(c.sense, c.angle))


def chapter(worked: Worked, sheet: Sheet) -> tuple[Node, ...]:
    """Contacts, cords and lengths that are as in the figure only under a condition, and the units of measured numbers."""
    letters = letters_of(worked.problem)
    if letters is None:
        return ()
    said = [Text(f"condition.{code}", {**arguments, "condition": relation(found, sheet)}) for code, arguments, found in _found(worked, letters)]
    said = list({(t.code, repr(t.arguments)): t for t in said}.values())
    nodes: list[Node] = [Paragraph(Text("condition.intro")), Bullets(tuple(said))] if said else []
    if any(measured(c.value, c.dimension) for a in worked.answers for c in a.components):
        units = {"length": sheet.units[LENGTH].symbol, "force": sheet.units[FORCE].symbol}
        nodes.append(Paragraph(Text("condition.units", units)))
    return tuple(nodes)


def opening(opened: tuple[Opened, ...], sheet: Sheet) -> tuple[Text, ...]:
    """For each contact that lets go at the size that is drawn, the condition under which it does."""
    found = ((o, condition(o.needed)) for o in opened)
    return tuple(Text("condition.opened", {"point": phrases.letter_like(o.connection.points[0]), "condition": relation(c, sheet)}) for o, c in found if c)


def measured(value: Number, dimension) -> bool:
    """Whether numbers that have a unit stand among the letters of a value."""
    return is_lettered(value) and isinstance(value, Lettered) and dimension != NUMBER and not homogeneous(value, dimension)


def _found(worked: Worked, letters: Letters):
    """Code, arguments and condition of everything that rests on the size that is drawn."""
    for o in worked.opened:
        found = condition(o.needed)
        if found:
            yield "opened", {"point": phrases.letter_like(o.connection.points[0])}, found
    values = worked.values or {}
    for u in worked.structure.unknowns:
        found = condition(values[u.id]) if u.id in values and (u.push_only or u.drives == "cord") else None
        if found is None:
            continue
        if u.push_only and sign(values[u.id]) > 0:
            yield "contact", {"point": phrases.letter_like(worked.structure.action(u.actions[0]).point)}, found
        elif u.drives == "cord":
            arguments: dict[str, Argument] = {"letter": symbol(u.symbol)}
            yield "cord" if sign(values[u.id]) > 0 else "slack", arguments, found
    for p in letters.positive:
        found = condition_of(p, letters)
        if found:
            yield "length", {}, found
