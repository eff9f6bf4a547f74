"""Every symbol stands within the room it states, on whichever side it is put."""

import math

import pytest

from unpin.draw.geometry import apart, spot_to_segment
from unpin.draw.layout import SUPPORTS
from unpin.draw.scene import Arrow, Path, leaves
from unpin.draw.symbols.force import couple, spread
from unpin.draw.theme import LOOKS
from unpin.model.kinds import KINDS


def test_every_support_kind_of_the_model_has_a_drawing():
    assert {k.name for k in KINDS.values() if k.support} <= set(SUPPORTS)


@pytest.mark.parametrize("kind", SUPPORTS)
@pytest.mark.parametrize("degrees", [0, 90, 210])
def test_what_is_drawn_lies_in_the_room_that_is_stated(kind, degrees):
    a = math.radians(degrees)
    symbol = SUPPORTS[kind]((30.0, 40.0), (math.cos(a), -math.sin(a)), "A")
    for mark in symbol.marks:
        for spot in mark.spots:
            nearest = min(spot_to_segment(spot, p, q) - half for p, q, half in symbol.room)
            assert nearest < 1.5 or apart(spot, (30.0, 40.0)) < 9, (kind, mark.role, nearest)


@pytest.mark.parametrize("kind", SUPPORTS)
def test_a_support_stands_behind_its_point_seen_from_the_part(kind):
    symbol = SUPPORTS[kind]((0.0, 0.0), (0.0, -1.0), "A")
    ground = [m for m in symbol.marks if m.role == "ground"]

    assert ground and max(s[1] for m in ground for s in m.spots) > 0


def test_every_role_has_a_look():
    roles = {m.role for kind in SUPPORTS for m in leaves(SUPPORTS[kind]((0, 0), (0, -1.0), "A").marks)}
    assert roles <= set(LOOKS)


@pytest.mark.parametrize("turn", [1, -1])
def test_a_couple_turns_the_way_it_says(turn):
    (arrow,) = couple((0.0, 0.0), turn, (1.0, 0.0), "M").marks
    (x, y), (u, v) = arrow.spots[0], arrow.spots[1]

    assert math.copysign(1, -(x * v - y * u)) == turn


def test_a_triangular_load_has_no_arrow_where_it_is_zero_and_tips_on_the_member():
    symbol = spread((0.0, 0.0), (60.0, 0.0), (0.0, 1.0), (0.0, 22.0), "load1")
    arrows = [m for m in symbol.marks if isinstance(m, Arrow)]
    (line,) = [m for m in symbol.marks if isinstance(m, Path)]

    assert all(a.spots[-1][1] == 0 and a.spots[-1][0] > 0 for a in arrows)
    assert line.spots == ((0.0, 0.0), (60.0, -22.0))
