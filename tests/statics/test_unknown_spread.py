"""A spread load whose intensity is to be found from a force that is given.

Sources: AISC Manual Table 3-23 (reactions of beams under uniform and triangular loads), from memory.
"""

from fractions import Fraction as F

import pytest

from unpin.exact.number import approx
from unpin.lesson.build import build
from unpin.lesson.sheet import sheet_for
from unpin.read import read_text
from unpin.render.json import data
from unpin.render.terminal import write
from unpin.route.work import work

BEAM = ("points: {A: [0, 0], M: A right 2, B: A right 4, C: A right 5}\nmembers: {beam: A M B C}\nletters: {w: unknown}\n"
        "supports: {A: pin, B: roller}\n")


def worked(text):
    reading = read_text(text)
    assert reading.sound, [d.code for d in reading.diagnostics]
    return work(reading.problem)


def said(text):
    return write(build(worked(text))).replace("\u202f", " ").replace("\u00a0", " ")


@pytest.mark.parametrize("load, reaction, intensity", [
    ("w down on beam", F(600) * 25 / 8, 600),  # w (l + a)²/(2 l) with l = 4, a = 1
    ("w down on beam from A to B", F(600) * 2, 600),  # w l/2
    ("0 to w down on beam from A to B", F(600) * 4 / 3, 600),  # w l/3
    ("w to 0 down on beam from A to B", F(600) * 4 / 6, 600),  # w l/6
    ("2w down on beam from A to B", F(600) * 2, 300),
    ("w to 3w down on beam from A to B", F(600) * (2 + 2 * F(4, 3)), 600),  # uniform w and triangle 2 w
    ("0 to w down on beam from A to M, w to 0 down on beam from M to B", F(600), 600),  # W/2 with W = w l/2
])
def test_the_intensity_comes_back_from_the_reaction_that_it_made(load, reaction, intensity):
    loads = ", ".join(f'"{part}"' for part in load.split(", "))
    w = worked(f"{BEAM}loads: [{loads}]\ngiven: [B {float(reaction)} N up]\nfind: [w]")

    (found,) = w.answers[0].components
    assert (found.value, found.sense) == (intensity, "down")
    assert w.proof.passed


@pytest.mark.parametrize("per", ["", " per horizontal length", " per vertical length"])
def test_a_load_on_a_slope_comes_back_in_the_length_it_is_measured_by(per):
    file = ("points: {{A: [0, 0], B: A right 4 up 3, C: A left 1}}\nmembers: {{roof: A B}}\nletters: {{w: {}}}\n"
            "supports: {{A: pin, B: roller pushes up}}\nloads: [0.5w to 2w at 20 deg left of down on roof{}]\n")
    there = worked(file.format("350 N/m", per) + "find: [B]")
    made = approx(there.answers[0].components[0].value)
    back = worked(file.format("unknown", per) + f"given: [B {made:.12f} N up]\nfind: [w]")

    assert approx(back.answers[0].components[0].value) == pytest.approx(350, abs=1e-6)
    assert back.proof.passed


def test_the_area_is_written_out_and_the_answer_is_a_force_per_length():
    text = said(BEAM + 'loads: ["0 to w down on beam from A to B"]\ngiven: [B 800 N up]\nfind: [w]')

    assert "B_y (4 m) − (1/2)w (4 m)(2.6667 m) = 0" in text
    assert "−(5.3333 m²)w + 3200 N·m = 0" in text
    assert "w = 600 N/m  downward ↓" in text
    assert "A distributed load of unknown size on member beam" in text


def test_units_that_have_no_force_per_length_of_their_own_get_one():
    text = said("units: cm, N\n" + BEAM + "loads: [w down on beam from A to B]\ngiven: [B 12 N up]\nfind: [w]")

    assert "w = 6.00 N/cm  downward ↓" in text


def test_an_intensity_and_a_force_are_found_from_two_sums_together():
    text = said(BEAM.replace("w: unknown", "w: unknown, P: unknown") + "loads: [w down on beam from A to M, P at M down]\n"
                "given: [B 350 N up, A 650 N up]\nfind: [w, P]\nroute: [moments about A on beam, moments about B on beam]\n")

    # By hand: about A 350·4 = 2 w·1 + 2 P, about B 650·4 = 2 w·3 + 2 P.
    assert "w = 300 N/m" in text
    assert "P = 400 N" in text


def test_the_answer_stays_in_letters_where_the_lengths_are_letters():
    text = said("letters: {w: unknown, R: a force, l: a length, a: a length drawn 0.3 m}\n"
                "points: {A: [0, 0], B: A right l, C: B right a}\nmembers: {beam: A B C}\nsupports: {A: pin, B: roller}\n"
                "loads: [w down on beam]\ngiven: [B R up]\nfind: [w]")

    assert "2 R l/(l + a)²" in text or "2 R l/(a + l)²" in text


def test_the_data_give_the_unit_of_the_intensity():
    w = worked(BEAM + "loads: [w down on beam]\ngiven: [B 500 N up]\nfind: [w]")
    of = data(w, build(w), sheet_for(w.problem, w.values))

    assert any(f["unknown"] == "w" and f["unit"] == "N/m" for s in of["steps"] for f in s["finds"])


@pytest.mark.parametrize("load, code", [
    ("w right over 0.6 m on beam", "read.sought_pressure"),
    ("0 down on beam", "read.zero"),
    ("w*w down on beam", "read.sought_linear"),
    ("w + 3 to w down on beam from A to B", "read.sought_linear"),
    ("w to 3 down on beam from A to B", "read.sought_linear"),
])
def test_what_cannot_be_found_is_said(load, code):
    reading = read_text(BEAM + f'loads: ["{load}", 5 N at C down, w down on beam from A to M]\nfind: [w]')

    assert code in {d.code for d in reading.diagnostics if d.is_error}


def test_a_letter_is_not_both_a_force_and_an_intensity():
    reading = read_text(BEAM + "loads: [w down on beam, w at C down]\nfind: [w]")

    assert [d.code for d in reading.diagnostics if d.is_error] == ["read.sought_two_kinds"]


def test_the_letter_of_a_given_spread_load_is_written_with_its_run():
    text = said(BEAM.replace("unknown", "300 N/m") + "loads: [w down on beam from A to B]\nfind: [A]")

    assert "w (4 m)(2 m)" in text
