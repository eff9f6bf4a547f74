"""Lessons in letters: what is said, and under which conditions."""

import json
import math
from pathlib import Path

import jsonschema
import pytest

from lettered_problems import value
from unpin import api
from unpin.base.units import FORCE
from unpin.exact.expression import grammar, parse
from unpin.exact.shape import shape

ARM = """
title: Sign arm
letters: {P: a force, a: a length, h: a length drawn 1.5 m}
points: {A: [0, 0], B: A right a, C: A right 3a, D: A up h}
members: {arm: A B C}
links: [B-D]
supports: {A: pin, D: pin}
loads: [P at C down, 2P at B down]
find: [B-D, A]
"""
STOP = """
title: Beam on a stop
letters: {P: a force, Q: a force drawn 50 N, a: a length, b: a length}
points: {A: [0, 0], B: A right a, C: B right b}
members: {beam: A B C}
supports: {A: smooth floor pushes up, B: pin}
loads: [P at C down, 3Q at A down]
find: [A, B]
"""
MIXED = """
title: Hoist frame with a slot, a collar, a stop and letters
letters: {W: a force, P: a force drawn 300 N, r: a length drawn 0.2 m, a: a length drawn 1 m, b: a length drawn 0.6 m, h: a length drawn 1.2 m}
points: {A: [0, 0], B: A right a, C: B right b, G: A up r, S: C right r down h, O: B down h, K: O right b, N: K down h}
members: {beam: A B C, prop: O B, lever: O K, stop: N K}
discs: {pulley: r at C}
blocks: {load: at S}
cords: {T: G over pulley to load}
slots: {B: prop in beam}
pins: {O: welded}
contacts: {K: stop pushes lever up}
collars: {O: "lever on ground along up, built on"}
supports: {A: pin, N: fixed}
loads: [weight of load W, P at K on lever down]
find: [A, B on prop, T, K on lever, O on lever]
"""
MEASURED = """
title: Letters beside numbers
units: m, kN
letters: {P: a force, a: a length}
points: {A: [0, 0], B: A right 1.2, C: B right a}
members: {beam: A B C}
supports: {A: pin, B: roller}
loads: [P at C down, 4 kN at C at 35 deg below right]
find: [A, B]
"""


def text(problem, **more):
    worked = api.solve(api.loads(problem))
    assert worked.proof.passed
    return api.as_text(api.explain(worked, drawn=False, **more))


def test_answers_stand_in_letters_with_their_senses():
    said = text(ARM)

    assert "F_BD = 5 P √(a² + h²)/h  tension" in said
    assert "A_x = 5 P a/h  to the right →" in said
    assert "A_y = −2 P  that is 2 P downward ↓" in said


def test_sums_keep_their_terms_and_factors():
    said = text(ARM)

    assert "−A_y a − P (2 a) = 0" in said
    assert "(h/√(a² + h²))F_BD + A_y − P − 2 P = 0" in said
    assert "(h/√(a² + h²))F_BD + (−2 P) − P − 2 P = 0" in said


def test_what_is_assumed_of_letters_is_said():
    said = " ".join(text(ARM).split())

    assert "a is a length without a value; the figure is drawn with a = 1 m" in said
    assert "Letters without a value are positive" in said


def test_a_sense_that_the_figure_settles_comes_with_its_condition():
    said = " ".join(text(STOP).split())

    assert "upward where 3 Q a > P b" in said
    assert "The contact at A keeps pushing while 3 Q a > P b" in said


def test_pulley_slot_collar_stop_and_letters_are_solved_explained_and_proved():
    said = text(MIXED)

    assert "T = W  tension" in said
    assert "B_y = −W (a + b)/a  that is W (a + b)/a downward" in said
    assert "K_y = (W a + W b + P a)/a  upward" in said
    assert "The upper face of the slot is pressed" in " ".join(said.split())


def test_measured_numbers_are_in_the_units_of_the_file_and_say_so():
    said = text(MEASURED)

    assert "B_y = " in said and "1.2" in said
    assert "Numbers beside letters are for lengths in m and forces in kN." in " ".join(said.split())


@pytest.mark.parametrize("problem", [ARM, STOP, MIXED, MEASURED])
def test_every_format_shows_letters(problem):
    worked = api.solve(api.loads(problem))
    made = api.explain(worked)

    assert "<math" in api.as_page(made)
    assert api.as_pdf(made).startswith(b"%PDF")
    assert "P" in api.as_markdown(made)[0]
    assert "P" in api.as_latex(made)[0]
    for short, fade in ((True, 0), *((False, k) for k in range(1, 7))):
        assert api.as_text(api.explain(worked, drawn=False, short=short, fade=fade))


