"""The second chapter: whether the problem is sound. Four statements, each by itself; an unsound problem is a lesson too."""

from __future__ import annotations

from unpin.base.units import FORCE, LENGTH
from unpin.exact.number import length, sign
from unpin.lesson import conditions, phrases, terms
from unpin.lesson.formula import Amount, Relation
from unpin.lesson.nodes import Line, Listing, Node, Paragraph, Text, Working, sentences
from unpin.lesson.sheet import Sheet
from unpin.lesson.statement import short
from unpin.model.action import Structure
from unpin.model.directions import angle_of, axis_of, small_legs
from unpin.model.findings import Cause, Freedom, Soundness
from unpin.model.problem import GROUND
from unpin.model.values import Direction
from unpin.statics.contacts import Opened
from unpin.words import numbers


def chapter(structure: Structure, found: Soundness, sheet: Sheet, opened: tuple[Opened, ...] = ()) -> tuple[Node, ...]:
    """All statements in order: motion, ambiguity, what is asked, balance, cause, contacts that open, near misses."""
    remarks = tuple(Paragraph(_cause(c, structure, found, sheet), "remark") for c in found.remarks)
    let_go = (Paragraph(told_opened(opened, found, sheet), "remark"),) if opened else ()
    if found.solvable and found.determinate:
        return (*let_go, Paragraph(Text("sound.ready")), Paragraph(_count(found)), *remarks)
    if found.solvable and _in_the_hand(structure, found):
        return (*let_go, Paragraph(Text("sound.in_the_hand", {"unknowns": counted("unknowns", found.unknowns), "sums": counted("sums", found.sums)})),
                *remarks)
    nodes: list[Node] = list(let_go)
    if found.solvable:
        nodes.append(Paragraph(Text("sound.solvable")))
    else:
        nothing = not found.holds or not any(f for _, f in found.found)
        nodes.append(Paragraph(Text("unsound.intro" if nothing else "unsound.partly"), "remark"))
    nodes += _freedoms(structure, found, sheet)
    nodes.append(Paragraph(_stresses(structure, found)))
    causes = found.causes
    if found.solvable:
        causes = tuple(c for c in causes if c.code != "too_few_unknowns")
    else:
        nodes += _asked(structure, found)
        nodes.append(Paragraph(Text("sound.balance" if found.holds else "sound.no_balance")))
    nodes += [Paragraph(_cause(c, structure, found, sheet), "why") for c in causes]
    if not any(c.code in COUNTS for c in causes):
        nodes.append(Paragraph(_count(found)))
    return (*nodes, *remarks)


COUNTS = ("too_few_unknowns", "too_many_unknowns")
"""Causes that are the first count itself."""


def counted(what: str, count: int) -> Text:
    """`one unknown`, `3 sums`."""
    return Text(f"sound.number_of_{what}", {"count": count})


def _in_the_hand(structure: Structure, found: Soundness) -> bool:
    """Whether nothing holds it to the ground and it could only move as one, as a tool that is held by its loads alone."""
    held = any(GROUND in (a.on, a.by) for a in structure.actions)
    return not held and len(found.freedoms) == 3 and not found.self_stresses


def shown_freedom(found: Soundness, turn: int = 0) -> Freedom:
    """The motion that is told and drawn: the first in which the loads do work, else the first. `turn`: how many further, all in turn."""
    first = next((k for k, f in enumerate(found.freedoms) if sign(f.work)), 0)
    return found.freedoms[(first + turn) % len(found.freedoms)]


def told_opened(opened: tuple[Opened, ...], found: Soundness, sheet: Sheet) -> Text:
    """The contacts that let go, each with the pull that it would have needed, and what is left."""
    said = [Text("sound.opened_slack" if o.slack else "sound.opened_next" if k else "sound.opened",
                 {"point": phrases.letter_like(o.connection.points[0]), "size": sheet.size(o.needed, FORCE)}) for k, o in enumerate(opened)]
    if found.holds:
        return sentences(*said, Text("sound.opened_without", {"count": len(opened)}))
    return sentences(*said, Text("sound.opened_tips"), *conditions.opening(opened, sheet))


def _count(found: Soundness) -> Text:
    numbers_ = {"unknowns": counted("unknowns", found.unknowns), "sums": counted("sums", found.sums)}
    if found.unknowns != found.sums:
        return Text("sound.count_differs", numbers_)
    return Text("sound.count" if found.determinate else "sound.count_equal", numbers_)


