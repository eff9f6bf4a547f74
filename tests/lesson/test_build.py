"""The lesson: its order, its sums, its figures and its sentences agree with what was worked out."""

from itertools import pairwise

import pytest

from lessons import DOUBLE, EXAMPLES, FREE, NUMBERED, OWN, lesson, worked, worked_text
from unpin.draw import label as lettering
from unpin.draw.figure import draw
from unpin.draw.scene import Group
from unpin.draw.scene import Text as Mark
from unpin.exact.number import approx, sign
from unpin.lesson import formula, labels, terms
from unpin.lesson.build import build, chosen_route
from unpin.lesson.centres import with_centres
from unpin.lesson.nodes import Block, Boxed, Drawing, Working, drawings, walk
from unpin.lesson.sheet import sheet_for
from unpin.render import terminal
from unpin.words.numbers import MINUS, THIN


def number(printed) -> float:
    return float(printed.text.removesuffix(printed.unit).replace(THIN, "").replace(MINUS, "-"))


def followed(name):
    """The route that the lesson follows."""
    return chosen_route(worked(name), "")


def workings(one):
    return [n for s in one.sections if s.kind == "body" for n in walk(s.children) if isinstance(n, Working)]


@pytest.mark.parametrize("name", EXAMPLES)
def test_chapters_come_in_the_order_they_are_taught(name):
    kinds = [s.kind for s in lesson(name).sections]

    assert kinds[:3] == ["problem", "sound", "plan"]
    after = kinds[kinds.index("answers"):]
    assert after in (["answers", "check", "ways"], ["answers", "check"])
    between = kinds[3:kinds.index("answers")]
    assert set(between) - {"found"} == {"body"} and "found" not in between[:-1]


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_sum_of_the_route_is_worked_once_in_its_order(name):
    headers = [w.header for w in workings(lesson(name)) if any(x.name == "write" for x in w.lines)]

    summed = [e for s in followed(name).steps for e in s.equations]
    sheet = with_centres(sheet_for(worked(name).problem, {}), worked(name).problem, summed)
    assert headers == [terms.header(e.functional, sheet) for e in summed]


@pytest.mark.parametrize("name", EXAMPLES)
def test_each_term_is_an_arrow_of_the_diagram_beside_it_and_each_arrow_of_the_diagram_is_a_force_of_the_body(name):
    for section in lesson(name).sections:
        if section.kind != "body":
            continue
        drawn = {a.id for n in walk(section.children) if isinstance(n, Drawing) for a in _arrows(n)}
        in_sums = {a for n in walk(section.children) if isinstance(n, Working) for x in n.lines for a in formula.actions(x.formula)}

        assert in_sums <= drawn
    bodies = {e.body.name: {a.id for a in e.body.actions} for s in followed(name).steps for e in s.equations}
    for figure in drawings(lesson(name)):
        if figure.which == "body":
            assert {a.id for a in _arrows(figure)} == bodies[figure.subject]


def _arrows(drawing):
    return [f.arguments["action"] for f in drawing.figure.facts() if "action" in f.arguments]


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_label_of_an_arrow_is_its_letter_in_the_sum(name):
    """An unknown or lettered load stands in the line of symbols under the very letters it has in the figure."""
    structure, sheet = worked(name).structure, sheet_for(worked(name).problem, worked(name).values)
    for figure in drawings(lesson(name)):
        if figure.which != "body":
            continue
        shown = {g.owner: lettering.plain(m.label) for g in _groups(draw(figure.figure).marks) for m in g.marks
                 if isinstance(m, Mark) and m.role == "label" and g.owner in {a.id for a in structure.actions}}
        for action in _arrows(figure):
            if action.unknown:
                letter = formula.symbols(terms.name_of(action, sheet))[0]
                assert shown[action.id] == lettering.plain(labels.label(letter))


def _groups(marks):
    for m in marks:
        if isinstance(m, Group):
            yield m
            yield from _groups(m.marks)


@pytest.mark.parametrize("name", NUMBERED)
def test_results_are_the_proved_values_rounded_once(name):
    w = worked(name)
    sheet = sheet_for(w.problem, w.values)
    found = {}
    for working in workings(lesson(name)):
        for line in working.lines:
            if line.name == "result":
                found[line.formula.right.source] = line.formula.right.printed
    assert set(found) == {u for s in followed(name).steps for u in s.finds}
    for unknown, printed in found.items():
        dimension = w.structure.unknown(unknown).dimension
        exact = approx(w.values[unknown] / sheet.units[dimension].factor)
        assert number(printed) == pytest.approx(exact, rel=5.1e-3)
        assert sign(w.values[unknown]) == printed.sign


