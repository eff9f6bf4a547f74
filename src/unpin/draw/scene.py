"""A scene: marks at their places on the printed page, in pt, x right, y down. Nothing here knows a pin from a roller.

Six kinds of mark. Each may carry `owner` (what of the problem it shows: an action's id, a point, a part) and `role`
(the class under which the theme gives it lines and colours). `meter` and `place` read these same marks.
"""

from __future__ import annotations

from typing import Literal

from unpin.base.record import record
from unpin.draw import label as lettering
from unpin.draw.geometry import Box, Spot, Tilt, around_tilt, box_of, grown, plus, square, tilt_of, union, unit
from unpin.draw.label import Label

LABEL_SIZE, SMALL_SIZE = 9.0, 8.0
HEAD_LENGTH, HEAD_HALF = 7.5, 2.6


@record
class Path:
    """Straight lines through `spots`, closed or not; with `radius` > 0 a circle about the one spot."""

    spots: tuple[Spot, ...]
    role: str
    owner: str = ""
    closed: bool = False
    radius: float = 0.0


@record
class Text:
    """A label whose box has its middle at `at`; `turn`: degrees anticlockwise, 90 reads from the right (upwards)."""

    at: Spot
    label: Label
    size: float = LABEL_SIZE
    role: str = "label"
    owner: str = ""
    turn: float = 0
    leader: tuple[Spot, ...] = ()


@record
class Arrow:
    """A line through `spots` (two, or many for an arc) with a filled head at its end, at both ends for a dimension.
    `tail`: mark of its pair, 0 for none."""

    spots: tuple[Spot, ...]
    role: str
    owner: str = ""
    heads: Literal["end", "both"] = "end"
    tail: int = 0
    head: tuple[float, float] = (HEAD_LENGTH, HEAD_HALF)


@record
class Group:
    """Marks that belong together; `name` is its spoken name, "" for one that is not spoken by itself."""

    marks: tuple[Mark, ...]
    role: str
    owner: str = ""
    name: str = ""


@record
class Image:
    """A raster image as a data address. `box`: what it covers; `size`: its pixels; `matrix`: from pixels to the scene, as SVG has it; `faded`:
    how much of it is left, 0 to 1."""

    box: Box
    source: str
    size: tuple[int, int]
    matrix: tuple[float, float, float, float, float, float]
    faded: float = 1.0
    role: str = "image"
    owner: str = ""


@record
class Tag:
    """An unseen area a page may listen to: `box` and what it stands for."""

    box: Box
    role: str = "tag"
    owner: str = ""
    name: str = ""


Mark = Path | Text | Arrow | Group | Image | Tag


@record
class Scene:
    """`origin` is the upper left corner; `title` and `description` are its name and text alternative. `scale`: pt per metre, where
    all pieces keep their places in the structure: a point (x, y) then stands at (scale x, -scale y); else 0."""

    origin: Spot
    width: float
    height: float
    marks: tuple[Mark, ...]
    title: str = ""
    description: str = ""
    scale: float = 0.0


def leaves(marks: tuple[Mark, ...]):
    """Every mark that is not a group, in drawing order."""
    for mark in marks:
        if isinstance(mark, Group):
            yield from leaves(mark.marks)
        else:
            yield mark


def text_box(text: Text) -> Box:
    """The box its letters fill."""
    w, h = lettering.width(text.label, text.size), lettering.height(text.label, text.size)
    tilt = text_tilt(text)
    if tilt is not None:
        return around_tilt(text.at, tilt)
    if text.turn:
        w, h = h, w
    return (text.at[0] - w / 2, text.at[1] - h / 2, text.at[0] + w / 2, text.at[1] + h / 2)


def text_tilt(text: Text) -> Tilt | None:
    """How the box is tilted, None for one that stands upright or on its side."""
    if text.turn % 90 == 0:
        return None
    return tilt_of((lettering.width(text.label, text.size), lettering.height(text.label, text.size)), text.turn)


def head_of(tip: Spot, back: Spot, size: tuple[float, float]) -> tuple[Spot, Spot, Spot]:
    """The three corners of an arrowhead whose tip is at `tip`, coming from `back`."""
    u = unit((tip[0] - back[0], tip[1] - back[1]))
    base, side = plus(tip, u, -size[0]), square(u)
    return (tip, plus(base, side, size[1]), plus(base, side, -size[1]))


def heads_of(arrow: Arrow) -> tuple[tuple[Spot, Spot, Spot], ...]:
    ends = [head_of(arrow.spots[-1], _back(arrow.spots[::-1], arrow.head[0]), arrow.head)]
    if arrow.heads == "both":
        ends.append(head_of(arrow.spots[0], _back(arrow.spots, arrow.head[0]), arrow.head))
    return tuple(ends)


def _back(spots: tuple[Spot, ...], reach: float) -> Spot:
    """The first spot at least `reach` along from the first, so that the head of an arc follows its chord."""
    from math import hypot

    for spot in spots[1:]:
        if hypot(spot[0] - spots[0][0], spot[1] - spots[0][1]) >= reach * 0.9:
            return spot
    return spots[-1]


def mark_box(mark: Mark) -> Box:
    """What a mark covers, without the thickness of thin lines."""
    if isinstance(mark, Text):
        return union([text_box(mark), box_of(mark.leader)]) if mark.leader else text_box(mark)
    if isinstance(mark, Group):
        return union(mark_box(m) for m in mark.marks)
    if isinstance(mark, (Image, Tag)):
        return mark.box
    if isinstance(mark, Arrow):
        return union([box_of(mark.spots), *(box_of(h) for h in heads_of(mark))])
    return grown(box_of(mark.spots), mark.radius)


def circle(centre: Spot, radius: float, role: str, owner: str = "") -> Path:
    return Path((centre,), role, owner, radius=radius)
