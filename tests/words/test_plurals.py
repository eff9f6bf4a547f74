"""Forms of a sentence by number: the rule is data of the language."""

import pytest

from unpin.words.plurals import category, holds
from unpin.words.sentences import say


@pytest.mark.parametrize(("count", "said"), [(1, "One sum does it."), (0, "That makes 0 sums."), (2, "That makes 2 sums."), (21, "That makes 21 sums.")])
def test_a_sentence_takes_the_form_of_its_number(count, said):
    assert say("lesson.plan.sums", count=count) == said


FEW = "n % 10 = 2..4 and n % 100 != 12..14"
"""The rule of several Slavic languages for the form `few`."""


@pytest.mark.parametrize(("count", "few"), [(2, True), (4, True), (5, False), (12, False), (22, True), (114, False), (1, False)])
def test_a_rule_can_be_that_of_another_language(count, few):
    assert holds(FEW, count) is few


def test_a_rule_may_have_lists_and_alternatives():
    assert [n for n in range(12) if holds("n = 0,1 or n % 10 = 7..8", n)] == [0, 1, 7, 8]


def test_what_is_no_rule_is_an_error():
    with pytest.raises(ValueError):
        holds("__import__('os')", 1)


def test_english_has_one_and_other():
    assert [category(n) for n in (0, 1, 2, 101)] == ["other", "one", "other", "other"]
