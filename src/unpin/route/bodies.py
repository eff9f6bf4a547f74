"""Which free bodies the search looks at: connected sets of bodies, all of them while there are few."""

from __future__ import annotations

from collections.abc import Iterator

from unpin.model.action import Structure
from unpin.statics.isolate import neighbours

ALL_SETS_UP_TO = 10
"""Up to this many bodies every connected set is looked at; beyond, single bodies, groups of at most three, sections, the whole."""

SECTION_CUT = 3
"""A section of a large structure cuts at most this many links."""


def free_sets(structure: Structure) -> tuple[list[frozenset[str]], str]:
    """Connected sets of body names in a fixed order (small first, then as in the file), and the name of the rule used:
    `all` or `sections`."""
    names = [b.name for b in structure.bodies]
    touching = neighbours(structure)
    if len(names) <= ALL_SETS_UP_TO:
        found = set(_connected(names, touching, len(names)))
        rule = "all"
    else:
        found = set(_connected(names, touching, 3))
        found |= set(_sections(structure, names, touching))
        whole = frozenset(names)
        found.add(whole)
        rule = "sections"
    place = {n: k for k, n in enumerate(names)}
    return sorted(found, key=lambda s: (len(s), sorted(place[n] for n in s))), rule


def _connected(names: list[str], touching: dict[str, set[str]], most: int) -> Iterator[frozenset[str]]:
    """Every connected set of at most `most` bodies, each once."""
    level = {frozenset([n]) for n in names}
    while level:
        yield from level
        if len(next(iter(level))) >= most:
            return
        level = {s | {n} for s in level for b in s for n in touching[b] if n not in s}


def _sections(structure: Structure, names: list[str], touching: dict[str, set[str]]) -> Iterator[frozenset[str]]:
    """Both sides of every section that cuts a few links: take out two links, a bridge of what is left is the third."""
    where = {a.id: a.on for a in structure.actions}
    ends: dict[str, tuple[str, str]] = {}
    for u in structure.unknowns:
        on = [where[a] for a in u.actions if where[a] in touching]
        if u.axial and len(on) == 2:
            ends[u.id] = (on[0], on[1])
    links = list(ends)
    if len(links) > 80:
        return
    others: dict[str, set[str]] = {n: set() for n in names}
    for u in structure.unknowns:
        on = [where[a] for a in u.actions]
        if not u.axial and all(o in others for o in on):
            others[on[0]].add(on[1])
            others[on[1]].add(on[0])
    seen = set()
    for i, one in enumerate([None, *links]):
        for two in links[max(0, i - 1):]:
            cut = {one, two}
            for side in _bridge_sides(names, others, {k: v for k, v in ends.items() if k not in cut}):
                for s in (side, frozenset(names) - side):
                    if s and s not in seen:
                        seen.add(s)
                        yield s


def _bridge_sides(names, others, ends) -> Iterator[frozenset[str]]:
    """For each bridge among the links: the bodies on its far side (depth-first low points)."""
    graph: dict[str, list[tuple[str, str]]] = {n: [(m, "") for m in sorted(others[n])] for n in names}
    for link, (a, b) in ends.items():
        if a != b:
            graph[a].append((b, link))
            graph[b].append((a, link))
    order: dict[str, int] = {}
    low: dict[str, int] = {}
    below: dict[str, list[str]] = {}
    for root in names:
        if root in order:
            continue
        stack = [(root, "", iter(graph[root]))]
        order[root] = low[root] = len(order)
        below[root] = [root]
        while stack:
            node, came, rest = stack[-1]
            for nxt, link in rest:
                if link and link == came:
                    continue
                if nxt in order:
                    low[node] = min(low[node], order[nxt])
                    continue
                order[nxt] = low[nxt] = len(order)
                below[nxt] = [nxt]
                stack.append((nxt, link, iter(graph[nxt])))
                break
            else:
                stack.pop()
                if stack:
                    parent = stack[-1][0]
                    low[parent] = min(low[parent], low[node])
                    below[parent] += below[node]
                    if came and low[node] == order[node]:
                        yield frozenset(below[node])
