"""A body of no size cannot be turned, so what holds it carries no couple."""

import unpin

TOGGLE = """
points: {{K: [0, 0], O: 1 from K at 10 deg below left, S: 1 from K at 10 deg below right}}
letters: {{Q: unknown}}
links: [O-K, K-S]
{block}
supports: {{O: pin, S: {support}}}
loads: [1000 N left at S{on}, Q down at K]
find: [Q]
"""


def test_a_block_in_a_guide_needs_no_couple_and_gives_the_force_of_a_toggle():
    """Q = 2 P tan 10° (J. P. Den Hartog, "Mechanics", Problem 31)."""
    worked = unpin.solve(unpin.loads(TOGGLE.format(block="blocks: {slider: at S}", support="guide along right", on=" on slider")))

    (answer,) = unpin.as_data(worked)["answers"]

    assert worked.soundness.determinate
    assert abs(answer["value"] - 352.654) < 1e-3


def test_a_pin_where_only_links_meet_is_guided_in_the_same_way():
    worked = unpin.solve(unpin.loads(TOGGLE.format(block="", support="guide along right", on="")))

    assert worked.soundness.determinate


def test_a_block_that_is_built_in_is_held_in_place_and_no_more():
    problem = unpin.loads("points: {A: [0, 0], B: [1, 1]}\nlinks: [A-B]\nblocks: {b: at A}\nsupports: {A: fixed, B: roller}\nloads: [5 N at A right]\nfind: [A-B]")

    assert {c.kind for c in problem.connections if c.name == "A"} == {"pin"}
