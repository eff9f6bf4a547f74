"""Values with a dimension, directions, and the sums a teacher could type: the small words of the model."""

from __future__ import annotations

from dataclasses import field
from typing import Literal

from unpin.base.record import record
from unpin.base.units import Dimension
from unpin.exact.number import Number

Vector = tuple[Number, ...]


@record
class Quantity:
    """A value in SI with its dimension. `written` keeps the author's text; `letter` is the name it is printed under
    in symbols (`P`, `a`), empty where the number itself is printed; `unit` is the symbol of the author's unit. Where the letter is
    to be found, `unit` is that letter and the value how many times it stands there."""

    value: Number
    dimension: Dimension
    written: str = ""
    letter: str = ""
    unit: str = ""

    @property
    def sought(self) -> bool:
        return bool(self.letter) and self.unit == self.letter


DirectionForm = Literal["axis", "angle", "slope", "line", "square", "components"]


@record
class Direction:
    """A direction in the plane, and the way it was said, which is the way its factors are printed.

    `vector`: any length, exact, world axes (x right, y up). `length`: its exact length, so that vector/length is
    the unit vector. For a line between two points the vector is the difference of the points and stays rational.
    `form` axis: right, left, up or down (`vector` is a unit axis). angle: `angle` in degrees measured from the
    `base` axis towards the `turn` axis (both unit axis vectors), so the component along base is cos, along turn sin;
    measured from a line, `points` names its two points, `base` is its vector and `turn` the square to that.
    slope: `legs` as the author wrote them (never reduced to a rounded angle). line: from point to point, `points`
    names them; `square`: perpendicular to that line. components: bare numbers.
    """

    vector: Vector
    length: Number
    form: DirectionForm
    angle: Number | None = None
    base: Vector = ()
    turn: Vector = ()
    legs: Vector = ()
    points: tuple[str, str] | tuple[()] = ()
    written: str = ""

    def reversed(self) -> Direction:
        """The same line, the other way."""
        from dataclasses import replace

        back = tuple(-c for c in self.vector)
        flip = lambda v: tuple(-c for c in v)  # noqa: E731
        return replace(self, vector=back, base=flip(self.base), turn=flip(self.turn), legs=flip(self.legs) if self.legs else (),
                       points=self.points if self.form == "square" else self.points[::-1])


@record
class WantedSum:
    """A sum in words of the trade, as a teacher types it: the parts that are cut loose and one functional.

    `parts`: names of the parts of the free body, `("whole",)` for everything. `along`: a Direction, or None;
    `about`: a point's name, or a pair of coordinates; exactly one of the two is given.
    """

    parts: tuple[str, ...]
    along: Direction | None = None
    about: str | Vector | None = None
    written: str = ""
    place: object = field(default=None, compare=False)
