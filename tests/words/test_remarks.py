"""Remarks as lines of text."""

from unpin.base.diagnostic import Diagnostic, Place
from unpin.words.remarks import hint, render, sentence

POINT = Diagnostic(
    "error", "read.unknown_point", Place(14, 9, 10, "awning.yaml"), "loads > 2", {"name": "F", "nearest": "E"}, "hint.nearest"
)


def test_a_remark_has_place_severity_path_sentence_and_cure():
    assert render(POINT) == 'awning.yaml:14:9: error: loads > 2: point "F" is not known\n  hint: nearest known is "E"'
    assert sentence(POINT) == 'point "F" is not known'
    assert hint(POINT) == 'nearest known is "E"'


def test_without_place_path_and_cure_only_severity_and_sentence_are_left():
    assert render(Diagnostic("warning", "read.no_loads")) == "warning: there is no load"


def test_a_text_without_a_file_is_named_by_line_and_column():
    assert render(Diagnostic("note", "read.no_loads", Place(2, 1, 2))) == "2:1: note: there is no load"


def test_several_things_are_listed_with_words_for_codes_and_quotes_for_the_rest():
    remark = Diagnostic("error", "read.phrase", arguments={"found": "x", "wanted": ("at", "on", "@want.direction")})
    assert sentence(remark) == 'found "x", wanted "at", "on" or a direction'
