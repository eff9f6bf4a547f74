"""Markdown: read back by a common converter, every formula is mathematics, every word a word."""

import re
from dataclasses import replace

import pytest
from latex2mathml.converter import convert
from markdown_it import MarkdownIt
from mdit_py_plugins.dollarmath import dollarmath_plugin

from lessons import EXAMPLES, FREE, lesson, worked, worked_text
from unpin import api
from unpin.lesson.build import build
from unpin.lesson.formula import Header, Letter, Root, Sum
from unpin.lesson.nodes import Working, drawings, walk
from unpin.render import markdown
from unpin.render.maths import latex


def tokens(text):
    """Every token of a Markdown text, those of a line among them."""
    reader = MarkdownIt("commonmark").use(dollarmath_plugin, allow_space=False, allow_digits=False)
    for token in reader.parse(text):
        yield token
        yield from token.children or ()


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_formula_is_read_back_as_mathematics_and_no_dollar_is_left_over(name):
    read = list(tokens(markdown.write(lesson(name), "figures")))
    maths = [t.content for t in read if t.type in ("math_inline", "math_block")]
    workings = [n for s in lesson(name).sections for n in walk(s.children) if isinstance(n, Working)]

    assert len([t for t in read if t.type == "math_block"]) == len(workings)
    assert not [t.content for t in read if t.type == "text" and ("$" in t.content or "\\" in t.content)]
    assert all(convert(m).startswith("<math") for m in maths)


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_figure_is_a_file_of_the_folder_with_its_words(name):
    text, pictures = api.as_markdown(lesson(name), "my figures")
    shown = [t for t in tokens(text) if t.type == "image"]

    assert [t.attrs["src"] for t in shown] == [f"my%20figures/{d.id}.svg" for d in drawings(lesson(name))]
    assert all(t.content for t in shown)
    assert set(pictures) == {f"{d.id}.svg" for d in drawings(lesson(name))}
    assert all(data.startswith(b"<svg ") and b"@font-face" in data for data in pictures.values())


def test_chapters_are_headings_and_a_remark_is_set_apart():
    text = markdown.write(build(worked_text(FREE)), "figures")

    assert text.startswith("# A gate off its latch\n\n## The problem\n")
    assert re.search(r"^> .*can turn about", text, re.M)


@pytest.mark.parametrize("evil", ["# no heading", "- no list", "1. no list", "*no* _emphasis_ `code`", "<b>no tag</b> &amp;", "[no](link) ![no](image)",
                                  "$no$ \\maths\\", "a | b ~~c~~", "=== not underlined", "> no quotation"])
def test_what_the_author_wrote_stays_words(evil):
    w = worked("market-awning")
    read = list(tokens(markdown.write(build(replace(w, problem=replace(w.problem, title=evil, text=evil)), drawn=False), "f")))
    first = [t for t in read if t.type == "inline"][:2]

    for line in first:
        assert {t.type for t in line.children} == {"text"}
        assert "".join(t.content for t in line.children) == evil
    assert [t.type for t in read if t.type.endswith("_open")][:3] == ["heading_open", "paragraph_open", "heading_open"]


def test_the_same_lesson_gives_the_same_bytes():
    assert api.as_markdown(build(worked("garden-arch"))) == api.as_markdown(lesson("garden-arch"))


@pytest.mark.parametrize("formula, wanted", [
    (Letter("F", "BD"), r"F_{\mathit{BD}}"), (Letter("α"), r"\alpha"), (Letter("P", "1"), "P_{1}"), (Letter("C", "x", "arm"), r"C_{x\text{, arm}}"),
    (Letter("é"), r"\textit{é}"), (Root(Letter("a")), r"\sqrt{a}"), (Sum(()), "0"),
    (Header("moments", "A", "↺"), r"{\circlearrowleft}{+}\quad {\textstyle\sum} M_{A} = 0"),
])
def test_letters_and_headers_are_written_as_latex_knows_them(formula, wanted):
    assert latex.write(formula) == wanted
