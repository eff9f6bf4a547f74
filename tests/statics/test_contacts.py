"""Smooth contacts push only: one that would have to pull opens, and the rest is looked at without it."""

from unpin.read import read_text
from unpin.route.work import work

HATCH = """
units: m, N
points: {A: [0, 0], B: [1, 0], C: [3, 0]}
members: {hatch: A B C}
supports: {A: contact pushes up, B: pin}
loads: [LOAD]
find: [A, B]
"""


def test_a_contact_that_pushes_stays():
    w = work(read_text(HATCH.replace("LOAD", "90 N at C up")).problem)

    assert not w.opened
    assert w.proof.passed
    assert [c.value for c in w.answers[0].components] == [180]


def test_a_contact_that_would_have_to_pull_opens_and_what_is_left_moves():
    w = work(read_text(HATCH.replace("LOAD", "90 N at C down")).problem)

    assert [(o.connection.points, o.needed) for o in w.opened] == [(("A",), -180)]
    assert not w.soundness.holds
    assert w.recommended is None
    assert len(w.soundness.freedoms) == 1


