"""The conventions of one lesson: its units, its rounding, and how a value of the problem becomes an amount on paper."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from unpin.base.record import record
from unpin.base.units import BY_SPELLING, FORCE, LENGTH, MOMENT, NUMBER, SPREAD, Dimension, Unit
from unpin.exact.number import Number, approx, sign
from unpin.exact.rounding import ExactForm, short_form
from unpin.lesson.formula import Amount, Formula, Function, Letter, Over, Product, Root, Signed, Sum, letter, quantity
from unpin.model.action import Action, Symbol
from unpin.model.equation import Functional
from unpin.model.house import PLAIN, House
from unpin.model.problem import Problem
from unpin.model.values import Quantity, Vector
from unpin.words import numbers
from unpin.words.numbers import Printed, Style
from unpin.words.sentences import catalogue

_LADDERS = (("N", "kN", "MN"), ("lb", "kip"), ("kgf", "tf"))
_TOO_LARGE, _TOO_SMALL = 1e6, 1e-3


@record
class Sheet:
    """`units` by dimension; `line_moment` the unit in which the numbers of a moment sum add up; `centres` the letters of moment
    centres that have no name (see `lesson.centres`)."""

    style: Style
    units: Mapping[Dimension, Unit]
    line_moment: Unit
    centres: tuple[tuple[Vector, str], ...] = ()
    house: House = PLAIN
    language: str = "en"

    def centre(self, of: Functional) -> str:
        """The name of a moment centre, or the letter it was given."""
        return of.point or next((letter for at, letter in self.centres if at == of.at), "Q")

    def sense(self, of: Functional) -> int:
        """1 where a sum keeps its signs, -1 where the positive sense of the house is the other way. A direction that is neither to
        the right nor up is its author's own."""
        if of.kind == "about":
            return self.house.moments
        x, y = (sign(c) for c in of.direction.vector)
        return self.house.x if (x, y) == (1, 0) else self.house.y if (x, y) == (0, 1) else 1

    def result(self, value: Number, dimension: Dimension, source: str = "") -> Amount:
        """A found value, rounded."""
        return Amount(numbers.measure(value, self.units[dimension], self.style), source)

    def size(self, value: Number, dimension: Dimension, source: str = "") -> Amount:
        """The magnitude of a found value."""
        return Amount(numbers.measure(value, self.units[dimension], self.style).size, source)

    def given(self, quantity: Quantity, source: str = "data", own_unit: bool = False) -> Amount:
        """A given quantity in the unit of the sheet, or in the author's own."""
        if quantity.dimension == NUMBER:
            return replace(self.ratio(quantity.value), source=source)
        own = own_unit and quantity.unit in BY_SPELLING
        of = BY_SPELLING[quantity.unit] if own else self.units[quantity.dimension]
        return Amount(numbers.given(quantity.value, quantity.written, of, self.style), source)

    def length(self, value: Number) -> Amount:
        shown = numbers.plain(value, self.units[LENGTH], self.style)
        return Amount(replace(shown, comma=self.style.decimal == ","), "arm")

    def coefficient(self, value: Number, dimension: Dimension) -> Amount:
        """What stands before an unknown in a collected sum: a bare number, a length, or an area."""
        if dimension in (NUMBER, LENGTH):
            return self.ratio(value) if dimension == NUMBER else self.length(value)
        of = self.units[LENGTH]
        power = dimension.length
        raised = f"{of.symbol}²" if power == 2 else f"1/{of.symbol}{'²' if power == -2 else ''}"
        return self.of(value, Unit(raised, dimension, of.factor**power, of.system))

    def of(self, value: Number, unit: Unit, source: str = "") -> Amount:
        """A value worked out on the way (a coefficient, a collected constant): short and exact, or with figures to spare."""
        return Amount(numbers.plain(value, unit, self.style), source)

    def reused(self, value: Number, unit: Unit, source: str = "") -> Amount:
        """A result that a later sum uses."""
        return Amount(numbers.reused(value, unit, self.style), source)

    def ratio(self, value: Number) -> Amount:
        """A bare number: digit for digit when short, else with figures to spare."""
        return Amount(numbers.ratio(value, self.style))

    def function(self, name: str, of: Formula) -> Function:
        """sin, cos or tan under the sign that the language has for it."""
        return Function(name, of, catalogue("language", self.language).get(f"function.{name}", ""))

    def whole(self, value: Number) -> Formula:
        """A bare number in its exact form: 4, 5/2, √2; rounded where there is no short one."""
        form = short_form(value)
        return exact_formula(form) if form else self.ratio(value)


