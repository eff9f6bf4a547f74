"""The letters on a figure: the same as in the sums, composed here so that they agree."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from unpin.base.units import ANGLE, LENGTH, NUMBER
from unpin.draw.label import Label, Run
from unpin.draw.lettering import Lettering
from unpin.exact.number import Number, sign
from unpin.lesson import cords, loads, phrases, terms
from unpin.lesson.formula import Amount, Formula, Function, Letter, Over, Product, Raised, Relation, Root, Signed, Squared, Sum, letter, subscript
from unpin.lesson.sheet import Sheet, symbol, symbol_of
from unpin.model.action import Action, Structure
from unpin.model.problem import GROUND, Problem
from unpin.model.values import Quantity
from unpin.words import numbers
from unpin.words.sentences import say


def label(formula: Formula) -> Label:
    """A formula as the runs of one label; fractions lie on their side."""
    match formula:
        case Amount(printed):
            return (Run(printed.text),) if printed.shape is None else label(formula.opened)
        case Letter(base, sub, on):
            runs = [Run(base, "italic"), *(Run(part, "sub" if upright else "subitalic") for part, upright in subscript(sub))]
            if on:
                runs.append(Run(f", {on}" if sub else on, "sub"))
            return tuple(runs)
        case Relation(left, right, way):
            return (*label(left), Run(f" {way} "), *label(right))
        case Over(top, bottom):
            return (*_held(top, Sum), Run("/"), *_held(bottom, (Sum, Product, Over)))
        case Root(of):
            return (Run("√"), *_held(of, (Sum, Product, Over)))
        case Function(_, of, _):
            return (Run(f"{formula.sign}\u202f"), *_held(of.shape or of if isinstance(of, Amount) else of, (Sum, Product, Over)))
        case Squared(of):
            return (*_held(of, (Sum, Product, Over, Function)), Run("²"))
        case Raised(of, power):
            return (*_held(of, (Sum, Product, Over, Function)), Run("".join("⁰¹²³⁴⁵⁶⁷⁸⁹"[int(d)] for d in str(power))))
        case Product(factors):
            return tuple(r for f in factors for r in (_measured(f) or _held(f, Sum)))
        case Signed(way, of, _):
            return ((Run(numbers.MINUS),) if way < 0 else ()) + label(of)
        case Sum(items, _):
            rest = ((Run(" + " if s.sign > 0 else f" {numbers.MINUS} "), *_held(s.of, Sum)) for s in items[1:])
            return (*(label(items[0]) if items else ()), *(r for runs in rest for r in runs))
    raise TypeError(f"no label for {type(formula).__name__}")


def _measured(formula: Formula) -> Label:
    """A factor that is an amount with a unit, in brackets; empty for any other."""
    if isinstance(formula, Amount) and formula.printed.shape is None and formula.printed.unit not in ("", "°"):
        return (Run(f"\u202f({formula.printed.text})"),)
    return ()


def _held(formula: Formula, kinds) -> Label:
    """The label, in brackets where it is of such a kind."""
    opened = formula.opened if isinstance(formula, Amount) and formula.printed.shape is not None else formula
    return (Run("("), *label(opened), Run(")")) if isinstance(opened, kinds) else label(formula)


def text_of(sheet: Sheet):
    """How a length, angle, force, intensity or bare number stands on a figure."""

    def text(quantity: Quantity) -> Label:
        return label(quantity_formula(quantity, sheet))

    return text


def quantity_formula(quantity: Quantity, sheet: Sheet) -> Formula:
    if quantity.sought:
        return loads.times(quantity.value, quantity.letter, sheet)
    if quantity.letter:
        return letter(quantity.letter)
    if quantity.dimension == NUMBER:
        return sheet.whole(quantity.value)
    if quantity.dimension == ANGLE:
        return Amount(numbers.angle(quantity.value, sheet.style))
    if quantity.dimension == LENGTH:
        return sheet.length(quantity.value)
    return sheet.given(quantity, own_unit=True)


def of_problem(problem: Problem, structure: Structure, sheet: Sheet) -> Lettering:
    """For the figure of the problem: loads with letter and size, points by name."""
    labels = _points(problem)
    for a in structure.actions:
        if a.load is not None and a.load.kind != "spread":
            labels[a.id] = label(_given(a, sheet))
    labels |= {c.name: label(cords.letter(c)) for c in problem.cords}
    return Lettering(labels, text_of(sheet), spoken(structure, sheet))


def of_bodies(problem: Problem, structure: Structure, sheet: Sheet) -> Lettering:
    """For free-body diagrams: what stands in the sums, letter for letter."""
    labels = _points(problem)
    for a in structure.actions:
        labels[a.id] = label(terms.name_of(a, sheet))
    return Lettering(labels, text_of(sheet), spoken(structure, sheet))


def of_bodies_apart(problem: Problem, structure: Structure, sheet: Sheet) -> Lettering:
    """The same, and every part by name."""
    lettering = of_bodies(problem, structure, sheet)
    names = {p.name: (Run(p.name),) for p in problem.parts if p.name not in lettering.labels}
    return replace(lettering, labels={**lettering.labels, **names})


def of_result(problem: Problem, structure: Structure, sheet: Sheet, values) -> Lettering:
    """For the last figure: `336 N` at every reaction, its true sense being drawn, so that no letter stands there whose value
    has the other sign; `600 N (C)` along links."""
    labels = _points(problem)
    for a in structure.actions:
        if not a.unknown:
            labels[a.id] = label(_given(a, sheet))
        elif a.unknown in values:
            labels[a.id] = _size(sheet.size(values[a.unknown] * a.multiple, a.dimension), symbol_of(a), values[a.unknown] * a.multiple)
    for u in structure.unknowns:
        if u.axial and u.id in values:
            shown = sheet.size(values[u.id], u.dimension)
            bare = many_axial(structure) and shown.printed.shape is None
            size = (Run(shown.printed.digits),) if bare else _size(shown, symbol(u.symbol), values[u.id])
            mark = "" if u.drives == "cord" else say(f"lesson.axial_mark.{_axial(values[u.id])}", sheet.language)
            labels[u.id] = (*size, *((Run("\u202f" + mark),) if mark else ()))
    return Lettering(labels, _text_found(sheet, values), spoken(structure, sheet))


def _text_found(sheet: Sheet, values: Mapping[str, Number]):
    """As `text_of`, a spread load that was to be found with its value."""

    def text(quantity: Quantity) -> Label:
        if quantity.sought and quantity.letter in values:
            return label(sheet.size(values[quantity.letter] * quantity.value, quantity.dimension))
        return label(quantity_formula(quantity, sheet))

    return text


LONG = 26
"""A formula with more signs than this is too long for an arrow; its letter stands there, with a minus where it is negative."""


def _size(shown: Amount, named: Letter, value: Number) -> Label:
    if shown.printed.shape is None or len(shown.printed.digits) <= LONG:
        return label(shown)
    return label(Signed(-1 if sign(value) < 0 else 1, named))


MANY = 6
"""More forces along links than that stand on the last figure without their unit, which its caption then gives."""


def many_axial(structure: Structure) -> bool:
    return sum(u.axial for u in structure.unknowns) > MANY


def spoken(structure: Structure, sheet: Sheet) -> dict[str, str]:
    """The name a voice gives each arrow."""
    out = {}
    for a in structure.actions:
        name = _spoken(a, sheet)
        body = say("lesson.thing.ground", sheet.language) if a.on == GROUND else a.on.removeprefix(phrases.PIN)
        code = "pin" if a.on.startswith(phrases.PIN) else "part"
        out[a.id] = say(f"lesson.figure.{a.kind}_on_{code}", sheet.language, name=name, body=body)
        if a.load is not None:
            out.setdefault(a.id.split(".")[0], say("lesson.figure.spread", sheet.language, body=body))
    return out


def _spoken(a: Action, sheet: Sheet) -> str:
    """Its letter, or `of 300 N` for a load without one."""
    shown = terms.name_of(a, sheet)
    if isinstance(shown, Letter):
        return say("speech.letter", sheet.language, base=shown.base, sub=shown.sub) if shown.sub else shown.base
    written = "".join(r.text for r in label(shown))
    return say("lesson.figure.of", sheet.language, name=written) if isinstance(shown, Amount) else written


def _given(a: Action, sheet: Sheet) -> Formula:
    if a.value is None:
        return loads.multiple(a.load, sheet)
    if a.stretch >= 0:
        return sheet.given(a.value, a.id)
    if a.load is None:
        # The arrow has its true sense.
        size = sheet.given(a.value, a.id, own_unit=True)
        return Relation(symbol_of(a), Amount(size.printed.size, size.source))
    return loads.named(a.load.name, a.value, sheet, size_only=a.kind == "couple")


def _axial(value: Number) -> str:
    return {1: "tension", -1: "compression", 0: "zero"}[sign(value)]


def _points(problem: Problem) -> dict[str, Label]:
    return {p.name: label(letter(p.name)) for p in problem.points}
