"""The figure of the problem: the whole structure on its supports, its loads, and the dimensions it was given by."""

from __future__ import annotations

from unpin.draw.bodies import reach_of, span_of, spots_of, used_points, whole_bodies
from unpin.draw.cords import anchors, cord_names, hands, radius_items
from unpin.draw.figures.common import action_item, as_drawn, lettered_once, load_actions, notes_of, part_fact, part_names, point_names, spread_item
from unpin.draw.figures.given import given_dimensions
from unpin.draw.geometry import unit
from unpin.draw.items import Fact, Figure, Item, Piece, SupportItem, flat
from unpin.draw.lettering import Lettering
from unpin.model.action import Structure
from unpin.model.kinds import KINDS
from unpin.model.problem import GROUND, Problem

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
    items += free_ends(structure, lettering)
    items += cord_names(structure, lettering, "label")
    if dimensions:
        items += given_dimensions(problem, lettering) + radius_items(problem, lettering)
    items += point_names(used_points(problem), problem, lettering)
    items += part_names((p.name for p in problem.parts), problem, lettering)
    return Figure(
        "problem",
        (Piece("whole", tuple(lettered_once(items))),),
        span_of(problem),
        WIDTH,
        problem_facts(structure),
        lettering.title,
        lettering.description,
        problem.beneath,
    )


def free_ends(structure: Structure, lettering: Lettering) -> list[Item]:
    """The pull at each free end of a cord, by its letter."""
    return [action_item(a, lettering.labels.get(a.source, ()), lettering, structure.problem, {}) for a in hands(structure)]


def support_items(problem: Problem, lettering: Lettering) -> list[SupportItem]:
    """Symbols of supports, of the ground ends of links, and of rollers, contacts and guides between parts."""
    at, items = spots_of(problem), []
    blocks = {p.name for p in problem.parts if p.kind == "block"}
    standing = {c.points[0] for c in problem.connections if c.kind != "link" and GROUND in c.parts}
    for c in problem.connections:
        if c.kind == "link":
            for point, part in zip(c.points, c.parts):
                if part == GROUND and point not in standing:
                    items.append(SupportItem(c.name, "pin", at[point], None))
        elif GROUND in c.parts or KINDS[c.kind].needs_direction:
            up = unit(flat(c.direction.vector)) if c.direction is not None else None
            lies = KINDS[c.kind].owned and GROUND not in c.parts  # its direction is that of the member
            shown = as_drawn(c.direction, 1)  # that of the surface from the level
            # The way of an arc follows from its centre, which is dimensioned.
            lies = lies or (bool(c.centre) and shown is not c.direction)
            notes = notes_of(shown, lettering, problem) if not lies else ()
            kind = "floor" if c.kind in ("contact", "surface") and c.parts[0] in blocks and GROUND in c.parts else c.kind
            kind = "channel" if c.kind in ("slot", "guide") and c.parts[0] in blocks and GROUND in c.parts else kind
            solid = {p.name for p in problem.parts if p.kind in ("disc", "box")}
            if c.kind in ("contact", "surface") and c.parts[0] in solid:
                kind = "rim"
            if kind in ("rim", "contact") and GROUND not in c.parts and solid & set(c.parts):
                continue  # the outlines are seen to touch
            reach = reach_of(c, at) if kind in ("slot", "collar", "sleeve") else ()
            items.append(SupportItem(c.name, kind, at[c.points[0]], up, GROUND in c.parts, shown, notes, reach))
    return items + anchors(problem)


def problem_facts(structure: Structure) -> tuple[Fact, ...]:
    problem = structure.problem
    facts = [Fact("point", {"name": n, "at": problem.coordinates[n]}) for n in used_points(problem)]
    facts += [part_fact(p) for p in problem.parts]
    for c in problem.connections:
        if c.kind == "link":
            facts.append(Fact("link", {"name": c.name, "points": c.points, "parts": c.parts}))
        elif GROUND in c.parts:
            facts.append(Fact("support", {"name": c.name, "kind": c.kind, "point": c.points[0], "direction": c.direction,
                                          "part": c.parts[0], "centre": c.centre}))
        else:
            facts.append(
                Fact("joint", {"name": c.name, "kind": c.kind, "point": c.points[0], "parts": c.parts, "direction": c.direction,
                               "centre": c.centre})
            )
    facts += [Fact("cord", {"cord": c}) for c in problem.cords]
    facts += [Fact(load.kind, {"load": load, "point": load.point, "part": load.part}) for load in problem.loads]
    return tuple(facts)
