"""Bodies: a member as a robust outlined bar, a link as a thin one, solid where it is in compression; a displaced body as a
dashed outline."""

from __future__ import annotations

import itertools

from unpin.draw.geometry import Spot, box_of, grown
from unpin.draw.scene import Path
from unpin.draw.symbols.symbol import Symbol

HALF = {"member": 3.8, "link": 2.0, "strut": 2.0, "ghost": 0.6}
ROLES = {"member": ("edge", "flesh"), "link": ("link-edge", "link-flesh"), "strut": ("link-edge",), "ghost": ("ghost-edge",)}


def box(chain: tuple[Spot, ...], owner: str) -> Symbol:
    """A block by its outline; a label may stand within."""
    room = tuple((a, b, 0.9) for a, b in itertools.pairwise(chain))
    return Symbol((Path(chain[:-1], "block", owner, closed=True),), room, box_of(chain), "block")


def bar(chains: tuple[tuple[Spot, ...], ...], owner: str, look: str = "member") -> Symbol:
    """A body along its chains of spots; the outline of all of them is drawn before the filling, so that they are one."""
    marks = tuple(Path(chain, role, owner) for role in ROLES[look] for chain in chains)
    room = tuple((a, b, HALF[look]) for chain in chains for a, b in itertools.pairwise(chain))
    return Symbol(marks, room, grown(box_of(s for c in chains for s in c), HALF[look]), look)
