"""Forces of connections that are given: what was a load comes back as an unknown, and what contradicts is said."""

import pytest

from unpin.exact.number import approx
from unpin.lesson.build import build
from unpin.read import read_text
from unpin.render.terminal import write
from unpin.route.work import work


def values(text):
    reading = read_text(text)
    assert reading.sound, [d.code for d in reading.diagnostics]
    worked = work(reading.problem)
    assert worked.proof is not None and worked.proof.passed
    return {c.symbol.base + c.symbol.sub: approx(c.value) for a in worked.answers for c in a.components}


@pytest.mark.parametrize("held, given", [
    ("links: [B-W]\nsupports: {A: pin, W: pin}", "B-W {:.12f} N tension"),
    ("links: [B-F]\nsupports: {A: pin, F: pin}", "B-F {:.12f} N compression"),
    ("supports: {A: pin, B: roller}", "B {:.12f} N up"),
    ("supports: {A: pin, B: knife edge pushes up}", "B {:.12f} N"),
    ("supports: {A: pin, B: cord at 30 deg above left}", "B {:.12f} N tension"),
    ("supports: {A: pin}\ncords: {T: B to W}", "T {:.12f} N"),
    ("supports: {A: fixed}", "A {:.12f} N m anticlockwise"),
])
def test_the_load_that_made_a_force_comes_back_when_the_force_is_given(held, given):
    file = "points: {{A: [0, 0], B: A right 1.2, C: A right 2, W: A up 0.9, F: B down 0.5}}\nmembers: {{rail: A B C}}\n" \
           "letters: {{P: {}}}\nloads: [P at C down]\n".replace("{{", "{").replace("}}", "}")
    asked = "T" if "cords" in held else "A couple" if "fixed" in held else "B-F" if "B-F" in held else "B-W" if "B-W" in held else "B"
    there = values(file.replace("P: {}", "P: 250 N") + held + f"\nfind: [{asked}]")

    size = abs(next(iter(there.values())))

    back = values(file.replace("P: {}", "P: unknown") + held + f"\nfind: [P]\ngiven: [{given.format(size)}]")

    assert size > 1
    assert back["P"] == pytest.approx(250, abs=1e-6)


def test_a_plank_that_just_lifts_turns_about_its_other_edge():
    # By hand: about B, 200 N at 1 m on one side, W at 1 m on the other.
    found = values("points: {A: [0, 0], B: A right 3, C: A right 4}\nletters: {W: unknown}\nmembers: {plank: A B C}\n"
                   "supports: {A: smooth floor pushes up, B: smooth floor pushes up}\n"
                   "loads: [weight of plank 200 N, W at C down]\ngiven: [A just lifts]\nfind: [W, B]")

    assert found == {"W": 200, "By": 400}


def test_a_letter_with_a_value_is_the_tension_of_the_cord_that_has_its_name():
    found = values("points: {C: [0, 0], H: C right 0.4, K: C left 0.1 down 1}\nletters: {P: unknown, T: 300 N}\n"
                   "members: {handle: C H}\ndiscs: {drum: 0.1 m at C}\npins: {C: welded}\ncords: {T: K winds onto drum on its left}\n"
                   "supports: {C: pin on handle}\nloads: [P at H on handle down]\nfind: [P]")

    assert found == {"P": 75}


def test_a_given_force_that_contradicts_the_loads_shows_the_sum_that_fails():
    reading = read_text("points: {A: [0, 0], B: A right 3, C: A right 4}\nmembers: {plank: A B C}\nsupports: {A: pin, B: roller}\n"
                        "loads: [200 N at C down]\ngiven: [B 100 N up]\nfind: [A]")
    worked = work(reading.problem)
    said = write(build(worked)).replace("\u202f", " ").replace("\u00a0", " ")

    assert worked.proof is None
    assert "(100 N)(3 m) − (200 N)(4 m) = 0" in said
    assert "−500 N·m ≠ 0" in said


@pytest.mark.parametrize("given, code", [
    ("B-W 5 kN", "read.given_axial"),
    ("B-W 5 kN up", "read.given_axial"),
    ("A-C 5 kN tension", "read.given_no_link"),
    ("rail 5 kN tension", "read.given_no_two_force"),
    ("A-D 5 kN tension", "read.given_no_two_force"),
    ("C on rail 5 kN up", "read.given_nothing"),
    ("A 5 kN", "read.given_many"),
    ("A 5 kN m clockwise", "read.given_way"),
    ("A 5 kN tension", "read.given_way"),
    ("C 5 kN up", "read.given_nothing"),
    ("D 5 kN down", "read.given_pull"),
    ("D 5 kN right", "read.given_way"),
    ("T 5 kN compression", "read.given_slack"),
    ("B-W 3 m tension", "read.dimension"),
])
def test_what_cannot_be_given_is_said(given, code):
    reading = read_text("points: {A: [0, 0], B: A right 1.2, C: A right 2, D: A right 3, W: A up 0.9}\nmembers: {rail: A B C D}\n"
                        "links: [B-W]\nsupports: {A: pin, W: pin, D: knife edge pushes up}\ncords: {T: D to W}\n"
                        f"loads: [30 N at C down]\ngiven: [{given}]\nfind: [A]")

    assert [d.code for d in reading.diagnostics if d.is_error] == [code]


def test_what_is_given_twice_or_asked_as_well_is_said():
    text = ("points: {A: [0, 0], B: A right 1.2, C: A right 2}\nmembers: {rail: A B C}\nletters: {P: unknown}\n"
            "supports: {A: pin, B: roller}\nloads: [P at C down]\n")

    assert [d.code for d in read_text(text + "given: [B 3 N, B 4 N]\nfind: [P]").diagnostics if d.is_error] == ["read.given_twice"]
    assert [d.code for d in read_text(text + "given: [B 3 N]\nfind: [B, P]").diagnostics if d.is_error] == ["read.given_asked"]
    assert read_text(text + "given: [B 3 N]\nfind: [all reactions, P]").sound
