"""Whether the problem is sound: four statements, each by itself (see docs/learn for their meaning)."""

from __future__ import annotations

from collections.abc import Mapping

from unpin.base.tolerance import IDLE, NEARLY_CRITICAL, OFF_BALANCE
from unpin.exact.lettered import is_lettered
from unpin.exact.linear import reduce
from unpin.exact.number import Number, approx, sign, to_digits
from unpin.model.action import Structure
from unpin.model.findings import Cause, Freedom, SelfStress, Soundness, Twist
from unpin.model.space import velocity
from unpin.statics.causes import causes
from unpin.statics.equation import sum_about, sum_along
from unpin.statics.goals import goals
from unpin.statics.isolate import isolate
from unpin.statics.motion import Motions, rate
from unpin.statics.solve import equilibrium, fixed_values
from unpin.statics.wrenches import load_wrench, total_load


def sound(structure: Structure) -> Soundness:
    """Freedoms (from the motions), self-stresses (from the forces), each asked value, and the cause in words."""
    rows, _, ids = equilibrium(structure)
    solved = reduce(rows, len(ids))
    loads = total_load(structure)
    every = [_freedom(structure, twists, loads) for twists in Motions(structure).freedoms()]
    freedoms = tuple(f for f in every if not _idle(structure, f))
    stresses = tuple(SelfStress(tuple(ids[c] for c in sorted(v)), {ids[c]: x for c, x in sorted(v.items())})
                     for v in solved.null_space())
    fixed = solved.fixed()
    loose = {ids[c] for c in range(len(ids)) if c not in fixed}
    found = tuple((asked, not (set(goals(structure, asked)) & loose)) for asked in structure.problem.asked)
    holds = not solved.contradictions
    remarks = list(_remarks(structure, fixed_values(structure, solved, ids) or {}, freedoms))
    return Soundness(freedoms, stresses, found, tuple(causes(structure, freedoms, stresses)), len(ids),
                     sum(b.rank for b in structure.bodies) - (len(every) - len(freedoms)), holds, tuple(remarks))


def _idle(structure: Structure, freedom: Freedom) -> bool:
    """A wheel that turns about its own centre, or a hanging block that sways: motions that nobody asks about and no load feels."""
    light = {p.name for p in structure.problem.parts if p.kind in ("disc", "block")}
    if freedom.work != 0 or not set(freedom.twists) <= light:
        return False
    centres = {p.name: structure.problem.coordinates[p.points[0]] for p in structure.problem.parts if p.kind == "disc"}
    spins = all(b in centres and velocity(t, centres[b]) == (0, 0) for b, t in freedom.twists.items())
    return spins or bool(structure.problem.cords)


def _freedom(structure: Structure, twists: Mapping[str, Twist], loads) -> Freedom:
    work = rate(twists, loads)
    if not is_lettered(work) and sign(work) < 0:
        # Of the two senses of a motion the one in which the loads push.
        twists, work = {b: tuple(-c for c in t) for b, t in twists.items()}, -work
    scale = max((abs(approx(c)) for w in loads.values() for c in w), default=1.0)
    if not is_lettered(work) and abs(approx(work)) <= IDLE * scale:
        work = to_digits(work) * 0
    centres = {b: (-t[1] / t[2], t[0] / t[2]) for b, t in twists.items() if t[2] != 0}
    failing = _failing(structure, twists, loads) if work != 0 else None
    return Freedom(twists, centres, work, failing)


def _failing(structure: Structure, twists, loads):
    """A sum that cannot be zero: for all bodies that move as one, forces along their translation or moments about their
    instant centre. None when the motion is not that simple."""
    moving = list(twists)
    pins = {b.name: structure.problem.coordinates[b.point] for b in structure.bodies if b.kind == "pin"}
    first = next((t for b, t in twists.items() if b not in pins), twists[moving[0]])
    # A pin has no turn of its own: it goes along where its point does.
    if any(t[:2] != velocity(first, pins[b]) if b in pins else t != first for b, t in twists.items()):
        return None
    body = isolate(structure, moving)
    from unpin.exact.number import length
    from unpin.model.values import Direction

    if first[2] == 0:
        vector = (first[0], first[1])
        equation = sum_along(body, Direction(vector, length(vector), "components"))
    else:
        centre = (-first[1] / first[2], first[0] / first[2])
        name = next((n for n, at in structure.problem.coordinates.items() if at == centre), "")
        equation = sum_about(body, name, centre)
    return None if equation.unknowns else equation


def _remarks(structure: Structure, values: Mapping[str, Number], freedoms: tuple[Freedom, ...]):
    """Near misses: forces far above the loads, and loads that miss balance by a hair."""
    biggest = max((abs(approx(a.value.value)) for a in structure.actions if a.value is not None and a.kind == "force"), default=0.0)
    for u in structure.unknowns:
        if u.kind == "force" and u.id in values and biggest and abs(approx(values[u.id])) > NEARLY_CRITICAL * biggest:
            yield Cause("nearly_critical", {"unknown": u.id, "times": round(abs(approx(values[u.id])) / biggest)})
    shares = [_share(structure, f) for f in freedoms if f.work != 0]
    if shares and max(shares) < OFF_BALANCE:
        yield Cause("off_balance", {"share": max(shares)})


def _share(structure: Structure, freedom: Freedom) -> float:
    """How much of the largest work of a single load in a motion is left when all are added: a share, whatever the units."""
    works = [abs(approx(rate(freedom.twists, {a.on: load_wrench(a)}))) for a in structure.actions if not a.unknown]
    return abs(approx(freedom.work)) / max(works)


def moves(freedom: Freedom, structure: Structure) -> dict[str, tuple]:
    """Point name to its velocity in the motion, for drawing it."""
    out = {}
    at = structure.problem.coordinates
    for part in structure.problem.parts:
        if part.name in freedom.twists:
            for p in part.points:
                out[p] = velocity(freedom.twists[part.name], at[p])
    return out
