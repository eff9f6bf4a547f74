"""Formulas as Typst mathematics (what stands between two dollar signs)."""

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
    subscript,
)


def write(formula: Formula) -> str:
    match formula:
        case Amount(printed):
            return _amount(printed) if printed.shape is None else write(formula.opened)
        case Letter(base, sub, on):
            return letter(base, sub, on)
        case Function(_, of, _):
            return f"op({quoted(formula.sign)}) {_argument(of)}"
        case Over(top, bottom):
            return f"frac({write(top)}, {write(bottom)})"
        case Root(of):
            return f"sqrt({write(of)})"
        case Squared(of):
            return _raised(of, 2)
        case Raised(of, power):
            return _raised(of, power)
        case Product(factors):
            return product(factors)
        case Signed(sign, of, _):
            return ("-" if sign < 0 else "") + _term(of)
        case Sum(terms, continued):
            return summed(terms, continued)
        case Relation(left, right, sign):
            return f"{write(left)} {sign} {write(right)}"
        case Header(kind, sub, arrow):
            what = "F" if kind == "forces" else "M"
            return f"{quoted(arrow)}thin+quad sum {what}_{_italic(sub)} = 0"
    raise TypeError(f"no Typst mathematics for {type(formula).__name__}")


def _raised(of: Formula, power: int) -> str:
    return f"({write(of)})^{power}" if raised_needs_brackets(of) else f"{write(of)}^{power}"


def _argument(of: Formula) -> str:
    return f"({write(of)})" if argument_needs_brackets(of) else write(of)


def quoted(text: str) -> str:
    """Text as a Typst string: backslash and quotation mark are the only special characters of one."""
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"').replace("\n", " ") + '"'


def _italic(text: str) -> str:
    return f"italic({quoted(text)})" if text and not text.isdigit() else quoted(text)


def letter(base: str, sub: str, on: str = "") -> str:
    if not sub and not on:
        return _italic(base)
    added = f'upright({quoted((", " if sub else "") + on)})' if on else ""
    return f"{_italic(base)}_({' '.join(_italic(part) for part, _ in subscript(sub))}{added})"


def product(factors: tuple[Formula, ...]) -> str:
    out = []
    for k, item in enumerate(factors):
        text = write(item)
        if needs_brackets(item, len(factors) == 1):
            text = f"({text})"
        if k and (isinstance(item, Function) or isinstance(factors[k - 1], (Function, Over))):
            out.append("thin")
        out.append(text)
    return " ".join(out)


def summed(terms: tuple[Signed, ...], continued: bool = False) -> str:
    out = []
    for k, term in enumerate(terms):
        sign = "-" if term.sign < 0 else ("+" if k or continued else "")
        first = k == 0 and term.sign > 0 and not continued
        out.append(f"{sign} {write(term.of) if first else _term(term.of)}".strip())
    return " ".join(out) or "0"


def _term(item: Formula) -> str:
    text = write(item)
    return f"({text})" if needs_brackets(item, True) or isinstance(item, Sum) else text


def _amount(printed) -> str:
    minus = "-" if printed.sign < 0 else ""
    if not printed.unit:
        return minus + quoted(printed.digits)
    if printed.unit == "°":
        return minus + quoted(printed.digits + "°")
    return f"{minus}{quoted(printed.digits)} thin upright({quoted(printed.unit)})"
