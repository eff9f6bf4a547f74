"""Two sums in two unknowns worked on paper: one sum gives one unknown by the other, and put into the second sum leaves one."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from unpin.base.record import record
from unpin.base.units import FORCE, MOMENT, NUMBER
from unpin.exact.number import Number, sign
from unpin.lesson import terms
from unpin.lesson.formula import ZERO, Formula, Product, Relation, Signed, Sum
from unpin.lesson.nodes import Line, Node, Paragraph, Text, Working
from unpin.lesson.sheet import Sheet, symbol, way
from unpin.model.action import Action, Structure
from unpin.model.equation import Equation
from unpin.route.plan import Step
from unpin.words import numbers


@record
class Row:
    """A sum collected: coefficient by unknown, what is known (N or N·m), and its place in the step, counting from 1."""

    place: int
    equation: Equation
    by: Mapping[str, Number]
    constant: Number


def elimination(step: Step, structure: Structure, sheet: Sheet, known: Mapping[str, Number], number: int) -> tuple[Node, ...]:
    """The lines between two collected sums and the first of their results; none for a larger block."""
    if len(step.equations) != 2 or len(step.finds) != 2:
        return ()
    rows = [_row(k, terms.oriented(e, sheet), step.finds, known) for k, e in enumerate(step.equations, 1)]
    first, gone = min(((r, u) for r in rows for u in step.finds), key=lambda choice: _trouble(*choice, structure, step.finds, sheet))
    left = next(u for u in step.finds if u != gone)
    second = next(r for r in rows if r is not first)
    ratio = -first.by[left] / first.by[gone]
    rest = -first.constant / first.by[gone]
    letters = {u: symbol(structure.unknown(u).symbol) for u in step.finds}
    acting = {u: structure.action(structure.unknown(u).actions[0]) for u in step.finds}
    given = Sum((_times(ratio, acting[gone], acting[left], letters[left], sheet), *_constant(rest, acting[gone], sheet)))
    moment = second.equation.functional.kind == "about"
    put = [_part(second.by[gone], acting[gone], given, moment, sheet), _part(second.by[left], acting[left], letters[left], moment, sheet)]
    one = second.by[left] + second.by[gone] * ratio
    known_part = second.constant + second.by[gone] * rest
    collected = [_part(one, acting[left], letters[left], moment, sheet), *_known(known_part, moment, sheet)]
    value = step.values[left]
    back = Sum((_times(ratio, acting[gone], acting[left], sheet.reused(value, _unit(acting[left], sheet), left), sheet),
                *_constant(rest, acting[gone], sheet)))
    lines = (
        Line("solve", Relation(letters[gone], given)),
        Line("substitute", Relation(Sum((*put, *_known(second.constant, moment, sheet))), ZERO)),
        Line("collect", Relation(Sum(tuple(collected)), ZERO)),
        Line("result", Relation(letters[left], sheet.result(value, acting[left].dimension, left))),
        Line("substitute", Relation(letters[gone], back)),
        Line("result", Relation(letters[gone], sheet.result(step.values[gone], acting[gone].dimension, gone))),
    )
    said = Text("result.put_in", {"first": Text(f"result.place_{first.place}"), "second": Text(f"result.place_{second.place}"),
                                  "gone": letters[gone], "left": letters[left]})
    return Paragraph(said), Working(f"sum-{number}-together", number, step.equations[0].body.name, None, lines)


def _row(place: int, e: Equation, finds: tuple[str, ...], known: Mapping[str, Number]) -> Row:
    by = dict.fromkeys(finds, Fraction(0))
    constant: Number = Fraction(0)
    for t in e.terms:
        if t.action.unknown in by:
            by[t.action.unknown] = by[t.action.unknown] + t.coefficient
        elif not t.action.unknown or t.action.unknown in known:
            # What is neither cancels: a tension on both sides of a disc.
            constant = constant + t.coefficient * terms.value_of(t.action, known)
    return Row(place, e, by, constant)


def _trouble(row: Row, gone: str, structure: Structure, finds: tuple[str, ...], sheet: Sheet) -> tuple:
    """Which unknown to take out of which sum: one without a factor first, then short numbers; a couple only by a force."""
    left = next(u for u in finds if u != gone)
    if row.by[gone] == 0 or row.by[left] == 0:
        return (9, 0, row.place)
    # A couple by a force, a force by a force per length: else the factor between them is one over a length.
    couples = structure.unknown(gone).dimension.length < structure.unknown(left).dimension.length
    size = row.by[gone] * way(row.by[gone])
    short = numbers.exactly(row.by[left] / row.by[gone], 4) is not None
    return (couples, size != 1, not short, row.place, finds.index(gone))


def _times(ratio: Number, gone: Action, left: Action, of: Formula, sheet: Sheet) -> Signed:
    """ratio times the unknown that stays: a bare number between forces, a length where a couple is given by a force."""
    size = ratio * way(ratio)
    by = gone.dimension / left.dimension
    return Signed(way(ratio), of if size == 1 and by == NUMBER else Product((sheet.coefficient(size, by), of)))


def _part(c: Number, action: Action, of: Formula, moment: bool, sheet: Sheet) -> Signed:
    """coefficient times an unknown in a collected sum; in a moment sum the coefficient of a force is a length."""
    size = c * way(c)
    by = (MOMENT if moment else FORCE) / action.dimension
    return Signed(way(c), of if size == 1 and by == NUMBER else Product((sheet.coefficient(size, by), of)))


def _unit(action: Action, sheet: Sheet):
    return sheet.line_moment if action.kind == "couple" else sheet.units[action.dimension]


def _constant(value: Number, action: Action, sheet: Sheet) -> tuple[Signed, ...]:
    return (Signed(way(value), sheet.of(value * way(value), _unit(action, sheet))),) if sign(value) else ()


def _known(value: Number, moment: bool, sheet: Sheet) -> tuple[Signed, ...]:
    return (Signed(way(value), sheet.of(value * way(value), sheet.line_moment if moment else sheet.units[FORCE])),) if sign(value) else ()
