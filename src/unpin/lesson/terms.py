"""The lines of one sum: symbols, numbers put in, collected. The terms come from the equation; nothing is worked out anew
but the products that collecting needs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from unpin.base.units import FORCE, LENGTH, MOMENT, NUMBER, SPREAD
from unpin.exact.lettered import is_lettered
from unpin.exact.number import Number, sign
from unpin.lesson.formula import ZERO, Amount, Formula, Header, Over, Product, Relation, Signed, Sum
from unpin.lesson.sheet import Sheet, half, symbol, symbol_of, way
from unpin.model.action import Action
from unpin.model.directions import axis_of
from unpin.model.equation import Equation, Factor, Functional, Term
from unpin.statics.loads import Resultant, resultant_of
from unpin.words import numbers

_AXIS_ARROW = {(1, 0): "→", (-1, 0): "←", (0, 1): "↑", (0, -1): "↓"}


def header(functional: Functional, sheet: Sheet | None = None) -> Header:
    """What is summed and its positive sense. A centre without a name has the letter of the sheet, a slanted axis is t."""
    if functional.kind == "about":
        turned = sheet is not None and sheet.sense(functional) < 0
        return Header("moments", sheet.centre(functional) if sheet else functional.point or "Q", "↻" if turned else "↺")
    way = sheet.sense(functional) if sheet else 1
    vector = tuple(c * way for c in functional.direction.vector)
    axis = axis_of(vector)
    arrow = _AXIS_ARROW.get((sign(vector[0]), sign(vector[1])), "")
    return Header("forces", axis or "t", arrow or ("↗" if sign(vector[0]) * sign(vector[1]) > 0 else "↘" if sign(vector[0]) > 0 else "↖"))


def oriented(equation: Equation, sheet: Sheet) -> Equation:
    """The sum with the positive sense of the house: itself, or with every sign turned."""
    if sheet.sense(equation.functional) > 0:
        return equation
    return replace(equation, terms=tuple(replace(t, sign=-t.sign, coefficient=-t.coefficient) for t in equation.terms))


def in_symbols(equation: Equation, sheet: Sheet) -> Relation:
    """Unknowns and lettered loads by their letters, everything else by its value."""
    return Relation(Sum(tuple(Signed(_sign(t), _product(t, _named(t.action, sheet), sheet), t.action.id) for t in equation.terms)), ZERO)


def in_numbers(equation: Equation, sheet: Sheet, known: Mapping[str, Number]) -> Relation:
    """The same with every known value put in; unknowns of this step stay letters."""
    return Relation(Sum(tuple(Signed(_sign(t), _product(t, _valued(t.action, sheet, known), sheet), t.action.id) for t in equation.terms)), ZERO)


def _sign(term: Term) -> int:
    """A given value below zero (a clockwise couple, a load upward along a downward axis) shows as its size with the other sign."""
    a = term.action
    return -term.sign if _against(a) else term.sign


def _against(a: Action) -> bool:
    """Whether it is given against the sense in which its term counts: then its letter or number stands for its size. What is given of
    a connection has its assumed sense and keeps its sign."""
    return not a.unknown and (a.symbol is None or a.load is not None) and sign(a.value.value) < 0


def collected(equation: Equation, sheet: Sheet, known: Mapping[str, Number]) -> Relation:
    """One term for each unknown, one for all that is known. In a moment sum the coefficient of a force is a length."""
    moment = equation.functional.kind == "about"
    coefficients: dict[str, Number] = {}
    first: dict[str, Action] = {}
    constant: Number = 0
    for t in equation.terms:
        a = t.action
        if a.unknown and a.unknown not in known:
            first.setdefault(a.unknown, a)
            coefficients[a.unknown] = coefficients.get(a.unknown, 0) + t.coefficient
        else:
            constant = constant + t.coefficient * value_of(a, known)
    terms = []
    for id, c in coefficients.items():
        if sign(c) == 0:
            continue
        size = c * way(c)
        parts: tuple[Formula, ...] = (symbol(first[id].symbol),)
        by = (MOMENT if moment else FORCE) / first[id].dimension
        if by != NUMBER or size != 1:
            parts = (sheet.coefficient(size, by), *parts)
        terms.append(Signed(way(c), Product(parts), first[id].id))
    if sign(constant) or not terms:
        unit = sheet.line_moment if moment else sheet.units[FORCE]
        terms.append(Signed(way(constant), sheet.of(constant * way(constant), unit)))
    return Relation(Sum(tuple(terms)), ZERO)


def evaluated(equation: Equation, sheet: Sheet, known: Mapping[str, Number]) -> Relation:
    """Every term as one amount, all values known: what a check adds up."""
    unit = sheet.line_moment if equation.functional.kind == "about" else sheet.units[FORCE]
    terms = []
    for t in equation.terms:
        value = t.coefficient * value_of(t.action, known)
        terms.append(Signed(way(value), sheet.of(value * way(value), unit), t.action.id))
    return Relation(Sum(tuple(terms)), ZERO)


def value_of(action: Action, known: Mapping[str, Number]) -> Number:
    """Signed size along the assumed direction, SI. KeyError if its unknown is not known."""
    return known[action.unknown] if action.unknown else action.value.value


def name_of(action: Action, sheet: Sheet) -> Formula:
    """What stands at its arrow: the letter, or the value of a load without one. The same in figure and sum."""
    if action.unknown and action.stretch >= 0:
        return Product(_area(action, _named(action, sheet), sheet))
    if abs(action.multiple) != 1:
        return Product((sheet.whole(abs(action.multiple)), symbol_of(action)))
    return _named(action, sheet)[0] if len(_named(action, sheet)) == 1 else _valued(action, sheet, {})[0]


def _named(action: Action, sheet: Sheet) -> tuple[Formula, ...]:
    if action.unknown or action.stretch < 0:
        return (symbol_of(action),) if action.symbol is not None else _valued(action, sheet, {})
    # The letter of a spread load is that of its intensity, not of its resultant.
    return _spread(action, sheet) or _valued(action, sheet, {})


def _valued(action: Action, sheet: Sheet, known: Mapping[str, Number]) -> tuple[Formula, ...]:
    if action.unknown:
        if action.unknown not in known:
            return (symbol(action.symbol),)
        unit = sheet.line_moment if action.kind == "couple" else sheet.units[action.dimension]
        return (sheet.reused(known[action.unknown], unit, action.unknown),)
    amount = sheet.of(action.value.value, sheet.line_moment, action.id) if action.kind == "couple" else sheet.given(action.value, action.id)
    keeps = action.symbol is not None and not _against(action)
    return (amount if keeps else Amount(amount.printed.size, amount.source),)


def _spread(action: Action, sheet: Sheet) -> tuple[Formula, ...]:
    """A resultant as it is worked out: peak times run, with a half for a triangle; empty when the units do not fit."""
    if action.load is None or action.stretch < 0 or sheet.units[SPREAD].factor * sheet.units[LENGTH].factor != sheet.units[FORCE].factor:
        return ()
    part = resultant_of(action)
    peak = sheet.of(part.peak, sheet.units[SPREAD], action.id)
    tall = symbol_of(action) if action.symbol is not None and _is_named(action, part) else Amount(peak.printed.size, peak.source)
    both = (tall, sheet.length(part.run))
    return both if part.shape == "rectangle" else (half(), *both)


def _is_named(action: Action, part: Resultant) -> bool:
    """Whether the letter of a spread load is the intensity of this part of it: that of an even load, or the tall end of a triangle."""
    return action.load.magnitude is not None and not is_lettered(part.peak) and part.peak == action.load.magnitude.value


def _area(action: Action, force: tuple[Formula, ...], sheet: Sheet) -> tuple[Formula, ...]:
    """Share, intensity, run: the area under a spread load that is to be found."""
    part = resultant_of(action)
    share = abs(part.peak) / (1 if part.shape == "rectangle" else 2)
    return (*(() if share == 1 else (sheet.whole(share),)), *force, sheet.length(part.run))


def _product(term: Term, force: tuple[Formula, ...], sheet: Sheet) -> Formula:
    """Ratio, force, sine or cosine, arm: the order in which it is said."""
    before, after, arms = [], [], []
    for f in term.factors:
        place = arms if f.kind == "arm" else after if f.kind in ("cos", "sin", "run") else before
        place.append(factor(f, sheet))
    everything = (*before, *force, *after, *arms)
    return everything[0] if len(everything) == 1 else Product(everything)


def factor(f: Factor, sheet: Sheet) -> Formula:
    if f.kind in ("arm", "run"):
        return sheet.length(f.value)
    if f.axis == "multiple":
        return sheet.whole(f.value)
    if f.kind in ("cos", "sin"):
        return sheet.function(f.kind, Amount(numbers.angle(f.angle, sheet.style), "data"))
    if f.kind == "leg":
        return Over(sheet.whole(f.legs[0]), sheet.whole(f.legs[1]))
    return sheet.ratio(f.value)


def printed(formula: Formula):
    """What is printed of a formula, in any order, without the source of its numbers and the arrows behind its terms."""
    match formula:
        case Amount(number) if number.shape is not None:
            return printed(formula.opened)
        case Amount(number):
            return (number.sign, number.digits, number.unit)
        case Signed(way_, of, _):
            return (way_, printed(of))
        case Sum((Signed(1, Amount(number)), *rest)) if number.sign < 0:
            # A sum begins with a minus whether it belongs to the term or to its number.
            return printed(Sum((Signed(-1, Amount(number.size)), *rest)))
        case Sum(items, _):
            return tuple(sorted((printed(i) for i in items), key=repr))
        case Product(items):
            inside = [x for i in items for x in (i.shape.factors if isinstance(i, Amount) and isinstance(i.shape, Product) else (i,))]
            return tuple(sorted((printed(i) for i in inside), key=repr)) if len(inside) > 1 else printed(inside[0])
        case Relation(left, right, sign_):
            return (printed(left), sign_, printed(right))
    return formula
