"""From a worked problem to its lesson: the order in which a person would teach it, on one screen."""

from __future__ import annotations

from fractions import Fraction

from unpin.lesson import bars, cords, derived, isolate, joints, outcome, phrases, soundness, statement, ways, working
from unpin.lesson.bare import housed
from unpin.lesson.centres import with_centres
from unpin.lesson.figures import Studio
from unpin.lesson.kinds import with_kinds
from unpin.lesson.nodes import Block, Bullets, Lesson, Node, Paragraph, Section, Text
from unpin.lesson.own_words import kept_together
from unpin.lesson.sheet import Sheet, sheet_for
from unpin.model.action import FreeBody
from unpin.model.equation import Equation
from unpin.route.closing import closing_check
from unpin.route.follow import OwnRoute
from unpin.route.plan import Route
from unpin.route.worked import Worked


def build(worked: Worked, figures: int = 0, route: str = "", language: str = "", drawn: bool = True,
          centres: bool = True) -> Lesson:
    """The lesson of a problem. `figures`: significant figures, 0 for what the problem says; `route`: recommended, fewest or
    own (the teacher's, as far as it goes), "" for own where it reaches everything asked and else recommended; `drawn` False leaves the
    figures out, `centres` False the moment centres and arms on them. An unsound problem gives a lesson that says why. `language` "":
    that of the problem's house style.

    Raises ValueError for a route the problem does not have.
    """
    sheet = sheet_for(worked.problem, worked.values or {}, figures, language)
    solved = worked.recommended is not None and worked.proof is not None
    chosen = chosen_route(worked, route) if solved else None
    last = _closing(worked, chosen) if chosen else None
    written = [e for s in chosen.steps for e in s.equations] if chosen else []
    sheet = with_centres(sheet, worked.problem, [*written, last, *(f.failing for f in worked.soundness.freedoms)])
    studio = Studio(worked, sheet, drawn, centres)
    sections = [_problem(worked, sheet, studio), _sound(worked, sheet, studio)]
    if chosen:
        sections += [_plan(worked, chosen, studio), *joints.shortened(_bodies(worked, chosen, sheet, studio))]
        follows = derived.chapter(worked, chosen, sheet)
        sections += [Section("found", "found", Text("title.found"), follows)] if follows else []
        sections.append(_answers(worked, sheet, studio))
        sections.append(Section("check", "check", Text("title.check"), outcome.check(worked, sheet, last)))
        other = ways.chapter(worked, chosen, sheet)
        if other:
            sections.append(Section("ways", "ways", Text("title.ways"), other))
    complete = solved and all(a.found for a in worked.answers) and not cords.slack(worked.structure, worked.values)
    made = Lesson(worked.problem.title, kept_together(worked.problem.text), tuple(sections), (Text("caution.teaching"),), complete, sheet.language,
                  worked.problem.house)
    return with_kinds(housed(made, sheet), worked.problem)


def _closing(worked: Worked, route: Route) -> Equation | None:
    """The sum kept back, for a route other than the recommended one chosen anew."""
    if route is worked.recommended:
        return worked.proof.closing
    return closing_check(worked.structure, route.steps, worked.values)


def chosen_route(worked: Worked, name: str) -> Route:
    """The route of that name as a route; "" as for `build`."""
    if not name:
        name = "own" if worked.wanted is not None and worked.wanted.reaches else "recommended"
    if name == "recommended":
        return worked.recommended
    if name == "fewest":
        return worked.fewest
    if name == "own" and worked.wanted is not None:
        own = worked.wanted
        return Route(own.steps, own.count, worked.recommended.cost, "own", worked.fewest.lower, worked.fewest.move_set)
    raise ValueError(name)


def by_hand(worked: Worked, own: OwnRoute, language: str = "en") -> tuple[Section, ...]:
    """The chapters of the sums that a person has taken so far, in their order. `worked` has values, a route is not needed."""
    sheet = sheet_for(worked.problem, worked.values or {}, language=language)
    sheet = with_centres(sheet, worked.problem, [e for s in own.steps for e in s.equations])
    route = Route(own.steps, own.count, Fraction(0), "own", 0)
    return tuple(with_kinds(s, worked.problem) for s in _bodies(worked, route, sheet, Studio(worked, sheet)))


def _problem(worked: Worked, sheet: Sheet, studio: Studio) -> Section:
    children: tuple[Node, ...] = (*studio.problem(), statement.given(worked.problem, sheet), statement.find(worked.problem),
                                  statement.assumed(worked.problem, sheet))
    return Section("problem", "problem", Text("title.problem"), children)


def sound_section(worked: Worked) -> Section:
    """The chapter on soundness by itself, without a figure."""
    sheet = with_centres(sheet_for(worked.problem, {}), worked.problem, [f.failing for f in worked.soundness.freedoms])
    return with_kinds(housed(_sound(worked, sheet, Studio(worked, sheet, drawn=False)), sheet), worked.problem)


def _sound(worked: Worked, sheet: Sheet, studio: Studio) -> Section:
    children = soundness.chapter(worked.apart, worked.soundness, sheet, worked.opened)
    if worked.soundness.freedoms:
        children = (*studio.motion(), *children)
    return Section("sound", "sound", Text("title.sound"), children)


def _plan(worked: Worked, route: Route, studio: Studio) -> Section:
    seen = isolate.inspection(worked.structure)
    children: tuple[Node, ...] = ways.plan(worked, route)
    if seen:
        children = (Block("inspection", (Bullets(tuple(seen)),)), *children)
    children = (*children, *studio.apart())
    return Section("plan", "plan", Text("title.plan"), children)


def _bodies(worked: Worked, route: Route, sheet: Sheet, studio: Studio) -> list[Section]:
    """One chapter for each body: cut it loose, draw it, count, then its sums."""
    known = {u: worked.values[u] for insight in worked.structure.zero for u in insight.finds}
    met: set[str] = set()
    drawn: set[tuple[str, ...]] = set()
    out: list[Section] = []
    number = 1
    for place, (bodies, steps) in enumerate(ways.by_body(route), 1):
        children: list[Node] = []
        for one in bodies:
            children += _body(one, worked, sheet, studio, known, met, drawn, steps, len(bodies) > 1)
        for step in steps:
            children += working.move(step, worked.structure, sheet, known, number)
            number += len(step.equations)
            known.update(step.values)
        title = Text("title.body", {"number": place, "body": phrases.bodies(bodies)})
        out.append(Section(f"body-{place}", "body", title, tuple(children)))
    return out


def _body(body: FreeBody, worked: Worked, sheet: Sheet, studio: Studio, known, met: set[str], drawn: set, steps,
          shared: bool) -> list[Node]:
    here = set(body.unknowns)
    finds = tuple(dict.fromkeys(u for s in steps for u in s.finds if u in here))
    equations = [e for s in steps for e in s.equations if e.body.parts == body.parts]
    children: list[Node] = []
    if body.parts in drawn:
        children.append(Block("diagram", (Paragraph(Text("diagram.same")), *studio.free_body(body, equations))))
    else:
        drawn.add(body.parts)
        children.append(isolate.choose(body, worked.structure, sheet, met))
        children.append(Block("diagram", studio.free_body(body, equations)))
    met.update(a.id for a in body.actions)
    children.append(isolate.count(body, worked.structure, known, finds, shared))
    return children


def _answers(worked: Worked, sheet: Sheet, studio: Studio) -> Section:
    shown = frozenset(u.id for u in bars.tabled(worked))
    children = (*outcome.answers(worked, sheet, shown), *bars.table(worked, sheet), *studio.final())
    return Section("answers", "answers", Text("title.answers"), children)
