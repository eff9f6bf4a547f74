"""Arrows of what is given: on a free-body diagram as the term counts, on the last figure in their true sense with their size."""

import pytest

from unpin.draw.figures.common import action_item
from unpin.draw.figures.final import final_figure
from unpin.draw.items import CoupleItem, ForceItem
from unpin.lesson import labels
from unpin.lesson.build import build
from unpin.lesson.sheet import sheet_for
from unpin.read import read_text
from unpin.render.terminal import write
from unpin.route.work import work

RAIL = ("letters: {P: unknown%s}\npoints: {A: [0, 0], B: A right 3, C: A right 5, W: B down 2}\nmembers: {rail: A B C%s}\n%s"
        "supports: {A: fixed, W: pin}\nloads: [P down at C%s]\ngiven: [W-B 6 N compression, A 2 N m clockwise]\nfind: [P, A]\n")


def worked(letters="", member="", link="links: [W-B]\n", load=""):
    return work(read_text(RAIL % (letters, member, link, load)).problem)


@pytest.mark.parametrize("held", [{}, {"member": ", strut: W B", "link": ""}])
def test_the_last_figure_shows_a_given_pressure_as_a_push_and_a_given_couple_as_it_turns(held):
    done = worked(**held)
    sheet = sheet_for(done.problem, done.values)
    figure = final_figure(done.structure, labels.of_result(done.problem, done.structure, sheet, done.values), done.values)
    items = figure.pieces[0].items
    push = next(i for i in items if isinstance(i, ForceItem) and "".join(r.text for r in i.label).endswith("6\u202fN"))
    couple = next(i for i in items if isinstance(i, CoupleItem))

    assert push.along == pytest.approx((0.0, 1.0))
    assert couple.turn == -1
    assert "\u2212" not in "".join(r.text for i in (push, couple) for r in i.label)


def test_a_given_couple_is_drawn_on_its_free_body_as_it_counts_in_the_sum():
    done = worked()
    sheet = sheet_for(done.problem, done.values)
    lettering = labels.of_bodies(done.problem, done.structure, sheet)
    given = next(a for a in done.structure.actions_on("rail") if a.kind == "couple")

    assert given.value.value < 0
    assert action_item(given, (), lettering, done.problem, {}).turn == 1


def test_the_letter_of_a_clockwise_couple_counts_against_the_positive_sense():
    done = worked(", M: 5 N m", load=", M clockwise on rail")
    said = " ".join(write(build(done, drawn=False)).replace("\u202f", " ").replace("\u00a0", " ").split())

    # About A by hand: 6·3 - 2 - 5 P - 5 = 0.
    assert "+ M_A − P (5 m) − M = 0" in said
    assert "+ (−2 N·m) − P (5 m) − 5 N·m = 0" in said
    assert "P = 2.20 N" in said
