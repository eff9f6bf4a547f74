"""Which bodies and joints of a structure are drawn, and the scale all its figures share."""

from __future__ import annotations

import itertools
import math

from unpin.draw.cords import cord_items, is_wound
from unpin.draw.geometry import Spot, unit
from unpin.draw.items import BlockItem, BodyItem, CordItem, DiscItem, JointItem, flat
from unpin.model.action import FreeBody, Structure
from unpin.model.kinds import KINDS
from unpin.model.problem import GROUND, Connection, Part, Problem

SMALLEST_DISC = 2.4
"""A radius is drawn this many times smaller than the least distance between points, at the least."""

Drawn = BodyItem | DiscItem | BlockItem | CordItem | JointItem


def span_of(problem: Problem) -> tuple[float, float, float]:
    """Width, height and least distance between neighbouring coordinates of the points in use, in metres."""
    spots = [flat(p.at) for p in problem.points if p.name in used_points(problem)]
    spots = spots or [(0.0, 0.0)]
    gaps = [SMALLEST_DISC * float(r) for p in problem.parts for r in p.radii]
    for axis in (0, 1):
        values = sorted({round(s[axis], 9) for s in spots})
        gaps += [b - a for a, b in itertools.pairwise(values)]
    for part in problem.parts:
        for radius in part.radii:
            x, y, r = *flat(problem.coordinates[part.points[0]]), float(radius)
            spots += [(x - r, y - r), (x + r, y + r)]
    xs, ys = [s[0] for s in spots], [s[1] for s in spots]
    return (max(xs) - min(xs), max(ys) - min(ys), min(gaps, default=0.0))


def used_points(problem: Problem) -> dict[str, None]:
    """Names of the points that parts pass, connections or loads use, in file order."""
    used = {name for part in problem.parts for chain in (part.points, *part.outline) for name in chain}
    used |= {name for c in problem.connections for name in (*c.points, *((c.centre,) if c.centre else ()))} | {load.point for load in problem.loads}
    used |= {s.point for c in problem.cords for s in c.stops if s.point and not is_wound(problem, s)}
    return {p.name: None for p in problem.points if p.name in used}


def chains_of(part: Part, at: dict[str, Spot]) -> tuple[tuple[Spot, ...], ...]:
    return tuple(tuple(at[n] for n in chain) for chain in (part.points, *part.outline))


def spots_of(problem: Problem) -> dict[str, Spot]:
    return {p.name: flat(p.at) for p in problem.points}


def hinges(problem: Problem) -> dict[str, str]:
    """Point to the look of what joins parts there: hinge, weld, or knot for a named point at which nothing turns."""
    looks: dict[str, str] = dict.fromkeys(used_points(problem), "knot")
    for c in problem.connections:
        if c.kind == "link" or c.kind in HINGED:
            looks.update(dict.fromkeys(c.points, "hinge"))
        elif c.kind == "fixed" and GROUND not in c.parts:
            looks[c.points[0]] = "weld" if looks[c.points[0]] == "knot" else looks[c.points[0]]
        elif GROUND in c.parts:
            looks[c.points[0]] = "none" if looks[c.points[0]] == "knot" else looks[c.points[0]]
    blocks = {p.points[0] for p in problem.parts if is_box(p, problem)}
    standing = {n for p in problem.parts for n in p.points}
    standing |= {s.point for c in problem.cords for s in c.stops if s.part == GROUND}
    for cord in problem.cords:
        for stop in cord.stops[:: len(cord.stops) - 1]:
            if looks.get(stop.point) == "knot" and stop.point in standing:
                looks[stop.point] = "eye"
    for part in problem.parts:
        if part.name in rings(problem) and looks.get(part.points[0]) in ("knot", "eye"):
            looks[part.points[0]] = "ring"
    return {name: "plain" if name in blocks else look for name, look in looks.items()}


def rings(problem: Problem) -> set[str]:
    """Blocks through which a cord runs: rings, or pulleys of no size."""
    return {s.part for c in problem.cords for s in c.stops if s.side and s.radius == 0}


def is_box(part: Part, problem: Problem) -> bool:
    """A block that is to be seen as one: neither a ring nor the knot of some cords, which has the name of its point."""
    return part.kind == "block" and part.name not in rings(problem) and part.name not in part.points


def body_item(part: Part, problem: Problem) -> BodyItem | DiscItem | BlockItem | None:
    """A member along its chains, a disc with its rims, a block at its point; nothing for a knot or a ring, which are joints."""
    at = spots_of(problem)
    if part.kind == "disc":
        return DiscItem(part.name, at[part.points[0]], tuple(float(r) for r in part.radii))
    if part.kind == "block" and not is_box(part, problem):
        return None
    if part.kind == "block":
        ways = [c.direction for c in problem.connections if part.name == c.parts[0] and c.direction is not None and c.kind in STANDS]
        return BlockItem(part.name, at[part.points[0]], *(unit(flat(d.vector)) for d in ways[:1]))
    if part.kind == "box":
        return BodyItem(part.name, "box", (tuple(at[n] for n in (*part.points, part.points[0])),))
    return BodyItem(part.name, "member", chains_of(part, at))


