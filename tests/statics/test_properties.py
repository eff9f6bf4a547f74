"""What must hold of every structure: balance, pairs, and indifference to where, how large and in what order it is drawn."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction as F

from hypothesis import given
from hypothesis import strategies as st

import transforms
from strategies import SOUND, drawn
from transforms import MIRROR, QUARTER, THREE_FOUR_FIVE, forces, mapped, turned
from unpin.exact.number import sqrt
from unpin.model.directions import X, Y
from unpin.model.equation import Functional
from unpin.model.problem import GROUND
from unpin.model.space import product
from unpin.statics import assemble, inspect, isolate, solve, sum_about
from unpin.statics.equation import row_of, write
from unpin.statics.isolate import neighbours
from unpin.statics.prove import balances
from unpin.statics.wrenches import action_force, load_wrench, unit_wrench

CENTRES = ((F(0), F(0)), (F(7), F(-1, 2)), (F(-3), F(5)))


def solved(problem):
    structure = assemble(problem)
    return structure, solve(structure)


def complete(structure, values) -> bool:
    return values is not None and len(values) == len(structure.unknowns)


@given(drawn())
def test_each_unknown_is_a_pair_of_equal_and_opposite_forces(problem):
    for structure in (assemble(problem), inspect(problem)):
        bodies = {b.name for b in structure.bodies}
        for u in [u for u in structure.unknowns if u.drives == "connection"]:
            first, second = (structure.action(a) for a in u.actions)
            assert first.pair == second.id and second.pair == first.id
            assert all(x + y == 0 for x, y in zip(unit_wrench(first), unit_wrench(second)))
            assert {first.on, second.on} <= bodies | {GROUND}
            assert sum(u.id in isolate(structure, [b]).unknowns for b in bodies) == len({first.on, second.on} & bodies) \
                or first.on == second.on
        assert all(a.on in bodies for a in structure.actions if not a.unknown)
        assert len({a.id for a in structure.actions}) == len(structure.actions)
        assert len({u.id for u in structure.unknowns}) == len(structure.unknowns)


@given(drawn(), st.data())
def test_the_free_body_of_a_group_shows_what_its_bodies_show_less_what_cancels(problem, data):
    structure = inspect(problem)
    names = [b.name for b in structure.bodies]
    if not names:
        return
    touching = neighbours(structure)
    group = {data.draw(st.sampled_from(names))}
    for _ in range(data.draw(st.integers(0, 3))):
        near = sorted({n for g in group for n in touching[g]} - group)
        if near:
            group.add(data.draw(st.sampled_from(near)))
    whole = isolate(structure, group)
    for functional in (Functional("along", direction=X), Functional("about", at=CENTRES[1])):
        row = row_of(functional)
        there, here = {}, {}
        for total, bodies in ((there, [isolate(structure, [n]) for n in group]), (here, [whole])):
            for a in (a for b in bodies for a in b.actions):
                key = a.unknown or a.id
                total[key] = total.get(key, F(0)) + product(row, unit_wrench(a) if a.unknown else load_wrench(a))
        assert {k for k, v in there.items() if v != 0} == {k for k, v in here.items() if v != 0}
        assert all(there[k] == v for k, v in here.items())


@given(drawn(SOUND))
def test_every_body_balances_about_three_centres_not_in_line(problem):
    structure, values = solved(problem)
    if not complete(structure, values):
        return
    assert all(b.holds for b in balances(structure, values))
    names = [b.name for b in structure.bodies]
    for group in [[n] for n in names] + [names]:
        body = isolate(structure, group)
        if body.kind == "pin":
            continue
        for at in CENTRES:
            total = sum((t.coefficient * action_force(t.action, values) for t in sum_about(body, "", at).terms), F(0))
            assert total == 0


@given(drawn(), st.data())
def test_the_terms_of_a_sum_are_the_functional_applied_to_each_force(problem, data):
    structure = data.draw(st.sampled_from([assemble(problem), inspect(problem)]))
    if not structure.bodies:
        return
    names = [b.name for b in structure.bodies]
    body = isolate(structure, data.draw(st.sampled_from([[n] for n in names] + [names])))
    slanted = [a.direction for a in structure.actions if a.direction][:4]
    points = list(problem.coordinates.items())
    functional = data.draw(st.one_of(
        st.sampled_from([X, Y, X.reversed(), *slanted]).map(lambda d: Functional("along", direction=d)),
        st.sampled_from([("", CENTRES[2]), *points]).map(lambda p: Functional("about", point=p[0], at=p[1]))))
    equation = write(body, functional)
    unit = F(1) if functional.kind == "about" else functional.direction.length
    for a in body.actions:
        terms = [t for t in equation.terms if t.action.id == a.id]
        size = structure.unknown(a.unknown).scale if a.unknown else a.direction.length if a.direction else F(1)
        assert sum((t.coefficient for t in terms), F(0)) == product(row_of(functional), unit_wrench(a)) / size / unit
        assert len(terms) <= 2
        for t in terms:
            value = F(t.sign)
            for f in t.factors:
                assert f.value > 0
                value = value * f.value
            assert value == t.coefficient != 0
    assert all(t.action in body.actions for t in equation.terms)


def same_forces(structure, values, other, others, force=lambda f: f, name=lambda n: n):
    mine, theirs = forces(structure, values), forces(other, others)
    assert {tuple(map(name, key)) for key in mine} == theirs.keys()
    for key, there in mine.items():
        assert all(x == y for x, y in zip(force(there), theirs[tuple(map(name, key))])), key


@given(drawn(SOUND, 2), st.sampled_from([("quarter", QUARTER, 1), ("slope", THREE_FOUR_FIVE, 1), ("mirror", MIRROR, -1)]))
def test_turning_or_mirroring_the_figure_turns_or_mirrors_the_forces(problem, how):
    _, matrix, hand = how
    structure, values = solved(problem)
    if complete(structure, values):
        same_forces(structure, values, *solved(mapped(problem, matrix)), lambda f: (*turned(matrix, f[:2]), f[2] * hand))


@given(drawn(SOUND, 2), st.sampled_from([(F(5), F(-7, 3)), (sqrt(F(2)), F(1))]))
def test_moving_the_figure_changes_no_force(problem, shift):
    structure, values = solved(problem)
    if complete(structure, values):
        same_forces(structure, values, *solved(mapped(problem, shift=shift)))


@given(drawn(SOUND, 2), st.sampled_from([F(-1), F(2), F(3, 7)]), st.sampled_from([F(1), F(12, 5)]))
def test_scaling_the_loads_scales_the_forces_and_scaling_the_figure_only_the_couples(problem, force, size):
    structure, values = solved(problem)
    if complete(structure, values):
        same_forces(structure, values, *solved(mapped(problem, size=size, force=force)),
                    lambda f: (f[0] * force, f[1] * force, f[2] * force * size))


@given(drawn(SOUND, 2))
def test_effects_of_loads_add_up(problem):
    structure, values = solved(problem)
    if not complete(structure, values):
        return
    # All loads stay where they are, so that the same pins stand by themselves; all but one are set to nothing.
    total: dict = {}
    for one in range(max(sum(x.magnitude is not None or bool(x.stretches) for x in problem.loads), 1)):
        loads = tuple(x if k == one else _nothing(x) for k, x in enumerate(problem.loads))
        part, share = solved(replace(problem, loads=loads))
        for key, f in forces(part, share).items():
            total[key] = tuple(a + b for a, b in zip(total[key], f)) if key in total else f
    mine = forces(structure, values)
    assert all(x == y for key, f in mine.items() for x, y in zip(f, total[key]))


def _nothing(load):
    if load.stretches:
        none = [replace(s, start_intensity=replace(s.start_intensity, value=F(0)), end_intensity=replace(s.end_intensity, value=F(0)))
                for s in load.stretches]
        return replace(load, stretches=tuple(none))
    return replace(load, magnitude=replace(load.magnitude, value=F(0))) if load.magnitude else load


@given(drawn(SOUND, 2))
def test_names_are_only_names(problem):
    def new(name: str) -> str:
        return f"pin {_other(name[4:])}" if name.startswith("pin ") else (name if name in ("", GROUND) else _other(name))

    structure, values = solved(problem)
    if complete(structure, values):
        same_forces(structure, values, *solved(transforms.renamed(problem, _other)), name=new)


def _other(name: str) -> str:
    return f"n{name[::-1]}"


@given(drawn(SOUND, 2))
def test_the_order_of_the_file_changes_signs_of_unknowns_but_no_force(problem):
    structure, values = solved(problem)
    if complete(structure, values):
        same_forces(structure, values, *solved(transforms.reordered(problem)))
