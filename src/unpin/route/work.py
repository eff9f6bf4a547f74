"""One call from a problem to everything a lesson is made from. Read it top down: it is the way of the data."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

from unpin.exact.number import ZERO, Number, rung
from unpin.model.action import Structure
from unpin.model.problem import Problem
from unpin.route.candidates import Ground, survey
from unpin.route.closing import closing_check
from unpin.route.cost import DEFAULT, CostTable
from unpin.route.execute import execute
from unpin.route.follow import follow
from unpin.route.order import Move, cheapest
from unpin.route.plan import Route, Step
from unpin.route.search import Fewest, fewest
from unpin.route.worked import Worked
from unpin.statics.answers import answers
from unpin.statics.assemble import assemble
from unpin.statics.goals import goals
from unpin.statics.inspect import inspect
from unpin.statics.prove import prove
from unpin.statics.solve import solve
from unpin.statics.sound import sound
from unpin.statics.transfer import transfer


def work(problem: Problem, costs: CostTable = DEFAULT, others: int = 2) -> Worked:
    """Check, plan, carry out and prove. `others`: how many next best routes to look for.

    A problem that is not sound for what it asks comes back without routes, values or proof.
    """
    apart = assemble(problem)
    soundness = sound(apart)
    structure = inspect(problem)
    worked = Worked(problem, apart, structure, soundness)
    if not soundness.holds or not any(found for _, found in soundness.found):
        return worked
    zero = {u: ZERO for insight in structure.zero for u in insight.finds}
    ground = survey(structure, costs)
    wanted = _goal(structure, soundness)
    known = ground.mask_of(zero)
    goal = ground.mask_of(wanted)
    least = fewest(ground, goal, known)
    if least is None:
        return worked
    recommended = _route(ground, cheapest(ground, goal, known, least, costs), zero, "recommended", least)
    shortest = recommended
    if recommended.count != least.upper:
        moves = cheapest(ground, goal, known, least, costs, allowed=least.found | known)
        shortest = _route(ground, moves, zero, "", least)
    shortest = replace(shortest, claim="fewest" if shortest.count == least.lower else "between")
    values = _values(structure, recommended.steps, zero)
    closing = closing_check(structure, recommended.steps, values)
    complete = _complete(apart, structure, values)
    proof = prove(apart, complete, _checked(apart, soundness), closing, transfer(apart, structure, values))
    own = follow(structure, problem.wanted_route, wanted, zero) if problem.wanted_route else None
    alternatives = _others(ground, goal, known, least, costs, zero, (recommended, shortest), others)
    return replace(worked, fewest=shortest, recommended=recommended, others=alternatives, wanted=own,
                   values={**complete, **values}, answers=answers(structure, {**complete, **values}), proof=proof,
                   rung=max((rung(v) for v in values.values()), default=1))


def _goal(structure: Structure, soundness) -> list[str]:
    """Unknowns of the inspected structure behind everything asked that statics fixes."""
    return list(dict.fromkeys(g for asked, found in soundness.found if found for g in goals(structure, asked)))


def _checked(apart: Structure, soundness) -> list[str]:
    """Unknowns of the structure as it stands that virtual work confirms."""
    return list(dict.fromkeys(g for asked, found in soundness.found if found for g in goals(apart, asked)))


def _route(ground: Ground, moves: list[Move], known: Mapping[str, Number], claim: str, least: Fewest) -> Route:
    steps, _ = execute(ground, moves, known)
    count = sum(len(s.equations) for s in steps)
    move_set = {"bodies": ground.rule, "block": least.block, "upper": least.upper}
    return Route(steps, count, sum((s.cost for s in steps), Fraction(0)), claim, least.lower, move_set)


def _values(structure: Structure, steps: tuple[Step, ...], known: Mapping[str, Number]) -> dict[str, Number]:
    values = dict(known)
    for s in steps:
        values.update(s.values)
    return values


def _complete(apart: Structure, structure: Structure, values: Mapping[str, Number]) -> dict[str, Number]:
    """Values of every unknown of the structure as it stands: the route's where it found them, a full solve for the rest."""
    full = dict(solve(apart) or {})
    full.update(transfer(apart, structure, values))
    return full


def _others(ground, goal, known, least, costs, zero, taken: tuple[Route, ...], most: int) -> tuple[Route, ...]:
    """Next best routes: those that do without one of the sums of the recommended one, cheapest first."""
    found: list[Route] = []
    seen = {_shape(r) for r in taken}
    for step in taken[0].steps:
        barred = [(k, s.mask) for k, body in enumerate(ground.bodies) for s in ground.sums
                  if s.body == k and any(e.body == body and _same(ground, s, e) for e in step.equations)]
        moves = cheapest(ground, goal, known, least, costs, barred=barred)
        if not moves:
            continue
        route = _route(ground, moves, zero, "other", least)
        if _shape(route) not in seen:
            seen.add(_shape(route))
            found.append(route)
    return tuple(sorted(found, key=lambda r: (r.cost, r.count))[:most])


def _same(ground: Ground, candidate, equation) -> bool:
    return set(ground.names(candidate.mask)) == set(equation.unknowns)


def _shape(route: Route):
    return tuple((e.body.parts, e.functional.kind, e.functional.point, e.functional.at or e.functional.direction.vector)
                 for s in route.steps for e in s.equations)


