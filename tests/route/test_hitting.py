"""The smallest set that meets some sets, against trying every set; and what may be believed when the work was spent first."""

from __future__ import annotations

from itertools import combinations

from hypothesis import given, settings
from hypothesis import strategies as st

from unpin.route.hitting import smallest_hit

MEMBERS = 9

families = st.lists(st.integers(min_value=1, max_value=(1 << MEMBERS) - 1), max_size=14)


def fewest_by_trying(marks: list[int]) -> int:
    """The size of the smallest set that meets all, every set tried from the small ones on."""
    for size in range(MEMBERS + 1):
        for chosen in combinations(range(MEMBERS), size):
            taken = sum(1 << k for k in chosen)
            if all(taken & m for m in marks):
                return size
    raise AssertionError("no set meets an empty one")


@settings(max_examples=200)
@given(families)
def test_the_set_found_meets_every_mark_and_none_smaller_does(marks):
    hit = smallest_hit(marks)
    assert all(hit.found & m for m in marks)
    assert hit.found.bit_count() == hit.lower == fewest_by_trying(marks)


@given(families)
def test_a_size_known_to_be_needed_changes_no_size(marks):
    needed = fewest_by_trying(marks)
    for floor in range(needed + 1):
        hit = smallest_hit(marks, floor)
        assert hit.found.bit_count() == needed
        assert all(hit.found & m for m in marks)


@given(families, st.integers(min_value=0, max_value=60))
def test_when_the_work_is_spent_first_the_bound_is_none_too_high(marks, work):
    hit = smallest_hit(marks, work=work)
    assert hit.lower <= fewest_by_trying(marks)
    if hit.found is None:
        assert hit.work > work
    else:
        assert hit.found.bit_count() == hit.lower


@given(families)
def test_just_the_work_it_took_is_enough_and_less_is_not(marks):
    hit = smallest_hit(marks)
    assert smallest_hit(marks, work=hit.work) == hit
    if hit.work:
        assert smallest_hit(marks, work=hit.work - 1).found is None


@given(families, st.randoms(use_true_random=False))
def test_the_order_and_repeats_of_the_marks_do_not_matter(marks, chance):
    mixed = marks + marks[:3]
    chance.shuffle(mixed)
    assert smallest_hit(mixed) == smallest_hit(marks)


def test_the_lines_of_the_plane_of_seven_points_need_three():
    # The Fano plane's smallest blocking set is one of its lines (common knowledge of finite geometry; checked by trying as well).
    lines = [sum(1 << (k + d) % 7 for d in (0, 1, 3)) for k in range(7)]
    hit = smallest_hit(lines)
    assert hit.found.bit_count() == fewest_by_trying(lines) == 3
    assert hit.found in lines
