"""Sheets of several problems: what stands in each, whose marks, and no answer before the back."""

from dataclasses import replace

import pytest

from leaks import dimensions, holds_value, of_page, of_pdf, of_pdf_pages, values
from lessons import lesson, worked
from unpin import api
from unpin.lesson.nodes import Boxed, Drawing, Paragraph, Space, walk
from unpin.lesson.paper import marks_fit
from unpin.publish import made

NAMES = ("market-awning", "theatre-hoist", "boat-trailer")


def sheet(**options):
    return api.paper([worked(n) for n in NAMES], **options)


def test_every_problem_has_its_number_title_statement_figure_parts_and_room():
    tree = sheet()

    assert [s.id for s in tree.sections] == ["problem-1", "problem-2", "problem-3"]
    for number, (name, section) in enumerate(zip(NAMES, tree.sections), 1):
        problem = worked(name).problem
        assert section.title.arguments == {"number": number, "title": problem.title}
        assert [n.which for n in section.children if isinstance(n, Drawing)] == ["problem"]
        parts = [n.text.arguments["letter"] for n in section.children if isinstance(n, Paragraph) and n.text.code == "paper.part"]
        assert parts == list("abcdefgh"[: len(problem.asked)])
        assert isinstance(section.children[-1], Space)
        assert problem.text.split(".")[0] in api.as_text(tree).replace("\n", " ")


def test_every_figure_has_an_id_of_its_own():
    ids = [n.id for s in sheet(answers=True).sections for n in walk(s.children) if isinstance(n, Drawing)]

    assert ids == ["figure-1", "figure-2", "figure-3"]


def test_marks_stand_at_the_problem_at_its_parts_and_in_all():
    text = api.as_text(sheet(marks=((5,), (2, 1, 3), (1,))))

    assert "12 marks in all." in text
    assert "1. Market awning (5 marks)" in text and "2. Theatre hoist (6 marks)" in text and "3. Boat trailer (one mark)" in text
    assert "(b) Find the reaction at B. (one mark)" in text and "(c) Find the force at C on member jib. (3 marks)" in text


@pytest.mark.parametrize("marks", [((5,),), ((5,), (2, 1), (1,)), ((5,), (), (1,), ())])
def test_marks_that_do_not_fit_are_refused(marks):
    assert not marks_fit([worked(n) for n in NAMES], marks)
    with pytest.raises(ValueError):
        sheet(marks=marks)


def test_answers_stand_at_the_back_on_a_page_of_their_own_and_are_those_of_the_lessons():
    tree = sheet(answers=True)

    assert [s.kind for s in tree.sections] == ["exercise"] * 3 + ["back", "answers", "answers"]
    for name, section in zip(NAMES, tree.sections[3:]):
        whole = next(s for s in lesson(name).sections if s.kind == "answers")
        assert list(section.children) == [n for n in whole.children if isinstance(n, Boxed)]


def test_a_sheet_without_answers_holds_no_value_of_a_solution(tmp_path):
    hidden = set().union(*(values(lesson(n)) for n in NAMES)) - values(sheet()) - dimensions(sheet())
    answers = [v for v in hidden if holds_value(of_page(api.as_page(sheet(answers=True))), v)]

    assert len(answers) >= 8
    assert not [v for v in hidden if holds_value(of_page(api.as_page(sheet())), v)]
    assert not [v for v in hidden if holds_value(of_pdf(made(sheet(), ".pdf", "")[0], tmp_path), v)]


def test_a_problem_told_by_its_figure_alone_says_what_is_given():
    plain = worked("market-awning")
    plain = replace(plain, problem=replace(plain.problem, text="", title=""))
    text = api.as_text(api.paper([plain]))

    assert "Problem 1" in text and "• A pin support at O" in text
    assert "A pin support at O" not in api.as_text(sheet())


def test_a_printed_problem_and_the_first_of_its_room_stay_on_one_page(tmp_path):
    pages = of_pdf_pages(made(sheet(), ".pdf", "")[0], tmp_path)

    for number, name in enumerate(NAMES, 1):
        [page] = [p for p in pages if f"{number}. {worked(name).problem.title}" in p]
        assert f"figure of problem {number}" in page and f"({'abc'[len(worked(name).problem.asked) - 1]}) Find" in page
