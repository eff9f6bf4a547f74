"""Whatever is typed, the reader answers, soon and within bounds."""

import re
import time
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from unpin.read import Reading, read_text
from unpin.read.forms import FORMS
from unpin.read.grammar import parse_phrase
from unpin.read.pieces import KEYWORDS
from unpin.read.schema import SECTIONS
from unpin.words.remarks import render

HEAD = "points: {A: [0, 0], B: [1, 0], C: [2, 1]}\nmembers: {bar: A B C}\nsupports: {A: fixed}\nfind: [A]\n"

NASTY = {
    "deep lists": "points: " + "[" * 50_000,
    "deep mappings": "points: " + "{a: " * 50_000,
    "deep blocks": "\n".join(" " * i + f"k{i}:" for i in range(600)),
    "deep dashes": "loads: " + "- " * 50_000,
    "alias bomb": "a: &a [x, x]\nb: &b [*a, *a]\nc: &c [*b, *b]\nloads: [*c, *c, *c]\n",
    "alias to itself": "loads: &a [*a]",
    "merge key": "points: {<<: {A: [0, 0]}, A: [1, 1]}",
    "tags": "points: !!python/object/apply:os.system ['true']\nloads: !!binary abc",
    "huge scalar": "title: " + "a" * 200_000,
    "huge number": HEAD + "loads: [" + "9" * 100_000 + " N at B down]",
    "huge exponent": HEAD + "loads: [2^99999999999999999999 N at B down]",
    "tower of powers": HEAD + "loads: [9^9^9^9^9^9 N at B down]",
    "powers of powers": HEAD + "loads: [((((9^20)^20)^20)^20)^20 N at B down]",
    "scientific": HEAD + "loads: [1e400 N at B down, nan N at B down, inf N at B down, .inf N at B down]",
    "many roots": HEAD
    + "loads: ['1/("
    + "+".join(f"sqrt({p})" for p in (2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37))
    + ") N at B down']",
    "roots of roots": HEAD + "loads: ['" + "sqrt(2+" * 15 + "1" + ")" * 15 + " N at B down']",
    "many angles": HEAD + "letters: {" + ", ".join(f"a{i}: (sin({i}.5)+cos({i}.7))^5" for i in range(20)) + "}",
    "letters that grow": HEAD
    + "letters: {a0: 10^20, "
    + ", ".join(f"a{i}: a{i - 1}^20*a{i - 1}^20" for i in range(1, 50))
    + "}",
    "roots that grow": HEAD
    + "letters: {a0: 1, "
    + ", ".join(f"a{i}: a{i - 1}*(sqrt({i}) + sqrt({i + 1}))" for i in range(1, 50))
    + "}",
    "brackets": HEAD + "loads: ['" + "(" * 5000 + "']",
    "signs": HEAD + "loads: ['" + "-" * 5000 + "1 N at B down']",
    "long sum": HEAD + "loads: ['" + "1+" * 9000 + "1 N at B down']",
    "long phrase": HEAD + "loads: ['3 N at B " + "down " * 3000 + "']",
    "control characters": HEAD + "loads: ['\x00\x01\x02 N at B down']\n\x7f\x1b[31m",
    "byte order mark": "\ufeff" + HEAD,
    "surrogates": HEAD + "title: \ud800\udfff",
    "tabs": "points:\n\tA: [0, 0]\n",
    "null values": "".join(f"{s.name}:\n" for s in SECTIONS),
    "lists for mappings": "points: [A, B]\nletters: [a]\nsupports: [x]\npins: [x]\nmembers: [[A, B]]\nlinks: [[A, B]]\n",
    "mappings for lists": "loads: {a: b}\nfind: {a: b}\nroute: {a: b}\nlinks: {a: {b: c}}\n"
    "members: {a: {b: c}}\ntitle: {a: b}\nfigures: {a: b}\nunits: [m]\n",
    "keys that are no text": "{[a]: b, {c: d}: e, ? : f, 1: 2}",
    "many points": "points: {" + ", ".join(f"P{i}: [{i}, {i * i}]" for i in range(9000)) + "}",
    "many same keys": "points: {" + ", ".join("P: [0, 0]" for _ in range(9000)) + "}",
    "many members": "points: {"
    + ", ".join(f"P{i}: [{i}, {i}/7]" for i in range(400))
    + "}\nmembers: {"
    + ", ".join(f"m{i}: P{i} P{399 - i}" for i in range(199))
    + "}\nloads: ["
    + ", ".join(f"3 N at P{i} down" for i in range(300))
    + "]",
    "one long member": "points: {"
    + ", ".join(f"P{i}: [{i}, {i}/7]" for i in range(400))
    + "}\nmembers: {m: "
    + " ".join(f"P{i}" for i in range(130))
    + "}\nloads: ["
    + ", ".join("3 N/m down on m per horizontal length" for _ in range(300))
    + "]",
    "many strangers": HEAD + "loads: [" + ", ".join(f"3 N at X{i} down" for i in range(300)) + "]",
    "long chain of points": "points: {A: [0, 0], B: [1, 1], "
    + ", ".join(f"P{i}: sqrt({i + 2}) from {'A' if i == 0 else f'P{i - 1}'} at {i + 0.3} deg" for i in range(60))
    + "}\nmembers: {m: A B}",
    "midpoints of midpoints": "points: {P0: [0, 0], P1: [1, 1], "
    + ", ".join(f"P{i}: midpoint of P{i - 1} P{i - 2}" for i in range(2, 400))
    + "}",
    "chains": "points: {"
    + ", ".join(f"P{i}: [{i}, {i * i}]" for i in range(180))
    + "}\nlinks: ["
    + ", ".join("-".join(f"P{(i * j) % 180}" for i in range(180)) for j in range(1, 200))
    + "]",
    "rows": "points: {O: [0, 0], "
    + ", ".join(" ".join(f"P{j}x{i}" for i in range(60)) + f": every 1/{j} at {j} deg from O" for j in range(1, 200))
    + "}",
    "forces at many points": "points: {"
    + ", ".join(f"P{i}: [{i}, {i * i}]" for i in range(190))
    + "}\nmembers: {m: "
    + " ".join(f"P{i}" for i in range(190))
    + "}\nloads: ["
    + ", ".join("3 N down at " + " ".join(f"P{i}" for i in range(190)) for _ in range(100))
    + "]",
    "documents": "--- {}\n" * 1000,
    "comment only": "#" * 100_000,
    "percent": "%YAML 9.9\n---\na: b",
    "text": "this is no problem at all",
}


