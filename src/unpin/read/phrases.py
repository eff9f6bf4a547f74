"""What a phrase of a problem file says, before its names are looked up: small frozen facts with their columns."""

from __future__ import annotations

from fractions import Fraction
from typing import Union

from unpin.base.record import record
from unpin.exact.expression import Expression
from unpin.exact.number import Number


@record
class Word:
    """A name, or a keyword where the choice matters; columns from 0."""

    text: str
    start: int
    end: int


@record
class Amount:
    """A number with or without a unit, a letter, or an expression of them."""

    expression: Expression
    start: int
    end: int


@record
class LetterSaid:
    """What a letter without a value stands for (`force`, `force per length`), and the size to draw it with, if that is given."""

    what: str
    drawn: Amount | None = None


@record
class AxisSaid:
    """right, left, up, down; in a sum also x and y."""

    axis: Word


@record
class AngleSaid:
    """`at 30 deg` (from the right, anticlockwise), `at 30 deg above left`, `at 20 deg left of up`; `end`: the last column of it,
    0 where nothing follows the angle. `line`: of `at 60 deg clockwise from C E` the two points; `turn` is then which way."""

    angle: Amount
    base: str = "right"
    turn: str = "up"
    end: int = 0
    line: tuple[Word, ...] = ()


@record
class SlopeSaid:
    """`right 3 up 4`, in the author's order."""

    legs: tuple[tuple[Word, Amount], tuple[Word, Amount]]


@record
class TowardsSaid:
    point: Word


@record
class LinearSaid:
    """Along or square to a member or the line of two points; `side` is the way it points, "" if not said."""

    names: tuple[Word, ...]
    square: bool
    side: str
    start: int
    end: int


DirectionSaid = Union[AxisSaid, AngleSaid, SlopeSaid, TowardsSaid, LinearSaid]


@record
class AtSaid:
    """`at E`: a point, or a letter that is an angle."""

    name: Word


@record
class Moves:
    """`C right 1.6 down 0.4`."""

    base: Word
    moves: tuple[tuple[Word, Amount], ...]


@record
class Away:
    """`200 mm from C at 30 deg`, `1.5 from C towards D`."""

    distance: Amount
    base: Word
    direction: DirectionSaid


@record
class Share:
    """`1/3 of C D`: that part of the way from C to D; `midpoint of C D` is one half."""

    ratio: Amount | None
    first: Word
    second: Word


@record
class LineSaid:
    """`line A B`, or `line from A along right 3 up 4`."""

    first: Word
    second: Word | None = None
    direction: DirectionSaid | None = None


@record
class Meet:
    """`where line A B meets line C D`."""

    first: LineSaid
    second: LineSaid


@record
class OnLine:
    """`on A B at x = 2`."""

    first: Word
    second: Word
    axis: Word
    amount: Amount


@record
class Reached:
    """`4 from A and 3 from B above`: so far from each of two points, on one side of their line."""

    first: tuple[Amount, Word]
    second: tuple[Amount, Word]
    side: Word


@record
class Mirrored:
    """`C mirrored in line T M`, of a row one point each: `C B A mirrored in line T M`."""

    points: tuple[Word, ...]
    line: LineSaid


@record
class Shifted:
    """`B C D up 3`, under a row of names: each of the points moved in the same way."""

    points: tuple[Word, ...]
    moves: tuple[tuple[Word, Amount], ...]


@record
class Foot:
    """`foot of B on A D`: where the upright from a point stands on a line."""

    point: Word
    line: LineSaid


@record
class Every:
    """`every 4 right from A`: each name of the row one step further on."""

    step: Amount
    direction: DirectionSaid
    base: Word


@record
class Evenly:
    """`evenly from A to I`: the names of the row part the way in equal steps."""

    first: Word
    second: Word


PointSaid = Union[Moves, Away, Share, Meet, OnLine, Reached, Mirrored, Shifted, Foot, Every, Evenly]


