"""A lesson in Spanish holds Spanish and what the author typed, nothing else: every word of every format is a word of the Spanish
catalogue or of the problem file. What the files hold is English, so an English word that is composed in code would be seen."""

import json
import re
from html import unescape
from html.parser import HTMLParser
from pathlib import Path

import pytest

from unpin import api
from unpin.lesson.build import build
from unpin.lesson.fade import fade
from unpin.lesson.short import short
from unpin.render import html, latex, markdown, pdf, terminal
from unpin.words.joining import joined
from unpin.words.sentences import catalogue

ROOT = Path(__file__).parents[2]
PUBLISHED = ROOT / "tests" / "published" / "problems"
CHOSEN = ["bj-2.4", "bj-6.5", "dh-038", "dh-068", "double-lever", "drawbridge-slack", "gerber-12", "hb-5.10", "hb-6.14", "hb-6.19",
          "hinged-beam-2.6-2", "hopper-door-69", "ice-tongs", "beam-10-trapezoid", "delft-truss-warren-prestressed"]
FILES = [*sorted((ROOT / "examples").glob("*.yaml")), *(PUBLISHED / f"{name}.yaml" for name in CHOSEN)]

WORD = re.compile(r"[^\W\d_]{3,}")
"""Shorter ones are letters, units and points."""


def words(text: str) -> set[str]:
    return set(WORD.findall(text.lower()))


def spanish() -> set[str]:
    texts = [t for subject in ("lesson", "speech", "language") for t in catalogue(subject, "es").values()]
    return {"del", *words(joined(re.sub(r"\{\w+\}", " ", " ".join(texts)), "es"))} | words(" ".join(texts))


def typed(file: Path) -> set[str]:
    """Words of the file, and its names run together as letters are (link BD of B and D)."""
    return words(file.read_text("utf-8").replace("_", " ")) | words(file.read_text("utf-8")) | {"kip", "slug"}


def foreign(text: str, file: Path) -> list[str]:
    """Words of the text that are neither Spanish nor the author's; capitals in a row are points."""
    kept = re.sub(r"\b[A-Z]+\b", " ", text)
    return sorted(words(kept) - spanish() - typed(file) - {"cos", "tan", "sen"})


def values(told) -> list[str]:
    """What is said in a tree of data: its values, not its keys."""
    return [t for v in told.values() for t in values(v)] if isinstance(told, dict) else [re.sub(r"\{\w+\}", " ", str(told))]


class Read(HTMLParser):
    """What a page shows or says."""

    def __init__(self):
        super().__init__()
        self.said, self.hidden = [], 0

    def handle_starttag(self, tag, attributes):
        self.hidden += tag in ("style", "script")
        self.said += [value for name, value in attributes if name in ("aria-label", "alt", "title") and value]

    def handle_endtag(self, tag):
        self.hidden -= tag in ("style", "script")
        self.said.append(" ")

    def handle_data(self, data):
        if not self.hidden:
            self.said.append(data)


@pytest.fixture(scope="module", params=FILES, ids=lambda f: f.stem)
def told(request):
    worked = api.solve(api.load(request.param))
    return request.param, build(worked, language="es")


def test_a_terminal_lesson_says_nothing_in_english(told):
    file, lesson = told
    assert foreign(terminal.write(lesson), file) == []
    assert foreign(terminal.write(short(lesson)), file) == []
    assert foreign(terminal.write(fade(lesson, 4)), file) == []


def test_a_page_shows_and_says_nothing_in_english(told):
    file, lesson = told
    page = html.write(lesson)
    told_apart = re.search(r'<div id="teach-told" hidden>(.*?)</div>', page)
    reader = Read()
    reader.feed(page.replace(told_apart[0], "") if told_apart else page)
    teaching = values(json.loads(unescape(told_apart[1]))["words"]) if told_apart else []
    assert '<html lang="es">' in page
    assert foreign(" ".join([*reader.said, *teaching]), file) == []


def test_a_handout_sets_and_says_nothing_in_english(told):
    file, lesson = told
    strings = " ".join(re.findall(r'#?"((?:[^"\\]|\\.)*)"', pdf.source(lesson).split("#let boxed")[1]))
    assert foreign(re.sub(r"figure-\d+\.svg", " ", strings), file) == []


def test_markdown_and_latex_say_nothing_in_english(told):
    file, lesson = told
    for text in (markdown.write(lesson, "f"), latex.write(lesson, "f").split("\\begin{document}")[1]):
        plain = re.sub(r"figure-\d+\.(svg|pdf)", " ", re.sub(r"\$\$.*?\$\$|\$[^$]*\$", " ", text, flags=re.S))
        plain = re.sub(r"\\(begin|end)\{\w+\*?\}(\[\w*\])?(\{(@\{\}|[a-z]|\{[^}]*\})*\})?", " ", plain)
        plain = re.sub(r"\\ensuremath\{[^}]*\}+", " ", re.sub(r"\\i(?=[ {}])", "i", plain))
        plain = re.sub(r"\\['~^\"`]\{\\?(\w)\}", lambda m: {"a": "á", "e": "é", "i": "í", "o": "ó", "u": "ú", "n": "ñ"}.get(m[1], m[1]), plain)
        plain = re.sub(r"\\[a-zA-Z]+\*?(\[[^\]=]*\])?", " ", plain)
        found = [w for w in foreign(plain, file) if w not in ("alt", "mm", "nbsp", "pt")]
        assert found == []


def test_the_same_look_sees_an_english_lesson():
    file = FILES[0]
    lesson = build(api.solve(api.load(file)))
    assert {"about", "answer", "upward"} <= set(foreign(terminal.write(lesson), file))


def test_every_decimal_in_spanish_has_a_comma(told):
    """Real Academia Española, Ortografía (2010), and ISO 80000-1:2009, 7.3.2: either sign, one throughout (from memory)."""
    file, lesson = told
    text = terminal.write(lesson).replace(terminal.write(lesson).split("El problema")[0], "")
    assert re.findall(r"\d\.\d\S*", text) == []
