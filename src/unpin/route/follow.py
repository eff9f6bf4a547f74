"""A teacher's own route: each sum followed as far as it goes, and said what it holds, whether it can be used, what repeats."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import field

from unpin.base.record import record
from unpin.exact.linear import reduce
from unpin.exact.number import Number
from unpin.model.action import Structure
from unpin.model.equation import Equation, Functional
from unpin.model.space import product
from unpin.model.values import WantedSum
from unpin.route.execute import reason, solve_step
from unpin.route.plan import Step
from unpin.statics.equation import row_of, write
from unpin.statics.isolate import isolate
from unpin.statics.wrenches import unit_wrench


@record
class Followed:
    """One sum of the teacher. `verdict`: `usable` (one unknown left), `waits` (more than one; may become part of a block),
    `block` (completes a block with earlier ones), `repeats` (nothing new: all known, or a combination of earlier sums),
    `no_unknowns`, `no_body` (a part it names is a two-force member or does not exist). `holds`: unknowns it holds;
    `open`: those not known at that point."""

    wanted: WantedSum
    verdict: str
    equation: Equation | None = None
    holds: tuple[str, ...] = ()
    open: tuple[str, ...] = ()
    step: Step | None = None


@record
class OwnRoute:
    """The whole of it. `steps`: those that could be carried out, in order; `count`: sums written; `reaches`: all goals found;
    `missing`: goals not found."""

    followed: tuple[Followed, ...]
    steps: tuple[Step, ...]
    count: int
    reaches: bool
    missing: tuple[str, ...] = ()
    values: Mapping[str, Number] = field(default_factory=dict)


def follow(structure: Structure, wanted: Sequence[WantedSum], goal: Sequence[str], known: Mapping[str, Number]) -> OwnRoute:
    """Follow the teacher's sums in their order."""
    values = dict(known)
    written: list[Equation] = []
    waiting: list[Equation] = []
    followed: list[Followed] = []
    steps: list[Step] = []
    for w in wanted:
        equation = _equation(structure, w)
        if equation is None:
            followed.append(Followed(w, "no_body"))
            continue
        holds = equation.unknowns
        left = tuple(u for u in holds if u not in values)
        if _repeats(structure, written, equation):
            followed.append(Followed(w, "repeats", equation, holds, left))
            continue
        written.append(equation)
        if not left:
            followed.append(Followed(w, "no_unknowns", equation, holds, left))
        elif len(left) == 1:
            step = _step(structure, (equation,), left, values)
            steps.append(step)
            followed.append(Followed(w, "usable", equation, holds, left, step))
        else:
            waiting.append(equation)
            block = _block(waiting, values)
            if block:
                step = _step(structure, *block, values)
                steps.append(step)
                waiting = [e for e in waiting if e not in block[0]]
                followed.append(Followed(w, "block", equation, holds, left, step))
            else:
                followed.append(Followed(w, "waits", equation, holds, left))
        _wake(structure, waiting, values, steps)
    missing = tuple(g for g in goal if g not in values)
    return OwnRoute(tuple(followed), tuple(steps), len(written), not missing, missing, values)


def _step(structure, equations, finds, values) -> Step:
    found = solve_step(structure, equations, finds, values)
    uses = tuple(dict.fromkeys(u for e in equations for u in e.unknowns if u in values))
    step = Step(equations, finds, reason(structure, equations, finds, values), uses=uses, values=found)
    values.update(found)
    return step


def _wake(structure, waiting: list[Equation], values, steps) -> None:
    """A sum that waited may have one unknown left now."""
    again = True
    while again:
        again = False
        for e in list(waiting):
            left = tuple(u for u in e.unknowns if u not in values)
            if len(left) <= 1:
                waiting.remove(e)
                if left:
                    steps.append(_step(structure, (e,), left, values))
                    again = True


def _block(waiting: list[Equation], values) -> tuple[tuple[Equation, ...], tuple[str, ...]] | None:
    """The newest sum with earlier ones, as many as the unknowns they share."""
    newest = waiting[-1]
    open_now = {u for u in newest.unknowns if u not in values}
    chosen = [newest]
    for e in waiting[:-1]:
        mine = {u for u in e.unknowns if u not in values}
        if mine & open_now:
            chosen.append(e)
            open_now |= mine
    if len(chosen) != len(open_now):
        return None
    order = tuple(dict.fromkeys(u for e in chosen for u in e.unknowns if u in open_now))
    return tuple(reversed(chosen)), order


def _equation(structure: Structure, wanted: WantedSum) -> Equation | None:
    names = {b.name for b in structure.bodies}
    parts = names if wanted.parts == ("whole",) else set(wanted.parts)
    parts = {p if p in names else (f"pin {p}" if f"pin {p}" in names else p) for p in parts}
    if not parts <= names:
        return None
    body = isolate(structure, _with_pins(structure, parts))
    if wanted.along is not None:
        return write(body, Functional("along", direction=wanted.along))
    at = structure.problem.coordinates
    centre = at[wanted.about] if isinstance(wanted.about, str) else wanted.about
    return write(body, Functional("about", point=wanted.about if isinstance(wanted.about, str) else "", at=centre))


def _with_pins(structure: Structure, parts: set[str]) -> set[str]:
    """Pins between the chosen parts come along: nobody names them."""
    if len(parts) < 2:
        return parts
    touching: dict[str, set[str]] = {}
    for a in structure.actions:
        if a.on.startswith("pin ") and a.by in parts:
            touching.setdefault(a.on, set()).add(a.by)
    return parts | {pin for pin, by in touching.items() if len(by) > 1}


def _repeats(structure: Structure, written: list[Equation], new: Equation) -> bool:
    """Whether the sum is a combination of those already written, whatever the values."""
    index = {u.id: k for k, u in enumerate(structure.unknowns)}
    rows = []
    for e in (*written, new):
        functional = row_of(e.functional)
        row: dict[int, Number] = {}
        for a in e.body.actions:
            if a.unknown:
                c = product(functional, unit_wrench(a))
                k = index[a.unknown]
                row[k] = row[k] + c if k in row else c
        rows.append({k: c for k, c in row.items() if c != 0})
    return reduce(rows[:-1], len(index)).holds(rows[-1])
