"""How a structure that is not held can move: its bodies as they stand, and where a small motion takes them."""

from __future__ import annotations

from math import cos, pi, sin

from unpin.draw.bodies import chains_of, hinges, span_of, spots_of, used_points, whole_bodies
from unpin.draw.figures.common import action_item, lettered_once, load_actions, point_names, spread_item
from unpin.draw.figures.problem import free_ends, support_items
from unpin.draw.geometry import Spot
from unpin.draw.items import BodyItem, CentreItem, Fact, Figure, Item, MotionItem, Piece, flat
from unpin.draw.lettering import Lettering
from unpin.model.action import Structure
from unpin.model.findings import Freedom
from unpin.model.problem import Part
from unpin.model.space import velocity

WIDTH = 340.0
SHARE = 0.13
"""The largest displacement as a share of the figure: to be seen, yet small enough that straight paths do."""


def motion_figure(structure: Structure, freedom: Freedom, lettering: Lettering) -> Figure:
    """Solid: the structure on its supports with its loads. Dashed: displaced along the velocities of `freedom`, which are
    those of one instant, so lengths of turning members grow a little. Instant centres of turning bodies are marked."""
    problem, at = structure.problem, spots_of(structure.problem)
    moving: dict[str, dict[str, Spot]] = {}
    seen = {t.member: t for t in structure.two_force}
    for part in problem.parts:
        if part.name in freedom.twists:
            moving[part.name] = {n: flat(velocity(freedom.twists[part.name], problem.coordinates[n])) for n in part.points}
    for member, two_force in seen.items():
        if member not in moving:
            ends = {n: v for vs in list(moving.values()) for n, v in vs.items() if n in two_force.points}
            if ends:
                moving[member] = {n: ends.get(n, (0.0, 0.0)) for n in problem.part(member).points}
    fastest = max((abs(v[0]) + abs(v[1]) for vs in moving.values() for v in vs.values()), default=0.0) or 1.0
    wide, high, _ = span_of(problem)
    reach = SHARE * max(wide, high) / fastest
    items: list[Item] = [*whole_bodies(structure), *support_items(problem, lettering)]
    for part in problem.parts:
        if part.name in moving:
            there = {n: (at[n][0] + reach * v[0], at[n][1] + reach * v[1]) for n, v in moving[part.name].items()}
            items.append(BodyItem(part.name, "ghost", _outline(part, {**at, **there})))
    for c in problem.connections:
        if c.kind == "link":
            ends = [next((vs[p] for vs in moving.values() if p in vs), (0.0, 0.0)) for p in c.points]
            if any(v != (0.0, 0.0) for v in ends):
                items.append(
                    BodyItem(
                        c.name,
                        "ghost",
                        (tuple((at[p][0] + reach * v[0], at[p][1] + reach * v[1]) for p, v in zip(c.points, ends)),),
                    )
                )
    shown: set[str] = set()
    for vs in moving.values():
        for n, v in vs.items():
            if n not in shown and n in hinges(problem) and (abs(v[0]) + abs(v[1])) > 0.25 * fastest:
                shown.add(n)
                items.append(MotionItem(n, at[n], (reach * v[0], reach * v[1])))
    for body, centre in freedom.centres.items():
        spot = flat(centre)
        if all(abs(spot[k] - s[k]) < 1.2 * max(wide, high) for k in (0, 1) for s in at.values()):
            items.append(CentreItem(f"centre of {body}", spot))
    for name, load, actions in load_actions(problem, structure.actions):
        items += (
            [spread_item(load, name, lettering)]
            if load.kind == "spread"
            else [action_item(a, lettering.action(a), lettering, problem, {}) for a in actions]
        )
    items += free_ends(structure, lettering)
    items += point_names(used_points(problem), problem, lettering)
    facts = [Fact("motion", {"body": b, "twist": t, "centre": freedom.centres.get(b)}) for b, t in freedom.twists.items()]
    return Figure(
        "motion",
        (Piece("whole", tuple(lettered_once(items))),),
        span_of(problem),
        WIDTH,
        tuple(facts),
        lettering.title,
        lettering.description,
    )


def _outline(part: Part, at: dict[str, Spot]) -> tuple[tuple[Spot, ...], ...]:
    """A member along its chains, a disc by its rim."""
    if part.kind != "disc":
        return chains_of(part, at)
    x, y = at[part.points[0]]
    r = float(max(part.radii))
    return (tuple((x + r * cos(a * pi / 30), y + r * sin(a * pi / 30)) for a in range(61)),)
