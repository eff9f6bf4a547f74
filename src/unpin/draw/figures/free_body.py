"""One isolated body: free of its supports, every action on it once, and only the dimensions its sums need."""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence

from unpin.base.units import LENGTH
from unpin.draw.bodies import isolated_bodies, span_of
from unpin.draw.cords import radius_items, uncut
from unpin.draw.figures.arms import on_rims, perpendicular
from unpin.draw.figures.common import action_fact, action_item, lettered_once, load_actions, part_fact, part_names, point_names, spread_item
from unpin.draw.geometry import unit
from unpin.draw.items import AxisItem, CentreItem, DimensionItem, Fact, Figure, Item, JointItem, Piece, flat
from unpin.draw.label import Label
from unpin.draw.lettering import Lettering
from unpin.draw.pairs import pair_marks
from unpin.exact.number import Number
from unpin.model.action import Action, FreeBody, Structure
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
    levers: Mapping[str, Number] | None = None,
    also: Sequence[tuple[str | Vector, Label]] = (),
) -> Figure:
    """The body at the scale and attitude of the whole. `centre`: name or coordinates of the moment centre, marked, with the
    arms from it; `axis`: direction of a force sum, shown beside the body unless it is level or upright (then no dimensions).
    Without either the positions of all actions are dimensioned. `levers`: ids of forces whose moment the sum takes by the one
    perpendicular distance, with that distance (m). `also`: centres that are only marked, each with the letter of one that has no name."""
    problem, marks = structure.problem, pair_marks(structure)
    items: list[Item] = list(isolated_bodies(body, structure))
    for name, load, _ in load_actions(problem, body.actions):
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
        letter = lettering.point(centre) if outside else _own_letter(centre, lettering)
        items.append(CentreItem(centre if isinstance(centre, str) else "centre", flat(where), letter))
    for n, (other, letter) in enumerate(also, 1):
        at = problem.coordinates[other] if isinstance(other, str) else other
        named = lettering.point(other) if isinstance(other, str) and other not in shown else letter
        items.append(CentreItem(other if isinstance(other, str) else f"centre {n}", flat(at), named))
    if axis is not None and axis.form != "axis":
        items.append(AxisItem("axis", unit(flat(axis.vector)), lettering.labels.get("axis", ())))
    if dimensions and not (axis is not None and where is None):
        rims = on_rims(body, structure, where)
        square = {k: v for k, v in (levers or {}).items() if not _is_hub(rims.get(k), structure, centre)} if where is not None else {}
        items += arm_dimensions(body, problem, lettering, where, {*rims, *square})
        items += perpendicular(body, where, square, lettering) if where is not None else []
        items += radius_items(problem, lettering, {rim for k, rim in rims.items() if k not in square})
    return Figure(
        "free_body",
        (Piece(body.name, tuple(lettered_once(items))),),
        span_of(problem),
        WIDTH,
        _facts(body, structure, shown, [*([centre] if centre is not None else []), *(other for other, _ in also)]),
        lettering.title,
        lettering.description,
    )


def _is_hub(rim: tuple[str, float] | None, structure: Structure, centre: str | Vector | None) -> bool:
    """Is the moment centre that of the disc?"""
    if rim is None:
        return False
    hub = structure.problem.part(rim[0]).points[0]
    return centre in (hub, structure.problem.coordinates[hub])


def _own_letter(centre: str | Vector, lettering: Lettering) -> Label:
    """The letter of a centre that is no point of the problem."""
    return () if isinstance(centre, str) else lettering.labels.get("centre", ())


def arm_dimensions(body: FreeBody, problem: Problem, lettering: Lettering, centre: Vector | None, without=()) -> list[DimensionItem]:
    """Distances between the lines of action: along x where a force has a part along y, along y where it has one along x."""
    items: list[DimensionItem] = []
    for axis, letter in ((0, "x"), (1, "y")):
        values: dict = {centre[axis]: centre} if centre is not None else {}
        for a in body.actions:
            if a.kind == "force" and a.id not in without and a.direction.vector[1 - axis] != 0 and not _through(a, centre):
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


def _through(action: Action, centre: Vector | None) -> bool:
    """Does the force pass through the moment centre, so that it has no arm?"""
    if centre is None:
        return False
    r, d = difference(action.at, centre), action.direction.vector
    return r[0] * d[1] - r[1] * d[0] == 0


def _dimension(letter, axis, start: Vector, end: Vector, a, b, lettering: Lettering, level: int) -> list[DimensionItem]:
    size = a - b if float(a) > float(b) else b - a
    text: Label = lettering.text(Quantity(size, LENGTH))
    owner = f"{letter}:{float(start[axis]):.6g}-{float(end[axis]):.6g}"
    return [DimensionItem(owner, letter, flat(start), flat(end), text, level)] if text else []


def _facts(body: FreeBody, structure: Structure, points, centres) -> tuple[Fact, ...]:
    problem = structure.problem
    facts = [Fact("body", {"body": body})]
    facts += [Fact("point", {"name": n, "at": problem.coordinates[n]}) for n in points]
    facts += [part_fact(p) for p in problem.parts if p.name in body.parts]
    facts += [
        Fact("strand", {"cord": c, "ends": (s.start, s.end)}) for c in problem.cords for s in uncut(structure, c, set(body.parts))
    ]
    facts += [action_fact(a, a.kind) for a in body.actions]
    facts += [Fact("centre", {"centre": centre}) for centre in centres]
    return tuple(facts)
