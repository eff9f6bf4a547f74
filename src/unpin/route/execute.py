"""Carrying a route out: each step one scalar equation (or a small block) in exact numbers."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from unpin.exact.linear import reduce
from unpin.exact.number import ZERO, Number
from unpin.model.action import Action, Structure
from unpin.model.directions import parallel
from unpin.model.equation import Equation, Functional
from unpin.model.space import difference, product
from unpin.route.candidates import Ground, functional_of
from unpin.route.frontier import Move
from unpin.route.plan import Reason, Step
from unpin.statics.equation import row_of, write
from unpin.statics.wrenches import load_wrench, unit_wrench


def execute(ground: Ground, moves: list[Move], known: Mapping[str, Number]) -> tuple[tuple[Step, ...], dict[str, Number]]:
    """The steps with their equations and exact values, and all values found (N, N·m), `known` included."""
    values = dict(known)
    steps = []
    for move in moves:
        equations = tuple(write(ground.bodies[s.body], functional_of(ground, s)) for s in move.sums)
        finds = ground.names(move.finds)
        found = solve_step(ground.structure, equations, finds, values)
        uses = tuple(dict.fromkeys(u for e in equations for u in e.unknowns if u in values))
        steps.append(Step(equations, finds, reason(ground.structure, equations, finds, values), Fraction(move.cost, 100), uses, found))
        values.update(found)
    return tuple(steps), values


def sketch(ground: Ground, moves: list[Move]) -> tuple[Step, ...]:
    """The steps of a route that is only listed, not carried out: equations and what they find, no values and no reasons."""
    return tuple(Step(tuple(write(ground.bodies[s.body], functional_of(ground, s)) for s in move.sums), ground.names(move.finds),
                      Reason("listed"), Fraction(move.cost, 100)) for move in moves)


def solve_step(structure: Structure, equations: tuple[Equation, ...], finds: tuple[str, ...],
               values: Mapping[str, Number]) -> dict[str, Number]:
    """Values of `finds` from the equations. Works with forces per length, so that a force along a line between rational points
    stays rational until the last line; roots enter with `Unknown.scale`.

    Raises ArithmeticError when the equations do not fix them (a defect: the search promised otherwise).
    """
    scale = {u.id: u.scale for u in structure.unknowns}
    index = {u: k for k, u in enumerate(finds)}
    rows = []
    for e in equations:
        row: dict[int, Number] = {}
        right: Number = ZERO
        functional = row_of(e.functional)
        total: dict[str, Number] = {}
        for a in e.body.actions:
            if a.unknown:
                total[a.unknown] = total.get(a.unknown, ZERO) + product(functional, unit_wrench(a))
            else:
                right = right - product(functional, load_wrench(a))
        for unknown, c in total.items():
            if unknown in index:
                row[index[unknown]] = c
            elif c != 0:
                right = right - c * (values[unknown] / scale[unknown])
        row = {k: v for k, v in row.items() if v != 0}
        if right != 0:
            row[len(finds)] = right
        rows.append(row)
    if len(finds) == 1 and len(rows) == 1:
        if 0 not in rows[0]:
            raise ArithmeticError("the sum does not hold its unknown")
        per_length = {0: rows[0].get(1, ZERO) / rows[0][0]}
    else:
        solved = reduce(rows, len(finds))
        per_length = solved.values() or {}
        if len(per_length) < len(finds):
            raise ArithmeticError("the block does not fix its unknowns")
    return {u: per_length[k] * scale[u] for u, k in index.items()}


def reason(structure: Structure, equations: tuple[Equation, ...], finds: tuple[str, ...], values: Mapping[str, Number]) -> Reason:
    """Why this sum: what it leaves, and how every other unknown on the body drops out."""
    dropped = []
    for e in equations:
        for a in e.body.actions:
            if a.unknown and a.unknown not in finds:
                how = "known" if a.unknown in values else dropping(e.functional, a)
                if how and (a.unknown, how) not in dropped:
                    dropped.append((a.unknown, how))
    if len(equations) > 1:
        return Reason("block", {"finds": finds, "sums": len(equations)}, tuple(dropped))
    code = "only_unknown" if not dropped else ("leaves_one" if any(h != "known" for _, h in dropped) else "last_unknown")
    functional = equations[0].functional
    named = functional.point if functional.kind == "about" else ""
    if functional.kind == "about" and not named:
        code = "meeting_point"
    return Reason(code, {"finds": finds, "point": named}, tuple(dropped))


def dropping(functional: Functional, action: Action) -> str:
    """How an unknown action on the body stays out of the sum, as a code: `square` or `couple` in a sum of forces, `at_centre` or
    `through` in a sum of moments; "" when its moment is not zero."""
    if functional.kind == "along":
        return "couple" if action.kind == "couple" else "square"
    if action.kind == "couple":
        return ""
    r = difference(action.at, functional.at)
    if r[0] == 0 and r[1] == 0:
        return "at_centre"
    return "through" if parallel(r, action.direction.vector) else ""


