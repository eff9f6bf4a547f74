"""A house style changes how a solution is written, never what it says; every format says it alike."""

import re
from dataclasses import replace
from fractions import Fraction as F
from functools import cache
from pathlib import Path

import pytest

import unpin
from lessons import EXAMPLES, NUMBERED
from unpin import bundled
from unpin.draw.label import plain
from unpin.houses import put_on
from unpin.lesson import labels, terms
from unpin.lesson.bare import without_units
from unpin.lesson.build import build
from unpin.lesson.formula import Letter, symbols
from unpin.lesson.nodes import Working, walk
from unpin.lesson.sheet import sheet_for
from unpin.model.house import House
from unpin.read.house import read_house_text
from unpin.render import html, latex, markdown, terminal
from unpin.words.numbers import MINUS
from unpin.words.remarks import render

STYLE = """
decimals: 1
decimal sign: comma
units stand: behind results
moments: clockwise
x: left
y: down
names: {link: S_AB, reaction: "H_A, V_A", roller: N_B, couple: M_A, pin: "X_C, Y_C", resultant: R_A}
heading: <Statics & more>
credit: Course of N. N.
"""
HOUSE = read_house_text(STYLE, ("en",)).house
SIGN = """
points: {A: [0, 0], B: A up 3, C: B right 0.8}
members: {pole: A B C}
supports: {A: fixed}
loads: [120 N at C down]
find: [A]
"""


@cache
def solved(name: str, house: House = HOUSE):
    return unpin.solve(put_on(unpin.load(bundled.path_of(name), style="none"), house)[0])


@cache
def told(name: str):
    return build(solved(name))


def workings(lesson):
    return [n for s in lesson.sections for n in walk(s.children) if isinstance(n, Working)]


def sign_worked(house: House):
    return unpin.solve(put_on(unpin.loads(SIGN), house)[0])


def test_a_couple_is_drawn_and_counted_in_the_positive_sense_of_the_house():
    # 120 N times 0.8 m: the post holds against a clockwise moment, by the definition of a moment.
    usual, turned = (unpin.as_data(sign_worked(h))["answers"][-1] for h in (House(), House(moments=-1)))

    assert (usual["worked"], usual["sense"], usual["value"]) == (96, "anticlockwise", 96)
    assert (turned["worked"], turned["sense"], turned["value"]) == (-96, "anticlockwise", 96)
    assert f"M_A = {MINUS}96.0\u202fN·m  that is 96.0\u202fN·m anticlockwise" in terminal.write(build(sign_worked(House(moments=-1))))


def test_the_head_of_a_sum_says_which_way_is_positive_and_all_its_signs_turn():
    usual, turned = sign_worked(House()), sign_worked(replace(HOUSE, moments=1))
    heads = {w.header.arrow for w in workings(build(turned)) if w.header.kind == "forces"}

    assert heads == {"←", "↓"}
    for step in turned.recommended.steps:
        for e in step.equations:
            if e.functional.kind == "along":
                other = terms.oriented(e, sheet_for(turned.problem, turned.values))
                assert [t.coefficient for t in other.terms] == [-t.coefficient for t in e.terms]
                assert terms.oriented(e, sheet_for(usual.problem, usual.values)) == e


@pytest.mark.parametrize("name", NUMBERED)
def test_magnitudes_and_senses_are_those_without_a_house_and_the_proof_holds(name):
    plain_ = solved(name, House())

    assert solved(name).proof.passed
    assert [(c.sense, abs(c.value)) for a in solved(name).answers for c in a.components] == \
           [(c.sense, abs(c.value)) for a in plain_.answers for c in a.components]


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_sum_of_a_housed_lesson_adds_up_to_zero_in_its_own_signs(name):
    worked = solved(name)
    sheet = sheet_for(worked.problem, worked.values)
    for step in worked.recommended.steps:
        for e in step.equations:
            shown = terms.oriented(e, sheet)
            assert abs(float(sum((t.coefficient * terms.value_of(t.action, worked.values) for t in shown.terms), start=F(0)))) < 1e-9 * max(
                1.0, *(abs(float(terms.value_of(t.action, worked.values))) for t in shown.terms))


@pytest.mark.parametrize("name", EXAMPLES)
def test_what_stands_at_an_arrow_stands_in_the_sums_letter_for_letter(name):
    worked = solved(name)
    drawn = labels.of_bodies(worked.problem, worked.structure, sheet_for(worked.problem, worked.values)).labels
    by_unknown = {u.id: {plain(drawn[a]) for a in u.actions if abs(worked.structure.action(a).multiple) == 1} for u in worked.structure.unknowns}
    written = {plain(labels.label(s)) for w in workings(told(name)) for line in w.lines for s in symbols(line.formula)}
    found = {u for s in worked.recommended.steps for u in s.finds}

    assert all(len(names) <= 1 for names in by_unknown.values())
    assert all(by_unknown[u] <= written for u in found)


@pytest.mark.parametrize("name", EXAMPLES)
def test_no_two_unknowns_of_a_problem_bear_one_name(name):
    worked = solved(name)
    shown = [(*(u.symbol.shown or (u.symbol.base, u.symbol.sub)), u.symbol.on) for u in worked.structure.unknowns]

    assert len(set(shown)) == len(shown)


def test_a_pattern_that_would_name_two_forces_alike_is_left_and_told():
    house = read_house_text("names: {link: T, roller: N_B}", ("en",)).house
    problem, remarks = put_on(unpin.loads(SHELVES), house)
    worked = unpin.solve(problem)

    assert [render(d) for d in remarks] == [
        "warning: names > link: by the house style the forces F_BW and F_CV would have the same name; the usual names are taken for this kind"]
    assert {u.id: u.symbol.shown for u in worked.structure.unknowns if u.axial} == {"F_BW": None, "F_CV": None}


