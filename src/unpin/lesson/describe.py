"""Text alternatives of figures, from the facts the drawing room gives: enough for a reader to draw the figure again."""

from __future__ import annotations

import math
from fractions import Fraction

from unpin.draw.items import Fact, Figure
from unpin.exact.number import approx, sign
from unpin.lesson import cords, loads, phrases, terms
from unpin.lesson.formula import Amount
from unpin.lesson.labels import _axial
from unpin.lesson.nodes import Listing, Text
from unpin.lesson.sheet import Sheet, symbol
from unpin.lesson.statement import connection
from unpin.model.action import Action, Body, FreeBody
from unpin.model.kinds import KINDS
from unpin.model.problem import Connection, Load, Part, Problem
from unpin.statics.answers import lean_of


def describe(figure: Figure, problem: Problem, sheet: Sheet) -> tuple[Text, ...]:
    """Sentences in reading order. Points come first, in one sentence."""
    facts = figure.facts()
    places = [Text("fact.point", {"name": phrases.letter_like(f.arguments["name"]), **_at(f.arguments["at"], sheet)})
              for f in facts if f.code == "point"]
    out = [Text("fact.points", {"points": Listing(tuple(places))})] if places else []
    for f in facts:
        said = _sentence(f, problem, sheet) if f.code != "point" else None
        if said is not None:
            out.append(said)
    return tuple(out)


def _at(at, sheet: Sheet) -> dict:
    return {"x": sheet.length(at[0]), "y": sheet.length(at[1])}


def _sentence(fact: Fact, problem: Problem, sheet: Sheet) -> Text | None:
    a = fact.arguments
    if "action" in a:
        return _action(a["action"], problem, sheet)
    if "load" in a:
        load: Load = a["load"]
        return Text("fact.load", {"load": loads.given((load,), problem, sheet)})
    if fact.code == "member":
        return Text("fact.member", {"name": a["name"], "points": phrases.points(a["points"])})
    if fact.code == "part":
        return _part(a["part"], sheet)
    if fact.code == "cord":
        return Text("fact.load", {"load": cords.given(a["cord"], problem, sheet)})
    if fact.code == "strand":
        ends = {f"{axis}{n}": sheet.length(spot[k]) for n, spot in enumerate(a["ends"], 1) for k, axis in enumerate("xy")}
        return Text("fact.strand", {"letter": cords.letter(a["cord"]), **ends})
    if fact.code == "tension":
        return Text("fact.tension", {"letter": symbol(a["unknown"].symbol), "size": sheet.size(a["value"], terms.FORCE)})
    if fact.code == "link":
        return Text("fact.link", {"a": phrases.letter_like(a["points"][0]), "b": phrases.letter_like(a["points"][1])})
    if fact.code == "support":
        text = connection(Connection(a["name"], a["kind"], (a["point"],), (a.get("part", ""), "ground"), a["direction"], centre=a.get("centre", "")), sheet, problem)
        return Text("fact.load", {"load": text})
    if fact.code == "joint":
        if KINDS[a["kind"]].owned:
            c = Connection(a["name"], a["kind"], (a["point"],), a["parts"], a["direction"], centre=a.get("centre", ""))
            return Text("fact.load", {"load": connection(c, sheet, problem)})
        return Text("fact.joint", {"point": phrases.letter_like(a["point"]),
                                   "parts": Listing(tuple(phrases.thing(p) for p in a["parts"]))})
    if fact.code == "body":
        body: Body | FreeBody = a["body"]
        return Text("fact.body", {"body": phrases.free_body(body) if isinstance(body, FreeBody) else phrases.thing(body.name)})
    if fact.code == "axial":
        unknown = a["unknown"]
        ends = {"a": phrases.letter_like(a["points"][0]), "b": phrases.letter_like(a["points"][1])}
        size = sheet.size(a["value"], terms.FORCE)
        return Text("fact.axial", {**ends, "letter": symbol(unknown.symbol), "size": size, "sense": Text(f"sense.{_axial(a['value'])}")})
    if fact.code == "centre":
        centre = a["centre"]
        at = problem.coordinates[centre] if isinstance(centre, str) else centre
        name = centre if isinstance(centre, str) else next((x for where, x in sheet.centres if where == at), "")
        return Text("fact.centre", {"name": phrases.letter_like(name), **_at(at, sheet)})
    if fact.code == "motion":
        return _motion(a, sheet)
    return None


def _action(a: Action, problem: Problem, sheet: Sheet) -> Text:
    where = _where(a, sheet)
    shown = terms.name_of(a, sheet)
    name = Text("figure.of", {"name": shown}) if isinstance(shown, Amount) else shown
    if a.kind == "couple":
        turn = a.turn if a.value is None or sign(a.value.value) >= 0 else -a.turn
        return Text("fact.couple", {"name": name, "where": where, "sense": Text("sense.anticlockwise" if turn > 0 else "sense.clockwise")})
    return Text("fact.force", {"name": name, "where": where, "toward": _toward(a, problem, sheet)})


def _toward(a: Action, problem: Problem, sheet: Sheet) -> Text:
    """A strand that leaves the rim of a disc on a slope points at no named place, so its angle is told."""
    x, y = (approx(c) for c in a.direction.vector)
    if a.point or a.direction.form != "line" or cords.find(problem, a.source) is None:
        return phrases.toward(a.direction, sheet)
    if (lean := lean_of(a.direction.vector)) is not None:
        return phrases.sense("along", math.degrees(math.atan2(y, x)), sheet, lean)
    steep = Fraction(math.degrees(math.atan2(abs(y), abs(x)))).limit_denominator(10)
    return phrases.from_level(steep, "right" if x > 0 else "left", "up" if y > 0 else "down", sheet)


def _part(part: Part, sheet: Sheet) -> Text:
    """A disc with its radii, a block, or the knot of some cords, which has the name of its point."""
    said = {"name": part.name, "point": phrases.letter_like(part.points[0])}
    if part.kind == "box":
        return Text("fact.box", {"name": part.name, "points": phrases.points(part.points)})
    if part.kind == "disc":
        radii = Listing(tuple(sheet.length(r) for r in part.radii))
        return Text("fact.disc", {**said, "count": len(part.radii), "radii": radii})
    return Text("fact.knot" if part.name in part.points else "fact.block", said)


def _where(a: Action, sheet: Sheet) -> Text:
    if a.point:
        return Text("fact.at_point", {"point": phrases.letter_like(a.point)})
    return Text("fact.at_place", _at(a.at, sheet)) if a.at else Text("fact.on_body", {"body": phrases.thing(a.on)})


def _motion(a, sheet: Sheet) -> Text:
    centre = a["centre"]
    body = phrases.thing(a["body"])
    if centre is None:
        return Text("fact.slides", {"body": body})
    turn = "anticlockwise" if approx(a["twist"][2]) > 0 else "clockwise"
    return Text("fact.turns", {"body": body, **_at(centre, sheet), "sense": Text(f"sense.{turn}")})
