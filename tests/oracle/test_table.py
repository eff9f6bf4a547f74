"""No kind of connection, load or direction may be without an outside check."""

from __future__ import annotations

from table import TABLE, cells, cells_of


def test_every_cell_is_filled():
    assert cells() - TABLE.keys() == set()


def test_no_cell_is_left_over():
    assert TABLE.keys() - cells() == set()


def test_each_problem_of_the_table_has_in_it_what_it_stands_for():
    assert {cell for cell, problem in TABLE.items() if cell not in cells_of(problem)} == set()
