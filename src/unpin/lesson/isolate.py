"""Choosing a body: what each support or pin stops, hence which forces act; what is seen at a glance; what is unknown."""

from __future__ import annotations

from collections.abc import Mapping

from unpin.exact.number import Number
from unpin.lesson import cords, loads, phrases, threeforce
from unpin.lesson import known as known_forces
from unpin.lesson.called import called
from unpin.lesson.formula import ZERO, Relation
from unpin.lesson.nodes import Block, Bullets, Listing, Paragraph, Text
from unpin.lesson.nodes import sentences as run_on
from unpin.lesson.sheet import Sheet, symbol
from unpin.model.action import Action, FreeBody, Structure, TwoForce
from unpin.model.kinds import KINDS
from unpin.model.problem import GROUND, Connection, Problem


def choose(body: FreeBody, structure: Structure, sheet: Sheet, met: set[str]) -> Block:
    """The cut and every force it lays bare. `met`: ids of actions that earlier bodies have shown."""
    if body.kind == "whole" and len(body.parts) > 1:
        opening = Text("cut.isolate_whole")
    elif body.kind == "group" and len(cut := _cut_links(body, structure)) > 1:
        opening = Text("cut.isolate_section", {"body": phrases.free_body(body), "links": Listing(cut)})
    elif body.kind == "group" and (discs := carried_discs(body, structure.problem)):
        opening = Text("cut.isolate_discs", {"body": phrases.free_body(body), "count": len(discs)})
    elif body.kind == "group":
        opening = Text("cut.isolate_group", {"body": phrases.free_body(body)})
    else:
        opening = Text("cut.isolate", {"body": phrases.free_body(body)})
    items: list[Text] = []
    for group in connections(body):
        if cords.is_cord(structure, group[0].unknown):
            items += cords.cut(group, sheet)
        else:
            items.append(_connection(group, body, structure, sheet, met))
    items += known_forces.cut(body, structure, sheet)
    mine = {id(a.load): a.load for a in body.actions if a.load is not None}
    items += [Text("cut.load", {"load": loads.carried(group, sheet)}) for group in loads.gathered(mine.values())]
    remark = Text("insight.hangs") if cords.hangs(body, structure) else threeforce.remark(body, structure, sheet)
    return Block("body", (Paragraph(opening), Bullets(tuple(items)), *((Paragraph(remark, "insight"),) if remark else ())))


def carried_discs(body: FreeBody, problem: Problem) -> tuple[str, ...]:
    """Discs of a group that is one member with its discs; none for any other group."""
    kinds = {p.name: p.kind for p in problem.parts}
    rigid = [p for p in body.parts if p in kinds]
    discs = tuple(p for p in rigid if kinds[p] == "disc")
    return discs if sum(kinds[p] == "member" for p in rigid) == len(rigid) - len(discs) == 1 else ()


def _cut_links(body: FreeBody, structure: Structure) -> tuple[Text, ...]:
    """Links that run out of a group of joints, by their ends; none where the group has a member."""
    if any(not p.startswith(phrases.PIN) for p in body.parts):
        return ()
    ids = dict.fromkeys(a.unknown for a in body.actions if a.unknown and a.sense == "tension")
    return tuple(Text("member.ends", {k: phrases.letter_like(p) for k, p in zip("ab", ends(structure, u))}) for u in ids)


def connections(body: FreeBody) -> list[tuple[Action, ...]]:
    """The unknown actions of a body, those of one connection at one point together, in the order of the body."""
    groups: dict[tuple[str, str, str], list[Action]] = {}
    for a in body.actions:
        if a.unknown and a.load is None:
            groups.setdefault((a.source, a.point, a.by), []).append(a)
    return [tuple(g) for g in groups.values()]


def _connection(group: tuple[Action, ...], body: FreeBody, structure: Structure, sheet: Sheet, met: set[str]) -> Text:
    first = group[0]
    # A component that is given acts as well; its size is told after.
    acting = [a for a in body.actions if a.load is None and (a.source, a.point, a.by) == (first.source, first.point, first.by)]
    letters = Listing(tuple(phrases.symbol(a.symbol) for a in acting))
    arguments = {"point": phrases.letter_like(first.point), "unknowns": letters}
    if first.sense == "tension":
        a, b = ends(structure, first.unknown)
        return Text("cut.link_ground" if first.on == GROUND else "cut.link",
                    {**arguments, "member": Text(("member." if first.on == GROUND else "thing_capital.") + member_kind(structure, first.source),
                                                 {**member_names(structure, first.source)}),
                     "a": phrases.letter_like(a), "b": phrases.letter_like(b)})
    joint, kind = _joint(first, structure), kind_of(first, structure)
    if first.by == GROUND:
        toward = {"toward": phrases.toward(first.direction, sheet)} if first.direction else {}
        code = "edge" if joint and called(joint, structure.problem) == "edge" else kind
        return Text("cut.pin_support" if kind == "pin" else f"cut.{code}", {**arguments, **toward})
    code = {"fixed": "weld", "contact": "contact_between"}.get(kind, kind)
    if KINDS[kind].owned:
        code += "_slider" if structure.unknown(first.unknown).actions[0] == first.id else "_owner"
    if code == "pin" and (first.by.startswith(phrases.PIN) or first.on.startswith(phrases.PIN)):
        own = first.by if first.by.startswith(phrases.PIN) else first.on
        member = first.on if own == first.by else first.by
        return Text("cut.own_pin" if own == first.by else "cut.on_pin", {**arguments, "member": phrases.thing(member)})
    paired = any(a.pair in met for a in group) and (code in ("pin", "weld", "contact_between") or KINDS[kind].owned)
    toward = {"toward": phrases.toward(first.direction, sheet)} if first.direction else {}
    return Text(f"cut.{code}{'_pair' if paired else ''}", {**arguments, **toward, "other": phrases.thing(first.by)})


