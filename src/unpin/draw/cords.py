"""Cords of a problem as items: strands that are not cut, arcs on rims, anchors, and the radii that are dimensioned."""

from __future__ import annotations

import math
from typing import Literal

from unpin.base.units import LENGTH
from unpin.draw.geometry import Spot, apart
from unpin.draw.items import CordItem, NameItem, RadiusItem, SupportItem, flat
from unpin.draw.lettering import Lettering
from unpin.exact.number import sign
from unpin.model.action import Action, Structure
from unpin.model.problem import GROUND, Cord, Problem, Stop
from unpin.model.strands import Strand, strands_between, turns_of
from unpin.model.values import Quantity

WOUND = 250.0
"""How far round a cord is drawn on the disc it is wound on, degrees."""
HAND = 22.0
"""How much of a free end is drawn before the arrow of the hand, pt."""


def strands_of(problem: Problem, cord: Cord) -> tuple[Strand, ...]:
    return strands_between(problem.coordinates, cord)


def of_cord(structure: Structure, action: Action) -> Cord | None:
    """The cord behind an action."""
    return next((c for c in structure.problem.cords if c.name == action.source), None)


def uncut(structure: Structure, cord: Cord, bodies: set[str] | None) -> list[Strand]:
    """Strands with two ends, all or those between some bodies."""
    on: dict[str, list[str]] = {}
    for a in structure.actions:
        if a.source == cord.name:
            on.setdefault(a.id.rpartition("@")[2], []).append(a.on)
    return [
        s
        for k, s in enumerate(strands_of(structure.problem, cord), 1)
        if s.start is not None and s.end is not None and (bodies is None or len(on.get(str(k), ())) == 2 and set(on[str(k)]) <= bodies)
    ]


def cord_items(structure: Structure, bodies: set[str] | None = None) -> list[CordItem]:
    """Cords as they run, or (with `bodies`) only the strands between those bodies and the arcs on their discs."""
    problem, items = structure.problem, []
    for cord in problem.cords:
        arcs, runs = [], strands_of(problem, cord)
        lines = [(flat(s.start), flat(s.end)) for s in uncut(structure, cord, bodies)]
        for k, stop in enumerate(cord.stops):
            if stop.side and stop.radius and (bodies is None or stop.part in bodies):
                arcs.append(_on_rim(problem, cord, k, runs[k - 1].end, runs[k].start))
            elif is_wound(problem, stop) and (bodies is None or stop.part in bodies):
                away = runs[0].direction if k == 0 else tuple(-c for c in runs[-1].direction)
                arcs.append(_wound(problem, stop, flat(away)))
        if lines or arcs:
            items.append(CordItem(cord.name, tuple(lines), tuple(arcs)))
    return items


def is_wound(problem: Problem, stop: Stop) -> bool:
    """Is this the end of a cord that is tied to the rim of a disc?"""
    return bool(stop.part) and stop.part != GROUND and not stop.side and problem.part(stop.part).kind == "disc"


def _on_rim(problem: Problem, cord: Cord, k: int, start, end) -> tuple[Spot, ...]:
    """From where the cord meets the disc to where it leaves it."""
    stop = cord.stops[k]
    centre, way = flat(problem.coordinates[stop.point]), sign(turns_of(problem.coordinates, cord)[k])
    a, b = (_angle(centre, flat(s)) for s in (start, end))
    return _arc(centre, float(stop.radius), a, way * (way * (b - a) % 360))


def _wound(problem: Problem, stop: Stop, away: Spot) -> tuple[Spot, ...]:
    """So far round as the disc hides the end; `away`: the way the strand leaves."""
    spot, centre = flat(problem.coordinates[stop.point]), flat(problem.coordinates[problem.part(stop.part).points[0]])
    r = (spot[0] - centre[0], spot[1] - centre[1])
    return _arc(centre, math.hypot(*r), _angle(centre, spot), -math.copysign(WOUND, r[0] * away[1] - r[1] * away[0]))


def _angle(centre: Spot, spot: Spot) -> float:
    return math.degrees(math.atan2(spot[1] - centre[1], spot[0] - centre[0]))


def _arc(centre: Spot, radius: float, start: float, sweep: float) -> tuple[Spot, ...]:
    count = max(2, round(abs(sweep) / 6))
    angles = (math.radians(start + sweep * n / count) for n in range(count + 1))
    return tuple((centre[0] + radius * math.cos(t), centre[1] + radius * math.sin(t)) for t in angles)


def anchors(problem: Problem) -> list[SupportItem]:
    """The ground at the ends of cords that are tied to it, one for each point."""
    items: dict[str, SupportItem] = {}
    standing = {c.points[0] for c in problem.connections if GROUND in c.parts}
    for cord in problem.cords:
        runs = strands_of(problem, cord)
        for stop, way, s in ((cord.stops[0], 1, runs[0]), (cord.stops[-1], -1, runs[-1])):
            if stop.part == GROUND and stop.direction is None and stop.point not in standing:
                x, y = flat(s.direction)
                items.setdefault(stop.point, SupportItem(stop.point, "anchor", flat(problem.coordinates[stop.point]), (way * x, way * y)))
    return list(items.values())


def hands(structure: Structure) -> list[Action]:
    """The pull at each free end, which stands on the last thing the cord comes to."""
    return [a for a in structure.actions if not a.pair and a.on != GROUND and of_cord(structure, a) is not None]


def cord_names(structure: Structure, lettering: Lettering, role: Literal["label", "part"]) -> list[NameItem]:
    """The letter of each cord, or what `lettering` has for it, beside its longest strand, unless it stands at a free end already."""
    items, problem = [], structure.problem
    pulled = {a.source for a in hands(structure)}
    for cord in problem.cords:
        runs = [(flat(s.start), flat(s.end)) for s in strands_of(problem, cord) if s.start is not None and s.end is not None]
        if runs and cord.name not in pulled and lettering.labels.get(cord.name):
            runs.sort(key=lambda r: -round(apart(*r), 9))
            items.append(NameItem(cord.name, runs[0][0], lettering.labels[cord.name], role, runs[0], cord.name))
    return items


def radius_items(problem: Problem, lettering: Lettering, only: set[tuple[str, float]] | None = None) -> list[RadiusItem]:
    """Each radius of each disc once; with `only` those (disc, radius)."""
    items = []
    for part in problem.parts:
        for radius in part.radii:
            text = lettering.text(Quantity(radius, LENGTH))
            if text and (only is None or (part.name, float(radius)) in only):
                at = flat(problem.coordinates[part.points[0]])
                items.append(RadiusItem(f"{part.name} {float(radius):.6g}", at, float(radius), text))
    return items


def tangent_ends(problem: Problem) -> set[str]:
    """Points at which only an upright or level strand ends: what it comes from says where they are, and how far off does not matter."""
    tied = {n for p in problem.parts if p.kind != "block" for n in p.points} | {n for c in problem.connections for n in c.points}
    tied |= {load.point for load in problem.loads if not load.part}
    out = set()
    for cord in problem.cords:
        runs = strands_of(problem, cord)
        for stop, other, s in ((cord.stops[0], runs[0].second, runs[0]), (cord.stops[-1], runs[-1].first, runs[-1])):
            held = other.side or other.point in tied or is_wound(problem, other)
            if stop.point and not stop.side and stop.point not in tied and held and 0 in s.direction:
                out.add(stop.point)
    return out
