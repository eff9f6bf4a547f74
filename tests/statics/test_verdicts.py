"""The four statements on soundness against an equilibrium matrix of the test's own, in flint's exact rationals."""

from __future__ import annotations

import flint
from hypothesis import given

from strategies import drawn
from tally import count
from unpin.exact.number import length, rung
from unpin.model.space import difference, product, velocity
from unpin.statics import assemble, inspect, solve, sound
from unpin.statics.goals import goals
from unpin.statics.wrenches import unit_wrench


def matrix_of(structure):
    """Sums by unknowns and their loads, moments about each body's own first force rather than the origin; None if irrational."""
    ids = [u.id for u in structure.unknowns]
    rows, right = [], []
    for body in structure.bodies:
        acting = structure.actions_on(body.name)
        x0, y0 = next((a.at for a in acting if a.kind == "force"), (0, 0))
        sums = [([0] * len(ids), [0]) for _ in range(body.rank)]
        for a in acting:
            if a.kind == "couple":
                three = (0, 0, a.turn)
            else:
                dx, dy = a.direction.vector
                three = (dx, dy, (a.at[0] - x0) * dy - (a.at[1] - y0) * dx)
            size = a.share if a.unknown else a.value.value / (a.direction.length if a.direction else 1)
            for (row, b), c in zip(sums, three):
                if a.unknown:
                    row[ids.index(a.unknown)] += c * size
                else:
                    b[0] -= c * size
        rows += [row for row, _ in sums]
        right += [b[0] for _, b in sums]
    if any(rung(v) > 1 for row in rows for v in row) or any(rung(b) > 1 for b in right):
        return None
    def q(v):
        return flint.fmpq(v.numerator, v.denominator)
    return [[q(v) for v in row] for row in rows], [q(b) for b in right], ids


def rank(rows) -> int:
    return flint.fmpq_mat(rows).rank() if rows and rows[0] else 0


@given(drawn(numbers=("rational",)))
def test_freedoms_self_stresses_and_balance_agree_with_exact_ranks(problem):
    structure = assemble(problem)
    made = matrix_of(structure)
    if made is None:
        return
    rows, right, ids = made
    soundness = sound(structure)
    r = rank(rows)
    assert len(soundness.freedoms) == len(rows) - r
    assert len(soundness.self_stresses) == len(ids) - r
    assert (soundness.unknowns, soundness.sums) == (len(ids), len(rows))
    assert soundness.sums == 3 * len(problem.parts) + 2 * sum(b.kind == "pin" for b in structure.bodies)
    assert soundness.holds == (rank([[*row, b] for row, b in zip(rows, right)]) == r)
    for asked, found in soundness.found:
        units = [[int(i == g) for i in ids] for g in goals(structure, asked)]
        assert found == (rank([*rows, *units]) == r if rows and ids else not units)
    count("verdicts", "determinate" if soundness.determinate else "",
          *(["mechanism"] if soundness.freedoms else []), *(["self-stressed"] if soundness.self_stresses else []),
          *(["both"] if soundness.freedoms and soundness.self_stresses else []), "" if soundness.holds else "no equilibrium")


@given(drawn())
def test_freedoms_and_self_stresses_differ_by_sums_less_unknowns(problem):
    s = sound(assemble(problem))
    assert len(s.freedoms) - len(s.self_stresses) == s.sums - s.unknowns


@given(drawn())
def test_in_a_motion_no_connection_does_work_and_loads_work_only_where_there_is_no_equilibrium(problem):
    structure = assemble(problem)
    s = sound(structure)
    still = (0, 0, 0)
    for freedom in s.freedoms:
        assert freedom.twists
        for u in structure.unknowns:
            power = sum(product(unit_wrench(a), freedom.twists.get(a.on, still)) for a in map(structure.action, u.actions))
            assert power == 0
        for body, centre in freedom.centres.items():
            assert all(c == 0 for c in velocity(freedom.twists[body], centre))
        if freedom.failing:
            assert not freedom.failing.unknowns and freedom.failing.terms and freedom.work != 0
    assert s.holds == all(f.work == 0 for f in s.freedoms)


@given(drawn())
def test_a_self_stress_balances_every_body_without_any_load(problem):
    structure = assemble(problem)
    for stress in sound(structure).self_stresses:
        for body in structure.bodies:
            total = [0, 0, 0]
            for a in structure.actions_on(body.name):
                if a.unknown in stress.values:
                    total = [t + w * stress.values[a.unknown] for t, w in zip(total, unit_wrench(a))]
            assert all(t == 0 for t in total[: body.rank])


@given(drawn())
def test_what_inspection_sees_agrees_with_the_structure_as_it_stands(problem):
    structure, plain = inspect(problem), assemble(problem)
    whole = solve(plain)
    seen = solve(structure)
    assert (seen is None) == (whole is None)
    if seen is None:
        return
    for insight in structure.zero:
        for id in insight.finds:
            assert seen.get(id, 0) == 0
    for two in structure.two_force:
        acting = [a for a in plain.actions_on(two.member) if a.point == two.points[0]]
        force = next(u for u in structure.unknowns if u.source == two.member)
        if all(a.unknown in whole for a in acting) and force.id in seen:
            x, y = (sum(whole[a.unknown] * a.direction.vector[k] / a.direction.length for a in acting) for k in (0, 1))
            along = difference(*(problem.coordinates[p] for p in reversed(two.points)))
            # Tension pulls the end away from the other end.
            assert (x, y) == tuple(-seen[force.id] * c / length(along) for c in along)
