"""Which free bodies the search looks at: connected sets of bodies, all of them while there are few."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from unpin.model.action import Structure
from unpin.statics.isolate import neighbours

ALL_SETS_UP_TO = 10
"""Up to this many bodies every connected set is looked at; beyond, single bodies, groups of at most three, sections, the whole."""

GROUP = 3
"""In a large structure groups of so many bodies are looked at."""

GROUP_UNKNOWNS = 12
"""A group of a large structure with more unknown forces on it is passed over: each of its sums would hold nearly all of them."""

SECTION_CUT = 4
"""A section of a large structure cuts at most this many links; three of four may meet in a point, as in a truss with K-shaped
panels."""


def free_sets(structure: Structure) -> tuple[list[frozenset[str]], str]:
    """Connected sets of body names in a fixed order (small first, then as in the file), and the name of the rule used:
    `all` or `sections`."""
    names = [b.name for b in structure.bodies]
    touching = neighbours(structure)
    if len(names) <= ALL_SETS_UP_TO:
        found = set(_connected(names, touching, len(names)))
        rule = "all"
    else:
        found = set(_connected(names, touching, GROUP))
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
    """Both sides of every section that cuts at most SECTION_CUT links and leaves each side in one piece.

    Links whose labels in the cycle space add up to nothing form a cut (Pritchard and Thurimella 2011, here with one exact bit
    for each independent cycle), so cuts of four are found by comparing pairs of links. Other connections are never cut.
    """
    ends, groups = _links(structure, names, touching)
    near: dict[str, list[tuple[str, int]]] = {n: [] for n in groups}
    for k, (a, b) in enumerate(ends):
        near[a].append((b, k))
        near[b].append((a, k))
    for cut in sorted(_cuts(_labels(ends, near))):
        sides = _sides(near, cut)
        if len(sides) == 2:
            for side in sides:
                yield frozenset(m for n in side for m in groups[n])


def _links(structure: Structure, names: list[str], touching: dict[str, set[str]]) -> tuple[list[tuple[str, str]], dict[str, list[str]]]:
    """The ends of each link that can be cut, as groups of bodies, and the groups: bodies joined by anything but links."""
    where = {a.id: a.on for a in structure.actions}
    first = {n: n for n in names}
    links = []
    for u in structure.unknowns:
        on = [where[a] for a in u.actions if where[a] in touching]
        if len(on) != 2:
            continue
        if u.axial:
            links.append((on[0], on[1]))
        elif first[on[0]] != first[on[1]]:
            old, new = first[on[1]], first[on[0]]
            first = {n: new if f == old else f for n, f in first.items()}
    groups: dict[str, list[str]] = {}
    for n in names:
        groups.setdefault(first[n], []).append(n)
    return [(first[a], first[b]) for a, b in links if first[a] != first[b]], groups


def _labels(ends: list[tuple[str, str]], near: dict[str, list[tuple[str, int]]]) -> list[int]:
    """For each link the cycles that it belongs to, a bit each: a link off the spanning trees has its own, one in a tree
    those of all links that close a cycle over it."""
    came: dict[str, tuple[str, int]] = {}
    order: list[str] = []
    for root in near:
        if root in came:
            continue
        came[root] = ("", -1)
        queue = [root]
        for n in queue:
            order.append(n)
            for m, k in near[n]:
                if m not in came:
                    came[m] = (n, k)
                    queue.append(m)
    tree = {k for _, k in came.values()}
    label = [0] * len(ends)
    open_at = dict.fromkeys(near, 0)
    for bit, k in enumerate(k for k in range(len(ends)) if k not in tree):
        label[k] = 1 << bit
        for end in ends[k]:
            open_at[end] ^= label[k]
    for n in reversed(order):
        before, k = came[n]
        if before:
            label[k] = open_at[n]
            open_at[before] ^= open_at[n]
    return label


def _cuts(label: list[int]) -> set[tuple[int, ...]]:
    """Every set of at most four links whose labels add up to nothing."""
    one: dict[int, list[int]] = {}
    two: dict[int, list[tuple[int, int]]] = {}
    for j, b in enumerate(label):
        for i in range(j):
            two.setdefault(label[i] ^ b, []).append((i, j))
        one.setdefault(b, []).append(j)
    found: set[tuple[int, ...]] = {(i,) for i in one.get(0, [])} | set(two.get(0, []))
    for together, pairs in two.items():
        for i, j in pairs:
            found |= {tuple(sorted((i, j, k))) for k in one.get(together, []) if k != i and k != j}
        found |= {tuple(sorted(p + q)) for p, q in combinations(pairs, 2) if not set(p) & set(q)}
    return found


def _sides(near: dict[str, list[tuple[str, int]]], cut: tuple[int, ...]) -> list[list[str]]:
    """The pieces that are left without the links of a cut."""
    met: set[str] = set()
    pieces = []
    for root in near:
        if root in met:
            continue
        met.add(root)
        piece = [root]
        for n in piece:
            for m, k in near[n]:
                if k not in cut and m not in met:
                    met.add(m)
                    piece.append(m)
        pieces.append(piece)
    return pieces
