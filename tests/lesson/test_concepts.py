"""What a problem teaches is found in its solution: each idea where a person sees it, and nowhere else."""

import pytest

from lessons import EXAMPLES, worked, worked_text
from unpin.lesson.build import chosen_route
from unpin.lesson.concepts import CODES, concepts, kinds_of_connection
from unpin.lesson.effort import Pace, minutes
from unpin.words.sentences import catalogue

BEAM = """
points: {A: [0, 0], B: A right 2, C: A right 5}
members: {beam: A B C}
supports: {A: pin, C: roller}
loads: [30 N at B down]
find: [C]
"""


def taught(w):
    return set(concepts(w, chosen_route(w, "")))


@pytest.mark.parametrize(("name", "those"), [
    ("shop-sign", {"off_figure", "two_force"}), ("lantern-ring", {"ring"}), ("mason-plank", {"push_only", "balanced"}),
    ("bus-shelter", {"zero", "section"}), ("foot-bridge", {"section"}), ("cellar-hatch", {"three_force"}),
    ("crossing-signal", {"weld", "couple", "built_in"}), ("boat-davit", {"tackle", "with_discs", "cord"}),
    ("kiln-damper", {"slot", "pair", "unknown_load"}), ("cider-press", {"collar", "unknown_load"}), ("landing-stage", {"spread_split"}),
    ("garden-arch", {"block"}), ("loading-ramp", {"bent"}), ("orchard-ladder", {"own_route"}), ("picnic-table", {"indirect"}),
    ("lock-gate", {"slope"}), ("jacking-wedge", {"guide"}),
])
def test_an_example_teaches_what_it_was_written_for(name, those):
    assert those <= taught(worked(name))


def test_a_simple_beam_teaches_none_of_the_harder_ideas():
    assert taught(worked_text(BEAM)) == {"three_force"}


def test_most_ideas_have_an_example():
    seen = set().union(*(taught(worked(name)) for name in EXAMPLES))

    assert len(set(CODES) - seen) <= 3
    # A contact that opens leaves no equilibrium, so no solved problem can show it.
    assert "opens" not in seen


def test_every_idea_and_every_kind_has_its_words():
    words = catalogue("index")

    assert {f"concept.{code}" for code in CODES} == {k for k in words if k.startswith("concept.")}
    for name in EXAMPLES:
        assert {f"kind.{k}" for k in kinds_of_connection(worked(name))} <= words.keys()


def test_minutes_grow_with_bodies_and_sums_and_with_sums_solved_together():
    arch, beam = worked("garden-arch"), worked_text(BEAM)

    assert minutes(beam.recommended) == 2 + 2 + 2
    # Two bodies; a block of two, then two more sums.
    assert minutes(arch.recommended, Pace(read=1, body=10, sum=100, more_in_block=1000)) == 1 + 20 + 400 + 2000


def test_the_couple_of_a_built_in_end_is_no_load_and_a_wheel_no_pulley():
    post = "points: {A: [0, 0], B: [0, 2]}\nmembers: {post: A B}\nsupports: {A: fixed}\nloads: [3 N at B right]\nfind: [A]\n"
    wheel = "points: {C: [0, 0]}\ndiscs: {pipe: 0.2 at C}\ncontacts: {J: ground pushes pipe at 60 deg above right, K: ground pushes pipe at 30 deg above left}\n" \
        "loads: [weight of pipe 600 N]\nfind: [J, K]\n"

    assert "couple" not in taught(worked_text(post)) and "built_in" in taught(worked_text(post))
    assert "disc_alone" not in taught(worked_text(wheel))
