"""From the values of the unknowns to what was asked: components with their true senses, resultants with their angle."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from unpin.base.units import FORCE
from unpin.exact.lettered import is_lettered
from unpin.exact.number import Number, approx, length, sign
from unpin.model.action import Action, Structure, Symbol
from unpin.model.answer import Answer, Component
from unpin.model.directions import axis_of
from unpin.model.problem import GROUND, Asked
from unpin.model.space import ZERO
from unpin.statics.goals import actions_behind, goals
from unpin.statics.names import renamed
from unpin.statics.wrenches import action_force


def answers(*known: tuple[Structure, Mapping[str, Number]]) -> tuple[Answer, ...]:
    """One answer for each asked thing, in the order asked; "everything" gives one for each unknown.

    `known`: structures of one problem with values of their unknowns; each thing is answered from the first in which all that
    is behind it has a value (a sum may be fixed where its parts, seen by inspection, are not).
    """
    return tuple(renamed(_answer(asked, known), known[0][0]) for asked in known[0][0].problem.asked)


def _answer(asked: Asked, known) -> Answer:
    for structure, values in known:
        if all(g in values for g in goals(structure, asked)):
            acting = actions_behind(structure, asked)
            if asked.kind == "everything":
                return Answer(asked, tuple(_single(a, values[a.unknown]) for a in acting) + _carried(structure, values))
            if asked.kind == "ratio":
                return _ratio(asked, structure, values)
            return Answer(asked, _components(asked, acting, values))
    return Answer(asked, (), found=False)


def _ratio(asked: Asked, structure: Structure, values) -> Answer:
    """One number over another; not found where that is zero."""
    first, second = (operand(part, structure, values) for part in asked.over)
    if sign(second.value) == 0:
        return Answer(asked, (), found=False)
    dimension = first.dimension / second.dimension
    names = (c.symbol.base + (f"_{c.symbol.sub}" if c.symbol.sub else "") for c in (first, second))
    return Answer(asked, (Component(Symbol("/".join(names)), first.value / second.value, dimension, "number"),))


def operand(asked: Asked, structure: Structure, values) -> Component:
    """What is asked as one number with its sign: of a force by components the size."""
    if asked.kind == "letter":
        given = next(x.value for x in structure.problem.letters if x.name == asked.subject)
        return Component(Symbol(asked.subject), given.value, given.dimension, "number")
    parts = _components(asked, actions_behind(structure, asked), values)
    return next((c for c in parts if not c.symbol.sub), parts[0])


def _carried(structure: Structure, values) -> tuple[Component, ...]:
    """Reactions that a link or two-force member brings straight into the ground: no unknown of their own, but asked."""
    points = dict.fromkeys(a.point for a in structure.actions if a.on == GROUND and a.sense == "tension")
    out: list[Component] = []
    for point in points:
        asked = Asked("reaction", subject=point, point=point)
        out += _components(asked, actions_behind(structure, asked), values)
    return tuple(out)


def _as_drawn(acting: list[Action], value: Number) -> Component:
    """An unknown load: its true sense; one letter that pulls several ways is `drawn` (as its arrows are) or `against` them."""
    action = acting[0]
    code = sense_of(action, value * action.multiple)
    if not drawn_alike(acting) and code != "zero":
        code = "drawn" if sign(value) > 0 else "against"
    angle = _slope(action, value * action.multiple) if code == "along" else None
    return Component(action.symbol, value, action.dimension, code, action.unknown, angle, _lean(action, code))


def drawn_alike(acting: Sequence[Action]) -> bool:
    """Whether all arrows of an unknown load act the same way."""
    return len({(sense_of(a, a.multiple), _slope(a, a.multiple) if a.kind == "force" else 0) for a in acting}) <= 1


def _single(action: Action, value: Number) -> Component:
    code = sense_of(action, value)
    return Component(action.symbol, value, action.dimension, code, action.unknown, _slope(action, value) if code == "along" else None, _lean(action, code))


def lean_of(vector) -> Number | None:
    """Up over across of a sloped direction in which letters are; None for any other."""
    return abs(vector[1] / vector[0]) if vector[0] != 0 and is_lettered(vector[1] / vector[0]) else None


def _lean(action: Action, code: str) -> Number | None:
    return lean_of(action.direction.vector) if code == "along" else None


def _slope(action: Action, value: Number) -> float:
    """Degrees anticlockwise from +x of the way a force really acts."""
    way = sign(value)
    return math.degrees(math.atan2(approx(action.direction.vector[1]) * way, approx(action.direction.vector[0]) * way))


def sense_of(action: Action, value: Number) -> str:
    """True sense on the body the action is on, as a code."""
    way = sign(value)
    if way == 0:
        return "zero"
    if action.kind == "couple":
        return "anticlockwise" if way * action.turn > 0 else "clockwise"
    if action.sense == "tension":
        return "tension" if way > 0 else "compression"
    return direction_code(tuple(c * way for c in action.direction.vector))


def direction_code(vector) -> str:
    """right, left, up, down, or `along` for a sloped one."""
    x, y = sign(vector[0]), sign(vector[1])
    if y == 0:
        return "right" if x > 0 else ("left" if x < 0 else "zero")
    if x == 0:
        return "up" if y > 0 else "down"
    return "along"


def _components(asked: Asked, acting: list[Action], values) -> tuple[Component, ...]:
    couples = [a for a in acting if a.kind == "couple"]
    forces = [a for a in acting if a.kind == "force"]
    out: list[Component] = []
    if asked.kind == "load":
        return (_as_drawn(acting, values[acting[0].unknown]),)
    if asked.kind == "link" and len(forces) == 1:
        return (_single(forces[0], values[forces[0].unknown]),)
    name = asked.point or asked.subject
    on = asked.part if asked.kind == "pin" else ""
    total = _resultant(asked, forces, values)
    if asked.component in ("x", "y"):
        return (_axis(Symbol(name, asked.component, on), total, asked.component, forces),)
    if asked.component != "couple" and forces:
        alone = forces[0] if len(forces) == 1 and forces[0].unknown and asked.component != "magnitude" else None
        if alone and alone.sense != "tension":
            out.append(_single_force(alone, values[alone.unknown], Symbol(name, "", on)))
        elif alone and axis_of(alone.direction.vector):
            out += _named(asked, alone, values)
            out.append(_axis(Symbol(name, axis_of(alone.direction.vector), on), total, axis_of(alone.direction.vector), forces))
        else:
            out += _named(asked, alone, values) if alone else []
            if asked.component != "magnitude":
                out += [_axis(Symbol(name, axis, on), total, axis, forces) for axis in ("x", "y")]
            out.append(_size(Symbol(name, "", on), total))
    out += [_single(a, action_force(a, values)) for a in couples]
    if not out and asked.kind == "reaction":
        # Nothing acts there: a contact that opened.
        out.append(Component(Symbol(name), ZERO, FORCE, "zero"))
    return tuple(out)


def _named(asked: Asked, action: Action, values) -> list[Component]:
    """The force along a two-force member under its own name, where it is what a pin does to a part."""
    return [_single(action, values[action.unknown])] if asked.kind == "pin" else []


def _single_force(action: Action, value: Number, fallback: Symbol) -> Component:
    code = sense_of(action, value)
    if action.sense == "tension" or code not in ("along",):
        return Component(action.symbol, value, FORCE, code, action.unknown)
    return Component(action.symbol or fallback, value, FORCE, "along", action.unknown, _slope(action, value), _lean(action, "along"))


def _resultant(asked: Asked, forces: list[Action], values):
    """Sum of the forces on the body asked about, N along x and y (times the true sign)."""
    x, y = ZERO, ZERO
    for a in forces:
        share = action_force(a, values) / a.direction.length
        if a.on == GROUND or (asked.kind == "pin" and a.on != asked.part):
            # Only the partner stands here: what a link does to the ground, what a two-force member does to its pin.
            share = -share
        x, y = x + share * a.direction.vector[0], y + share * a.direction.vector[1]
    return x, y


def _axis(symbol: Symbol, total, axis: str, forces: list[Action]) -> Component:
    value = total[0 if axis == "x" else 1]
    # The assumed sense may be the negative axis (second part of a pair): the arrow keeps its sense, the number its sign.
    along = [a for a in forces if a.direction.vector[0 if axis == "x" else 1] != 0]
    alone = len(along) == 1 and along[0].unknown and along[0].symbol.base == symbol.base and along[0].symbol.sub == axis
    unknown = along[0].unknown if alone else ""
    sense = direction_code((value, ZERO) if axis == "x" else (ZERO, value))
    return Component(symbol, value, FORCE, sense, unknown)


def _size(symbol: Symbol, total) -> Component:
    size = length(total)
    if size == 0:
        return Component(symbol, ZERO, FORCE, "zero")
    angle = math.degrees(math.atan2(approx(total[1]), approx(total[0])))
    code = direction_code(total)
    return Component(symbol, size, FORCE, "along" if code == "along" else code, "", angle, lean_of(total) if code == "along" else None)
