"""Cords: one tension along all strands of each."""

from __future__ import annotations

from collections.abc import Callable

from unpin.exact.number import ONE, sign
from unpin.model.action import Action, Symbol, Unknown
from unpin.model.directions import axis_of
from unpin.model.problem import GROUND, Cord, Problem, Stop, is_letter
from unpin.model.strands import SIDES, Slack, Strand, strands_between
from unpin.model.values import Direction

__all__ = ["SIDES", "Slack", "Strand", "cord_actions", "strands"]


def strands(problem: Problem, cord: Cord) -> tuple[Strand, ...]:
    """The strands of a cord of the problem in order. Raises Slack."""
    return strands_between(problem.coordinates, cord)


def cord_actions(problem: Problem, cord: Cord, host: Callable[[str, str], str]) -> tuple[list[Unknown], list[Action]]:
    """The tension of a cord and every arrow it drives: at both ends of each strand, along it, away from the body it acts on.

    `host(point, part)` names the body behind a part of the file. The two arrows of a strand are each other's pair, so a strand
    inside a free body does not show. Arrows on the ground are kept: they are its reaction there. A tension that is given is no
    unknown: its arrows have its value.
    """
    symbol = Symbol(cord.name) if is_letter(cord.name) else Symbol("T", cord.name)
    actions: list[Action] = []
    for k, s in enumerate(strands(problem, cord), 1):
        ids = [f"{cord.name}>{_place(stop, host)}@{k}" for stop in (s.first, s.second)]
        for stop, spot, way, mine, other in ((s.first, s.start, 1, ids[0], ids[1]), (s.second, s.end, -1, ids[1], ids[0])):
            if spot is None:
                continue
            names = (s.first.point, s.second.point) if way > 0 else (s.second.point, s.first.point)
            direction = _direction(s, way, names)
            pair = other if (s.end if way > 0 else s.start) is not None else ""
            point = "" if stop.side else stop.point
            actions.append(Action(mine, "force", _place(stop, host), cord.name, point, spot, unknown="" if cord.given else cord.name,
                                  symbol=symbol, direction=direction, value=cord.given, sense="tension", pair=pair, source=cord.name))
    if cord.given is not None:
        return [], actions
    return [Unknown(cord.name, symbol, "force", cord.name, tuple(a.id for a in actions), ONE, axial=True, drives="cord")], actions


def _place(stop: Stop, host: Callable[[str, str], str]) -> str:
    if stop.direction is not None:
        return ""
    return stop.part if stop.side else host(stop.point, stop.part) or GROUND


def _direction(strand: Strand, way: int, names: tuple[str, str]) -> Direction:
    said = strand.second.direction or strand.first.direction
    vector = tuple(c * way for c in strand.direction)
    if said is not None:
        outward = strand.second.direction is not None
        unit = said if (way > 0) == outward else said.reversed()
        return Direction(vector, ONE, unit.form, unit.angle, unit.base, unit.turn, unit.legs, unit.points, unit.written)
    if axis_of(vector):
        return Direction(tuple(ONE * sign(c) for c in vector), ONE, "axis", points=names)
    return Direction(vector, ONE, "line", points=names)
