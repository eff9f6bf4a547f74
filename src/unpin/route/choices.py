"""For a chosen free body: the sums worth taking, and what each leaves unknown."""

from __future__ import annotations

from collections.abc import Collection, Iterable

from unpin.base.record import record
from unpin.model.action import Structure
from unpin.model.equation import Equation
from unpin.route.candidates import functional_of, survey
from unpin.route.cost import DEFAULT, CostTable
from unpin.statics.equation import write
from unpin.statics.isolate import isolate


@record
class Choice:
    """One sum. `holds`: the unknowns in it; `left`: those not yet known; `drops`: unknowns on the body that vanish from it;
    `cost` in hundredths of a plain sum."""

    equation: Equation
    holds: tuple[str, ...]
    left: tuple[str, ...]
    drops: tuple[str, ...]
    cost: int


def choices(structure: Structure, bodies: Iterable[str], known: Collection[str] = (), costs: CostTable = DEFAULT) -> tuple[Choice, ...]:
    """Sums of one free body, those that leave the fewest unknowns first, then the cheaper. A sum that leaves nothing unknown
    is left out. Raises KeyError for a name that is no body of the structure."""
    body = isolate(structure, bodies)
    ground = survey(structure, costs, [frozenset(body.parts)])
    out = []
    for s in ground.sums:
        equation = write(body, functional_of(ground, s))
        holds = ground.names(s.mask)
        left = tuple(u for u in holds if u not in known)
        if left:
            drops = tuple(u for u in body.unknowns if u not in holds)
            out.append(Choice(equation, holds, left, drops, s.cost))
    return tuple(sorted(out, key=lambda c: (len(c.left), c.cost)))
