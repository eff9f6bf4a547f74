"""The result on the whole structure: reactions in their true senses with their sizes, and the forces in links."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from unpin.draw.bodies import span_of, spots_of, used_points, whole_bodies
from unpin.draw.cords import cord_names
from unpin.draw.figures.apart import is_zero, true_item
from unpin.draw.figures.common import action_fact, lettered_once, load_actions, point_names, spread_item
from unpin.draw.geometry import between
from unpin.draw.items import BodyItem, Fact, Figure, Item, NameItem, Piece
from unpin.draw.lettering import Lettering
from unpin.exact.number import Number, sign
from unpin.model.action import Action, Structure
from unpin.model.problem import GROUND

WIDTH = 495.0
CROWDED, CROWDED_SIZE = 12, 7.2
"""From so many links on their forces are lettered smaller."""


def final_figure(structure: Structure, lettering: Lettering, values: Mapping[str, Number]) -> Figure:
    """The whole structure free of its supports. A force in a link is lettered along it where `lettering.labels` has its
    unknown's id; a reaction gets its action's label or its size."""
    problem = structure.problem
    pressed = {u.source for u in structure.unknowns if u.axial and sign(values.get(u.id, 0)) < 0}
    items: list[Item] = [
        replace(i, look="strut") if isinstance(i, BodyItem) and i.look == "link" and i.owner in pressed else i
        for i in whole_bodies(structure)
    ]
    grounded = {a.pair for a in structure.actions if a.on == GROUND}
    outside = [
        _of_the_ground(a, structure) if a.sense == "tension" and a.pair else a
        for a in structure.actions
        if a.on != GROUND and (not a.pair or a.id in grounded) and not is_zero(a, values)
    ]
    for name, load, _ in load_actions(problem, outside):
        if load.kind == "spread":
            items.append(spread_item(load, name, lettering))
    kept = [a for a in outside if not (a.load is not None and a.load.kind == "spread")]
    items += [true_item(a, lettering, problem, {}, values) for a in kept]
    at = spots_of(problem)
    facts = [Fact("point", {"name": n, "at": problem.coordinates[n]}) for n in used_points(problem)]
    facts += [action_fact(a, a.kind) for a in outside]
    letters = CROWDED_SIZE if sum(u.axial for u in structure.unknowns) > CROWDED else 0.0
    for u in structure.unknowns:
        if u.drives == "cord":
            facts.append(Fact("tension", {"unknown": u, "value": values.get(u.id)}))
        elif u.axial and lettering.labels.get(u.id):
            ends = [structure.action(a).point for a in u.actions]
            bent = next((part for part in problem.parts if part.name == u.source), None)
            line = tuple(at[n] for n in (bent.points if bent else ends))
            items.append(NameItem(u.id, between(at[ends[0]], at[ends[1]], 0.5), lettering.labels[u.id], "part", line, u.source, letters))
            facts.append(Fact("axial", {"unknown": u, "points": tuple(ends), "value": values.get(u.id)}))
    items += cord_names(structure, lettering, "part")
    items += point_names(used_points(problem), problem, lettering)
    return Figure(
        "final",
        (Piece("whole", tuple(lettered_once(items))),),
        span_of(problem),
        WIDTH,
        tuple(facts),
        lettering.title,
        lettering.description,
    )


def _of_the_ground(action: Action, structure: Structure) -> Action:
    """A link to the ground is part of the whole here: the ground acts at its far end, away from the link for tension."""
    far = structure.action(action.pair)
    return replace(far, on=action.on, by=GROUND, direction=far.direction.reversed(), pair="")
