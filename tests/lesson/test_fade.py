"""Faded lessons: what each level takes out, in order, and that nothing of it is left anywhere."""

from pathlib import Path

import pytest

from leaks import dimensions, found, holds_symbol, holds_value, of_page, of_pdf, plain, symbols, values
from lessons import EXAMPLES, FREE, NUMBERED, lesson, worked, worked_text
from unpin import api
from unpin.lesson.build import build
from unpin.lesson.fade import CHECK, CHOOSE, DIAGRAM, LEVELS, SOLVE, SUBSTITUTE, WRITE, fade
from unpin.lesson.formula import Header
from unpin.lesson.nodes import Boxed, Drawing, Paragraph, Space, Working, walk
from unpin.publish import made
from unpin.read import read_file
from unpin.route.work import work


def faded(name, level):
    return api.explain(worked(name), fade=level)


def nodes(tree, kind):
    return [n for s in tree.sections for n in walk(s.children) if isinstance(n, kind)]


def names(tree):
    return {line.name for w in nodes(tree, Working) for line in w.lines}


@pytest.mark.parametrize("name", EXAMPLES)
def test_each_level_takes_out_one_more_kind_of_step_from_the_last_to_the_first(name):
    made_ = {level: faded(name, level) for level in LEVELS}

    assert not [n for s in made_[CHECK].sections if s.kind == "check" for n in s.children if isinstance(n, Working)]
    assert "result" in names(made_[CHECK]) and nodes(made_[CHECK], Boxed)
    assert not [n for n in nodes(made_[SOLVE], Paragraph) if n.role == "sense"]
    assert names(made_[SOLVE]) <= {"write", "substitute"} and not nodes(made_[SOLVE], Boxed)
    assert names(made_[SUBSTITUTE]) == {"write"}
    assert names(made_[WRITE]) == set() and found(made_[WRITE].sections, Header)
    assert not found(made_[CHOOSE].sections, Header)
    assert any(d.which == "body" for d in nodes(made_[CHOOSE], Drawing))
    assert [d.which for d in nodes(made_[DIAGRAM], Drawing) if d.which != "motion"] == ["problem"]


@pytest.mark.parametrize("name", EXAMPLES)
@pytest.mark.parametrize("level", LEVELS)
def test_what_is_taken_out_leaves_room_to_write(name, level):
    assert nodes(faded(name, level), Space)
    assert sum(s.rows for s in nodes(faded(name, level), Space)) >= level


def test_values_found_before_are_letters_again_where_they_are_put_in():
    shown = {w.id: [line.name for line in w.lines] for w in nodes(faded("market-awning", SOLVE), Working)}
    whole = {w.id: [line.name for line in w.lines] for w in nodes(lesson("market-awning"), Working)}

    assert whole["sum-3"] == ["write", "substitute", "collect", "result"]
    assert shown["sum-3"] == ["write"]


def test_from_the_choice_of_the_sum_on_no_diagram_shows_its_centre():
    shown = [d for d in nodes(faded("market-awning", CHOOSE), Drawing) if d.which == "body"]
    before = [d for d in nodes(faded("market-awning", WRITE), Drawing) if d.which == "body"]

    assert all(t.code != "fact.centre" for d in shown for t in d.description)
    assert any(t.code == "fact.centre" for d in before for t in d.description)
    assert {d.caption.code for d in shown} == {"caption.body"}


def test_a_level_there_is_none_of_is_refused_and_an_unsound_problem_is_told_as_ever():
    unsound = api.explain(worked_text(FREE), drawn=False)

    with pytest.raises(ValueError):
        fade(lesson("market-awning"), 7)
    assert fade(unsound, 3) == unsound


def outputs(tree, tmp_path):
    """Every file of every format as the text that could be found in it."""
    for ending in (".html", ".md", ".tex"):
        text, pictures = made(tree, ending, "figures")
        yield ending, of_page(text.decode())
        for name, data in pictures.items():
            yield name, of_page(data.decode()) if name.endswith(".svg") else of_pdf(data, tmp_path)
    yield ".pdf", of_pdf(made(tree, ".pdf", "")[0], tmp_path)


@pytest.mark.parametrize("name", NUMBERED)
@pytest.mark.parametrize("level", LEVELS)
def test_nothing_that_is_taken_out_can_be_found_in_any_format(name, level, tmp_path):
    tree = faded(name, level)
    hidden = values(lesson(name)) - values(tree) - dimensions(tree)
    gone = symbols(lesson(name)) - symbols(tree)

    stated = symbols(lesson(name).sections[:1])  # where the problem itself names every letter there is none to hide
    assert (hidden or level < SOLVE) and (gone or level < DIAGRAM or symbols(lesson(name)) == stated)
    for where, text in outputs(tree, tmp_path):
        assert not [v for v in hidden if holds_value(text, v)], where
        assert not [s for s in gone if holds_symbol(text, *s)], where


PUBLISHED = sorted((Path(__file__).parents[1] / "published" / "problems").glob("*.yaml"))[::9]


@pytest.mark.parametrize("path", PUBLISHED, ids=lambda p: p.stem)
def test_nor_in_lessons_of_other_kinds_of_problem(path):
    solved = work(read_file(path).problem)
    if solved.proof is None:
        assert not solved.soundness.solvable
        return
    whole = build(solved)
    said = plain(f"{whole.title} {whole.text}")
    for level in (SOLVE, CHOOSE, DIAGRAM):
        tree = api.explain(solved, fade=level)
        hidden = {v for v in values(whole) - values(tree) - dimensions(tree) if not holds_value(said, v)}
        gone = symbols(whole) - symbols(tree)
        for ending in (".html", ".md"):
            text = of_page(made(tree, ending, "figures")[0].decode())
            assert not [v for v in hidden if holds_value(text, v)]
            assert not [s for s in gone if holds_symbol(text, *s)]


@pytest.mark.parametrize("name", NUMBERED)
def test_the_same_search_finds_all_of_it_in_the_whole_lesson(name, tmp_path):
    hidden = values(lesson(name)) - values(faded(name, DIAGRAM)) - dimensions(lesson(name))
    gone = symbols(lesson(name)) - symbols(faded(name, DIAGRAM))
    whole = {where: text for where, text in outputs(lesson(name), tmp_path) if where.startswith(".")}

    for where, text in whole.items():
        text = text.replace("\\,", "")
        assert not [v for v in hidden if not holds_value(text, v)], where
        assert not [s for s in gone if not holds_symbol(text, *s)], where
