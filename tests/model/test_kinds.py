"""Each kind of connection states its forces and, separately, its freedoms: the two must fit."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction as F

import pytest
import sympy

from unpin.exact.number import cos_deg, sin_deg
from unpin.model import directions
from unpin.model.kinds import KINDS
from unpin.model.kinds.kind import push_direction, release_of, twist_of, wrench_of
from unpin.model.problem import Connection
from unpin.model.space import product
from unpin.model.values import Direction

AT = {"P": (F(3), F(-2)), "Q": (F(7), F(1)), "O": (F(0), F(0))}
NORMALS = {
    "right": directions.X,
    "up": directions.Y,
    "slope": Direction((F(3), F(-4)), F(5), "slope", legs=(F(3), F(-4))),
    "angle": Direction((cos_deg(F(25)), sin_deg(F(25))), F(1), "angle", angle=F(25), base=(F(1), F(0)), turn=(F(0), F(1))),
}


def connections():
    for name, kind in sorted(KINDS.items()):
        for start in ("P", "O"):
            points = (start, "Q")[: kind.ends]
            for way, normal in NORMALS.items() if kind.needs_direction else [("", None)]:
                yield pytest.param(Connection("c", name, points, ("a", "b"), normal), id=f"{name}-{start}-{way}")


@pytest.mark.parametrize("connection", list(connections()))
def test_no_force_of_a_kind_does_work_in_its_freedoms(connection):
    kind = KINDS[connection.kind]
    for push in kind.pushes:
        for free in kind.freedoms:
            assert product(wrench_of(push, connection, AT), twist_of(free, connection, AT)) == 0


@pytest.mark.parametrize("connection", list(connections()))
def test_forces_and_freedoms_together_fill_the_plane(connection):
    kind = KINDS[connection.kind]
    assert len(kind.pushes) + len(kind.freedoms) == 3
    for rows in ([wrench_of(p, connection, AT) for p in kind.pushes], [twist_of(f, connection, AT) for f in kind.freedoms]):
        if rows:
            assert sympy.Matrix([[sympy.Float(str(float(c)), 15) for c in row] for row in rows]).rank(iszerofunc=lambda x: abs(x) < 1e-9) \
                == len(rows)


@pytest.mark.parametrize("connection", list(connections()))
def test_letting_one_force_go_does_work_in_that_force_alone(connection):
    kind = KINDS[connection.kind]
    for push in kind.pushes:
        motion = release_of(push, connection, AT)
        assert product(wrench_of(push, connection, AT), motion) > 0
        for other in kind.pushes:
            if other != push:
                assert product(wrench_of(other, connection, AT), motion) == 0


@pytest.mark.parametrize("name", sorted(KINDS))
def test_a_kind_has_its_facts_in_order(name):
    kind = KINDS[name]
    assert kind.name == name and kind.symbol
    assert len(kind.stops) == len(kind.pushes) and len(set(kind.pushes)) == len(kind.pushes)
    assert kind.needs_direction == ("normal" in kind.pushes)
    assert (kind.ends == 2) == ("line" in kind.pushes) == kind.axial
    assert not kind.push_only or kind.pushes == ("normal",)


def test_the_force_of_a_link_pulls_its_first_end_towards_the_second():
    link = Connection("l", "link", ("P", "Q"), ("a", "b"))
    assert push_direction("line", link, AT).vector == (F(4), F(3))
    back = replace(link, points=("Q", "P"))
    assert push_direction("line", back, AT).vector == (F(-4), F(-3))
