"""The last chapters: the boxed answers and the check that ends the lesson."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from unpin.base.units import NUMBER
from unpin.exact.number import Number, sign
from unpin.lesson import conditions, cords, phrases, terms
from unpin.lesson.formula import Letter, Over, Relation, letter
from unpin.lesson.nodes import Boxed, Bullets, Line, Listing, Node, Paragraph, Result, Text, Working
from unpin.lesson.sheet import Sheet, symbol
from unpin.lesson.statement import short
from unpin.model.answer import Answer, Component
from unpin.model.directions import axis_of
from unpin.model.equation import Equation
from unpin.model.problem import Problem
from unpin.route.worked import Worked


def answers(worked: Worked, sheet: Sheet, elsewhere: frozenset[str] = frozenset()) -> tuple[Node, ...]:
    """One box for each thing asked, in the order asked. `elsewhere`: forces of links that stand in a table instead."""
    slack = cords.slack(worked.structure, worked.values)
    warned = (Paragraph(Text("answer.slack", {"letters": Listing(tuple(slack))}), "remark"),) if slack else ()
    cordlike = frozenset(u.id for u in worked.structure.unknowns if u.drives == "cord")
    kept = (_without(a, elsewhere) for a in worked.answers)
    return (*warned, *(boxed(a, worked.problem, worked.values, sheet, cordlike) for a in kept if a is not None),
            *conditions.chapter(worked, sheet))


def _without(answer: Answer, elsewhere: frozenset[str]) -> Answer | None:
    """What is left of an answer to be boxed, None when nothing is."""
    if answer.asked.kind not in ("everything", "link") or answer.asked.component:
        return answer
    left = tuple(c for c in answer.components if c.unknown not in elsewhere)
    return replace(answer, components=left) if left or not answer.components else None


def boxed(answer: Answer, problem: Problem, values: Mapping[str, Number], sheet: Sheet, cordlike: frozenset[str] = frozenset()) -> Boxed:
    """The value with the sign it was worked with, then its true sense; where the sign is a minus, the size again with it.
    `cordlike`: unknowns that cannot push."""
    shown = tuple(c for c in answer.components if not repeats(c, answer))
    return Boxed(short(answer.asked, problem), tuple(_result(c, answer, values, sheet, c.unknown in cordlike) for c in shown), answer.found)


def repeats(c: Component, answer: Answer) -> bool:
    """Whether the size of a force says nothing that its components have not said: one of them is zero."""
    if c.symbol.sub or c.unknown or answer.asked.component:
        return False
    legs = [x for x in answer.components if x.symbol.base == c.symbol.base and x.symbol.on == c.symbol.on and x.symbol.sub in ("x", "y")]
    return len(legs) == 2 and any(sign(x.value) == 0 for x in legs)


def _result(c: Component, answer: Answer, values: Mapping[str, Number], sheet: Sheet, pulls_only: bool) -> Result:
    if answer.asked.kind == "ratio":
        return Result(ratio(c, answer, sheet), Text("sense.number"))
    worked = sheet.result(as_worked(c, values), c.dimension, c.unknown)
    sense = Text("sense.none") if c.sense == "zero" else phrases.sense(c.sense, c.angle, sheet, c.lean)
    sense = conditions.where(sense, c.value, sheet)
    if not c.unknown and not c.symbol.sub and conditions.is_long(worked):
        return conditions.by_components(c, answer_letter(c, answer))
    if worked.printed.sign < 0 and pulls_only:
        said = Text("answer.slack_size")
    elif worked.printed.sign < 0 and conditions.is_long(worked):
        said = Text("answer.against_long", {"sense": sense})
    elif worked.printed.sign < 0:
        said = Text("answer.against", {"size": sheet.size(c.value, c.dimension, c.unknown), "sense": sense})
    else:
        said = Text("answer.as_drawn", {"sense": sense})
    return Result(Relation(answer_letter(c, answer), worked), said, phrases.arrow(c.sense, c.angle))


def ratio(c: Component, answer: Answer, sheet: Sheet) -> Relation:
    """`P/W = 3/(2 tan α)`."""
    first, second = (letter(name) for name in c.symbol.base.split("/"))
    return Relation(Over(first, second), sheet.ratio(c.value) if c.dimension == NUMBER else sheet.result(c.value, c.dimension))


def as_worked(c: Component, values: Mapping[str, Number]) -> Number:
    """The value with the sign of the sums: of the arrow as drawn for an unknown; along +x or +y for what is added up from several."""
    return values.get(c.unknown, c.value)


def answer_letter(c: Component, answer: Answer) -> Letter:
    """The letter of a component; the part it acts on is in the heading already when one is asked."""
    own = c.symbol.on if answer.asked.kind == "everything" else ""
    return symbol(replace(c.symbol, on=own))


def check(worked: Worked, sheet: Sheet, last: Equation | None) -> tuple[Node, ...]:
    """One more sum, of the other kind (`last`), and the three ways the program has confirmed the result."""
    proof = worked.proof
    nodes: list[Node] = []
    if last is not None:
        nodes += closing(last, worked.values, sheet)
    nodes.append(Paragraph(Text("check.proof" if last is not None else "check.proof_alone")))
    confirmed = [Text("check.full_solve")]
    for name, made in (("balances", proof.balances), ("work", proof.work)):
        if made:
            confirmed.append(Text(f"check.{name}", {"count": len(made)}))
    nodes.append(Bullets(tuple(confirmed)))
    nodes.append(Paragraph(Text(f"check.rung_{worked.rung}")))
    return tuple(nodes)


def closing(e: Equation, values: Mapping[str, Number], sheet: Sheet) -> list[Node]:
    e = terms.oriented(e, sheet)
    lines = [Line("write", terms.in_symbols(e, sheet))]
    for name, relation in (("substitute", terms.in_numbers(e, sheet, values)), ("check", terms.evaluated(e, sheet, values))):
        if terms.printed(relation) != terms.printed(lines[-1].formula):
            lines.append(Line(name, relation))
    return [Paragraph(Text("check.intro", {"what": sum_phrase(e, sheet), "body": phrases.free_body(e.body)})),
            Working("sum-check", 0, e.body.name, terms.header(e.functional, sheet), tuple(lines)), Paragraph(Text("check.holds"))]


def sum_phrase(e: Equation, sheet: Sheet) -> Text:
    f = e.functional
    if f.kind == "about":
        if f.point:
            return Text("check.moments", {"point": phrases.letter_like(f.point)})
        return Text("check.moments_place", {"x": sheet.length(f.at[0]), "y": sheet.length(f.at[1])})
    return Text(f"check.forces_{axis_of(f.direction.vector) or 'slanted'}")


