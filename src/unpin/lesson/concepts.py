"""What a worked problem teaches: the ideas that its solution leans on, found in the solved problem and never typed.

Every concept is a code of the catalogue `index` and a question to the worked problem and the route that its lesson follows.
"""

from __future__ import annotations

from collections.abc import Callable

from unpin.lesson import phrases
from unpin.lesson.called import CALLED, called
from unpin.lesson.cords import hangs
from unpin.lesson.isolate import carried_discs
from unpin.lesson.threeforce import of_body
from unpin.model.action import FreeBody
from unpin.model.equation import Equation
from unpin.model.kinds import KINDS
from unpin.model.problem import GROUND
from unpin.route.plan import Route
from unpin.route.worked import Worked
from unpin.statics.goals import goals


def equations(route: Route) -> list[Equation]:
    return [e for s in route.steps for e in s.equations]


def bodies(route: Route) -> list[FreeBody]:
    """The free bodies that are drawn, each once, in order."""
    return list({e.body.parts: e.body for e in equations(route)}.values())


def concepts(worked: Worked, route: Route) -> tuple[str, ...]:
    """Codes of the ideas in the order of the table below, roughly that in which a course meets them."""
    return tuple(code for code, holds in _CONCEPTS.items() if holds(worked, route))


def kinds_of_connection(worked: Worked) -> tuple[str, ...]:
    """Kinds of connection of the problem as given, in the order of `model.kinds`; `cord` last."""
    joined = {called(c, worked.problem) for c in worked.problem.connections}
    return (*(name for name in CALLED if name in joined), *(("cord",) if worked.problem.cords else ()))


def _two_force(w: Worked, _: Route) -> bool:
    return bool(w.structure.two_force) or any(c.kind == "link" for c in w.problem.connections)


def _three_force(w: Worked, r: Route) -> bool:
    return any(of_body(b) is not None and not hangs(b, w.structure) for b in bodies(r))


def _pair(w: Worked, r: Route) -> bool:
    """A force that is no two-force member's, found on one body and put in on its neighbour."""
    met: dict[str, set[str]] = {}
    for e in equations(r):
        for t in e.terms:
            if t.action.unknown and t.action.pair and t.action.by != GROUND and not w.structure.unknown(t.action.unknown).axial:
                met.setdefault(t.action.unknown, set()).add(t.action.on)
    return any(len(on) > 1 for on in met.values())


def _section(_: Worked, r: Route) -> bool:
    return any(b.kind == "group" and all(p.startswith(phrases.PIN) for p in b.parts) for b in bodies(r))


def _group(w: Worked, r: Route) -> bool:
    return any(b.kind == "group" and any(not p.startswith(phrases.PIN) for p in b.parts) and not carried_discs(b, w.problem) for b in bodies(r))


def _with_discs(w: Worked, r: Route) -> bool:
    return any(b.kind == "group" and carried_discs(b, w.problem) for b in bodies(r))


def _disc_alone(w: Worked, r: Route) -> bool:
    """A pulley or a drum, which a cord passes; a wheel or a roller has none."""
    discs = {p.name for p in w.problem.parts if p.kind == "disc"} & {s.part for c in w.problem.cords for s in c.stops}
    return any(b.kind == "part" and b.parts[0] in discs for b in bodies(r))


def _off_figure(_: Worked, r: Route) -> bool:
    return any(e.functional.kind == "about" and not e.functional.point for e in equations(r))


def _indirect(w: Worked, r: Route) -> bool:
    asked = {g for one in w.problem.asked for g in goals(w.structure, one)}
    return any(u not in asked for s in r.steps for u in s.finds)


def _tackle(w: Worked, _: Route) -> bool:
    """A cord that pulls on one body with more than one strand beside the one over its fixed disc."""
    return any(sum(1 for s in c.stops[1:-1] if s.part) > 1 for c in w.problem.cords)


def _over_disc(w: Worked, _: Route) -> bool:
    return any(s.side not in ("", "through") for c in w.problem.cords for s in c.stops)


def _ring(w: Worked, r: Route) -> bool:
    """A body of no size, a ring, a knot or a load, with more than two forces."""
    rings = {p.name for p in w.problem.parts if p.kind == "block"}
    return any(len(b.actions) > 2 and b.parts[0] in rings for b in bodies(r) if b.kind == "part")


def _couple(w: Worked, r: Route) -> bool:
    """A couple among the loads; that of a built-in end, a weld, a guide or a collar is told as theirs."""
    return any(load.kind == "couple" for load in w.problem.loads)


def _spread_split(w: Worked, _: Route) -> bool:
    spread = [load.written for load in w.problem.loads if load.kind == "spread" and load.written]
    return len(spread) > len(set(spread))


def _connected(*kinds: str, ground: bool | None = None) -> Callable[[Worked, Route], bool]:
    return lambda w, _: any(c.kind in kinds and ground in (None, c.is_support) for c in w.problem.connections)


_CONCEPTS: dict[str, Callable[[Worked, Route], bool]] = {
    "resultant": lambda w, _: any(c.sense == "along" for a in w.answers for c in a.components if c.symbol.sub == "" and not c.unknown),
    "push_only": lambda w, _: any(KINDS[c.kind].push_only for c in w.problem.connections),
    "built_in": _connected("fixed", ground=True),
    "slope": lambda w, _: any(c.kind == "roller" and c.direction is not None and 0 not in c.direction.vector for c in w.problem.connections),
    "mass": lambda w, _: any(load.mass is not None for load in w.problem.loads),
    "spread": lambda w, _: any(load.kind == "spread" for load in w.problem.loads),
    "couple": _couple,
    "two_force": _two_force,
    "bent": lambda w, _: any(t.bent for t in w.structure.two_force),
    "three_force": _three_force,
    "pair": _pair,
    "whole_first": lambda w, r: len(w.structure.bodies) > 1 and bool(bodies(r)) and bodies(r)[0].kind == "whole",
    "joint": lambda _, r: any(b.kind == "pin" for b in bodies(r)),
    "section": _section,
    "zero": lambda w, _: bool(w.structure.zero),
    "group": _group,
    "indirect": _indirect,
    "spread_split": _spread_split,
    "weld": _connected("fixed", ground=False),
    "guide": _connected("guide"),
    "slot": _connected("slot", "arc"),
    "collar": _connected("collar", "sleeve"),
    "ring": _ring,
    "cord": _over_disc,
    "with_discs": _with_discs,
    "disc_alone": _disc_alone,
    "tackle": _tackle,
    "unknown_load": lambda w, _: any(u.drives == "load" for u in w.structure.unknowns),
    "block": lambda _, r: any(len(s.equations) > 1 for s in r.steps),
    "off_figure": _off_figure,
    "opens": lambda w, _: bool(w.opened),
    "balanced": lambda w, _: bool(w.soundness.freedoms) and w.soundness.holds,
    "own_route": lambda w, r: r.claim == "own",
}
CODES = tuple(_CONCEPTS)
