"""Forces, couples and weights: from phrases to loads on a member or on a pin."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from unpin.base.units import ACCELERATION, BY_SPELLING, FORCE, LENGTH, MASS, MOMENT, NUMBER, PRESSURE, SPREAD, STANDARD_GRAVITY, Unit
from unpin.exact.expression import Name as LetterName
from unpin.exact.lettered import is_lettered
from unpin.exact.number import length, sign
from unpin.model import directions
from unpin.model.problem import Load, Part, Point
from unpin.model.space import difference
from unpin.model.values import Direction, Quantity
from unpin.read.context import Context, Item
from unpin.read.cords import knot, tie_knot
from unpin.read.directions import AXES, direction, is_straight, lies_on
from unpin.read.lettered import lettered_gravity
from unpin.read.parts import STRUCTURE
from unpin.read.phrases import Amount, AngleSaid, AxisSaid, LoadSaid, Word
from unpin.read.pieces import is_name
from unpin.read.quantities import measure, quantity
from unpin.read.report import Dropped, nearest
from unpin.read.sought import lies_along, with_sought
from unpin.read.spread import spread


def load(known: Context, item: Item) -> list[Load]:
    """The loads of one phrase: one, except where a spread load runs over several members or a force acts at several points."""
    said = _angle_and_point(known, item.phrase("load"))
    if said.label is not None and not is_name(said.label.text):
        raise item.drop("read.name", said.label, name=said.label.text)
    said = with_sought(known, item, said)
    said = _by_length(known, item, said)
    kind = _kind(known, item, said)
    place = item.place()
    if kind == "spread":
        return spread(known, item, said, place)
    if said.clauses.over:
        raise item.drop("read.over_what", said.clauses.over, hint="hint.over")
    make = {"couple": _couple, "weight": _weight, "hanging": _hanging, "force": _force}[kind]
    out, failed = [], False
    for each in _one_by_one(known, item, said, kind):
        try:
            one = make(known, item, each)
        except Dropped:
            failed = True
            continue
        name = said.sought or (said.label.text if said.label else one.magnitude.letter if kind in ("force", "couple") else "")
        out.append(replace(one, name=name, written=item.text, place=place))
    if failed and not out:
        raise Dropped
    return out


def _by_length(known: Context, item: Item, said: LoadSaid) -> LoadSaid:
    """`weight of arm 20 N/m`: the weight of each length of a member, bent or straight, is a spread load downward on all of it."""
    if said.form != "weight" or said.sought or said.clauses.at is not None or said.of is None:
        return said
    part = known.parts.get(said.of.text)
    if part is None or part.kind != "member" or measure(known, item, said.amounts[0])[1] != SPREAD:
        return said
    way = AxisSaid(Word("down", said.of.start, said.of.end))
    return replace(said, form="plain", of=None, clauses=replace(said.clauses, on=(said.of,), direction=way))


def _angle_and_point(known: Context, said: LoadSaid) -> LoadSaid:
    """`at theta at C` with the two told apart by what they name; the grammar takes the first for the point."""
    c = said.clauses
    if c.at is None or not isinstance(c.direction, AngleSaid) or not isinstance(c.direction.angle.expression, LetterName):
        return said
    second = c.direction.angle
    if c.at.text in known.points or c.at.text not in known.letters or second.expression.name not in known.points:
        return said
    angle = Amount(LetterName(c.at.text, c.at.start, c.at.end), c.at.start, c.at.end)
    point = Word(second.expression.name, second.start, second.end)
    return replace(said, clauses=replace(c, at=point, direction=replace(c.direction, angle=angle)))


def _one_by_one(known: Context, item: Item, said: LoadSaid, kind: str) -> list[LoadSaid]:
    """The phrase at each of its points."""
    c = said.clauses
    if not c.more:
        return [said]
    if kind not in ("force", "hanging"):
        raise item.drop("read.one_point_only", c.more[0])
    for word in c.more:
        near = nearest(word.text, [*known.points, *AXES])
        if word.text not in known.points and near in AXES and len(word.text) > 1:
            # `at E dwn` is a slip in the direction, hardly a second point.
            raise item.drop("read.unknown_point", word, name=word.text[:40], nearest=near, hint="hint.nearest_word")
    points = (c.at, *c.more)
    for n, word in enumerate(points):
        if word.text in [w.text for w in points[:n]]:
            raise item.drop("read.point_again", word, point=word.text)
    return [replace(said, clauses=replace(c, at=word, more=())) for word in points]


def _kind(known: Context, item: Item, said: LoadSaid) -> str:
    """force, couple, spread, weight or hanging: from the words, else from the dimension of the amount."""
    if said.form in ("weight", "hanging"):
        return said.form
    if said.sought:
        return "spread" if lies_along(said) else "couple" if said.clauses.turn else "force"
    if said.form == "varying":
        return "spread"
    if said.form == "components":
        return "force"
    clauses = said.clauses
    value, dimension = measure(known, item, said.amounts[0])
    if dimension == NUMBER:
        along = clauses.span or clauses.over or (clauses.on and not clauses.at)
        return "couple" if clauses.turn else "spread" if along else "force"
    if dimension == PRESSURE and not clauses.over:
        raise item.drop("read.pressure", said.amounts[0], hint="hint.over")
    if dimension == MASS:
        written = item.text[said.amounts[0].start : said.amounts[0].end].strip()
        raise item.drop("read.mass_no_force", said.amounts[0], text=written[:40], hint="hint.mass_no_force")
    kind = {FORCE: "force", MOMENT: "couple", SPREAD: "spread", PRESSURE: "spread"}.get(dimension)
    if kind is None:
        quantity(known, item, said.amounts[0], (FORCE, MOMENT, SPREAD))
        raise Dropped
    if clauses.turn and kind != "couple":
        raise item.drop("read.turn_of_force", clauses.turn, turn=clauses.turn.text, hint="hint.couple_phrase")
    return kind


def _sized(known: Context, item: Item, amount: Amount, dimension) -> Quantity:
    """A magnitude: positive, since the sense is in the words."""
    found = quantity(known, item, amount, dimension)
    if sign(found.value) < 0:
        raise item.drop("read.negative", amount, hint="hint.negative")
    if sign(found.value) == 0:
        raise item.drop("read.zero", amount)
    return found


def _place(known: Context, item: Item, said: LoadSaid) -> tuple[Point, str]:
    """The point of a force and what carries it: the member named, the one member there, or the pin ("")."""
    clauses = said.clauses
    if clauses.at is None:
        raise item.drop("read.where", hint="hint.where")
    point = known.point(item, clauses.at)
    if clauses.span or clauses.per:
        raise item.drop("read.span_of_force", clauses.span[0] if clauses.span else None)
    here = known.carriers(point.name)
    if clauses.on:
        part = _the_part(known, item, clauses.on)
        if part not in known.members_at(point.name) and not lies_on(known, part, point.at):
            raise item.drop("read.not_on_member", clauses.on[0], name=part.name, point=point.name)
        return point, part.name
    if len(here) == 1 or known.rigid(point.name, here):
        return point, here[0].name
    if not here:
        if point.name not in known.cord_ends and not any(point.name in c.points for c in known.links.values()):
            if known.lost & STRUCTURE or known.broken:
                raise Dropped
            raise item.drop("read.load_on_nothing", clauses.at, point=point.name, hint="hint.name_in_member")
        if knot(known, point.name):
            return point, tie_knot(known, point.name).name
    elif point.name not in known.pinned:
        raise item.drop(
            "read.which_member", clauses.at, names=tuple(p.name for p in here), point=point.name, hint="hint.on_member"
        )
    if here:
        known.assume("load_on_pin", point=point.name)
    return point, ""


def _the_part(known: Context, item: Item, words: tuple[Word, ...]) -> Part:
    if len(words) > 1:
        raise item.drop("read.one_member", words[1])
    return known.part(item, words[0])


def _force(known: Context, item: Item, said: LoadSaid) -> Load:
    if said.form == "components":
        if said.clauses.direction is not None:
            raise item.drop("read.two_directions")
        point, part = _place(known, item, said)
        size, way = _components(known, item, said)
        return Load("force", point.name, part, size, direction=way)
    size = None if said.sought else _sized(known, item, said.amounts[0], FORCE)
    point, part = _place(known, item, said)
    if said.clauses.direction is None:
        raise item.drop("read.no_way", said.amounts[0], hint="hint.no_way")
    way = direction(known, item, said.clauses.direction, point.name)
    return Load("force", point.name, part, size, direction=way, multiple=said.multiple)


def _components(known: Context, item: Item, said: LoadSaid) -> tuple[Quantity, Direction]:
    """`(3 right, 4 down) kN`: the unit behind the bracket or in it."""
    first, second, outer = said.amounts
    if (said.axes[0].text in ("right", "left")) == (said.axes[1].text in ("right", "left")):
        raise item.drop("read.slope_axes", said.axes[1], first=said.axes[0].text, second=said.axes[1].text)
    unit = Quantity(Fraction(1), NUMBER)
    legs = []
    if outer is not None:
        unit = quantity(known, item, outer, FORCE)
        legs = [quantity(known, item, a, NUMBER).value for a in (first, second)]
    else:
        sized = [_sized(known, item, a, FORCE) for a in (first, second)]
        unit = Quantity(known_unit(sized[0]).factor if known_unit(sized[0]) else Fraction(1), FORCE, unit=sized[0].unit)
        legs = [q.value / unit.value for q in sized]
    vector: list = [Fraction(0), Fraction(0)]
    for word, leg, amount in zip(said.axes, legs, (first, second)):
        if sign(leg) <= 0:
            raise item.drop("read.slope_leg", amount)
        vector[0 if word.text in ("right", "left") else 1] = leg * sum(AXES[word.text])
    start = item.text.rindex("(", 0, first.start)
    written = item.text[start : outer.end if outer else item.text.index(")", second.end) + 1].strip()
    way = Direction(tuple(vector), length(tuple(vector)), "components", legs=tuple(vector), written=written)
    return Quantity(way.length * unit.value, FORCE, written, "", unit.unit), way


def known_unit(q: Quantity) -> Unit | None:
    from unpin.base.units import BY_SPELLING

    return BY_SPELLING.get(q.unit)


def _couple(known: Context, item: Item, said: LoadSaid) -> Load:
    clauses = said.clauses
    size = None if said.sought else _sized(known, item, said.amounts[0], MOMENT)
    if clauses.turn is None:
        raise item.drop("read.which_turn", said.amounts[0], hint="hint.which_turn")
    if clauses.direction is not None or clauses.span or clauses.per:
        raise item.drop("read.couple_way", said.amounts[0])
    point = known.point(item, clauses.at) if clauses.at else None
    if clauses.on:
        part = _the_part(known, item, clauses.on)
        if point is not None and not lies_on(known, part, point.at):
            raise item.drop("read.not_on_member", clauses.on[0], name=part.name, point=point.name)
    elif point is not None:
        here = known.carriers(point.name)
        if len(here) > 1 and not known.rigid(point.name, here):
            raise item.drop(
                "read.which_member", clauses.at, names=tuple(p.name for p in here), point=point.name, hint="hint.on_member"
            )
        if not here:
            raise item.drop("read.load_on_nothing", clauses.at, point=point.name, hint="hint.name_in_member")
        part = here[0]
    else:
        raise item.drop("read.couple_where", said.amounts[0], hint="hint.couple_where")
    if part.kind == "block":
        raise item.drop("read.couple_on_block", said.amounts[0], name=part.name)
    times = said.multiple
    if clauses.turn.text == "clockwise":
        size, times = (replace(size, value=-size.value), times) if size else (None, -times)
    # Where a couple is drawn does not matter to any sum: without a point, in the middle of the chain.
    where = point.name if point else part.points[len(part.points) // 2]
    return Load("couple", where, part.name, size, multiple=times)


def gravity(known: Context) -> Quantity:
    """The acceleration in use; noted as assumed where the file gives none."""
    if known.gravity is None:
        system = known.unit(LENGTH).system
        value, unit, written = STANDARD_GRAVITY[system], "ft/s²" if system == "us" else "m/s²", "32.2 ft/s²" if system == "us" else "9.81 m/s²"
        if known.unit(FORCE).symbol in ("kgf", "tf"):  # a kilogram weighs one kilogram-force there
            value, unit, written = BY_SPELLING["kgf"].factor, "m/s²", "9.80665 m/s²"
        known.gravity = Quantity(value, ACCELERATION, written, "", unit)
        known.assume("gravity", value=known.gravity.written)
    return known.gravity


def _heavy(known: Context, item: Item, amount: Amount, dimensions) -> tuple[Quantity, Quantity | None]:
    """Weight, and mass where a mass was given."""
    given = _sized(known, item, amount, dimensions)
    if given.dimension == FORCE:
        return given, None
    unit = known.unit(FORCE)
    free = is_lettered(given.value) and known.gravity is None
    return Quantity(given.value * (lettered_gravity(known) if free else gravity(known)).value, FORCE, "", "", unit.symbol), given


def _only_at(item: Item, said: LoadSaid, *, on: bool) -> None:
    c = said.clauses
    if c.direction or c.turn or c.span or c.per or c.over or (c.on and not on):
        raise item.drop("read.weight_clause", said.amounts[0])


def _weight(known: Context, item: Item, said: LoadSaid) -> Load:
    """The weight of a member, at a given point or in the middle of a straight one."""
    part = known.part(item, said.of)
    size, mass = (None, None) if said.sought else _heavy(known, item, said.amounts[0], (FORCE, MASS))
    _only_at(item, said, on=False)
    if said.clauses.at is not None:
        point = known.point(item, said.clauses.at)
    else:
        where = known.at
        if part.kind == "box":
            size_at = _centroid(known, part)
            return Load("force" if said.sought else "weight", size_at.name, part.name, size, direction=directions.DOWN, mass=mass, multiple=said.multiple)
        if not is_straight([where[p] for p in part.points]):
            raise item.drop("read.weight_where", said.of, name=part.name, hint="hint.weight_where")
        point = _middle(known, part)
        if len(part.points) > 1:
            known.assume("weight_in_the_middle", part=part.name)
    kind = "force" if said.sought else "weight"
    return Load(kind, point.name, part.name, size, direction=directions.DOWN, mass=mass, multiple=said.multiple)


def _centroid(known: Context, part: Part) -> Point:
    """The middle of the area of a block (sums over the triangles from its first corner; any handbook of areas)."""
    where = [known.at[p] for p in part.points]
    area, x, y = Fraction(0), Fraction(0), Fraction(0)
    for a, b in zip(where[1:], where[2:]):
        (u, v), (s, t) = difference(a, where[0]), difference(b, where[0])
        twice = u * t - v * s
        area, x, y = area + twice, x + twice * (u + s) / 3, y + twice * (v + t) / 3
    at = (where[0][0] + x / area, where[0][1] + y / area)
    there = next((p for p in known.points.values() if p.at == at), None)
    if there is None:
        name = next(n for n in ("G", *(f"G{i}" for i in range(1, 1000))) if n not in known.points and n not in known.broken)
        there = known.points[name] = Point(name, at, made=f"middle of {part.name}")
    known.used.add(there.name)
    known.assume("weight_in_the_middle_of_block", part=part.name)
    return there


def _middle(known: Context, part: Part) -> Point:
    """The point in the middle of a straight member; made, and named, where there is none."""
    ends = sorted((known.points[p] for p in part.points), key=lambda p: tuple(float(c) for c in p.at))
    first, last = ends[0], ends[-1]
    middle = tuple((a + b) / 2 for a, b in zip(first.at, last.at))
    for name in part.points:
        if known.at[name] == middle:
            return known.points[name]
    name = next(n for n in ("G", *(f"G{i}" for i in range(1, 1000))) if n not in known.points and n not in known.broken)
    known.points[name] = Point(name, middle, made=f"midpoint of {first.name} {last.name}")
    known.used.add(name)
    return known.points[name]


def _hanging(known: Context, item: Item, said: LoadSaid) -> Load:
    size, mass = _heavy(known, item, said.amounts[0], MASS)
    _only_at(item, said, on=True)
    point, part = _place(known, item, said)
    return Load("weight", point.name, part, size, direction=directions.DOWN, mass=mass)
