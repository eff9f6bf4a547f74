"""Worked examples and tables whose answers are printed as formulas: the same problems in letters give the same formulas.

Sources: J. P. Den Hartog, "Mechanics" (Dover), problems 31, 37, 45, 46, as solved in the public notes "Den Hartog's Mechanics" by Dr. Drang
(leancrew.com/mechanics); D. W. Baker and W. Haynes, "Engineering Statics: Open and Interactive", toggle clamp (the factor of F) and
zero-force truss; beam formula tables (AISC Manual Table 3-23; American Wood Council Design Aid No. 6), reactions only, from memory.
"""

import pytest
import sympy

from lettered_problems import formulas, solved, to_sympy
from unpin.exact.expression import parse
from unpin.words.lettered import text

BEAM = """
letters: {%s, l: a length, a: a length drawn 0.3 m}
points: {A: [0, 0], P1: A right a, M: A right l/2, P2: A right l - a, B: A right l, C: B right a}
members: {beam: %s}
supports: {A: pin, B: roller}
loads: [%s]
find: [A, B]
"""


def _beam(letters, points, loads):
    return BEAM % (letters, points, loads)


TOGGLE = """
letters: {P: a force, alpha: an angle drawn 10 deg, l: a length, Q: unknown}
points: {O: [0, 0], K: l from O at alpha, S: K right l*cos(alpha) down l*sin(alpha), E: S right l/2}
members: {block: S E}
links: [O-K, K-S]
supports: {O: pin, S: guide along right}
loads: [P at E left, Q at K down]
find: [Q, K-S]
"""
SCISSORS = """
letters: {W: a force, P: unknown, a: a length, alpha: an angle drawn 30 deg}
points:
  L: [0, 0]
  Q: a from L at alpha
  R: Q right a*cos(alpha) down a*sin(alpha)
  U: 2a from L at alpha
  V: L up 2a*sin(alpha)
  T: Q up 2a*sin(alpha)
members: {one: L Q U, two: R Q V}
links: [U-T, V-T]
supports: {L: roller pushes up, R: roller pushes up}
loads: [W at T down, P at L right, P at R left]
find: [P, U-T]
"""
GEARS = """
letters: {T: a couple, M: unknown, r1: a length drawn 0.2 m, r2: a length drawn 0.5 m, h: a length}
points: {O1: [0, r1 + r2], O2: [0, 0], K: [0, r2], F: O2 down h}
members: {stand: O1 O2 F, upper: O1 K, lower: O2 K}
contacts: {K: lower pushes upper left}
supports: {F: fixed on stand}
loads: [T anticlockwise on upper, M anticlockwise on lower]
find: [K on upper, M, F couple]
"""
SCALE = """
letters: {W: a force, P: unknown, a: a length drawn 1 m, b: a length drawn 4 m, c: a length drawn 2 m, d: a length drawn 10 m, x: a length drawn 3 m, h: a length}
points: {K: [0, 0], A: K right a down h, E: A right b, B: E right b, L: B right a up h, F: E down h, C: F right c, H: C right d, G: K right x}
members: {platform: K G L, left_lever: K A E, right_lever: L B E, beam: F C H}
links: [E-F]
contacts: {K: left_lever pushes platform up, L: right_lever pushes platform up}
supports: {A: pin, B: pin, C: pin}
loads: [W down at G, P at H up]
find: [E-F, P]
"""
CASES = [
    ("dh-031", TOGGLE, {"Q_": "2 P*tan(alpha)", "F_KS": "-P/cos(alpha)"}),
    ("dh-037, scissor-linkage", SCISSORS, {"P_": "3/2 W/tan(alpha)", "F_UT": "-W/(2sin(alpha))"}),
    ("dh-045", GEARS, {"K_x": "T/r1", "M_": "T*r2/r1", "M_F": "-(T + T*r2/r1)"}),
    ("dh-046", SCALE, {"F_EF": "W*a/b", "P_": "W*a*c/(b*d)"}),
    ("tbl-24", _beam("w: a force per length", "A B C", "w down on beam"), {"A_y": "w*(l^2 - a^2)/(2l)", "B_y": "w*(l + a)^2/(2l)"}),
    ("tbl-26", _beam("P: a force", "A B C", "P at C down"), {"A_y": "-P*a/l", "B_y": "P*(l + a)/l"}),
    ("tbl-5", _beam("w: a force per length", "A B", "0 to w down on beam"), {"A_y": "w*l/6", "B_y": "w*l/3"}),
    ("tbl-6", _beam("w: a force per length", "A M B", "0 to w down on beam from A to M, w to 0 down on beam from M to B"),
     {"A_y": "w*l/4", "B_y": "w*l/4"}),
    ("tbl-9", _beam("P: a force", "A P1 P2 B", "P at P1 down, P at P2 down"), {"A_y": "P", "B_y": "P"}),
    ("simple beam, load at any point", _beam("P: a force", "A P1 B", "P at P1 down"), {"A_y": "P*(l - a)/l", "B_y": "P*a/l"}),
    ("simple beam, uniform over a part at one end", _beam("w: a force per length", "A P1 B", "w down on beam from A to P1"),
     {"A_y": "w*a*(2l - a)/(2l)", "B_y": "w*a^2/(2l)"}),
    ("simple beam, couple at one end", _beam("M: a couple", "A B", "M clockwise on beam at A"), {"A_y": "-M/l", "B_y": "M/l"}),
]
TABLE = [pytest.param(problem, key, formula, id=f"{name}: {key}") for name, problem, answers in CASES for key, formula in answers.items()]