@pytest.mark.parametrize("problem", [ARM, STOP, MIXED])
def test_data_hold_the_formula_in_the_grammar_of_the_file(problem):
    data = api.as_data(api.solve(api.loads(problem)))

    schema = json.loads((Path(__file__).parents[2] / "docs/reference/solution.schema.json").read_text("utf-8"))
    jsonschema.validate(data, schema)
    formulas = [a["formula"] for a in data["answers"] if "formula" in a]
    assert formulas and all(grammar(parse(f)) == f for f in formulas)
    assert all(a["value"] is None for a in data["answers"] if "formula" in a)


SIZES = {"P": 310.0, "Q": 45.0, "W": 77.0, "r": 0.31, "a": 1.7, "b": 0.9, "h": 0.45}


@pytest.mark.parametrize("problem", [ARM, STOP, MIXED])
def test_with_numbers_put_in_the_terms_of_every_equation_in_the_data_add_up_to_zero(problem):
    """The document can be checked by its reader, at sizes far from the drawn ones; bare numbers in it hold no letter."""
    worked = api.solve(api.loads(problem))
    data = api.as_data(worked)
    put = lambda part, key: part[key] if part[key] is not None else value(parse(part["formula"]), SIZES)  # noqa: E731
    loads = {a.id: value(shape(a.value.value, FORCE)[1], SIZES) for a in worked.structure.actions if a.value is not None}
    found = {f["unknown"]: put(f, "value") for s in data["steps"] for f in s["finds"]}
    checked = 0

    for e in (e for step in data["steps"] for e in step["equations"]):
        for t in e["terms"]:
            assert put(t, "coefficient") == pytest.approx(t["sign"] * math.prod(put(f, "value") for f in t["factors"]), rel=1e-9)
        if all(t["unknown"] in found for t in e["terms"] if t["unknown"]):
            parts = [put(t, "coefficient") * (found[t["unknown"]] if t["unknown"] else loads[t["action"]]) for t in e["terms"]]
            assert abs(sum(parts)) <= 1e-9 * sum(map(abs, parts))
            checked += 1
    assert checked >= 2


def test_lengths_with_letters_in_the_data_are_in_the_unit_of_the_file():
    data = api.as_data(api.solve(api.loads(MEASURED.replace("units: m, kN", "units: mm, kN").replace("right 1.2", "right 1200"))))
    arms = {t.get("formula") for s in data["steps"] for e in s["equations"] for t in e["terms"] if e["kind"] == "moments"}

    assert arms & {"a + 1200", "-(a + 1200)"}
    about = [e for s in data["steps"] for e in s["equations"] if e["kind"] == "moments"]
    assert all([e["at"], e.get("formulas")] in ([[0.0, 0.0], None], [[1.2, 0.0], None], [[None, 0.0], ["a + 1200", None]]) for e in about)
    assert all(len(f) < 100 for f in _formulas(data))


def _formulas(data):
    """Every formula anywhere in the document."""
    inside = data.values() if isinstance(data, dict) else data if isinstance(data, list) else ()
    own = [data["formula"]] if isinstance(data, dict) and "formula" in data else []
    return own + [f for part in inside for f in _formulas(part)]


def test_a_table_of_bars_in_letters_holds_formulas():
    truss = """
letters: {P: a force, a: a length}
points: {A: [0, 0], C: A right 2a, B: A right a up a}
links: [A-B, B-C, A-C]
supports: {A: pin, C: roller}
loads: [P at B down]
find: [all links]
"""
    data = api.as_data(api.solve(api.loads(truss.replace("right a up a}", "right a up a, D: B right 2a}").replace("A-C]", "A-C, B-D, C-D]"))))

    assert {b["bar"]: b.get("formula", b["value"]) for b in data["bars"]} == {"AB": "-P/sqrt(2)", "BC": "-P/sqrt(2)", "AC": "P/2", "BD": 0, "CD": 0}


RATIO = """
title: Scissors
letters: {W: a force, P: unknown, a: a length, alpha: an angle drawn 30 deg}
points: {A: [0, 0], Q: a from A at alpha, U: 2a from A at alpha, B: Q right a*cos(alpha) down a*sin(alpha), V: A up 2a*sin(alpha), T: Q up 2a*sin(alpha)}
members: {left_foot: A Q U, right_foot: B Q V}
links: [U-T, V-T]
supports: {A: roller, B: roller}
loads: [W down at T, P right at A, P left at B]
find: [ratio of P to W, ratio of U-T to V-T, ratio of A to W]
"""


SEESAW = """
title: See-saw
letters: {P: a force, Q: a force, a: a length, b: a length}
points: {A: [0, 0], B: A left a, C: A right b}
members: {board: B A C}
supports: {A: pin}
loads: [P at B down, Q at C down]
find: [A]
"""


