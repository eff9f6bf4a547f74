"""A guide: a block built on the member that slides between two hatched rails and cannot turn."""

from __future__ import annotations

from unpin.draw.geometry import Spot
from unpin.draw.scene import Path
from unpin.draw.symbols.ground import DEPTH, ground
from unpin.draw.symbols.symbol import Frame, Symbol

BLOCK, HALF, CLEAR = 6.2, 16.0, 7.6


def guide(at: Spot, up: Spot, owner: str, grounded: bool = True) -> Symbol:
    """`up`: square to the rails."""
    f, back = Frame(at, up), Frame(at, (-up[0], -up[1]))
    block = Path(
        (f.spot(-BLOCK - 2, -BLOCK), f.spot(BLOCK + 2, -BLOCK), f.spot(BLOCK + 2, BLOCK), f.spot(-BLOCK - 2, BLOCK)),
        "symbol",
        owner,
        closed=True,
    )
    if grounded:
        rails = (*ground(f, -CLEAR, HALF, owner), *ground(back, -CLEAR, HALF, owner))
    else:
        rails = tuple(Path((f.spot(-HALF, y), f.spot(HALF, y)), "ground", owner) for y in (-CLEAR, CLEAR))
    outer = CLEAR + (DEPTH if grounded else 0.6)
    room = (
        f.strip((-HALF, -(CLEAR + outer) / 2), (HALF, -(CLEAR + outer) / 2), (outer - CLEAR) / 2 + 0.6),
        f.strip((-HALF, (CLEAR + outer) / 2), (HALF, (CLEAR + outer) / 2), (outer - CLEAR) / 2 + 0.6),
        f.strip((-BLOCK, 0), (BLOCK, 0), BLOCK + 0.8),
    )
    return Symbol((*rails, block), room, f.box(HALF, -outer, outer), "guide_support")