def _ours(problem):
    return {key.rsplit(": ", 1)[1]: found for key, found in formulas(solved(problem)).items()}


@pytest.mark.parametrize("problem, key, formula", TABLE)
def test_a_published_formula_is_found(problem, key, formula):
    way, expression = _ours(problem)[key]

    assert sympy.simplify(way * to_sympy(expression) - to_sympy(parse(formula))) == 0


@pytest.mark.parametrize("problem, key, printed", [
    (TOGGLE, "Q_", "2 P tan α"),
    (SCISSORS, "P_", "3 W/(2 tan α)"),
    (SCISSORS, "F_UT", "W/(2 sin α)"),
    (_beam("w: a force per length", "A B C", "w down on beam"), "A_y", "w (l² − a²)/(2 l)"),
    (_beam("w: a force per length", "A B C", "w down on beam"), "B_y", "w (l + a)²/(2 l)"),
    (_beam("P: a force", "A P1 B", "P at P1 down"), "A_y", "P (l − a)/l"),
])
def test_it_is_printed_as_the_table_prints_it(problem, key, printed):
    assert text(_ours(problem)[key][1], str) == printed


ZEROS = """
letters: {P: a force, Q: a force}
points: {A: [0, 0], B: [4, 0], C: [8, 0], D: [12, 0], E: [8, 3], F: [4, 3], G: [0, 6], H: [0, 3], I: [6, 1.5]}
links: [A-B, B-C, C-D, D-E, E-F, F-H, F-G, G-H, A-H, A-F, B-F, F-I, I-C, E-I, E-C]
supports: {H: pin, A: roller pushes right}
loads: [P at E right, Q at C down]
find: [all links]
"""


def test_the_published_zero_force_bars_carry_nothing_whatever_the_loads():
    """Engineering Statics: Open and Interactive, chapter 6, the zero-force example; seven bars are named there."""
    worked = solved(ZEROS)

    zero = {u for u, v in worked.values.items() if v == 0 and u.startswith("F_")}
    assert zero == {"F_GH", "F_FG", "F_BF", "F_EI", "F_DE", "F_EC", "F_CD"}


CLAMP = """
units: in, lb
points: {A: [0, 0], B: [7, -24], C: [16, -40], D: [0, -48]}
members: {lever: A B C}
links: [B-D]
letters: {F: a force, Q: unknown}
blocks: {block: at D}
slots: {D: block in ground along up}
supports: {A: pin}
loads: [F at C at 60 deg below left, Q at D up]
find: [B-D, Q]
"""


def test_the_published_toggle_clamp_holds_the_printed_times_of_the_hand_force():
    """Engineering Statics: Open and Interactive, chapter 6, toggle clamp: 2.52 F in the link (compression) and 2.42 F on the work."""
    found = {key: way * float(to_sympy(e).subs(sympy.Symbol("F", positive=True), 1)) for key, (way, e) in _ours(CLAMP).items()}

    assert found == {"F_BD": pytest.approx(-2.52, abs=0.005), "Q_": pytest.approx(2.42, abs=0.005)}