@pytest.mark.parametrize("problem, balance", [(SEESAW, "P a = Q b"), (SEESAW.replace("Q: a force, ", "").replace("Q at", "P at"), "a = b"),
                                              (SEESAW.replace("b: a length", "b: a length drawn 1.25 m"), "P a = Q b")])
def test_what_balances_only_for_some_values_is_no_equilibrium_and_says_where_it_is_one(problem, balance):
    said = " ".join(api.as_text(api.explain(api.check(api.loads(problem)), drawn=False)).split())

    assert "there is no equilibrium in general. The loads balance only where " + balance in said
    assert "Answer" not in said


def test_a_relation_that_is_put_in_makes_it_one():
    assert "A_y = 2 P  upward" in text(SEESAW.replace("Q: a force, ", "").replace("Q at", "P at").replace("b: a length", "b: a"))


def test_the_ratio_of_two_results_or_of_one_to_a_letter_is_found():
    said = text(RATIO)
    data = api.as_data(api.solve(api.loads(RATIO)))

    assert "P/W = 3/(2 tan α)" in said
    assert "F_UT/F_VT = 1" in said
    assert [a["name"] for a in data["answers"]] == ["P/W", "F_UT/F_VT", "A_y/W"]


def test_the_ratio_of_two_numbers_is_a_number():
    numbers = RATIO.replace("W: a force", "W: 200 N").replace("a: a length", "a: 1 m").replace("alpha: an angle drawn 30 deg", "alpha: 45 deg")

    assert "P/W = 1.5" in text(numbers)


def test_the_same_problem_gives_the_same_bytes():
    first, second = (api.as_page(api.explain(api.solve(api.loads(MIXED)))) for _ in range(2))

    assert first == second


def test_a_contact_that_lets_go_at_the_drawn_size_is_told_with_its_condition():
    """A beam with an overhang tips about its pin when P a > w l²/2 (moments about B; closed form)."""
    text = ("letters: {w: a force per length, P: a force, l: a length drawn 1 m, a: a length}\npoints: {A: [0, 0], B: A right l, C: B right a}\nmembers: {beam: A B C}\n"
            "supports: {A: contact pushes up, B: pin}\nloads: [w down on beam from A to B, P at C down]\nfind: [A]")
    import unpin

    worked = unpin.check(unpin.loads(text))

    from unpin.lesson.build import sound_section
    from unpin.render.terminal import section

    assert "opens while 2 P a > w l²" in " ".join(section(sound_section(worked)).split())


def test_many_given_angles_beside_letters_are_solved_soon():
    """Closed form: the roller carries the sines, the pin the cosines and as much as the roller has too much."""
    angles = [20.3 + k for k in range(9)]
    loads = ", ".join(f"P at C at {k} deg below right" for k in angles)
    problem = f"letters: {{P: a force, a: a length}}\npoints: {{A: [0, 0], B: A right a, C: B right a}}\nmembers: {{beam: A B C}}\nsupports: {{A: pin, B: roller}}\nloads: [{loads}]\nfind: [A, B]\n"

    found = {a["name"]: value(parse(a["formula"]), {"P": 3.0, "a": 7.0}) for a in api.as_data(api.solve(api.loads(problem)))["answers"]}

    across, down = (3 * sum(f(math.radians(k)) for k in angles) for f in (math.cos, math.sin))
    assert (found["A_x"], found["A_y"], found["B_y"]) == pytest.approx((-across, -down, 2 * down))
    assert found["A"] == pytest.approx(math.hypot(across, down))


def test_a_link_along_an_axis_keeps_the_condition_under_which_it_runs_as_drawn():
    file = ("letters: {P: a force, a: a length drawn 2 m, b: a length drawn 1 m, h: a length}\n"
            "points: {A: [a, 0], B: [b, 0], C: [a, h]}\nmembers: {m: A C}\nlinks: [B-A]\nsupports: {C: pin, B: pin}\nloads: [P at A right]\nfind: [B-A]\n")

    # B lies left of A only while a > b: else the pull to the right presses the link.
    assert "where a > b" in " ".join(text(file).split())
    assert "where a > b" not in text(file.replace("[b, 0]", "A left b"))


@pytest.mark.parametrize("less, told", [("P*b", False), ("3P*b", True)])
def test_a_condition_that_always_holds_is_not_printed(less, told):
    said = " ".join(text("letters: {P: a force, a: a length drawn 3 m, b: a length drawn 1 m}\npoints: {A: [0, 0], B: [a, 0]}\n"
                         "members: {m: A B}\nsupports: {A: fixed}\nfind: [A couple]\n"
                         f"loads: [P at B down, P*b^2/a clockwise on m, {less} anticlockwise on m]\n").split())

    # M_A = P (a² - k a b + b²)/a: for k = 1 positive whatever the lengths, for k = 3 not.
    assert "P (a² −" in said
    assert (" where " in said) == told
