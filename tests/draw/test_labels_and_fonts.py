"""The shipped typefaces and the labels they measure."""

import pytest

from unpin.draw import fonts
from unpin.draw import label as labels


def test_every_typeface_is_there_for_pages_and_for_the_typesetter():
    for name in fonts.NAMES:
        assert fonts.woff2(name)[:4] == b"wOF2"
        assert (fonts.opentype_folder() / f"{name}.ttf").read_bytes()[:4] == b"\x00\x01\x00\x00"


def test_the_licence_travels_with_the_typefaces_and_all_of_it_stays_small():
    folder = fonts.opentype_folder()
    assert "SIL OPEN FONT LICENSE" in (folder / "OFL.txt").read_text("utf-8")
    assert sum(p.stat().st_size for p in folder.iterdir() if p.is_file()) < 520_000


def test_the_mathematical_typeface_keeps_what_stretches_roots_and_brackets():
    assert b"MATH" in (fonts.opentype_folder() / "math.ttf").read_bytes()[:400]


def test_letters_of_other_languages_greek_and_the_signs_of_statics_can_be_measured():
    table = fonts.advances("text")
    for sign in "AzéßØłŽčαθΩµ·°×−′ΣΔ→↑↺↻∑√≠≤\u2009\u202f":
        assert sign in table, sign


def test_an_unknown_typeface_is_refused_by_name():
    with pytest.raises(ValueError, match="courier"):
        fonts.woff2("courier")


def test_widths_add_up_and_a_subscript_is_smaller():
    assert labels.width(labels.upright("AB"), 10) == pytest.approx(
        labels.width(labels.upright("A"), 10) + labels.width(labels.upright("B"), 10)
    )
    assert labels.width(labels.symbol("C", "x"), 9) < labels.width(labels.italic("Cx"), 9)


def test_widths_are_those_of_the_font_files():
    fonttools = pytest.importorskip("fontTools.ttLib")
    font = fonttools.TTFont(fonts.opentype_folder() / "text-italic.ttf")
    glyph = font.getBestCmap()[ord("Q")]
    assert fonts.advances("text-italic")["Q"] == font["hmtx"][glyph][0]


def test_a_subscript_makes_a_label_reach_lower():
    assert labels.height(labels.symbol("A", "x"), 9) > labels.height(labels.italic("A"), 9)


def test_a_label_reads_as_plain_text():
    assert labels.plain(labels.symbol("F", "BD")) == "FBD"
