"""One way of lettering a name: the same in the figure of the problem, on the free-body diagram and in the sums."""

import unpin
from unpin.draw.label import Run
from unpin.lesson import labels
from unpin.lesson.formula import Letter, quantity, subscript
from unpin.lesson.sheet import sheet_for, symbol
from unpin.render.maths import latex, mathml, typeset

TEXT = """
letters: {F2: unknown, W3: 40 N}
points: {A1: [0, 0], B: A1 right 2, K: B right 1, P: B down 1}
members: {beam: A1 B K}
supports: {A1: pin}
loads: [F2 at K up, W3 at B down, 10 N at K down]
find: [F2, A1]
"""


def test_a_load_with_a_number_is_lettered_alike_in_both_figures_and_in_the_sums():
    worked = unpin.solve(unpin.loads(TEXT))
    sheet = sheet_for(worked.problem, worked.values)
    given = labels.of_problem(worked.problem, worked.apart, sheet)
    cut = labels.of_bodies(worked.problem, worked.structure, sheet)
    (pull,) = [a for a in worked.structure.actions if a.unknown == "F2"]
    (weight,) = [a for a in worked.structure.actions if a.symbol and a.symbol.base == "W3"]

    assert given.labels[pull.id] == cut.labels[pull.id] == (Run("F", "italic"), Run("2", "sub"))
    assert given.labels[weight.id][:2] == cut.labels[weight.id] == (Run("W", "italic"), Run("3", "sub"))
    assert symbol(worked.structure.unknown("F2").symbol) == Letter("F", "2")


def test_a_point_with_a_number_keeps_it_below_in_its_reaction():
    worked = unpin.solve(unpin.loads(TEXT))
    sheet = sheet_for(worked.problem, worked.values)
    cut = labels.of_bodies(worked.problem, worked.structure, sheet)

    assert cut.labels["A1"] == (Run("A", "italic"), Run("1", "sub"))
    assert cut.labels["A1_x>beam"] == (Run("A", "italic"), Run("1", "sub"), Run("x", "subitalic"))


def test_digits_of_a_subscript_are_upright_and_letters_italic_in_every_format():
    both = quantity("A1", "x")

    assert subscript("B2D") == (("B", False), ("2", True), ("D", False))
    assert latex.write(both) == "A_{1x}"
    assert typeset.write(both) == 'italic("A")_("1" italic("x"))'
    assert "<mn>1</mn><mi>x</mi>" in mathml.write(both)


def test_a_cord_called_by_a_letter_and_a_number_is_that_letter():
    text = "points: {K: [0, -1], W: [0, 0]}\nblocks: {sack: at K}\ncords: {T2: W to sack}\nloads: [weight of sack 5 N]\nfind: [T2]"

    (found,) = unpin.as_data(unpin.solve(unpin.loads(text)))["answers"]
    assert found["name"] == "T2"
    assert "T_2 = 5.00" in unpin.as_text(unpin.explain(unpin.solve(unpin.loads(text)), drawn=False))
