"""Which lengths and angles the figure of a problem shows: those its author gave, as far as the coordinates tell."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace
from fractions import Fraction

from unpin.base.units import ANGLE, LENGTH
from unpin.draw.bodies import used_points
from unpin.draw.cords import tangent_ends
from unpin.draw.items import AngleItem, DimensionItem, flat
from unpin.draw.lettering import Lettering
from unpin.exact.lettered import has_root, is_lettered
from unpin.exact.number import length
from unpin.model.directions import parallel
from unpin.model.problem import GROUND, Problem
from unpin.model.space import difference
from unpin.model.values import Quantity

LONGEST = 14
"""So many signs a length in letters may take."""


def given_dimensions(problem: Problem, lettering: Lettering) -> list[DimensionItem | AngleItem]:
    """A chain of lengths along x and one along y for each part, through its own points, each length once; a longer one that
    shorter ones already make up is left out, and what the parts do not tie together gets a length more. Where a part was
    given by an angle and lengths along it, those are dimensioned instead."""
    exact = problem.coordinates
    items: list[DimensionItem | AngleItem] = []
    sloped: set[str] = set()
    runs: list[tuple[str, ...]] = []
    for part in problem.parts:
        for run in slanted_runs(part.points, exact):
            mirrored = any(set(run) & set(r) and _mirrored(run, r, exact) for r in runs)
            # The angle alone says that it is the image of the other.
            items += [i for i in _along_run(run, exact, lettering) if not (mirrored and isinstance(i, DimensionItem))]
            runs.append(run)
            sloped |= {n for n in used_points(problem) if n != run[0] and _on(exact[n], exact[run[0]], exact[run[-1]])}
    sloped |= {p.name for p in problem.points if p.made == GROUND}
    for c in problem.connections:
        if c.kind == "link" and c.direction is not None and c.direction.form == "angle":
            base, along = flat(c.direction.base), flat(c.direction.vector)
            text = lettering.text(Quantity(c.direction.angle, ANGLE))
            items.append(AngleItem(f"link {c.name}", flat(exact[c.points[0]]), base, along, text))
    names = [n for n in used_points(problem) if n not in sloped and n not in tangent_ends(problem)]
    for axis, letter in ((0, "x"), (1, "y")):
        order = {v: n for n, v in enumerate(sorted({exact[p][axis] for p in names}, key=float))}
        spans: dict[tuple[int, int], tuple[str, str, str]] = {}
        for part in problem.parts:
            points = sorted(
                {exact[p][axis]: p for p in reversed(part.points) if p not in sloped}.items(), key=lambda v: float(v[0])
            )
            for (low, a), (high, b) in itertools.pairwise(points):
                spans.setdefault((order[low], order[high]), (a, b, part.name))
        spans = {k: v for k, v in spans.items() if not _made_up(k, [o for o in spans if o != k])}
        first = {n: next(p for p in names if order[exact[p][axis]] == n) for n in order.values()}
        held = _held(names, runs, axis, order, problem)
        for n in range(len(order) - 1):
            if not _tied(n, n + 1, [*spans, *held]):
                spans[n, n + 1] = (first[n], first[n + 1], "")
        for _, (a, b, part) in sorted(spans.items()):
            size = abs(exact[b][axis] - exact[a][axis])
            text = lettering.text(Quantity(size, LENGTH))
            # A length that its author gave in another way makes a long formula of itself: it is no one's.
            if text and not (is_lettered(size) and sum(len(r.text) for r in text) > LONGEST):
                items.append(DimensionItem(f"{letter}:{a}-{b}", letter, flat(exact[a]), flat(exact[b]), text, chain=part))
    axial = [i for i in items if isinstance(i, DimensionItem) and i.axis != "along"]
    return [i for i in items if i not in axial] + _few_chains(axial)


def _held(names: list[str], runs: list[tuple[str, ...]], axis: int, order, problem: Problem) -> list[tuple[int, int]]:
    """Pairs of coordinates whose distance is told by lengths and angles along slopes: of points of the slopes, and of what shares a
    member with such a point at the same coordinate. Slopes that share a point hold each other."""
    exact, out = problem.coordinates, []
    groups: list[set[str]] = []
    for run in runs:
        meeting = [g for g in groups if g & set(run)]
        groups = [g for g in groups if g not in meeting] + [set(run).union(*meeting)]
    for group in groups:
        level = [(p, q) for part in problem.parts for p in part.points for q in part.points if q in group and exact[p][axis] == exact[q][axis]]
        values = sorted({order[exact[p][axis]] for p in {*group, *(p for p, _ in level)} if p in names})
        out += itertools.pairwise(values)
    return out


def _mirrored(run: tuple[str, ...], other: tuple[str, ...], exact) -> bool:
    """Do two runs have the same steps but for their signs, in this order or in the other?"""

    def steps(r):
        return [[abs(c) for c in difference(exact[b], exact[a])] for a, b in itertools.pairwise(r)]

    mine, its = steps(run), steps(other)
    return mine in (its, its[::-1])


def slanted_runs(names: tuple[str, ...], exact) -> list[tuple[str, ...]]:
    """Straight runs that no whole-number slope describes but whose points are at rational distances: set out by an angle."""
    runs: list[tuple[str, ...]] = []
    for a, b in itertools.pairwise(names):
        if runs and runs[-1][-1] == a and parallel(difference(exact[runs[-1][0]], exact[a]), difference(exact[a], exact[b])):
            runs[-1] = (*runs[-1], b)
        else:
            runs.append((a, b))
    return [r for r in runs if all(_set_out(difference(exact[b], exact[a])) for a, b in itertools.pairwise(r))]


def _set_out(vector) -> bool:
    if all(isinstance(c, Fraction) for c in vector):
        return False
    if any(is_lettered(c) for c in vector):
        return vector[0] != 0 and vector[1] != 0 and _letter_angle(vector) is not None and not has_root(length(vector))
    if not _whole_angle(vector):
        return False  # a rational length by chance
    size = float(length(vector))
    return abs(size - float(Fraction(size).limit_denominator(2000))) < 1e-11 * max(size, 1.0)


def _whole_angle(vector) -> bool:
    """Whether the angle has few enough decimals to have been given."""
    x, y = flat(vector)
    degrees = math.degrees(math.atan2(y, x))
    return abs(degrees - float(Fraction(degrees).limit_denominator(360))) < 1e-7


def _along_run(run: tuple[str, ...], exact, lettering: Lettering) -> list[DimensionItem | AngleItem]:
    items: list[DimensionItem | AngleItem] = []
    for a, b in itertools.pairwise(run):
        size = length(difference(exact[b], exact[a]))
        size = size if is_lettered(size) else Fraction(float(size)).limit_denominator(2000)
        text = lettering.text(Quantity(size, LENGTH))
        if text:
            items.append(DimensionItem(f"along:{a}-{b}", "along", flat(exact[a]), flat(exact[b]), text, chain=f"along {run[0]}"))
    exactly = _letter_angle(difference(exact[run[-1]], exact[run[0]]))
    x, y = flat(difference(exact[run[-1]], exact[run[0]]))
    degrees = math.degrees(math.atan2(abs(y), abs(x)))
    text = lettering.text(Quantity(Fraction(degrees).limit_denominator(360) if exactly is None else exactly, ANGLE))
    if text:
        items.append(AngleItem(f"run {run[0]}", flat(exact[run[0]]), (math.copysign(1.0, x), 0.0), (x, y), text))
    return items


def _letter_angle(vector):
    """The letter angle of a run, where one of its coordinates has letters."""
    if not any(map(is_lettered, vector)):
        return None
    from unpin.exact.circular import letter_angle

    return letter_angle(vector)


def _on(p, a, b) -> bool:
    """Does the point lie on the segment, ends included?"""
    (x, y), (dx, dy) = flat(difference(p, a)), flat(difference(b, a))
    size = math.hypot(dx, dy)
    return abs(x * dy - y * dx) < 1e-9 * size * size and -1e-9 < x * dx + y * dy < size * size * (1 + 1e-9)


def _made_up(span: tuple[int, int], others: list[tuple[int, int]]) -> bool:
    """Can one go from one end of the span to the other along others that lie within it?"""
    reached = {span[0]}
    for low, high in sorted(others):
        if low in reached and high <= span[1]:
            reached.add(high)
    return span[1] in reached


def _tied(a: int, b: int, spans) -> bool:
    """Are two coordinates connected by lengths, whichever way round?"""
    beside: dict[int, list[int]] = {}
    for low, high in spans:
        beside.setdefault(low, []).append(high)
        beside.setdefault(high, []).append(low)
    reached, still = {a}, [a]
    while still:
        for v in beside.get(still.pop(), ()):
            if v not in reached:
                reached.add(v)
                still.append(v)
    return b in reached


def _few_chains(items: list[DimensionItem]) -> list[DimensionItem]:
    """Lengths that do not overlap stand on one line, whichever parts they belong to."""
    out: list[DimensionItem] = []
    for axis, k in (("x", 0), ("y", 1)):
        mine = [i for i in items if i.axis == axis]
        overlap = any(
            max(min(i.start[k], i.end[k]), min(j.start[k], j.end[k]))
            < min(max(i.start[k], i.end[k]), max(j.start[k], j.end[k])) - 1e-9
            for n, i in enumerate(mine)
            for j in mine[n + 1 :]
        )
        out += mine if overlap else [replace(i, chain="") for i in mine]
    return out
