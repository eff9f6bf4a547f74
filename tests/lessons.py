"""Worked problems that several tests look at: the examples, and short ones that go wrong in one way each."""

from functools import cache

from unpin import bundled
from unpin.lesson.build import build
from unpin.read import read_file, read_text
from unpin.route.work import work

EXAMPLES = bundled.names()
NUMBERED = [n for n in EXAMPLES if not any(x.drawn is not None for x in read_file(bundled.path_of(n)).problem.letters)]
"""Those whose letters all have values, so that results are numbers."""

FREE = """
title: A gate off its latch
units: m, N
points: {A: [0, 0], B: A right 2}
members: {gate: A B}
supports: {A: pin}
loads: [30 N at B down]
find: [A]
"""

DOUBLE = """
title: A beam held once too often
units: m, kN
points: {A: [0, 0], B: A right 2, C: A right 5}
members: {beam: A B C}
supports: {A: pin, B: roller, C: roller}
loads: [4 kN at C right 3 down 4 on beam]
find: [A, C]
"""

OWN = """
title: A bracket, the teacher's way
units: m, N
points: {A: [0, 0], B: A right 2, C: A right 3, D: A down 1.5}
members: {arm: A B C}
links: [D-B]
supports: {A: pin, D: pin}
loads: [50 N at C down on arm]
find: [D-B, A]
route:
  - moments about A on arm
  - moments about A on arm
  - forces along x on arm
  - forces along y on arm
"""


@cache
def worked(name: str):
    return work(read_file(bundled.path_of(name)).problem)


@cache
def lesson(name: str):
    return build(worked(name))


@cache
def worked_text(text: str):
    reading = read_text(text)
    assert reading.sound, reading.diagnostics
    return work(reading.problem)
