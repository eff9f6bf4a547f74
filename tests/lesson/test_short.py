"""The short form: plan, diagrams, sums, results, answers, one line of check."""

import pytest

from lessons import EXAMPLES, FREE, lesson, worked, worked_text
from unpin import api
from unpin.lesson.nodes import Boxed, Drawing, Working, walk
from unpin.lesson.short import short


def nodes(made, kind):
    return [n for s in made.sections for n in walk(s.children) if isinstance(n, kind)]


@pytest.mark.parametrize("name", EXAMPLES)
def test_a_short_lesson_keeps_every_diagram_sum_result_and_answer(name):
    whole, made = lesson(name), short(lesson(name))

    assert [d.id for d in nodes(made, Drawing) if d.which == "body"] == [d.id for d in nodes(whole, Drawing) if d.which == "body"]
    assert nodes(made, Boxed) == nodes(whole, Boxed)
    kept = [w for w in nodes(made, Working)]
    assert {line.name for w in kept for line in w.lines} <= {"write", "result"}
    assert [[line for line in w.lines if line.name in ("write", "result")] for w in nodes(whole, Working) if w.id != "sum-check"] == [list(w.lines) for w in kept]


@pytest.mark.parametrize("name", EXAMPLES)
def test_a_short_lesson_is_at_most_two_thirds_as_long_and_checks_in_one_line(name):
    whole, made = api.as_text(lesson(name)), api.as_text(short(lesson(name)))

    assert len(made.splitlines()) < len(whole.splitlines()) * 2 / 3
    checked = made.partition("\nCheck\n-----\n")[2].split("\n\n")[0].replace("\n", " ")
    end = "add up to zero." if worked(name).proof.closing else "give the same values."
    assert checked.endswith(end) and checked.count(".") == 1


def test_a_problem_without_a_solution_keeps_its_reasons():
    made = api.explain(worked_text(FREE), drawn=False)

    assert short(made) == made


def test_the_short_form_is_asked_for_by_name():
    assert api.explain(worked("market-awning"), short=True) == short(lesson("market-awning"))
