"""A link to the ground in a direction alone does what one to a point of the ground does, and members that touch push alike."""

import pytest

from unpin.exact.number import approx
from unpin.read import read_text
from unpin.route.work import work

BASES = {
    "on a member": ("A: [0, 0], B: A right 1.2, C: A right 2", "jib: A B C", "A: pin"),
    "on a shared pin": ("A: [0, 0], B: A right 1.2, C: A right 2, M: B down 1", "jib: A B C, mast: B M", "A: pin, M: roller pushes right"),
}


def solved(points: str, members: str, supports: str, find: str, more: str = ""):
    """The one answer of a jib that carries 100 N at C."""
    reading = read_text(
        f"points: {{{points}}}\nmembers: {{{members}}}\n{more}supports: {{{supports}}}\nloads: [100 N at C down]\nfind: [{find}]\n"
    )
    assert reading.sound, reading.diagnostics
    worked = work(reading.problem)
    assert worked.proof.passed
    (answer,) = worked.answers
    return answer.components[0]


@pytest.mark.parametrize("base", BASES)
@pytest.mark.parametrize(
    ("said", "point"),
    [
        ("cord at 40 deg above left", "2 from B at 40 deg above left"),
        ("cord left 3 up 4", "B left 3 up 4"),
        ("link up", "B up 1"),
        ("link at 200 deg", "1 from B at 200 deg"),
    ],
)
def test_only_the_direction_of_a_link_to_the_ground_matters(base, said, point):
    points, members, supports = BASES[base]
    short = solved(points, members, f"{supports}, B: {said}", "B")
    long = solved(f"{points}, D: {point}", members, f"{supports}, D: pin", "B-D", "links: [B-D]\n")

    assert approx(short.value) == pytest.approx(approx(long.value), rel=1e-12)
    assert short.sense == long.sense


@pytest.mark.parametrize(("find", "sense"), [("K on lever", "up"), ("K on drum", "down")])
def test_members_that_touch_push_each_other_alike(find, sense):
    # 100 N at 2 m about A against the push at 0.8 m: 250 N.
    points = "A: [0, 0], C: A right 2, K: A right 0.8, O: K down 1"
    push = solved(points, "lever: A C, drum: O K", "A: pin, O: fixed", find, "contacts: {K: drum pushes lever up}\n")

    assert (abs(push.value), push.sense) == (250, sense)
