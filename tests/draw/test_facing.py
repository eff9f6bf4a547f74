"""Which way a support without a direction stands."""

import math

from unpin.draw.facing import hanging, support_up


def arc(start, end, radius=2.0):
    """World coordinates, every six degrees."""
    step = 6 if end > start else -6
    return tuple((radius * math.cos(math.radians(a)), radius * math.sin(math.radians(a))) for a in range(start, end + step, step))


def ways(found):
    return [tuple(round(c) for c in way) for way in found]


def test_both_strands_hang_down_from_a_half_turn_over_the_top():
    assert ways(hanging(arc(180, 0))) == [(0, -1), (0, -1)]


def test_of_a_cord_wound_onto_a_drum_only_one_strand_leaves():
    assert ways(hanging(arc(0, 252))) == [(0, -1)]


def test_a_pin_stands_on_the_ground_where_nothing_hangs_from_it():
    assert support_up("pin", (0, 0), [], [], (0, 0)) == (0.0, -1.0)


def test_the_pin_of_a_pulley_hangs_where_its_cords_go_down():
    assert support_up("pin", (0, 0), [], [], (0, 0), ((0.0, 1.0), (0.0, 1.0))) == (0.0, 1.0)


def test_the_pin_of_a_pulley_stands_where_its_cords_go_up():
    assert support_up("pin", (0, 0), [], [], (0, 0), ((0.0, -1.0), (0.0, -1.0))) == (0.0, -1.0)


def test_nothing_is_seen_of_a_cord_that_touches_a_disc_at_one_spot():
    assert hanging(((1.0, 2.0),) * 9) == []
