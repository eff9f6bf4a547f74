"""Arrows stand outside the body where they can, on their line of action always."""

import pytest

from unpin.draw.arrows import LENGTH, Wish, stand_all

BEAM = [((0, 0), (100, 0), 3.8)]
RIGHT, DOWN, UP, LEFT = (1.0, 0.0), (0.0, 1.0), (0.0, -1.0), (-1.0, 0.0)


def test_a_load_points_at_its_point():
    (stand,) = stand_all([Wish((50, 0), DOWN, "head")], BEAM, [(50, 0)])

    assert stand.at_head and stand.tip[1] < 0


def test_a_pull_leaves_its_point():
    (stand,) = stand_all([Wish((100, 0), RIGHT, "tail")], BEAM, [(100, 0)])

    assert not stand.at_head and stand.tip[0] > 100


def test_an_arrow_does_not_lie_along_the_body_when_it_can_stand_outside():
    (stand,) = stand_all([Wish((0, 0), RIGHT, "tail")], BEAM, [(0, 0)])

    assert stand.tip[0] < 0


def test_two_arrows_in_one_line_stand_one_behind_the_other():
    a, b = stand_all([Wish((0, 0), RIGHT, "head"), Wish((0, 0), RIGHT, "head")], BEAM, [(0, 0)])
    spans = sorted([(a.tail[0], a.tip[0]), (b.tail[0], b.tip[0])])

    assert spans[0][1] < spans[1][0]


@pytest.mark.parametrize("along", [RIGHT, DOWN, UP, LEFT, (0.6, -0.8)])
def test_the_line_of_action_goes_through_the_point(along):
    (stand,) = stand_all([Wish((50, 0), along, "either")], BEAM, [(50, 0)])
    dx, dy = stand.tip[0] - stand.tail[0], stand.tip[1] - stand.tail[1]

    assert dx * along[1] - dy * along[0] == pytest.approx(0)
    assert (stand.tip[0] - 50) * along[1] - stand.tip[1] * along[0] == pytest.approx(0)
    assert dx * along[0] + dy * along[1] <= LENGTH + 1e-9


def test_a_load_on_a_steep_member_still_touches_its_point():
    leg = [((0, 0), (40, -120), 3.8)]
    (stand,) = stand_all([Wish((20, -60), DOWN, "head")], leg, [(20, -60)])

    assert abs(stand.tip[1] + 60) < 6


@pytest.mark.parametrize("load_first", [True, False])
def test_where_a_link_pulls_up_a_load_hangs_below_the_pin(load_first):
    wishes = [Wish((0, 0), DOWN, "head"), Wish((0, 0), UP, "away")][:: 1 if load_first else -1]
    load, pull = stand_all(wishes, [], [(0, 0)])[:: 1 if load_first else -1]

    assert load.tip[1] > load.tail[1] > 0
    assert pull.tip[1] < pull.tail[1] < 0


def test_a_link_between_two_others_still_pulls_away_from_the_pin():
    stands = stand_all([Wish((0, 0), along, "away") for along in ((-0.6, 0.8), DOWN, (0.6, 0.8), RIGHT)], [], [(0, 0)])

    assert not any(s.at_head for s in stands)
