"""Sections of large structures, compared with every way of parting the joints of smaller ones."""

from itertools import combinations

import pytest

from unpin.read import read_text
from unpin.route import bodies
from unpin.statics.isolate import neighbours

TRUSS = """
points: {{A: [0, 0], B: A right 2, C: A right 4, D: A right 6, E: A right 8, F: A up 2, G: B up 2, H: C up 2, I: D up 2, J: E up 2}}
links: [A-B, B-C, C-D, D-E, F-G, G-H, H-I, I-J, A-F, B-G, C-H, D-I, E-J, {braces}]
supports: {{A: pin, E: roller}}
loads: [3 kN at H down]
find: [G-H]
"""


def structure_of(braces):
    from unpin.route.work import work

    return work(read_text(TRUSS.format(braces=braces)).problem).structure


def by_hand(structure):
    """Every connected half with a connected rest that is parted from it by at most four links."""
    names = [b.name for b in structure.bodies]
    touching = neighbours(structure)
    ends = [{a.split(" ")[-1] for a in (u.id[2], u.id[3])} for u in structure.unknowns if u.axial]

    def one_piece(s):
        met, todo = set(), [next(iter(s))]
        while todo:
            n = todo.pop()
            if n not in met:
                met.add(n)
                todo += [m for m in touching[n] if m in s]
        return met == set(s)

    found = set()
    for size in range(1, len(names)):
        for some in combinations(names, size):
            side = frozenset(some)
            rest = frozenset(names) - side
            cut = sum(len({f"pin {e}" for e in pair} & side) == 1 for pair in ends)
            if cut <= bodies.SECTION_CUT and one_piece(side) and one_piece(rest):
                found.add(side)
    return found


@pytest.mark.parametrize("braces", ["F-B, G-C, C-I, D-J", "A-G, B-H, H-D, I-E", "F-B, B-H, H-D, D-J"])
def test_every_section_of_up_to_four_links_is_found_and_no_other(braces):
    structure = structure_of(braces)
    names = [b.name for b in structure.bodies]

    found = set(bodies._sections(structure, names, neighbours(structure)))

    assert by_hand(structure) == found


def test_a_k_truss_is_cut_through_four_links_of_which_three_meet():
    """The diagonals and chords of one panel take four sums after two for the reactions, as a person would do it."""
    from pathlib import Path

    from unpin.read import read_file
    from unpin.route.work import work

    problem = read_file(Path(__file__).parents[1] / "published" / "problems" / "truss-T4-K.yaml").problem

    assert work(problem).fewest.count == 6
