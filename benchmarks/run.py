"""Ratios of speed, each against something run beside it in the same minutes: `make bench`.

Nothing here is asserted: figures are for choosing and for noticing, tests never time anything. Medians are printed with the smallest and
largest run. The other side of each ratio is a general-purpose library doing the same task, or the least that any program must do.
"""

from __future__ import annotations

import argparse
import statistics
import subprocess
import sys
from fractions import Fraction
from pathlib import Path

from timing import times

ROOT = Path(__file__).parents[1]
EXAMPLE = ROOT / "examples" / "theatre-hoist.yaml"
HUNDRED = 100


def report(title: str, ours: list[float], theirs: list[float], what: str) -> None:
    a, b = statistics.median(ours), statistics.median(theirs)
    print(f"{title}\n  unpin {a:8.1f} ms ({min(ours):.1f} to {max(ours):.1f})   {what} {b:8.1f} ms ({min(theirs):.1f} to {max(theirs):.1f})"
          f"   ratio {a / b:.2f}")


def whole_lesson(repeats: int) -> None:
    """Warm: route, proof and lesson without figures, against SymPy solving the same equations and nothing else."""
    import sympy

    from unpin.exact.surd import Surd
    from unpin.lesson.build import build
    from unpin.read import read_file
    from unpin.route.work import work
    from unpin.statics import assemble
    from unpin.statics.solve import exact_rows

    problem = read_file(EXAMPLE).problem
    structure = assemble(problem)
    rows, _, ids = exact_rows(structure)
    letters = [sympy.Symbol(name) for name in ids]

    def plain(x):
        x = x + Fraction(0)
        if isinstance(x, Surd):
            return sum(sympy.Rational(q.numerator, q.denominator) * sympy.sqrt(d) for d, q in x.terms.items())
        return sympy.Rational(x.numerator, x.denominator)

    # The sums as a person writes them: the unknowns are forces in newtons, so a slope brings its root into the matrix.
    scale = [u.scale for u in structure.unknowns]
    equations = [sum(plain(v / scale[c]) * letters[c] for c, v in row.items() if c < len(ids)) - plain(row.get(len(ids), Fraction(0)))
                 for row in rows]

    ours = times(lambda: build(work(problem), drawn=False), repeats)
    report("whole lesson of a three-part frame with slopes, without figures", ours, times(lambda: sympy.solve(equations, letters), repeats),
           "SymPy solve alone  ")
    report("  the same", ours, times(lambda: sympy.linsolve(equations, *letters), repeats), "SymPy linsolve alone")
    report("  route and proof only", times(lambda: work(problem, others=0), repeats),
           times(lambda: sympy.linsolve(equations, *letters), repeats), "SymPy linsolve alone")


def start_up(repeats: int) -> None:
    """Cold: a whole process from the shell to its last byte."""
    command = [str(Path(sys.executable).parent / "unpin"), "solve", str(EXAMPLE)]
    ours = times(lambda: subprocess.run(command, check=True, stdout=subprocess.DEVNULL), repeats)
    first = times(lambda: _first_byte(command), repeats)
    numpy = times(lambda: subprocess.run([sys.executable, "-c", "import numpy"], check=True), repeats)
    report("start to first output of `unpin solve`", first, numpy, "import numpy")
    report("start to last output of `unpin solve`", ours, numpy, "import numpy")


def _first_byte(command: list[str]) -> None:
    process = subprocess.Popen(command, stdout=subprocess.PIPE)
    process.stdout.read(1)
    # Only the wait is timed by the caller up to here; the rest must be read so that the pipe closes.
    process.kill()
    process.wait()


def handout(repeats: int) -> None:
    """Warm: problem to PDF, against the typesetter alone on the same source. Every run has a title and loads of its own, since the
    typesetter remembers what it has set before."""
    from dataclasses import replace
    from itertools import count

    from unpin.lesson.build import build
    from unpin.read import read_text
    from unpin.render import pdf
    from unpin.render.typeset import compile_document
    from unpin.route.work import work

    text = EXAMPLE.read_text("utf-8")
    number = count(1)

    def fresh():
        k = next(number)
        problem = read_text(text.replace("600 N", f"{600 + k} N").replace("0.9", f"0.{900 + k}")).problem
        return replace(problem, title=f"{problem.title} {k}")

    def sources(lesson):
        return pdf.source(lesson), pdf.pictures(lesson)

    ready = [sources(build(work(fresh()))) for _ in range(2 * repeats)]
    compile_document(*ready[0], "pdf")
    waiting = iter(ready[repeats:])
    theirs = times(lambda: compile_document(*next(waiting), "pdf"), repeats)
    report("problem to PDF handout", times(lambda: pdf.write(build(work(fresh()))), repeats), theirs, "typesetter alone")


