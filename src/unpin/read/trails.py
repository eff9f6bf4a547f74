"""The way along members that are not in line from one point to another."""

from __future__ import annotations

from collections.abc import Iterable

from unpin.model.problem import Part

MOST_STEPS = 5000
"""Steps of the search; a structure in which it does not end has many ways, and then none is meant."""


def way_through(parts: Iterable[Part], first: str, last: str) -> list[tuple[str, str, str]]:
    """The one way that visits no point twice, as (member, point, next point) for each straight run; [] where there is none, or where
    there are several and it is not clear which is meant."""
    runs: dict[str, list[tuple[str, str]]] = {}
    for part in parts:
        if part.kind == "member":
            for a, b in zip(part.points, part.points[1:]):
                if a != b:
                    runs.setdefault(a, []).append((part.name, b))
                    runs.setdefault(b, []).append((part.name, a))
    found: list[list[tuple[str, str, str]]] = []
    open_ways: list[tuple[str, list[tuple[str, str, str]]]] = [(first, [])]
    for _ in range(MOST_STEPS):
        if not open_ways:
            return found[0] if len(found) == 1 else []
        here, way = open_ways.pop()
        if here == last:
            found.append(way)
            continue
        seen = {first, *(step[2] for step in way)}
        open_ways += [(there, [*way, (name, here, there)]) for name, there in dict.fromkeys(runs.get(here, ())) if there not in seen]
    return []
