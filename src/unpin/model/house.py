"""The house style: the habits of a teacher or a course that every output follows. Plain facts; `read.house` reads them from a file.

Nothing here changes what is solved: a name, a sense or a unit changes how a sum is written, never what it says.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import Literal

from unpin.base.record import record

Pattern = tuple[str, str]
"""A name by example: base and subscript, in which the letters of the example points stand for the points of the problem."""

EXAMPLES: Mapping[str, str] = {"link": "AB", "reaction": "A", "roller": "B", "couple": "A", "pin": "C", "resultant": "A"}
"""What stands for the point, or for the two ends, in the pattern of each kind of name."""


@record
class House:
    """`figures` 0, `places` None, `leading_one` None, `decimal` "" and `language` "": as the program does by itself. `places`: decimal
    places of results instead of significant figures. `units`: symbols by dimension name, empty for those of the problem.
    `unit_in_terms` False: units stand only behind results. `moments`, `x`, `y`: 1 anticlockwise, right, up is positive in a sum, else
    -1; unknown couples are drawn in the positive sense. `names`: by kind (see EXAMPLES), one pattern, or two for x and y.
    `colours`, `paper`: how pages look. `source`: the file it comes from, "" for none."""

    language: str = ""
    figures: int = 0
    places: int | None = None
    leading_one: bool = True
    decimal: str = ""
    units: Mapping[str, str] = field(default_factory=dict, hash=False)
    unit_in_terms: bool = True
    moments: Literal[1, -1] = 1
    x: Literal[1, -1] = 1
    y: Literal[1, -1] = 1
    names: Mapping[str, tuple[Pattern, ...]] = field(default_factory=dict, hash=False)
    heading: str = ""
    credit: str = ""
    colours: Literal["reader", "light", "dark"] = "reader"
    paper: str = "a4"
    source: str = ""


PLAIN = House()
"""No habits of its own."""


def filled(pattern: Pattern, kind: str, name: str) -> Pattern:
    """The pattern with the name of the point (or of both ends) put in.

    >>> filled(("R", "Ax"), "reaction", "D")
    ('R', 'Dx')
    """
    example = EXAMPLES[kind]
    base, sub = pattern
    return base.replace(example, name), sub.replace(example, name)
