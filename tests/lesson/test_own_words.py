"""The teacher's own words on paper and screen."""

import pytest

import unpin
from unpin.lesson.own_words import kept_together


@pytest.mark.parametrize(("said", "printed"), [
    ("A box of 260 N hangs 1.2 m out.", "A box of 260\u00a0N hangs 1.2\u00a0m out."),
    ("12 kN/m over 3 ft, 40 kg", "12\u00a0kN/m over 3\u00a0ft, 40\u00a0kg"),
    ("2 members, 3 in all, 4 more", "2 members, 3\u00a0in all, 4 more"),  # one word is also a unit; it reads well all the same
    ("pins at B 2 Newtons", "pins at B 2 Newtons"),
])
def test_a_number_and_its_unit_stay_on_one_line(said, printed):
    # SI Brochure, 9th edition, 5.4.3: the space between the numerical value and the unit symbol.
    assert kept_together(said) == printed


def test_every_form_keeps_them_together():
    problem = unpin.loads("text: A box of 120 N stands at B.\npoints: {A: [0, 0], B: A right 2}\nmembers: {beam: A B}\nsupports: {A: fixed}\nloads: [120 N at B down]\nfind: [A]")
    lesson = unpin.explain(unpin.solve(problem))

    assert "120\u00a0N stands" in unpin.as_page(lesson) and "120\u00a0N stands" in unpin.as_latex(lesson, "x")[0].replace("~", "\u00a0")
