"""Whatever words an author types, every format shows them as words: its structure is that of the same lesson with harmless ones."""

import re
import shutil
import subprocess
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st
from lxml import etree, html
from markdown_it import MarkdownIt

from unpin import api
from unpin.model.house import PLAIN
from unpin.render import latex, markdown

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.yaml"))
PIECES = ("<script>window.hit=1</script>", '"><img src=x onerror=window.hit=1>', "'><svg onload=window.hit=1>", "javascript:window.hit=1", "</style>", "</script>", "</title>",
          "]]>", "<![CDATA[", "<!--", "-->", "--", "<?xml?>", "&lt;", "&#60;", "&amp;", "\u2028", "\u2029", "\u0085", "\u202e", "\u2066", "\u200f", "\x7f", "e\u0301\u0323", "🙂", "👩‍🏭",
          "#", "$", "\\", "{{7*7}}", "${7*7}", "#read(\"/etc/passwd\")", "\\input{/etc/passwd}", "\\write18{id}", "^^5cinput", "%", "~", "_", "*", "`", "```", "[a](javascript:hit)",
          "![a](http://x.example/y)", "<http://x.example>", "http://x.example", "| a | b |", "---", "===", "- ", "+ ", "1. ", "1) ", "> ", "~~~", "[x]: http://x.example", "[", "]", "(", "\\[", "\\(", "$$",
          "\\end{document}", "\\\\", "}", "{", "//", "/*", "*/", "@label", "<label>", "=", "'", '"', "''", "url(", "x" * 2000, "ß", "ı", "ŀ", "\ufeff", "\u00ad", "\t")
WORDS = st.lists(st.one_of(st.sampled_from(PIECES), st.text(st.characters(exclude_categories=["Cs", "Cc"]), max_size=6)), min_size=1, max_size=5).map(lambda some: " ".join(["x", *some]))
FEW = settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow])
SHORT = "points: {A: [0, 0], B: [2, 0]}\nmembers: {beam: A B}\nsupports: {A: fixed}\nloads: [5 N at B down]\n"


@pytest.fixture(scope="module")
def solved():
    return api.solve(api.loads(SHORT))


def lesson(solved, words):
    """A lesson with the same words at every place that takes free text."""
    house = replace(PLAIN, heading=words, credit=words)
    return api.explain(replace(solved, problem=replace(solved.problem, title=words, text=words, house=house)), 0, "", True, False, 0)


@pytest.fixture(scope="module")
def twin(solved):
    """The same lesson with harmless words."""
    return lesson(solved, "harmless")


@pytest.fixture(scope="module")
def twin_shape(twin):
    return page_of(api.as_page(twin))[0]


@pytest.fixture(scope="module")
def twin_tokens(twin):
    return tokens(markdown.write(twin, "figures"))


@pytest.fixture(scope="module")
def twin_orders(twin):
    return orders(latex.write(twin, "figures"))


def page_of(made):
    """Elements with the names of their attributes, and the texts that are shown, as an HTML parser sees them."""
    root = html.document_fromstring(made)
    return [(e.tag if isinstance(e.tag, str) else "comment", tuple(sorted(e.attrib))) for e in root.iter()], root


def flat(text):
    return " ".join(text.split())


@FEW
@given(words=WORDS)
@example(words=" ".join(["x", *PIECES]))
def test_a_page_has_the_elements_of_its_harmless_twin_and_shows_the_words(solved, twin_shape, words):
    shape, root = page_of(api.as_page(lesson(solved, words)))

    assert shape == twin_shape
    assert flat(root.findtext(".//h1")) == flat(root.findtext(".//title")) == flat(words)
    assert not [e for e in root.iter("script") if "window.hit" in (e.text or "")]


def tokens(made):
    return [(t.type, t.tag, tuple(c.type for c in t.children or () if c.type not in ("text", "text_special", "softbreak")))
            for t in MarkdownIt("commonmark").enable("table").parse(made)]


@FEW
@given(words=WORDS)
@example(words=" ".join(["x", *PIECES]))
def test_markdown_has_the_blocks_of_its_harmless_twin_and_shows_the_words(solved, twin_tokens, words):
    made = markdown.write(lesson(solved, words), "figures")
    heading = next(t for t in html.document_fromstring(MarkdownIt("commonmark").render(made)).iter("h1"))

    assert tokens(made) == twin_tokens
    assert flat(heading.text_content()) == flat(words)


ORDERS = re.compile(r"\\[A-Za-z@]+|\\.")
HARMLESS = {r"\textbackslash", r"\{", r"\}", r"\$", r"\&", r"\#", r"\%", r"\_", r"\textasciitilde", r"\textasciicircum", r"\textless", r"\textgreater", r"\textbar", r"\ensuremath",
            r"\surd", r"\times", r"\cdot", r"\circ", r"\dots", r"\tfrac", r"\textendash", r"\textemdash"}


def orders(made):
    return set(ORDERS.findall(made.partition("\\begin{document}")[2]))


@FEW
@given(words=st.lists(st.sampled_from(PIECES), min_size=1, max_size=6).map(lambda some: " ".join(["x", *some])))
@example(words=" ".join(["x", *PIECES]))
def test_latex_has_no_order_that_the_author_wrote(solved, twin_orders, words):
    made = latex.write(lesson(solved, words), "figures")
    more = orders(made) - twin_orders

    assert more <= HARMLESS | {r"\'", r"\d", r"\ss", r"\i", r"\,", r"\^"}, more
    assert made.count("\\end{document}") == 1
    assert not re.search(r"(?<!\\)[%$](?![^\n]*\\boxed)", "\n".join(x for x in made.splitlines() if "LARGE" in x))


