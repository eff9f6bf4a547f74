"""A solution as data, in the documented format `docs/reference/solution.schema.json`.

Values of answers are magnitudes in the unit beside them, at full precision, with the true sense as a word; `printed` is the
same as a lesson shows it.
"""

from __future__ import annotations

import json
from decimal import Context, Decimal
from fractions import Fraction
from typing import Any

from unpin.base.diagnostic import Diagnostic
from unpin.base.units import FORCE, LENGTH, MOMENT, NUMBER, Dimension
from unpin.exact.expression import Apply, Expression, grammar
from unpin.exact.holds import condition
from unpin.exact.lettered import is_lettered
from unpin.exact.number import Number, approx
from unpin.exact.rounding import short_form
from unpin.lesson import bars, statement, terms
from unpin.lesson.centres import with_centres
from unpin.lesson.cords import slack
from unpin.lesson.isolate import ends
from unpin.lesson.nodes import Lesson, Paragraph, Section, Working, walk
from unpin.lesson.outcome import as_worked
from unpin.lesson.sheet import Sheet, exact_formula, symbol
from unpin.model.action import Structure
from unpin.model.answer import Answer, Component
from unpin.model.equation import Equation
from unpin.render.maths import sentence
from unpin.render.maths import text as signs
from unpin.route.plan import Route, Step
from unpin.route.worked import Worked
from unpin.words import lettered

FORMAT, VERSION = "unpin solution", 1


def write(worked: Worked, lesson: Lesson, sheet: Sheet, diagnostics: tuple[dict, ...] = (), route: Route | None = None) -> str:
    """The document as text, keys in a fixed order, ending in a newline."""
    return json.dumps(data(worked, lesson, sheet, diagnostics, route), ensure_ascii=False, indent=2) + "\n"


def data(worked: Worked, lesson: Lesson, sheet: Sheet, diagnostics: tuple[dict, ...] = (),
         route: Route | None = None) -> dict[str, Any]:
    """The document as plain dicts, lists, strings, numbers. `route`: the one the lesson follows, by default the recommended."""
    language = lesson.language
    route = route or worked.recommended
    closing = worked.proof.closing if worked.proof else None
    sheet = with_centres(sheet, worked.problem, [*(e for s in route.steps for e in s.equations), closing]) if route else sheet
    return {
        "format": FORMAT, "version": VERSION, "title": worked.problem.title, "solved": lesson.solved,
        "soundness": soundness(worked, next(s for s in lesson.sections if s.kind == "sound"), language),
        "answers": [entry for a in worked.answers for entry in _answer(a, worked, sheet, language)],
        "bars": _bars(worked, sheet),
        "sums": {"fewest": worked.fewest.count, "recommended": worked.recommended.count, "lower_bound": worked.fewest.lower} if route else None,
        "claim": _claim(worked, language) if route else None,
        "proof": _proof(worked, sheet),
        "route": _route(route, worked),
        "steps": _steps(route, worked, lesson, sheet) if route else [],
        "follows": _follows(lesson),
        "other_ways": [_way(r) for r in worked.others],
        "diagnostics": list(diagnostics),
    }


def remarks(diagnostics: tuple[Diagnostic, ...], sentence_of) -> tuple[dict, ...]:
    """Diagnostics as data; `sentence_of` gives (sentence, hint) of one."""
    out = []
    for d in diagnostics:
        said, cure = sentence_of(d)
        place = {"file": d.place.file, "line": d.place.line, "column": d.place.column, "end_column": d.place.end_column} if d.place else None
        out.append({"severity": d.severity, "code": d.code, "place": place, "path": d.path, "message": said, "hint": cure})
    return tuple(out)


def soundness(worked: Worked, chapter: Section, language: str = "en") -> dict[str, Any]:
    """The four statements as numbers and codes, and as the sentences of the lesson."""
    s = worked.soundness
    said = [sentence.written(n.text, language) for n in walk(chapter.children) if isinstance(n, Paragraph)]
    slack_ = ["slack_cord"] if slack(worked.structure, worked.values or {}) else []
    return {"solvable": s.solvable, "determinate": s.determinate, "in_balance": s.holds, "unknowns": s.unknowns, "sums": s.sums,
            "opened": [o.connection.points[0] for o in worked.opened], "freedoms": len(s.freedoms), "self_stresses": len(s.self_stresses), "causes": [c.code for c in s.causes],
            "remarks": [*(c.code for c in s.remarks), *slack_], "said": said}


def _answer(answer: Answer, worked: Worked, sheet: Sheet, language: str):
    asked = sentence.written(statement.short(answer.asked, worked.problem), language)
    if not answer.found:
        yield {"asked": asked, "found": False, "name": None, "shown": None, "value": None, "unit": None, "sense": None, "worked": None}
    for c in answer.components:
        yield {"asked": asked, "found": True, "name": component_name(c), "shown": signs.write(symbol(c.symbol)), **_value(c, sheet),
               "sense": None if c.sense == "number" else c.sense, "angle": _angle(c),
               "worked": None if is_lettered(c.value) else number(as_worked(c, worked.values) / sheet.units[c.dimension].factor),
               **_formula(as_worked(c, worked.values), c, sheet)}


