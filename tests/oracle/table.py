"""What has been compared with an outside oracle: for each cell a problem in which it carries force."""

from __future__ import annotations

import known
import touching
from build import DOWN, LEFT, RIGHT, UP, angle, between, components, couple, force, frame, link, pin, slope, spread, square, support, towards, weight, weld
from unpin.model.kinds import KINDS
from unpin.model.problem import GROUND, Problem
from unpin.statics import inspect
from unpin.statics.pins import meetings

LOADS = ("force", "couple", "weight", "spread uniform", "spread linear", "spread per projection", "spread crossing")
FORMS = ("axis", "angle", "slope", "line", "square", "components")
SPECIAL = ("pin of three parts", "pin of links alone", "load on a pin", "support on a pin", "bent two-force member", "straight two-force member",
           "link on a pin", "bent part")


def cells() -> set[str]:
    """Every cell that must be filled: each kind as a support and between parts, each load, each direction, and the special ones."""
    kinds = {f"support {k.name}" for k in KINDS.values() if k.support} | {f"between {k.name}" for k in KINDS.values() if k.between}
    return kinds | set(touching.PLACES) | {f"load {x}" for x in LOADS} | {f"direction {f}" for f in FORMS} | set(SPECIAL)


def cells_of(problem: Problem) -> set[str]:
    """The cells a problem really fills."""
    found = touching.filled(problem)
    for c in problem.connections:
        found.add(f"{'support' if GROUND in c.parts and c.kind != 'link' else 'between'} {c.kind}")
        if c.kind == "link" and any(p == "" and sum(e in q.points for q in problem.parts) > 1 for e, p in zip(c.points, c.parts)):
            found.add("link on a pin")
        if c.kind == "pin" and c.parts[0] == "" and GROUND in c.parts:
            found.add("support on a pin")
    for x in problem.loads:
        if x.kind != "spread":
            found.add(f"load {x.kind}")
            if x.part == "" and meetings(problem, {})[x.point].own:
                found.add("load on a pin")
        for s in x.stretches:
            a, b = s.start_intensity.value, s.end_intensity.value
            shape = "per projection" if s.per != "member" else "uniform" if a == b else "crossing" if a * b < 0 else "linear"
            found.add(f"load spread {shape}")
    found |= {f"direction {x.direction.form}" for x in (*problem.loads, *problem.connections) if x.direction}
    for m in meetings(problem, {}).values():
        if len(m.members) > 2:
            found.add("pin of three parts")
        if not m.members and m.own:
            found.add("pin of links alone")
    for two in inspect(problem).two_force:
        found.add("bent two-force member" if two.bent else "straight two-force member")
    at = problem.coordinates
    for part in problem.parts:
        (x0, y0), (x1, y1) = at[part.points[0]], at[part.points[-1]]
        if any((x1 - x0) * (at[p][1] - y0) != (y1 - y0) * (at[p][0] - x0) for p in part.points):
            found.add("bent part")
    return found


BEAM = {"A": (0, 0), "B": (6, 0), "C": (2, 0), "D": (5, 0)}
HELD = (support("pin", "A", "beam"), support("roller", "B", "beam", UP))
AWNING = {"O": (0, 0), "A": (0, 3), "C": (0, "2.4"), "B": (0, "1.2"), "D": ("1.6", "2.4"), "E": ("2.4", "2.4")}
POST_AND_ARM = {"post": "A C B O", "arm": "C D E"}
HANGING = (support("pin", "A", "post"), support("roller", "O", "post", RIGHT))
TRAILER = {"A": (0, 0), "B": (4, 0), "C": (2, 3), "D": (1, "1.5"), "E": (3, "1.5"), "G": (2, 5)}
LEVERS = {"A": (0, 0), "K": (3, 4), "B": ("4.5", 6), "O": (0, 4), "C": (5, 4), "G": (7, 2)}
TURNING = (support("pin", "A", "lever"), support("pin", "O", "crank"))
ARCH = {"left": "A D C", "right": "C E B"}
FEET = (support("pin", "A", "left"), support("pin", "B", "right"))


