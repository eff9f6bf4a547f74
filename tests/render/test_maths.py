"""One formula in four dresses."""

from xml.etree import ElementTree

import pytest

from lessons import EXAMPLES, lesson
from unpin.lesson.formula import ZERO, Amount, Function, Header, Letter, Over, Product, Relation, Root, Signed, Sum
from unpin.lesson.nodes import Working, walk
from unpin.render.maths import mathml, rows, sentence, spoken, text, typeset
from unpin.render.typeset import compile_document
from unpin.words.numbers import Printed


def amount(digits, unit="", sign=1):
    return Amount(Printed(sign, digits, unit))


SUM = Relation(Sum((
    Signed(-1, Product((Over(amount("4"), amount("5")), amount("300", "N"), amount("2.4", "m"))), "load1"),
    Signed(1, Product((Letter("F", "BD"), Function("sin", amount("36.9", "°")), amount("1.2", "m"))), "F_BD>arm@D"),
    Signed(1, Product((Letter("C", "x", "jib <b>"), amount("-".strip("-") + "2", "m"))), "C_x>jib"),
)), ZERO)
HOSTILE = Letter('x"]\\', '#let', "$ </math><script>")


def formulas():
    for name in EXAMPLES:
        for section in lesson(name).sections:
            for node in walk(section.children):
                if isinstance(node, Working):
                    if node.header is not None:
                        yield node.header
                    yield from (line.formula for line in node.lines)


def test_text_reads_as_on_paper():
    assert text.write(SUM) == "−(4/5)(300\u202fN)(2.4\u202fm) + F_BD sin 36.9° (1.2\u202fm) + C_x,jib <b> (2\u202fm) = 0"
    assert text.write(Header("moments", "A", "↺")) == "↺+ ΣM_A = 0"


def test_a_voice_says_what_is_meant_not_what_is_drawn():
    assert spoken.write(Header("moments", "A", "↺")) == "sum of moments about A equals zero, anticlockwise positive"
    assert spoken.write(SUM).startswith("minus 4 over 5 times 300 newtons times 2.4 metres plus F BD times sine of 36.9 degrees times 1.2 metres")
    assert spoken.write(amount("1", "m")) == "1 metre"


def test_mathml_is_well_formed_and_stays_within_core():
    core = {"math", "mrow", "mi", "mn", "mo", "mtext", "mspace", "mfrac", "msqrt", "msub", "msup"}
    for formula in [SUM, HOSTILE, Root(SUM.left), *formulas()]:
        tree = ElementTree.fromstring(mathml.write(formula, spoken.write(formula), block=True))

        assert {e.tag for e in tree.iter()} <= core
        assert tree.get("aria-label")


def test_every_term_carries_the_id_of_its_arrow():
    tree = ElementTree.fromstring(mathml.write(SUM))

    assert [e.get("data-action") for e in tree.iter() if e.get("data-action")] == ["load1", "F_BD>arm@D", "C_x>jib"]


def test_the_typesetter_accepts_every_formula_and_takes_no_text_for_markup():
    lines = [f"${typeset.write(f)}$" for f in [SUM, HOSTILE, Root(SUM.left), *formulas()]]

    fonts = "#set text(font: \"Unpin Text\")\n#show math.equation: set text(font: \"Unpin Math\")\n"
    png = compile_document(fonts + "#set page(height: auto)\n" + "\n\n".join(lines), {}, "png", 30)

    assert png.startswith(b"\x89PNG")


@pytest.mark.parametrize("room", [30, 44, 80])
def test_a_long_sum_is_broken_between_terms_and_nothing_is_lost(room):
    pieces = rows.rows(SUM, room, stacked=False)

    assert " ".join(text.write(p) for p in pieces) == text.write(SUM)
    assert room == 30 or all(len(text.write(p)) <= room for p in pieces)
    assert len(pieces) == {30: 3, 44: 3, 80: 1}[room]


def test_a_sentence_is_written_with_signs_or_said_in_words():
    from unpin.lesson.nodes import Listing, Text

    one = Text("reason.at_centre", {"drops": Listing((Letter("A", "x"), Letter("A", "y"))), "point": Letter("A"), "count": 2})

    assert sentence.written(one) == "A_x and A_y act at A itself and have no arm, so they drop out."
    assert sentence.said(one) == "A x and A y act at A itself and have no arm, so they drop out."
