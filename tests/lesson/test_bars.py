"""All bars at once: one table, in file order, with the sense in words, in every format, and nothing of it in a faded lesson."""

import json
import re

import pytest

from lessons import worked_text
from unpin.lesson.build import build
from unpin.lesson.fade import fade
from unpin.lesson.nodes import Boxed, Table, walk
from unpin.lesson.short import short
from unpin.render import html, latex, markdown, pdf, terminal

TRUSS = """
title: Awning truss
units: m, kN
points: {A: [0, 0], B: [4, 0], C: [8, 0], D: [4, 3], E: [12, 0]}
links: [A-B-C, A-D-C, B-D, C-E, D-E]
supports: {A: pin, C: roller}
loads: [24 kN at D down]
find: [%s]
"""
# By hand (method of joints): A_y = C_y = 12 kN; AD and DC: 12 / (3/5) = 20 kN compression; AB and BC: 20 (4/5) = 16 kN tension;
# BD is the third at B beside two in line; C-E and D-E are a corner without a load at E.
KEY = {"AB": (16.0, "tension"), "BC": (16.0, "tension"), "AD": (-20.0, "compression"), "DC": (-20.0, "compression"), "BD": (0.0, "zero"),
       "CE": (0.0, "zero"), "DE": (0.0, "zero")}


def tables(lesson):
    return [n for s in lesson.sections for n in walk(s.children) if isinstance(n, Table)]


@pytest.mark.parametrize("asked", ["all bars", "all links", "everything"])
def test_a_truss_asked_for_all_its_bars_ends_with_one_table_in_file_order(asked):
    made = build(worked_text(TRUSS % asked))

    (table,) = tables(made)
    assert [row[0].arguments["a"].base + row[0].arguments["b"].base for row in table.rows] == list(KEY)
    assert [row[2].code for row in table.rows] == ["bars.tension"] * 2 + ["bars.compression"] * 2 + [
        "bars.zero_tee", "bars.zero_corner", "bars.zero_corner"]


def test_what_stands_in_the_table_stands_in_no_box():
    made = build(worked_text(TRUSS % "all bars, A"))

    assert [n.asked.code for s in made.sections for n in walk(s.children) if isinstance(n, Boxed)] == ["asked.reaction"]


def test_some_bars_of_a_truss_have_a_box_each():
    assert tables(build(worked_text(TRUSS % "A-B, A-D, D-C, B-D"))) == []


def test_every_format_has_the_table_with_its_heads():
    made = build(worked_text(TRUSS % "all bars"))
    page, source, tex = html.write(made), pdf.source(made), latex.write(made, "figures")

    assert re.search(r"^AD +F_AD = −20\.0\skN +compression \(C\)$", terminal.write(made), re.M)
    assert page.count('<th scope="col">') == 3 and page.count('<th scope="row">') == 7 and "<caption>" in page
    assert "| Bar | Force | Sense |" in markdown.write(made, "figures")
    assert "table.header(" in source and "listed((" in source
    assert "\\begin{tabular}{llp{75mm}}" in tex and "compression (C)" in tex


def test_the_data_tell_every_bar_with_its_sign_and_the_rule_behind_a_zero():
    from unpin import as_data

    found = as_data(worked_text(TRUSS % "everything"))["bars"]

    assert {b["bar"].replace("-", ""): (b["value"], b["sense"]) for b in found} == KEY
    assert [(b["rule"], b["at"]) for b in found if b["rule"]] == [("zero_tee", "B"), ("zero_corner", "E"), ("zero_corner", "E")]
    assert json.dumps(found)


def test_a_faded_lesson_keeps_the_names_of_the_bars_and_nothing_else_of_the_table():
    made = build(worked_text(TRUSS % "all bars"), drawn=False)

    (table,) = tables(fade(made, 2))
    assert all(cells == (None, None) for _, *cells in table.rows for cells in [tuple(cells)])
    assert "compression (C)" not in terminal.write(fade(made, 2)) and "no force:" not in html.write(fade(made, 2))


def test_the_short_form_keeps_the_table():
    made = build(worked_text(TRUSS % "all bars"), drawn=False)

    assert tables(short(made)) == tables(made)