def test_one_letter_for_the_one_link_of_a_problem_is_taken():
    house = read_house_text("names: {link: T}", ("en",)).house
    problem, remarks = put_on(unpin.loads(SHELF), house)

    assert remarks == ()
    assert unpin.as_data(unpin.solve(problem))["answers"][0]["shown"] == "T"
    assert unpin.as_data(unpin.solve(problem))["answers"][0]["name"] == "F_BW"


def test_a_name_that_a_load_has_already_is_not_given_to_a_link():
    house = read_house_text("names: {link: P}", ("en",)).house
    _, remarks = put_on(unpin.loads("letters: {P: 90 N}\n" + SHELF.replace("90 N at", "P at")), house)

    assert [d.arguments for d in remarks] == [{"first": "P", "second": "F_BW"}]


SHELF = """
points: {A: [0, 0], B: A right 0.4, C: A right 0.6, W: A up 0.3}
members: {shelf: A B C}
links: [B-W]
supports: {A: pin, W: pin}
loads: [90 N at C down]
find: [B-W]
"""
SHELVES = """
points: {A: [0, 0], B: A right 0.4, C: A right 0.6, W: A up 0.3, V: C up 0.3, D: A right 1, E: D right 1}
members: {shelf: A B C, bar: D E}
links: [B-W, C-V]
supports: {A: roller pushes right, W: pin, V: pin, D: pin, E: roller}
loads: [90 N at B down, 5 N at E down]
find: [B-W]
"""


def test_units_stand_only_behind_results_and_angles_keep_their_sign():
    lesson = told("boat-trailer")
    lines = [(line.name, terminal.maths.write(line.formula)) for w in workings(lesson) for line in w.lines]

    assert all(re.search(r"\u202f(k?N|lb)", text) for name, text in lines if name == "result" and not text.endswith(" 0"))
    assert not [text for name, text in lines if name != "result" and re.search(r"\u202f(k?N|m\b|lb|ft)", text)]


def test_numbers_side_by_side_stay_apart_without_their_units():
    assert any(")(" in terminal.maths.write(line.formula) for w in workings(told("boat-trailer")) for line in w.lines)
    for w in workings(told("boat-trailer")):
        for line in w.lines:
            assert not re.search(r"\d \d", terminal.maths.write(line.formula)), terminal.maths.write(line.formula)


def test_units_stay_where_they_do_not_fit_each_other():
    problem = unpin.loads("units: mm, N, N·m\n" + SIGN.replace("up 3", "up 3000").replace("right 0.8", "right 800"))
    lesson = build(unpin.solve(put_on(problem, HOUSE)[0]))

    assert any("N·mm" in terminal.maths.write(line.formula) for w in workings(lesson) for line in w.lines)
    assert without_units(lesson) != lesson


def test_results_have_the_decimal_places_and_the_comma_of_the_house():
    answers = unpin.as_data(solved("market-awning"))["answers"]

    assert [a["printed"] for a in answers][:2] == ["283,6\u202fN", "835,3\u202fN"]
    assert [a["value"] for a in answers][:1] == [pytest.approx(1985 / 7)]


@pytest.mark.parametrize("form", [terminal.write, html.write, lambda x: markdown.write(x, "f"), lambda x: latex.write(x, "f")],
                         ids=["text", "page", "Markdown", "LaTeX"])
def test_heading_credit_and_comma_stand_in_every_format(form):
    text = form(told("market-awning"))
    said = text.replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&").replace("\\", "").replace("textless{}", "<").replace("textgreater{}", ">")

    assert "<Statics & more>" in said
    assert "Course of N. N." in text
    assert "283.6" not in text and re.search(r"283(,|\{,\})6", text)


def test_paper_and_colours_are_those_of_the_house():
    house = read_house_text("paper: Letter\ncolours: dark", ("en",)).house
    lesson = build(solved("market-awning", house))

    assert 'data-colours="dark"' in html.write(lesson) and "size:letter" in html.write(lesson).replace("size: ", "size:")
    assert latex.write(lesson, "f").startswith("\\documentclass[letterpaper")
    assert "data-colours=\"" not in html.write(told("market-awning")).partition("<body")[0].partition("<style>")[0]
    assert "[0 0 612 792]" in _boxes(lesson)


def _boxes(lesson) -> str:
    from unpin.render import pdf

    return " ".join(re.findall(rb"MediaBox ?\[[^\]]*\]", pdf.write(lesson))[0].decode().split())


def test_the_names_are_those_of_the_house_for_parts_that_no_sum_gives():
    lesson = told("market-awning")
    found = {s for w in workings(lesson) for line in w.lines for s in symbols(line.formula)}

    assert {Letter("R", "C"), Letter("S", "BD"), Letter("N", "A"), Letter("X", "C")} <= found
    assert Letter("C", "x") not in found and Letter("F", "BD") not in found


PUBLISHED = sorted((Path(__file__).parents[1] / "published" / "problems").glob("*.yaml"))[::9]


@pytest.mark.parametrize("path", PUBLISHED, ids=lambda p: p.stem)
def test_published_answers_are_the_same_under_a_house(path):
    # Their values are compared with their books, whose names stand in tests/published/records, by tests/published.
    problem = unpin.load(path, style="none")
    usual, housed = unpin.solve(problem), unpin.solve(put_on(problem, HOUSE)[0])

    assert housed.proof.passed
    assert [(c.sense, abs(c.value)) for a in housed.answers for c in a.components] == [(c.sense, abs(c.value)) for a in usual.answers for c in a.components]
    assert not re.search(r"\d\.\d", "".join(terminal.maths.write(line.formula) for w in workings(build(housed)) for line in w.lines))
