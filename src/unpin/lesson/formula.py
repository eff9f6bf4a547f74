"""The mathematics of a lesson: one small tree, from which every format makes its own (see `render.maths`).

Nothing here is a string of markup. A number is an `Amount` that was rounded once by `words.numbers`; a term of a sum
carries the id of the arrow it stands for, so that a page can light up both.
"""

from __future__ import annotations

import re
from dataclasses import replace

from unpin.base.record import record
from unpin.exact.expression import Apply, Expression, Literally, Name
from unpin.words import numbers
from unpin.words.lettered import GREEK
from unpin.words.numbers import Printed


@record
class Amount:
    """A number with its unit. `source`: what it comes from (id of an action or unknown, `data`, `arm`). `apart`: stands in brackets
    beside other factors although no unit is written."""

    printed: Printed
    source: str = ""
    apart: bool = False

    @property
    def shape(self) -> Formula | None:
        """Of a value with letters, the formula of its size; None for a number."""
        return of_expression(self.printed.shape, self.printed) if self.printed.shape is not None else None

    @property
    def opened(self) -> Formula:
        """The same with its sign."""
        return Signed(-1, self.shape) if self.printed.sign < 0 else self.shape


@record
class Letter:
    """A quantity symbol: `base` italic, `sub` its subscript (see `subscript`), `on` an upright addition."""

    base: str
    sub: str = ""
    on: str = ""


@record
class Function:
    """sin, cos or tan of an angle. `written`: the sign of the language for it, "" for the name itself."""

    name: str
    of: Formula
    written: str = ""

    @property
    def sign(self) -> str:
        return self.written or self.name


@record
class Over:
    top: Formula
    bottom: Formula


@record
class Root:
    of: Formula


@record
class Squared:
    of: Formula


@record
class Raised:
    """A power above the second."""

    of: Formula
    power: int


@record
class Product:
    """Written side by side; amounts stand in brackets when something stands beside them."""

    factors: tuple[Formula, ...]


@record
class Signed:
    """One term of a sum: sign -1 or 1, its body, and the id of the action it stands for."""

    sign: int
    of: Formula
    action: str = ""


@record
class Sum:
    """`continued`: the rest of a sum that began on the line above, so that a leading plus is written."""

    terms: tuple[Signed, ...]
    continued: bool = False


@record
class Relation:
    """left = right; `sign` = or ≈ and the like."""

    left: Formula
    right: Formula
    sign: str = "="


@record
class Header:
    """What is summed and which way is positive: `→+ ΣF_x = 0`, `↺+ ΣM_A = 0`. `kind` forces or moments; `arrow` the
    positive sense; `sub` the axis or the centre."""

    kind: str
    sub: str
    arrow: str


Formula = Amount | Letter | Function | Over | Root | Squared | Raised | Product | Signed | Sum | Relation | Header

ZERO = Amount(Printed(0, "0"))

def letter(name: str) -> Letter:
    """A letter as an author types it: `theta` is θ, `P1` and `P_1` are P with the subscript 1.

    >>> letter("P1")
    Letter(base='P', sub='1', on='')
    """
    base, under, sub = name.partition("_")
    if not under:
        base = name.rstrip("0123456789") or name
        sub = name[len(base):]
    return Letter(GREEK.get(base, base), sub)


def quantity(name: str, sub: str = "", on: str = "") -> Letter:
    """The letter of a quantity whose base is a name of the author, its own digits before the subscript: `A1` with x is A with 1x. The one
    place that letters names, for sums, sentences and figures alike.

    >>> quantity("A1", "x")
    Letter(base='A', sub='1x', on='')
    """
    own = letter(name)
    return Letter(own.base, own.sub + sub, on)


def subscript(sub: str) -> tuple[tuple[str, bool], ...]:
    """A subscript in stretches, each with whether it is upright: digits are, names of points and axes are not.

    >>> subscript("1x")
    (('1', True), ('x', False))
    """
    return tuple((part, part.isdigit()) for part in re.findall(r"\d+|\D+", sub))


