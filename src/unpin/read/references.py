"""Where names stand: each place of a file that gives a name to something, or means something by its name.

They are noted while the file is read, at the moment a name is looked up, so that what a name means is decided once.
"""

from __future__ import annotations

from unpin.base.record import record
from unpin.read.tree import Scalar


@record
class Reference:
    """`kind`: the section that gives the name; `start`, `end`: columns in the text of `scalar`, from 0. `declares`: the name
    is given here; `made`: it is given, and follows from other names (a link in a list is named by its ends)."""

    kind: str
    name: str
    scalar: Scalar
    start: int
    end: int
    declares: bool = False
    made: bool = False


def section_of(kind: str) -> str:
    """The section that names a part of a kind."""
    return {"disc": "discs", "block": "blocks", "box": "blocks"}.get(kind, "members")
