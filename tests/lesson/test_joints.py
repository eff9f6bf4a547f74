"""Large trusses: joint after joint in short, no more drawing than is read; smaller ones in full."""

from __future__ import annotations

import pytest

from unpin.lesson.build import build
from unpin.lesson.nodes import Block, Drawing, Paragraph, Working, drawings, walk
from unpin.read import read_text
from unpin.route.work import work


def footway(panels: int) -> str:
    """A footway on triangles, of four bars a panel less one."""
    lower, upper = [f"L{k}" for k in range(panels + 1)], [f"U{k}" for k in range(panels)]
    points = "".join(f"  L{k}: [{4 * k}, 0]\n" for k in range(panels + 1)) + "".join(f"  U{k}: [{4 * k + 2}, 3]\n" for k in range(panels))
    zigzag = "-".join(f"L{k}-U{k}" for k in range(panels)) + f"-L{panels}"
    loads = "".join(f"  - {10 + k % 3} kN at L{k} down\n" for k in range(1, panels))
    return (f"title: Footway\nunits: m, kN\npoints:\n{points}links:\n  - {'-'.join(lower)}\n  - {'-'.join(upper)}\n  - {zigzag}\n"
            f"supports: {{L0: pin, L{panels}: roller}}\nloads:\n{loads}find: [everything]\n")


@pytest.fixture(scope="module")
def large():
    return build(work(read_text(footway(12)).problem))


@pytest.fixture(scope="module")
def small():
    return build(work(read_text(footway(8)).problem))


def joints_of(lesson):
    return [s for s in lesson.sections if s.kind == "body"][1:]


def steps_in(section) -> set[str]:
    return {n.name for n in section.children if isinstance(n, Block)}


def test_after_the_first_joints_of_a_large_truss_each_has_its_diagram_its_sums_and_what_they_give(large):
    joints = joints_of(large)
    assert all({"count", "sum", "solve", "result"} <= steps_in(s) for s in joints[:3])
    for s in joints[3:]:
        nodes = [n for n in walk(s.children) if not isinstance(n, Paragraph)]
        assert isinstance(nodes[0], Drawing) and all(isinstance(n, Working) for n in nodes[1:])
        assert all({line.name for line in n.lines} <= {"write", "result"} for n in nodes[1:])


def test_nothing_that_is_found_is_lost_in_short(large):
    worked = work(read_text(footway(12)).problem)
    told = [line for s in large.sections if s.kind == "body" for n in walk(s.children) if isinstance(n, Working)
            for line in n.lines if line.name == "result"]
    assert len(told) == sum(len(step.finds) for step in worked.recommended.steps)


def test_it_is_said_once_that_the_rest_is_in_short(large, small):
    for lesson, times in ((large, 1), (small, 0)):
        codes = [n.text.code for s in lesson.sections for n in walk(s.children) if isinstance(n, Paragraph)]
        assert codes.count("joints.short") == times


def test_a_truss_of_thirty_one_bars_is_told_in_full_and_drawn_taken_apart(small):
    assert all({"count", "sum", "solve", "result"} <= steps_in(s) for s in joints_of(small))
    assert "apart" in [d.which for d in drawings(small)]


def test_a_large_truss_is_not_drawn_taken_apart(large):
    assert "apart" not in [d.which for d in drawings(large)]
