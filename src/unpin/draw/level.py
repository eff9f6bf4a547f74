"""Where a spread load stands that is measured per horizontal or vertical length: not on its member but on a level or upright line."""

from __future__ import annotations

from unpin.draw.geometry import Spot
from unpin.draw.items import SpreadItem

SLANTING = 0.3
"""A load whose direction goes less than this share across that line is drawn on its member after all."""

Runs = tuple[tuple[Spot, Spot], ...]


def standing(items: list[SpreadItem]) -> list[Runs]:
    """For each spread load the runs (in metres) that its arrows end on, one a stretch. Those per horizontal length end on a level
    line at the height of their highest place where they come from above (the lowest, from below), so that every arrow has its
    intensity along that line and still ends outside the member; likewise beside it per vertical length. Loads that follow each
    other share the line."""
    return [_runs(item, _together(item, items)) for item in items]


def _runs(item: SpreadItem, group: list[SpreadItem]) -> Runs:
    own = tuple((s[0], s[1]) for s in item.stretches)
    across = _across(item)
    if across is None:
        return own
    ends = [end[across] for other in group for s in other.stretches for end in s[:2]]
    level = max(ends) if item.along[across] < 0 else min(ends)
    return tuple((_moved(a, across, level), _moved(b, across, level)) for a, b in own)


def _across(item: SpreadItem) -> int | None:
    """The coordinate that is the same all along the line: y for a level one; None for a load that lies on its member."""
    across = {"x": 1, "y": 0}.get(item.per)
    return across if across is not None and abs(item.along[across]) > SLANTING else None


def _moved(spot: Spot, across: int, level: float) -> Spot:
    return (spot[0], level) if across else (level, spot[1])


def _together(item: SpreadItem, items: list[SpreadItem]) -> list[SpreadItem]:
    """The loads of one measure and direction that hang together with this one end to end."""
    alike = [o for o in items if (o.per, o.along) == (item.per, item.along)]
    group, ends = [item], _ends(item)
    while more := [o for o in alike if all(o is not g for g in group) and ends & _ends(o)]:
        group += more
        ends = ends.union(*(_ends(o) for o in more))
    return group


def _ends(item: SpreadItem) -> set[Spot]:
    return {end for s in item.stretches for end in s[:2]}
