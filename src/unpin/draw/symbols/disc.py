"""A disc: a wheel, pulley or drum as a light circle, the smaller rims of a stepped one within it."""

from __future__ import annotations

import itertools

from unpin.draw.geometry import Spot, arc
from unpin.draw.scene import circle
from unpin.draw.symbols.symbol import Strip, Symbol


def disc(at: Spot, radii: tuple[float, ...], owner: str) -> Symbol:
    """`radii` in pt. Only the rims take room: a label may stand within."""
    sizes = sorted(radii, reverse=True)
    r = sizes[0]
    marks = tuple(circle(at, size, "disc" if n == 0 else "rim", owner) for n, size in enumerate(sizes))
    room = tuple(strip for size in sizes for strip in rim(at, size))
    return Symbol(marks, room, (at[0] - r, at[1] - r, at[0] + r, at[1] + r), "disc")


def rim(at: Spot, radius: float) -> tuple[Strip, ...]:
    spots = arc(at, radius, 0, 360, 20)
    return tuple((a, b, 0.9) for a, b in itertools.pairwise(spots))
