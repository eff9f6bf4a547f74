"""The things of a problem as a list: what each is called, where it stands in the file, which points it touches, and what is to be
said of it. Nothing here knows a kind by name; the words are those of the lesson."""

from __future__ import annotations

from math import atan2, degrees
from typing import Any

from unpin.base.units import LENGTH
from unpin.exact.number import approx
from unpin.lesson import cords, loads, phrases
from unpin.lesson.kinds import with_kinds
from unpin.lesson.nodes import Text
from unpin.lesson.sheet import Sheet
from unpin.lesson.soundness import counted
from unpin.lesson.statement import connection
from unpin.model.problem import GROUND, Load, Problem
from unpin.render.maths.sentence import written
from unpin.route.worked import Worked
from unpin.words.sentences import say
from unpin.workbench.places import Places
from unpin.workbench.turning import by_components, is_exact


def points(problem: Problem, places: Places, sheet: Sheet) -> list[dict[str, Any]]:
    """Each point: its place in metres, and as the file would write it in its own unit."""
    factor = sheet.units[LENGTH].factor
    out = []
    for p in problem.points:
        entry = places.entry(p.place)
        out.append({"name": p.name, "at": [approx(c) for c in p.at], "shown": [_decimal(c / factor) for c in p.at], "made": p.made,
                    "span": list(entry.span) if entry else places.span(p.place)})
    return out


def _decimal(value) -> str:
    """At most six decimals, no trailing zeros."""
    text = f"{approx(value):.6f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def listed(problem: Problem, worked: Worked | None, places: Places, sheet: Sheet, language: str = "en") -> list[dict[str, Any]]:
    """Points, parts, connections, cords and loads, in the order of the file."""
    # A point that the program made (the middle of a member that has a weight) stands nowhere in the file.
    out = [_point(p, problem, worked, places, language) for p in problem.points if p.place is not None]
    for part in problem.parts:
        said = [cords.part(part, sheet)] if part.kind != "member" else []
        out.append(_thing("part", part.kind, part.name, part.points, part.place, places,
                          [*(_words(t, problem, language) for t in said), *_of_part(part.name, worked, language)]))
    for c in problem.connections:
        if c.place is None and GROUND not in c.parts and c.kind == "pin":
            continue
        told = connection(c, sheet, problem)
        said = [_words(told, problem, language)] if told is not None else [say("desk.thing.pin", language, point=c.points[0])]
        out.append(_thing("connection", c.kind, c.name, c.points, c.place, places, [*said, *_force_of(c.name, worked, sheet, language)]))
    for cord in problem.cords:
        touched = tuple(dict.fromkeys(s.point for s in cord.stops if s.point))
        said = [_words(cords.given(cord, problem, sheet), problem, language), *_force_of(cord.name, worked, sheet, language)]
        out.append(_thing("cord", "cord", cord.name, touched, cord.place, places, said))
    draws: dict[int, list[str]] = {}
    for a in worked.apart.actions if worked else ():
        if a.load is not None:
            draws.setdefault(id(a.load), []).append(a.id)
    for k, load in enumerate(problem.loads):
        said = [_words(loads.given((load,), problem, sheet), problem, language)]
        touched = (load.point,) if load.point else tuple(n for s in load.stretches for n in (s.start_name, s.end_name) if n)
        named = {other.name for other in problem.loads[:k]}  # one letter may pull at several places
        made = _thing("load", load.kind, load.name if load.name and load.name not in named else str(k + 1), touched, load.place, places, said)
        out.append({**made, "name": load.name, "part": load.part, "draws": draws.get(id(load), []), "angle": _angle(load), "still": _still(load, language)})
    return out


def _words(told: Text, problem: Problem, language: str) -> str:
    """A sentence in which each part is called what it is."""
    return written(with_kinds(told, problem), language, capital=True)


def _angle(load: Load) -> float | None:
    """Degrees anticlockwise from the right in which a force acts; None for what is no force by itself."""
    if load.kind != "force" or load.direction is None or not load.point:
        return None
    x, y = (approx(c) for c in load.direction.vector)
    return round(degrees(atan2(y, x)), 6)