def reach_of(c: Connection, at: dict[str, Spot]) -> tuple[float, ...]:
    """How far the ends of a slot or rod are from its point, to the left and to the right of its direction."""
    if c.centre:
        return _bent_reach(c, at)
    if not c.ends:
        return ()
    (x, y), (u, v) = at[c.points[0]], unit(flat(c.direction.vector))
    along = sorted((at[e][0] - x) * v - (at[e][1] - y) * u for e in c.ends)
    return (max(-along[0], 0.0), max(along[1], 0.0))


def _bent_reach(c: Connection, at: dict[str, Spot]) -> tuple[float, float, float]:
    """The same along an arc, and how far its centre is in the direction (negative: the other way)."""
    (x, y), (u, v) = at[c.points[0]], unit(flat(c.direction.vector))
    cx, cy = at[c.centre]
    bend = (cx - x) * u + (cy - y) * v
    if not c.ends:
        return (BENT * abs(bend), BENT * abs(bend), bend)
    arcs = []
    for e in c.ends:
        # To the right of the direction, seen from the centre.
        across, back = (at[e][0] - x) * v - (at[e][1] - y) * u, bend - ((at[e][0] - x) * u + (at[e][1] - y) * v)
        arcs.append(abs(bend) * math.atan2(across, back * math.copysign(1.0, bend)))
    if arcs[0] * arcs[1] > 0:
        # Both ends on one side of the pin: the arc is the long way round, and comes to the farther end from the other side.
        far = max(range(2), key=lambda k: abs(arcs[k]))
        arcs[far] -= math.copysign(2 * math.pi * abs(bend), arcs[far])
    return (max(-min(arcs), 0.0), max(max(arcs), 0.0), bend)


BENT = 0.35
"""How far a curved slot is drawn each way where its ends are not given, in radii."""


def _slides(problem: Problem, inside: set[str]) -> dict[str, tuple[str, Spot, tuple]]:
    """Point to the look, `up` and `reach` of what slides there and is seen on these parts: a collar goes with its own member, a
    slot with the member that has it."""
    out: dict[str, tuple[str, Spot, tuple]] = {}
    for c in problem.connections:
        if not KINDS[c.kind].owned:
            continue
        slider, owner = (p in inside for p in c.parts)
        if c.kind == "slot":
            look = "slot" if slider and owner else "hole" if owner else ""
        else:
            look = c.kind if slider else ""
        if look:
            out[c.points[0]] = (look, unit(flat(c.direction.vector)), reach_of(c, spots_of(problem)) if c.kind == "slot" else ())
    return out


STANDS = ("roller", "contact", "surface", "guide", "slot", "collar", "sleeve")
"""Connections by which a block stands on a surface or in a slot."""
HINGED = ("pin", "roller", "rocker", "slot", "collar")
"""Connections at a hinge of their first part."""


def whole_bodies(structure: Structure) -> list[Drawn]:
    """Every part and link as it stands, then the joints."""
    problem, at = structure.problem, spots_of(structure.problem)
    items: list[Drawn] = []
    for c in problem.connections:
        if c.kind == "link":
            items.append(BodyItem(c.name, "link", (tuple(at[p] for p in c.points),)))
    items += [item for part in problem.parts if (item := body_item(part, problem)) is not None]
    items += cord_items(structure)
    return items + [JointItem(p, look, at[p]) for p, look in hinges(problem).items() if look != "none"]


def isolated_bodies(body: FreeBody, structure: Structure) -> list[Drawn]:
    """The parts of a free body, the links that stay inside it, and the joints on them; nothing that was cut away."""
    problem, at = structure.problem, spots_of(structure.problem)
    cut = {a.source for a in body.actions}
    kinds = {b.name: b for b in structure.bodies}
    inside = {name for name in body.parts if name in kinds and kinds[name].kind == "part"}
    pins = {kinds[name].point for name in body.parts if name in kinds and kinds[name].kind == "pin"}
    points = {n for p in problem.parts if p.name in inside for n in p.points} | pins
    items: list[Drawn] = []
    for c in problem.connections:
        if c.kind == "link" and GROUND not in c.parts and c.name not in cut and set(c.points) <= points:
            items.append(BodyItem(c.name, "link", (tuple(at[p] for p in c.points),)))
    bars = {t.member for t in structure.two_force if t.member not in cut and set(t.points) <= points}
    for part in problem.parts:
        if part.name in inside or part.name in bars:
            item = body_item(part, problem)
            items += [item] if item is not None else []
    drawn = bool(items)
    items += cord_items(structure, set(body.parts))
    shown = points | {a.point for a in body.actions if a.on in inside} if drawn else points
    looks, slides = hinges(problem), _slides(problem, inside)
    for name in used_points(problem):
        if name in shown:
            look = "disc" if name in pins and not drawn else looks.get(name, "knot")
            if name in slides:
                items.append(JointItem(name, slides[name][0], at[name], *slides[name][1:]))
            else:
                items.append(JointItem(name, look if look != "none" else "knot", at[name]))
    return items
