"""The ground: a line with hatching behind it (after ISO 3952, frame)."""

from __future__ import annotations

from unpin.draw.scene import Mark, Path
from unpin.draw.symbols.symbol import Frame

DEPTH = 4.2


def ground(frame: Frame, level: float, half: float, owner: str) -> tuple[Mark, ...]:
    """A ground line `half` pt to each side at height `level` of the frame, hatched below."""
    count = max(3, round(2 * half / 4.4))
    step = 2 * half / count
    strokes = [
        Path(
            (frame.spot(-half + step * (k + 0.95), level), frame.spot(-half + step * (k + 0.95) - DEPTH, level - DEPTH)),
            "hatch",
            owner,
        )
        for k in range(count)
    ]
    return (*strokes, Path((frame.spot(-half, level), frame.spot(half, level)), "ground", owner))
