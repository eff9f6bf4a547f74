"""The page: alone, safe, accessible, the same each time."""

import base64
import hashlib
import re
from dataclasses import replace
from html.parser import HTMLParser

import pytest

from lessons import EXAMPLES, FREE, lesson, worked, worked_text
from unpin.lesson.build import build
from unpin.lesson.nodes import drawings
from unpin.render import html

VOID = {"meta", "br", "hr", "img", "link", "input"}


class Tree(HTMLParser):
    """Open and close tags in balance; ids, links and everything that could fetch."""

    def __init__(self, text):
        super().__init__(convert_charrefs=True)
        self.open, self.ids, self.links, self.fetches, self.scripts, self.actions = [], [], [], [], 0, []
        self.feed(text)
        assert not self.open

    def handle_starttag(self, tag, attributes):
        found = dict(attributes)
        self.ids += [found["id"]] if "id" in found else []
        self.links += [found["href"]] if "href" in found else []
        self.fetches += [v for k, v in attributes if k in ("src", "srcset", "poster", "action", "data")]
        self.scripts += tag == "script"
        self.actions += [(tag, found["data-action"])] if "data-action" in found else []
        assert not any(k.startswith("on") for k, _ in attributes)
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag, attributes):
        self.handle_starttag(tag, attributes)
        if tag not in VOID:
            self.open.pop()

    def handle_endtag(self, tag):
        assert self.open.pop() == tag


@pytest.mark.parametrize("name", EXAMPLES)
def test_a_page_is_whole_and_fetches_nothing(name):
    text = html.write(lesson(name))

    tree = Tree(text)
    assert not tree.fetches and tree.scripts == 1
    assert len(tree.ids) == len(set(tree.ids))
    assert all(link.startswith("#") and link[1:] in tree.ids for link in tree.links)
    assert set(re.findall(r"https?://[^\"' )]+", text)) <= {"http://www.w3.org/2000/svg"}
    assert not re.search(r"url\((?!data:)", text)


@pytest.mark.parametrize("name", EXAMPLES)
def test_a_term_has_its_arrow_on_the_page(name):
    tree = Tree(html.write(lesson(name)))

    terms = {a for tag, a in tree.actions if tag == "mrow"}
    arrows = {a for tag, a in tree.actions if tag == "g"}
    assert terms and terms <= arrows


def test_the_policy_allows_only_the_style_and_script_that_are_there():
    text = html.write(lesson("market-awning"))

    for tag in ("style", "script"):
        inside = re.search(rf"<{tag}>(.*?)</{tag}>", text, re.DOTALL)[1]
        digest = base64.b64encode(hashlib.sha256(inside.encode()).digest()).decode()
        assert f"{tag}-src 'sha256-{digest}'" in text
    assert "default-src 'none'" in text and "unsafe" not in text
    assert ' style="' not in text


def test_what_the_author_wrote_is_never_taken_for_markup():
    w = worked("market-awning")
    evil = '</title><script>alert(1)</script>"><img src=x onerror=alert(1)>&amp;'
    problem = replace(w.problem, title=evil, text=evil)

    text = html.write(build(replace(w, problem=problem)))

    tree = Tree(text)
    assert tree.scripts == 1
    assert "alert(1)</script>" not in text and "<img" not in text


def test_every_figure_has_a_name_and_is_told_in_words():
    text = html.write(lesson("lock-gate"))

    for drawing in drawings(lesson("lock-gate")):
        assert f'aria-labelledby="{drawing.id}-name"' in text and f'id="{drawing.id}-told"' in text


def test_the_same_problem_gives_the_same_bytes():
    assert html.write(build(worked("theatre-hoist"))) == html.write(build(worked("theatre-hoist")))


def test_an_unsound_problem_makes_a_page_with_its_motion():
    text = html.write(build(worked_text(FREE)))

    assert "A motion that nothing prevents" in text
    Tree(text)


def test_a_line_of_working_can_be_broken_before_each_of_its_signs_and_is_read_as_one():
    from unpin.lesson.formula import Letter, Relation, Signed, Sum
    from unpin.render.maths import mathml

    line = Relation(Sum((Signed(-1, Letter("A")), Signed(1, Letter("B")), Signed(-1, Letter("C")))), Letter("D"))
    found = mathml.pieces(line)

    assert len(found) == 4
    assert [re.findall(r"<mo[^>]*>(.)</mo>", piece) for piece in found] == [["−"], ["+"], ["−"], ["="]]
    assert html.write(lesson("garden-arch")).count('role="math"') > 10
