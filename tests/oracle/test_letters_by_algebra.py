"""Our printed expressions against equilibrium written by hand and solved by SymPy, a general-purpose algebra system."""

import pytest
import sympy

from lettered_problems import PROBLEMS, formulas, solved, to_sympy

P, Q, W, a, b, h, r, g, M = sympy.symbols("P Q W a b h r g M", positive=True)
w, L, theta, alpha, beta, d, F = sympy.symbols("w l theta alpha beta d F", positive=True)
length = sympy.Symbol("L", positive=True)
sin, cos, sqrt = sympy.sin, sympy.cos, sympy.sqrt


def _arm():
    f, x, y = sympy.symbols("f x y")
    s = sqrt(a**2 + h**2)  # the tie pulls from B (a, 0) to D (0, h)
    found = sympy.solve([x - f * a / s, y + f * h / s - 3 * P, f * h / s * a - 2 * P * a - 3 * P * a], [f, x, y])
    return {"B-D: F_BD": found[f], "A: A_x": found[x], "A: A_y": found[y]}


def _lid():
    p, x, y = sympy.symbols("p x y")
    ends = (L * cos(theta), L * sin(theta))
    found = sympy.solve([x - p * sin(alpha), y + p * cos(alpha) - W,
                         ends[0] * p * cos(alpha) + ends[1] * p * sin(alpha) - W * ends[0] / 2], [p, x, y])
    return {"P: P_": found[p], "A: A_x": found[x], "A: A_y": found[y]}


def _spread():
    a_y, b_y = sympy.symbols("a_y b_y")
    # w over l, then a triangle over a with its centroid a third from the tall end
    found = sympy.solve([a_y + b_y - w * L - w * a / 2, b_y * L - w * L**2 / 2 - w * a / 2 * (L + a / 3)], [a_y, b_y])
    return {"A: A_y": found[a_y], "B: B_y": found[b_y]}


def _wedge():
    x, y, n = sympy.symbols("x y n")
    found = sympy.solve([x - n * sin(alpha), y + n * cos(alpha) - P, n * cos(alpha) * 2 * a - P * a + P * a], [x, y, n])
    return {"A: A_x": found[x], "A: A_y": found[y]}


def _clamp():
    q, f = sympy.symbols("q f")
    # the knee: two equal arms at alpha, the pin pressed down by q; the ram: P to the left
    found = sympy.solve([-2 * f * sin(alpha) - q, -f * cos(alpha) - P], [q, f])
    return {"Q: Q_": found[q], "O-K: F_OK": found[f]}


def _truss():
    s = sqrt(a**2 + h**2)
    ab, bc, cd, de, ac, ce, bd, ax, ay, ey = u = sympy.symbols("ab bc cd de ac ce bd ax ay ey")
    c, v = a / s, h / s
    sums = [ax + ac + ab * c, ay + ab * v, -ab * c + bc * c + bd, -ab * v - bc * v - P, -ac - bc * c + cd * c + ce, bc * v + cd * v - Q,
            -bd - cd * c + de * c + P / 2, -cd * v - de * v, -ce - de * c, ey + de * v]
    found = sympy.solve(sums, u)
    names = {"A-C": ac, "C-E": ce, "B-D": bd, "A-B": ab, "B-C": bc, "C-D": cd, "D-E": de}
    out = {f"F_{k.replace('-', '')}": found[v] for k, v in names.items()}
    return out | {"A_x": found[ax], "A_y": found[ay], "E_y": found[ey]}


@pytest.mark.parametrize("name, by_hand", [("arm", _arm), ("lid", _lid), ("spread", _spread), ("wedge", _wedge), ("clamp", _clamp), ("truss", _truss)])
def test_the_printed_expression_is_what_an_algebra_system_finds(name, by_hand):
    ours = {key: way * to_sympy(e) for key, (way, e) in formulas(solved(PROBLEMS[name])).items()}
    by_symbol = {key.rsplit(": ", 1)[1]: e for key, e in ours.items()}

    for key, theirs in by_hand().items():
        mine = by_symbol[key] if key in by_symbol else ours[key]
        assert sympy.simplify(mine - theirs) == 0, (key, mine, theirs)
