"""No kind of connection, load or direction may be without an outside check."""

from __future__ import annotations

import known
import touching
from table import GIVEN, STRUNG, TABLE, cells, cells_of


def test_every_cell_is_filled():
    assert cells() - TABLE.keys() == set()


def test_no_cell_is_left_over():
    assert TABLE.keys() - cells() == set()


def test_each_problem_of_the_table_has_in_it_what_it_stands_for():
    assert {cell for cell, problem in TABLE.items() if cell not in cells_of(problem)} == set()


def test_every_way_of_running_a_belt_is_filled():
    assert {cell for cell in touching.STRINGS if cell not in STRUNG or cell not in cells_of(STRUNG[cell])} == set()


def test_every_force_of_every_kind_is_given_somewhere():
    assert known.cells() - GIVEN.keys() == set()
