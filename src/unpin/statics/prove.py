"""Three confirmations of values, none of which knows the route: a full solve, all balances, and virtual work."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from unpin.exact.number import Number
from unpin.model.action import Structure
from unpin.model.equation import Equation
from unpin.model.findings import Balance, Proof, Twist, WorkCheck
from unpin.model.space import ZERO, Wrench, plus, scaled
from unpin.statics.motion import Motions, rate
from unpin.statics.wrenches import NOTHING, load_wrench, total_load, unit_wrench


def prove(apart: Structure, full: Mapping[str, Number], values: Mapping[str, Number], derived: Mapping[str, Number],
          asked: Iterable[str], closing: Equation | None = None) -> Proof:
    """Confirm values.

    `apart`: the structure as the file says, nothing inspected. `full`: what `solve(apart)` fixes. `values`: unknown ids of it
    to N or N·m, complete where statics fixes them. `derived`: what the route found, under ids of `apart`. `asked`: ids
    to confirm by virtual work.
    """
    failures: list[str] = []
    agree = all(id in full and full[id] == v for id, v in derived.items())
    if not agree:
        failures.append("full_solve")
    checks = balances(apart, values)
    failures += [f"balance {b.body}" for b in checks if not b.holds]
    loads = total_load(apart)
    work = tuple(work_check(apart, twists, loads, id, values[id]) for id, twists in Motions(apart).release(asked).items())
    failures += [f"work {w.unknown}" for w in work if not w.agrees]
    return Proof(agree, checks, work, closing, not failures, tuple(failures))


def balances(apart: Structure, values: Mapping[str, Number]) -> tuple[Balance, ...]:
    """The sums of every body, and of the whole, with all forces put back. Bodies with an unknown that statics does not fix
    are left out."""
    scale = {u.id: u.scale for u in apart.unknowns}
    total = {b.name: NOTHING for b in apart.bodies}
    open_bodies = set()
    whole = NOTHING
    for a in apart.actions:
        if a.on not in total:
            continue
        if a.unknown and a.unknown not in values:
            open_bodies.add(a.on)
            continue
        wrench = scaled(unit_wrench(a), values[a.unknown] / scale[a.unknown]) if a.unknown else load_wrench(a)
        total[a.on] = plus(total[a.on], wrench)
        whole = plus(whole, wrench)
    out = [Balance(b.name, total[b.name], all(c == ZERO for c in total[b.name][: b.rank]))
           for b in apart.bodies if b.name not in open_bodies]
    if not open_bodies and len(apart.bodies) > 1:
        out.append(Balance("whole", whole, all(c == ZERO for c in whole)))
    return tuple(out)


def work_check(apart: Structure, twists: Mapping[str, Twist] | None, loads: Mapping[str, Wrench], unknown: str, value: Number) -> WorkCheck:
    """Release the one unknown, let the structure move through it by 1 (`twists`; None: it cannot), and sum the work of
    everything given."""
    if twists is None:
        return WorkCheck(unknown, {}, value, False)
    scale = apart.unknown(unknown).scale
    by_work = -rate(twists, loads) / scale
    return WorkCheck(unknown, twists, by_work, by_work == value)
