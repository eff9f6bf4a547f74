"""Formulas as MathML Core. Terms carry `data-action`, the header an `intent`, so that it is read as a sum of moments."""

from __future__ import annotations

from html import escape

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
from unpin.words.numbers import MINUS, THIN

_GAP = '<mspace width="0.17em"/>'


def write(formula: Formula, spoken: str = "", block: bool = False) -> str:
    """A whole `<math>` element; `spoken` becomes its text alternative."""
    alt = f' aria-label="{escape(spoken)}" role="math"' if spoken else ""
    display = ' display="block"' if block else ""
    return f"<math{display}{alt}>{inner(formula)}</math>"


def pieces(formula: Formula) -> list[str]:
    """A line of working as `<math>` elements between which it may be broken: before each sign of its sum and before the
    relation. Only the first is without a leading sign of its own; read aloud they are one line (see `render.html`)."""
    if not isinstance(formula, Relation) or not isinstance(formula.left, Sum) or len(formula.left.terms) < 2:
        return [_piece(inner(formula))]
    terms = [_piece(summed((term,), continued=k > 0)) for k, term in enumerate(formula.left.terms)]
    return [*terms, _piece(f'<mo form="infix">{escape(formula.sign)}</mo>{inner(formula.right)}')]


def _piece(content: str) -> str:
    return f'<math displaystyle="true">{content}</math>'


def inner(formula: Formula) -> str:
    match formula:
        case Amount(printed):
            return _amount(printed) if printed.shape is None else inner(formula.opened)
        case Letter(base, sub, on):
            return letter(base, sub, on)
        case Function(_, of, _):
            return f"<mrow><mi>{escape(formula.sign)}</mi><mo>&#x2061;</mo>{_GAP}{_argument(of)}</mrow>"
        case Over(top, bottom):
            return f"<mfrac><mrow>{inner(top)}</mrow><mrow>{inner(bottom)}</mrow></mfrac>"
        case Root(of):
            return f"<msqrt>{inner(of)}</msqrt>"
        case Squared(of):
            return f"<msup><mrow>{_raised(of)}</mrow><mn>2</mn></msup>"
        case Raised(of, power):
            return f"<msup><mrow>{_raised(of)}</mrow><mn>{power}</mn></msup>"
        case Product(factors):
            return f"<mrow>{product(factors)}</mrow>"
        case Signed(sign, of, action):
            return _tagged((_operator(MINUS, "prefix") if sign < 0 else "") + _term(of), action)
        case Sum(terms, continued):
            return f"<mrow>{summed(terms, continued)}</mrow>"
        case Relation(left, right, sign):
            return f"<mrow>{inner(left)}<mo>{escape(sign)}</mo>{inner(right)}</mrow>"
        case Header(kind, sub, arrow):
            return _header(kind, sub, arrow)
    raise TypeError(f"no MathML for {type(formula).__name__}")


def _raised(of: Formula) -> str:
    return _brackets(inner(of)) if raised_needs_brackets(of) else inner(of)


def _argument(of: Formula) -> str:
    return _brackets(inner(of)) if argument_needs_brackets(of) else inner(of)


def letter(base: str, sub: str, on: str = "") -> str:
    italic = _letters(base)
    if not sub and not on:
        return italic
    below = _letters(sub) if sub else ""
    if on:
        below += f"<mtext>{', ' if sub else ''}{escape(on)}</mtext>"
    return f"<msub>{italic}<mrow>{below}</mrow></msub>" if sub and on else f"<msub>{italic}{below}</msub>"


def _letters(name: str) -> str:
    """Each letter an identifier of its own, so that names of several letters are italic too."""
    out = "".join(f"<mn>{c}</mn>" if c.isdigit() else f"<mi>{escape(c)}</mi>" for c in name)
    return out if len(name) == 1 else f"<mrow>{out}</mrow>"


def product(factors: tuple[Formula, ...]) -> str:
    out = []
    for k, item in enumerate(factors):
        text = inner(item)
        if needs_brackets(item, len(factors) == 1):
            text = _brackets(text)
        gap = _GAP if k and not (isinstance(item, Amount) and isinstance(factors[k - 1], Amount)) else ""
        out.append(("<mo>&#x2062;</mo>" + gap if k else "") + text)
    return "".join(out)


def summed(terms: tuple[Signed, ...], continued: bool = False) -> str:
    out = []
    for k, term in enumerate(terms):
        sign = MINUS if term.sign < 0 else ("+" if k or continued else "")
        first = k == 0 and term.sign > 0 and not continued
        body = (_operator(sign, "infix" if k or continued else "prefix") if sign else "") + (inner(term.of) if first else _term(term.of))
        out.append(_tagged(body, term.action))
    return "".join(out) or "<mn>0</mn>"


def _tagged(body: str, action: str) -> str:
    mark = f' class="term" data-action="{escape(action)}"' if action else ""
    return f"<mrow{mark}>{body}</mrow>"


def _term(item: Formula) -> str:
    text = inner(item)
    return _brackets(text) if needs_brackets(item, True) or isinstance(item, Sum) else text


def _operator(sign: str, form: str) -> str:
    return f'<mo form="{form}">{sign}</mo>'


def _brackets(text: str) -> str:
    return f'<mrow><mo stretchy="false">(</mo>{text}<mo stretchy="false">)</mo></mrow>'


def _amount(printed) -> str:
    minus = _operator(MINUS, "prefix") if printed.sign < 0 else ""
    number = f"<mn>{printed.digits}</mn>"
    if not printed.unit:
        return f"<mrow>{minus}{number}</mrow>" if minus else number
    gap = "" if printed.unit == "°" else '<mspace width="0.2em"/>'
    return f'<mrow>{minus}{number}{gap}<mtext class="unit">{escape(printed.unit)}</mtext></mrow>'


def _header(kind: str, sub: str, arrow: str) -> str:
    what = "F" if kind == "forces" else "M"
    intent = "sum-of-forces" if kind == "forces" else "sum-of-moments"
    head = f'<mrow intent="{intent}($about)"><mo form="prefix" largeop="false" movablelimits="false">&#x2211;</mo>' \
           f'<msub><mi>{what}</mi><mrow arg="about">{_letters(sub)}</mrow></msub></mrow>'
    return f'<mrow><mtext class="sense">{arrow}{THIN}+</mtext><mspace width="0.5em"/>{head}<mo>=</mo><mn>0</mn></mrow>'
