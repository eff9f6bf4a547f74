"""One isolated body: free of its supports, every action on it once, and only the dimensions its sums need."""

from __future__ import annotations

import itertools
from math import hypot

from unpin.base.units import LENGTH
from unpin.draw.bodies import isolated_bodies, span_of
from unpin.draw.cords import radius_items
from unpin.draw.figures.common import action_fact, action_item, lettered_once, load_actions, part_fact, part_names, point_names, spread_item
from unpin.draw.geometry import unit
from unpin.draw.items import AxisItem, CentreItem, DimensionItem, Fact, Figure, Item, JointItem, Piece, flat
from unpin.draw.label import Label
from unpin.draw.lettering import Lettering
from unpin.draw.pairs import pair_marks
from unpin.model.action import FreeBody, Structure
from unpin.model.problem import Problem
from unpin.model.space import difference
from unpin.model.values import Direction, Quantity, Vector

WIDTH = 260.0
PARALLEL = 3
"""Up to so many arms on one side each get a dimension from the centre; more become a chain."""


def free_body_figure(
    body: FreeBody,
    structure: Structure,
    lettering: Lettering,
    centre: str | Vector | None = None,
    axis: Direction | None = None,
    dimensions: bool = True,
) -> Figure:
    """The body at the scale and attitude of the whole. `centre`: name or coordinates of the moment centre, marked, with the
    arms from it; `axis`: direction of a force sum, shown beside the body unless it is level or upright (then no dimensions).
    Without either the positions of all actions are dimensioned."""
    problem, marks = structure.problem, pair_marks(structure)
    items: list[Item] = list(isolated_bodies(body, structure))
    for name, load, actions in load_actions(problem, body.actions):
        if load.kind == "spread":
            items.append(spread_item(load, name, lettering, ghost=True))
    for a in body.actions:
        items.append(action_item(a, lettering.action(a), lettering, problem, marks))
    shown = [i.owner for i in items if isinstance(i, JointItem)]
    items += point_names(shown, problem, lettering)
    items += part_names([p.name for p in problem.parts if p.name in body.parts], problem, lettering)
    where = problem.coordinates[centre] if isinstance(centre, str) else centre
    if where is not None:
        outside = isinstance(centre, str) and centre not in shown
        items.append(
            CentreItem(centre if isinstance(centre, str) else "centre", flat(where), lettering.point(centre) if outside else ())
        )
    if axis is not None and axis.form != "axis":
        items.append(AxisItem("axis", unit(flat(axis.vector)), lettering.labels.get("axis", ())))
    if dimensions and not (axis is not None and where is None):
        turned = turned_about(body, structure, where)
        items += arm_dimensions(body, problem, lettering, where, turned)
        items += radius_items(problem, lettering, {radius for radius in turned.values() if radius})
    return Figure(
        "free_body",
        (Piece(body.name, tuple(lettered_once(items))),),
        span_of(problem),
        WIDTH,
        _facts(body, problem, shown, centre),
        lettering.title,
        lettering.description,
    )


def turned_about(body: FreeBody, structure: Structure, centre: Vector | None) -> dict[str, tuple[str, float] | None]:
    """Ids of pulls at the rims of discs that need no dimension along x or y: those about the very centre of their disc (with disc
    and radius, which is their arm), and strands that slope, whose tangent points nobody measures."""
    found: dict[str, tuple[str, float] | None] = {}
    discs = {p.name: p for p in structure.problem.parts if p.kind == "disc"}
    for a in body.actions:
        if a.source and not a.load and a.on in discs and any(c.name == a.source for c in structure.problem.cords):
            hub = structure.problem.coordinates[discs[a.on].points[0]]
            r = flat(difference(a.at, hub))
            size = min((float(r0) for r0 in discs[a.on].radii), key=lambda r0: abs(r0 - hypot(*r)))
            if centre is not None and flat(centre) == flat(hub) or 0 not in a.direction.vector:
                found[a.id] = (a.on, size)
    return found


def arm_dimensions(body: FreeBody, problem: Problem, lettering: Lettering, centre: Vector | None, without=()) -> list[DimensionItem]:
    """Distances between the lines of action: along x where a force has a part along y, along y where it has one along x."""
    items: list[DimensionItem] = []
    for axis, letter in ((0, "x"), (1, "y")):
        values: dict = {centre[axis]: centre} if centre is not None else {}
        for a in body.actions:
            if a.kind == "force" and a.id not in without and a.direction.vector[1 - axis] != 0:
                values.setdefault(a.at[axis], a.at)
        ordered = sorted(values.items(), key=lambda v: float(v[0]))
        arms = [(v, p) for v, p in ordered if centre is None or v != centre[axis]]
        left = [] if centre is None else [arm for arm in arms if float(arm[0]) < float(centre[axis])]
        right = arms[len(left) :]
        if centre is not None and len(left) <= PARALLEL and len(right) <= PARALLEL:
            for side in (left[::-1], right):
                for level, (value, point) in enumerate(side):
                    items += _dimension(letter, axis, centre, point, value, centre[axis], lettering, level)
        else:
            for (low, p), (high, q) in itertools.pairwise(ordered):
                items += _dimension(letter, axis, p, q, high, low, lettering, 0)
    return items


def _dimension(letter, axis, start: Vector, end: Vector, a, b, lettering: Lettering, level: int) -> list[DimensionItem]:
    size = a - b if float(a) > float(b) else b - a
    text: Label = lettering.text(Quantity(size, LENGTH))
    owner = f"{letter}:{float(start[axis]):.6g}-{float(end[axis]):.6g}"
    return [DimensionItem(owner, letter, flat(start), flat(end), text, level)] if text else []


def _facts(body: FreeBody, problem: Problem, points, centre) -> tuple[Fact, ...]:
    facts = [Fact("body", {"body": body})]
    facts += [Fact("point", {"name": n, "at": problem.coordinates[n]}) for n in points]
    facts += [part_fact(p) for p in problem.parts if p.name in body.parts]
    facts += [action_fact(a, a.kind) for a in body.actions]
    if centre is not None:
        facts.append(Fact("centre", {"centre": centre}))
    return tuple(facts)
