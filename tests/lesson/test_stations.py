"""Where an idea stands on the way: the act, the sum in hand, what is found; and what a class cannot read off before it is told."""

import pytest

from lessons import EXAMPLES, OWN, lesson, worked, worked_text
from unpin.lesson.board import acting
from unpin.lesson.build import build, chosen_route
from unpin.lesson.formula import Header, Relation
from unpin.lesson.ideas import told
from unpin.lesson.nodes import Bullets, Line, Paragraph, Text
from unpin.lesson.stations import STATIONS
from unpin.model.problem import GROUND


@pytest.mark.parametrize("name", EXAMPLES)
def test_as_many_unknowns_are_found_as_the_route_finds(name):
    ideas = told(lesson(name)).ideas

    assert [i.found for i in ideas] == sorted(i.found for i in ideas)
    assert ideas[0].found == 0 and ideas[-1].found == sum(len(s.finds) for s in chosen_route(worked(name), "").steps)


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_acts_come_in_the_order_of_a_solution_and_round_again_for_each_body(name):
    known = told(lesson(name))
    acts = [i.station for i in known.ideas]

    assert set(acts) <= set(STATIONS)
    assert acts[0] == "state" and acts[known.end - 1] == "conclude"
    changes = [(a, b) for a, b in zip(acts, acts[1:]) if a != b]
    onward = {"state": {"plan"}, "plan": {"isolate"}, "isolate": {"sum"}, "sum": {"result"}, "result": {"across", "sum", "isolate", "conclude"},
              "across": {"sum", "isolate", "conclude", "result"}, "conclude": {"compare"}, "compare": set()}
    assert [c for c in changes if c[1] not in onward[c[0]]] == []


@pytest.mark.parametrize("name", EXAMPLES)
def test_a_sum_has_no_name_before_it_is_chosen_and_keeps_it_until_its_result(name):
    for idea in told(lesson(name)).ideas:
        if idea.kind in ("sum", "count", "body", "plan", "pair") and idea.station != "compare":
            assert idea.place is None, idea.kind
        if any(isinstance(x, Header) for x in idea.shows) or idea.terms:
            assert isinstance(idea.place, Text)


@pytest.mark.parametrize("name", EXAMPLES)
def test_other_ways_come_after_the_answers_and_each_is_one_idea(name):
    made = lesson(name)
    known = told(made)
    after = known.ideas[known.end:]
    section = next((s for s in made.sections if s.kind == "ways"), None)

    assert all(i.kind != "way" for i in known.ideas[:known.end]) and known.ideas[known.end - 1].kind == "answer"
    ways = section.children if section else ()
    own = next((k for k, n in enumerate(ways) if isinstance(n, Paragraph) and n.text.code == "ways.own_title"), len(ways))
    assert [x for i in after for x in i.shows][:own] == list(ways[:own])
    assert sum(isinstance(n, Bullets) for n in ways[:own]) == sum(any(isinstance(x, Bullets) for x in i.shows) for i in after)


def test_remarks_on_the_author_s_own_sums_are_told_one_by_one():
    made = build(worked_text(OWN))
    known = told(made)
    own = next(s for s in made.sections if s.kind == "ways").children
    title = next(k for k, n in enumerate(own) if isinstance(n, Paragraph) and n.text.code == "ways.own_title")

    remarks = [x for i in known.ideas[known.end:] for x in i.shows if isinstance(x, Text)]
    assert remarks == list(own[title + 1].items)


@pytest.mark.parametrize("name", EXAMPLES)
def test_pairs_and_the_forces_of_the_ground_are_two_ideas(name):
    known = told(lesson(name))
    taken_apart = next((i for i in known.ideas if i.kind == "apart"), None)
    if taken_apart is None:
        pytest.skip("nothing is taken apart")
    by = {a.id: a.by for a in acting(known.scenes[taken_apart.scene].figure)}

    for idea in known.ideas:
        if idea.kind == "pair" and idea.station == "plan":
            assert {by[a] == GROUND for a in idea.arrows} == {idea.question.code == "teach.question.held"}


def test_a_sum_on_another_body_is_told_beside_that_body():
    known = told(lesson("garden-arch"))
    first, second, block = (i for i in known.ideas if i.kind == "sum" and i.station == "sum" and i.question is None and i.place is None or
                            i.question is not None and i.question.code == "teach.question.together")

    assert [known.scenes[i.scene].figure.subject for i in (first, second)] == ["west", "whole"]
    assert first.question is not None and block.shows[0].text.code == "reason.block"


@pytest.mark.parametrize("name", ["market-awning", "garden-arch", "foot-bridge"])
def test_the_question_which_sum_is_left_is_asked_beside_the_problem(name):
    known = told(lesson(name))
    check = next(i for i in known.ideas if i.question and i.question.code == "teach.question.check")

    assert known.scenes[check.scene].figure.which == "problem"


def test_a_diagram_that_is_the_same_as_before_comes_with_all_its_arrows():
    known = told(lesson("garden-arch"))
    same = next(i for i in known.ideas for x in i.shows if isinstance(x, Paragraph) and x.text.code == "diagram.same")

    assert set(same.arrows) == {a.id for a in acting(known.scenes[same.scene].figure) if a.load is None}


def test_a_size_from_its_components_lights_them_up():
    known = told(lesson("market-awning"))
    idea = next(i for i in known.ideas for x in i.shows if isinstance(x, Line) and x.name == "write" and isinstance(x.formula, Relation)
                and known.scenes[i.scene].section.kind == "found")

    assert set(idea.lit) == {"C_x>arm", "C_y>arm"}
