"""Discs, blocks and cords in words: as they are given, and where a strand of a cord pulls on a body."""

from __future__ import annotations

from unpin.exact.number import sign
from unpin.lesson import phrases
from unpin.lesson.formula import Letter, quantity
from unpin.lesson.formula import letter as letter_of
from unpin.lesson.nodes import Listing, Text
from unpin.lesson.sheet import Sheet, symbol
from unpin.model.action import Action, FreeBody, Structure
from unpin.model.directions import axis_of
from unpin.model.problem import GROUND, Cord, Part, Problem, Stop, is_letter


def part(one: Part, sheet: Sheet) -> Text:
    """A part as it is given: a member through its points, a disc with its radii, a block at its point."""
    if one.kind == "disc":
        return Text("given.disc", {"name": one.name, "point": phrases.letter_like(one.points[0]), "count": len(one.radii),
                                   "radii": Listing(tuple(sheet.length(r) for r in one.radii))})
    if one.kind == "box":
        return Text("given.box", {"name": one.name, "points": phrases.points(one.points)})
    if one.kind == "block":
        return Text("given.block", {"name": one.name, "point": phrases.letter_like(one.points[0])})
    return Text("given.member", {"name": one.name, "points": phrases.points(one.points)})


def given(cord: Cord, problem: Problem, sheet: Sheet) -> Text:
    """A cord from one end over its discs to the other."""
    if all(s.radius is not None and not s.side for s in cord.stops):
        discs = {"a": cord.stops[0].part, "b": cord.stops[-1].part}
        return Text("given.belt", {"letter": letter(cord), **discs})
    over = tuple(Text(f"cord.{s.side}", {"disc": s.part}) for s in cord.stops if s.side)
    blocks = {p.name for p in problem.parts if p.kind == "block"}
    ends = {"letter": letter(cord), "start": _end(cord.stops[0], blocks, sheet), "end": _end(cord.stops[-1], blocks, sheet)}
    return Text("given.cord_over", {**ends, "over": Listing(over)}) if over else Text("given.cord", ends)


def letter(cord: Cord) -> Letter:
    """The letter of its tension, as on its arrows: T for a cord of that name, T with the name below where that is a word."""
    return letter_of(cord.name) if is_letter(cord.name) else quantity("T", cord.name)


def _end(stop: Stop, blocks: set[str], sheet: Sheet) -> Text:
    if stop.direction is not None:
        return Text("cord.hand", {"toward": phrases.toward(stop.direction, sheet)})
    if stop.radius is not None:
        return Text("cord.wound", {"disc": stop.part})
    if stop.part in blocks:
        return Text("cord.block", {"block": stop.part, "point": phrases.letter_like(stop.point)})
    code = "cord.ground" if stop.part == GROUND else "cord.point"
    return Text(code, {"point": phrases.letter_like(stop.point)})


def seen(problem: Problem) -> list[Text]:
    """Why a cord has one tension: what it runs over is free to turn, what it slips through is smooth."""
    out = []
    for c in problem.cords:
        inner = [s.part for s in c.stops[1:-1]]
        discs = Listing(tuple(dict.fromkeys(s.part for s in c.stops if s.side and s.side != "through")))
        rings = Listing(tuple(n for n in dict.fromkeys(inner) if n not in discs.items))
        if discs.items:
            out.append(Text("insight.cord", {"letter": letter(c), "discs": discs, "count": len(discs.items)}))
        elif rings.items:
            out.append(Text("insight.cord_ring", {"letter": letter(c), "rings": rings, "count": len(rings.items)}))
    return out


def slack(structure: Structure, values) -> list[Letter]:
    """Letters of the cords that would have to push."""
    return [symbol(u.symbol) for u in structure.unknowns if u.drives == "cord" and u.id in values and sign(values[u.id]) < 0]


def hangs(body: FreeBody, structure: Structure) -> bool:
    """Whether a block only hangs on one cord, with everything upright."""
    held = [a for a in body.actions if a.unknown]
    block = any(p.kind == "block" and (p.name,) == body.parts for p in structure.problem.parts)
    upright = all(a.kind == "force" and axis_of(a.direction.vector) == "y" for a in body.actions)
    down = upright and all(sign(a.direction.vector[1]) < 0 for a in body.actions if not a.unknown)
    return block and len(held) < len(body.actions) and down and sum(is_cord(structure, a.unknown) for a in held) == len(held) == 1


def find(problem: Problem, name: str) -> Cord | None:
    return next((c for c in problem.cords if c.name == name), None)


def is_cord(structure: Structure, unknown: str) -> bool:
    return structure.unknown(unknown).drives == "cord"


def cut(strands: tuple[Action, ...], sheet: Sheet) -> list[Text]:
    """The strands of one cord that were cut, on the body that they pull; those that pull one way at no named point together."""
    alike: dict[tuple, list[Action]] = {}
    for a in strands:
        alike.setdefault((a.point, tuple(a.direction.vector)) if not a.point else (a.id,), []).append(a)
    out = []
    for group in alike.values():
        first = group[0]
        said = {"letter": symbol(first.symbol), "toward": phrases.toward(first.direction, sheet), "count": len(group)}
        out.append(Text("cut.cord_at", {**said, "point": phrases.letter_like(first.point)}) if first.point else Text("cut.cord", said))
    return out


def meaning(structure: Structure, unknown: str, value) -> Text:
    """What the sign of a tension says."""
    return Text("result.taut" if sign(value) > 0 else "result.slack", {"letter": symbol(structure.unknown(unknown).symbol)})