@record
class LinkSaid:
    """`B-D`, `A-C-E-G`, `B-D on arm`, `B on post - D on arm`: the points from end to end, and of two ends the members that are meant
    where several meet."""

    points: tuple[Word, ...]
    parts: tuple[Word | None, ...] = ()


@record
class SupportSaid:
    """`way`: pushes, slope, along or "bare" (a direction alone): how the direction was said; "" and None where nothing was."""

    kind: Word
    way: str = ""
    direction: DirectionSaid | None = None
    part: Word | None = None


@record
class JoiningSaid:
    """How members meet at a shared point: `how` is pinned, welded or loose; `parts` those it is about, empty for all."""

    how: str
    parts: tuple[Word, ...] = ()


@record
class ContactSaid:
    """`drum pushes lever up`: which member pushes which, and the way, which may be left out where a wheel shows it."""

    pushing: Word
    pushed: Word
    direction: DirectionSaid | None = None


@record
class SlideSaid:
    """`arm in lever`, `arm on rod, built on`, `arm in ground along right`: what slides, and in or on what (None: the ground). `centre`: the
    point round which a slot is an arc, `far` a word where it runs the long way round from one end to the other."""

    slider: Word
    owner: Word | None
    along: DirectionSaid | None = None
    ends: tuple[Word, ...] = ()
    built_on: Word | None = None
    centre: Word | None = None
    far: Word | None = None


@record
class BoxSaid:
    """`A B C D`: the corners of a block, in order."""

    corners: tuple[Word, ...]


@record
class DiscSaid:
    """`0.1 m and 0.3 m at C`."""

    radii: tuple[Amount, ...]
    centre: Word


@record
class StopSaid:
    """One place of a cord: an end by `name` (on a member, in `part`); pulled in a `direction`; over a disc on a `side`; or
    `wound` onto it there."""

    name: Word | None = None
    part: Word | None = None
    side: str = ""
    radius: Amount | None = None
    direction: DirectionSaid | None = None
    wound: bool = False


@record
class Clauses:
    """The clauses of a load, each at most once: `at` with `more` points after it, `on`, `direction`, `turn`, `span`, `per`,
    `over` (the width a pressure acts on)."""

    at: Word | None = None
    on: tuple[Word, ...] = ()
    direction: DirectionSaid | None = None
    turn: Word | None = None
    span: tuple[Word, Word] | None = None
    per: str = ""
    more: tuple[Word, ...] = ()
    over: Amount | None = None


@record
class LoadSaid:
    """`form`: plain (one amount), varying (two), components (two with their axes, and a unit or None), weight (`of` a
    part), hanging (a mass on a point). `sought`: the letter to be found that is its size, `multiple` times; at the end of
    a spread load `last` times."""

    form: str
    amounts: tuple[Amount | None, ...]
    clauses: Clauses
    label: Word | None = None
    of: Word | None = None
    axes: tuple[Word, ...] = ()
    sought: str = ""
    multiple: Number = Fraction(1)
    last: Number = Fraction(1)


@record
class GivenSaid:
    """`B-W 5 kN tension`, `A 2 kN up`, `C on arm 2 kN up`, `B lifts` (no amount): what has the force, by one name or its two ends,
    on which part, and its sense."""

    names: tuple[Word, ...]
    on: Word | None
    amount: Amount | None = None
    sense: Word | None = None
    direction: DirectionSaid | None = None
    turn: Word | None = None


@record
class AskedSaid:
    """`names`: one name, or two for a link named by its ends; empty for everything or, in `all`, for links or reactions, and for the
    `ratio` of two."""

    names: tuple[Word, ...]
    part: Word | None = None
    component: str = ""
    lead: str = ""
    all: str = ""
    ratio: tuple[AskedSaid, ...] = ()


@record
class SumSaid:
    """`moments about A on arm and post`, `forces along x on whole`."""

    parts: tuple[Word, ...]
    about: Word | tuple[Amount, Amount] | None = None
    along: DirectionSaid | None = None
