"""What a notebook gets when it asks a problem, a solution, a lesson or a figure to show itself. No notebook is needed for it."""

import re
import xml.etree.ElementTree as ET
from html.parser import HTMLParser

import pytest

import unpin
from lessons import FREE
from unpin import bundled
from unpin.houses import put_on
from unpin.lesson.nodes import drawings
from unpin.read.house import read_house_text
from unpin.render.page.shut import SHUT, named_apart, scoped

HOSTILE = FREE.replace("title: A gate off its latch", "title: <script>alert(1)</script>\ntext: 'a \" id=\"x\" & b'")


@pytest.fixture(scope="module")
def problem():
    return unpin.load(bundled.path_of("market-awning"), style="none")


@pytest.fixture(scope="module")
def worked(problem):
    return unpin.solve(problem)


class Tags(HTMLParser):
    def __init__(self, text: str):
        super().__init__()
        self.tags: list[tuple[str, dict]] = []
        self.feed(text)

    def handle_starttag(self, tag, attrs):
        self.tags.append((tag, dict(attrs)))


def test_a_problem_shows_its_statement_and_its_figure_and_nothing_solved(problem):
    shown = problem._repr_html_()

    assert "Market awning" in shown and "<svg" in shown
    assert "boxed\"" not in shown and "<details" not in shown
    assert ET.fromstring(problem._repr_svg_()).tag.endswith("svg")


def test_a_solution_shows_its_answers_and_folds_the_working(worked):
    shown = worked._repr_html_()
    before, _, folded = shown.partition("<details>")

    assert before.count('class="boxed"') == 3
    assert "ΣM" not in before and 'class="working"' not in before
    assert 'class="working"' in folded


def test_a_piece_runs_no_script_fetches_nothing_and_is_one_element(worked):
    tags = Tags(worked._repr_html_()).tags

    assert not [t for t, _ in tags if t in ("script", "link", "iframe", "img", "body", "html")]
    assert not [v for _, a in tags for k, v in a.items() if k.startswith("on") or (k in ("src", "href") and not v.startswith("#"))]
    assert not re.search(r"url\((?!data:|#)", worked._repr_html_())
    assert tags[0] == ("div", {"class": SHUT, "lang": "en"})


def test_every_rule_of_its_style_holds_inside_the_piece_only(worked):
    style = re.search(r"<style>(.*?)</style>", worked._repr_html_(), re.DOTALL)[1]
    style = re.sub(r"@font-face\{[^}]*\}", "", style)
    heads = [h.strip() for h in re.findall(r"([^{};]+)\{", style)]
    selectors = [s.strip() for h in heads if not h.startswith("@") for s in h.split(",")]

    assert len(selectors) > 60
    assert all(f".{SHUT}" in s for s in selectors), [s for s in selectors if f".{SHUT}" not in s]


def test_colours_follow_the_reader_the_host_or_the_house(problem):
    style = scoped(":root { --a: 1; }\n@media screen and (prefers-color-scheme: dark) { :root:not([data-colours=\"light\"]) { --a: 2; } }\np { x: y; }\n"
                   "@media print { p { x: z; } }", ".s")
    dark = put_on(problem, read_house_text("colours: dark", ("en",)).house)[0]

    assert '.s:not([data-colours="light"]){ --a: 2; }' in style
    assert ".s p{ x: y; }" in style and "x: z" not in style
    assert re.search(r'data-jp-theme-light="false"\] \.s[^{]*\{color-scheme:dark;--a: 2;\}', style)
    assert Tags(dark._repr_html_()).tags[0][1]["data-colours"] == "dark"


def test_names_within_a_piece_are_its_own_and_what_refers_to_them_still_does(problem, worked):
    one, other = Tags(problem._repr_html_()).tags, Tags(worked._repr_html_()).tags
    ids = [{a["id"] for _, a in tags if "id" in a} for tags in (one, other)]

    assert ids[0] and ids[1] and not ids[0] & ids[1]
    for tags, own in zip((one, other), ids):
        assert {a["aria-labelledby"] for _, a in tags if "aria-labelledby" in a} <= own
    assert named_apart('<p id="a">x</p><a href="#a">') == named_apart('<p id="a">x</p><a href="#a">')


def test_what_the_author_typed_is_escaped():
    shown = unpin.loads(HOSTILE)._repr_html_()

    assert "<script" not in shown and "&lt;script&gt;" in shown
    assert "a &quot; id=&quot;x&quot; &amp; b" in shown


def test_a_notebook_without_pages_gets_mathematics_or_text(worked):
    assert worked._repr_latex_().startswith("$$\n") and r"F_{\mathit{BD}} = -835\,\mathrm{N}" in worked._repr_latex_()
    assert worked._repr_markdown_().startswith("# Market awning")
    assert "data:image/svg+xml;base64," in unpin.explain(worked)._repr_markdown_()
    assert "](figures/" not in unpin.explain(worked)._repr_markdown_()


def test_a_figure_shows_itself(worked):
    (first, *_) = drawings(unpin.explain(worked))

    assert ET.fromstring(first._repr_svg_()).tag.endswith("svg")


def test_an_unsound_problem_says_why_in_every_form():
    worked = unpin.solve(unpin.loads(FREE))

    assert worked._repr_latex_() is None
    assert "A gate off its latch" in worked._repr_html_() and "can move" in worked._repr_html_()


def test_the_display_of_ipython_takes_these_forms(worked, problem):
    formatters = pytest.importorskip("IPython.core.formatters")
    data, _ = formatters.DisplayFormatter().format(worked)

    assert set(data) == {"text/html", "text/latex", "text/markdown", "text/plain"}
    assert data["text/plain"].splitlines()[:2] == ["Market awning", "A_x = 284\u202fN to the left"]
    assert formatters.DisplayFormatter().format(problem)[0]["text/plain"] == "Market awning"


def test_the_house_style_stands_in_a_notebook_too(problem):
    house = read_house_text("heading: Statics I\ncredit: Course of N. N.\nlanguage: es\nnames: {link: S_AB}", ("en", "es")).house
    shown = unpin.solve(put_on(problem, house)[0])

    assert Tags(shown._repr_html_()).tags[0][1]["lang"] == "es"
    assert "Statics I" in shown._repr_html_() and "Course of N. N." in shown._repr_html_()
    assert "S_{\\mathit{BD}}" in shown._repr_latex_()
