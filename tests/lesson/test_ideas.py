"""A lesson in ideas: everything is shown once, forces are drawn as they are named, and nothing comes that the tree does not hold."""

import pytest

from lessons import DOUBLE, EXAMPLES, FREE, OWN, lesson, worked, worked_text
from unpin.lesson.board import ARMS, LEAD, RING, acting
from unpin.lesson.build import build
from unpin.lesson.fade import LEVELS, fade, hides_centres
from unpin.lesson.formula import Sum, actions
from unpin.lesson.ideas import told
from unpin.lesson.nodes import Boxed, Bullets, Drawing, Line, Paragraph, Space, Text, Working, walk
from unpin.lesson.paper import paper
from unpin.lesson.short import short


def nodes(made):
    return [n for s in made.sections for n in walk(s.children)]


def shown(known):
    return [x for i in known.ideas for x in i.shows]


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_line_every_box_and_every_body_is_told_in_the_order_of_the_lesson(name):
    made = lesson(name)
    known = told(made)

    lines = [line for n in nodes(made) if isinstance(n, Working) for line in n.lines]
    said = [x for x in shown(known) if isinstance(x, Line)]
    assert list(dict.fromkeys(map(id, said))) == list(map(id, lines))
    boxes = [id(n) for s in made.sections if s.kind == "answers" for n in s.children if isinstance(n, Boxed)]
    assert [id(x) for x in shown(known) if isinstance(x, Boxed)] == [*boxes, *boxes]
    drawn = {s.figure.id for s in known.scenes if s.figure}
    assert {n.id for n in nodes(made) if isinstance(n, Drawing)} == drawn


@pytest.mark.parametrize("name", EXAMPLES)
def test_a_force_is_drawn_when_it_is_named_and_every_force_before_the_first_sum(name):
    known = told(lesson(name))
    there: dict[str, set] = {}

    for idea in known.ideas:
        figure = known.scenes[idea.scene].figure
        if figure is None:
            assert not idea.arrows and not idea.lit
            continue
        unknown = {a.id for a in acting(figure) if a.load is None}
        drawn = there.setdefault(figure.id, set())
        new = [a for a in idea.arrows if a != ARMS and not a.startswith(RING)]
        assert not drawn & set(new), "no arrow is drawn twice"
        drawn |= set(new)
        if figure.which == "body" and idea.kind in ("sum", "header", "write", "count"):
            assert drawn == unknown
        assert set(idea.lit) & unknown <= drawn | (unknown if figure.which not in ("body", "apart") else set())


@pytest.mark.parametrize("name", EXAMPLES)
def test_a_term_of_a_sum_is_written_beside_its_arrow(name):
    known = told(lesson(name))

    for idea in known.ideas:
        line = next((x for x in idea.shows if isinstance(x, Line)), None)
        if line is None or idea.kind != "write" or not isinstance(line.formula.left, Sum):
            continue
        figure = known.scenes[idea.scene].figure
        term = line.formula.left.terms[idea.terms - 1] if idea.terms else line.formula.left.terms[-1]
        inside = {a.id for a in acting(figure)}
        assert set(actions(term)) & inside == set(idea.lit)
    sums = [n for n in nodes(lesson(name)) if isinstance(n, Working) and n.step]
    beside = {id(x): known.scenes[i.scene].figure for i in known.ideas for x in i.shows if isinstance(x, Line)}
    for line in (line for n in sums if n.header is not None for line in n.lines):
        assert set(actions(line.formula)) <= {a.id for a in acting(beside[id(line)])}


def test_of_several_moment_centres_each_is_ringed_with_the_sum_about_it():
    known = told(lesson("canal-gate"))

    ringed = [[a for a in i.arrows if a.startswith(RING)] for i in known.ideas if i.kind == "sum"]
    headers = [[a for a in i.arrows if a.startswith(RING)] for i in known.ideas if i.kind == "header"]
    # The order of the sums: about C for the force at A, then about A for the one at C.
    assert [r for r in ringed if r] == [[f"{RING}C"], [f"{RING}A"]]
    assert [r for r in headers if r] == [[f"{RING}C"], [f"{RING}A"]]


def test_a_question_asks_for_what_the_idea_after_it_says():
    known = told(lesson("market-awning"))

    asked = {i.question.code.removeprefix("teach.question.") for i in known.ideas if i.question}
    assert {"sound", "apart", "held", "plan", "forces", "count", "point", "sum", "axial", "way", "pair", "check"} == asked
    point = next(i for i in known.ideas if i.question and i.question.code.endswith("point"))
    assert point.kind == "sum" and "Only" not in str(point.question.arguments)


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("name", ["market-awning", "garden-arch", "foot-bridge"])
def test_a_faded_lesson_has_no_idea_that_its_tree_does_not_hold(name, level):
    faded = fade(build(worked(name), centres=not hides_centres(level)), level)
    known = told(faded)

    held = {id(n) for n in nodes(faded)} | {id(line) for n in nodes(faded) if isinstance(n, Working) for line in (n.header, *n.lines)}
    held |= {id(t) for n in nodes(faded) if isinstance(n, Bullets) for t in n.items}
    own = [x for x in shown(known) if id(x) not in held and x != LEAD]
    parts = [t for n in nodes(faded) if isinstance(n, Paragraph) for t in _parts(n.text)]
    assert all(isinstance(x, Text) and (x.code in ("teach.apart", "teach.pairs", "teach.held") or all(any(p is t for t in parts) for p in _parts(x))) for x in own)
    assert any(isinstance(x, Space) for x in shown(known))
    pairs = list(zip(known.ideas, known.ideas[1:]))
    assert not any(a.kind == b.kind == "space" and a.scene == b.scene for a, b in pairs)


def _parts(text):
    found = text.arguments.get("all")
    return list(found.items) if found is not None else [text]


@pytest.mark.parametrize("made", [
    pytest.param(lambda: build(worked_text(FREE)), id="it can move"), pytest.param(lambda: build(worked_text(DOUBLE)), id="held once too often"),
    pytest.param(lambda: build(worked_text(OWN)), id="own route"), pytest.param(lambda: short(lesson("lock-gate")), id="short"),
    pytest.param(lambda: paper([worked("market-awning"), worked("lock-gate")], answers=True), id="sheet"),
    pytest.param(lambda: build(worked("theatre-hoist"), language="es"), id="Spanish"),
])
def test_any_lesson_can_be_told_and_no_board_is_empty(made):
    known = told(made())

    assert len(known.ideas) >= 5
    assert [i.scene for i in known.ideas] == sorted(i.scene for i in known.ideas)
    assert {i.scene for i in known.ideas} >= set(range(len(known.scenes) - 1))
    assert all(i.shows or known.scenes[i.scene].figure for i in known.ideas)