@pytest.mark.parametrize("name", EXAMPLES)
def test_no_line_of_a_working_repeats_the_one_above(name):
    for working in workings(lesson(name)):
        said = [terminal.maths.write(line.formula) for line in working.lines]

        assert all(a != b for a, b in pairwise(said))


@pytest.mark.parametrize("name", EXAMPLES)
def test_a_minus_in_a_result_is_explained(name):
    for section in lesson(name).sections:
        blocks = [n for n in section.children if isinstance(n, Block)]
        for solve, result in pairwise(blocks):
            if solve.name == "solve" and result.name == "result":
                last = solve.children[-1].lines[-1]
                if last.name == "result":
                    said = " ".join(terminal.written(n.text) for n in result.children)
                    assert ("negative" in said) == (last.formula.right.printed.sign < 0)


def test_a_problem_that_moves_is_a_lesson_that_says_why_and_gives_no_number():
    one = build(worked_text(FREE))

    said = terminal.write(one)
    assert not one.solved
    assert [s.kind for s in one.sections] == ["problem", "sound"]
    assert "member gate can turn about A" in said.replace("\n", " ")
    assert "so there is no equilibrium" in said
    assert [d.which for d in drawings(one)] == ["problem", "motion"]


def test_of_an_indeterminate_problem_the_part_that_is_fixed_is_still_taught():
    one = build(worked_text(DOUBLE))

    said = " ".join(terminal.write(one).split())
    assert not one.solved
    assert "It is statically indeterminate to degree 1" in said
    assert "Not found by statics alone: the reaction at A and the reaction at C" in said


def test_the_teacher_s_own_route_is_followed_and_each_sum_judged():
    one = build(worked_text(OWN), route="own")

    said = " ".join(terminal.write(one).split())
    assert "Moments about A on member arm: holds one unknown not yet known, F_DB. Good." in said
    assert "Moments about A on member arm: says nothing new." in said
    assert "It finds everything asked, with 3 sums." in said
    assert [terminal.maths.write(w.header) for w in workings(one)] == ["↺+ ΣM_A = 0", "→+ ΣF_x = 0", "↑+ ΣF_y = 0"]


PARTLY = OWN.replace("  - forces along y on arm\n", "").replace("  - forces along x on arm\n", "")


def test_a_route_of_the_file_is_followed_when_it_finds_everything_and_can_be_overridden():
    followed = " ".join(terminal.write(build(worked_text(OWN), drawn=False)).split())
    other = " ".join(terminal.write(build(worked_text(OWN), route="recommended", drawn=False)).split())

    assert "The lesson follows the sums that the file asks for." in followed and "Recommended, 3 sums:" in followed
    assert "The lesson follows" not in other and "Recommended" not in other


def test_a_route_of_the_file_that_falls_short_is_said_to_and_the_recommended_way_taken():
    w = worked_text(PARTLY)
    text = " ".join(terminal.write(build(w, drawn=False)).split())

    assert chosen_route(w, "") is w.recommended
    assert "The sums that the file asks for do not find A_x and A_y, so the recommended way is taken." in text
    assert "This way does not reach" in " ".join(terminal.write(build(w, route="own", drawn=False)).split())


def test_asking_for_a_route_that_is_not_there_is_an_error():
    with pytest.raises(ValueError):
        build(worked(EXAMPLES[0]), route="own")


def test_more_figures_are_more_digits_and_the_lesson_says_so():
    rough, fine = (terminal.write(build(worked("market-awning"), figures=n, drawn=False)) for n in (3, 5))

    assert "F_BD = −835" in rough and "Results show 3 significant" in rough
    assert "F_BD = −835.32" in fine and "Results show 5 significant" in fine


@pytest.mark.parametrize("name", NUMBERED)
def test_every_answer_has_a_box_with_the_sign_of_the_working_and_the_true_sense(name):
    boxes = [n for s in lesson(name).sections for n in s.children if isinstance(n, Boxed)]
    worked_out = {x.formula.right.source: x.formula.right.printed for w in workings(lesson(name)) for x in w.lines if x.name == "result"}

    assert len(boxes) == len(worked(name).problem.asked)
    for result in (r for b in boxes for r in b.results):
        amount = result.formula.right
        assert amount.printed == worked_out.get(amount.source, amount.printed)
        said = terminal.written(result.sense)
        assert said.startswith(f"that is {amount.printed.size.text} ") == (amount.printed.sign < 0)


@pytest.mark.parametrize("name", EXAMPLES)
def test_a_figure_is_told_with_every_force_and_point_it_shows(name):
    for drawing in drawings(lesson(name)):
        said = " ".join(terminal.written(t) for t in drawing.description)
        for fact in drawing.figure.facts():
            if fact.code == "point":
                assert f"{fact.arguments['name']} at (" in said
        assert len([1 for f in drawing.figure.facts() if "action" in f.arguments]) == said.count("Force ") + said.count("Couple ")
