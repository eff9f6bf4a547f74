"""The structure taken apart: every body by itself with every force on it, both halves of each pair."""

from __future__ import annotations

from collections.abc import Mapping

from unpin.draw.bodies import isolated_bodies, span_of
from unpin.draw.figures.common import action_fact, action_item, load_actions, part_names, point_names, spread_item
from unpin.draw.items import Fact, Figure, Item, JointItem, Piece
from unpin.draw.lettering import Lettering
from unpin.draw.pairs import pair_marks
from unpin.exact.number import Number, sign
from unpin.model.action import Action, Body, FreeBody, Structure

WIDTH = 480.0


def apart_figure(structure: Structure, lettering: Lettering, values: Mapping[str, Number] | None = None) -> Figure:
    """One piece a body, at the scale of the whole. With `values` (unknown id to SI value) every arrow has its true sense and
    zero forces are left out; the lettering then gives sizes, by action id or from the value."""
    problem, marks = structure.problem, pair_marks(structure)
    pieces, facts = [], []
    for body in structure.bodies:
        actions = tuple(a for a in structure.actions_on(body.name) if not is_zero(a, values))
        items: list[Item] = list(isolated_bodies(alone(body, actions), structure))
        for name, load, _ in load_actions(problem, actions):
            if load.kind == "spread":
                items.append(spread_item(load, name, lettering, ghost=True))
        items += [true_item(a, lettering, problem, marks, values) for a in actions]
        shown = [i.owner for i in items if isinstance(i, JointItem)]
        items += point_names(shown, problem, lettering)
        items += part_names([p.name for p in problem.parts if p.name == body.name], problem, lettering)
        pieces.append(Piece(body.name, tuple(items)))
        facts += [Fact("body", {"body": body}), *(action_fact(a, a.kind) for a in actions)]
    return Figure("apart", tuple(pieces), span_of(problem), WIDTH, tuple(facts), lettering.title, lettering.description)


def alone(body: Body, actions: tuple[Action, ...]) -> FreeBody:
    return FreeBody(body.name, body.kind, (body.name,), actions)


def is_zero(action: Action, values: Mapping[str, Number] | None) -> bool:
    return bool(values) and bool(action.unknown) and action.unknown in values and values[action.unknown] == 0


def true_item(action: Action, lettering: Lettering, problem, marks: dict[str, int], values: Mapping[str, Number] | None):
    """The action in its assumed sense, or, where its value is known, in its true one with its size."""
    if values and action.unknown in values:
        value = values[action.unknown]
        return action_item(action, lettering.size(action, value), lettering, problem, marks, flip=sign(value) < 0)
    against = values is not None and not action.unknown and action.load is None and sign(action.value.value) < 0
    return action_item(action, lettering.action(action), lettering, problem, marks, flip=against)
