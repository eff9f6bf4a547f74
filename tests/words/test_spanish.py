"""Spanish holds to its terms, and no English word stands in it."""

import re
from pathlib import Path
from string import Formatter

import pytest

from unpin.words.sentences import catalogue

ROOT = Path(__file__).parents[2]
SUBJECTS = sorted(p.stem for p in (ROOT / "src/unpin/words/catalogue/es").glob("*.toml") if p.stem != "language")

ENGLISH = """the of and to in is that it for as are with his they at be this from have by not but what all were when we there can an
your which their said if will each about how up out them then she many some so these would other into has her two him see could than
been who its now find long down did get made may part only where after back most very just before through line right too mean same
tell does set three want air well also small end put read must such because turn here why ask off again member members pin roller
support cord disc block link body sum sums forces found route unknown unknowns load loads shown drawn acts above below between"""
"""Frequent English words (a list of one's own, from memory) and the trade's; words that Spanish spells alike are left out."""


def words(text: str) -> set[str]:
    return set(re.findall(r"[a-záéíóúüñ]+", re.sub(r"\{\w+\}|%\(\w+\)s|«[^»]*»", " ", text.lower())))


def rows() -> list[list[str]]:
    text = (ROOT / "docs/glossary-es.md").read_text("utf-8")
    return [[cell.strip() for cell in line.strip("|").split("|")] for line in text.splitlines() if line.startswith("| ")][2:]


@pytest.mark.parametrize("subject", ["lesson", "speech"])
def test_no_english_word_stands_in_a_spanish_lesson(subject):
    stop = set(ENGLISH.split())
    found = {code: sorted(words(text) & stop) for code, text in catalogue(subject, "es").items() if words(text) & stop}
    assert not found


def test_every_word_of_the_glossary_has_its_spanish_word():
    glossary = (ROOT / "docs/glossary.md").read_text("utf-8")
    english = [line.strip("|").split("|")[0].strip() for line in glossary.splitlines() if line.startswith("| ")][2:]
    given = " ".join(row[0] for row in rows())
    assert [word for word in english if not all(part in given for part in word.split(", "))] == []


def test_the_catalogue_uses_no_second_word_for_a_thing():
    refused = {word for row in rows() for word in row[3].split(", ") if word}
    text = " ".join(t for s in SUBJECTS for t in catalogue(s, "es").values()).lower()
    assert refused
    assert sorted(w for w in refused if re.search(rf"\b{w}s?\b", text)) == []


def test_every_term_has_a_source_or_says_that_it_has_none():
    assert {row[2] for row in rows() if row[1] != "no word is shown"} == {"common practice, no source", "from memory"}


@pytest.mark.parametrize("subject", SUBJECTS)
def test_spanish_quotes_are_angular_and_questions_open_with_their_sign(subject):
    for code, text in catalogue(subject, "es").items():
        assert text.count("«") == text.count("»"), code
        assert text.count("?") == text.count("¿"), code


def test_the_sine_is_written_sen_in_spanish_and_sin_elsewhere():
    """`sen` for the sine: Real Academia Española, Diccionario de la lengua española, "seno" (from memory)."""
    from fractions import Fraction

    from unpin.lesson.formula import Amount
    from unpin.lesson.sheet import sheet_for
    from unpin.model.problem import Problem
    from unpin.render.maths import latex, mathml, spoken, text, typeset
    from unpin.words import numbers

    sheets = {language: sheet_for(Problem((), ()), {}, language=language) for language in ("en", "es")}
    angle = Amount(numbers.angle(Fraction(305, 10), sheets["es"].style))
    sine = sheets["es"].function("sin", angle)
    assert text.write(sine) == "sen 30,5°"
    assert "<mi>sen</mi>" in mathml.write(sine)
    assert latex.write(sine) == "\\operatorname{sen} 30{,}5^{\\circ}"
    assert "sen" in typeset.write(sine)
    assert spoken.write(sine, "es") == "seno de 30,5 grados"
    assert text.write(sheets["en"].function("sin", angle)).startswith("sin ")


@pytest.mark.parametrize("subject", SUBJECTS)
def test_every_spanish_sentence_takes_its_arguments(subject):
    for code, text in catalogue(subject, "es").items():
        if not code.startswith("argparse."):
            names = {name for _, name, _, _ in Formatter().parse(text) if name}
            said = text.format(**dict.fromkeys(names, "X7"))
            assert said.count("X7") >= len(names), code
            assert "{" not in said.replace("{link: S_AB, roller: R_B}", ""), code


@pytest.mark.parametrize("language", ["en", "es"])
def test_a_voice_has_one_and_several_of_every_unit(language):
    from unpin.base.units import UNITS

    known = catalogue("speech", language)
    assert [u.symbol for u in UNITS if not {f"unit.{u.symbol}", f"one.{u.symbol}"} <= known.keys()] == []
