"""Sparse elimination against sympy's matrices of rationals."""

from __future__ import annotations

from fractions import Fraction

import sympy
from hypothesis import given
from hypothesis import strategies as st

from unpin.exact.linear import reduce
from unpin.exact.number import sqrt, to_digits

entry = st.one_of(st.just(0), st.integers(-3, 3), st.fractions(-3, 3, max_denominator=4))


@st.composite
def systems(draw):
    """Rows, columns and right-hand side: small, often singular, often contradictory."""
    columns = draw(st.integers(1, 5))
    rows = draw(st.lists(st.lists(entry.map(Fraction), min_size=columns, max_size=columns), min_size=1, max_size=6))
    if len(rows) > 1 and draw(st.booleans()):
        rows[-1] = [a + 2 * b for a, b in zip(rows[0], rows[1 % len(rows)])]
    right = draw(st.lists(st.integers(-2, 2).map(Fraction), min_size=len(rows), max_size=len(rows)))
    return rows, columns, right


def sparse(rows, columns, right=None):
    out = [{c: v for c, v in enumerate(row) if v} for row in rows]
    for row, b in zip(out, right or []):
        if b:
            row[columns] = b
    return out


def rational(x) -> sympy.Rational:
    return sympy.Rational(x.numerator, x.denominator)


def matrix(rows, columns) -> sympy.Matrix:
    return sympy.Matrix(len(rows), columns, [rational(v) for row in rows for v in row])


@given(systems())
def test_rank_and_pivots_are_sympys(system):
    rows, columns, right = system
    solved = reduce(sparse(rows, columns, right), columns)
    assert solved.rank == matrix(rows, columns).rank()
    assert solved.dependent == len(rows) - solved.rank
    for c, row in solved.pivots.items():
        assert row[c] == 1 and all(k == c or k not in solved.pivots for k in row)


@given(systems())
def test_the_null_space_is_whole_and_truly_null(system):
    rows, columns, _ = system
    basis = reduce(sparse(rows, columns), columns).null_space()
    assert len(basis) == columns - matrix(rows, columns).rank()
    for vector in basis:
        assert all(sum(row[c] * v for c, v in vector.items()) == 0 for row in rows)
    if basis:
        assert sympy.Matrix([[rational(v.get(c, Fraction(0))) for c in range(columns)] for v in basis]).rank() == len(basis)


@given(systems())
def test_values_solve_the_system_and_contradictions_are_seen(system):
    rows, columns, right = system
    solved = reduce(sparse(rows, columns, right), columns)
    whole = matrix([[*row, b] for row, b in zip(rows, right)], columns + 1)
    consistent = whole.rank() == matrix(rows, columns).rank()
    assert (not solved.contradictions) == consistent
    values = solved.values()
    assert (values is not None) == consistent
    if consistent:
        assert all(sum(row[c] * v for c, v in values.items()) == b for row, b in zip(rows, right))


@given(systems())
def test_fixed_unknowns_are_those_in_the_row_space_with_their_values(system):
    rows, columns, right = system
    solved = reduce(sparse(rows, columns, right), columns)
    if solved.contradictions:
        return
    whole = matrix(rows, columns)
    fixed = solved.fixed()
    for c in range(columns):
        unit = sympy.Matrix(1, columns, [int(k == c) for k in range(columns)])
        determined = whole.col_join(unit).rank() == whole.rank()
        assert (c in fixed) == determined == solved.holds({c: Fraction(1)})


@given(systems(), st.data())
def test_row_space_membership_agrees_with_rank(system, data):
    rows, columns, _ = system
    probe = data.draw(st.lists(entry.map(Fraction), min_size=columns, max_size=columns))
    solved = reduce(sparse(rows, columns), columns)
    expected = matrix([*rows, probe], columns).rank() == matrix(rows, columns).rank()
    assert solved.holds({c: v for c, v in enumerate(probe) if v}) == expected


@given(systems())
def test_digits_and_roots_give_the_rank_that_rationals_give(system):
    rows, columns, right = system
    plain = reduce(sparse(rows, columns, right), columns)
    factor = sqrt(Fraction(3)) + Fraction(1, 7)
    # Every row times an irrational number: the same system, with no digit in common.
    rough = [{c: to_digits(v * factor) for c, v in row.items()} for row in sparse(rows, columns, right)]
    solved = reduce(rough, columns)
    assert (solved.rank, solved.dependent, bool(solved.contradictions)) == (plain.rank, plain.dependent, bool(plain.contradictions))
    assert solved.fixed().keys() == plain.fixed().keys()
    assert all(solved.fixed()[c] == v for c, v in plain.fixed().items())


@given(systems())
def test_the_input_is_left_alone(system):
    rows, columns, right = system
    given_rows = sparse(rows, columns, right)
    before = [dict(r) for r in given_rows]
    reduce(given_rows, columns)
    assert given_rows == before
