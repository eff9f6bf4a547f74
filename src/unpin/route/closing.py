"""The sum kept back for the closing check: of the other kind, not used on the way, and holding what was found."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from unpin.exact.number import Number, approx
from unpin.model.action import Structure
from unpin.model.directions import X, Y
from unpin.model.equation import Equation, Functional
from unpin.route.plan import Step
from unpin.statics.equation import write
from unpin.statics.isolate import isolate


def closing_check(structure: Structure, steps: Sequence[Step], values: Mapping[str, Number]) -> Equation | None:
    """A sum with every unknown known and at least two forces in it, preferably of the kind that the last step was not,
    and with the value found last in it; bodies already drawn come first. None when every such sum was used."""
    used = {(e.body.parts, _name(e.functional)) for s in steps for e in s.equations}
    last = steps[-1] if steps else None
    other = "along" if last and last.equations[-1].functional.kind == "about" else "about"
    drawn = list(dict.fromkeys(e.body.parts for s in reversed(steps) for e in s.equations))
    drawn += [(b.name,) for b in structure.bodies] + [tuple(b.name for b in structure.bodies)]
    best = None
    for order, parts in enumerate(dict.fromkeys(drawn)):
        body = isolate(structure, parts)
        if any(u not in values for u in body.unknowns) or not body.unknowns:
            continue
        for functional in _functionals(structure, body):
            if (parts, _name(functional)) in used or (body.kind == "pin" and functional.kind == "about"):
                continue
            equation = write(body, functional)
            if len({t.action.id for t in equation.terms}) < 2 or not equation.unknowns:
                continue
            found = {u for s in steps for u in s.finds} & set(equation.unknowns)
            fresh = any(f in equation.unknowns for f in (last.finds if last else ()))
            key = (not found, functional.kind != other, not fresh, -len(found), len(equation.terms) > 6, order, len(equation.terms))
            if best is None or key < best[0]:
                best = (key, equation)
    return best[1] if best else None


def _functionals(structure: Structure, body):
    yield Functional("along", direction=X)
    yield Functional("along", direction=Y)
    passed = dict.fromkeys(a.point for a in body.actions if a.point)
    for point in passed:
        yield Functional("about", point=point, at=structure.problem.coordinates[point])


def _name(functional: Functional):
    """A key for telling sums apart; in plain floats, since fifty digits do not hash."""
    return functional.kind, tuple(map(approx, functional.at if functional.kind == "about" else functional.direction.vector))
