"""The figure of the problem: the whole structure on its supports, its loads, and the dimensions it was given by."""

from __future__ import annotations

from dataclasses import replace

from unpin.base.units import LENGTH
from unpin.draw.bodies import span_of, spots_of, used_points, whole_bodies
from unpin.draw.figures.common import action_item, load_actions, notes_of, part_names, point_names, spread_item
from unpin.draw.geometry import unit
from unpin.draw.items import DimensionItem, Fact, Figure, Item, Piece, SupportItem, flat
from unpin.draw.lettering import Lettering
from unpin.model.action import Structure
from unpin.model.problem import GROUND, Problem
from unpin.model.values import Quantity

WIDTH = 340.0


def problem_figure(structure: Structure, lettering: Lettering, dimensions: bool = True) -> Figure:
    """Everything given: parts, joints, supports, loads in their own sense, points, and one dimension for each gap."""
    problem = structure.problem
    items: list[Item] = [*whole_bodies(structure), *support_items(problem, lettering)]
    for name, load, actions in load_actions(problem, structure.actions):
        if load.kind == "spread":
            items.append(spread_item(load, name, lettering))
        else:
            a = actions[0]
            items.append(action_item(a, lettering.action(a), lettering, problem, {}))
    if dimensions:
        items += given_dimensions(problem, lettering)
    items += point_names(used_points(problem), problem, lettering)
    items += part_names((p.name for p in problem.parts), problem, lettering)
    return Figure("problem", (Piece("whole", tuple(items)),), span_of(problem), WIDTH, problem_facts(structure),
                  lettering.title, lettering.description)


def support_items(problem: Problem, lettering: Lettering) -> list[SupportItem]:
    """Symbols of supports, of the ground ends of links, and of rollers, contacts and guides between parts."""
    at, items = spots_of(problem), []
    standing = {c.points[0] for c in problem.connections if c.kind != "link" and GROUND in c.parts}
    for c in problem.connections:
        if c.kind == "link":
            for point, part in zip(c.points, c.parts):
                if part == GROUND and point not in standing:
                    items.append(SupportItem(c.name, "pin", at[point], None))
        elif GROUND in c.parts or c.kind in ("roller", "contact", "guide"):
            up = unit(flat(c.direction.vector)) if c.direction is not None else None
            notes = notes_of(c.direction, lettering, problem) if c.kind != "pin" else ()
            items.append(SupportItem(c.name, c.kind, at[c.points[0]], up, GROUND in c.parts, c.direction, notes))
    return items


def given_dimensions(problem: Problem, lettering: Lettering) -> list[DimensionItem]:
    """A chain of lengths along x and one along y for each part, through its own points, each length once; a longer one that
    shorter ones already make up is left out, and what the parts do not tie together gets a length more."""
    exact = problem.coordinates
    names = list(used_points(problem))
    items: list[DimensionItem] = []
    for axis, letter in ((0, "x"), (1, "y")):
        order = {v: n for n, v in enumerate(sorted({exact[p][axis] for p in names}, key=float))}
        spans: dict[tuple[int, int], tuple[str, str, str]] = {}
        for part in problem.parts:
            points = sorted({exact[p][axis]: p for p in reversed(part.points)}.items(), key=lambda v: float(v[0]))
            for (low, a), (high, b) in zip(points, points[1:]):
                spans.setdefault((order[low], order[high]), (a, b, part.name))
        spans = {k: v for k, v in spans.items() if not _made_up(k, [o for o in spans if o != k])}
        first = {n: next(p for p in names if order[exact[p][axis]] == n) for n in order.values()}
        for n in range(len(order) - 1):
            if not _tied(n, n + 1, spans):
                spans[n, n + 1] = (first[n], first[n + 1], "")
        for (low, high), (a, b, part) in sorted(spans.items()):
            text = lettering.text(Quantity(abs(exact[b][axis] - exact[a][axis]), LENGTH))
            if text:
                items.append(DimensionItem(f"{letter}:{a}-{b}", letter, flat(exact[a]), flat(exact[b]), text, chain=part))
    return _few_chains(items)


def _made_up(span: tuple[int, int], others: list[tuple[int, int]]) -> bool:
    """Can one go from one end of the span to the other along others that lie within it?"""
    reached = {span[0]}
    for low, high in sorted(others):
        if low in reached and high <= span[1]:
            reached.add(high)
    return span[1] in reached


def _tied(a: int, b: int, spans) -> bool:
    """Are two coordinates connected by lengths, whichever way round?"""
    reached, grown = {a}, True
    while grown:
        more = {v for span in spans if reached & set(span) for v in span} - reached
        reached, grown = reached | more, bool(more)
    return b in reached


def _few_chains(items: list[DimensionItem]) -> list[DimensionItem]:
    """Lengths that do not overlap stand on one line, whichever parts they belong to."""
    out: list[DimensionItem] = []
    for axis, k in (("x", 0), ("y", 1)):
        mine = [i for i in items if i.axis == axis]
        overlap = any(max(min(i.start[k], i.end[k]), min(j.start[k], j.end[k])) < min(max(i.start[k], i.end[k]), max(j.start[k], j.end[k])) - 1e-9
                      for n, i in enumerate(mine) for j in mine[n + 1:])
        out += mine if overlap else [replace(i, chain="") for i in mine]
    return out


def problem_facts(structure: Structure) -> tuple[Fact, ...]:
    problem = structure.problem
    facts = [Fact("point", {"name": n, "at": problem.coordinates[n]}) for n in used_points(problem)]
    facts += [Fact("member", {"name": p.name, "points": p.points}) for p in problem.parts]
    for c in problem.connections:
        if c.kind == "link":
            facts.append(Fact("link", {"name": c.name, "points": c.points, "parts": c.parts}))
        elif GROUND in c.parts:
            facts.append(Fact("support", {"name": c.name, "kind": c.kind, "point": c.points[0], "direction": c.direction}))
        else:
            facts.append(Fact("joint", {"name": c.name, "kind": c.kind, "point": c.points[0], "parts": c.parts, "direction": c.direction}))
    facts += [Fact(load.kind, {"load": load, "point": load.point, "part": load.part}) for load in problem.loads]
    return tuple(facts)
