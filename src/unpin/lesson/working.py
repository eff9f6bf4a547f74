"""One move of the route as it stands on paper: why this sum, the header, symbols, numbers, collected, result, sense, pair."""

from __future__ import annotations

import math
from collections.abc import Mapping

from unpin.exact.number import Number, approx, sign
from unpin.lesson import conditions, cords, phrases, terms, together
from unpin.lesson.formula import Product, Relation, Signed, Sum
from unpin.lesson.isolate import kind_of, member_kind, member_names
from unpin.lesson.nodes import Block, Line, Listing, Node, Paragraph, Text, Working, sentences
from unpin.lesson.sheet import Sheet, symbol
from unpin.model.action import Action, Structure
from unpin.model.directions import axis_of
from unpin.model.equation import Equation
from unpin.model.kinds import KINDS
from unpin.route.execute import dropping
from unpin.route.plan import Step
from unpin.statics.answers import drawn_alike, lean_of, sense_of
from unpin.statics.loads import resultant_of


def move(step: Step, structure: Structure, sheet: Sheet, known: Mapping[str, Number], number: int) -> tuple[Node, ...]:
    """The blocks of one step. `known`: values before it; `number`: of its first sum, counting from 1."""
    nodes: list[Node] = [Block("sum", why(step, structure, sheet, known))]
    workings = []
    for k, e in enumerate(step.equations):
        single = len(step.equations) == 1
        lines = sum_lines(e, sheet, known)
        if single:
            found = result_lines(step, structure, sheet)
            # `C_y = 0` is not written again as `C_y = 0 N`.
            bare = lines[-1].name == "collect" and lines[-1].formula.left == Sum((Signed(1, Product((found[0].formula.left,)), lines[-1].formula.left.terms[0].action),))
            lines = (lines[:-1] if bare else lines) + found
        workings.append(Working(f"sum-{number + k}", number + k, e.body.name, terms.header(e.functional, sheet), lines))
    nodes.append(Block("solve", tuple(workings)))
    said: list[Node] = []
    if len(step.equations) > 1:
        said += together.elimination(step, structure, sheet, known, number) or [
            Working(f"sum-{number}-together", number, step.equations[0].body.name, None, result_lines(step, structure, sheet))]
    for u in step.finds:
        said += meaning(u, step, structure, sheet)
    nodes.append(Block("result", tuple(said)))
    return tuple(nodes)


def sum_lines(e: Equation, sheet: Sheet, known: Mapping[str, Number]) -> tuple[Line, ...]:
    """Symbols, numbers, collected; a line that repeats the one above is left out."""
    e = terms.oriented(e, sheet)
    lines = [Line("write", terms.in_symbols(e, sheet))]
    for name, relation in (("substitute", terms.in_numbers(e, sheet, known)), ("collect", terms.collected(e, sheet, known))):
        if terms.printed(relation.left) != terms.printed(lines[-1].formula.left):
            lines.append(Line(name, relation))
    return tuple(lines)


def result_lines(step: Step, structure: Structure, sheet: Sheet) -> tuple[Line, ...]:
    out = []
    for u in step.finds:
        action = structure.action(structure.unknown(u).actions[0])
        amount = sheet.result(step.values[u], action.dimension, u)
        out.append(Line("result", Relation(symbol(structure.unknown(u).symbol), amount)))
    return tuple(out)


def why(step: Step, structure: Structure, sheet: Sheet, known: Mapping[str, Number]) -> tuple[Node, ...]:
    """Which sum and why just this one: what drops out of it, what is known, what is left."""
    finds = phrases.unknowns(structure, step.finds)
    many = len(step.equations) > 1
    out: list[Node] = []
    for e in step.equations:
        heading = _heading(e, structure, sheet)
        if len({x.body.parts for x in step.equations}) > 1:
            heading = Text("reason.on_body", {"body": phrases.free_body(e.body), "what": heading})
        said = [heading, *_dropped(e, structure, sheet, known), *_spread(e, sheet)]
        if not many:
            dropped = set(e.body.unknowns) - set(step.finds)
            said.append(Text("reason.leaves" if dropped else "reason.only", {"finds": finds}))
        out.append(Paragraph(sentences(*said), "why"))
    if many:
        out.append(Paragraph(Text("reason.block", {"count": len(step.equations), "finds": finds}), "why"))
    return tuple(out)


def _heading(e: Equation, structure: Structure, sheet: Sheet) -> Text:
    f = e.functional
    if f.kind == "about":
        if f.point:
            return Text("reason.moments", {"point": phrases.letter_like(f.point)})
        place = {"centre": phrases.letter_like(sheet.centre(f)), "x": sheet.length(f.at[0]), "y": sheet.length(f.at[1])}
        meeting = [a.unknown for a in e.body.actions if a.unknown and a.kind == "force" and a.unknown not in e.unknowns]
        if len(meeting) > 1:
            return Text("reason.moments_meeting", {**place, "drops": phrases.unknowns(structure, dict.fromkeys(meeting))})
        return Text("reason.moments_place", place)
    axis = axis_of(f.direction.vector)
    if axis:
        return Text(f"reason.forces_{axis}")
    return Text("reason.forces_slanted", {"toward": phrases.toward(f.direction, sheet)})


