"""The first chapter: what is given, what is asked, what was assumed. Only what the author wrote stands under Given."""

from __future__ import annotations

from unpin.base.units import DIMENSION_NAMES, NUMBER
from unpin.exact.lettered import is_lettered
from unpin.lesson import cords, known, loads, phrases
from unpin.lesson.called import called
from unpin.lesson.formula import letter
from unpin.lesson.nodes import Argument, Block, Bullets, Listing, Text
from unpin.lesson.sheet import Sheet
from unpin.model.kinds import KINDS
from unpin.model.problem import GROUND, Asked, Connection, Problem
from unpin.model.problem import Letter as ProblemLetter
from unpin.words.sentences import sentence


def given(problem: Problem, sheet: Sheet) -> Block:
    """Members, supports, loads and letters, in the order of the file."""
    items = [cords.part(p, sheet) for p in problem.parts]
    items += connections(problem, sheet)
    items += [cords.given(c, problem, sheet) for c in problem.cords]
    items += [loads.given(group, problem, sheet) for group in loads.gathered(problem.loads)]
    named = {load.name for load in problem.loads} | {c.name for c in problem.cords}
    items += known.given(problem, sheet)
    items += [_letter(x, sheet) for x in problem.letters if x.value is not None and x.name not in named]
    return Block("given", (Bullets(tuple(items)),))


def _letter(x: ProblemLetter, sheet: Sheet) -> Text:
    if x.drawn is None:
        return Text("given.letter", {"letter": letter(x.name), "value": sheet.given(x.value, own_unit=True)})
    what = Text(f"letter_kind.{DIMENSION_NAMES[x.value.dimension]}")
    if x.value.dimension == NUMBER:
        return Text("given.letter_open_number", {"letter": letter(x.name), "what": what})
    return Text("given.letter_open", {"letter": letter(x.name), "what": what, "size": sheet.given(x.drawn, own_unit=True)})


def connections(problem: Problem, sheet: Sheet) -> list[Text]:
    """Supports and links; several links are told in one line, where the first of them stands."""
    links = [c for c in problem.connections if c.kind == "link" and not (GROUND in c.parts and c.direction)]
    if len(links) < 2:
        return [t for c in problem.connections if (t := connection(c, sheet, problem))]
    names = tuple(Text("given.link_own_name" if own_name(c) else "given.link_name", _ends(c)) for c in links)
    out = []
    for c in problem.connections:
        text = Text("given.links", {"links": Listing(names)}) if c is links[0] else None if c in links else connection(c, sheet, problem)
        if text is not None:
            out.append(text)
    return out


def connection(c: Connection, sheet: Sheet, problem: Problem) -> Text | None:
    """A support or a link as it is given; None for a pin that the members make by meeting. A wheel meets the edge of a step."""
    point = {"point": phrases.letter_like(c.points[0])}
    if c.kind == "link" and GROUND in c.parts and c.direction:
        return Text("given.link_ground", {**point, "toward": phrases.toward(c.direction, sheet)})
    if c.kind == "link":
        return Text("given.link_named" if own_name(c) else "given.link", _ends(c))
    if c.centre:
        code = "given.arc_ground" if GROUND in c.parts else "given.arc_between"
        centre = {"centre": phrases.letter_like(c.centre)}
        return Text(code, {**point, **centre, "a": phrases.thing(c.parts[0]), "b": phrases.thing(c.parts[1])})
    if GROUND not in c.parts and KINDS[c.kind].owned:
        slider, owner = c.parts
        return Text(f"given.{c.kind}_between", {**point, "a": phrases.thing(slider), "b": phrases.thing(owner)})
    if GROUND not in c.parts and c.kind == "contact":
        pushed, pushing = c.parts
        return Text("given.contact_between", {**point, "a": pushing, "b": pushed, "toward": phrases.toward(c.direction, sheet)})
    if GROUND not in c.parts:
        return Text("given.weld", {**point, "a": c.parts[0], "b": c.parts[1]}) if c.kind == "fixed" else None
    towards = {"toward": phrases.toward(c.direction, sheet)} if c.direction else {}
    return Text(f"given.{called(c, problem)}", {**point, **towards})


def own_name(link: Connection) -> bool:
    """Whether its author gave a link a name that is not made of its points."""
    return link.name not in (sep.join(ends) for ends in (link.points, link.points[::-1]) for sep in ("", "-"))


def _ends(link: Connection) -> dict:
    return {"name": link.name, "a": phrases.letter_like(link.points[0]), "b": phrases.letter_like(link.points[1])}