def _still(load: Load, language: str) -> str:
    """Why a hand cannot turn a force; "" where it can. In another direction its components would be no plain numbers, nor is its size."""
    return say("desk.fault.components", language) if by_components(load) and not is_exact(load) else ""


def _thing(what: str, kind: str, name: str, touched, place, places: Places, says: list[str]) -> dict[str, Any]:
    entry = places.entry(place)
    told = " ".join(x if x.endswith((".", "!", "?")) else f"{x}." for x in says)
    return {"id": f"{what} {name}", "what": what, "kind": kind, "name": name, "points": list(touched), "says": told,
            "section": entry.section if entry else "", "key": entry.key if entry else "", "phrase": entry.phrase if entry else "",
            "span": list(entry.span) if entry else places.span(place), "draws": [name]}


def _point(p, problem: Problem, worked: Worked | None, places: Places, language: str) -> dict[str, Any]:
    """What meets at a point, parts, links and cords, and whether the ground holds it."""
    meets = [x.name for x in problem.parts if p.name in x.points]
    meets += [c.name for c in problem.connections if c.kind == "link" and p.name in c.points]
    meets += [c.name for c in problem.cords if any(s.point == p.name for s in c.stops)]
    held = [c.name for c in problem.connections if p.name in c.points and GROUND in c.parts]
    code = "bare" if not meets and not held else "held" if held else "end" if len(meets) == 1 else "joins"
    sentence = say(f"desk.point.{code}", language, name=p.name, parts=_and(meets, language), count=len(meets))
    return _thing("point", "point", p.name, (p.name,), p.place, places, [sentence])


def _and(names: list[str], language: str) -> str:
    return written(Text("sentences", {"all": _listing(names)}), language) if len(names) > 1 else "".join(names)


def _listing(names: list[str]):
    from unpin.lesson.nodes import Listing

    return Listing(tuple(names))


def _of_part(name: str, worked: Worked | None, language: str) -> list[str]:
    """What the mechanics makes of a part: two-force, or how many sums it gives and unknowns it carries."""
    if worked is None:
        return []
    two = next((t for t in worked.structure.two_force if t.member == name), None)
    if two is not None:
        return [say("desk.part.two_force", language, name=name, a=two.points[0], b=two.points[1])]
    body = next((b for b in worked.structure.bodies if b.name == name), None)
    if body is None:
        return []
    unknowns = {a.unknown for a in worked.structure.actions_on(name) if a.unknown}
    return [say("desk.part.sums", language, name=name, count=body.rank, unknowns=written(counted("unknowns", len(unknowns)), language))]


def _force_of(source: str, worked: Worked | None, sheet: Sheet, language: str) -> list[str]:
    """The unknowns that come from a connection or cord, with their values where they are known."""
    if worked is None:
        return []
    from unpin.lesson.formula import Relation
    from unpin.lesson.sheet import symbol
    from unpin.render.maths import text as signs

    out, seen = [], set()
    for u in (*worked.structure.unknowns, *worked.apart.unknowns):
        if u.source != source or u.id in seen or worked.values is None or u.id not in worked.values:
            continue
        seen.add(u.id)
        value = worked.values[u.id]
        sense = ""
        if u.axial and u.drives != "cord":
            sense = written(Text(f"sense.{_axial(value)}"), language)
        shown = sheet.result(value, _dimension(u), u.id)
        out.append(f"{signs.write(Relation(symbol(u.symbol), shown))} {sense}".strip())
    return out


def _axial(value) -> str:
    from unpin.exact.number import sign

    return {1: "tension", -1: "compression", 0: "none"}[sign(value)]


def _dimension(unknown):
    return unknown.dimension


def bodies(worked: Worked, language: str = "en") -> list[dict[str, Any]]:
    """What can be isolated by itself: every body of the structure as a person would cut it."""
    return [{"name": b.name, "kind": b.kind, "title": written(with_kinds(phrases.thing(b.name), worked.problem), language), "point": b.point,
             "points": list(_points_of(worked, b))} for b in worked.structure.bodies]


def _points_of(worked: Worked, body) -> tuple[str, ...]:
    if body.kind == "pin":
        return (body.point,)
    return next((p.points for p in worked.problem.parts if p.name == body.name), ())
