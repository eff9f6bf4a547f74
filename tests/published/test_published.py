"""Answers, senses and number of sums of published worked examples (sources in records/)."""

import pytest

import harness


@pytest.mark.parametrize("name", harness.names())
def test_published_example_gets_the_printed_answers(name):
    case = harness.run(name)

    assert not case.faults
    wrong = [a for a in case.answers if not a.agrees]
    assert not wrong
    assert case.proved


@pytest.mark.parametrize("name", [n for n in harness.names()])
def test_fewest_sums_are_no_more_than_the_authors(name):
    case = harness.run(name)

    assert case.shorter, f"ours {case.fewest}, author {case.author}"


def test_every_problem_has_a_record_and_a_source():
    problems = sorted(p.stem for p in (harness.HERE / "problems").glob("*.yaml"))

    assert problems == harness.names()
    assert len(problems) >= 50
    for name in problems:
        assert harness.tomllib.loads((harness.HERE / "records" / f"{name}.toml").read_text("utf-8"))["source"]


def test_most_routes_begin_with_the_authors_free_body():
    """How the author begins is a fact of the record; where ours begins otherwise the table shows both."""
    cases = [c for c in map(harness.run, harness.names()) if c.begins_with_body is not None]

    assert len(cases) >= 70
    assert sum(c.begins_with_body for c in cases) >= 0.75 * len(cases)


def test_most_routes_take_their_first_moments_where_the_author_does():
    """Where two supports are alike, either may come first: so not all."""
    cases = [c for c in map(harness.run, harness.names()) if c.begins_alike is not None]

    assert sum(c.begins_alike for c in cases) >= 0.72 * len(cases)
