"""Which bodies and joints of a structure are drawn, and the scale all its figures share."""

from __future__ import annotations

import itertools

from unpin.draw.geometry import Spot
from unpin.draw.items import BodyItem, JointItem, flat
from unpin.model.action import FreeBody, Structure
from unpin.model.problem import GROUND, Part, Problem


def span_of(problem: Problem) -> tuple[float, float, float]:
    """Width, height and least distance between neighbouring coordinates of the points in use, in metres."""
    spots = [flat(p.at) for p in problem.points if p.name in used_points(problem)]
    spots = spots or [(0.0, 0.0)]
    gaps = []
    for axis in (0, 1):
        values = sorted({round(s[axis], 9) for s in spots})
        gaps += [b - a for a, b in itertools.pairwise(values)]
    xs, ys = [s[0] for s in spots], [s[1] for s in spots]
    return (max(xs) - min(xs), max(ys) - min(ys), min(gaps, default=0.0))


def used_points(problem: Problem) -> dict[str, None]:
    """Names of the points that parts pass, connections or loads use, in file order."""
    used = {name for part in problem.parts for chain in (part.points, *part.outline) for name in chain}
    used |= {name for c in problem.connections for name in c.points} | {load.point for load in problem.loads}
    return {p.name: None for p in problem.points if p.name in used}


def chains_of(part: Part, at: dict[str, Spot]) -> tuple[tuple[Spot, ...], ...]:
    return tuple(tuple(at[n] for n in chain) for chain in (part.points, *part.outline))


def spots_of(problem: Problem) -> dict[str, Spot]:
    return {p.name: flat(p.at) for p in problem.points}


def hinges(problem: Problem) -> dict[str, str]:
    """Point to the look of what joins parts there: hinge, weld, or knot for a named point at which nothing turns."""
    looks: dict[str, str] = dict.fromkeys(used_points(problem), "knot")
    for c in problem.connections:
        if c.kind == "link" or c.kind in ("pin", "roller"):
            looks.update(dict.fromkeys(c.points, "hinge"))
        elif c.kind == "fixed" and GROUND not in c.parts:
            looks[c.points[0]] = "weld" if looks[c.points[0]] == "knot" else looks[c.points[0]]
        elif GROUND in c.parts:
            looks[c.points[0]] = "none" if looks[c.points[0]] == "knot" else looks[c.points[0]]
    return looks


def whole_bodies(structure: Structure) -> list[BodyItem | JointItem]:
    """Every part and link as it stands, then the joints."""
    problem, at = structure.problem, spots_of(structure.problem)
    items: list[BodyItem | JointItem] = []
    for c in problem.connections:
        if c.kind == "link":
            items.append(BodyItem(c.name, "link", (tuple(at[p] for p in c.points),)))
    for part in problem.parts:
        items.append(BodyItem(part.name, "member", chains_of(part, at)))
    return items + [JointItem(p, look, at[p]) for p, look in hinges(problem).items() if look != "none"]


def isolated_bodies(body: FreeBody, structure: Structure) -> list[BodyItem | JointItem]:
    """The parts of a free body, the links that stay inside it, and the joints on them; nothing that was cut away."""
    problem, at = structure.problem, spots_of(structure.problem)
    cut = {a.source for a in body.actions}
    kinds = {b.name: b for b in structure.bodies}
    inside = {name for name in body.parts if name in kinds and kinds[name].kind == "part"}
    pins = {kinds[name].point for name in body.parts if name in kinds and kinds[name].kind == "pin"}
    points = {n for p in problem.parts if p.name in inside for n in p.points} | pins
    items: list[BodyItem | JointItem] = []
    for c in problem.connections:
        if c.kind == "link" and GROUND not in c.parts and c.name not in cut and set(c.points) <= points:
            items.append(BodyItem(c.name, "link", (tuple(at[p] for p in c.points),)))
    bars = {t.member for t in structure.two_force if t.member not in cut and set(t.points) <= points}
    for part in problem.parts:
        if part.name in inside or part.name in bars:
            items.append(BodyItem(part.name, "member", chains_of(part, at)))
    drawn = [i for i in items if isinstance(i, BodyItem)]
    shown = points | {a.point for a in body.actions if a.on in inside} if drawn else pins
    looks = hinges(problem)
    for name in used_points(problem):
        if name in shown:
            look = "disc" if name in pins and not drawn else looks.get(name, "knot")
            items.append(JointItem(name, look if look != "none" else "knot", at[name]))
    return items


def body_points(body: FreeBody, structure: Structure) -> tuple[str, ...]:
    """Named points on a free body, in file order."""
    return tuple(i.owner for i in isolated_bodies(body, structure) if isinstance(i, JointItem))
