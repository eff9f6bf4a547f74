"""The handout: tagged, told in words, without a date, and not open to markup."""

import io
import re
from dataclasses import replace
from functools import cache

import pikepdf
import pytest
from PIL import Image, ImageOps

from lessons import EXAMPLES, FREE, lesson, worked, worked_text
from unpin.lesson.build import build
from unpin.lesson.nodes import drawings
from unpin.render import pdf, picture
from unpin.render.typeset import compile_document, pages


@cache
def handout(name):
    """The handout of an example, typeset once for all who look at it."""
    return pdf.write(lesson(name))


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
    with pikepdf.open(io.BytesIO(handout(name))) as document:
        nodes = list(structure(document))

        assert document.Root.MarkInfo.Marked
        assert str(document.Root.Lang) == "en"
        spoken = [n for n in nodes if n.S in ("/Formula", "/Figure")]
        assert len([n for n in spoken if n.S == "/Figure"]) >= len(drawings(lesson(name)))
        assert all(str(n.get("/Alt", "")) for n in spoken)
        # However pages are filled, nothing is lost; only a diagram that comes again says its formulas twice.
        assert len([n for n in spoken if n.S == "/Formula"]) >= pdf.source(lesson(name)).count("math.equation(alt")


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


SMALLEST = min(map(float, re.search(r"#let sizes = \((.*?)\)", pdf._HEAD)[1].split(",")))
"""How small a figure may come that would just not fit."""


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_figure_is_printed_at_about_its_own_size_with_no_letter_under_seven_points_and_no_subscript_under_six(name):
    drawn = pdf.pictures(lesson(name))
    printed = {id: (float(width), bool(less)) for id, width, less in re.findall(r'image\("(figure-\d+)\.svg", width: ([0-9.]+)pt( \* size)?', pdf.source(lesson(name)))}

    assert set(printed) == {file.removesuffix(".svg") for file in drawn}
    for file, text in drawn.items():
        natural = float(re.search(r' width="([0-9.]+)pt"', text)[1])
        width, less = printed[file.removesuffix(".svg")]
        size = width / natural * (SMALLEST if less else 1)
        letters = {float(size) for size in re.findall(r'font-size="([0-9.]+)"', text)}
        whole, sub = {x for x in letters if x >= 8}, {x for x in letters if x < 8}
        assert width <= pdf.PAGE
        assert min(whole) * size >= 7
        assert not sub or min(sub) * size >= 6


@pytest.mark.parametrize("name", EXAMPLES)
def test_no_figure_is_wider_than_the_column_it_stands_in(name):
    source = pdf.source(lesson(name))
    columns = re.findall(r"([0-9.]+)pt, [0-9.]+pt, [0-9.]+pt, \(again, size\) => .*?image\(\"figure-\d+\.svg\", width: ([0-9.]+)pt", source, re.S)

    assert columns
    assert all(float(figure) <= float(column) for column, figure in columns)


def blank_ends(document) -> list[float]:
    """The share of each page, without its margins, that is blank at its end."""
    out = []
    for dots in pages(*document, ppi=36):
        page = ImageOps.invert(Image.open(io.BytesIO(dots)).convert("L"))
        a4 = page.height / 297
        inked = page.crop((0, int(18 * a4), page.width, int(276 * a4))).point(lambda v: 255 * (v > 40)).getbbox()
        out.append(1 - inked[3] / (258 * a4) if inked else 1.0)
    return out


def test_pages_of_handouts_are_well_filled():
    ends = {name: blank_ends(pdf.document(lesson(name))) for name in EXAMPLES}

    inner = [end for name in EXAMPLES for end in ends[name][:-1]]
    assert max(inner) < 0.45
    assert sum(inner) / len(inner) < 0.15
    assert sum(end > 0.3 for end in inner) < len(inner) / 12


def test_a_figure_with_more_beside_it_than_a_page_holds_comes_again_and_nothing_is_lost():
    cells = "".join(f"piece(10pt)[Sum number {k}. #v(70pt)], " for k in range(40))
    calls = f'#compose(alongside(24pt, none, 215pt, 263pt, 0pt, (again, size) => [Diagram #again], ({cells})))'
    template = pdf.source(lesson("market-awning")).split("#compose(\n")[0]

    with pikepdf.open(io.BytesIO(compile_document(template + calls, {}, "pdf"))) as document:
        shown = [len(pikepdf.parse_content_stream(page)) for page in document.pages]
    assert len(shown) == 5
    assert all(steps > 20 for steps in shown)


@pytest.mark.parametrize("name", EXAMPLES)
def test_no_page_of_a_handout_holds_a_heading_alone(name):
    for page in pikepdf.open(io.BytesIO(handout(name))).pages:
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
    assert heads and set(heads) == {'=== #if again { "Its free-body diagram, from the page before" } else { "Draw its free-body diagram" }'}


@pytest.mark.parametrize("ppi", [110, 300])
@pytest.mark.parametrize("rise", [30.3, 45.0, 90.92])
def test_a_long_line_in_dots_has_no_step(ppi, rise):
    width, height = 233.37, 131.71
    drawn = (f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width} {height}" width="{width}pt" height="{height}pt">'
             f'<path d="M10 20L190 {20 + rise}" stroke="#111" stroke-width="0.8"/></svg>')
    dots = Image.open(io.BytesIO(compile_document(*picture._in_dots(drawn, width, height, 72 / ppi, "#ffffff"), "png", ppi))).convert("L")

    # The middle of the ink in each column, less the line itself: rounding to dots leaves a ripple, a step is a whole dot.
    k = ppi / 72
    edge, across, down = (round(length * k) for length in (4, width, height))
    off = []
    for x in range(int(20 * k), int(180 * k)):
        middle = (20 + rise * ((x + 0.5 - edge) * width / across - 10) / 180) * down / height + edge
        rows = range(int(middle) - 4, int(middle) + 5)
        ink = [255 - dots.getpixel((x, y)) for y in rows]
        off.append(sum(i * (y + 0.5) for i, y in zip(ink, rows)) / sum(ink) - middle)
    level = [sum(off[n:n + 9]) / 9 for n in range(len(off) - 8)]
    assert max(level) - min(level) < 0.2