def sheet_for(problem: Problem, values: Mapping[str, Number], figures: int = 0, language: str = "") -> Sheet:
    """The sheet of a problem. `figures` 0: what the problem says, else its house style, else three; `language` "": that of the house,
    else English. The unit of force moves a prefix up or down only when the largest force would be a million of it or a thousandth."""
    house = problem.house
    language = language or house.language or "en"
    places = None if figures or problem.figures else house.places
    style = Style(figures or problem.figures or house.figures or 3, house.leading_one, places, house.decimal or numbers.decimal_sign(language), numbers.sine_sign(language))
    units = dict(house.units or problem.units)
    force = BY_SPELLING[units.get("force", "N")]
    sizes = [abs(approx(v / force.factor)) for v in values.values()]
    sizes += [abs(approx(load.magnitude.value / force.factor)) for load in problem.loads if load.magnitude]
    moved = _readable(force, max(sizes, default=1.0))
    if moved != force:
        units["force"] = moved.symbol
        units.pop("moment", None)
        units.pop("spread", None)
    chosen = numbers.units_of(units)
    if any(load.kind == "spread" and load.sought for load in problem.loads) and not numbers.fits_spread(chosen):
        chosen = {**chosen, SPREAD: Unit(f"{chosen[FORCE].symbol}/{chosen[LENGTH].symbol}", SPREAD, chosen[FORCE].factor / chosen[LENGTH].factor, "both")}
    line = BY_SPELLING.get(f"{chosen[FORCE].symbol}·{chosen[LENGTH].symbol}")
    line = line or Unit(f"{chosen[FORCE].symbol}·{chosen[LENGTH].symbol}", MOMENT, chosen[FORCE].factor * chosen[LENGTH].factor, "both")
    return Sheet(style, chosen, line, house=house, language=language)


def _readable(force: Unit, largest: float) -> Unit:
    ladder = next((names for names in _LADDERS if force.symbol in names), (force.symbol,))
    place = ladder.index(force.symbol)
    while largest >= _TOO_LARGE and place + 1 < len(ladder):
        largest *= float(BY_SPELLING[ladder[place]].factor / BY_SPELLING[ladder[place + 1]].factor)
        place += 1
    while 0 < largest < _TOO_SMALL and place > 0:
        largest *= float(BY_SPELLING[ladder[place]].factor / BY_SPELLING[ladder[place - 1]].factor)
        place -= 1
    return BY_SPELLING[ladder[place]]


def symbol(of: Symbol) -> Letter:
    """The letter of an unknown, its base being the name of a point as the author wrote it, or as the house style names it."""
    return quantity(*(of.shown or (of.base, of.sub)), of.on)


def symbol_of(action: Action) -> Letter:
    """The letter at an arrow: of its unknown, or of a load (`P1` is P with the subscript 1)."""
    return symbol(action.symbol) if action.unknown or action.load is None else letter(action.symbol.base)


def exact_formula(form: ExactForm) -> Formula:
    """(sum of coefficient √radicand) / bottom."""
    terms = [Signed(-1 if c < 0 else 1, _rooted(abs(c), d)) for c, d in form.top]
    top: Formula = terms[0].of if len(terms) == 1 and terms[0].sign > 0 else Sum(tuple(terms))
    return top if form.bottom == 1 else Over(top, _integer(form.bottom))


def _rooted(coefficient: int, radicand: int) -> Formula:
    if radicand == 1:
        return _integer(coefficient)
    root = Root(_integer(radicand))
    return root if coefficient == 1 else Product((_integer(coefficient), root))


def _integer(value: int) -> Amount:
    return Amount(Printed((value > 0) - (value < 0), numbers.grouped(str(abs(value)))))


def half() -> Formula:
    return Over(_integer(1), _integer(2))


def way(value: Number) -> int:
    """Sign of a number for a term: zero counts as plus."""
    return -1 if sign(value) < 0 else 1


