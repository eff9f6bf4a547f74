"""The smallest set that meets every one of some sets ("marks"), sets being the bits of an integer.

It is asked whether so few suffice, then whether one more does, so a bound proved before is not proved again. Three things keep the
branching small: marks that share nothing need one member each; a member that meets no mark that another does not meet is passed
over; and what was found impossible is remembered under the marks that were left.
"""

from __future__ import annotations

from unpin.base.record import record

WORK = 1_500_000
"""Marks looked at before a search is given up; counted, never timed."""


@record
class Hit:
    """`found`: the smallest set (bits), None when the work was spent first; `lower`: so many are needed at least; `work`: what it
    took."""

    found: int | None
    lower: int
    work: int


class _Spent(Exception):
    """The work allowed is done."""


def smallest_hit(marks: list[int], floor: int = 0, work: int = WORK) -> Hit:
    """The smallest set that meets every mark; among equals one and the same whenever it is asked. `floor`: a size that is known to
    be needed."""
    rest = _minimal(marks)
    forced = sum(m for m in rest if m.bit_count() == 1)
    rest = [m for m in rest if not m & forced]
    search = _Search(work)
    count = forced.bit_count()
    size = max(floor - count, 0)
    try:
        while (found := search.within(tuple(rest), size)) is None:
            size += 1
    except _Spent:
        return Hit(None, count + size, search.spent)
    return Hit(forced | found, (forced | found).bit_count(), search.spent)


class _Search:
    def __init__(self, work: int):
        self.work, self.spent = work, 0
        self.failed: dict[tuple[int, ...], int] = {}

    def within(self, marks: tuple[int, ...], most: int) -> int | None:
        """A set of at most `most` members that meets the marks, which are minimal and in order; None if there is none."""
        if not marks:
            return 0
        self.spent += len(marks)
        if self.spent > self.work:
            raise _Spent
        if _apart(marks) > most or self.failed.get(marks, -1) >= most:
            return None
        options, barred = _worth_taking(marks)
        for bit in options:
            left = _without([m for m in marks if not m & bit], barred)
            found = self.within(tuple(left), most - 1) if 0 not in left else None
            if found is not None:
                return found | bit
            barred |= bit
        self.failed[marks] = most
        return None


def _apart(marks: tuple[int, ...]) -> int:
    """How many marks that share nothing with each other are met with, in order."""
    used = count = 0
    for m in marks:
        if not m & used:
            used |= m
            count += 1
    return count


def _worth_taking(marks: tuple[int, ...]) -> tuple[list[int], int]:
    """The members of the first mark, those that meet the most marks first, and the bits of those that are passed over."""
    met = []
    left = marks[0]
    while left:
        bit = left & -left
        left ^= bit
        met.append((sum(1 << k for k, m in enumerate(marks) if m & bit), bit))
    met.sort(key=lambda one: (-one[0].bit_count(), one[1]))
    kept: list[tuple[int, int]] = []
    barred = 0
    for meets, bit in met:
        if any(meets & ~more == 0 for more, _ in kept):
            barred |= bit
        else:
            kept.append((meets, bit))
    return [bit for _, bit in kept], barred


def _without(marks: list[int], barred: int) -> list[int]:
    """Minimal marks without the barred members, minimal again: only a mark that has become smaller can lie inside another."""
    smaller = _minimal(m & ~barred for m in marks if m & barred)
    if not smaller:
        return marks
    return sorted(smaller + [m for m in marks if not m & barred and not any(s & ~m == 0 for s in smaller)], key=_size)


def _size(mark: int) -> tuple[int, int]:
    return mark.bit_count(), mark


def _minimal(marks) -> list[int]:
    """Without those that hold another; the small ones first."""
    out: list[int] = []
    for m in sorted(set(marks), key=_size):
        if not any(s & ~m == 0 for s in out):
            out.append(m)
    return out
