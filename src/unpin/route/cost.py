"""What a step costs a person, in hundredths of a plain sum. One table, a reason beside every number.

The numbers are ours (common practice, no source): they were set so that the recommended routes of published examples
read like their authors' routes, and are handed in, so that a teacher may have another table.
"""

from __future__ import annotations

from unpin.base.record import record


@record
class CostTable:
    sum: int = 100  # one scalar sum written down
    term: int = 6  # each term is one more thing to get right
    arm: int = 4  # a moment term has an arm to read off
    reused: int = 8  # a value found earlier comes back in, with whatever slip it carries
    share: int = 8  # a sine, cosine or slope ratio: which side is next to the angle?
    new_body: int = 35  # another free-body diagram to draw
    part: int = 0  # one part: what everybody draws first
    whole: int = 0  # the whole: reactions before taking apart
    pin: int = 5  # a pin: two sums only
    section: int = 25  # one side of a section: must be thought of
    few_pins: int = 70  # two or three pins cut out together: neither a joint nor a section
    group: int = 60  # some parts together that are no side of a section
    each_more: int = 6  # every further part in a group
    passing: int = 10  # at a centre, an unknown that acts elsewhere and only aims at it: that it drops out must be seen
    off_body: int = 30  # a labelled centre that is not on the body
    unlabelled: int = 240  # a centre whose place has to be found first, dearer than a further sum of several terms on a body of its own
    slanted: int = 25  # an axis along a member, not x or y
    slanted_free: int = 60  # an axis along nothing in the figure
    block: int = 130  # two sums solved together cost about three, terms included; each further sum as much again


DEFAULT = CostTable()
