"""Directions in words to directions in the plane, keeping how they were said."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from unpin.base.units import ANGLE, LENGTH, NUMBER
from unpin.exact.lettered import is_lettered
from unpin.exact.number import NoWholeMultiple, Number, cos_deg, length, sign, sin_deg
from unpin.model import directions
from unpin.model.problem import Part
from unpin.model.space import difference, square_to
from unpin.model.values import Direction, Vector
from unpin.read.context import Context, Item
from unpin.read.phrases import AngleSaid, AxisSaid, DirectionSaid, LinearSaid, SlopeSaid, TowardsSaid, Word
from unpin.read.quantities import measure, quantity

ONE, ZERO = Fraction(1), Fraction(0)
AXES: dict[str, Vector] = {
    "right": (ONE, ZERO),
    "left": (-ONE, ZERO),
    "up": (ZERO, ONE),
    "down": (ZERO, -ONE),
    "x": (ONE, ZERO),
    "y": (ZERO, ONE),
}


def axis(word: str) -> Direction:
    """right, left, up or down (x and y mean right and up)."""
    return Direction(AXES[word], ONE, "axis", written=word)


def direction(known: Context, item: Item, said: DirectionSaid, at: str = "") -> Direction:
    """A direction; `at` is the name of the point it starts from, for `towards` and for bent members."""
    if isinstance(said, AxisSaid):
        return axis(said.axis.text)
    if isinstance(said, AngleSaid):
        return _angle(known, item, said)
    if isinstance(said, SlopeSaid):
        return _slope(known, item, said)
    if isinstance(said, TowardsSaid):
        end = known.point(item, said.point)
        if not at:
            raise item.drop("read.towards_from", said.point)
        return replace(between(item, said.point, (at, end.name), known.at[at], end.at), written=f"towards {end.name}")
    return replace(_linear(known, item, said, at), written=item.text[said.start : said.end])


def between(item: Item, word: Word, names: tuple[str, str], start: Vector, end: Vector) -> Direction:
    """From one point to another; Dropped where they are one spot."""
    try:
        return directions.line(names, start, end)
    except ValueError:
        raise item.drop("read.no_line", word, first=names[0], second=names[1]) from None


def _angle(known: Context, item: Item, said: AngleSaid) -> Direction:
    angle = quantity(known, item, said.angle, ANGLE).value
    if not -360 <= float(angle) <= 360:
        raise item.drop("read.angle_range", said.angle, least=-360, most=360)
    if said.line:
        line = between(item, said.line[-1], tuple(w.text for w in said.line), *(known.point(item, w).at for w in said.line))
        base, reach, ends = line.vector, line.length, line.points
        turn = square_to(base) if said.turn != "clockwise" else tuple(-c for c in square_to(base))
    else:
        base, turn, reach, ends = AXES[said.base], AXES[said.turn], ONE, ()
    try:
        along, across = cos_deg(angle), sin_deg(angle)
    except NoWholeMultiple:
        raise item.drop("read.letter_angle", said.angle, hint="hint.letter_angle") from None
    vector = tuple(b * along + t * across for b, t in zip(base, turn))
    written = item.text[said.angle.start : max(said.end, said.angle.end)].strip()
    if directions.axis_of(vector):
        word = next(w for w, v in AXES.items() if v == tuple(Fraction(sign(c)) for c in vector))
        return Direction(AXES[word], ONE, "axis", written=written)
    if said.line and (unit := _round_unit(vector)):
        vector, reach = unit, ONE
    return Direction(vector, reach, "angle", angle=angle, base=base, turn=turn, points=ends, written=written)


def _round_unit(vector: Vector) -> Vector | None:
    """The unit vector of one whose angle with the level is exact to a thousandth of a degree: its sums then name that angle."""
    if any(map(is_lettered, vector)):
        return None
    degrees = directions.angle_of(vector)
    near = Fraction(round(degrees * 1000), 1000)
    if abs(float(near) - degrees) > 1e-9:
        return None
    unit = (cos_deg(near), sin_deg(near))
    return unit if directions.parallel(vector, unit) else None


def _slope(known: Context, item: Item, said: SlopeSaid) -> Direction:
    (first, a), (second, b) = said.legs
    if (first.text in ("right", "left")) == (second.text in ("right", "left")):
        raise item.drop("read.slope_axes", second, first=first.text, second=second.text)
    legs: list[Number] = [ZERO, ZERO]
    for word, amount in said.legs:
        value, dimension = measure(known, item, amount)
        if dimension not in (NUMBER, LENGTH):
            value = quantity(known, item, amount, (NUMBER, LENGTH)).value
        if sign(value) <= 0:
            raise item.drop("read.slope_leg", amount)
        index = 0 if word.text in ("right", "left") else 1
        legs[index] = value * sum(AXES[word.text])
    vector = tuple(legs)
    return Direction(vector, length(vector), "slope", legs=vector, written=item.text[first.start : b.end])


def _linear(known: Context, item: Item, said: LinearSaid, at: str) -> Direction:
    first, last = _ends(known, item, said, at)
    place = said.names[-1]
    along = between(item, place, (first, last), known.at[first], known.at[last])
    found = square_of(along) if said.square else along
    if not said.side:
        if said.square:
            raise item.drop("read.which_side", place, hint="hint.which_side")
        return found
    side = AXES[said.side]
    turn = sign(found.vector[0] * side[0] + found.vector[1] * side[1])
    if turn == 0:
        raise item.drop("read.side_square", place, side=said.side, hint="hint.which_side")
    return found if turn > 0 else found.reversed()


def _ends(known: Context, item: Item, said: LinearSaid, at: str) -> tuple[str, str]:
    """The two points whose line is meant: of a member its straight run, at a bent one the run that ends at `at`."""
    if len(said.names) == 2:
        return known.point(item, said.names[0]).name, known.point(item, said.names[1]).name
    (word,) = said.names
    if word.text in known.links:
        known.refer(item, word, "links")
        return known.links[word.text].points
    part = known.part(item, word)
    where = known.at
    if is_straight([where[p] for p in part.points]):
        return part.points[0], part.points[-1]
    runs = {tuple(sorted(run)): run for run in zip(part.points, part.points[1:]) if at in run}
    lines = list(runs.values())
    flat = len(lines) > 1 and all(
        directions.parallel(difference(where[a], where[b]), difference(where[lines[0][0]], where[lines[0][1]]))
        for a, b in lines
    )
    if len(lines) == 1 or flat:
        return lines[0]
    raise item.drop("read.bent", word, name=part.name, hint="hint.two_points")


def is_straight(points: list[Vector]) -> bool:
    """Whether points lie on one line."""
    start = points[0]
    far = next((p for p in points if p != start), None)
    if far is None:
        return True
    run = difference(far, start)
    return all(directions.parallel(run, difference(p, start)) for p in points)


def lies_on(known: Context, part: Part, at: Vector) -> bool:
    """Whether a place is on one of the straight runs of a member."""
    where = known.at
    if part.kind == "disc":
        return any(sign(_beyond(known, part, r, at)) <= 0 for r in part.radii)
    if len(part.points) == 1:
        return where[part.points[0]] == at
    if part.kind == "box":
        round_ = [*part.points, part.points[0]]
        sides = {sign(cross(difference(where[b], where[a]), difference(at, where[a]))) for a, b in zip(round_, round_[1:])}
        return not {1, -1} <= sides
    return any(on_run(where[a], where[b], at) for a, b in zip(part.points, part.points[1:]))


def on_rim(known: Context, part: Part, at: Vector) -> bool:
    """Whether a place is on one of the rims of a disc."""
    return any(sign(_beyond(known, part, r, at)) == 0 for r in part.radii)


def _beyond(known: Context, part: Part, radius: Number, at: Vector) -> Number:
    """The square of the distance from the centre of a disc less that of a radius."""
    x, y = difference(at, known.at[part.points[0]])
    return x * x + y * y - radius * radius


def cross(a: Vector, b: Vector) -> Number:
    return a[0] * b[1] - a[1] * b[0]


def on_run(start: Vector, end: Vector, at: Vector) -> bool:
    run, step = difference(end, start), difference(at, start)
    if not directions.parallel(run, step):
        return False
    along = run[0] * step[0] + run[1] * step[1]
    return sign(along) >= 0 and sign(run[0] * run[0] + run[1] * run[1] - along) >= 0


def square_of(d: Direction) -> Direction:
    """The direction a quarter turn anticlockwise from another, said in the same way."""
    vector = square_to(d.vector)
    if directions.axis_of(vector):
        return Direction(vector, d.length, "axis", written=d.written)
    turned = {name: square_to(value) for name in ("base", "turn", "legs") if (value := getattr(d, name))}
    form = "square" if d.form == "line" else d.form
    points = () if d.form == "angle" else d.points  # the angle is no longer with that line, but with the square to it
    return Direction(vector, d.length, form, d.angle, points=points, written=d.written, **turned)