def _freedoms(structure: Structure, found: Soundness, sheet: Sheet) -> list[Node]:
    if not found.freedoms:
        return [Paragraph(Text("sound.still"))]
    first = shown_freedom(found)
    motion = told_motion(structure, first, sheet)
    many = len(found.freedoms)
    nodes: list[Node] = [Paragraph(Text("sound.moves", {"motion": motion, "count": many}), "remark")]
    if not sign(first.work):
        return [*nodes, Paragraph(Text("sound.no_work"))]
    nodes.append(Paragraph(Text("sound.work"), "remark"))
    p = structure.problem
    if p.at_pins or any(one.given for one in (*p.connections, *p.cords, *p.parts)):
        nodes.append(Paragraph(Text("sound.given_holds_nothing")))
    if first.failing:
        nodes += [Paragraph(Text("sound.failing")), _failing(first, sheet)]
    if (only := conditions.balance(first.work, sheet)) is not None:
        nodes.append(Paragraph(only, "remark"))
    return nodes


def _failing(freedom: Freedom, sheet: Sheet) -> Working:
    equation = freedom.failing
    equation = terms.oriented(equation, sheet)
    relation = terms.in_numbers(equation, sheet, {})
    total = terms.collected(equation, sheet, {})
    return Working("failing", 0, equation.body.name, terms.header(equation.functional, sheet),
                   (Line("substitute", relation), Line("collect", Relation(total.left, total.right, "≠"))))


def told_motion(structure: Structure, freedom: Freedom, sheet: Sheet) -> Text:
    """One motion in a sentence: what turns about where, slides which way, or moves together."""
    moving = list(freedom.twists)
    rigid = [b for b in moving if not b.startswith(phrases.PIN)]
    # A pin has no turn of its own: where parts move, they say how.
    names = rigid or moving
    if any(freedom.twists[b] != freedom.twists[names[0]] for b in names):
        return Text("sound.motion_linked", {"bodies": Listing(tuple(phrases.thing(b) for b in names))})
    body = phrases.thing(names[0]) if len(names) == 1 else Text("thing.group", {"members": Listing(tuple(names))})
    if len(names) == len([b for b in structure.bodies if b.kind == "part"]) and len(names) > 1:
        body = Text("thing.whole")
    twist = freedom.twists[names[0]]
    if sign(twist[2]) == 0:
        return Text("sound.motion_slide", {"body": body, "toward": _way(twist, sheet)})
    return Text("sound.motion_turn", {"body": body, "centre": _place(structure, freedom.centres[names[0]], sheet)})


def _way(twist, sheet: Sheet) -> Text:
    """The direction of a slide: along an axis, on a slope of small whole numbers, or by its angle."""
    vector = (twist[0], twist[1])
    if axis_of(vector) or small_legs(vector):
        return phrases.toward(Direction(vector, length(vector), "components"), sheet)
    return phrases.sense("along", angle_of(vector), sheet)


def _place(structure: Structure, at, sheet: Sheet):
    name = next((n for n, p in structure.problem.coordinates.items() if p[0] == at[0] and p[1] == at[1]), "")
    return phrases.letter_like(name) if name else Text("sound.centre_at", {"x": sheet.length(at[0]), "y": sheet.length(at[1])})


def _stresses(structure: Structure, found: Soundness) -> Text:
    if not found.self_stresses:
        return Text("sound.no_self_stress" if found.freedoms else "sound.determinate")
    ids = dict.fromkeys(u for s in found.self_stresses for u in s.unknowns)
    return Text("sound.indeterminate", {"degree": len(found.self_stresses), "unknowns": phrases.unknowns(structure, ids)})


def _asked(structure: Structure, found: Soundness) -> list[Node]:
    lost = [short(a, structure.problem) for a, ok in found.found if not ok]
    kept = [short(a, structure.problem) for a, ok in found.found if ok]
    if not lost:
        return [] if not found.holds else [Paragraph(Text("sound.found_all"))]
    nodes: list[Node] = [Paragraph(Text("sound.not_found", {"asked": Listing(tuple(lost))}), "remark")]
    if kept:
        nodes.append(Paragraph(Text("sound.still_found", {"asked": Listing(tuple(kept))})))
    return nodes


def _cause(cause: Cause, structure: Structure, found: Soundness, sheet: Sheet) -> Text:
    """A cause with its names and lengths set as such."""
    a = dict(cause.arguments)
    out = {"unknowns": counted("unknowns", found.unknowns), "sums": counted("sums", found.sums)}
    for key, value in a.items():
        if key == "body":
            out[key] = _body(structure, str(value))
        elif key == "point":
            out[key] = phrases.letter_like(str(value)) if value else _place(structure, a["at"], sheet)
        elif key == "points":
            out[key] = phrases.points(value)
        elif key == "unknown":
            out[key] = phrases.unknowns(structure, [str(value)])
        elif key == "miss":
            from fractions import Fraction

            out[key] = Amount(numbers.measure(Fraction(value), sheet.units[LENGTH], numbers.Style(2, False, decimal=sheet.style.decimal)))
        elif isinstance(value, (int, str)):
            out[key] = value
    count = [n for key in ("short", "over") if isinstance(n := a.get(key), int)]
    return Text(f"cause.{cause.code}", {**out, **({"count": count[0]} if count else {})})


def _body(structure: Structure, name: str) -> Text:
    return Text("thing.whole") if name == "whole" else phrases.thing(name)