def _bars(worked: Worked, sheet: Sheet) -> list[dict[str, Any]]:
    """Every bar of a truss of which all are asked for, tension positive. `rule`: what shows that it has no force, `at` which pin."""
    unit, seen = sheet.units[FORCE], {u: i for i in worked.structure.zero for u in i.finds}
    out, ways = [], bars.senses(worked)
    for u in bars.tabled(worked):
        value, rule = worked.values[u.id], seen.get(u.id)
        out.append({"bar": u.source, "ends": list(ends(worked.structure, u.id)), "unknown": u.id, **_signed(value, FORCE, sheet),
                    "unit": unit.symbol, "printed": sheet.result(value, FORCE).printed.text,
                    "sense": ways[u.id],
                    "rule": rule.rule if rule else None, "at": rule.subject if rule else None})
    return out


def component_name(c: Component) -> str:
    """`A_x`, `F_BD`, `C_x on arm`; the size of a resultant is the letter alone."""
    return c.symbol.base + (f"_{c.symbol.sub}" if c.symbol.sub else "") + (f" on {c.symbol.on}" if c.symbol.on else "")


def _value(c: Component, sheet: Sheet) -> dict[str, Any]:
    unit = sheet.units[c.dimension]
    if is_lettered(c.value):
        return {"value": None, "unit": unit.symbol, "printed": sheet.size(c.value, c.dimension).printed.text, "exact": None}
    return {"value": abs(number(c.value / unit.factor)), "unit": unit.symbol,
            "printed": sheet.size(c.value, c.dimension).printed.text, "exact": _exact(abs(c.value / unit.factor))}


def _formula(value: Number, c: Component, sheet: Sheet) -> dict[str, str]:
    """With letters: the signed value in the grammar of the problem file, and the condition under which the sense is this one."""
    if not is_lettered(value):
        return {}
    found = condition(value)
    out = {"formula": _expression(*lettered.written(value, sheet.units[c.dimension]))}
    return out | ({"while": f"{_expression(1, found.greater)} > {_expression(1, found.less)}"} if found else {})


def _expression(way: int, size: Expression) -> str:
    size = lettered.with_numbers(size, _twelve)
    return grammar(Apply("neg", (size,), 0, 0) if way < 0 else size)


def _twelve(value: Fraction) -> Fraction:
    """Small fractions as they are, others with twelve good figures."""
    if value.denominator < 10**4 and value.numerator < 10**6:
        return value
    return Fraction(Context(prec=12).divide(Decimal(value.numerator), Decimal(value.denominator)))


def _signed(value: Number, dimension: Dimension, sheet: Sheet) -> dict[str, Any]:
    """A signed number in the unit of its dimension; with letters the formula stands for it."""
    if is_lettered(value):
        return {"value": None, "formula": _expression(*lettered.written(value, sheet.units[dimension]))}
    return {"value": number(value / sheet.units[dimension].factor)}


def _plain(value: Number, key: str, dimension: Dimension = NUMBER) -> dict[str, Any]:
    """A length in metres or a bare number; with letters the formula stands for it, in the file's unit of length."""
    if not is_lettered(value):
        return {key: number(value)}
    from unpin.exact.shape import shape

    unit = value.letters.units.get("length", 1) if dimension == LENGTH else 1
    return {key: None, "formula": _expression(*shape(value, dimension, Fraction(unit))[:2])}


def _pair(values: tuple[Number, ...], key: str, dimension: Dimension = NUMBER) -> dict[str, Any]:
    """Two components; those with letters are null and stand among the formulas, where the others are null."""
    out: dict[str, Any] = {key: [_plain(c, "", dimension)[""] for c in values]}
    if any(map(is_lettered, values)):
        out["formulas"] = [_plain(c, "", dimension).get("formula") for c in values]
    return out


def number(value: Number) -> float:
    """A float of twelve good figures."""
    return float(f"{approx(value):.12g}") + 0.0


def _exact(value: Number) -> str | None:
    form = short_form(value)
    return signs.write(exact_formula(form)) if form else None


def _angle(c: Component) -> float | None:
    return None if c.angle is None or c.lean is not None else round(c.angle, 9) + 0.0


def _claim(worked: Worked, language: str) -> dict[str, Any]:
    from unpin.lesson.ways import move_set

    least = worked.fewest
    return {"kind": least.claim, "moves": sentence.written(move_set(least), language), "block": least.move_set.get("block"),
            "bodies": least.move_set.get("bodies")}


