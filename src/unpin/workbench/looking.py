"""What is seen of a text: the figure, what each thing is, whether it is sound, and the answers. No route is searched here."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import replace
from typing import Any

from unpin.base.units import LENGTH
from unpin.exact.number import approx
from unpin.lesson import outcome
from unpin.lesson.build import sound_section
from unpin.lesson.figures import Studio
from unpin.lesson.nodes import Boxed
from unpin.lesson.notices import notices
from unpin.lesson.sheet import Sheet, sheet_for
from unpin.lesson.soundness import counted
from unpin.model.house import PLAIN, House
from unpin.read.reader import Reading, read_text
from unpin.render.maths.sentence import written
from unpin.route.worked import Worked
from unpin.words.sentences import say
from unpin.workbench import plain, things
from unpin.workbench.folder import Refused
from unpin.workbench.places import Places, remark


def look(text: str, name: str = "", scale: float = 0.0, want: Collection[str] = ("figure",), language: str = "en",
         house: House = PLAIN, freedom: int = 0) -> dict[str, Any]:
    """Everything the page shows of a text. `scale`: pt per metre the figure is drawn at, 0 for its own; `want`: figure, apart,
    motion, final; `freedom`: which of several motions, counted from the one that is told first. Never fails on a text: one that cannot
    be read has remarks and no figure."""
    reading = read_text(text, name)
    places = Places(text, reading)
    reading = at_home(reading, house, language)
    problem = reading.problem
    seen: dict[str, Any] = {
        "ok": True,
        "sound": reading.sound,
        "drawn": False,
        "broken": any(d.code == "read.skeleton" for d in reading.diagnostics),
        "diagnostics": [remark(d, places, language) for d in reading.diagnostics],
        "title": problem.title if problem else "",
    }
    if problem is None:
        return seen
    sheet = sheet_for(problem, {}, language=language)
    seen |= {"points": things.points(problem, places, sheet), "unit": _unit(sheet),
             "route": [w.written for w in problem.wanted_route],
             "letters": [{"name": e.key, "phrase": e.phrase, "span": list(e.span)} for e in places.entries("letters")]}
    worked = judged(reading)
    if worked is None:
        seen["things"] = things.listed(problem, None, places, sheet, language)
        return seen
    studio = Studio(worked, sheet_for(problem, worked.values or {}, language=language))
    drawn = {"figure": lambda: plain.figure(studio.problem(), scale, language),
             "apart": lambda: plain.figure(studio.apart(), language=language),
             "motion": lambda: _motion(worked, studio, scale, language, freedom),
             "final": lambda: plain.figure(studio.final(), language=language) if worked.values else None}
    seen |= {which: make() for which, make in drawn.items() if which in want}
    seen["drawn"] = seen.get("figure") is not None
    seen["things"] = things.listed(problem, worked, places, studio.sheet, language)
    seen["verdict"] = _verdict(worked, language) if reading.sound else None
    seen["answers"] = answers(worked, studio.sheet, language) if reading.sound else []
    seen["notices"] = [written(n, language, capital=True) for n in notices(worked, studio.sheet)] if reading.sound else []
    seen["bodies"] = things.bodies(worked, language)
    return seen


def at_home(reading: Reading, house: House, language: str = "en") -> Reading:
    """The reading with its problem in the house style of the folder; a faulty problem stays as it is."""
    if not reading.sound:
        return reading
    from unpin.houses import put_on

    return replace(reading, problem=put_on(reading.problem, house, "" if house.language else language)[0])


def judged(reading: Reading) -> Worked | None:
    """Taken apart, judged and solved in full without a route; None for a problem too unfinished to be taken apart.

    `values` are those of the full solve, `answers` come from them."""
    from unpin import api
    from unpin.statics.answers import answers as found
    from unpin.statics.solve import solve

    problem = reading.problem
    if problem is None or not problem.points or not (problem.parts or problem.connections):
        return None
    if not reading.sound:
        problem = replace(problem, asked=())
    worked = api.check(problem)
    if not reading.sound or not worked.soundness.holds:
        return worked
    full, inspected = solve(worked.apart), solve(worked.structure)
    if full is None or inspected is None:
        return worked
    return replace(worked, values={**full, **inspected}, answers=found((worked.structure, inspected), (worked.apart, full)))


def answers(worked: Worked, sheet: Sheet, language: str = "en") -> list[dict[str, Any]]:
    if worked.values is None:
        return []
    return [plain.answer(n, language) for n in outcome.answers(worked, sheet) if isinstance(n, Boxed)]


def _unit(sheet: Sheet) -> dict[str, Any]:
    unit = sheet.units[LENGTH]
    return {"length": unit.symbol, "per_metre": float(1 / unit.factor)}


def _verdict(worked: Worked, language: str) -> dict[str, Any]:
    found = worked.soundness
    # Without loads anything is in balance: what can move then is not yet held.
    moves = bool(found.freedoms) and not (found.solvable and worked.problem.loads)
    kind = "moves" if moves else "sound" if found.solvable and found.determinate else "solvable" if found.solvable else "lost"
    numbers = {name: written(counted(name, n), language) for name, n in (("unknowns", found.unknowns), ("sums", found.sums))}
    summary = say(f"desk.verdict.{kind}", language, **numbers)
    return {"solvable": found.solvable, "determinate": found.determinate, "freedoms": len(found.freedoms),
            "self_stresses": len(found.self_stresses), "unknowns": found.unknowns, "sums": found.sums, "kind": kind,
            "summary": summary, "sentences": plain.sentences(sound_section(worked), language)}


def _motion(worked: Worked, studio: Studio, scale: float, language: str, turn: int) -> dict[str, Any] | None:
    """The figure of the motion, its sentence, and the motion itself: for each body that moves (v_x, v_y, turn anticlockwise) about the origin."""
    if not worked.soundness.freedoms:
        return None
    from unpin.lesson.soundness import shown_freedom, told_motion

    shown = shown_freedom(worked.soundness, turn)
    drawn = plain.figure(studio.motion(turn), scale, language)
    told = written(told_motion(worked.apart, shown, studio.sheet), language, capital=True)
    return {**(drawn or {}), "told": told, "twists": {body: [approx(c) for c in twist] for body, twist in shown.twists.items()}}


def things_of(text: str) -> list[dict[str, Any]]:
    """The things of a text with where they stand, nothing worked out."""
    reading = read_text(text)
    if reading.problem is None:
        return []
    return things.listed(reading.problem, None, Places(text, reading), sheet_for(reading.problem, {}))


def sound_problem(text: str, house: House = PLAIN, language: str = "en") -> Worked:
    """Judged and solved in full. Refused when the text has errors or the loads are not in balance."""
    reading = at_home(read_text(text), house, language)
    if not reading.sound:
        raise Refused("faulty", 422)
    worked = judged(reading)
    if worked is None:
        raise Refused("faulty", 422)
    return worked
