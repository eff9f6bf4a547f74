"""Perpendicular arms: from a moment centre square to the line of a force, where the sum uses that one distance."""

from __future__ import annotations

import itertools
from functools import partial

from unpin.draw.angles import right_angle_mark
from unpin.draw.candidates import along_line, led
from unpin.draw.dimensions import dimension_line
from unpin.draw.geometry import apart, between, plus, unit
from unpin.draw.items import LeverItem, Piece
from unpin.draw.paper import Paper, measure
from unpin.draw.scene import SMALL_SIZE, Arrow, Path

BEYOND = 7.0
"""How far the line of a force is drawn past the foot of the arm, pt."""


def levers(piece: Piece, paper: Paper) -> None:
    """The line of the force on to the foot of the arm, the arm as a dimension from the centre, and the right angle between them.
    The arrows must have their places already."""
    for item in piece.of(LeverItem):
        centre, foot, at = paper.at(item.centre), paper.at(item.foot), paper.at(item.at)
        if apart(at, foot) > 1.0:
            way = unit((foot[0] - at[0], foot[1] - at[1]))
            line = Path((at, plus(foot, way, BEYOND)), "reference", item.owner)
            paper.back.append(line)
            paper.room.append((*line.spots, 0.4))
            corner = right_angle_mark(item.owner, foot, (-way[0], -way[1]), unit((centre[0] - foot[0], centre[1] - foot[1])))
            paper.direct(corner)
        marks = dimension_line(centre, foot, item.owner)
        paper.middle += marks
        for mark in marks:
            if isinstance(mark, (Arrow, Path)):
                paper.room += [(p, q, 0.9) for p, q in itertools.pairwise(mark.spots)]
        size = measure(item.label, SMALL_SIZE)
        paper.want(
            f"lever {item.owner}",
            item.label,
            SMALL_SIZE,
            "dimension",
            item.owner,
            along_line(centre, foot, size, 0.4),
            ((centre, foot, 0.0),),
            partial(led, between(centre, foot, 0.5), 0.5, size),
        )
