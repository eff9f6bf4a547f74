"""A route's numbers are those of the full solve, every step can be taken when it is taken, and answers are true forces."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction as F

from hypothesis import given

import transforms
from strategies import SOUND, drawn
from tally import count
from unpin.exact.number import length
from unpin.model.problem import GROUND
from unpin.route.work import work
from unpin.statics import solve
from unpin.statics.wrenches import action_force


def closes(equation, values) -> bool:
    """Whether a sum is zero; what is not known may be in it only where it cancels (one load at two places)."""
    known = [t for t in equation.terms if action_force(t.action, values) is not None]
    rest: dict = {}
    for t in equation.terms:
        if t not in known:
            rest[t.action.unknown] = rest.get(t.action.unknown, F(0)) + t.coefficient
    return sum((t.coefficient * action_force(t.action, values) for t in known), F(0)) == 0 and all(c == 0 for c in rest.values())


@given(drawn())
def test_no_structure_however_unsound_brings_the_program_down(problem):
    worked = work(problem)
    s = worked.soundness
    count("worked", "routes" if worked.recommended else "refused")
    if s.holds and any(found for _, found in s.found):
        assert worked.recommended is not None and worked.proof is not None
        assert worked.proof.passed, worked.proof.failures
        # Inspection may fix a sum of forces of which the first count says only that its parts are ambiguous.
        assert all(a.found for a, (_, found) in zip(worked.answers, s.found) if found)
    else:
        assert worked.recommended is None and not worked.answers


@given(drawn(SOUND))
def test_a_route_finds_what_the_full_solve_finds(problem):
    worked = work(problem)
    if worked.recommended is None:
        return
    whole = solve(worked.structure)
    for route in (worked.fewest, worked.recommended, *worked.others):
        found = [u for step in route.steps for u in step.finds]
        assert len(set(found)) == len(found) == route.count
        for step in route.steps:
            for u, value in step.values.items():
                assert value == whole[u]


@given(drawn(SOUND))
def test_each_sum_has_what_it_needs_when_its_turn_comes_and_closes_to_zero(problem):
    worked = work(problem)
    if worked.recommended is None:
        return
    zero = {u for insight in worked.structure.zero for u in insight.finds}
    for route in (worked.fewest, worked.recommended):
        known = set(zero)
        values = {u: F(0) for u in zero}
        for step in route.steps:
            held = {u for e in step.equations for u in e.unknowns}
            assert len(step.equations) == len(step.finds)
            assert held - known == set(step.finds)
            assert set(step.uses) == held & known
            known |= held
            values.update(step.values)
            assert all(closes(e, values) for e in step.equations)


@given(drawn(SOUND))
def test_two_routes_keep_their_promises(problem):
    worked = work(problem)
    if worked.recommended is None:
        return
    few, best = worked.fewest, worked.recommended
    assert few.lower <= few.count <= best.count
    assert best.cost <= few.cost
    assert few.claim == ("fewest" if few.count == few.lower else "between")
    assert sum((s.cost for s in best.steps), F(0)) == best.cost
    assert all(best.cost <= other.cost for other in worked.others)
    closing = worked.proof.closing
    if closing:
        assert closes(closing, worked.values)
        used = [(e.body.parts, e.functional) for s in best.steps for e in s.equations]
        assert (closing.body.parts, closing.functional) not in used


def truth(structure, asked):
    """The force of the rest of the world on what is asked about, from the structure as it stands; None if not all is fixed."""
    values = solve(structure)
    if asked.kind == "reaction":
        acting = [(a, 1) for a in structure.actions if a.by == GROUND and a.point == asked.point]
        acting += [(a, -1) for a in structure.actions if a.on == GROUND and a.point == asked.point and a.sense == "tension"]
    else:
        acting = [(a, 1) for a in structure.actions_on(asked.part) if a.point == asked.point and a.unknown and a.load is None]
    if not all(a.unknown in values for a, _ in acting):
        return None
    return tuple(sum((values[a.unknown] * a.direction.vector[k] / a.direction.length * way for a, way in acting if a.kind == "force"),
                     F(0)) for k in (0, 1))


@given(drawn(SOUND))
def test_answers_are_the_forces_of_the_structure_as_it_stands(problem):
    worked = work(problem)
    for answer in worked.answers:
        asked = answer.asked
        if not answer.found or asked.kind not in ("reaction", "pin"):
            continue
        true = truth(worked.apart, asked)
        if true is None:
            continue
        for c in answer.components:
            if c.sense in ("clockwise", "anticlockwise") or c.symbol.base == "M":
                continue
            if c.symbol.sub in ("x", "y") and asked.component in ("", c.symbol.sub) and c.symbol.base == asked.point:
                value = true["xy".index(c.symbol.sub)]
                assert abs(c.value) == abs(value)
                assert c.sense == _sense(value, c.symbol.sub)
            else:
                assert abs(c.value) == length(true)


def _sense(value, axis: str) -> str:
    return "zero" if value == 0 else {"x": ("left", "right"), "y": ("down", "up")}[axis][value > 0]


@given(drawn(SOUND, 2))
def test_moving_or_turning_the_figure_leaves_the_routes_as_long_and_as_dear(problem):
    # Whole forces are asked: x on the page is y after a quarter turn.
    problem = replace(problem, asked=tuple(replace(a, component="") for a in problem.asked))
    worked = work(problem)
    if worked.recommended is None:
        return
    for other in (transforms.mapped(problem, shift=(F(3), F(-2))), transforms.mapped(problem, transforms.QUARTER)):
        again = work(other)
        assert again.fewest.count == worked.fewest.count
        assert again.recommended.cost == worked.recommended.cost


@given(drawn(SOUND, 2))
def test_the_same_problem_gives_the_same_route_and_names_do_not_matter(problem):
    worked, again = work(problem), work(problem)
    other = work(transforms.renamed(problem, lambda n: f"{n}z"))
    if worked.recommended is None:
        return
    assert worked.recommended == again.recommended and worked.fewest == again.fewest and worked.others == again.others
    assert worked.answers == again.answers and worked.proof == again.proof
    assert other.recommended.cost == worked.recommended.cost
    assert [len(s.equations) for s in other.recommended.steps] == [len(s.equations) for s in worked.recommended.steps]


@given(drawn(SOUND, 2))
def test_what_is_not_asked_changes_no_answer(problem):
    whole = work(problem)
    for answer in whole.answers[1:3]:
        if answer.found:
            alone = work(replace(problem, asked=(answer.asked,)))
            assert alone.answers == (answer,) or [c.value for c in alone.answers[0].components] == [c.value for c in answer.components]
            assert alone.fewest.count <= whole.fewest.count