ODD_BUT_FINE = {
    "byte order mark",
    "many angles",
    "many roots",
    "roots of roots",
    "long chain of points",
    "one long member",
    "many members",
}
"""Long or strange, but each says something."""


@pytest.mark.parametrize("name", NASTY)
def test_a_nasty_text_gets_an_answer_within_a_second(name):
    start = time.process_time()
    reading = read_text(NASTY[name], "nasty.yaml")
    spent = time.process_time() - start

    assert isinstance(reading, Reading)
    assert spent < 1
    assert len(reading.diagnostics) <= 200
    for remark in reading.diagnostics:
        assert len(render(remark)) < 600


@pytest.mark.parametrize("name", sorted(set(NASTY) - ODD_BUT_FINE))
def test_a_nasty_text_is_not_taken_for_a_sound_problem(name):
    assert not read_text(NASTY[name]).sound


def test_line_ends_and_a_byte_order_mark_change_nothing():
    plain = read_text(HEAD + "loads: [3 N at B down]\n")
    assert plain.sound
    assert read_text("\ufeff" + (HEAD + "loads: [3 N at B down]\n").replace("\n", "\r\n")) == plain


WORDS = st.sampled_from(
    sorted(KEYWORDS)
    + [
        "A",
        "B",
        "C",
        "bar",
        "P",
        "m",
        "kN",
        "N",
        "deg",
        "3",
        "4.5",
        "0",
        "1/3",
        "(",
        ")",
        ",",
        "=",
        "-",
        "^",
        "'",
        "[",
        "]",
        "{",
        "}",
        ":",
        "x",
        "y",
        "#",
        "sqrt",
        "θ",
        "·",
        "\t",
    ]
)
PHRASES = st.lists(WORDS, max_size=12).map(" ".join)


