"""Why a structure can move or is ambiguous, in the figures' own terms: lines through one point, lines parallel, pins in line."""

from __future__ import annotations

from collections.abc import Iterator

from unpin.base.tolerance import NEARLY_CONCURRENT
from unpin.exact.number import approx, length
from unpin.model.action import Structure
from unpin.model.directions import parallel
from unpin.model.findings import Cause
from unpin.model.space import PLANE, cross, difference
from unpin.statics.isolate import isolate
from unpin.statics.wrenches import unit_wrench


def causes(structure: Structure, freedoms, stresses) -> Iterator[Cause]:
    """Causes that the geometry shows; the bare count comes last, when nothing better explains it."""
    found = list(_of_bodies(structure)) if freedoms else []
    found += list(_pins_in_line(structure)) if freedoms else []
    yield from found
    if not freedoms:
        yield from _near_misses(structure)
    # The same as sums less unknowns, but for discs that spin idly, which nobody counts.
    short = len(freedoms) - len(stresses)
    if short > 0:
        yield Cause("too_few_unknowns", {"short": short})
    elif short < 0:
        yield Cause("too_many_unknowns", {"over": -short})
    elif (freedoms or stresses) and not found:
        yield Cause("bad_arrangement", {})


def _candidates(structure: Structure):
    """Single bodies and the whole, with the lines of their unknown forces."""
    for names in [[b.name] for b in structure.bodies if b.rank == PLANE.sums] + [[b.name for b in structure.bodies]]:
        body = isolate(structure, names)
        if body.kind == "pin":
            continue
        yield body, [a for a in body.actions if a.unknown]


def _of_bodies(structure: Structure) -> Iterator[Cause]:
    seen = set()
    for body, acting in _candidates(structure):
        forces = [a for a in acting if a.kind == "force"]
        if body.name in seen or len(forces) < 3 or len(forces) != len(acting):
            continue
        seen.add(body.name)
        first = forces[0]
        if all(parallel(first.direction.vector, a.direction.vector) for a in forces):
            yield Cause("lines_parallel", {"body": body.name, "actions": tuple(a.id for a in forces)})
            continue
        second = next(a for a in forces if not parallel(first.direction.vector, a.direction.vector))
        point = cross(unit_wrench(first), unit_wrench(second))
        centre = (-point[1] / point[2], point[0] / point[2])
        if all(_distance(a, centre) == 0 for a in forces):
            name = next((n for n, at in structure.problem.coordinates.items() if at == centre), "")
            yield Cause("lines_concurrent", {"body": body.name, "actions": tuple(a.id for a in forces), "point": name,
                                             "at": centre})


def _distance(action, centre):
    d = action.direction.vector
    r = difference(centre, action.at)
    return r[0] * d[1] - r[1] * d[0]


def _pins_in_line(structure: Structure) -> Iterator[Cause]:
    """Two parts pinned to each other and each to a third thing, with the three pins in line."""
    at = structure.problem.coordinates
    pins: dict[frozenset, str] = {}
    for a in structure.actions:
        if a.kind == "force" and a.unknown and a.unknown.split("_")[-1].startswith("x") and a.sense == "assumed":
            pins[frozenset((a.on, a.by))] = a.point
    pairs = list(pins.items())
    for i, (one, p) in enumerate(pairs):
        for two, q in pairs[i + 1:]:
            shared = one & two
            closing = (one | two) - shared
            if len(shared) == 1 and closing in pins and pairs.index((closing, pins[closing])) > i:
                r = pins[closing]
                if len({p, q, r}) == 3 and parallel(difference(at[p], at[q]), difference(at[p], at[r])):
                    yield Cause("pins_in_line", {"points": tuple(sorted((p, q, r)))})


def _near_misses(structure: Structure) -> Iterator[Cause]:
    """Three lines of a body that miss one point by less than half a percent of the figure: probably rounded data."""
    rows = [[approx(c) for c in row] for row in zip(*structure.problem.coordinates.values())]
    size = max((max(row) - min(row) for row in rows), default=0.0)
    for body, acting in _candidates(structure):
        forces = [a for a in acting if a.kind == "force"]
        if len(forces) != 3 or not size or len(forces) != len(acting):
            continue
        a, b, c = forces
        w = cross(unit_wrench(a), unit_wrench(b))
        if w[2] == 0:
            continue
        centre = (-w[1] / w[2], w[0] / w[2])
        miss = abs(approx(_distance(c, centre))) / approx(length(c.direction.vector))
        if 0 < miss < NEARLY_CONCURRENT * size:
            yield Cause("nearly_concurrent", {"body": body.name, "actions": (a.id, b.id, c.id), "miss": miss})
