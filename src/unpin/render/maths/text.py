"""Formulas as one line of Unicode text, for the terminal and plain-text fields."""

from __future__ import annotations

from unpin.lesson.formula import (
    Amount,
    Formula,
    Function,
    Header,
    Letter,
    Over,
    Product,
    Raised,
    Relation,
    Root,
    Signed,
    Squared,
    Sum,
    argument_needs_brackets,
    needs_brackets,
    raised_needs_brackets,
)
from unpin.words.numbers import MINUS


def write(formula: Formula) -> str:
    """`↺+ ΣM_A = 0`, `(4/5)(300 N)(2.4 m)`."""
    match formula:
        case Amount(printed):
            return printed.text
        case Letter(base, sub, on):
            under = ",".join(x for x in (sub, on) if x)
            return base + (f"_{under}" if under else "")
        case Function(_, of, _):
            return f"{formula.sign} ({write(of)})" if argument_needs_brackets(of) else f"{formula.sign} {write(of)}"
        case Over(top, bottom):
            return f"{_grouped(top)}/{_grouped(bottom)}"
        case Root(of):
            return f"√{_grouped(of)}"
        case Squared(of):
            return (f"({write(of)})" if raised_needs_brackets(of) else write(of)) + "²"
        case Raised(of, power):
            return (f"({write(of)})" if raised_needs_brackets(of) else write(of)) + ("³" if power == 3 else f"^{power}")
        case Product(factors):
            return product(factors)
        case Signed(sign, of, _):
            return (MINUS if sign < 0 else "") + write(of)
        case Sum(terms, continued):
            return summed(terms, continued)
        case Relation(left, right, sign):
            return f"{write(left)} {sign} {write(right)}"
        case Header(kind, sub, arrow):
            return f"{arrow}+ Σ{'F' if kind == 'forces' else 'M'}_{sub} = 0"
    raise TypeError(f"no text for {type(formula).__name__}")


def summed(terms: tuple[Signed, ...], continued: bool = False) -> str:
    out = ""
    for k, term in enumerate(terms):
        sign = MINUS if term.sign < 0 else ("+" if k or continued else "")
        first = k == 0 and term.sign > 0 and not continued
        out += (f" {sign} " if k else f"{sign} " if continued else sign) + (write(term.of) if first else _inner(term.of))
    return out or "0"


def product(factors: tuple[Formula, ...]) -> str:
    """Side by side; brackets touch brackets, everything else keeps a space."""
    out = ""
    alone = len(factors) == 1
    for item in factors:
        text = write(item)
        if needs_brackets(item, alone) or (isinstance(item, Over) and not alone):
            text = f"({text})"
        touching = out.endswith(")") and (text.startswith("(") or isinstance(item, Letter))
        out += ("" if not out or touching else " ") + text
    return out


def _inner(item: Formula) -> str:
    """The body of a term: a negative number after a sign stands in brackets."""
    text = write(item)
    return f"({text})" if needs_brackets(item, True) or isinstance(item, Sum) else text


def _grouped(item: Formula) -> str:
    text = write(item)
    if isinstance(item, Amount) and item.printed.shape is not None:
        return text if isinstance(item.shape, (Letter, Root)) and item.printed.sign >= 0 else f"({text})"
    simple = isinstance(item, (Letter, Root)) or (isinstance(item, Amount) and not item.printed.unit and item.printed.sign >= 0)
    return text if simple else f"({text})"