@settings(max_examples=300, deadline=1000)
@given(
    PHRASES,
    st.sampled_from(["points", "members", "links", "supports", "pins", "loads", "find", "route", "letters", "units", "title"]),
)
def test_words_in_any_order_never_break_the_reader(phrase, section):
    quoted = "'" + phrase.replace("'", "''") + "'"
    for text in (
        f"{HEAD}{section}: {phrase}\n",
        f"{section}: {phrase}\n{HEAD}",
        f"{section}: [{quoted}]\n{HEAD}",
        f"{section}: {{B: {quoted}}}\n{HEAD}",
    ):
        reading = read_text(text)
        [render(d) for d in reading.diagnostics]


@settings(max_examples=200, deadline=1000)
@given(st.text(max_size=200))
def test_any_text_gets_an_answer(text):
    for whole in (text, HEAD + text, "points: " + text):
        [render(d) for d in read_text(whole).diagnostics]


@settings(max_examples=200, deadline=1000)
@given(st.sampled_from([f for f in FORMS if f.kind != "direction"]), st.data())
def test_a_phrase_with_a_slip_is_read_or_remarked_upon(form, data):
    cut = data.draw(st.integers(0, len(form.example)))
    typed = form.example[:cut] + data.draw(st.text(max_size=3)) + form.example[data.draw(st.integers(cut, len(form.example))) :]
    parse_phrase(form.kind, typed)


EXAMPLES = [p.read_text("utf-8") for p in sorted((Path(__file__).parents[2] / "examples").glob("*.yaml"))]
PIECES = st.sampled_from([*sorted(KEYWORDS), *"()[]{},:=-+*/^'\"#|>&!%@\n", "0", "1e9", "A", "- ", "sqrt(", "deg", "m", "²"])


@settings(max_examples=150, deadline=1000)
@given(
    st.sampled_from(EXAMPLES), st.lists(st.tuples(st.integers(0, 10_000), st.integers(0, 2), PIECES), min_size=1, max_size=5)
)
def test_an_example_with_pieces_lost_added_or_exchanged_gets_an_answer(text, changes):
    pieces = re.findall(r"\w+|\s+|.", text)
    for where, what, piece in changes:
        at = where % len(pieces)
        pieces[at : at + (what > 0)] = [piece] if what < 2 else []

    for remark in read_text("".join(pieces), "p.yaml").diagnostics:
        assert render(remark).startswith(("p.yaml:", "error:"))


def test_a_spread_load_between_points_on_one_spot_is_a_remark():
    reading = read_text(HEAD.replace("C: [2, 1]", "C: [1, 0]").replace("A B C", "A B") + "loads: [3 N/m down from B to C]\n")
    assert "read.no_length" in [d.code for d in reading.diagnostics]


@pytest.mark.parametrize("written", [r"\e[2J", r"\0", r"\a", r"\x9b31m", r"\uFFFE", r"\b"])
@pytest.mark.parametrize("place", ['title: "x {}"\n', '"x{}": 1\n', 'loads: ["5 N at B{} down"]\n'])
def test_a_control_character_that_is_written_as_an_escape_is_refused_and_never_shown(written, place):
    """A terminal would obey it, and an SVG that holds it is no XML (W3C XML 1.0, production 2)."""
    reading = read_text(HEAD + place.format(written))

    told = [render(d) for d in reading.diagnostics]
    assert "read.control_character" in {d.code for d in reading.diagnostics} and not reading.sound
    assert not re.search("[\x00-\x08\x0b-\x1f\x7f-\x84\x86-\x9f\ufffe]", "".join(told) + (reading.problem.title if reading.problem else ""))
