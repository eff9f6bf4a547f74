"""Routes in words: the plan, the fewest sums, other ways, and the teacher's own route with what is to be said of each sum."""

from __future__ import annotations

from unpin.lesson import phrases
from unpin.lesson.nodes import Bullets, Listing, Node, Paragraph, Text, sentences
from unpin.lesson.sheet import Sheet
from unpin.model.action import FreeBody, Structure
from unpin.model.directions import axis_of
from unpin.model.equation import Equation
from unpin.route.choices import Choice
from unpin.route.follow import Followed
from unpin.route.plan import Route, Step
from unpin.route.worked import Worked


def by_body(route: Route) -> list[tuple[tuple[FreeBody, ...], tuple[Step, ...]]]:
    """Steps in a row that stand on one free body, and blocks over several bodies each by itself."""
    groups: list[tuple[tuple[FreeBody, ...], list[Step]]] = []
    for step in route.steps:
        bodies = tuple({e.body.parts: e.body for e in step.equations}.values())
        if groups and [b.parts for b in groups[-1][0]] == [b.parts for b in bodies]:
            groups[-1][1].append(step)
        else:
            groups.append((bodies, [step]))
    return [(b, tuple(s)) for b, s in groups]


def plan(worked: Worked, route: Route) -> tuple[Node, ...]:
    """A sentence for each body, then how many sums that is and whether fewer would do."""
    structure = worked.structure
    groups = by_body(route)
    if not groups:
        return (Paragraph(Text("plan.nothing")),)
    out = _whose(worked, route)
    for k, (bodies, steps) in enumerate(groups):
        finds = phrases.unknowns(structure, dict.fromkeys(u for s in steps for u in s.finds))
        code = "only" if len(groups) == 1 else "first" if k == 0 else "last" if k == len(groups) - 1 > 1 else "then"
        block = "_block" if len(bodies) > 1 else ""
        out.append(Text(f"plan.{code}{block}", {"body": phrases.bodies(bodies), "finds": finds}))
    return Paragraph(sentences(*out)), Paragraph(sentences(*counts(worked, route)))


def _whose(worked: Worked, route: Route) -> list[Text]:
    """Whether the lesson follows the author's own sums, and what was missing if it does not."""
    own = worked.wanted
    if own is None:
        return []
    if route.claim == "own":
        return [Text("plan.own")]
    return [] if own.reaches else [Text("plan.own_misses", {"missing": phrases.unknowns(worked.structure, own.missing)})]


def counts(worked: Worked, route: Route) -> tuple[Text, ...]:
    least = worked.fewest
    total = Text("plan.sums", {"count": route.count})
    moves = move_set(least)
    if least.claim != "fewest":
        return total, Text("plan.between", {"lower": least.lower, "upper": least.count, "moves": moves})
    if least.count == route.count:
        return total, Text("plan.fewest_same", {"moves": moves})
    return total, Text("plan.fewest_less_own" if route.claim == "own" else "plan.fewest_less", {"least": least.count, "moves": moves})


def move_set(route: Route) -> Text:
    """The moves among which the fewest was sought."""
    block = route.move_set.get("block", 2)
    bodies = "sections" if route.move_set.get("bodies") == "sections" else "all"
    return Text(f"plan.moves_{bodies}", {"block": str(block)}) if block else Text(f"plan.moves_{bodies}_any")


def chapter(worked: Worked, taken: Route, sheet: Sheet) -> tuple[Node, ...]:
    """The recommended way where another was `taken`, the fewest where it differs, the next best, and the teacher's own."""
    nodes: list[Node] = []
    structure = worked.structure
    if _sums(taken) != _sums(worked.recommended):
        nodes += [Paragraph(Text("ways.recommended", {"count": worked.recommended.count})),
                  steps_listed(worked.recommended.steps, structure, sheet)]
    if worked.fewest.count != worked.recommended.count and _sums(worked.fewest) != _sums(taken):
        nodes += [Paragraph(Text("ways.fewest", {"count": worked.fewest.count})), steps_listed(worked.fewest.steps, structure, sheet)]
    for route in (r for r in worked.others if _sums(r) != _sums(taken)):
        nodes += [Paragraph(Text("ways.next", {"count": route.count})), steps_listed(route.steps, structure, sheet)]
    if worked.wanted is not None:
        nodes += own(worked, sheet)
    return tuple(nodes)


