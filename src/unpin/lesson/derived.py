"""From the forces found to what was asked: components of a force along a member, what a pin passes on, size and slope. Every
number in a box that no sum gave stands here first, with the reason why."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from unpin.base.units import FORCE
from unpin.exact.number import Number, sign
from unpin.lesson import conditions, cords, phrases, terms
from unpin.lesson.formula import Formula, Letter, Over, Relation, Root, Signed, Squared, Sum
from unpin.lesson.isolate import member_kind, member_names
from unpin.lesson.known import is_known
from unpin.lesson.nodes import Block, Line, Node, Paragraph, Text, Working, sentences
from unpin.lesson.outcome import answer_letter, ratio, repeats
from unpin.lesson.sheet import Sheet, symbol
from unpin.lesson.statement import short
from unpin.model.action import Action, FreeBody, Structure, Symbol
from unpin.model.answer import Answer, Component
from unpin.model.directions import X, Y
from unpin.model.equation import Equation, Functional
from unpin.model.problem import GROUND, Asked
from unpin.route.plan import Route
from unpin.route.worked import Worked
from unpin.statics.equation import write
from unpin.statics.goals import actions_behind, goals
from unpin.statics.names import part_of


def chapter(worked: Worked, route: Route, sheet: Sheet) -> tuple[Node, ...]:
    """What every box holds besides results of the sums of `route`; nothing when that is nothing."""
    summed = {u for s in worked.recommended.steps for u in s.finds} | _seen(worked)
    shown = {u for s in route.steps for u in s.finds} | _seen(worked)
    nodes: list[Node] = []
    for answer in (one for a in worked.answers if a.found for one in _apart(a, worked.structure)):
        seen = set(goals(worked.structure, answer.asked)) <= summed
        structure = worked.structure if seen else worked.apart
        nodes += _answer(answer, structure, worked, shown if seen else set(worked.values), sheet, len(nodes))
    return (Block("solve", tuple(nodes)),) if nodes else ()


def _seen(worked: Worked) -> set[str]:
    return {u for insight in worked.structure.zero for u in insight.finds}


def _apart(answer: Answer, structure: Structure) -> list[Answer]:
    """An answer to one thing; of "everything" the reactions that no sum gives by a name of their own."""
    if answer.asked.kind != "everything":
        return [answer]
    out = []
    for name in dict.fromkeys(c.symbol.base for c in answer.components if not c.unknown):
        asked = Asked("reaction", subject=name, point=name)
        out.append(Answer(asked, tuple(c for c in answer.components if not c.unknown and c.symbol.base == name)))
    return out


def _answer(answer: Answer, structure: Structure, worked: Worked, shown: set[str], sheet: Sheet, number: int) -> list[Node]:
    asked = answer.asked
    if asked.kind == "ratio":
        (c,) = answer.components
        lines = (Line("result", ratio(c, answer, sheet)),)
        return [Paragraph(Text("found.for", {"what": short(asked, worked.problem)}), "why"), Working(f"found-{number}", 0, "", None, lines)]
    acting = [a for a in actions_behind(structure, asked) if a.kind == "force"]
    missing = [g for g in goals(structure, asked) if g not in shown]
    said = [Text("found.for", {"what": short(asked, worked.problem)})]
    if missing:
        return [Paragraph(sentences(*said, Text("found.elsewhere", {"missing": phrases.unknowns(structure, missing)})), "why")]
    lines: list[Line] = []
    for c in answer.components:
        if c.dimension != FORCE or c.unknown in shown or repeats(c, answer):
            continue
        if c.symbol.sub in ("x", "y"):
            lines += _component(c, answer, acting, worked, sheet)
        elif c.sense != "zero":
            lines += _size(c, answer, acting, worked, sheet)
    if not lines:
        opened = not acting and asked.kind == "reaction" and any(o.connection.points[0] == asked.point for o in worked.opened)
        return [Paragraph(Text("found.open", {"point": phrases.letter_like(asked.point)}), "why")] if opened else []
    if structure is worked.apart and structure is not worked.structure:
        unknown = [u for u in goals(structure, asked) if u not in {x for s in worked.recommended.steps for x in s.finds}]
        said += [Text("found.together", {"unknowns": phrases.unknowns(structure, unknown)})] if unknown else []
    said += _reasons(asked, acting, structure, sheet)
    return [Paragraph(sentences(*said), "why"), Working(f"found-{number}", 0, asked.part, None, tuple(lines))]


def _component(c: Component, answer: Answer, acting: list[Action], worked: Worked, sheet: Sheet) -> list[Line]:
    """One component as the sum of what acts there: in letters, in numbers, result."""
    letter = answer_letter(c, answer)
    total = _along(c.symbol.sub, acting, answer.asked)
    written = terms.in_symbols(total, sheet).left
    if len(total.terms) == 1 and is_known(total.terms[0].action) and letter == symbol(total.terms[0].action.symbol):
        return []
    if written == Sum((Signed(1, letter, total.terms[0].action.id),) if total.terms else ()) or not total.terms:
        # The component of a single force that is drawn along this axis: its sum has given it.
        return [] if total.terms else [Line("result", Relation(letter, sheet.result(c.value, FORCE)))]
    lines = [Line("write", Relation(letter, written)),
             Line("substitute", Relation(letter, terms.in_numbers(total, sheet, worked.values).left)),
             Line("result", Relation(letter, sheet.result(c.value, FORCE)))]
    if terms.printed(lines[1].formula) in (terms.printed(lines[0].formula), terms.printed(lines[2].formula)):
        del lines[1]
    return lines


def _along(axis: str, acting: Iterable[Action], asked: Asked) -> Equation:
    """The forces behind an answer along x or y as they act on the body that is asked about."""
    acting = tuple(acting)
    functional = Functional("along", direction=X if axis == "x" else Y)
    made = write(FreeBody(asked.part or asked.point, "part", (), acting), functional)
    turned = tuple(replace(t, sign=-t.sign, coefficient=-t.coefficient) if _stands_on_other(t.action, asked) else t for t in made.terms)
    return replace(made, terms=turned)


def _stands_on_other(action: Action, asked: Asked) -> bool:
    """Whether only the partner of the force is there: on the ground, or on the neighbour of the part asked about."""
    return action.on == GROUND or (asked.kind == "pin" and action.on != asked.part)


def _size(c: Component, answer: Answer, acting: list[Action], worked: Worked, sheet: Sheet) -> list[Line]:
    """The size from two components square to each other, and the slope they make."""
    letter = answer_letter(c, answer)
    result = Line("result", Relation(letter, sheet.size(c.value, FORCE)))
    legs: list[tuple[Letter, Number]] = []
    lines: list[Line] = []
    for axis in ("x", "y"):
        total = _along(axis, acting, answer.asked)
        value = sum((t.coefficient * terms.value_of(t.action, worked.values) for t in total.terms), start=0 * c.value)
        if sign(value) == 0:
            continue
        named = part_of(Symbol(c.symbol.base, axis, c.symbol.on), worked.problem, held=answer.asked.kind != "pin")
        leg = Component(named, value, FORCE, "")
        own = next((x for x in answer.components if x.symbol.sub == axis and x.symbol.base == c.symbol.base), None)
        if own is None:
            lines += _component(leg, answer, acting, worked, sheet)
        legs.append((answer_letter(leg, answer), worked.values.get(own.unknown, value) if own else value))
    if len(legs) < 2:
        return [*lines, result]
    amounts = [sheet.reused(v, sheet.units[FORCE]) for _, v in legs]
    if conditions.is_long(result.formula.right):
        return [*lines, Line("write", Relation(letter, _root(x for x, _ in legs)))]
    lines += [Line("write", Relation(letter, _root(x for x, _ in legs))), Line("substitute", Relation(letter, _root(amounts))), result]
    if c.angle is not None and c.lean is None:
        acute = min(abs(c.angle), 180 - abs(c.angle))
        across, upright = (sheet.reused(abs(v), sheet.units[FORCE]) for _, v in legs)
        lines.append(Line("solve", Relation(Over(upright, across), sheet.function("tan", phrases.angle_amount(acute, sheet)))))
    return lines


def _root(legs: Iterable[Formula]) -> Root:
    return Root(Sum(tuple(Signed(1, Squared(leg)) for leg in legs)))


def _reasons(asked: Asked, acting: list[Action], structure: Structure, sheet: Sheet) -> list[Text]:
    out = []
    for a in acting:
        point = {"point": phrases.letter_like(a.point or asked.point)}
        if a.load is not None:
            out.append(Text("found.pin_load", {**point, "load": terms.name_of(a, sheet), "part": phrases.thing(asked.part)}))
        elif a.sense != "tension":
            continue
        elif cords.find(structure.problem, a.source):
            out.append(Text("found.cord", {**point, "letter": symbol(a.symbol)}))
        else:
            out.append(_member(a, asked, structure, point))
    return list({(t.code, repr(t.arguments)): t for t in out}.values())


def _member(a: Action, asked: Asked, structure: Structure, point: dict) -> Text:
    first, second = (x.point for x in structure.actions if x.source == a.source and x.symbol == a.symbol)
    kind = member_kind(structure, a.source)
    said = {**point, "member": Text(f"thing_capital.{kind}", member_names(structure, a.source)), "letter": symbol(a.symbol),
            "a": phrases.letter_like(first), "b": phrases.letter_like(second)}
    if a.on == GROUND:
        return Text("found.ground", said)
    if _stands_on_other(a, asked):
        return Text("found.two_force", said)
    return Text("found.pulls", {**said, "part": phrases.thing(asked.part or a.on)})

