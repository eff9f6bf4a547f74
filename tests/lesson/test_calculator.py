"""A student with a calculator comes from the printed lines to the printed result."""

import re
from pathlib import Path

import pytest
from lessons import EXAMPLES, lesson

from unpin.lesson.build import build
from unpin.lesson.formula import Amount, Letter, Product
from unpin.lesson.nodes import Working, walk
from unpin.read import read_file
from unpin.route.work import work
from unpin.words.numbers import MINUS, THIN

PUBLISHED = sorted((Path(__file__).parents[1] / "published" / "problems").glob("*.yaml"))[::4]


def value(printed) -> float:
    return float(printed.digits.replace(THIN, "")) * (printed.sign or 1)


def last_place(printed) -> float:
    """One unit in the last printed place; for a whole number without a point, of its last figure that is not a zero."""
    text = printed.digits.replace(THIN, "")
    if "." in text:
        return 10.0 ** -len(text.partition(".")[2])
    return 10.0 ** (len(text) - len(text.rstrip("0")))


def one_unknown(line):
    """(coefficient, constant) of a collected line `c X + k = 0`; None for any other."""
    coefficient, constant = 1.0, 0.0
    for term in line.formula.left.terms:
        of = term.of.factors if isinstance(term.of, Product) else (term.of,)
        amounts = [value(f.printed) for f in of if isinstance(f, Amount)]
        if any(isinstance(f, Letter) for f in of):
            coefficient = term.sign * (amounts[0] if amounts else 1.0)
        elif len(of) == 1 and isinstance(of[0], Amount):
            constant += term.sign * value(of[0].printed)
        else:
            return None
    return coefficient, constant


def check(one) -> int:
    seen = 0
    for working in (n for s in one.sections if s.kind == "body" for n in walk(s.children) if isinstance(n, Working)):
        if len(working.lines) < 2 or working.lines[-1].name != "result" or working.lines[-2].name == "result":
            continue
        found, printed = one_unknown(working.lines[-2]), working.lines[-1].formula.right.printed
        if found and printed.sign:
            assert abs(-found[1] / found[0] - value(printed)) <= 0.6 * last_place(printed), working.id
            seen += 1
    return seen


@pytest.mark.parametrize("name", EXAMPLES)
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
