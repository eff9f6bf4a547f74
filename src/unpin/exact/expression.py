"""Arithmetic as data: the one grammar of expressions, for problem files, a teacher's sums and students' lines.

    sum     := product (("+" | "-") product)*
    product := signed (("*" | "/")? signed)*        no sign is needed in `2a`, `1/2 kN m`, `2(a + b)`; `lb-ft` is a product
    signed  := ("-" | "+") signed | power
    power   := atom ("^" signed)?
    atom    := number | name | function "(" sum ")" | "(" sum ")"

Numbers are decimal and exact (`0.1` is one tenth); functions are sqrt and sin, cos, tan of degrees. Products and quotients
are taken from left to right, so that `1/2 a` is half of a and `4 kN/m` is four times kN over m.

>>> evaluate(parse("3/4 + 0.5^2"), {})
Fraction(1, 1)
>>> evaluate(parse("2a sin(30)"), {"a": Fraction(3)})
Fraction(3, 1)
"""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Mapping
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from typing import Literal, Union

from unpin.base.record import record
from unpin.base.units import BY_SPELLING, FORCE, LENGTH
from unpin.exact.lettered import Lettered
from unpin.exact.number import NoWholeMultiple, Number, cos_deg, sin_deg, sqrt, tan_deg, to_digits
from unpin.exact.ratio import Ratio
from unpin.exact.surd import Surd

FUNCTIONS = ("sqrt", "sin", "cos", "tan")
MOST_TOKENS, DEEPEST, LONGEST_NUMBER, LARGEST_POWER, MOST_ROOTS = 200, 20, 30, 20, 6
_TOO_LARGE, _TOO_SMALL = Fraction(10) ** 40, Fraction(1, 10**40)

_TOKEN = re.compile(r"(?P<number>\d+(?:\.\d+)?|\.\d+)|(?P<word>[^\W\d_²³][^\W²³]*'*|°)|(?P<power>[²³])|(?P<symbol>\S)|\s+")
_SAME = {"−": "-", "–": "-", "×": "*", "·": "*", "⋅": "*", "÷": "/", "²": "2", "³": "3"}


@record
class Token:
    """A number, word or symbol of a line; `start` and `end` are columns in it, from 0. The last token is an `end`."""

    kind: Literal["number", "word", "symbol", "end"]
    text: str
    start: int
    end: int


def tokens(text: str) -> list[Token]:
    """Split a line; raised signs (`²`) become `^` and a number. Nothing is refused here."""
    out: list[Token] = []
    for m in _TOKEN.finditer(text):
        kind, start, end = m.lastgroup, m.start(), m.end()
        if kind == "power":
            out += [Token("symbol", "^", start, start), Token("number", _SAME[m.group()], start, end)]
        elif kind:
            said = _SAME.get(m.group(), m.group()) if kind == "symbol" else m.group()
            out.append(Token(kind, said, start, end))
    out.append(Token("end", "", len(text.rstrip()), len(text.rstrip()) + 1))
    return out


@record
class Literally:
    """A number as typed."""

    value: Fraction
    start: int
    end: int


@record
class Name:
    """A letter or a unit."""

    name: str
    start: int
    end: int


@record
class Apply:
    """An operation: `+ - * / ^` of two, `neg` or a function of one."""

    operation: str
    operands: tuple[Expression, ...]
    start: int
    end: int


Expression = Union[Literally, Name, Apply]


class NotAnExpression(Exception):
    """At token `index`, one of `wanted` (codes: number, name, bracket, closing bracket, shorter) should have stood."""

    def __init__(self, index: int, wanted: str):
        self.index, self.wanted = index, wanted
        super().__init__(f"{wanted} wanted at {index}")


class CannotEvaluate(Exception):
    """`code`: unknown_name, division_by_zero, negative_root, power, out_of_range; `start`, `end`: columns of the culprit."""

    def __init__(self, code: str, start: int, end: int, name: str = ""):
        self.code, self.start, self.end, self.name = code, start, end, name
        super().__init__(f"{code} {name}")


