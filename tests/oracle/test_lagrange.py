"""The program's forces against multipliers of differentiated constraints: a second oracle, and the one for cords."""

from __future__ import annotations

import numpy
import pytest
from hypothesis import given

from build import UP, force, number, support, weight
from known import released
from lagrange import multipliers
from needed import needs
from strategies import drawn
from table import GIVEN, STRUNG, TABLE
from transforms import forces as derived
from unpin.model.kinds import KINDS
from unpin.model.problem import GROUND, Connection, Cord, Part, Point, Problem, Stop
from unpin.statics import assemble, solve, sound

needs("numpy")
CLOSE = 1e-5


def compare(problem, close=CLOSE) -> None:
    structure = assemble(problem)
    values = solve(structure)
    tensions, forces, left = multipliers(problem)
    mine = derived(structure, values)
    scale = max(abs(float(v)) for v in values.values()) + 1
    assert left < close
    checked = 0
    for name, tension in tensions.items():
        unknown = next(u for u in structure.unknowns if u.source == name and u.axial)
        assert abs(float(values[unknown.id]) - tension) < close * scale, name
        checked += 1
    # Where a pin and a support of one name act on one part the program's key stands for both: told apart by the others.
    partners: dict = {}
    for a in structure.actions:
        partners.setdefault((a.on, a.source, a.point), set()).add(a.by)
    for key, f in forces.items():
        if len(partners.get(key, ())) == 1:
            assert numpy.abs(numpy.array([float(c) for c in mine[key]]) - f).max() < close * scale, (key, mine[key], f)
            checked += 1
    assert checked


@pytest.mark.parametrize("cell", sorted(TABLE))
def test_forces_are_multipliers(cell):
    compare(TABLE[cell])


@pytest.mark.parametrize("cell", sorted(GIVEN))
def test_what_was_given_comes_out_as_a_multiplier_once_the_load_found_from_it_is_put_in(cell):
    """The oracle knows of no given force: it is told the load that was found and must come out with the gift."""
    problem = GIVEN[cell]
    values = solve(assemble(problem))
    (gift,) = (c for c in problem.connections if c.given)
    ((push, size),) = gift.given

    freed = released(problem, values)
    compare(freed)
    structure = assemble(freed)
    unknown = [u for u in structure.unknowns if u.source == gift.name][KINDS[gift.kind].pushes.index(push)]

    assert float(solve(structure)[unknown.id]) == pytest.approx(float(size.value), rel=1e-9)


@pytest.mark.parametrize("cell", sorted(STRUNG))
def test_the_couples_that_a_belt_needs_give_its_two_tensions_as_multipliers(cell):
    problem = STRUNG[cell]
    freed = released(problem, solve(assemble(problem)))
    tensions, _, left = multipliers(freed)

    assert left < CLOSE
    assert tensions == pytest.approx({c.name: float(c.given.value) for c in problem.cords}, rel=CLOSE)


@given(drawn(("none",)))
def test_random_structures_have_the_multipliers_for_forces(problem):
    soundness = sound(assemble(problem))
    nearly = {"nearly_critical", "nearly_concurrent"} & {r.code for r in (*soundness.remarks, *soundness.causes)}
    if soundness.determinate and soundness.unknowns and not nearly:
        compare(problem, close=1e-3)


def hoist(points: dict, parts: list, *things, cords) -> Problem:
    at = {n: tuple(map(number, xy)) for n, xy in points.items()}
    made = [t(at) if callable(t) else t for t in things]
    return Problem(tuple(Point(n, xy) for n, xy in at.items()), tuple(parts), tuple(c for c in made if isinstance(c, Connection)),
                   tuple(x for x in made if not isinstance(x, Connection)), cords=tuple(cords))


def disc(name: str, centre: str, radius) -> Part:
    return Part(name, (centre,), "disc", radii=(number(radius),))


def around(centre: str, name: str, side: str, radius) -> Stop:
    return Stop(centre, name, side, number(radius))


CORDS = {
    "over a pulley on an arm": hoist(
        {"A": (0, 0), "B": (2, 0), "C": (3, 0), "G": (2, -2), "W": (0, 1), "K": ("3.2", -1)},
        [Part("arm", ("A", "B", "C")), disc("pulley", "C", "0.2"), Part("sack", ("K",), "block")],
        Connection("C", "pin", ("C",), ("arm", "pulley")), support("pin", "A", "arm"), Connection("BG", "link", ("B", "G"), ("arm", GROUND)),
        weight(500, "K", "sack"), cords=[Cord("T", (Stop("W", GROUND), around("C", "pulley", "over", "0.2"), Stop("K", "sack")))]),
    "under one and over another": hoist(
        {"A": (0, 0), "P": (1, 0), "Q": (3, "0.5"), "E": (4, 0), "W": (0, 2), "K": ("3.25", -2), "H": (0, 1)},
        [Part("beam", ("A", "P", "Q", "E")), disc("small", "P", "0.1"), disc("large", "Q", "0.25"), Part("sack", ("K",), "block")],
        Connection("P", "pin", ("P",), ("beam", "small")), Connection("Q", "pin", ("Q",), ("beam", "large")), support("pin", "A", "beam"),
        Connection("EH", "link", ("E", "H"), ("beam", GROUND)), weight(300, "K", "sack"),
        cords=[Cord("T", (Stop("W", GROUND), around("P", "small", "under", "0.1"), around("Q", "large", "over", "0.25"), Stop("K", "sack")))]),
    "tied between two members": hoist(
        {"A": (0, 0), "C": (2, 3), "B": (4, 0), "D": (1, "1.5"), "E": (3, "1.5")},
        [Part("left", ("A", "D", "C")), Part("right", ("C", "E", "B"))], Connection("C", "pin", ("C",), ("left", "right")),
        support("pin", "A", "left"), support("roller", "B", "right", UP), force(200, "C", ""),
        cords=[Cord("T", (Stop("D", "left"), Stop("E", "right")))]),
    "a movable pulley": hoist(
        {"W": ("-0.3", 2), "V": ("0.3", 2), "C": (0, 0)}, [disc("pulley", "C", "0.3")], weight(600, "C", "pulley"),
        cords=[Cord("T", (Stop("W", GROUND), around("C", "pulley", "under", "0.3"), Stop("V", GROUND)))]),
}

@pytest.mark.parametrize("name", sorted(CORDS))
def test_the_tension_of_a_cord_is_the_multiplier_of_its_length(name):
    compare(CORDS[name])
