"""Text alternatives of figures, from the facts the drawing room gives: enough for a reader to draw the figure again."""

from __future__ import annotations

from unpin.draw.items import Fact, Figure
from unpin.exact.number import approx, sign
from unpin.lesson import cords, loads, phrases, terms
from unpin.lesson.labels import _axial
from unpin.lesson.nodes import Listing, Text
from unpin.lesson.sheet import Sheet, symbol
from unpin.lesson.statement import connection
from unpin.model.action import Action, Body, FreeBody
from unpin.model.problem import Connection, Load, Problem


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
        return Text("fact.part", {"part": cords.part(a["part"], sheet)})
    if fact.code == "cord":
        return Text("fact.load", {"load": cords.given(a["cord"], sheet)})
    if fact.code == "tension":
        return Text("fact.tension", {"letter": symbol(a["unknown"].symbol), "size": sheet.size(a["value"], terms.FORCE)})
    if fact.code == "link":
        return Text("fact.link", {"a": phrases.letter_like(a["points"][0]), "b": phrases.letter_like(a["points"][1])})
    if fact.code == "support":
        text = connection(Connection(a["name"], a["kind"], (a["point"],), ("", "ground"), a["direction"]), sheet)
        return Text("fact.load", {"load": text})
    if fact.code == "joint":
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
    name = terms.name_of(a, sheet)
    if a.kind == "couple":
        turn = a.turn if a.value is None or sign(a.value.value) >= 0 else -a.turn
        return Text("fact.couple", {"name": name, "where": where, "sense": Text("sense.anticlockwise" if turn > 0 else "sense.clockwise")})
    return Text("fact.force", {"name": name, "where": where, "toward": phrases.toward(a.direction, sheet)})


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