def beam(*things) -> Problem:
    return frame(BEAM, {"beam": "A C D B"}, *things)


def arch(*things) -> Problem:
    return frame(TRAILER, ARCH, pin("C", "left", "right"), *FEET, *things)


TABLE: dict[str, Problem] = {
    "support pin": beam(*HELD, force(300, "C", "beam", slope(3, -4))),
    "support roller": beam(support("pin", "A", "beam"), support("roller", "B", "beam", slope(-1, 2)), force(300, "C", "beam")),
    "support fixed": beam(support("fixed", "A", "beam"), force(300, "B", "beam", angle(35)), couple(120, "beam", "D")),
    "support guide": beam(support("guide", "A", "beam", angle(60)), support("roller", "C", "beam", RIGHT), force(300, "B", "beam")),
    "support contact": beam(support("pin", "A", "beam"), support("contact", "B", "beam", angle(110)), force(300, "D", "beam")),
    "support rocker": beam(support("pin", "A", "beam"), support("rocker", "B", "beam", angle(100)), force(300, "D", "beam")),
    "support knife_edge": beam(support("pin", "A", "beam"), support("knife_edge", "D", "beam", UP), force(300, "B", "beam", slope(1, -3))),
    "support surface": frame({**BEAM, "K": (4, 3)}, {"ladder": "A K"}, support("pin", "A", "ladder"), support("surface", "K", "ladder", LEFT),
                             force(300, "K", "ladder")),
    "support slot": beam(support("pin", "A", "beam"), support("slot", "B", "beam", slope(-3, 4)), force(300, "C", "beam"), couple(-90, "beam", "D")),
    "support collar": beam(support("collar", "A", "beam", slope(1, 3)), support("pin", "B", "beam"), force(300, "C", "beam", angle(20, DOWN, LEFT))),
    "support sleeve": beam(support("sleeve", "A", "beam", angle(70)), support("roller", "D", "beam", RIGHT), force(300, "B", "beam")),
    "between pin": arch(force(300, "D", "left"), force(80, "E", "right", LEFT)),
    "between fixed": frame(TRAILER, ARCH, weld("C", "left", "right"), support("fixed", "A", "left"), force(70, "B", "right", slope(3, 4)),
                           force(300, "E", "right")),
    "between link": frame(AWNING, POST_AND_ARM, pin("C", "post", "arm"), link("B", "D", "post", "arm"), *HANGING,
                          force(300, "E", "arm", slope(3, -4))),
    "between roller": frame(AWNING, POST_AND_ARM, *HANGING, between("roller", "C", "arm", "post", slope(1, 2)), link("D", "A", "arm", "post"),
                            link("E", "O", "arm", "post"), force(300, "E", "arm")),
    "between guide": frame(AWNING, POST_AND_ARM, *HANGING, between("guide", "C", "arm", "post", angle(80)), link("D", "B", "arm", "post"),
                           force(300, "E", "arm")),
    "between contact": frame({**TRAILER, "H": (1, 4)}, {"lever": "A H", "post": "B C G"}, support("pin", "A", "lever"), support("fixed", "B", "post"),
                             between("contact", "C", "lever", "post", LEFT), force(300, "H", "lever", RIGHT)),
    "between slot": frame(LEVERS, {"lever": "A K B", "crank": "O K C"}, *TURNING, between("slot", "K", "crank", "lever", square("A", "B")),
                          link("C", "G", "crank"), force(300, "B", "lever", RIGHT)),
    "between collar": frame(LEVERS, {"rod": "A K B", "arm": "K C"}, support("fixed", "A", "rod"), support("guide", "C", "arm", RIGHT),
                            between("collar", "K", "arm", "rod", square("A", "B")), force(300, "C", "arm", UP)),
    "between sleeve": frame(LEVERS, {"rod": "A K B", "arm": "K C"}, support("fixed", "A", "rod"),
                            between("sleeve", "K", "arm", "rod", square("A", "B")), link("C", "G", "arm"), force(300, "C", "arm", slope(2, -1)),
                            couple(40, "arm", "C")),
    "load force": arch(force(300, "E", "right", slope(-5, -12))),
    "load couple": arch(couple(250, "left", "D"), couple(-40, "right", "E")),
    "load weight": arch(weight(981, "D", "left"), weight(120, "E", "right")),
    "load spread uniform": arch(spread("left", "A", "D", 140), spread("right", "C", "E", 90, direction=towards("E", "A"))),
    "load spread linear": beam(*HELD, spread("beam", "C", "B", 0, 400), spread("beam", "C", "A", 90, 30)),
    "load spread per projection": arch(spread("left", "A", "C", 200, per="x"), spread("right", "B", "C", 90, 10, LEFT, per="y")),
    "load spread crossing": beam(*HELD, spread("beam", "A", "D", 300, -200)),
    "direction axis": beam(*HELD, force(300, "D", "beam", LEFT), force(70, "C", "beam", DOWN)),
    "direction angle": beam(*HELD, force(300, "D", "beam", angle(25, DOWN, LEFT))),
    "direction slope": beam(*HELD, force(300, "D", "beam", slope(-8, -15))),
    "direction line": arch(force(300, "D", "left", towards("D", "B"))),
    "direction square": arch(force(300, "D", "left", square("A", "C"))),
    "direction components": beam(*HELD, force(300, "D", "beam", components(-2, -7))),
    "pin of three parts": frame(TRAILER, {**ARCH, "mast": "C G"}, pin("C", "left", "right", "mast"), *FEET,
                                link("G", "D", "mast", "left"), force(300, "G", "mast", slope(1, -3))),
    "pin of links alone": frame(TRAILER, ARCH, pin("C", "left", "right"), *FEET, link("G", "D", "", "left"), link("G", "E", "", "right"),
                                force(300, "G", "", slope(1, -3))),
    "load on a pin": arch(force(300, "C", "", slope(1, -3)), force(50, "D", "left")),
    "support on a pin": frame(TRAILER, ARCH, pin("C", "left", "right"), support("pin", "C"), support("roller", "A", "left", UP),
                        support("roller", "B", "right", angle(75)), force(300, "D", "left"), force(200, "E", "right")),
    "bent two-force member": frame({**AWNING, "K": ("1.5", "1.5")}, {**POST_AND_ARM, "knee": "B K D"}, pin("C", "post", "arm"),
                                   pin("B", "post", "knee"), pin("D", "arm", "knee"), *HANGING, force(300, "E", "arm", slope(3, -4))),
    "straight two-force member": frame(AWNING, {**POST_AND_ARM, "strut": "B D"}, pin("C", "post", "arm"), pin("B", "post", "strut"),
                                       pin("D", "arm", "strut"), *HANGING, force(300, "E", "arm")),
    "link on a pin": frame({**TRAILER, "H": (6, 3)}, ARCH, pin("C", "left", "right"), support("pin", "A", "left"),
                           support("roller", "B", "right", UP), link("C", "H", "", GROUND), force(300, "D", "left", RIGHT), force(90, "E", "right")),
    "bent part": frame({**BEAM, "K": (2, 3)}, {"beam": "A K B"}, *HELD, force(300, "K", "beam", slope(2, -1))),
}
TABLE |= {cell: touching.problem(cell) for cell in touching.PLACES if cell in touching.TEXTS}

STRUNG: dict[str, Problem] = {cell: touching.problem(cell) for cell in touching.STRINGS if cell in touching.TEXTS}
"""Cords, which the physics engine is not asked about: only the multipliers of their lengths."""

GIVEN: dict[str, Problem] = known.cases(TABLE.values())
"""Each push of each kind given, and a load found from it."""
