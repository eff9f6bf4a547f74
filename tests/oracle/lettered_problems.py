"""Problems in letters that the oracles share, and the expressions of ours as a general-purpose algebra system reads them."""

from __future__ import annotations

import math
import re

from unpin.exact.expression import Expression, Literally, Name
from unpin.exact.lettered import Lettered
from unpin.exact.shape import shape
from unpin.read import read_text
from unpin.route.work import work

UNITS = {"force": "N", "length": "m", "angle": "deg", "couple": "N m", "mass": "kg", "force per length": "N/m"}

PROBLEMS = {
    "arm": """
letters: {P: a force, a: a length, h: a length drawn 1.5 m}
points: {A: [0, 0], B: A right a, C: A right 3a, D: A up h}
members: {arm: A B C}
links: [B-D]
supports: {A: pin, D: pin}
loads: [P at C down, 2P at B down]
find: [B-D, A]
""",
    "lid": """
letters: {W: a force, P: unknown, l: a length, theta: an angle, alpha: an angle drawn 20 deg}
points: {A: [0, 0], B: l from A at theta, G: midpoint of A B}
members: {lid: A G B}
supports: {A: pin}
loads: [W at G down, P at B at alpha left of up]
find: [P, A]
""",
    "hoist": """
letters: {M: a mass, r: a length drawn 0.2 m, a: a length, h: a length, P: a force}
points: {A: [0, 0], B: A right a, C: A right 2a, G: A down h, W: A up r, K: C right r down h}
members: {beam: A B C}
links: [B-G]
discs: {pulley: r at C}
cords: {T: W over pulley to K}
supports: {A: pin, G: pin}
loads: [mass M hangs at K, P at B down]
find: [T, B-G, A]
""",
    "spread": """
letters: {w: a force per length, l: a length, a: a length drawn 0.4 m}
points: {A: [0, 0], B: A right l, C: B right a}
members: {beam: A B C}
supports: {A: pin, B: roller}
loads: [w down on beam from A to B, w to 0 down on beam from B to C]
find: [A, B]
""",
    "truss": """
letters: {P: a force, Q: a force, a: a length, h: a length}
points: {A: [0, 0], C: A right 2a, E: C right 2a, B: A right a up h, D: B right 2a}
links: [A-C-E, B-D, A-B-C-D-E]
supports: {A: pin, E: roller}
loads: [P at B down, Q at C down, P/2 at D right]
find: [all links, A, E]
""",
    "three hinges": """
letters: {P: a force, a: a length, b: a length, h: a length, theta: an angle}
points: {A: [0, 0], C: A right a up h, B: A right a + b, D: midpoint of A C}
members: {one: A D C, two: C B}
supports: {A: pin, B: pin}
loads: [P at D at theta below right, 2P at C on two right]
find: [A, B, C on one]
""",
    "sieve": """
letters: {F: a force, M: unknown, r: a length drawn 0.3 m, d: a length drawn 0.5 m, beta: an angle}
points: {A: [0, 0], O: A up d, K: r from O at beta above right, B: 2d from A towards K}
members: {lever: A K B, crank: O K}
slots: {K: crank in lever}
supports: {A: pin, O: pin}
loads: [F at B right, M anticlockwise on crank]
find: [K on crank, M, A]
""",
    "wedge": """
letters: {P: a force, alpha: an angle drawn 20 deg, a: a length}
points: {A: [0, 0], B: A right a, C: B right a}
members: {plank: A B C}
supports: {A: pin, C: roller pushes at alpha left of up}
loads: [P at B down, P*a at A anticlockwise]
find: [A, C]
""",
    "clamp": """
letters: {P: a force, alpha: an angle drawn 15 deg, L: a length, Q: unknown}
points: {O: [0, 0], K: L from O at alpha, S: K right L*cos(alpha) down L*sin(alpha), N: S right L}
members: {ram: S N}
links: [O-K, K-S]
supports: {O: pin, S: guide along right}
loads: [P at N left, Q at K down]
find: [Q, O-K]
""",
}


def value(e: Expression, at: dict[str, float]) -> float:
    """An expression as a float; angles in degrees."""
    if isinstance(e, Literally):
        return float(e.value)
    if isinstance(e, Name):
        return at[e.name]
    inner = [value(o, at) for o in e.operands]
    return {"+": lambda a, b: a + b, "-": lambda a, b: a - b, "*": lambda a, b: a * b, "/": lambda a, b: a / b, "^": lambda a, b: a**b,
            "neg": lambda a: -a, "sqrt": math.sqrt, "sin": lambda a: math.sin(math.radians(a)), "cos": lambda a: math.cos(math.radians(a)),
            "tan": lambda a: math.tan(math.radians(a))}[e.operation](*inner)


def to_sympy(e: Expression):
    """The same tree in SymPy; letters positive, angles in radians under their own names."""
    import sympy

    if isinstance(e, Literally):
        return sympy.Rational(e.value.numerator, e.value.denominator)
    if isinstance(e, Name):
        return sympy.Symbol(e.name, positive=True)
    inner = [to_sympy(o) for o in e.operands]
    if e.operation in ("sin", "cos", "tan", "sqrt"):
        return getattr(sympy, e.operation)(*inner)
    return {"+": lambda a, b: a + b, "-": lambda a, b: a - b, "*": lambda a, b: a * b, "/": lambda a, b: a / b, "^": lambda a, b: a**b,
            "neg": lambda a: -a}[e.operation](*inner)


def letters_in(text: str) -> dict[str, str]:
    """Letters without a value, each with what it is."""
    inside = re.search(r"letters: \{(.*)\}", text).group(1)
    found = (re.match(r"\s*(\w+): an? (force per length|\w+)", item) for item in inside.split(","))
    return {m.group(1): m.group(2) for m in found if m}


def with_values(text: str, values: dict[str, float]) -> str:
    """The same problem with numbers for its letters."""
    for name, what in letters_in(text).items():
        text = re.sub(rf"\b{name}: an? {what}( drawn [\d.]+ \w+)?", f"{name}: {values[name]} {UNITS[what]}", text, count=1)
    return text


def solved(text: str):
    reading = read_text(text)
    assert reading.sound, [d.code for d in reading.diagnostics]
    worked = work(reading.problem, others=0)
    assert not worked.proof.failures, worked.proof.failures
    return worked


def formulas(worked) -> dict[str, tuple[int, Expression]]:
    """Every component of every answer: its sign as drawn and its size as an expression."""
    out = {}
    for answer in worked.answers:
        for c in answer.components:
            if isinstance(c.value, Lettered):
                way, e, measured = shape(c.value, c.dimension)
                assert not measured
                out[name_of(answer, c)] = (way, e)
            else:
                out[name_of(answer, c)] = (1, Literally(c.value, 0, 0))
    return out


def name_of(answer, c) -> str:
    return f"{answer.asked.written}: {c.symbol.base}_{c.symbol.sub}"