def _proof(worked: Worked, sheet: Sheet) -> dict[str, Any] | None:
    p = worked.proof
    if p is None:
        return None
    return {"passed": p.passed, "full_solve": p.full_solve, "balances": [{"body": b.body, "holds": b.holds} for b in p.balances],
            "virtual_work": [{"unknown": w.unknown, "agrees": w.agrees} for w in p.work],
            "closing": _sum(p.closing, sheet) if p.closing else None, "arithmetic": {1: "fractions", 2: "roots", 3: "angles", 4: "fifty digits", 5: "letters"}[worked.rung]}


def _steps(route: Route, worked: Worked, lesson: Lesson, sheet: Sheet) -> list[dict[str, Any]]:
    workings = {n.step: n for s in lesson.sections for n in walk(s.children) if isinstance(n, Working) and not n.id.endswith("-together")}
    together = {n.step: n for s in lesson.sections for n in walk(s.children) if isinstance(n, Working) and n.id.endswith("-together")}
    out, place = [], 0
    for step in route.steps:
        equations = []
        for e in step.equations:
            place += 1
            equations.append({**_sum(e, sheet), "terms": _terms(terms.oriented(e, sheet)), "lines": _lines(workings.get(place))})
        solved = _lines(together.get(place + 1 - len(step.equations)))
        out.append({"equations": equations, "finds": _finds(step, worked, sheet), "together": solved, "reason": step.reason.code,
                    "drops": [{"unknown": u, "how": how} for u, how in step.reason.drops]})
    return out


def _route(route: Route | None, worked: Worked) -> str | None:
    if route is None:
        return None
    return "recommended" if route is worked.recommended else "fewest" if route is worked.fewest else "own"


def _follows(lesson: Lesson) -> list[dict[str, Any]]:
    """Each reason of the chapter on what follows with its lines."""
    found: list[dict[str, Any]] = []
    for node in (n for s in lesson.sections if s.kind == "found" for n in walk(s.children)):
        if isinstance(node, Paragraph):
            found.append({"said": sentence.written(node.text, lesson.language), "lines": []})
        elif isinstance(node, Working):
            found[-1]["lines"] += _lines(node)
    return found


def _sum(e: Equation, sheet: Sheet | None = None) -> dict[str, Any]:
    f = e.functional
    common = {"body": list(e.body.parts), "kind": "moments" if f.kind == "about" else "forces", "header": signs.write(terms.header(f, sheet))}
    if f.kind == "about":
        return {**common, "about": f.point or None, **_pair(f.at, "at", LENGTH)}
    way = sheet.sense(f) if sheet else 1
    return {**common, **_pair(tuple(c * way / f.direction.length for c in f.direction.vector), "along")}


def _terms(e: Equation) -> list[dict[str, Any]]:
    """Coefficients are SI: newtons to newtons or newton metres."""
    moments = e.functional.kind == "about"
    return [{"action": t.action.id, "unknown": t.action.unknown or None, "sign": t.sign,
             **_plain(t.coefficient, "coefficient", (MOMENT if moments else FORCE) / t.action.dimension),
             "factors": [{"kind": f.kind, **_plain(f.value, "value", LENGTH if f.kind in ("arm", "run") else NUMBER)} for f in t.factors]} for t in e.terms]


def _lines(working: Working | None) -> list[dict[str, str]]:
    return [{"step": line.name, "text": signs.write(line.formula)} for line in working.lines] if working else []


def _finds(step: Step, worked: Worked, sheet: Sheet) -> list[dict[str, Any]]:
    out = []
    for u in step.finds:
        unknown = worked.structure.unknown(u)
        unit = sheet.units[unknown.dimension]
        out.append({"unknown": u, **_signed(step.values[u], unknown.dimension, sheet), "unit": unit.symbol})
    return out


def ways(worked: Worked, language: str = "en") -> dict[str, Any]:
    """All routes: the recommended, the fewest sums, the next best, and the teacher's own with a verdict on each sum."""
    return {"format": "unpin ways", "version": VERSION, "title": worked.problem.title,
            "recommended": _way(worked.recommended), "fewest": _way(worked.fewest), "lower_bound": worked.fewest.lower,
            "claim": _claim(worked, language), "other_ways": [_way(r) for r in worked.others],
            "own": _own(worked.wanted) if worked.wanted is not None else None}


def _own(own) -> dict[str, Any]:
    followed = [{"written": f.wanted.written, "verdict": f.verdict, "sum": _sum(f.equation) if f.equation else None,
                 "holds": list(f.holds), "open": list(f.open), "finds": list(f.step.finds) if f.step else []} for f in own.followed]
    return {"count": own.count, "reaches": own.reaches, "missing": list(own.missing), "followed": followed}


def choices(found, structure: Structure) -> dict[str, Any]:
    """The sums worth taking on one free body, those that leave least unknown first."""
    return {"format": "unpin sums", "version": VERSION, "title": structure.problem.title,
            "sums": [{**_sum(c.equation), "leaves": list(c.left), "drops": list(c.drops)} for c in found]}


def _way(route: Route) -> dict[str, Any]:
    return {"count": route.count, "sums": [_sum(e) for s in route.steps for e in s.equations]}


