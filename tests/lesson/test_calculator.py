"""A student with a calculator comes from the printed lines to the printed result."""

import math
import re
from itertools import pairwise
from pathlib import Path

import pytest

from lessons import NUMBERED, lesson
from unpin.base.units import BY_SPELLING
from unpin.lesson.build import build
from unpin.lesson.formula import Amount, Function, Letter, Over, Product, Root, Squared, Sum
from unpin.lesson.nodes import Working, walk
from unpin.read import read_file
from unpin.route.work import work
from unpin.words.numbers import MINUS, THIN

PUBLISHED = sorted((Path(__file__).parents[1] / "published" / "problems").glob("*.yaml"))[::3]


def value(printed) -> float:
    return float(printed.digits.replace(THIN, "")) * (printed.sign or 1)


def last_place(printed) -> float:
    """One unit in the last printed place; for a whole number without a point, of its last figure that is not a zero."""
    text = printed.digits.replace(THIN, "")
    if "." in text:
        return 10.0 ** -len(text.partition(".")[2])
    return 10.0 ** (len(text) - len(text.rstrip("0")))


def one_unknown(left):
    """(coefficient, constant) of a collected sum `c X + k`; None for any other."""
    coefficient, constant = 1.0, 0.0
    for term in left.terms:
        of = term.of.factors if isinstance(term.of, Product) else (term.of,)
        amounts = [value(f.printed) for f in of if isinstance(f, Amount)]
        if any(isinstance(f, Letter) for f in of):
            coefficient = term.sign * (amounts[0] if amounts else 1.0)
        elif len(of) == 1 and isinstance(of[0], Amount):
            constant += term.sign * value(of[0].printed)
        else:
            return None
    return coefficient, constant


def worth(formula) -> float:
    """What a formula without letters comes to."""
    match formula:
        case Amount(printed):
            return value(printed)
        case Sum(terms, _):
            return sum(t.sign * worth(t.of) for t in terms)
        case Product(factors):
            return math.prod(worth(f) for f in factors)
        case Over(top, bottom):
            return worth(top) / worth(bottom)
        case Root(of):
            return math.sqrt(worth(of))
        case Squared(of):
            return worth(of) ** 2
        case Function("sin" | "cos" as name, of):
            return getattr(math, name)(math.radians(worth(of)))
    raise TypeError(formula)


def expected(before) -> float | None:
    """What the line before a result says the result is."""
    if before.name == "substitute" and isinstance(before.formula.left, Letter):
        return worth(before.formula.right)
    found = one_unknown(before.formula.left) if isinstance(before.formula.left, Sum) else None
    return -found[1] / found[0] if found else None


def between_units(before, unit: str) -> float:
    """What a line that adds up in N·mm is in the N·m of its result; 1 where the unknown has a factor, which is in those units too."""
    terms = before.formula.left.terms if isinstance(before.formula.left, Sum) else ()
    own = [t for t in terms if isinstance(t.of, Letter) or isinstance(t.of, Product) and len(t.of.factors) == 1]
    lines = [t.of.printed.unit for t in terms if isinstance(t.of, Amount)] if own else []
    return float(BY_SPELLING[lines[0]].factor / BY_SPELLING[unit].factor) if lines and {lines[0], unit} <= BY_SPELLING.keys() else 1.0


def check(one) -> int:
    seen = 0
    for working in (n for s in one.sections if s.kind in ("body", "found") for n in walk(s.children) if isinstance(n, Working)):
        for before, line in pairwise(working.lines):
            if line.name != "result" or before.name == "result":
                continue
            found, printed = expected(before), line.formula.right.printed
            if found is not None and printed.sign:
                found *= between_units(before, printed.unit)
                assert abs(found - value(printed)) <= 0.6 * last_place(printed), working.id
                seen += 1
    return seen


@pytest.mark.parametrize("name", NUMBERED)
def test_the_collected_line_gives_the_printed_result(name):
    assert check(lesson(name))


@pytest.mark.parametrize("path", PUBLISHED, ids=lambda p: p.stem)
def test_the_collected_line_gives_the_printed_result_of_published_problems(path):
    found = work(read_file(path).problem)

    assert found.recommended is None or check(build(found, drawn=False)) or re.match(r"two-|truss", path.stem) or found.recommended.count < 3


def test_a_number_carried_on_shows_more_figures_than_the_result():
    texts = [line for n in walk(lesson("garden-arch").sections[3].children) if isinstance(n, Working) for line in n.lines]

    assert any(x.name == "result" for x in texts)
    assert MINUS in "".join(x.formula.right.printed.text for x in texts if x.name == "result")