def needs_brackets(item: Formula, alone: bool) -> bool:
    """Whether a factor stands in brackets: amounts with a unit or a minus beside other factors, sums, signed terms."""
    if isinstance(item, Amount) and item.printed.shape is not None:
        return item.printed.sign < 0 or item.printed.is_sum or not alone and not isinstance(item.shape, (Letter, Function, Root))
    if isinstance(item, Amount):
        return (not alone and (item.apart or bool(item.printed.unit))) or item.printed.sign < 0
    return isinstance(item, (Sum, Signed, Relation)) and not alone


def raised_needs_brackets(item: Formula) -> bool:
    """Whether what is raised to a power stands in brackets."""
    return needs_brackets(item, False) or isinstance(item, (Function, Over, Product, Signed, Sum))


def argument_needs_brackets(item: Formula) -> bool:
    """Whether the argument of a function stands in brackets: sums and products of letters."""
    return isinstance(item, Amount) and isinstance(item.shape, (Sum, Product, Over))


def of_expression(e: Expression, style: Printed) -> Formula:
    """An expression with letters, its numbers rounded already, in the decimal sign of what is printed."""
    def inner(x: Expression) -> Formula:
        return of_expression(x, style)

    match e:
        case Literally(value):
            return Amount(numbers.exactly(value, 20, "," if style.comma else "."))
        case Name(name):
            return letter(name)
        case Apply("neg", (of,)):
            return Signed(-1, inner(of))
        case Apply("sqrt", (of,)):
            return Root(inner(of))
        case Apply("^", (base, Literally(power))):
            return Squared(inner(base)) if power == 2 else Raised(inner(base), int(power))
        case Apply("+" | "-" as way, (a, b)):
            first = inner(a)
            begun = first.terms if isinstance(first, Sum) else (first if isinstance(first, Signed) else Signed(1, first),)
            return Sum((*begun, Signed(1 if way == "+" else -1, inner(b))))
        case Apply("*", (a, Name("°"))):
            return Amount(replace(numbers.exactly(a.value, 20, "," if style.comma else "."), unit="°"))
        case Apply("*", (a, b)):
            first = inner(a)
            return Product((*(first.factors if isinstance(first, Product) else (first,)), inner(b)))
        case Apply("/", (a, b)):
            return Over(inner(a), inner(b))
        case Apply(name, (of,)):
            argument = Amount(Printed(1, "", shape=of, comma=style.comma, sine=style.sine)) if isinstance(of, Apply) else inner(of)
            return Function(name, argument, style.sine if name == "sin" and style.sine != "sin" else "")
    raise TypeError(type(e).__name__)


def symbols(formula: Formula) -> tuple[Letter, ...]:
    """Every quantity symbol in the tree, in order, each once."""
    return tuple(dict.fromkeys(_letters(formula)))


def actions(formula: Formula) -> tuple[str, ...]:
    """Ids of the arrows whose terms stand in the tree, in order."""
    if isinstance(formula, Signed):
        return (formula.action,) if formula.action else ()
    if isinstance(formula, Sum):
        return tuple(a for t in formula.terms for a in actions(t))
    if isinstance(formula, Relation):
        return actions(formula.left) + actions(formula.right)
    return ()


def _letters(formula: Formula):
    if isinstance(formula, Letter):
        yield formula
    for child in children(formula):
        yield from _letters(child)


def children(formula: Formula) -> tuple[Formula, ...]:
    """The parts of a node, left to right."""
    match formula:
        case Function(_, of, _) | Root(of) | Squared(of) | Raised(of, _) | Signed(_, of, _):
            return (of,)
        case Over(top, bottom):
            return (top, bottom)
        case Product(factors):
            return factors
        case Sum(terms, _):
            return terms
        case Relation(left, right, _):
            return (left, right)
    return ()
