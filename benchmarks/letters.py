"""Letters without values: route and proof against SymPy solving the same sums, in the same minutes. `python benchmarks/letters.py`.

SymPy gets the sums as a person writes them, unknowns being forces, so that a slope brings its root; the structure is as the file says,
nothing seen by inspection. It only solves: no route, no second way, no simplification of what it finds.
"""

from __future__ import annotations

import statistics
import sys
from fractions import Fraction
from pathlib import Path

from timing import times

sys.path.insert(0, str(Path(__file__).parents[1] / "tests" / "oracle"))


def to_sympy(x):
    """A number of ours in SymPy."""
    import sympy

    from unpin.exact.lettered import Lettered
    from unpin.exact.surd import Surd

    if isinstance(x, Surd):
        return sum(sympy.Rational(q.numerator, q.denominator) * sympy.sqrt(d) for d, q in x.terms.items())
    if not isinstance(x, Lettered):
        return sympy.Rational(x.numerator, x.denominator)
    names = [sympy.Symbol(f"{g.name}_{g.kind}", positive=True) for g in x.letters.generators]

    def polynomial(p):
        total = sympy.Integer(0)
        for powers, c in p.terms():
            part = sympy.Integer(int(c))
            for k, power in enumerate(powers):
                part *= names[k] ** int(power) if power else 1
            total += part
        return total

    total = sympy.Integer(0)
    for key, (top, bottom) in x.sums.items():
        part = polynomial(top) / polynomial(bottom)
        for r in key:
            have = x.letters.radicands[r]
            part *= sympy.sqrt(have if isinstance(have, int) else polynomial(have))
        total += part
    return total


def main(repeats: int) -> None:
    import sympy

    from lettered_problems import PROBLEMS, formulas
    from unpin.read import read_text
    from unpin.route.work import work
    from unpin.statics.assemble import assemble
    from unpin.statics.solve import exact_rows, solve

    panels = 6
    lower, upper = ("-".join(f"{row}{k}" for k in range(n)) for row, n in (("A", panels + 1), ("B", panels)))
    web = "-".join(f"A{k}-B{k}" for k in range(panels)) + f"-A{panels}"
    long = f"""
letters: {{P: a force, Q: a force, a: a length, h: a length}}
points:
  A0: [0, 0]
  {" ".join(f"A{k}" for k in range(1, panels + 1))}: every 2a right from A0
  B0: A0 right a up h
  {" ".join(f"B{k}" for k in range(1, panels))}: every 2a right from B0
links: [{lower}, {upper}, {web}]
supports: {{A0: pin, A{panels}: roller}}
loads: [P at A2 down, Q at B3 right]
find: [A2-A3, B2-B3, A3-B2]
"""
    for name, text in (*((n, PROBLEMS[n]) for n in ("arm", "sieve", "three hinges", "truss")), ("truss of six panels", long)):
        problem = read_text(text).problem
        structure = assemble(problem)
        rows, _, ids = exact_rows(structure)
        letters = [sympy.Symbol(f"unknown {i}") for i in ids]
        scale = [to_sympy(u.scale) for u in structure.unknowns]
        sums = [sum(to_sympy(v) / scale[c] * letters[c] for c, v in row.items() if c < len(ids)) - to_sympy(row.get(len(ids), Fraction(0))) for row in rows]
        ours = times(lambda problem=problem: work(problem, others=0), repeats)
        printed = times(lambda problem=problem: formulas(work(problem, others=0)), repeats)
        alone = times(lambda structure=structure: solve(structure), repeats)
        print(f"{name}: {len(ids)} unknowns. The full solve alone {statistics.median(alone):.1f} ms. Route and proof "
              f"{statistics.median(ours):.1f} ms, with the formulas printed {statistics.median(printed):.1f} ms")
        for what, run in (("linsolve", lambda s=sums, x=letters: sympy.linsolve(s, *x)), ("solve", lambda s=sums, x=letters: sympy.solve(s, x))):
            theirs = times(run, max(1, repeats // 10))
            middle = statistics.median(theirs)
            print(f"  SymPy {what} {middle:.0f} ms: {middle / statistics.median(ours):.0f} times route and proof, {middle / statistics.median(alone):.0f} times the solve")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 10)
