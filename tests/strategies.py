"""Hypothesis strategies over the random structures, and the tally of what they held."""

from __future__ import annotations

from hypothesis import strategies as st

from structures import HOLDS, MUTATIONS, structure
from tally import count
from unpin.model.problem import GROUND, Problem
from unpin.statics.pins import meetings

SOUND = ("none", "none", "turn", "straighten", "sought")


def drawn(mutations=MUTATIONS, most: int = 3, numbers=("rational", "rational", "root", "angle", "digits"), holds=HOLDS):
    """Problems of one to `most` steps and one to three loads."""
    return st.builds(structure, st.integers(0, 10**6), st.integers(1, most), st.integers(1, 3), st.sampled_from(mutations),
                     st.sampled_from(numbers), st.just(holds)).map(tallied)


def tallied(problem: Problem) -> Problem:
    """The same problem, counted."""
    for c in problem.connections:
        between = GROUND not in c.parts
        count("connections", "weld" if c.kind == "fixed" and between else c.kind + (" between" if between and c.direction else ""))
        if c.kind == "pin" and not between:
            count("supports", "on a pin" if c.parts[0] == "" else "on a part")
    for m in meetings(problem, {}).values():
        if len(m.members) > 2:
            count("pins", "three parts or more")
        elif len(m.members) == 2:
            count("pins", "two parts and more" if m.own else "two parts")
        elif m.own:
            count("pins", "links alone")
    for load in problem.loads:
        sought = load.magnitude is None and not load.stretches
        count("loads", "to be found" if sought else load.kind if not load.stretches else _shape(load), *(["on a pin"] if load.part == "" else []))
    for direction in [x.direction for x in (*problem.connections, *problem.loads) if x.direction]:
        count("directions", direction.form)
    return problem


def _shape(load) -> str:
    stretch = load.stretches[0]
    a, b = stretch.start_intensity.value, stretch.end_intensity.value
    shape = "uniform" if a == b else ("crossing" if a * b < 0 else "linear")
    return shape if stretch.per == "member" else "per projection"


EXPECTED = {
    "connections": {"pin", "fixed", "weld", "roller", "roller between", "contact", "contact between", "guide", "guide between", "link",
                    "rocker", "knife_edge", "surface", "slot", "slot between", "collar", "collar between", "sleeve", "sleeve between"},
    "supports": {"on a pin", "on a part"},
    "pins": {"two parts", "two parts and more", "three parts or more", "links alone"},
    "loads": {"force", "couple", "weight", "uniform", "linear", "crossing", "per projection", "on a pin", "to be found"},
    "directions": {"axis", "angle", "slope", "line", "square", "components"},
}