def kind_of(action: Action, structure: Structure) -> str:
    """Name of the kind of connection behind an action; pins that members make by meeting are no entries of a file."""
    joint = _joint(action, structure)
    return joint.kind if joint else "pin"


def _joint(action: Action, structure: Structure) -> Connection | None:
    named = [c for c in structure.problem.connections if c.name == action.source and c.kind != "link" and c.points[0] == action.point
             and (GROUND in c.parts) == (action.by == GROUND)]
    # A pin and a slot at one point share their name: then it is the one that joins these two.
    own = [c for c in named if {action.on, action.by} == set(c.parts)]
    return next(iter(own or named), None)


def ends(structure: Structure, unknown: str) -> tuple[str, str]:
    """The two points of a link or two-force member."""
    first, second = (structure.action(a) for a in structure.unknown(unknown).actions)
    return first.point, second.point


def member_kind(structure: Structure, source: str) -> str:
    return "member" if any(t.member == source for t in structure.two_force) else "link"


def member_names(structure: Structure, source: str) -> dict:
    if member_kind(structure, source) == "member":
        return {"name": source}
    c = next(c for c in structure.problem.connections if c.kind == "link" and c.name == source)
    return {"a": phrases.letter_like(c.points[0]), "b": phrases.letter_like(c.points[1])}


def inspection(structure: Structure) -> list[Text]:
    """What is seen without a sum, once for the whole lesson."""
    out = [_two_force(t, structure) for t in structure.two_force]
    out += cords.seen(structure.problem)
    for insight in structure.zero:
        out.append(Text(f"insight.{insight.rule}", {"point": phrases.letter_like(insight.subject),
                                                    "finds": Listing(tuple(Relation(f, ZERO) for f in phrases.unknowns(structure, insight.finds).items))}))
    return out


def _two_force(t: TwoForce, structure: Structure) -> Text:
    return Text("insight.two_force_bent" if t.bent else "insight.two_force",
                {"name": t.member, "a": phrases.letter_like(t.points[0]), "b": phrases.letter_like(t.points[1]),
                 "unknown": Listing((symbol(next(a.symbol for a in structure.actions if a.source == t.member)),))})


def _sums_of_point(body: FreeBody, structure: Structure) -> str:
    if body.kind != "pin":
        return "count.sums_block"
    return "count.sums_joint" if body.parts[0].removeprefix(phrases.PIN) in joints(structure.problem) else "count.sums_pin"


def joints(problem: Problem) -> set[str]:
    """Points at which links meet and no member passes."""
    return {p.name for p in problem.points} - {name for part in problem.parts for name in part.points}


def count(body: FreeBody, structure: Structure, known: Mapping[str, Number], finds: tuple[str, ...],
          shared: bool = False) -> Block:
    """How many unknowns the body has now, and whether its sums are enough. `finds`: what is wanted from it; `shared`: only
    together with another body."""
    open_now = [u for u in body.unknowns if u not in known]
    seen = [u for u in body.unknowns if u in known]
    alone = next((b for b in structure.bodies if len(body.parts) == 1 and b.name == body.parts[0]), None)
    sums = alone.rank if alone else 3
    said: list[Text] = []
    if open_now:
        said.append(Text("count.unknown", {"count": len(open_now), "unknowns": phrases.unknowns(structure, open_now)}))
    if seen:
        said.append(Text("count.known", {"count": len(seen), "unknowns": phrases.unknowns(structure, seen)}))
    if open_now:
        said.append(Text("count.sums_part" if sums == 3 else _sums_of_point(body, structure)))
        if shared:
            said.append(Text("count.shared", {"finds": phrases.unknowns(structure, finds)}))
        elif len(open_now) > sums:
            said.append(Text("count.too_many"))
        elif set(finds) == set(open_now):
            said.append(Text("count.enough_one" if len(open_now) == 1 else "count.enough"))
        if len(finds) < len(open_now) and not shared:
            said.append(Text("count.here", {"finds": phrases.unknowns(structure, finds)}))
    else:
        said.append(Text("count.all_known"))
    return Block("count", (Paragraph(run_on(*said)),))


