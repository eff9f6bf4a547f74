"""What the drawing of one kind consists of, and the frame it is drawn in."""

from __future__ import annotations

from unpin.base.record import record
from unpin.draw.geometry import Box, Spot, plus, square
from unpin.draw.scene import Mark

Strip = tuple[Spot, Spot, float]
"""A segment with half its thickness in pt: the room something takes, which labels keep out of."""


@record
class Symbol:
    """`marks` to draw, `room` it takes, `grab`: the box a hand may take it by, `spoken`: code of its description."""

    marks: tuple[Mark, ...]
    room: tuple[Strip, ...]
    grab: Box
    spoken: str


@record
class Frame:
    """Local axes at `at`: `up` is the unit vector towards the part that is held, `right` a quarter clockwise of it."""

    at: Spot
    up: Spot

    @property
    def right(self) -> Spot:
        return square(self.up)

    def spot(self, right: float, up: float) -> Spot:
        return plus(plus(self.at, self.right, right), self.up, up)

    def strip(self, a: tuple[float, float], b: tuple[float, float], half: float) -> Strip:
        return (self.spot(*a), self.spot(*b), half)

    def box(self, half: float, low: float, high: float) -> Box:
        corners = [self.spot(x, y) for x in (-half, half) for y in (low, high)]
        xs, ys = [c[0] for c in corners], [c[1] for c in corners]
        return (min(xs), min(ys), max(xs), max(ys))
