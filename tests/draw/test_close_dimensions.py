"""Dimensions of close neighbours: each beside what it measures."""

from unpin.draw.dimensions import NARROW, lay
from unpin.draw.items import DimensionItem
from unpin.draw.scene import Arrow, Path

LABEL = ()


def laid(*heights):
    spots = [(0.0, y) for y in heights]
    items = [(DimensionItem(f"y{n}", "y", a, b, LABEL, 0), a, b) for n, (a, b) in enumerate(zip(spots, spots[1:]))]
    return lay(items, spots, [], [], (0.0, min(heights), 10.0, max(heights)))


def lines(made, owner):
    return [m for m in made.marks if isinstance(m, (Path, Arrow)) and m.owner == owner]


def test_close_neighbours_stand_on_lines_of_their_own_without_arrows_from_outside():
    made = laid(0.0, 8.0, 18.0, 26.0)
    places = [next(m.spots[0][0] for m in lines(made, f"y{n}")) for n in range(3)]

    assert len(set(places)) == 3
    assert not [m for m in made.marks if isinstance(m, Arrow)]


def test_a_close_pair_of_lines_among_wide_ones_keeps_its_arrows_on_the_common_line():
    made = laid(0.0, 60.0, 60.0 + NARROW - 3, 130.0)

    assert len({round(m.spots[0][0], 3) for n in range(3) for m in lines(made, f"y{n}")}) == 1
    assert len([m for m in lines(made, "y1") if isinstance(m, Arrow)]) == 2
