"""What a figure shows, before anything has a place on paper: items in world coordinates (metres, y up, plain floats).

A figure is one or more pieces; the items of a piece keep their places relative to each other, pieces may be moved apart.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import Literal

from unpin.base.record import record
from unpin.draw.geometry import Spot
from unpin.draw.label import Label
from unpin.model.beneath import Beneath
from unpin.model.values import Direction, Vector


def flat(vector: Vector) -> Spot:
    return (float(vector[0]), float(vector[1]))


@record
class BodyItem:
    """A part along its chains. `look`: member, link, strut (a link in compression), ghost, or box: the outline of a block."""

    owner: str
    look: Literal["member", "link", "strut", "ghost", "box"]
    chains: tuple[tuple[Spot, ...], ...]


@record
class DiscItem:
    """A wheel, pulley or drum about `at`, with a rim for each of its `radii` (metres)."""

    owner: str
    at: Spot
    radii: tuple[float, ...]


@record
class BlockItem:
    """A body of no size at `at`, drawn as a box; `up` is square to the surface it stands on, if it does."""

    owner: str
    at: Spot
    up: Spot = (0.0, 1.0)


@record
class CordItem:
    """What is drawn of a cord: its straight strands, and the arcs that lie on rims (each a row of spots)."""

    owner: str
    strands: tuple[tuple[Spot, Spot], ...]
    arcs: tuple[tuple[Spot, ...], ...] = ()


@record
class RadiusItem:
    """The radius of a disc, on a line from its centre."""

    owner: str
    at: Spot
    radius: float
    label: Label


@record
class LeverItem:
    """The perpendicular distance from a moment centre to the line of the force that acts at `at`; `foot` lies on that line."""

    owner: str
    centre: Spot
    foot: Spot
    at: Spot
    label: Label


@record
class JointItem:
    """A place on a body: `hinge` an open circle, `knot` a dot, `eye` where a cord is tied, `ring` one that it runs
    through, `disc` a pin that is a body of its own, `plain` where nothing is drawn but its name stands. `slot` a pin in one, `hole` a slot without
    its pin, `collar` and `sleeve` (built on) what slides on a rod; these four have `up` square to it,
    and `reach` as in SupportItem."""

    owner: str
    look: Literal["hinge", "knot", "eye", "ring", "disc", "weld", "slot", "hole", "collar", "sleeve", "plain"]
    at: Spot
    up: Spot = (0.0, 1.0)
    reach: tuple[float, ...] = ()


@record
class SupportItem:
    """A connection drawn by the symbol `kind`. `up`: unit vector the way it pushes on the part, None to be chosen. `reach`: how far
    a slot or rod goes left and right of the point, seen with `up` upwards, in metres; empty where its ends were not given; of a curved slot
    also how far its centre is up (negative: down)."""

    owner: str
    kind: str
    at: Spot
    up: Spot | None
    grounded: bool = True
    direction: Direction | None = None
    notes: tuple[Label, ...] = ()
    reach: tuple[float, ...] = ()


@record
class ForceItem:
    """One arrow. `along`: unit vector of the drawn sense. `prefers` the point at its head or its tail. `mark`: of its pair.
    `direction` is given where its slope or angle is to be shown, with `notes`: the angle, or the two legs. `square`: along the
    member the force was said to be square to, for a right-angle mark instead. A link pulls `away` from its pin, on its own
    side, far rather than into it; a cord pulls away from what it is tied to (`prefers` pull) and `stub` pt of it are drawn up to the
    arrow."""

    owner: str
    at: Spot
    along: Spot
    label: Label
    name: str
    role: Literal["action", "load"] = "action"
    prefers: Literal["head", "tail", "away", "either", "pull"] = "either"
    mark: int = 0
    direction: Direction | None = None
    notes: tuple[Label, ...] = ()
    square: Spot | None = None
    stub: float = 0.0


@record
class CoupleItem:
    """A turning arrow about `at`, `turn` +1 anticlockwise."""

    owner: str
    at: Spot
    turn: int
    label: Label
    name: str
    role: Literal["action", "load"] = "action"
    mark: int = 0


@record
class SpreadItem:
    """Stretches (start, end, share of the greatest intensity at each, label at each) along a unit vector. `ghost`: only its
    outline, where its resultant is drawn. `per`: the length its intensity is measured by, as of a Stretch."""

    owner: str
    stretches: tuple[tuple[Spot, Spot, float, float, Label, Label], ...]
    along: Spot
    name: str
    ghost: bool = False
    per: Literal["member", "x", "y"] = "member"


@record
class DimensionItem:
    """A distance along x or y between two places that are each represented by one spot. Dimensions of one `chain` stand on
    the same side of the figure; `level` 0, 1, … within it each have a line of their own."""

    owner: str
    axis: Literal["x", "y", "along"]
    start: Spot
    end: Spot
    label: Label
    level: int = 0
    chain: str = ""


@record
class AngleItem:
    """The angle at a point from one direction to another; without a label a right angle."""

    owner: str
    at: Spot
    base: Spot
    along: Spot
    label: Label


@record
class NameItem:
    """The name of a point, of a part or the force in it; then `along` is the chain it stands beside, `of` the body.
    `size` of the letters where it is not the common one."""

    owner: str
    at: Spot
    label: Label
    role: Literal["point", "part", "label"] = "point"
    along: tuple[Spot, ...] = ()
    of: str = ""
    size: float = 0.0


@record
class CentreItem:
    """The point moments are taken about, or an instant centre."""

    owner: str
    at: Spot
    label: Label = ()


@record
class MotionItem:
    """A small arrow of motion at a point, `along` its displacement in metres."""

    owner: str
    at: Spot
    along: Spot


@record
class AxisItem:
    """The direction of a force sum, drawn beside the body."""

    owner: str
    along: Spot
    label: Label


Item = (
    BodyItem
    | DiscItem
    | BlockItem
    | CordItem
    | RadiusItem
    | LeverItem
    | JointItem
    | SupportItem
    | ForceItem
    | CoupleItem
    | SpreadItem
    | DimensionItem
    | AngleItem
    | NameItem
    | CentreItem
    | MotionItem
    | AxisItem
)


@record
class Piece:
    name: str
    items: tuple[Item, ...]

    def of(self, *kinds: type) -> list:
        return [i for i in self.items if isinstance(i, kinds)]


CROWDED = 20
"""With more named points than that a piece is crowded: what finds no free place is left out, for it would lie on something else."""


def crowded(piece: Piece) -> bool:
    return sum(i.role == "point" for i in piece.of(NameItem)) > CROWDED


@record
class Fact:
    """One line of the text alternative: a code and its arguments, which are objects of the model (exact, SI)."""

    code: str
    arguments: Mapping[str, object] = field(default_factory=dict)


@record
class Figure:
    """`span`: width and height of the whole structure in metres and its least distance between neighbouring points, from
    which every figure of a problem takes the same scale; `width`: the most it may take on paper, pt; `beneath`: a picture under it."""

    kind: Literal["problem", "apart", "free_body", "final", "motion"]
    pieces: tuple[Piece, ...]
    span: tuple[float, float, float]
    width: float
    told: tuple[Fact, ...] = ()
    title: str = ""
    description: str = ""
    beneath: Beneath | None = None

    def facts(self) -> tuple[Fact, ...]:
        """What is shown, in reading order: enough to draw it again."""
        return self.told