def find(problem: Problem) -> Block:
    return Block("find", (Bullets(tuple(asked(a, problem) for a in problem.asked)),))


def asked(a: Asked, problem: Problem) -> Text:
    """What is asked, as a phrase."""
    what = _whole(a, problem)
    return Text(f"asked.component_{a.component}", {"what": what}) if a.component else what


def short(a: Asked, problem: Problem) -> Text:
    """What is asked, short enough for a heading or a list."""
    text = asked(a, problem)
    return Text(text.code.replace("asked.", "answer."), text.arguments) if text.code in ("asked.link", "asked.link_named", "asked.member") else text


def _everything(problem: Problem) -> Text:
    """What there is of all that can act: no pin force where nothing is pinned."""
    held = any(GROUND in c.parts and c.kind != "link" for c in problem.connections)
    joined = {c.kind for c in problem.connections if GROUND not in c.parts}
    there = {"reaction": held, "link": any(c.kind == "link" for c in problem.connections), "cord": bool(problem.cords), "pin": "pin" in joined,
             "contact": bool(joined - {"pin", "link"})}
    kinds = tuple(Text(f"asked.every_{kind}") for kind, is_there in there.items() if is_there)
    return Text("asked.everything", {"forces": Listing(kinds)}) if kinds else Text("asked.every_reaction")


def _whole(a: Asked, problem: Problem) -> Text:
    if a.kind == "reaction":
        return Text("asked.reaction", {"point": phrases.letter_like(a.point)})
    if a.kind == "pin":
        return Text("asked.pin", {"point": phrases.letter_like(a.point), "part": phrases.thing(a.part)})
    if a.kind == "load":
        kind = next((load.kind for load in problem.loads if load.name == a.subject), "")
        return Text(f"asked.load_{kind}" if kind in ("couple", "spread") else "asked.load", {"letter": letter(a.subject)})
    if a.kind == "ratio":
        return Text("asked.ratio", dict(zip(("first", "second"), (short(part, problem) for part in a.over))))
    if a.kind == "letter":
        return Text("asked.letter", {"letter": letter(a.subject)})
    if a.kind == "everything":
        return _everything(problem)
    cord = cords.find(problem, a.subject)
    if cord:
        return Text("asked.cord", {"letter": cords.letter(cord)})
    link = next((c for c in problem.connections if c.kind == "link" and c.name == a.subject), None)
    if link:
        return Text("asked.link_named" if own_name(link) else "asked.link", _ends(link))
    return Text("asked.member", {"name": a.subject})


def assumed(problem: Problem, sheet: Sheet) -> Block:
    """What the reader of the file took for granted (or, for a problem made in code, what is always), then the conventions."""
    codes = problem.assumed or _always(problem)
    items = [_assumption(code, arguments, problem, sheet) for code, arguments in codes if sentence(f"lesson.assumed.{code}")]
    items.append(Text("assumed.senses"))
    if sheet.house.moments < 0 and any("couple" in KINDS[c.kind].pushes for c in problem.connections):
        items.append(Text("assumed.couples_clockwise"))
    if not _in_letters(problem):
        items.append(_rounding(sheet))
    return Block("assumed", (Bullets(tuple(items)),))


def _in_letters(problem: Problem) -> bool:
    """Whether every place and load is in letters, so that nothing is rounded."""
    sizes = [c for p in problem.points for c in p.at] + [load.magnitude.value for load in problem.loads if load.magnitude]
    return any(map(is_lettered, sizes)) and all(is_lettered(x) or x == 0 for x in sizes)


def _rounding(sheet: Sheet) -> Text:
    style = sheet.style
    if style.places is not None:
        return Text("assumed.rounding_places", {"count": style.places})
    return Text("assumed.rounding" if style.leading_one else "assumed.rounding_alike", {"figures": style.figures})


def _always(problem: Problem):
    rollers = [("roller_both_ways", {})] if any(KINDS[c.kind].either_way for c in problem.connections) else []
    return [("members_rigid", {}), ("pin_smooth", {}), ("weights_neglected", {}), *rollers]


def _assumption(code: str, arguments, problem: Problem, sheet: Sheet) -> Text:
    names: dict[str, Argument] = {}
    for key, value in arguments.items():
        if code == "gravity" and key == "value":
            names[key] = loads.gravity(problem.gravity, sheet)
        elif key == "parts":
            names[key] = Listing(tuple(phrases.thing(str(p)) for p in value))
        else:
            names[key] = phrases.letter_like(str(value)) if key == "point" else str(value)
    return Text(f"assumed.{code}_of" if "parts" in names else f"assumed.{code}", names)