@pytest.mark.skipif(not shutil.which("pdflatex"), reason="needs pdflatex")
def test_latex_with_hostile_words_is_set_without_an_error_and_shows_them(solved, tmp_path):
    source, figures = api.as_latex(lesson(solved, " ".join(["x", *(p for p in PIECES if len(p) < 100)])), "figures")
    (tmp_path / "figures").mkdir()
    for name, data in figures.items():
        (tmp_path / "figures" / name).write_bytes(data)
    (tmp_path / "a.tex").write_text(source, "utf-8")

    run = subprocess.run(["pdflatex", "-halt-on-error", "-interaction=nonstopmode", "a.tex"], cwd=tmp_path, capture_output=True, text=True, errors="replace", timeout=120)

    assert run.returncode == 0, [line for line in run.stdout.splitlines() if line.startswith("!")]
    shown = subprocess.run(["pdftotext", "-l", "1", "a.pdf", "-"], cwd=tmp_path, capture_output=True, text=True).stdout if shutil.which("pdftotext") else ""
    assert not shown or "\\input{/etc/passwd}" in shown and "<!-- -->" in shown and "root:" not in shown


@settings(FEW, max_examples=8)
@given(words=WORDS)
@example(words=" ".join(["x", *PIECES]))
def test_a_pdf_is_set_whatever_the_words_are(solved, words):
    made = api.as_pdf(lesson(solved, words))

    assert made.startswith(b"%PDF") and b"/JavaScript" not in made and b"/Launch" not in made


NAMES = st.text(st.characters(categories=["Lu", "Ll", "Lo", "Lm", "Nd", "Nl", "Mn", "Mc", "Pc"]), min_size=1, max_size=12)


@settings(FEW, max_examples=60)
@given(name=NAMES | st.sampled_from(["__proto__", "constructor", "toString", "a" * 150, "hasOwnProperty", "e\u0301", "İ", "ſ", "ŉ", "ǰ", "ﬁ", "Ⅷ", "A'", "A''", "_", "x_y_z"]))
def test_a_name_in_any_letters_is_refused_or_stays_well_formed_in_every_format(name):
    from unpin.read.reader import read_text
    from unpin.workbench.looking import look

    text = SHORT.replace("B", name)
    seen = look(text)
    if not read_text(text).sound:
        assert seen["diagnostics"]
        return
    made = api.explain(api.solve(api.loads(text)), 0, "", True, False, 0)

    svg = etree.fromstring(seen["figure"]["svg"].encode())
    assert {e.tag.rpartition("}")[2] for e in svg.iter()} <= {"svg", "title", "desc", "g", "path", "text", "tspan", "circle", "rect", "line", "polyline", "polygon", "style", "defs"}
    assert len(page_of(api.as_page(made))[0]) > 100
    for drawing in api.as_markdown(made)[1].values():
        etree.fromstring(drawing)
    assert api.as_latex(made)[0].count("\\end{document}") == 1
    assert api.as_pdf(made).startswith(b"%PDF")


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda p: p.stem)
def test_hostile_words_in_the_place_of_every_free_text_of_an_example_run_nowhere(path):
    words = " ".join(PIECES).replace("\ufeff", "")
    text = path.read_text("utf-8")
    quoted = words.replace("\t", " ").replace("'", "''").replace("\x7f", "").replace("\u2028", "").replace("\u2029", "").replace("\u0085", "")
    text = re.sub(r"^(title|text):.*(\n[ \t]+.*|\n(?=\n[ \t]))*$", "", text, flags=re.M) + f"\ntitle: '{quoted}'\ntext: '{quoted}'\n"
    made = api.explain(api.solve(api.loads(text)), 0, "", True, False, 0)

    twin = api.explain(api.solve(replace(api.loads(text), title="x", text="x")), 0, "", True, False, 0)
    assert page_of(api.as_page(made))[0] == page_of(api.as_page(twin))[0]


@pytest.mark.parametrize("name", ["<img src=x onerror=window.hit=1>", "javascript:window.hit=1", "x) ![a](http:x.example", "`x`|y|", "\u202egpj", "a\nb", "%2e%2e", "a b#c?d", "](http:)"])
def test_a_list_of_problems_shows_the_name_of_a_file_and_leads_to_it_and_nowhere_else(tmp_path, name):
    from urllib.parse import unquote

    words = " ".join(p for p in PIECES if p.isprintable()).replace("'", "''")
    (tmp_path / f"{name}.yaml").write_text(f"title: '{words}'\n{SHORT}", "utf-8")
    (tmp_path / "faulty.yaml").write_text("title: '<script>'\npoints: {'<b>': 1}\nmembers: {'<i>': '\"><img src=x onerror=y>'}\nloads: ['<u>x</u> javascript:1 $a$ `b` [c](d)']\n", "utf-8")
    from unpin.register import as_markdown, as_page

    entries = api.index(tmp_path)
    page = html.document_fromstring(as_page(entries))
    listed = html.document_fromstring(MarkdownIt("commonmark").enable("table").render(as_markdown(entries)))

    assert {e.tag for e in page.iter()} <= {"html", "head", "meta", "title", "style", "body", "h1", "p", "table", "thead", "tbody", "tr", "th", "td", "br", "small"}
    assert {e.tag for e in listed.iter()} <= {"html", "body", "table", "thead", "tbody", "tr", "th", "td", "a", "br"}
    assert {unquote(a.get("href")) for a in listed.iter("a")} == {f"{name}.yaml", "faulty.yaml"}
    assert not any(a.get("href").lower().startswith(("javascript:", "http:")) for a in listed.iter("a"))
