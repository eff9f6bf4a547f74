"""The house style file: where it is found, what it says, and one planted fault each."""

import json

import jsonschema
import pytest

from unpin.model.house import PLAIN
from unpin.read.house import read_house, read_house_text
from unpin.read.house_file import NAME, find_house
from unpin.read.house_schema import ENTRIES, json_schema
from unpin.read.reader import read_text
from unpin.words.remarks import render
from unpin.words.sentences import catalogue

LANGUAGES = ("en", "es")
BEAM = "points: {A: [0, 0], B: A right 2}\nmembers: {beam: A B}\nsupports: {A: fixed}\nloads: [3 N at B down]\nfind: [A]\n"

FAULTS = [
    ("langauge: en", '1:1: error: langauge: "langauge" is no entry of a house style\n  hint: nearest known is "language"'),
    ("language: xx", '1:11: error: language: there is no language "xx", wanted "en" or "es"'),
    ("figures: 12", '1:10: error: figures: found "12", wanted a whole number from 2 to 8'),
    ("decimals: -1", '1:11: error: decimals: found "-1", wanted a whole number from 0 to 6'),
    ("decimals: 2\nfigures: 3", '2:1: error: figures: significant figures and decimal places cannot both be kept\n'
     '  hint: leave out "figures" or "decimals"'),
    ("moments: clokwise", '1:10: error: moments: found "clokwise", wanted "anticlockwise" or "clockwise"'),
    ("units: kN, cubits", '1:8: error: units: "cubits" is no unit'),
    ("units: kN, N", "1:8: error: units: kN and N are units of the same thing"),
    ("heading: [a, b]", "1:10: error: heading: one phrase was wanted, not a list or a mapping\n"
     "  hint: put quotes around a phrase that holds a colon, or a comma within brackets"),
    ("credit:", "1:8: error: credit: nothing is said here"),
    ("names: S_AB", "1:8: error: names: names with their phrases were wanted\n  hint: for example: {link: S_AB, roller: R_B}"),
    ("names: {linc: S_AB}", '1:9: error: names > linc: "linc" is no kind of name\n  hint: nearest known is "link"'),
    ("names: {reaction: H_A}", '1:19: error: names > reaction: found "H_A", wanted 2 names with a comma between them\n  hint: for example: A_x, A_y'),
    ('names: {link: "S_AB, T_AB"}', '1:15: error: names > link: found "S_AB, T_AB", wanted one name\n  hint: for example: F_AB'),
    ("names: {couple: M-A}", '1:17: error: names > couple: "M-A" is no name: letters, and after _ what is set below\n  hint: for example: M_A'),
    ('names: {pin: "C_x, C_x"}', '1:14: error: names > pin: "C_x" would name two forces at once\n  hint: for example: C_x, C_y'),
]


@pytest.mark.parametrize(("text", "said"), FAULTS)
def test_a_fault_is_told_with_its_place_and_cure(text, said):
    assert [render(d) for d in read_house_text(text, LANGUAGES).diagnostics] == [said]


def test_all_faults_are_told_at_once():
    found = read_house_text("figures: 99\npaper: A3\nnames: {roler: R_B}\n", LANGUAGES)

    assert [d.place.line for d in found.diagnostics] == [1, 2, 3]
    assert not found.sound


def test_every_sentence_on_a_house_style_is_taken_by_some_fault():
    taken = {d.code for text, _ in FAULTS for d in read_house_text(text, LANGUAGES).diagnostics}
    hints = {d.hint for text, _ in FAULTS for d in read_house_text(text, LANGUAGES).diagnostics}
    known = {c.removesuffix(".one").removesuffix(".other") for c in catalogue("diagnostics") if c.startswith("house.")}

    # `used` and `clash` need a problem: see tests/lesson/test_housed.py and tests/cli/test_house_option.py.
    assert known - {"house.used", "house.clash"} == {c for c in taken | hints if c.startswith("house.")}


@pytest.mark.parametrize("entry", ENTRIES, ids=lambda e: e.name)
def test_the_example_of_every_entry_is_read_without_a_remark_and_says_something(entry):
    found = read_house_text(entry.example, LANGUAGES)

    assert found.diagnostics == ()
    assert found.house != PLAIN


@pytest.mark.parametrize("entry", [e for e in ENTRIES if e.choices], ids=lambda e: e.name)
def test_what_is_left_out_is_one_of_the_choices(entry):
    said = {c: getattr(read_house_text(f"{entry.name}: {c}", LANGUAGES).house, entry.field or entry.name) for c in entry.choices}

    assert said == dict(entry.choices)
    if entry.name != "decimal sign":
        assert said[entry.default] == getattr(PLAIN, entry.field or entry.name)


def test_the_schema_takes_every_example_and_refuses_a_fault():
    import yaml

    schema = json_schema()
    jsonschema.Draft202012Validator.check_schema(schema)
    for entry in ENTRIES:
        jsonschema.validate(json.loads(json.dumps(yaml.safe_load(entry.example))), schema)
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate({"paper": "A3"}, schema)


def test_the_style_is_found_beside_the_problem_or_above_it_up_to_the_folder_opened(tmp_path):
    inner = tmp_path / "course" / "week"
    inner.mkdir(parents=True)
    (tmp_path / NAME).write_text("figures: 4")
    assert find_house(inner / "a.yaml", tmp_path / "course") is None
    assert find_house(inner / "a.yaml", tmp_path) == str(tmp_path / NAME)

    (tmp_path / "course" / NAME).write_text("figures: 5")
    assert find_house(inner / "a.yaml", tmp_path) == str(tmp_path / "course" / NAME)
    # A problem outside the folder opened has the style of its own folder only.
    assert find_house(tmp_path / "course" / "b.yaml", inner) == str(tmp_path / "course" / NAME)
    assert find_house(inner / "a.yaml", tmp_path / "elsewhere") is None


def test_a_file_that_cannot_be_read_is_a_remark(tmp_path):
    assert [d.code for d in read_house(tmp_path / "no.style", LANGUAGES).diagnostics] == ["read.no_file"]
    assert [d.code for d in read_house(tmp_path, LANGUAGES).diagnostics] == ["read.folder"]
    (tmp_path / "x").write_bytes(b"\xff\xfe")
    assert [d.code for d in read_house(tmp_path / "x", LANGUAGES).diagnostics] == ["read.not_text_file"]


def test_figures_and_units_of_the_problem_go_before_those_of_the_house():
    house = read_house_text("decimals: 2\nunits: kN, m\nmoments: clockwise", LANGUAGES).house
    plain, own = read_text(BEAM).problem, read_text(BEAM + "figures: 4\nunits: N, mm\n").problem

    assert plain.in_house(house).house == house
    assert (own.in_house(house).house.places, own.in_house(house).house.units, own.in_house(house).house.moments) == (None, {}, -1)