def parse(text: str) -> Expression:
    """The whole text as one expression; NotAnExpression if it is none."""
    line = tokens(text)
    found, index = parse_at(line, 0)
    if line[index].kind != "end":
        raise NotAnExpression(index, "operator")
    return found


def parse_at(line: list[Token], index: int, stops: Collection[str] = ()) -> tuple[Expression, int]:
    """The longest expression that starts at a token, and the index after it; words in `stops` are no names."""
    return _Parser(line, index, stops).whole()


class _Parser:
    def __init__(self, line: list[Token], index: int, stops: Collection[str]):
        self.line, self.index, self.stops = line, index, stops
        self.last, self.depth = index + MOST_TOKENS, 0

    @property
    def token(self) -> Token:
        return self.line[self.index]

    def take(self) -> Token:
        if self.index >= self.last:
            raise NotAnExpression(self.index, "shorter")
        self.index += 1
        return self.line[self.index - 1]

    def whole(self) -> tuple[Expression, int]:
        return self.sum(), self.index

    def is_symbol(self, *texts: str) -> bool:
        return self.token.kind == "symbol" and self.token.text in texts

    def is_name(self) -> bool:
        return self.token.kind == "word" and self.token.text not in self.stops

    def joins(self, left: Expression) -> bool:
        """Whether the next name is a factor without a sign. Not after a lone name: two names side by side are more often
        a slip of the pen than a product."""
        return self.is_name() and (not isinstance(left, Name) or self.token.text in FUNCTIONS)

    def hyphenated(self) -> bool:
        """Whether a hyphen joins a unit of force and one of length, as in `lb-ft` and `N-m`: a product. No letter is named like a unit."""
        if not self.is_symbol("-") or self.index == 0:
            return False
        before, sign, after = self.line[self.index - 1 : self.index + 2]
        kinds = [BY_SPELLING[t.text].dimension for t in (before, after) if t.kind == "word" and t.text in BY_SPELLING]
        return before.end == sign.start and sign.end == after.start and kinds in ([FORCE, LENGTH], [LENGTH, FORCE])

    def sum(self) -> Expression:
        left = self.product()
        while self.is_symbol("+", "-"):
            left = _two(self.take().text, left, self.product())
        return left

    def product(self) -> Expression:
        left = self.signed()
        while True:
            if self.is_symbol("*", "/"):
                left = _two(self.take().text, left, self.signed())
            elif self.hyphenated():
                self.take()
                left = _two("*", left, self.power())
            elif self.joins(left) or (self.is_symbol("(") and self.token.start == self.line[self.index - 1].end):
                left = _two("*", left, self.power())
            else:
                return left

    def signed(self) -> Expression:
        if self.is_symbol("-", "+"):
            sign = self.take()
            with self:
                inner = self.signed()
            return inner if sign.text == "+" else Apply("neg", (inner,), sign.start, inner.end)
        return self.power()

    def power(self) -> Expression:
        base = self.atom()
        if self.is_symbol("^"):
            self.take()
            with self:
                return _two("^", base, self.signed())
        return base

    def atom(self) -> Expression:
        token = self.token
        if token.kind == "number":
            if len(token.text) > LONGEST_NUMBER:
                raise NotAnExpression(self.index, "shorter")
            self.take()
            return Literally(Fraction(token.text), token.start, token.end)
        if self.is_symbol("("):
            return self.bracket()
        if self.is_name():
            self.take()
            if token.text in FUNCTIONS:
                if not self.is_symbol("("):
                    raise NotAnExpression(self.index, "bracket")
                inner = self.bracket()
                return Apply(token.text, (inner,), token.start, self.line[self.index - 1].end)
            return Name(token.text, token.start, token.end)
        raise NotAnExpression(self.index, "number")

    def bracket(self) -> Expression:
        start = self.take().start
        with self:
            inner = self.sum()
        if not self.is_symbol(")"):
            raise NotAnExpression(self.index, "closing")
        return replace(inner, start=start, end=self.take().end)

    def __enter__(self) -> None:
        self.depth += 1
        if self.depth > DEEPEST:
            raise NotAnExpression(self.index, "shorter")

    def __exit__(self, *_: object) -> None:
        self.depth -= 1


def _two(operation: str, a: Expression, b: Expression) -> Apply:
    return Apply(operation, (a, b), a.start, b.end)