def _sums(route: Route) -> set:
    """What a route sums and on what, in whatever order."""
    return {(e.body.parts, e.functional) for s in route.steps for e in s.equations}


def steps_listed(steps, structure: Structure, sheet: Sheet) -> Bullets:
    return Bullets(tuple(step_phrase(s, structure, sheet) for s in steps))


def step_phrase(step: Step, structure: Structure, sheet: Sheet) -> Text:
    finds = phrases.unknowns(structure, step.finds)
    if len(step.equations) == 1:
        return Text("ways.sum_finds", {"what": sum_phrase(step.equations[0], sheet), "finds": finds})
    return Text("ways.block", {"sums": Listing(tuple(sum_phrase(e, sheet) for e in step.equations)), "finds": finds})


def sum_phrase(e: Equation, sheet: Sheet) -> Text:
    """A sum in the words of the trade: moments about C on member arm."""
    f, body = e.functional, {"body": phrases.free_body(e.body)}
    if f.kind == "about":
        if f.point:
            return Text("ways.sum_about", {**body, "point": phrases.letter_like(f.point)})
        return Text("ways.sum_place", {**body, "x": sheet.length(f.at[0]), "y": sheet.length(f.at[1])})
    axis = axis_of(f.direction.vector)
    if axis:
        return Text(f"ways.sum_{axis}", body)
    return Text("ways.sum_slanted", {**body, "toward": phrases.toward(f.direction, sheet)})


def own(worked: Worked, sheet: Sheet) -> list[Node]:
    """The teacher's route followed, and a verdict on each sum and on the whole."""
    route, structure = worked.wanted, worked.structure
    items = []
    for f in route.followed:
        items.append(verdict(f, structure, sheet))
    nodes: list[Node] = [Paragraph(Text("ways.own_title")), Bullets(tuple(items))]
    if not route.reaches:
        nodes.append(Paragraph(Text("ways.own_misses", {"missing": phrases.unknowns(structure, route.missing)})))
    elif route.count > worked.fewest.count:
        nodes.append(Paragraph(Text("ways.own_reaches_longer", {"count": route.count, "least": worked.fewest.count})))
    else:
        nodes.append(Paragraph(Text("ways.own_reaches", {"count": route.count})))
    return nodes


def verdict(f: Followed, structure: Structure, sheet: Sheet) -> Text:
    """What is to be said of one sum of the teacher's own."""
    if f.equation is None:
        return Text("ways.own_no_body", {"written": f.wanted.written})
    arguments = {"what": Text("ways.capital", {"what": sum_phrase(f.equation, sheet)}), "holds": phrases.unknowns(structure, f.holds),
                 "open": phrases.unknowns(structure, f.open), "finds": phrases.unknowns(structure, f.step.finds if f.step else ())}
    more = "_more" if f.verdict == "usable" and len(f.holds) > 1 else ""
    return Text(f"ways.own_{f.verdict}{more}", arguments)


def overview(worked: Worked, sheet: Sheet) -> tuple[Node, ...]:
    """All routes for one who wants to choose: the recommended one sum by sum, then the counts and the others."""
    steps = steps_listed(worked.recommended.steps, worked.structure, sheet)
    counted = Paragraph(sentences(*counts(worked, worked.recommended)))
    return (Paragraph(Text("ways.recommended", {"count": worked.recommended.count})), steps, counted, *chapter(worked, worked.recommended, sheet))


def of_body(found: tuple[Choice, ...], structure: Structure, sheet: Sheet) -> tuple[Node, ...]:
    """The sums worth taking on one free body and what each leaves unknown, those that leave least first."""
    if not found:
        return (Paragraph(Text("ways.body_nothing")),)
    items = []
    for c in found:
        arguments = {"what": sum_phrase(c.equation, sheet), "left": phrases.unknowns(structure, c.left),
                     "drops": phrases.unknowns(structure, c.drops), "count": len(c.drops)}
        items.append(Text("ways.choice_drops" if c.drops else "ways.choice", arguments))
    return (Paragraph(Text("ways.body_title", {"body": phrases.free_body(found[0].equation.body)})), Bullets(tuple(items)))
