"""Items that several figures share: loads, actions, names, and the notes that show a direction as its author gave it."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace
from fractions import Fraction

from unpin.base.units import ANGLE, LENGTH, NUMBER
from unpin.draw.cords import HAND
from unpin.draw.geometry import Spot, apart, between, unit
from unpin.draw.items import CoupleItem, Fact, ForceItem, NameItem, SpreadItem, flat
from unpin.draw.label import Label
from unpin.draw.lettering import Lettering
from unpin.exact.lettered import is_lettered
from unpin.exact.number import length
from unpin.model.action import Action
from unpin.model.directions import small_legs
from unpin.model.problem import GROUND, Load, Part, Problem
from unpin.model.space import ONE, ZERO, difference
from unpin.model.values import Direction, Quantity

STUB = 9.0
"""How much of a cut strand is drawn before its arrow, pt."""
LARGEST_LEG = 99
"""A slope triangle with legs of three digits says less than an angle."""
SAME_ANGLE = 1e-9
"""Two angles that differ by less, in degrees, are one."""


def notes_of(direction: Direction | None, lettering: Lettering, problem: Problem) -> tuple[Label, ...]:
    """The angle, or the two legs (along x, along y), lettered; empty for a direction along an axis.

    A line between two points or square to one gets the legs of its smallest whole-number triangle, else its angle; see `as_drawn`.
    """
    if direction is None or direction.form == "axis" or direction.vector[0] == 0 or direction.vector[1] == 0:
        return ()
    if direction.form == "angle" and direction.angle is not None:
        return (lettering.text(Quantity(direction.angle, ANGLE)),)
    if direction.legs:
        return tuple(lettering.text(Quantity(abs(leg), NUMBER)) for leg in direction.legs)
    legs = small_legs(direction.vector)
    if legs is not None and max(abs(leg) for leg in legs) <= LARGEST_LEG:
        return tuple(lettering.text(Quantity(abs(leg), NUMBER)) for leg in legs)
    if direction.form == "line" and direction.length == 1:
        return ()  # a strand between tangent points, whose places are no lengths that were given
    dimension = LENGTH if direction.form in ("line", "square") else NUMBER
    return tuple(lettering.text(Quantity(abs(c), dimension)) for c in direction.vector)


def as_drawn(direction: Direction | None, axis: int = 0) -> Direction | None:
    """The direction as its mark shows it: a line of no short slope triangle by its acute angle from the level (`axis` 0) or the
    upright (1), exact where it is one the sums name, else to a tenth of a degree. Whatever was given by an angle, by legs or in letters stays."""
    if direction is None or direction.form not in ("line", "square") or direction.legs or any(c == 0 for c in direction.vector):
        return direction
    legs = small_legs(direction.vector)
    short = legs is not None and max(abs(leg) for leg in legs) <= LARGEST_LEG
    if short or any(map(is_lettered, direction.vector)) or (direction.form == "line" and direction.length == 1):
        return direction
    x, y = flat(direction.vector)
    degrees = math.degrees(math.atan2(*((abs(y), abs(x)) if axis == 0 else (abs(x), abs(y)))))
    near = Fraction(degrees).limit_denominator(360)
    angle = near if abs(float(near) - degrees) < SAME_ANGLE else Fraction(round(degrees * 10), 10)
    sides = (ONE if x > 0 else -ONE, ZERO), (ZERO, ONE if y > 0 else -ONE)
    return replace(direction, form="angle", angle=angle, base=sides[axis], turn=sides[1 - axis])


def along_of(direction: Direction) -> Spot:
    return unit(flat(direction.vector))


def force_item(
    action: Action, label: Label, lettering: Lettering, problem: Problem, marks: dict[str, int], flip: bool = False
) -> ForceItem:
    """One action as an arrow; `flip`: drawn against its assumed sense."""
    along = along_of(action.direction)
    prefers = {"given": "head", "push": "head", "tension": "away", "assumed": "either"}[action.sense]
    if action.load is not None:
        prefers = "tail" if action.load.kind == "weight" else "head"
    if flip:
        along = (-along[0], -along[1])
        prefers = {"tail": "head", "away": "head", "head": "tail"}.get(prefers, prefers)
    corded = any(c.name == action.source for c in problem.cords) and not flip
    if corded:
        prefers = "pull"
    direction = action.direction.reversed() if flip else action.direction
    marked = as_drawn(_between_points(action, problem) if corded else direction)
    return ForceItem(
        action.id,
        flat(action.at),
        along,
        label,
        lettering.name(action),
        "load" if action.load is not None else "action",
        prefers,
        marks.get(action.id, 0),
        marked if marked is not None else direction,
        notes_of(marked, lettering, problem),
        square_to_member(action, problem),
        0.0 if not corded else STUB if action.pair or action.on == GROUND else HAND,
    )


def _between_points(action: Action, problem: Problem) -> Direction:
    """The direction of a strand, as the line of its two points where it goes straight from one to the other."""
    ends = action.direction.points
    cord = next(c for c in problem.cords if c.name == action.source)
    if action.direction.form != "line" or any(s.side or s.radius is not None for s in cord.stops if s.point in ends):
        return action.direction
    there = difference(*(problem.coordinates[n] for n in reversed(ends)))
    return replace(action.direction, vector=there, length=length(there))


def square_to_member(action: Action, problem: Problem) -> Spot | None:
    """The way along the member at its point, where a force was given as square to that very member and its slope is no
    small whole-number one."""
    direction = action.direction
    part = next((p for p in problem.parts if p.name == action.on and action.point in p.points), None)
    if direction.form != "square" or part is None or small_legs(direction.vector) is not None:
        return None
    at, n = problem.coordinates, part.points.index(action.point)
    for other in part.points[n + 1 : n + 2] + part.points[max(0, n - 1) : n]:
        run = flat(difference(at[other], at[action.point]))
        force = flat(direction.vector)
        if abs(run[0] * force[0] + run[1] * force[1]) < 1e-9 * (abs(run[0]) + abs(run[1])) * (abs(force[0]) + abs(force[1])):
            return unit(run)
    return None


def couple_item(
    action: Action, label: Label, lettering: Lettering, spot: Spot, marks: dict[str, int], flip: bool = False
) -> CoupleItem:
    turn = action.turn
    # A load is drawn as it acts; what is given of a connection as it is assumed, like the term it has in the sums.
    if float(action.multiple) < 0 or (action.load is not None and action.value is not None and float(action.value.value) < 0):
        turn = -turn
    return CoupleItem(
        action.id,
        spot,
        -turn if flip else turn,
        label,
        lettering.name(action),
        "load" if action.load is not None else "action",
        marks.get(action.id, 0),
    )


def middle_of(problem: Problem, part: str) -> Spot:
    """The middle of the longest straight run of a part, where a couple without a point is drawn."""
    at = problem.coordinates
    spots = [flat(at[n]) for n in problem.part(part).points]
    runs = list(itertools.pairwise(spots)) or [(spots[0], spots[0])]
    a, b = max(runs, key=lambda r: round(apart(*r), 9))
    return between(a, b, 0.5)


def spot_of(action: Action, problem: Problem) -> Spot:
    return flat(action.at) if action.at else middle_of(problem, action.on)


def action_item(action: Action, label: Label, lettering: Lettering, problem: Problem, marks: dict[str, int], flip: bool = False):
    if action.kind == "couple":
        return couple_item(action, label, lettering, spot_of(action, problem), marks, flip)
    return force_item(action, label, lettering, problem, marks, flip)


def unsigned(quantity: Quantity) -> Quantity:
    """The arrow has the sense; its label has the size."""
    return quantity if float(quantity.value) >= 0 else replace(quantity, value=-quantity.value, written="")


def spread_item(load: Load, owner: str, lettering: Lettering, ghost: bool = False) -> SpreadItem:
    """A spread load; each intensity is lettered once: a uniform one in the middle, others at the ends that are not zero."""
    greatest = (
        max((abs(float(q.value)) for s in load.stretches for q in (s.start_intensity, s.end_intensity)), default=1.0) or 1.0
    )
    alike = len({q.value for s in load.stretches for q in (s.start_intensity, s.end_intensity)}) == 1
    longest = max(load.stretches, key=lambda s: round(apart(flat(s.start), flat(s.end)), 9))
    stretches = []
    for s in load.stretches:
        a, b = (float(q.value) / greatest for q in (s.start_intensity, s.end_intensity))
        first = lettering.labels.get(owner) if len(load.stretches) == 1 else None
        if a == b:
            texts = (first if first is not None else lettering.text(unsigned(s.start_intensity)), ())
        else:
            texts = (
                lettering.text(unsigned(s.start_intensity)) if a else (),
                lettering.text(unsigned(s.end_intensity)) if b else (),
            )
        if alike and s is not longest:
            texts = ((), ())
        if stretches and stretches[-1][1] == flat(s.start) and stretches[-1][3] == a and a != b:
            texts = ((), texts[1])
        stretches.append((flat(s.start), flat(s.end), a, b, *texts))
    along, per = along_of(load.direction), load.stretches[0].per
    return SpreadItem(owner, tuple(stretches), along, lettering.spoken.get(owner, owner), ghost, per)


def lettered_once(items: list) -> list:
    """Where spread loads of the same intensity follow each other, as on a beam of several parts, only the longest is lettered."""
    spreads = [i for i in items if isinstance(i, SpreadItem)]
    silent: set[int] = set()
    for group in _following(spreads):
        if len(group) > 1:
            longest = max(group, key=lambda i: round(apart(*i.stretches[0][:2]), 9))
            silent |= {id(i) for i in group if i is not longest}
    return [replace(i, stretches=tuple((*s[:4], (), ()) for s in i.stretches)) if id(i) in silent else i for i in items]


def _following(spreads: list[SpreadItem]) -> list[list[SpreadItem]]:
    """Uniform loads with one label and direction, gathered where one begins at the end of another."""
    groups: list[list[SpreadItem]] = []
    for item in spreads:
        same = [
            g for g in groups if any(_alike(item, o) and set(item.stretches[0][:2]) & set(o.stretches[0][:2]) for o in g)
        ]
        merged = [item, *(o for g in same for o in g)]
        groups = [g for g in groups if all(g is not s for s in same)] + [merged]
    return groups


def _alike(a: SpreadItem, b: SpreadItem) -> bool:
    one, two = a.stretches[0], b.stretches[0]
    uniform = len(a.stretches) == len(b.stretches) == 1 and one[2] == one[3] and two[2] == two[3]
    return uniform and bool(one[4]) and one[4:] == two[4:] and (a.along, a.ghost, a.per) == (b.along, b.ghost, b.per)


def point_names(names, problem: Problem, lettering: Lettering) -> list[NameItem]:
    at = problem.coordinates
    return [NameItem(n, flat(at[n]), lettering.point(n)) for n in names if lettering.point(n)]


def part_names(names, problem: Problem, lettering: Lettering) -> list[NameItem]:
    """Names of parts, only those the lettering has."""
    at, out = problem.coordinates, []
    for n in names:
        if lettering.labels.get(n) and n not in at:  # a knot has the name of its point
            chain = tuple(flat(at[p]) for p in problem.part(n).points)
            out.append(NameItem(n, middle_of(problem, n), lettering.labels[n], "part", chain, n))
    return out


def load_actions(problem: Problem, actions) -> list[tuple[str, Load, list[Action]]]:
    """Loads that act, as (name, load, its actions) in file order; the name is the id before the dot."""
    found: dict[str, tuple[Load, list[Action]]] = {}
    for a in actions:
        if a.load is not None:
            found.setdefault(a.id.split(".")[0], (a.load, []))[1].append(a)
    return [(name, load, acts) for name, (load, acts) in found.items()]


def part_fact(part: Part) -> Fact:
    return Fact("part" if part.kind != "member" else "member", {"part": part, "name": part.name, "points": part.points})


def action_fact(action: Action, code: str = "force") -> Fact:
    return Fact(code, {"action": action, "point": action.point, "at": action.at, "direction": action.direction, "on": action.on})


def gap(a, b, axis: int) -> Quantity:
    """The exact distance between two points along an axis."""
    return Quantity(abs(difference(a, b)[axis]), LENGTH)
