"""Answers in letters against the same problems in numbers, at values near the drawn size and far from it."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lettered_problems import PROBLEMS, formulas, letters_in, name_of, solved, value, with_values
from unpin.exact.number import approx

WORKED = {}


def _worked(name):
    if name not in WORKED:
        WORKED[name] = solved(PROBLEMS[name])
    return WORKED[name]


@pytest.mark.parametrize("name", PROBLEMS)
@settings(max_examples=4, deadline=None)
@given(data=st.data())
def test_numbers_put_into_the_formula_give_the_answer_of_the_problem_in_numbers(name, data):
    text = PROBLEMS[name]
    sizes = {k: data.draw(st.integers(5, 85) if what == "angle" else st.integers(1, 999).map(lambda n: n / 100)) for k, what in letters_in(text).items()}
    numbers = solved(with_values(text, sizes))
    found = formulas(_worked(name))
    for answer in numbers.answers:
        for c in answer.components:
            key = name_of(answer, c)
            if not c.unknown and not c.symbol.sub and key not in found:
                continue  # one of its components is zero at these values only
            way, expression = found[key]
            ours = way * value(expression, {**sizes, "g": 9.81})
            if not c.unknown:
                ours = abs(ours) if not c.symbol.sub else ours  # a resultant has no sign
            biggest = max(abs(approx(x.value)) for a in numbers.answers for x in a.components)
            assert math.isclose(ours, approx(c.value), rel_tol=1e-9, abs_tol=1e-9 * biggest), key


@settings(max_examples=12, deadline=None)
@given(st.data())
def test_a_random_frame_in_letters_agrees_with_itself_in_numbers(data):
    """Two members, hinged to each other and to the ground, every place a whole combination of two letters."""
    step = st.integers(-3, 3)
    a, b = (f"A right {data.draw(st.integers(1, 4))}a up {data.draw(st.integers(0, 3))}b" for _ in range(2))
    x, y = data.draw(step), data.draw(st.integers(1, 4))
    text = f"""
letters: {{P: a force, Q: a force, a: a length drawn 0.7 m, b: a length drawn 1.1 m}}
points: {{A: [0, 0], B: {a}, C: "[{x}]", M: midpoint of A C, N: 1/3 of B C}}
members: {{one: A M C, two: C N B}}
supports: {{A: pin, B: pin}}
loads: [P at M right {data.draw(st.integers(1, 3))} down {data.draw(st.integers(1, 3))}, Q at N left, {data.draw(st.integers(1, 3))}P at N down]
find: [A, B]
""".replace(f'"[{x}]"', f"[{x}*a + b, {y}*b + a]")
    from unpin.read import read_text
    from unpin.route.work import work

    first = work(read_text(text).problem, others=0)
    if not (first.proof and not first.proof.failures):
        assert not first.soundness.holds or not all(found for _, found in first.soundness.found)
        return
    found = formulas(first)
    sizes = {k: data.draw(st.integers(1, 500)) / 50 for k in "PQab"}
    second = work(read_text(with_values(text, sizes)).problem, others=0)
    if not (second.proof and not second.proof.failures):
        return  # these sizes happen to make a mechanism of it
    for answer in second.answers:
        for c in answer.components:
            if c.symbol.sub in ("x", "y"):
                way, expression = found[name_of(answer, c)]
                biggest = max(abs(approx(k.value)) for a in second.answers for k in a.components)
                assert math.isclose(way * value(expression, sizes), approx(c.value), rel_tol=1e-9, abs_tol=1e-9 * biggest)
