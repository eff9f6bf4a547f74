"""The handout: tagged, told in words, without a date, and not open to markup."""

import io
import re
from dataclasses import replace

import pikepdf
import pytest

from lessons import EXAMPLES, FREE, lesson, worked, worked_text
from unpin.lesson.build import build
from unpin.lesson.nodes import drawings
from unpin.render import pdf, picture


def structure(document):
    """Every structure element of a tagged PDF."""
    todo = [document.Root.StructTreeRoot]
    while todo:
        node = todo.pop()
        if isinstance(node, pikepdf.Array):
            todo += list(node)
        elif isinstance(node, pikepdf.Dictionary):
            if "/S" in node:
                yield node
            if "/K" in node:
                todo.append(node.K)


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_formula_and_figure_of_a_handout_has_a_text_alternative(name):
    with pikepdf.open(io.BytesIO(pdf.write(lesson(name)))) as document:
        nodes = list(structure(document))

        assert document.Root.MarkInfo.Marked
        assert str(document.Root.Lang) == "en"
        spoken = [n for n in nodes if n.S in ("/Formula", "/Figure")]
        assert len([n for n in spoken if n.S == "/Figure"]) >= len(drawings(lesson(name)))
        assert all(str(n.get("/Alt", "")) for n in spoken)


def test_a_handout_says_that_it_is_accessible_and_has_no_date():
    made = pdf.write(lesson("market-awning"))

    with pikepdf.open(io.BytesIO(made)) as document:
        meta = document.Root.Metadata.read_bytes().decode()
    assert re.search(r"pdfuaid:part.*1", meta)
    assert "2026" not in meta
    assert made == pdf.write(build(worked("market-awning")))


@pytest.mark.parametrize("evil", ['"]#panic("x")', "#import \"a\"", "$x$ *b* _i_ `r` @l <k> = h\n= heading", "\\", "//", "CLOSING TITLE LANGUAGE"])
def test_what_the_author_wrote_is_never_taken_for_markup(evil):
    w = worked("market-awning")
    changed = build(replace(w, problem=replace(w.problem, title=evil, text=evil)))

    assert pdf.write(changed).startswith(b"%PDF")


def test_an_unsound_problem_makes_a_handout_too():
    assert pdf.write(build(worked_text(FREE))).startswith(b"%PDF")


def test_a_figure_alone_is_a_drawing_or_dots():
    figure = drawings(lesson("market-awning"))[0]

    assert picture.svg(figure).startswith("<svg ")
    assert "@font-face" in picture.svg(figure) and "@font-face" not in picture.svg(figure, "name")
    assert picture.png(figure).startswith(b"\x89PNG")
    assert picture.png(figure) == picture.png(figure)


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_figure_is_printed_at_its_own_size_with_no_letter_under_seven_points(name):
    drawn = pdf.pictures(lesson(name))
    printed = dict(re.findall(r'image\("(figure-\d+)\.svg", width: ([0-9.]+)pt', pdf.source(lesson(name))))

    assert set(printed) == {file.removesuffix(".svg") for file in drawn}
    for file, text in drawn.items():
        natural = float(re.search(r' width="([0-9.]+)pt"', text)[1])
        width = float(printed[file.removesuffix(".svg")])
        letters = [float(size) for size in re.findall(r'font-size="([0-9.]+)"', text)]
        assert width <= pdf.PAGE
        assert min(letters) * width / natural >= 7


@pytest.mark.parametrize("name", EXAMPLES)
def test_no_figure_is_wider_than_the_column_it_stands_in(name):
    source = pdf.source(lesson(name))
    columns = re.findall(r"#(?:beside\(\"[^\"]+\", |grid\(columns: \()([0-9.]+)pt.*?image\(\"figure-\d+\.svg\", width: ([0-9.]+)pt", source, re.S)

    # A free body with a moment centre far off stands above its sums, over the whole page.
    assert columns or name == "shop-sign"
    assert all(float(figure) <= float(column) for column, figure in columns)


@pytest.mark.parametrize("name", EXAMPLES)
def test_no_page_of_a_handout_holds_a_heading_alone(name):
    for page in pikepdf.open(io.BytesIO(pdf.write(lesson(name)))).pages:
        kinds = [str(step.operator) for step in pikepdf.parse_content_stream(page)]
        shown, drawn = sum(k in ("Tj", "TJ") for k in kinds), kinds.count("Do")

        # A heading and the foot of the page are a handful of runs of text.
        assert shown > 12 or drawn, shown


def test_bodies_whose_sums_are_solved_together_each_stand_beside_their_own_diagram():
    source = pdf.source(lesson("garden-arch"))
    part = source.split("== #\"Part 1")[1].split("== #\"Part 2")[0]

    assert part.count("#figure(") == 2
    assert part.index("#figure(", part.index("#figure(") + 1) > part.index("Count the unknowns")


def test_an_answer_has_the_arrow_of_its_sense():
    assert "←" in pdf.source(lesson("garden-arch")).split("== #\"Answer\"")[1]


@pytest.mark.parametrize("name", ["theatre-hoist", "market-awning"])
def test_a_diagram_that_comes_again_is_not_to_be_drawn_again(name):
    source = pdf.source(lesson(name))

    heads = re.findall("=== #.*free-body diagram.*", source)
    assert heads and set(heads) == {'=== #if repeated { "Its free-body diagram, from the page before" } else { "Draw its free-body diagram" }'}
