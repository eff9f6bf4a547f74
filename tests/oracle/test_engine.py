"""The program's forces against those of a physics engine, for every cell of the table and for random structures."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction as F

import numpy
import pytest
from hypothesis import given

from engine import Unsettled, forces
from needed import needs
from strategies import drawn
from table import TABLE, cells_of
from tally import count
from transforms import forces as derived
from unpin.base.units import FORCE
from unpin.model.problem import GROUND
from unpin.model.values import Quantity
from unpin.statics import assemble, inspect, solve, sound

needs("mujoco")

PUSHES = ("contact", "rocker", "knife_edge", "surface")
CLOSE, ROUGHLY = 1e-5, 1e-3
"""Of the largest force: what the engine's soft constraints leave after settling, in plain structures and in random ones that
may be close to a mechanism. A wrong model is off by as much as the forces themselves."""


def compare(problem, values, structure, close=CLOSE) -> None:
    mine = {key: tuple(map(float, f)) for key, f in derived(structure, values).items() if key[0] != GROUND}
    theirs = forces(problem)
    scale = max((abs(c) for f in mine.values() for c in f), default=0) + 1
    for key, f in mine.items():
        assert key in theirs, key
        assert numpy.abs(theirs[key] - f).max() < close * scale, (key, f, theirs[key])


@pytest.mark.parametrize("cell", sorted(TABLE))
def test_forces_are_those_of_the_engine(cell):
    problem = TABLE[cell]
    structure = assemble(problem)
    assert cell in cells_of(problem)
    compare(problem, solve(structure), structure)


@pytest.mark.parametrize("cell", sorted(TABLE))
def test_forces_along_two_force_members_are_those_of_the_engine(cell):
    problem = TABLE[cell]
    structure, values = inspect(problem), solve(inspect(problem))
    theirs = forces(problem)
    at = {p.name: numpy.array([float(c) for c in p.at]) for p in problem.points}
    for two in structure.two_force:
        here, there = two.points
        force = next(u for u in structure.unknowns if u.source == two.member)
        # Everything that the rest does to the member at its first end; tension pulls it away from the other end.
        total = sum(f for (on, _, point), f in theirs.items() if on == two.member and point == here)
        way = (at[here] - at[there]) / numpy.hypot(*(at[here] - at[there]))
        assert numpy.abs(total[:2] - float(values[force.id]) * way).max() < CLOSE * (1 + abs(total).max())


@pytest.mark.parametrize("share, stands", [(F(99, 100), True), (F(101, 100), False)])
def test_a_block_tips_in_the_engine_at_the_push_for_which_its_corner_just_lifts(share, stands):
    block = TABLE["block on corners"]
    lifting = tuple(replace(c, given=(("normal", Quantity(F(0), FORCE)),)) if c.name == "A" else c for c in block.connections)
    problem = replace(block, connections=lifting, loads=tuple(replace(x, magnitude=None, name="P") if x.kind == "force" else x for x in block.loads))
    push = solve(assemble(problem))["P"]
    # By hand, moments about the other corner: the push less the equal push of the stop, 0.9 m below it, against the weight at half the width.
    assert push * F(9, 10) == 300 * F(3, 10)

    pushed = replace(block, loads=tuple(replace(x, magnitude=Quantity(push * share, FORCE)) if x.kind == "force" else x for x in block.loads))
    if stands:
        assert forces(pushed)
    else:
        with pytest.raises(Unsettled):
            forces(pushed)


@given(drawn(("none",)))
def test_random_structures_have_the_forces_of_the_engine(problem):
    structure = assemble(problem)
    soundness = sound(structure)
    if not soundness.determinate or not soundness.holds or any(r.code == "nearly_critical" for r in soundness.remarks):
        return
    values = solve(structure)
    # A surface that would have to pull is turned over, so that the engine's contact stays closed.
    pulling = {u.source for u in structure.unknowns if u.push_only and values[u.id] < 0}
    problem = replace(problem, connections=tuple(replace(c, direction=c.direction.reversed()) if c.name in pulling and c.kind in PUSHES
                                                 else c for c in problem.connections))
    structure = assemble(problem)
    try:
        compare(problem, solve(structure), structure, ROUGHLY)
        count("engine", "structures compared")
    except Unsettled:
        count("engine", "not settled")
