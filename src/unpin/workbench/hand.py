"""The route chosen by hand: a body cut free, the sums worth taking on it, and the lesson of the sums taken so far."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Any

from unpin.base.units import BY_SPELLING, LENGTH
from unpin.exact.number import ZERO, Number
from unpin.lesson import outcome, phrases, ways
from unpin.lesson.build import by_hand
from unpin.lesson.figures import Studio
from unpin.lesson.formula import Relation
from unpin.lesson.nodes import Boxed
from unpin.lesson.sheet import sheet_for, symbol
from unpin.model.directions import axis_of
from unpin.model.equation import Equation
from unpin.model.house import PLAIN, House
from unpin.model.problem import Problem
from unpin.model.values import WantedSum
from unpin.read.sums import parse_sum
from unpin.render.maths import mathml
from unpin.route.choices import choices
from unpin.route.follow import OwnRoute, follow
from unpin.route.worked import Worked
from unpin.statics.goals import goals
from unpin.statics.isolate import isolate
from unpin.words.remarks import sentence
from unpin.words.sentences import say
from unpin.workbench import plain
from unpin.workbench.folder import Refused
from unpin.workbench.looking import sound_problem

MOST_SUMS = 200


def isolated(text: str, bodies: Sequence[str], sums: Sequence[str] = (), language: str = "en", house: House = PLAIN) -> dict[str, Any]:
    """A free body: its diagram, what acts on it, and the sums worth taking with what each leaves unknown after the `sums` taken
    so far. Refused when there is no such body."""
    worked = sound_problem(text, house, language)
    names = [b.name for b in worked.structure.bodies]
    chosen = names if list(bodies) == ["whole"] else [b for b in bodies if b in names]
    if not chosen:
        raise Refused("body", 422)
    body = isolate(worked.structure, chosen)
    sheet = sheet_for(worked.problem, worked.values or {}, language=language)
    drawing = Studio(worked, sheet).free_body(body)
    known = _followed(worked, sums, language)[0].values if sums else _zero(worked)
    found = choices(worked.structure, chosen, tuple(known))
    listed = []
    for c in found:
        written = said(c.equation, worked.problem, chosen, names)
        if not written:
            continue
        functional = c.equation.functional
        listed.append({
            "sum": written, "header": plain.phrase(ways.sum_phrase(c.equation, sheet), language),
            "holds": [mathml.write(symbol(worked.structure.unknown(u).symbol)) for u in c.holds], "holds_ids": list(c.holds),
            "left_ids": list(c.left), "drops_ids": list(c.drops),
            "leaves": "one" if len(c.left) == 1 else "two" if len(c.left) == 2 else "more",
            "about": functional.point or None, "along": (axis_of(functional.direction.vector) or "slanted") if functional.direction else None,
            "at": [float(x) for x in functional.at] if functional.at else None, "cost": c.cost,
        })
    unknowns = [{"id": u, "name": mathml.write(symbol(worked.structure.unknown(u).symbol)), "known": u in known,
                 "owner": [a.id for a in body.actions if a.unknown == u]} for u in body.unknowns]
    return {"ok": True, "key": "+".join(body.parts), "bodies": list(body.parts), "title": plain.phrase(phrases.free_body(body), language),
            "figure": plain.figure(drawing, language=language), "choices": listed, "unknowns": unknowns,
            "describe": [plain.phrase(t, language) for d in drawing for t in d.description]}


def said(e: Equation, problem: Problem, bodies: Sequence[str], all_bodies: Sequence[str]) -> str:
    """A sum as the problem file says it, "" where there is no phrase for its direction."""
    on = "whole" if len(bodies) == len(all_bodies) else " and ".join(bodies)
    f = e.functional
    if f.kind == "about":
        return f"moments about {f.point or _place(f.at, problem)} on {on}" if f.point or _place(f.at, problem) else ""
    axis = axis_of(f.direction.vector)
    if axis:
        return f"forces along {'x' if axis in ('x', 'right', 'left') else 'y'} on {on}"
    d = f.direction
    if d.form == "line" and len(d.points) == 2:
        return f"forces along {d.points[0]} {d.points[1]} on {on}"
    if d.form == "square" and len(d.points) == 2:
        return f"forces square to {d.points[0]} {d.points[1]}, {_side(d.vector)} on {on}"
    x, y = d.vector
    if isinstance(x, Fraction) and isinstance(y, Fraction):
        return f"forces along {'right' if x > 0 else 'left'} {abs(x)} {'up' if y > 0 else 'down'} {abs(y)} on {on}"
    return ""


def _side(vector) -> str:
    """The side to which a direction points, in one word: of two that fit, the one it leans to more."""
    x, y = (float(c) for c in vector)
    return ("right" if x > 0 else "left") if abs(x) > abs(y) else ("up" if y > 0 else "down")


def _place(at, problem: Problem) -> str:
    """Coordinates in the unit of the file, where they are rational."""
    unit = BY_SPELLING.get(problem.units.get("length", "m"))
    if unit is None or unit.dimension != LENGTH or not all(isinstance(c, Fraction) for c in at):
        return ""
    return f"({', '.join(str(c / unit.factor) for c in at)})"


def hand(text: str, sums: Sequence[str], language: str = "en", house: House = PLAIN) -> dict[str, Any]:
    """The lesson of the sums taken so far: chapters, what is known, a verdict on each, and the answers once all is found. Of each step
    `same` is the sum as the desk offers it, however it was `written`."""
    worked = sound_problem(text, house, language)
    route, faults = _followed(worked, sums, language)
    sheet = sheet_for(worked.problem, worked.values or {}, language=language)
    names = [b.name for b in worked.structure.bodies]
    verdicts = iter(route.followed)
    steps = []
    for written in sums:
        if written in faults:
            steps.append({"sum": written, "same": "", "ok": False, "remark": faults[written]})
            continue
        f = next(verdicts)
        remark = plain.phrase(ways.verdict(f, worked.structure, sheet), language)
        same = said(f.equation, worked.problem, f.equation.body.parts, names) if f.equation else ""
        steps.append({"sum": written, "same": same, "ok": f.verdict in ("usable", "block", "waits"), "verdict": f.verdict, "remark": remark})
    known = [{"id": u, "name": mathml.write(symbol(worked.structure.unknown(u).symbol)),
              "value": mathml.write(Relation(symbol(worked.structure.unknown(u).symbol), sheet.result(v, _dimension(worked, u), u)))}
             for u, v in route.values.items() if u in {x.id for x in worked.structure.unknowns}]
    chapters = by_hand(worked, route, language)
    done = route.reaches
    boxes = [plain.answer(n, language) for n in outcome.answers(worked, sheet) if isinstance(n, Boxed)] if done else []
    missing = [mathml.write(symbol(worked.structure.unknown(u).symbol)) for u in route.missing]
    return {"ok": True, "lesson": "".join(plain.section(s, language) for s in chapters), "known": known, "steps": steps, "done": done,
            "count": route.count, "missing": missing, "answers": boxes}


def _followed(worked: Worked, sums: Sequence[str], language: str = "en") -> tuple[OwnRoute, dict[str, str]]:
    """The sums followed, and for those that cannot be read the reason."""
    if len(sums) > MOST_SUMS:
        raise Refused("too_many", 422)
    wanted: list[WantedSum] = []
    faults: dict[str, str] = {}
    for written in sums:
        found = parse_sum(str(written)[:400], worked.problem)
        if isinstance(found, WantedSum):
            wanted.append(found)
        else:
            faults[written] = sentence(found[0], language) if found else say("desk.fault.sum", language)
    goal = list(dict.fromkeys(g for asked, ok in worked.soundness.found if ok for g in goals(worked.structure, asked)))
    return follow(worked.structure, wanted, goal, _zero(worked)), faults


def _zero(worked: Worked) -> Mapping[str, Number]:
    return {u: ZERO for insight in worked.structure.zero for u in insight.finds}


def _dimension(worked: Worked, unknown: str):
    return worked.structure.unknown(unknown).dimension


def shortest(text: str, kind: str = "recommended", language: str = "en") -> dict[str, Any]:
    """The recommended route (or the one of fewest sums) as sums of the problem file, searched for and carried out."""
    from unpin import api
    from unpin.read.reader import read_text

    reading = read_text(text)
    if not reading.sound:
        raise Refused("faulty", 422)
    worked = api.solve(replace(reading.problem, wanted_route=()))
    if worked.recommended is None:
        raise Refused("unsound", 422)
    route = worked.fewest if kind == "fewest" else worked.recommended
    names = [b.name for b in worked.structure.bodies]
    sums = [said(e, worked.problem, list(e.body.parts), names) for s in route.steps for e in s.equations]
    claim = " ".join(plain.phrase(t, language) for t in ways.counts(worked, route))
    return {"ok": True, "sums": sums, "count": route.count, "claim": claim}
