"""Writing a sum: the terms of one functional on one free body, each with its factors; the coefficient is their product.

Rules for a moment, in this order: a force through the centre has no term; a force along an axis, or square to the line
from the centre, is written force times arm, and so is one whose slope is no short triangle and no given angle (its
perpendicular distance is then the one thing to find); any other force by its two components, each with its own arm.
"""

from __future__ import annotations

from unpin.exact.number import Number, length, sign
from unpin.exact.ratio import atom_of
from unpin.model.action import Action, FreeBody
from unpin.model.directions import axis_of, from_slope, level_angle, small_legs, steepness
from unpin.model.equation import Equation, Factor, Functional, Term
from unpin.model.space import ONE, Wrench, about, along, difference
from unpin.model.values import Direction, Vector
from unpin.statics.loads import Resultant, resultant_of


def sum_along(body: FreeBody, direction: Direction) -> Equation:
    """Forces on the body along a direction, whose sense is positive."""
    return write(body, Functional("along", direction=direction))


def sum_about(body: FreeBody, point: str, at: Vector) -> Equation:
    """Moments of everything on the body about a point, anticlockwise positive."""
    return write(body, Functional("about", point=point, at=at))


def write(body: FreeBody, functional: Functional) -> Equation:
    """The equation with its terms in the order of the body's actions."""
    terms: list[Term] = []
    for action in body.actions:
        terms += _force_terms(action, functional.direction) if functional.kind == "along" else _moment_terms(action, functional)
    return Equation(body, functional, tuple(terms))


def row_of(functional: Functional) -> Wrench:
    """The functional as a row on wrenches (along a direction: times its length)."""
    return about(functional.at) if functional.kind == "about" else along(functional.direction.vector)


def _force_terms(action: Action, wanted: Direction) -> list[Term]:
    if action.kind == "couple":
        return []
    axis = axis_of(wanted.vector)
    if axis:
        part = _component(action.direction, axis)
        if part is None:
            return []
        towards = sign(wanted.vector[0] + wanted.vector[1])
        return [_term(action, part[0] * towards, part[1])]
    return _slanted(action, wanted)


def _slanted(action: Action, wanted: Direction) -> list[Term]:
    """Along an axis that is not x or y: the cosine of the angle between, exact."""
    d, u = action.direction, wanted
    dot = d.vector[0] * u.vector[0] + d.vector[1] * u.vector[1]
    if dot == 0:
        return []
    cosine = dot / (d.length * u.length)
    size = cosine if sign(cosine) > 0 else -cosine
    factors = () if size == 1 else (Factor("number", size, axis="between"),)
    return [_term(action, sign(cosine), factors)]


def _moment_terms(action: Action, functional: Functional) -> list[Term]:
    if action.kind == "couple":
        return [_term(action, action.turn, ())]
    r = difference(action.at, functional.at)
    d = action.direction
    ends = (functional.point, action.point)
    if r[0] * d.vector[1] - r[1] * d.vector[0] == 0:
        return []
    axis = axis_of(d.vector)
    if not axis and r[0] * d.vector[0] + r[1] * d.vector[1] == 0:
        turning = sign(r[0] * d.vector[1] - r[1] * d.vector[0])
        return [_term(action, turning, (Factor("arm", length(r), axis="square", points=ends),))]
    if not axis and _awkward(d):
        # No slope triangle worth drawing: the perpendicular distance of its line is the one number to find.
        moment = (r[0] * d.vector[1] - r[1] * d.vector[0]) / d.length
        return [_term(action, sign(moment), (Factor("arm", abs(moment), axis="square", points=(functional.point, "")),))]
    out = []
    # x-component turns with the height of the point, y-component with its distance across.
    for name, arm, turning in (("x", r[1], -1), ("y", r[0], 1)):
        part = _component(d, name)
        if part is None or arm == 0:
            continue
        size = arm if sign(arm) > 0 else -arm
        lever = Factor("arm", size, axis="y" if name == "x" else "x", points=ends)
        out.append(_term(action, part[0] * turning * sign(arm), (*part[1], lever)))
    return out


LONGEST_LEG = 99
"""A slope triangle with a longer leg in whole numbers is not drawn, but its angle or distance found."""


def _awkward(direction: Direction) -> bool:
    """Whether a sloped direction has neither a given angle nor a slope triangle of small whole numbers."""
    if direction.form == "angle" and direction.angle is not None and axis_of(direction.base):
        return False
    if level_angle(direction) is not None:
        return False
    if atom_of(direction.vector[0] / direction.length) or atom_of(direction.vector[1] / direction.length):
        return False
    legs = small_legs(direction.legs or direction.vector)
    return legs is None or max(abs(legs[0]), abs(legs[1])) > LONGEST_LEG


def _component(direction: Direction, axis: str) -> tuple[int, tuple[Factor, ...]] | None:
    """(sign, factors) of a unit force along x or y; None when it has no such component."""
    index = 0 if axis == "x" else 1
    c = direction.vector[index]
    if c == 0:
        return None
    way = sign(c)
    if axis_of(direction.vector):
        return way, ()
    share = c * way / direction.length
    if direction.form == "angle" and direction.angle is not None and axis_of(direction.base):
        along_base = direction.base[index] != 0
        return way, (Factor("cos" if along_base else "sin", share, angle=direction.angle),)
    level = level_angle(direction)
    if level is not None:
        return way, (Factor("cos" if axis == "x" else "sin", share, angle=level),)
    atom = atom_of(share)
    if atom:
        return way, (Factor(atom[0], share, angle=atom[1]),)
    legs = small_legs(direction.legs or direction.vector)
    if legs:
        own = abs(legs[index])
        return way, (Factor("leg", share, legs=(own, length(legs))),)
    if from_slope(direction):
        return way, (Factor("cos" if axis == "x" else "sin", share, angle=steepness(direction)),)
    return way, (Factor("number", share, axis=axis),)


def _area(of: Resultant) -> tuple[Factor, ...]:
    """How an area is worked out from an intensity of 1: the share of it, and the run."""
    share = abs(of.peak) / (1 if of.shape == "rectangle" else 2)
    run = Factor("run", of.run)
    return (run,) if share == 1 else (Factor("number", share, axis="multiple"), run)


def _term(action: Action, sense: int, factors: tuple[Factor, ...]) -> Term:
    sense *= sign(action.multiple)
    if action.unknown and action.stretch >= 0:
        factors = (*_area(resultant_of(action)), *factors)
    elif abs(action.multiple) != 1:
        # Turned round once is a minus alone: nobody writes 1 M.
        factors = (Factor("number", abs(action.multiple), axis="multiple"), *factors)
    coefficient: Number = ONE * sense
    for f in factors:
        coefficient = coefficient * f.value
    return Term(action, sense, factors, coefficient)


