"""The problem as its author stated it: points, parts, connections, loads, and what is asked.

These are frozen facts. Nothing here solves, draws or parses. Every value is exact and in SI.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field, replace
from fractions import Fraction
from typing import Literal

from unpin.base.diagnostic import Place
from unpin.base.record import record
from unpin.exact.number import Number
from unpin.model.beneath import Beneath
from unpin.model.house import PLAIN, House
from unpin.model.values import Direction, Quantity, Vector, WantedSum

GROUND = "ground"
"""The name of the part that never moves and is never isolated."""


@record
class Point:
    """A named point. `made` is the construction in the author's words, empty for typed coordinates; GROUND for the far end of
    a link of which only the direction was given: its distance is no one's and is not to be dimensioned."""

    name: str
    at: Vector
    made: str = ""
    place: Place | None = field(default=None, compare=False)


@record
class Part:
    """A rigid part. `kind`: member; disc (a wheel, pulley or drum: one point, its centre, and `radii`); block (a body of no size
    at its one point: two sums and no couple).

    `points`: names in the order they are passed, straight from each to the next; `outline`: for shapes that the chain
    does not show (tuples of point names drawn as further strokes); `given`: of a two-force member its force, tension positive,
    where that is given.
    """

    name: str
    points: tuple[str, ...]
    kind: str = "member"
    outline: tuple[tuple[str, ...], ...] = ()
    radii: tuple[Number, ...] = ()
    place: Place | None = field(default=None, compare=False)
    given: Quantity | None = None


@record
class GivenAtPin:
    """One component of the force on a part at a pin of parts, given: `push` right or up, positive that way."""

    point: str
    part: str
    push: str
    size: Quantity


@record
class Connection:
    """How parts meet. `kind` names a file of facts in `model.kinds`; `parts` in the order of the file (GROUND last
    for a support); `points`: where it acts (one point; two for a link); `direction`: what the kind needs (the
    normal of a roller: the way it pushes on the first part; of a link, where its author gave it, from the first
    point to the second); `ends`: points between which a slot or a rod runs, where its author gave them; `centre`: the point
    about which a curved slot is an arc; `given`: of its pushes those whose force is given, positive in their assumed sense."""

    name: str
    kind: str
    points: tuple[str, ...]
    parts: tuple[str, ...]
    direction: Direction | None = None
    place: Place | None = field(default=None, compare=False)
    ends: tuple[str, ...] = ()
    centre: str = ""
    given: tuple[tuple[str, Quantity], ...] = ()

    @property
    def is_support(self) -> bool:
        return GROUND in self.parts


@record
class Stretch:
    """One straight run of a spread load: from `start` to `end` (world coordinates, with the names of the points where
    they have one), intensity there in N/m *per length measured along `per`*, varying linearly between.

    `per`: "member" (length along the run), "x" (horizontal projection) or "y" (vertical projection).
    """

    start: Vector
    end: Vector
    start_name: str
    end_name: str
    start_intensity: Quantity
    end_intensity: Quantity
    per: Literal["member", "x", "y"] = "member"


@record
class Load:
    """A given action on a part, or on the pin at a point (`part` is empty).

    kind force: `magnitude` along `direction` at `point`. couple: `magnitude` (anticlockwise positive) on `part`;
    `point` is where it is drawn. spread: `stretches` along `direction`, each on `part`. weight: like a force, down,
    with `mass` the author's mass when a mass was given (then magnitude = mass * g).
    `name` is the letter or label the author gave, empty if none. A force or couple without a magnitude is an unknown load: its
    scalar is called `name`, and `multiple` times that acts here (2P at one place and P at another are one unknown). So is a spread
    load without a magnitude, its intensities counting its letter.
    """

    kind: Literal["force", "couple", "spread", "weight"]
    point: str
    part: str
    magnitude: Quantity | None = None
    direction: Direction | None = None
    mass: Quantity | None = None
    stretches: tuple[Stretch, ...] = ()
    name: str = ""
    written: str = ""
    place: Place | None = field(default=None, compare=False)
    multiple: Number = Fraction(1)

    @property
    def sought(self) -> bool:
        """Whether its size is to be found."""
        return self.stretches[0].start_intensity.sought if self.kind == "spread" else self.magnitude is None


