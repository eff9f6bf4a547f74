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
from unpin.route.execute import execute, sketch
from unpin.route.follow import follow
from unpin.route.frontier import Move
from unpin.route.gather import gathered
from unpin.route.order import cheapest, well_chosen
from unpin.route.plan import Route, Step
from unpin.route.search import Fewest, fewest
from unpin.route.worked import Worked
from unpin.statics.answers import answers
from unpin.statics.assemble import assemble
from unpin.statics.contacts import settle
from unpin.statics.goals import goals
from unpin.statics.inspect import inspect
from unpin.statics.prove import prove
from unpin.statics.solve import solve
from unpin.statics.sound import sound
from unpin.statics.transfer import transfer

COMPARED = 9
"""With more asked than this every way finds the same things in another order: nobody compares them, so no next best is looked for."""


def work(problem: Problem, costs: CostTable = DEFAULT, others: int = 2) -> Worked:
    """Check, plan, carry out and prove. `others`: how many next best routes to look for.

    A problem that is not sound for what it asks comes back without routes, values or proof.
    """
    given = problem
    problem, opened = settle(problem)
    apart = assemble(problem)
    soundness = sound(apart)
    structure = inspect(problem)
    worked = Worked(given, apart, structure, soundness, opened=opened)
    if not soundness.holds or not any(found for _, found in soundness.found):
        return worked
    zero = {u: ZERO for insight in structure.zero for u in insight.finds}
    ground = survey(structure, costs)
    wanted = _goal(structure, soundness)
    known = ground.mask_of(zero)
    goal = ground.mask_of(wanted)
    least = fewest(ground, goal, known)
    if least is None:
        # A sum of forces can be fixed where its parts, seen by inspection, are not: those are left to the full solve.
        wanted = _goal(structure, soundness, solve(structure) or {})
        goal = ground.mask_of(wanted)
        least = fewest(ground, goal, known)
    if least is None:
        return worked
    least = well_chosen(ground, goal, known, least, costs)
    best = cheapest(ground, goal, known, least, costs)
    if best is None:
        return worked
    rivals = _rivals(ground, goal, known, least, costs, best) if others else []
    if rivals and _total(rivals[0]) < _total(best):
        # The search for the cheapest stops after a time; what it missed may turn up on the way to the next best.
        best, rivals = rivals[0], [best, *rivals[1:]]
    recommended = shortest = _route(ground, best, zero, "recommended", least)
    taken = {_shape(best)}
    if recommended.count != least.upper:
        moves = cheapest(ground, goal, known, least, costs, wide=False)
        shortest = _route(ground, moves, zero, "", least)
        taken.add(_shape(moves))
    shortest = replace(shortest, claim="fewest" if shortest.count == least.lower else "between")
    values = _values(structure, recommended.steps, zero)
    closing = closing_check(structure, recommended.steps, values)
    full, derived = solve(apart) or {}, transfer(apart, structure, values)
    # Every unknown of the structure as it stands: the route's value where it found one, the full solve's for the rest.
    complete = {**full, **derived}
    proof = prove(apart, full, complete, derived, _checked(apart, soundness), closing)
    own = follow(structure, problem.wanted_route, wanted, zero) if problem.wanted_route else None
    next_best = [moves for moves in rivals if _shape(moves) not in taken][:others]
    alternatives = tuple(_route(ground, moves, zero, "other", least, carried=False) for moves in next_best)
    return replace(worked, fewest=shortest, recommended=recommended, others=alternatives, wanted=own,
                   values={**complete, **values}, answers=answers((structure, values), (apart, complete)), proof=proof,
                   rung=max((rung(v) for v in values.values()), default=1))


def _goal(structure: Structure, soundness, fixed: Mapping[str, Number] | None = None) -> list[str]:
    """Unknowns of the inspected structure behind everything asked that statics fixes; only things `fixed` there, if given."""
    behind = [goals(structure, asked) for asked, found in soundness.found if found]
    return list(dict.fromkeys(g for all_of in behind if fixed is None or set(all_of) <= fixed.keys() for g in all_of))


def _checked(apart: Structure, soundness) -> list[str]:
    """Unknowns of the structure as it stands that virtual work confirms."""
    return list(dict.fromkeys(g for asked, found in soundness.found if found for g in goals(apart, asked)))


def _route(ground: Ground, moves: list[Move], zero: Mapping[str, Number], claim: str, least: Fewest, carried: bool = True) -> Route:
    """A route with its values, or only listed when it is not `carried` out. `zero`: what is known from inspection."""
    moves = gathered(moves, ground.mask_of(zero))
    steps = execute(ground, moves, zero)[0] if carried else sketch(ground, moves)
    count = sum(len(s.equations) for s in steps)
    move_set = {"bodies": ground.rule, "block": least.block, "upper": least.upper}
    return Route(steps, count, sum((s.cost for s in steps), Fraction(0)), claim, least.lower, move_set)


def _values(structure: Structure, steps: tuple[Step, ...], known: Mapping[str, Number]) -> dict[str, Number]:
    values = dict(known)
    for s in steps:
        values.update(s.values)
    return values


def _rivals(ground, goal, known, least, costs, best: list[Move]) -> list[list[Move]]:
    """Next best routes: those that do without one of the sums of the best one, cheapest first."""
    seen = {_shape(best)}
    found: list[list[Move]] = []
    for move in best[:5] if goal.bit_count() <= COMPARED else ():
        for s in move.sums:
            moves = cheapest(ground, goal, known, least, costs, wide=False, barred=[(s.body, s.mask)])
            if moves and _shape(moves) not in seen:
                seen.add(_shape(moves))
                found.append(moves)
    return sorted(found, key=lambda moves: (_total(moves), sum(len(m.sums) for m in moves)))


def _total(moves: list[Move]) -> int:
    return sum(m.cost for m in moves)


def _shape(moves: list[Move]):
    """Two routes are one when they write the same sums, in whatever order."""
    return frozenset((s.body, s.mask) for m in moves for s in m.sums)