def hundred(repeats: int) -> None:
    """A hundred problem files to PDF on all cores, as `unpin handouts` does it, beside the typesetter alone on the very same documents,
    on one core and on all. Every file has a title of its own. Each side starts its own processes."""
    from concurrent.futures import ProcessPoolExecutor
    from multiprocessing import get_context
    from tempfile import TemporaryDirectory

    from unpin.lesson.build import build
    from unpin.read import read_file
    from unpin.render import pdf
    from unpin.route.work import work

    files = sorted([*(ROOT / "examples").glob("*.yaml"), *(ROOT / "tests" / "published" / "problems").glob("*.yaml")])[:HUNDRED]
    with TemporaryDirectory() as folder:
        source, target = Path(folder) / "problems", Path(folder) / "handouts"
        source.mkdir()
        for k in range(HUNDRED):
            text = files[k % len(files)].read_text("utf-8")
            (source / f"{k:03}.yaml").write_text(f"# {k}\n{text}", "utf-8")
        command = [str(Path(sys.executable).parent / "unpin"), "handouts", str(source), "-o", str(target)]
        runs = max(1, repeats // 5)
        ours = times(lambda: subprocess.run(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL), runs)
        written = len(list(target.glob("*.pdf")))
        ready = [pdf.document(build(work(read_file(file).problem))) for file in sorted(source.glob("*.yaml"))]

        def together():
            # A fork of a process in which the typesetter has run may wait for ever.
            with ProcessPoolExecutor(mp_context=get_context("spawn")) as pool:
                list(pool.map(_typeset, ready))

        alone = times(lambda: [_typeset(one) for one in ready], 1)
        many = times(together, runs)
    each = [[t / HUNDRED for t in side] for side in (ours, alone, many)]
    report(f"{written} of {HUNDRED} problem files to PDF on all cores, each", each[0], each[1], "typesetter alone, one core ")
    report("  the same", each[0], each[2], "typesetter alone, all cores")


def _typeset(document) -> int:
    from unpin.render.typeset import compile_document

    return len(compile_document(*document, "pdf"))


def growth(repeats: int) -> None:
    """Route search from three to ten parts; the floor is numpy solving the same sizes of system in floats."""
    import numpy

    from chain import chain
    from unpin.route.candidates import survey
    from unpin.route.cost import DEFAULT
    from unpin.route.order import cheapest, well_chosen
    from unpin.route.search import fewest
    from unpin.statics.goals import goals
    from unpin.statics.inspect import inspect

    print("route search (all free bodies surveyed, fewest proved, cheapest order), growth with parts")
    for parts in (3, 4, 5, 6, 8, 10):
        problem = chain(parts)
        structure = inspect(problem)

        def search(structure=structure, problem=problem):
            ground = survey(structure, DEFAULT)
            goal = ground.mask_of([u for asked in problem.asked for u in goals(structure, asked)])
            least = well_chosen(ground, goal, 0, fewest(ground, goal, 0), DEFAULT)
            return least, cheapest(ground, goal, 0, least, DEFAULT)

        least, moves = search()
        size = sum(b.rank for b in structure.bodies)
        matrix = numpy.random.default_rng(1).random((size, size))
        ours = times(search, max(3, repeats // 3))
        floor = times(lambda matrix=matrix, size=size: numpy.linalg.solve(matrix, numpy.ones(size)), repeats)
        print(f"  {parts:2} parts, {len(structure.unknowns):2} unknowns: {statistics.median(ours):8.1f} ms  (numbers alone {statistics.median(floor):.3f} ms)"
              f"  {'fewest' if least.lower == least.upper else 'between'} {least.lower} to {least.upper}")


def sizes(repeats: int) -> None:
    """Irregular frames of 3 to 30 parts and trusses of 10 to 200 bars, solved and proved: time, its growth, and what was proved of the sums."""
    import thicket
    from unpin.route.work import work

    for name, make, many in (("parts", thicket.frame, (3, 5, 10, 20, 30)), ("bars", thicket.bridge, (11, 23, 47, 99, 199))):
        before = 0.0
        for n in many:
            problem = make(n)
            took = statistics.median(times(lambda problem=problem: work(problem), max(1, repeats // 5)))
            least = work(problem).fewest
            print(f"  {n:3} {name}: {took:8.1f} ms  x{took / before if before else 1:.1f}  {least.claim} {least.lower} to {least.count}")
            before = took


TASKS = {"lesson": whole_lesson, "start": start_up, "handout": handout, "hundred": hundred, "growth": growth, "sizes": sizes}


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("tasks", nargs="*", choices=[*TASKS, []], help="which to run; all when left out")
    parser.add_argument("--repeats", type=int, default=15)
    arguments = parser.parse_args()
    for name in arguments.tasks or TASKS:
        TASKS[name](arguments.repeats)


if __name__ == "__main__":
    main()
