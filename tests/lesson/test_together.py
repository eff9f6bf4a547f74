"""Two sums in two unknowns: one gives one unknown by the other, and put into the second leaves one."""

from lessons import lesson, worked
from unpin.lesson.build import build
from unpin.lesson.nodes import Working, walk
from unpin.render.maths import text as signs


def together(one) -> list[list[str]]:
    return [[signs.write(x.formula).replace("\u202f", " ") for x in n.lines] for s in one.sections for n in walk(s.children)
            if isinstance(n, Working) and n.id.endswith("-together")]


def test_the_way_from_two_sums_to_their_two_unknowns_is_shown():
    assert together(lesson("garden-arch")) == [[
        "A_x = −5.6 A_y + 372 N",
        "(2.6 m)(−5.6 A_y + 372 N) − (1.4 m)A_y + 120 N·m = 0",
        "−(15.96 m)A_y + 1087.2 N·m = 0",
        "A_y = 68.1 N",
        "A_x = −5.6 (68.120 N) + 372 N",
        "A_x = −9.47 N",
    ]]


def test_no_block_is_worked_where_single_sums_do():
    assert together(lesson("lock-gate")) == []


def test_what_cancels_in_a_sum_of_a_block_is_no_hindrance():
    # The cord over the wheel pulls equally on both sides; its tension is not known when the two sums are written.
    w = worked("flag-hoist")

    assert any(len(step.equations) == 2 for step in w.fewest.steps)
    assert "T" in {t.action.unknown for s in w.fewest.steps for e in s.equations for t in e.terms}
    assert build(w, route="fewest", drawn=False).solved
