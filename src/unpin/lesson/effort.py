"""How long a problem takes a student who knows how, in minutes: one table, a reason beside each number.

The numbers are our estimate (common practice, no source): a problem of two bodies and five sums should fit a quarter of an hour of an
exam with time to read it. They are handed in, so that a teacher may have another table.
"""

from __future__ import annotations

from unpin.base.record import record
from unpin.lesson.concepts import bodies
from unpin.route.plan import Route


@record
class Pace:
    read: int = 2  # read the statement, sketch the figure
    body: int = 2  # choose a free body, draw every force on it
    sum: int = 2  # choose a sum, write it, solve it for its one unknown
    more_in_block: int = 2  # on top, for each sum of a block: two unknowns are taken apart before either is known


USUAL = Pace()


def minutes(route: Route, pace: Pace = USUAL) -> int:
    """Estimated minutes for the route: its free bodies drawn once each, its sums."""
    sums = sum(pace.sum * len(s.equations) + (pace.more_in_block * len(s.equations) if len(s.equations) > 1 else 0) for s in route.steps)
    return pace.read + pace.body * len(bodies(route)) + sums