@record
class Stop:
    """One place that a cord comes to. An end: tied to `part` ("" the pin there, GROUND) at `point`; or wound onto a disc, tied to
    it at `point` on its rim, with the `radius` there; or leaving in `direction` with no point, pulled from outside. Else over a
    disc: `part` is the disc, `point` its centre, `radius` the one it lies on and `side` the side of the disc it touches (over,
    under, left, right); or through a block, a ring of no size: `side` through, `radius` 0."""

    point: str = ""
    part: str = ""
    side: str = ""
    radius: Number | None = None
    direction: Direction | None = None


def is_letter(name: str) -> bool:
    """Whether a name is a quantity symbol as it stands, one letter with or without a number, and no word: T, T2, W_1."""
    return len(name.rstrip("0123456789").removesuffix("_")) == 1


@record
class Cord:
    """A light cord with one tension from end to end, over any number of discs; `name` is the letter of its tension, `given` its
    size where that is given."""

    name: str
    stops: tuple[Stop, ...]
    place: Place | None = field(default=None, compare=False)
    given: Quantity | None = None


@record
class Asked:
    """One thing to find.

    kind reaction: the force (and couple) of the support at `point`. link: the force in the link or two-force member
    named by `subject`. pin: the force at `point` on `part`. load: the unknown load called `subject`. everything: all reactions, links and pin forces. ratio: of
    the two things `over`, each one number (of a force its size); letter: a given letter as one of these.
    `component`: "" (all: components and resultant), "x", "y", "couple", "magnitude".
    """

    kind: Literal["reaction", "link", "pin", "load", "everything", "ratio", "letter"]
    subject: str = ""
    point: str = ""
    part: str = ""
    component: str = ""
    written: str = ""
    place: Place | None = field(default=None, compare=False)
    over: tuple[Asked, ...] = ()


@record
class Letter:
    """A letter of the problem with its value. One that stays a letter has a size it is `drawn` with; its value, and that of what is
    made from it (b = 2a), is then a number with letters."""

    name: str
    value: Quantity | None
    drawn: Quantity | None = None
    written: str = ""
    place: Place | None = field(default=None, compare=False)


@record
class Problem:
    """A whole problem. Order of every tuple is the order of the file and has meaning: the part named first gets the
    positive sense at a pin. `units`: symbols of the units answers are shown in, by dimension name
    (`{"length": "m", "force": "kN", "moment": "kN·m"}`). `assumed`: codes with arguments of what the reader had to
    assume (never printed under Given). `wanted_route`: the teacher's own route, may be empty. `house`: the habits its outputs follow.
    `beneath`: a picture that is published under its figure, where that was asked for.
    `said`: the sections that its file has. `at_pins`: forces at pins of parts that are given."""

    points: tuple[Point, ...]
    parts: tuple[Part, ...]
    connections: tuple[Connection, ...] = ()
    loads: tuple[Load, ...] = ()
    asked: tuple[Asked, ...] = ()
    letters: tuple[Letter, ...] = ()
    title: str = ""
    text: str = ""
    gravity: Quantity | None = None
    units: Mapping[str, str] = field(default_factory=dict)
    figures: int = 0
    wanted_route: tuple[WantedSum, ...] = ()
    assumed: tuple[tuple[str, Mapping[str, object]], ...] = ()
    cords: tuple[Cord, ...] = ()
    house: House = PLAIN
    beneath: Beneath | None = None
    said: tuple[str, ...] = field(default=(), compare=False)
    at_pins: tuple[GivenAtPin, ...] = ()

    def point(self, name: str) -> Point:
        return next(p for p in self.points if p.name == name)

    def part(self, name: str) -> Part:
        return next(p for p in self.parts if p.name == name)

    @property
    def coordinates(self) -> dict[str, Vector]:
        return {p.name: p.at for p in self.points}

    def in_house(self, house: House) -> Problem:
        """The problem in a house: what its own file says about figures and units goes before what the house says."""
        if "figures" in self.said:
            house = replace(house, figures=0, places=None)
        return replace(self, house=replace(house, units={}) if "units" in self.said else house)