def names(expression: Expression) -> list[Name]:
    """Every name in it, from left to right."""
    if isinstance(expression, Name):
        return [expression]
    if isinstance(expression, Apply):
        return [n for operand in expression.operands for n in names(operand)]
    return []


def evaluate(expression: Expression, letters: Mapping[str, Number]) -> Number:
    """Its exact value; CannotEvaluate where it has none. Sums of many roots become fifty digits, so that no text of a
    few lines can take long."""
    if isinstance(expression, Literally):
        return expression.value
    if isinstance(expression, Name):
        if expression.name not in letters:
            raise CannotEvaluate("unknown_name", expression.start, expression.end, expression.name)
        return letters[expression.name]
    values = [evaluate(operand, letters) for operand in expression.operands]
    start, end = expression.start, expression.end
    try:
        if expression.operation == "^":
            return _bounded(_power(values[0], values[1], start, end), start, end)
        return _bounded(_OPERATIONS[expression.operation](*values), start, end)
    except ZeroDivisionError:
        raise CannotEvaluate("division_by_zero", start, end) from None
    except NoWholeMultiple:
        raise
    except ValueError:
        raise CannotEvaluate("negative_root", start, end) from None


_OPERATIONS: dict[str, Callable[..., Number]] = {
    "+": lambda a, b: a + b,
    "-": lambda a, b: a - b,
    "*": lambda a, b: a * b,
    "/": lambda a, b: a / b,
    "neg": lambda a: -a,
    "sqrt": sqrt,
    "sin": sin_deg,
    "cos": cos_deg,
    "tan": tan_deg,
}


def _power(base: Number, power: Number, start: int, end: int) -> Number:
    if not isinstance(power, Fraction) or power.denominator != 1 or abs(power) > LARGEST_POWER:
        raise CannotEvaluate("power", start, end)
    if not isinstance(base, (Fraction, Lettered)) and abs(power) > 2:
        base = to_digits(base)
    return base ** int(power)


def _bounded(value: Number, start: int, end: int) -> Number:
    """Refuse what no problem needs, and keep exact only what stays small."""
    if (
        isinstance(value, Surd)
        and len(value.terms) > MOST_ROOTS
        or isinstance(value, Ratio)
        and len(value.top) + len(value.bottom) > 20
    ):
        value = to_digits(value)
    if isinstance(value, Fraction):
        size = abs(value)
        if value and not _TOO_SMALL < size < _TOO_LARGE or value.denominator.bit_length() > 1000:
            raise CannotEvaluate("out_of_range", start, end)
    elif not 1e-40 < abs(float(value)) < 1e40 and value != 0:
        raise CannotEvaluate("out_of_range", start, end)
    return value


_BINDS = {"+": 1, "-": 1, "neg": 3, "*": 3, "/": 3, "^": 5}
# -2*P is the same whether the sign belongs to the product or to its first factor.


_PLACES = 16
"""A number with at most so many decimal places is written as a decimal."""


def grammar(e: Expression) -> str:
    """An expression as the grammar above reads it back."""
    if isinstance(e, Literally):
        whole, short = e.value.denominator == 1, e.value * 10**_PLACES
        if not whole and short.denominator == 1 and abs(e.value) < 10**12:
            return f"{Decimal(short.numerator).scaleb(-_PLACES).normalize():f}"
        return str(e.value.numerator) if whole else f"({e.value.numerator}/{e.value.denominator})"
    if isinstance(e, Name):
        return e.name
    if e.operation not in _BINDS:
        return f"{e.operation}({grammar(e.operands[0])})"
    mine = _BINDS[e.operation]
    parts = [grammar(o) for o in e.operands]
    loose = [isinstance(o, Apply) and o.operation in _BINDS and (_BINDS[o.operation] < mine or k and _BINDS[o.operation] == mine) for k, o in enumerate(e.operands)]
    parts = [f"({p})" if low else p for p, low in zip(parts, loose)]
    return f"-{parts[0]}" if e.operation == "neg" else f"{parts[0]} {e.operation} {parts[1]}" if mine == 1 else e.operation.join(parts)
