"""Counts what the random structures of a session were made of, so that a kind that is never drawn is seen."""

from __future__ import annotations

from collections import Counter

COUNTS: dict[str, Counter] = {}


def count(table: str, *names: str) -> None:
    COUNTS.setdefault(table, Counter()).update(names)


def lines() -> list[str]:
    return [f"{table}: " + ", ".join(f"{name} {n}" for name, n in sorted(c.items())) for table, c in sorted(COUNTS.items())]
