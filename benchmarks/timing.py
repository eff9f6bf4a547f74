"""How long a piece of work takes."""

from __future__ import annotations

import time


def times(run, repeats: int) -> list[float]:
    """Milliseconds of each of some runs."""
    out = []
    for _ in range(repeats):
        start = time.perf_counter()
        run()
        out.append((time.perf_counter() - start) * 1000)
    return out