def drops(e: Equation, known: Mapping[str, Number]) -> dict[str, list[str]]:
    """Unknowns on the body that the sum does not see, and those it sees that are known, by how."""
    out: dict[str, list[str]] = {}
    for a in e.body.actions:
        if not a.unknown:
            continue
        how = "" if a.unknown in e.unknowns else dropping(e.functional, a)
        if a.unknown in e.unknowns and a.unknown in known:
            how = "known"
        if how and a.unknown not in out.setdefault(how, []):
            out[how].append(a.unknown)
    return out



def _dropped(e: Equation, structure: Structure, sheet: Sheet, known: Mapping[str, Number]) -> list[Text]:
    found = drops(e, known)
    point = phrases.letter_like(sheet.centre(e.functional))
    out = []
    for how in ("at_centre", "through", "square", "couple", "known"):
        if how in found and not (how == "through" and not e.functional.point):
            out.append(Text(f"reason.{how}", {"drops": phrases.unknowns(structure, found[how]), "point": point, "count": len(found[how])}))
    return out


def _spread(e: Equation, sheet: Sheet) -> list[Text]:
    """A word on each spread load that the sum holds."""
    shown = {t.action.id: t.action for t in e.terms if t.action.load is not None and t.action.stretch >= 0}.values()
    items = []
    for a in shown:
        size = terms.name_of(a, sheet) if a.unknown else sheet.given(a.value, a.id)
        items.append(Text(f"reason.resultant_{resultant_of(a).shape}", {"size": size}))
    return [Text("reason.spread", {"resultants": Listing(tuple(items))})] if items else []


def meaning(unknown: str, step: Step, structure: Structure, sheet: Sheet) -> list[Node]:
    """What the sign says: sense, tension or compression, and the other half of the pair."""
    value = step.values[unknown]
    body = step.equations[0].body
    action = next((a for e in step.equations for a in e.body.actions if a.unknown == unknown), None)
    action = action or structure.action(structure.unknown(unknown).actions[0])
    letter = {"letter": symbol(structure.unknown(unknown).symbol)}
    if sign(value) == 0:
        return [Paragraph(Text("result.zero", letter), "sense")]
    if cords.is_cord(structure, unknown):
        return [Paragraph(cords.meaning(structure, unknown, value), "sense")]
    if structure.unknown(unknown).axial:
        member = Text("thing_capital." + member_kind(structure, action.source), member_names(structure, action.source))
        said = Text("result.tension" if sign(value) > 0 else "result.compression", {**letter, "member": member})
        return [Paragraph(conditions.so_far_as(said, value, sheet), "sense")]
    acting = [structure.action(a) for a in structure.unknown(unknown).actions]
    if action.load is not None and len(acting) > 1 and (action.stretch < 0 or not drawn_alike(acting)):
        return [Paragraph(Text("result.drawn_everywhere" if sign(value) > 0 else "result.against_everywhere", letter), "sense")]
    if action.sense == "push":
        at = {"point": phrases.letter_like(action.point)}
        return [Paragraph(Text("result.push", letter) if sign(value) > 0 else Text("result.pull", {**letter, **at}), "sense")]
    said = [Text("result.as_drawn" if sign(value) > 0 else "result.against",
                                        {**letter, "sense": true_sense(action, value, sheet)})]
    other = phrases.opposite(action, structure)
    if other and other.on not in body.parts:
        said.append(Text("result.pair_couple" if action.kind == "couple" else "result.pair", {"other": phrases.thing(other.on), "sense": true_sense(other, value, sheet)}))
    kind = kind_of(action, structure)
    if KINDS[kind].owned and action.kind == "force":
        said.append(Text(f"result.face_{'slot' if kind == 'slot' else 'collar'}_{_face(unknown, structure, value)}"))
    if sign(value) < 0 and KINDS[kind].either_way:
        said.append(Text("result.held_down", {"point": phrases.letter_like(action.point)}))
    return [Paragraph(sentences(*said), "sense")]


def _face(unknown: str, structure: Structure, value: Number) -> str:
    """The face of a slot that the pin presses: opposite to the push on the pin, which is drawn up, or right from an upright slot."""
    upright = structure.action(structure.unknown(unknown).actions[0]).direction.vector[1] == 0
    return {(False, 1): "lower", (False, -1): "upper", (True, 1): "left", (True, -1): "right"}[upright, sign(value)]


def true_sense(action: Action, value: Number, sheet: Sheet) -> Text:
    """The way the action really acts on its body."""
    value = value * action.multiple  # a couple to be found that was given clockwise has a negative one
    code = sense_of(action, value)
    degrees = None
    if code == "along":
        x, y = (approx(c) * sign(value) for c in action.direction.vector)
        degrees = math.degrees(math.atan2(y, x))
    said = phrases.sense(code, degrees, sheet, lean_of(action.direction.vector) if code == "along" else None)
    return conditions.where(said, value, sheet)
