"""Where two members cross without a point there: a new point on both, which is a pin, as changes of the text."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import combinations, pairwise
from typing import Any

from unpin.base.units import BY_SPELLING, LENGTH
from unpin.model.problem import Part, Problem
from unpin.model.space import difference
from unpin.model.values import Vector
from unpin.read.edits.changes import written
from unpin.read.reader import read_text
from unpin.workbench.editing import edited, free_point
from unpin.workbench.folder import Refused

MOST = 4
"""Members of which the crossings are looked for, and crossings that are offered."""


def pins(text: str, touched: Sequence[str], under: Sequence[str] = (), at: Sequence[float] | None = None, near: float = 0.0) -> list[dict[str, Any]]:
    """For each crossing of two of the touched members, or of those that lie beneath the hand, what would pin them there: `pins`, the
    two; `phrase`, the place; `acts`, the changes. Only where the coordinates are rational, so that the point is on both exactly.
    `at`, `near`: only crossings so near to a place, metres, the nearest first."""
    problem = read_text(text).problem
    if problem is None:
        return []
    ids = {str(one) for one in (*touched, *under)}
    parts = [p for p in problem.parts if f"part {p.name}" in ids and p.kind == "member"]
    found = []
    for one, other in combinations(parts[:MOST], 2):
        for place, a, b in _crossings(one, other, problem):
            far = sum((float(c) - float(h)) ** 2 for c, h in zip(place, at)) ** 0.5 if at else 0.0
            if not at or far <= near:
                found.append((far, place, one, other, a, b))
    made = (_saying(text, problem, *rest) for _, *rest in sorted(found, key=lambda f: f[0]))
    return [s for s in made if s is not None][:MOST]


def _strokes(part: Part) -> tuple[tuple[str, ...], ...]:
    return (part.points, *part.outline)


def _crossings(one: Part, other: Part, problem: Problem) -> Iterator[tuple[Vector, str, str]]:
    """Each place where they cross, at no point that both have, and the point of each before it."""
    at = problem.coordinates
    common = {at[n] for n in one.points if n in other.points}
    seen = set(common)
    for a, b in (run for s in _strokes(one) for run in pairwise(s)):
        for c, d in (run for s in _strokes(other) for run in pairwise(s)):
            place = _crossing(at[a], at[b], at[c], at[d])
            if place is not None and place not in seen:
                seen.add(place)
                yield place, a, c


def _crossing(a: Vector, b: Vector, c: Vector, d: Vector) -> Vector | None:
    """Where two stretches meet, ends counted, as rational coordinates; None where they do not, or only at others."""
    u, v, gap = difference(b, a), difference(d, c), difference(c, a)
    turn = u[0] * v[1] - u[1] * v[0]
    if turn == 0:
        return None
    share, its = (gap[0] * v[1] - gap[1] * v[0]) / turn, (gap[0] * u[1] - gap[1] * u[0]) / turn
    place = tuple(p + share * w for p, w in zip(a, u))
    if not all(isinstance(x, Fraction) for x in (share, its, *place)):
        return None
    return place if 0 <= share <= 1 and 0 <= its <= 1 else None


def _saying(text: str, problem: Problem, place: Vector, one: Part, other: Part, a: str, b: str) -> dict[str, Any] | None:
    unit = BY_SPELLING.get(problem.units.get("length", "m"))
    if unit is None or unit.dimension != LENGTH:
        return None
    shown = [written(Fraction(c) / unit.factor) for c in place]
    there = next((p.name for p in problem.points if p.at == place), "")
    name = there or free_point(text)
    acts: list[dict[str, Any]] = [] if there else [{"do": "point", "name": name, "at": shown}]
    acts += [{"do": "through", "id": f"part {p.name}", "point": name, "after": before} for p, before in ((one, a), (other, b)) if name not in p.points]
    try:
        after = read_text(edited(text, acts)["text"])
    except Refused:
        return None
    errors = [sum(d.severity == "error" for d in r.diagnostics) for r in (read_text(text), after)]
    if after.problem is None or errors[1] > errors[0] or not all(_led(after.problem, p, name) for p in (one, other)):
        return None
    return {"section": "points", "name": name, "phrase": f"[{', '.join(shown)}]", "blanks": [], "means": "", "form": "", "pins": [one.name, other.name], "acts": acts}


def _led(problem: Problem, before: Part, point: str) -> bool:
    """Whether a member is as it was but for the point on it."""
    now = next((p for p in problem.parts if p.name == before.name), None)
    return now is not None and point in now.points and [_without(s, point) for s in _strokes(now)] == [_without(s, point) for s in _strokes(before)]


def _without(stroke: tuple[str, ...], point: str) -> list[str]:
    return [n for n in stroke if n != point]
