"""The lesson in a terminal."""

import pytest

from lessons import EXAMPLES, lesson
from unpin.lesson.nodes import Paragraph, Section, Text
from unpin.render import terminal


@pytest.mark.parametrize("name", EXAMPLES)
@pytest.mark.parametrize("width", [60, 80])
def test_no_line_is_wider_than_the_terminal(name, width):
    boxes = ("┌", "│", "└")
    lines = terminal.write(lesson(name), width).splitlines()

    assert max(len(x) for x in lines if not x.startswith(boxes)) <= width
    assert not any(x != x.rstrip() for x in lines)


def test_the_lesson_ends_with_the_caution():
    assert terminal.write(lesson("market-awning")).rstrip().endswith("designed to local codes by licensed engineers.")


def test_a_kind_of_node_that_cannot_be_shown_is_an_error_not_a_gap():
    with pytest.raises(TypeError):
        terminal.section(Section("x", "x", Text("title.check"), (object(),)))
    assert "Check" in terminal.section(Section("x", "x", Text("title.check"), (Paragraph(Text("check.holds")),)))
