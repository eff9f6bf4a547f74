"""How a value with letters is printed: the expression of `exact.shape` with its numbers rounded, and the same as one line of text."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from unpin.base.units import ANGLE, Unit
from unpin.exact.expression import Apply, Expression, Literally, Name
from unpin.exact.lettered import Lettered

Rounded = Callable[[Fraction], Fraction]
GREEK = {name: chr(code) for name, code in zip(
    ["alpha", "beta", "gamma", "delta", "epsilon", "zeta", "eta", "theta", "iota", "kappa", "lambda", "mu", "nu", "xi", "omicron", "pi", "rho"], range(0x3B1, 0x3C2))}
GREEK.update({name: chr(code) for name, code in zip(["sigma", "tau", "upsilon", "phi", "chi", "psi", "omega"], range(0x3C3, 0x3CA))})


def written(value: Lettered, of: Unit) -> tuple[int, Expression]:
    """Sign as drawn and size, its numbers not yet rounded."""
    from unpin.exact.shape import shape

    if of.dimension == ANGLE:
        return degrees(value)
    return shape(value, of.dimension, of.factor)[:2]


def degrees(value: Lettered) -> tuple[int, Expression]:
    """A sum of multiples of letter angles, with a degree sign at its number."""
    from unpin.exact.writer import added, multiplied, number, times_name

    letters, (top, bottom) = value.letters, value.sums[()]
    below, parts, numbers = int(bottom.leading_coefficient()), [], []
    for powers, c in top.terms():
        share, held = Fraction(int(c), below), [letters.generators[k] for k, power in enumerate(powers) if power]
        size = [number(abs(share))] if abs(share) != 1 or not held else []
        if held and held[0].parts > 1:
            one = times_name(abs(share) / held[0].parts, held[0].name)
        else:
            one = multiplied([*size, Name(held[0].name if held else "°", 0, 0)])
        (parts if held else numbers).append((1 if share > 0 else -1, one))
    parts = sorted(parts, key=lambda p: p[0] < 0)
    lead = numbers + parts if numbers and (numbers[0][0] > 0 and parts[0][0] < 0) else parts + numbers
    return 1, added(lead)


def with_numbers(e: Expression, rounded: Rounded) -> Expression:
    """The same expression, its numbers rounded; small whole ones stay."""
    if isinstance(e, Literally):
        return e if e.value.denominator == 1 and e.value < 10**6 else Literally(rounded(e.value), 0, 0)
    if isinstance(e, Apply):
        return Apply(e.operation, tuple(with_numbers(o, rounded) for o in e.operands), 0, 0)
    return e


def text(e: Expression, figure: Callable[[Fraction], str], sine: str = "sin") -> str:
    """One line: `P √(a² + h²)/h`."""
    match e:
        case Literally(value):
            return figure(value)
        case Name(name):
            base, _, sub = name.partition("_")
            return GREEK.get(base, base) + (f"_{sub}" if sub else "")
        case Apply("neg", (of,)):
            return "−" + _bracketed(of, figure, "+-", sine)
        case Apply("sqrt", (of,)):
            inside = text(of, figure, sine)
            return f"√{inside}" if isinstance(of, (Name, Literally)) else f"√({inside})"
        case Apply("^", (base, Literally(power))):
            raised = "".join("⁰¹²³⁴⁵⁶⁷⁸⁹"[int(d)] for d in str(int(power)))
            return (text(base, figure, sine) if isinstance(base, (Name, Literally)) else f"({text(base, figure, sine)})") + raised
        case Apply("+" | "-" as way, (a, b)):
            return f"{text(a, figure, sine)} {'+' if way == '+' else '−'} {_bracketed(b, figure, '+-', sine)}"
        case Apply("*", (a, b)):
            gap = "" if b == Name("°", 0, 0) else " "
            return _bracketed(a, figure, "+-/", sine) + gap + _bracketed(b, figure, "+-/", sine)
        case Apply("/", (a, b)):
            return _bracketed(a, figure, "+-", sine) + "/" + _bracketed(b, figure, "+-*/", sine)
        case Apply(name, (of,)):
            return f"{sine if name == 'sin' else name} {_bracketed(of, figure, '+-*/', sine)}"
    raise TypeError(type(e).__name__)


def _bracketed(e: Expression, figure: Callable[[Fraction], str], operations: str, sine: str) -> str:
    line = text(e, figure, sine)
    return f"({line})" if isinstance(e, Apply) and e.operation in operations else line
