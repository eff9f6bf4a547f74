"""Problems for what a file says best: slots along arcs, wheels that touch, blocks with corners, belts; each by the cell it fills."""

from __future__ import annotations

from unpin.model.kinds import KINDS
from unpin.model.problem import GROUND, Problem
from unpin.read import read_text

PLACES = ("support slot arc", "between slot arc", "rim on floor", "rim on edge", "rim on rim", "rim on member", "member on rim",
          "rim on block", "block on corners")
STRINGS = ("belt", "crossed belt")

FEEDER = """
points: {O: [0, 0], K: 0.5 from O at 60 deg, P: 0.5 from O at 20 deg, Q: 0.5 from O at 100 deg, A: K left 0.6, B: K right 0.2}
members: {plate: O P, arm: A K B}
supports: {O: fixed, A: pin}
loads: [60 N at B down, 25 N at P left]
"""
DRIVE = """
letters: {M: unknown, Q: unknown, X: unknown, T: 400 N, S: 120 N}
points: {A: [0, 0], B: [1.2, 0.3]}
discs: {motor: 0.1 m at A, stone: 0.3 m at B}
cords: {T: belt from top of motor to %s of stone, S: belt from bottom of motor to %s of stone}
supports: {A: roller, B: pin}
loads: [X at A left, M anticlockwise on motor, Q clockwise on stone]
"""

TEXTS = {
    "support slot arc": FEEDER + "slots: {K: arm in ground round O}\n",
    "between slot arc": FEEDER + "slots: {K: arm in plate round O from P to Q}\n",
    "rim on floor": "points: {C: [0, 0], D: 0.5 from C at 35 deg}\ndiscs: {lower: 0.25 m at C, upper: 0.25 m at D}\n"
                    "contacts: {F: ground pushes lower up, W: ground pushes lower right, K: lower pushes upper, V: ground pushes upper left}\n"
                    "loads: [weight of lower 400 N, weight of upper 300 N]\n",
    "rim on edge": "points: {C: [0, 0.25], E: [0.2, 0.1]}\ndiscs: {roller: 0.25 m at C}\n"
                   "contacts: {E: ground pushes roller, F: ground pushes roller up}\nloads: [weight of roller 500 N, 300 N at C right]\n",
    "rim on rim": "points: {C: [0, 0], D: 0.6 from C at 50 deg, E: D right 0.7}\ndiscs: {lower: 0.25 m at C, upper: 0.35 m at D}\nlinks: [D-E]\n"
                  "contacts: {K: upper pushes lower}\nsupports: {C: pin, E: pin}\nloads: [weight of lower 400 N, weight of upper 300 N]\n",
    "rim on member": "points: {A: [0, 0], B: 2 from A at 20 deg, M: 0.7 from A at 20 deg, C: M up 0.281907786 left 0.102606043, N: B down 1}\n"
                     "members: {board: A B}\nlinks: [B-N, C-A]\ndiscs: {drum: 0.3 m at C}\ncontacts: {K: board pushes drum}\n"
                     "supports: {A: pin, N: pin}\nloads: [weight of drum 300 N, 40 N at B right]\n",
    "member on rim": "points: {A: [0, 0], B: A right 3 up 4, C: [1.1, 3.3]}\nmembers: {lever: A B}\n"
                     "discs: {drum: 1.1 m at C}\ncontacts: {K: drum pushes lever}\nsupports: {A: pin, C: pin}\n"
                     "loads: [120 N at B left, 50 N at C left]\n",
    "rim on block": "points: {A: [0, 0], B: [1, 0], C: [1, 1], D: [0, 1], G: [0.5, 1.25]}\nblocks: {crate: A B C D}\ndiscs: {drum: 0.25 m at G}\n"
                    "contacts: {K: crate pushes drum, V: ground pushes drum left}\n"
                    "supports: {A: smooth floor pushes up, B: smooth floor pushes up, C: smooth wall pushes left}\n"
                    "loads: [weight of crate 90 N, weight of drum 300 N, 40 N at G right, 20 N at D right]\n",
    "block on corners": "points: {A: [0, 0], B: A right 0.6, C: B up 1.8, D: A up 1.8, K: A up 1.2, S: B up 0.3}\nblocks: {cupboard: A B C D}\n"
                        "supports: {A: smooth floor pushes up, B: smooth floor pushes up, S: smooth wall pushes left}\n"
                        "loads: [weight of cupboard 300 N, 70 N at K right]\n",
    "belt": DRIVE % ("top", "bottom"),
    "crossed belt": DRIVE % ("bottom", "top"),
}


def problem(cell: str) -> Problem:
    reading = read_text("title: one cell\n" + TEXTS[cell] + "find: [everything]\n")
    assert reading.sound, (cell, [d.code for d in reading.diagnostics])
    return reading.problem


def filled(found: Problem) -> set[str]:
    """The cells of this page that a problem fills, seen from its records."""
    kind = {p.name: p.kind for p in found.parts}
    out = set()
    for c in found.connections:
        first, second = (kind.get(p, p) for p in (*c.parts, "")[:2])
        if c.centre:
            out.add(f"{'support' if second == GROUND else 'between'} slot arc")
        if not KINDS[c.kind].push_only:
            continue
        if first == "disc":
            out.add("rim on " + {GROUND: "edge" if c.kind == "knife_edge" else "floor", "disc": "rim", "box": "block"}.get(second, second))
        elif second == "disc":
            out.add("member on rim" if first == "member" else "block on rim")
    corners = [p for part in found.parts if part.kind == "box" for p in part.points]
    if sum(KINDS[c.kind].push_only and c.points[0] in corners for c in found.connections) > 1:
        out.add("block on corners")
    at = found.coordinates
    for cord in found.cords:
        ends = cord.stops
        if len(ends) == 2 and all(kind.get(s.part) == "disc" and s.radius is not None for s in ends):
            over = [float(at[s.point][1] - at[found.part(s.part).points[0]][1]) > 0 for s in ends]
            out.add("belt" if over[0] == over[1] else "crossed belt")
    return out
