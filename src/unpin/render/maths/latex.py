"""Formulas as LaTeX mathematics (what stands between dollar signs): LaTeX with amsmath, and what Markdown converters take for it."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from unpin.lesson.formula import (
    GREEK,
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
from unpin.lesson.nodes import Line
from unpin.render.maths.rows import rows
from unpin.words.numbers import THIN

_GREEK = {sign: "o" if name == "omicron" else f"\\{name}" for name, sign in GREEK.items()}
_ARROWS = {"→": r"\rightarrow", "←": r"\leftarrow", "↑": r"\uparrow", "↓": r"\downarrow", "↗": r"\nearrow", "↘": r"\searrow",
           "↖": r"\nwarrow", "↙": r"\swarrow", "↺": r"\circlearrowleft", "↻": r"\circlearrowright"}
_SIGNS = {"≈": r"\approx", "≠": r"\neq", "≤": r"\leq", "≥": r"\geq"}
_IN_TEXT = {"\\": r"\backslash ", "{": r"\{", "}": r"\}", "$": r"\$", "&": r"\&", "#": r"\#", "%": r"\%", "_": r"\_"}


def write(formula: Formula) -> str:
    r"""`{\circlearrowleft}{+}\quad {\textstyle\sum} M_{A} = 0`, `\frac{4}{5} \, (300\,\mathrm{N})(2.4\,\mathrm{m})`."""
    match formula:
        case Amount(printed):
            return _amount(printed) if printed.shape is None else write(formula.opened)
        case Letter(base, sub, on):
            return letter(base, sub, on)
        case Function(_, of, _):
            sign = formula.sign
            return f"\\{sign} {_argument(of)}" if sign in ("sin", "cos", "tan") else f"\\operatorname{{{sign}}} {_argument(of)}"
        case Over(top, bottom):
            return f"\\frac{{{write(top)}}}{{{write(bottom)}}}"
        case Root(of):
            return f"\\sqrt{{{write(of)}}}"
        case Squared(of):
            return _raised(of, 2)
        case Raised(of, power):
            return _raised(of, power)
        case Product(factors):
            return _product(factors)
        case Signed(sign, of, _):
            return ("-" if sign < 0 else "") + _term(of)
        case Sum(terms, continued):
            return _summed(terms, continued)
        case Relation(left, right, sign):
            return f"{write(left)} {_SIGNS.get(sign, sign)} {write(right)}"
        case Header(kind, sub, arrow):
            return f"{{{_ARROWS[arrow]}}}{{+}}\\quad {{\\textstyle\\sum}} {'F' if kind == 'forces' else 'M'}_{{{_italic(sub)}}} = 0"
    raise TypeError(f"no LaTeX mathematics for {type(formula).__name__}")


def _raised(of: Formula, power: int) -> str:
    return f"({write(of)})^{{{power}}}" if raised_needs_brackets(of) else f"{{{write(of)}}}^{{{power}}}"


def _argument(of: Formula) -> str:
    return f"({write(of)})" if argument_needs_brackets(of) else write(of)


def working(header: Formula | None, lines: Sequence[Line], room: int) -> str:
    """A sum with its header and lines under each other, set from the left; a long line is broken at a sign after `room` characters
    and a result is underlined."""
    out = [write(header)] if header is not None else []
    for line in lines:
        for k, row in enumerate(rows(line.formula, room)):
            # In braces, so that a minus at the head is that of a number, not one between two.
            text = f"{{{write(row)}}}"
            out.append(("\\qquad" if k else "\\quad") + (f"\\underline{text}" if line.name == "result" else text))
    return "\\begin{aligned}\n" + " \\\\\n".join(f"&{text}" for text in out) + "\n\\end{aligned}"


def arrow(sign: str) -> str:
    """An arrow of a sense; "" for none."""
    return _ARROWS.get(sign, "")


def letter(base: str, sub: str, on: str = "") -> str:
    if not sub and not on:
        return _italic(base)
    added = f"\\text{{{', ' if sub else ''}{upright(on)}}}" if on else ""
    return f"{_italic(base)}_{{{''.join(_italic(part) for part, _ in subscript(sub))}{added}}}"


def upright(text: str) -> str:
    """Words inside mathematics."""
    return "".join(_IN_TEXT.get(c, c) for c in text)


def _italic(name: str) -> str:
    """Letters as one word, digits upright, Greek by name; letters that mathematics has no sign for as slanted text."""
    if name in _GREEK:
        return _GREEK[name]
    if name.isascii() and name.isalnum():
        return name if len(name) == 1 or name.isdigit() else f"\\mathit{{{name}}}"
    if all(c in _GREEK or c.isascii() and c.isalnum() for c in name):
        return "".join(f"{{{_GREEK.get(c, c)}}}" for c in name)
    return f"\\textit{{{upright(name)}}}"


def _product(factors: tuple[Formula, ...]) -> str:
    out = []
    for k, item in enumerate(factors):
        text = write(item)
        if needs_brackets(item, len(factors) == 1):
            text = f"({text})"
        if k and (isinstance(item, Function) or isinstance(factors[k - 1], (Function, Over))):
            out.append("\\,")
        out.append(text)
    return " ".join(out)


def _summed(terms: tuple[Signed, ...], continued: bool = False) -> str:
    out = []
    for k, term in enumerate(terms):
        sign = "-" if term.sign < 0 else ("+" if k or continued else "")
        first = k == 0 and term.sign > 0 and not continued
        # A sign at the head of a continued row still stands between two terms.
        out.append(f"{'{}' if continued and not k else ''}{sign} {write(term.of) if first else _term(term.of)}".strip())
    return " ".join(out) or "0"


def _term(item: Formula) -> str:
    text = write(item)
    return f"({text})" if needs_brackets(item, True) or isinstance(item, Sum) else text


def _amount(printed) -> str:
    number = ("-" if printed.sign < 0 else "") + printed.digits.replace(",", "{,}").replace(THIN, "\\,")
    if not printed.unit:
        return number
    if printed.unit == "°":
        return number + "^{\\circ}"
    unit = printed.unit.replace("·", "{\\cdot}").replace("²", "^{2}")
    return f"{number}\\,\\mathrm{{{unit}}}"


def inline(run: Sequence[str | Formula], words: Callable[[str, int], str]) -> str:
    """A sentence: its words as `words` writes them (with their place in the run), neighbouring formulas as one between dollars."""
    out: list[str] = []
    for k, piece in enumerate(run):
        if isinstance(piece, str):
            out.append(words(piece, k))
        elif k and not isinstance(run[k - 1], str):
            out[-1] = f"{out[-1][:-1]} {write(piece)}$"
        else:
            out.append(f"${write(piece)}$")
    return "".join(out).strip()
