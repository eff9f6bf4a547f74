"""What a phrase of a problem file says, before its names are looked up: small frozen facts with their columns."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Union

from unpin.exact.expression import Expression


@dataclass(frozen=True)
class Word:
    """A name, or a keyword where the choice matters; columns from 0."""

    text: str
    start: int
    end: int


@dataclass(frozen=True)
class Amount:
    """A number with or without a unit, a letter, or an expression of them."""

    expression: Expression
    start: int
    end: int


@dataclass(frozen=True)
class AxisSaid:
    """right, left, up, down; in a sum also x and y."""

    axis: Word


@dataclass(frozen=True)
class AngleSaid:
    """`at 30 deg` (from the right, anticlockwise), `at 30 deg above left`, `at 20 deg left of up`."""

    angle: Amount
    base: str = "right"
    turn: str = "up"


@dataclass(frozen=True)
class SlopeSaid:
    """`right 3 up 4`, in the author's order."""

    legs: tuple[tuple[Word, Amount], tuple[Word, Amount]]


@dataclass(frozen=True)
class TowardsSaid:
    point: Word


@dataclass(frozen=True)
class LinearSaid:
    """Along or square to a member or the line of two points; `side` is the way it points, "" if not said."""

    names: tuple[Word, ...]
    square: bool
    side: str
    start: int
    end: int


DirectionSaid = Union[AxisSaid, AngleSaid, SlopeSaid, TowardsSaid, LinearSaid]


@dataclass(frozen=True)
class AtSaid:
    """`at E`: a point, or a letter that is an angle."""

    name: Word


@dataclass(frozen=True)
class Moves:
    """`C right 1.6 down 0.4`."""

    base: Word
    moves: tuple[tuple[Word, Amount], ...]


@dataclass(frozen=True)
class Away:
    """`200 mm from C at 30 deg`, `1.5 from C towards D`."""

    distance: Amount
    base: Word
    direction: DirectionSaid


@dataclass(frozen=True)
class Share:
    """`1/3 of C D`: that part of the way from C to D; `midpoint of C D` is one half."""

    ratio: Amount | None
    first: Word
    second: Word


@dataclass(frozen=True)
class LineSaid:
    """`line A B`, or `line from A along right 3 up 4`."""

    first: Word
    second: Word | None = None
    direction: DirectionSaid | None = None


@dataclass(frozen=True)
class Meet:
    """`where line A B meets line C D`."""

    first: LineSaid
    second: LineSaid


@dataclass(frozen=True)
class OnLine:
    """`on A B at x = 2`."""

    first: Word
    second: Word
    axis: Word
    amount: Amount


@dataclass(frozen=True)
class Every:
    """`every 4 right from A`: each name of the row one step further on."""

    step: Amount
    direction: DirectionSaid
    base: Word


@dataclass(frozen=True)
class Evenly:
    """`evenly from A to I`: the names of the row part the way in equal steps."""

    first: Word
    second: Word


PointSaid = Union[Moves, Away, Share, Meet, OnLine, Every, Evenly]


@dataclass(frozen=True)
class SupportSaid:
    """`way`: pushes, slope, along or "bare" (a direction alone): how the direction was said; "" and None where nothing was."""

    kind: Word
    way: str = ""
    direction: DirectionSaid | None = None
    part: Word | None = None


@dataclass(frozen=True)
class JoiningSaid:
    """How members meet at a shared point: `how` is pinned, welded or loose; `parts` those it is about, empty for all."""

    how: str
    parts: tuple[Word, ...] = ()


@dataclass(frozen=True)
class ContactSaid:
    """`drum pushes lever up`: which member pushes which, and the way."""

    pushing: Word
    pushed: Word
    direction: DirectionSaid


@dataclass(frozen=True)
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


@dataclass(frozen=True)
class LoadSaid:
    """`form`: plain (one amount), varying (two), components (two with their axes, and a unit or None), weight (`of` a
    part), hanging (a mass on a point)."""

    form: str
    amounts: tuple[Amount | None, ...]
    clauses: Clauses
    label: Word | None = None
    of: Word | None = None
    axes: tuple[Word, ...] = ()


@dataclass(frozen=True)
class AskedSaid:
    """`names`: one name, or two for a link named by its ends; empty for everything or, in `all`, for links or reactions."""

    names: tuple[Word, ...]
    part: Word | None = None
    component: str = ""
    lead: str = ""
    all: str = ""


@dataclass(frozen=True)
class SumSaid:
    """`moments about A on arm and post`, `forces along x on whole`."""

    parts: tuple[Word, ...]
    about: Word | tuple[Amount, Amount] | None = None
    along: DirectionSaid | None = None
