"""Loads as actions: forces and weights where they act, couples, and spread loads as resultants of their stretches."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from unpin.base.record import record
from unpin.base.units import FORCE
from unpin.exact.number import ONE, Number, length, sign
from unpin.model.action import Action, Symbol, Unknown
from unpin.model.problem import Load, Problem, Stretch
from unpin.model.space import difference
from unpin.model.values import Quantity, Vector
from unpin.statics.pins import Meeting


@record
class Resultant:
    """Area under one rectangle or triangle of a spread load, and the point its line passes through (its centroid).
    `shape`: rectangle, rising (from zero at the start) or falling; `peak` in N/m, `run` in m."""

    shape: str
    size: Number
    at: Vector
    peak: Number
    run: Number


def resultants(stretch: Stretch) -> tuple[Resultant, ...]:
    """A stretch as a rectangle and a triangle (either may be missing); with ends of opposite sign, two triangles.

    Area of a triangle: half of peak times run, at one third from the tall end (any handbook of areas).
    """
    w1, w2 = stretch.start_intensity.value, stretch.end_intensity.value
    run = run_of(stretch)
    out = []

    def point(share: Number) -> Vector:
        return tuple(a + share * d for a, d in zip(stretch.start, difference(stretch.end, stretch.start)))

    from fractions import Fraction as F

    if sign(w1) * sign(w2) < 0:
        out = [Resultant("falling", w1 * run / 2, point(F(1, 3)), w1, run), Resultant("rising", w2 * run / 2, point(F(2, 3)), w2, run)]
    else:
        low = w1 if abs(w1) <= abs(w2) else w2
        if low != 0:
            out.append(Resultant("rectangle", low * run, point(F(1, 2)), low, run))
        if w1 - low != 0:
            out.append(Resultant("falling", (w1 - low) * run / 2, point(F(1, 3)), w1 - low, run))
        if w2 - low != 0:
            out.append(Resultant("rising", (w2 - low) * run / 2, point(F(2, 3)), w2 - low, run))
    return tuple(out)


def resultant_of(action: Action) -> Resultant:
    """The rectangle or triangle that an action of a spread load is the resultant of."""
    return resultants(action.load.stretches[action.stretch])[action.piece]


def run_of(stretch: Stretch) -> Number:
    """The length its intensity is measured over: of the member, or of its projection."""
    d = difference(stretch.end, stretch.start)
    if stretch.per == "member":
        return length(d)
    run = d[0] if stretch.per == "x" else d[1]
    return run if sign(run) >= 0 else -run


def load_actions(problem: Problem, meetings: Mapping[str, Meeting]) -> list[Action]:
    """Every load as an action on the body that carries it, in file order, ids `load1`, `load2`, … (`load3.1a` for the first
    resultant of the first stretch of a spread load)."""
    out: list[Action] = []
    at = problem.coordinates
    for number, load in enumerate(problem.loads, 1):
        name = f"load{number}"
        symbol = Symbol(load.name) if load.name else None
        if load.kind == "spread":
            for s, stretch in enumerate(load.stretches):
                for r, resultant in enumerate(resultants(stretch)):
                    one = Action(f"{name}.{s + 1}{'ab'[r]}", "force", load.part, "", "", resultant.at, symbol=symbol,
                                 direction=load.direction, load=load, stretch=s, piece=r)
                    if load.sought:
                        size = resultant.size
                        out.append(replace(one, unknown=load.name, multiple=size, share=size / load.direction.length))
                    else:
                        out.append(replace(one, value=Quantity(resultant.size, FORCE, unit=""), sense="given"))
        elif load.magnitude is None:
            out.append(_unknown_action(name, load, load.part or meetings[load.point].host, at))
        elif load.kind == "couple":
            out.append(Action(name, "couple", load.part, "", load.point, at.get(load.point, ()), symbol=symbol,
                              value=load.magnitude, sense="given", load=load))
        else:
            on = load.part or meetings[load.point].host
            out.append(Action(name, "force", on, "", load.point, at[load.point], symbol=symbol, direction=load.direction,
                              value=load.magnitude, sense="given", load=load))
    return out


def _unknown_action(name: str, load: Load, on: str, at: Mapping[str, Vector]) -> Action:
    """A load whose size is to be found; its scalar may drive other loads as well."""
    if load.kind == "couple":
        return Action(name, "couple", on, "", load.point, at.get(load.point, ()), unknown=load.name, symbol=Symbol(load.name),
                      load=load, multiple=load.multiple, share=load.multiple)
    return Action(name, "force", on, "", load.point, at[load.point], unknown=load.name, symbol=Symbol(load.name),
                  direction=load.direction, load=load, multiple=load.multiple, share=load.multiple / load.direction.length)


def unknown_loads(actions: Sequence[Action]) -> list[Unknown]:
    """One unknown for each letter among the loads that are to be found."""
    by_letter: dict[str, list[Action]] = {}
    for a in actions:
        if a.unknown and a.load is not None:
            by_letter.setdefault(a.unknown, []).append(a)
    return [Unknown(id, Symbol(id), "spread" if acting[0].stretch >= 0 else acting[0].kind, id, tuple(a.id for a in acting), ONE, drives="load")
            for id, acting in by_letter.items()]
