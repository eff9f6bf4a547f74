"""The forces of a plane structure by a rigid-body physics engine (MuJoCo), which shares no matrix with the program.

Parts are bodies free to move in the plane; pins, welds, rods, carriages on slides and contacts hold them; weights hang in
gravity; loads are laid on in small pieces. The engine's constraints are a little soft (see its documentation on impedance),
so its forces are laid on as loads and it is asked again for what is missing, until nothing moves any more. Of a contact
force a share is kept back each time, because a contact cannot pull a correction.
"""

from __future__ import annotations

from xml.etree.ElementTree import Element, SubElement, tostring

import numpy

from rims import normal_to, wheel_of
from unpin.model.problem import GROUND, Problem

GRAVITY = 9.81
RADIUS = 0.05
IMPEDANCE = 0.9999  # the hardest that the engine allows
KEPT = (0.5, 0.1, 1e-2, 1e-3, 1e-4)
ROUNDS = 300


class Unsettled(Exception):
    """Nearly a mechanism: the engine's correction goes on for too long to wait for."""


class _Model:
    """The engine's description of a problem, and who holds what by which constraint."""

    def __init__(self, problem: Problem):
        self.problem = problem
        self.at = {p.name: tuple(map(float, p.at)) for p in problem.points}
        self.hard = {"solimp": f"{IMPEDANCE} {IMPEDANCE} 0.001 0.5 1", "solref": "0.02 1"}
        self.root = Element("mujoco")
        SubElement(self.root, "option", gravity=f"0 {-GRAVITY} 0", solver="Newton", iterations="200", tolerance="1e-14", cone="pyramidal")
        self.world = SubElement(self.root, "worldbody")
        self.equality = SubElement(self.root, "equality")
        self.held: list[tuple[str, str, str, str, str]] = []  # constraint name, on, source, point, sort
        self.bodies: dict[str, Element] = {}
        self.pinned = {c.points[0]: c.parts for c in problem.connections if c.kind == "pin" and GROUND not in c.parts}
        for part in problem.parts:
            self.body(part.name, 1.0, middle=numpy.mean([self.at[p] for p in part.points], axis=0))
        for c in problem.connections:
            getattr(self, c.kind if c.kind != "pin" else "hinge")(c)

    def body(self, name: str, mass: float, turns: bool = True, middle=(0, 0)) -> Element:
        body = SubElement(self.world, "body", name=name, pos="0 0 0", gravcomp="1")
        SubElement(body, "inertial", pos=f"{middle[0]} {middle[1]} 0", mass=f"{mass}", diaginertia=f"{mass} {mass} {mass}")
        for k, (x, y) in enumerate([(1, 0), (0, 1)]):
            SubElement(body, "joint", name=f"{name}.{k}", type="slide", axis=f"{x} {y} 0")
        if turns:
            SubElement(body, "joint", name=f"{name}.turn", type="hinge", axis="0 0 1", pos="0 0 0")
        self.bodies[name] = body
        return body

    def host(self, point: str, said: str) -> str:
        """What a thing said to act on a part, or on the pin, acts on here; the pin becomes a small body where several meet."""
        if said:
            return said
        if point in self.pinned:
            return self.pin_body(point)
        through = [p.name for p in self.problem.parts if point in p.points]
        return through[0] if through else self.pin_body(point)

    def pin_body(self, point: str) -> str:
        name = f"pin {point}"
        if name not in self.bodies:
            self.body(name, 1.0, turns=False)
        return name

    def join(self, sort: str, first: str, second: str, point: str, source: str) -> None:
        """An equality constraint at a point; the force is read on `first` and, opposite, on `second`."""
        x, y = self.at[point]
        name = f"e{len(self.held)}"
        ends = {"body1": first} | ({} if second == GROUND else {"body2": second})
        anchor = {"anchor": f"{x} {y} 0"} | ({"torquescale": "1"} if sort == "weld" else {})
        SubElement(self.equality, sort, name=name, **ends, **anchor, **self.hard)
        self.held.append((name, first, source, point, sort))
        if second != GROUND:
            self.held.append((name, second, source, point, sort))

    def stands_alone(self, point: str) -> bool:
        """Whether a third thing acts on the pin where two parts meet."""
        p = self.problem
        return (len(self.pinned[point]) > 2 or any(x.part == "" and x.point == point for x in p.loads)
                or any(host == "" and end == point for c in p.connections for end, host in zip(c.points, c.parts)))

    def hinge(self, c) -> None:
        point = c.points[0]
        if GROUND in c.parts:
            self.join("connect", self.host(point, c.parts[0]), GROUND, point, c.name)
        elif self.stands_alone(point):
            for part in c.parts:
                self.join("connect", part, self.pin_body(point), point, point)
        else:
            self.join("connect", c.parts[0], c.parts[1], point, point)

    def fixed(self, c) -> None:
        self.join("weld", self.host(c.points[0], c.parts[0]), c.parts[1], c.points[0], c.name)

    def roller(self, c) -> None:
        """A carriage on a straight slide; between parts the slide is fixed to the second."""
        self.carriage(c, "connect")

    def guide(self, c) -> None:
        self.carriage(c, "weld")

    collar = roller
    sleeve = guide

    def slot(self, c) -> None:
        """A carriage; in a slot along an arc the end of a crank that turns about the arc's centre."""
        if not c.centre:
            return self.carriage(c, "connect")
        crank = f"crank {c.name}"
        self.body(crank, 1.0, middle=numpy.mean([self.at[c.points[0]], self.at[c.centre]], axis=0))
        self.join("connect", self.host(c.points[0], c.parts[0]), crank, c.points[0], c.name)
        self.join("connect", crank, GROUND if c.parts[1] == GROUND else c.parts[1], c.centre, c.name)
        if c.parts[1] != GROUND:
            # The crank hands the force on along its own line, so the pin's place will do for the owner as well.
            self.held.append((self.held[-1][0], c.parts[1], c.name, c.points[0], "connect"))

    def carriage(self, c, sort: str) -> None:
        nx, ny = map(float, c.direction.vector)
        name = f"carriage {c.name}"
        parent = self.world if c.parts[1] == GROUND else self.bodies[c.parts[1]]
        body = SubElement(parent, "body", name=name, pos="0 0 0", gravcomp="1")
        SubElement(body, "inertial", pos="0 0 0", mass="0.1", diaginertia="0.1 0.1 0.1")
        SubElement(body, "joint", type="slide", axis=f"{-ny} {nx} 0")
        self.bodies[name] = body
        self.join(sort, self.host(c.points[0], c.parts[0]), name, c.points[0], c.name)
        if c.parts[1] != GROUND:
            self.held.append((self.held[-1][0], c.parts[1], c.name, c.points[0], sort))

    def contact(self, c) -> None:
        """A small ball on the first part against a flat face of the second: it touches at the point, without friction."""
        if wheel_of(self.problem, c):
            return self.rolling(c)
        x, y = self.at[c.points[0]]
        n = numpy.array([float(v) for v in c.direction.vector])
        n = n / numpy.linalg.norm(n)
        on = self.host(c.points[0], c.parts[0])
        number = str(1 << len([h for h in self.held if h[4] == "ball"]) + 1)
        ball = {"contype": number, "conaffinity": "0", "condim": "1", "margin": "0", "mass": "0", **self.hard}
        deep = 1e-10
        centre = (x + n[0] * (RADIUS - deep), y + n[1] * (RADIUS - deep))
        name = f"ball{len(self.held)}"
        SubElement(self.bodies[on], "geom", name=name, type="sphere", size=f"{RADIUS}", pos=f"{centre[0]} {centre[1]} 0", **ball)
        parent = self.world if c.parts[1] == GROUND else self.bodies[c.parts[1]]
        # A thick box with one face through the point, square to the normal.
        middle = (x - n[0], y - n[1])
        SubElement(parent, "geom", type="box", size="1 3 3", pos=f"{middle[0]} {middle[1]} 0",
                   euler=f"0 0 {numpy.degrees(numpy.arctan2(n[1], n[0]))}", contype="0", conaffinity=number, condim="1", mass="0", **self.hard)
        self.held += [(name, body, c.name, c.points[0], "ball") for body in (on, c.parts[1]) if body != GROUND]

    rocker = knife_edge = surface = contact

    def rolling(self, c) -> None:
        """A wheel of its true radius against another, against an edge (a little ball) or a face: the engine finds the place."""
        wheel, other = wheel_of(self.problem, c)
        n, centre, radius = normal_to(self.problem, c), self.at[wheel.points[0]], float(wheel.radii[0])
        bit = str(1 << len([h for h in self.held if h[4] == "ball"]) + 1)
        mine = {"contype": bit, "conaffinity": "0", "condim": "1", "margin": "0", "mass": "0", **self.hard}
        theirs = mine | {"contype": "0", "conaffinity": bit}
        name, deep = f"ball{len(self.held)}", 1e-10
        SubElement(self.bodies[wheel.name], "geom", name=name, type="sphere", size=f"{radius}", pos=f"{centre[0]} {centre[1]} 0", **mine)
        parent = self.bodies[other.name] if other else self.world
        if other and other.kind == "disc":
            x, y = self.at[other.points[0]]
            # Deep enough to touch: two rims that fit to the last figure of a float may be a hair apart.
            size = numpy.hypot(centre[0] - x, centre[1] - y) - radius + deep
            SubElement(parent, "geom", type="sphere", size=f"{size}", pos=f"{x} {y} 0", **theirs)
        elif not other and c.kind == "knife_edge":
            x, y = centre - n * (radius + RADIUS - deep)
            SubElement(parent, "geom", type="sphere", size=f"{RADIUS}", pos=f"{x} {y} 0", **theirs)
        else:
            x, y = centre - n * (radius + 1 - deep)
            SubElement(parent, "geom", type="box", size="1 3 3", pos=f"{x} {y} 0", euler=f"0 0 {numpy.degrees(numpy.arctan2(n[1], n[0]))}", **theirs)
        self.held += [(name, body, c.name, c.points[0], "ball") for body in c.parts if body != GROUND]

    def link(self, c) -> None:
        rod = f"rod {c.name}"
        self.body(rod, 1.0, middle=numpy.mean([self.at[p] for p in c.points], axis=0))
        for point, host in zip(c.points, c.parts):
            on = host if host == GROUND else self.host(point, host)
            if on == GROUND:
                self.join("connect", rod, GROUND, point, c.name)
            else:
                self.join("connect", on, rod, point, c.name)

    def hang_weights(self) -> None:
        for load in self.problem.loads:
            if load.kind == "weight":
                x, y = self.at[load.point]
                body = SubElement(self.bodies[self.host(load.point, load.part)], "body", pos=f"{x} {y} 0")
                mass = float(load.magnitude.value) / GRAVITY
                SubElement(body, "inertial", pos="0 0 0", mass=f"{mass}", diaginertia="1e-3 1e-3 1e-3")

    def pushes(self) -> dict[str, numpy.ndarray]:
        """body to (F_x, F_y, M about the origin) of forces, couples and spread loads, the last by summing small pieces."""
        total: dict[str, numpy.ndarray] = {}

        def add(body, at, vector, turn=0.0):
            moment = at[0] * vector[1] - at[1] * vector[0] + turn
            total[body] = total.get(body, numpy.zeros(3)) + (vector[0], vector[1], moment)

        for load in self.problem.loads:
            if load.kind == "couple":
                add(load.part, (0, 0), (0, 0), float(load.magnitude.value))
                continue
            if load.kind == "weight":
                continue
            way = numpy.array([float(c) for c in load.direction.vector])
            way = way / numpy.hypot(*way)
            if load.kind == "force":
                add(self.host(load.point, load.part), self.at[load.point], float(load.magnitude.value) * way)
            for s in load.stretches:
                a, b = (numpy.array([float(c) for c in end]) for end in (s.start, s.end))
                run = {"member": numpy.hypot(*(b - a)), "x": abs(b[0] - a[0]), "y": abs(b[1] - a[1])}[s.per]
                first, last = float(s.start_intensity.value), float(s.end_intensity.value)
                # Two-point Gauss in each of a few pieces: exact for what varies linearly.
                for piece in range(4):
                    for g in (0.5 - 0.5 / 3**0.5, 0.5 + 0.5 / 3**0.5):
                        t = (piece + g) / 4
                        add(load.part, a + t * (b - a), way * (first + (last - first) * t) * run / 8)
        return total


def forces(problem: Problem) -> dict[tuple[str, str, str], numpy.ndarray]:
    """(on, source, point) to (F_x, F_y, couple) in newtons and newton metres, on parts, pins and the engine's own helpers."""
    import mujoco

    model = _Model(problem)
    pushes = model.pushes()
    model.hang_weights()
    m = mujoco.MjModel.from_xml_string(tostring(model.root, encoding="unicode"))
    d = mujoco.MjData(m)
    mujoco.mj_kinematics(m, d)
    for body, (fx, fy, moment) in pushes.items():
        # A wrench about the origin, carried to the body's centre of mass.
        number = m.body(body).id
        cx, cy = d.xipos[number][:2]
        d.xfrc_applied[number] = (fx, fy, 0, 0, 0, moment - (cx * fy - cy * fx))
    jacobian, total = _settle(m, d)
    out: dict = {}
    for name, on, source, point, sort in model.held:
        rows = _rows(m, d, name, sort)
        pull = jacobian[rows].T @ total[rows]
        key = (on, source, point)
        out[key] = out.get(key, numpy.zeros(3)) + _about(m, pull, on, model.at[point], sort)
    return out


def _settle(m, d):
    import mujoco

    balls = None
    total = laid = numpy.zeros(0)
    jacobian = numpy.zeros((0, m.nv))
    for keep in KEPT:
        last, left, calm = numpy.inf, numpy.inf, 0
        for _ in range(ROUNDS):
            if balls is not None:
                laid = total * numpy.where(balls, 1 - keep, 1)
                d.qfrc_applied[:] = jacobian.T @ laid
            mujoco.mj_forward(m, d)
            jacobian = numpy.zeros((d.nefc, m.nv))
            if mujoco.mj_isSparse(m):
                mujoco.mju_sparse2dense(jacobian, d.efc_J, d.efc_J_rownnz, d.efc_J_rowadr, d.efc_J_colind)
            else:
                jacobian[:] = d.efc_J.reshape(d.nefc, m.nv)
            if balls is None:
                balls = d.efc_type == mujoco.mjtConstraint.mjCNSTR_CONTACT_FRICTIONLESS
                total = d.efc_force.copy()
                continue
            change = numpy.abs(laid + d.efc_force - total).max(initial=0)
            total = laid + d.efc_force
            # Steps shrink in a fixed ratio: what all further ones would add up to.
            left = change * change / (last - change) if change < last else numpy.inf
            last = change
            # Several times over: a slow correction shows only once the quick ones have died away.
            largest = numpy.abs(total).max(initial=0)
            calm = calm + 1 if change <= 1e-9 * largest or left < 0.01 * keep * largest else 0
            if calm == 5:
                break
        if calm < 5 or (d.efc_force[balls] <= 0).any():
            raise Unsettled
    return jacobian, total


def _rows(m, d, name: str, sort: str) -> list[int]:
    """Which of the engine's constraint rows a joint has; a contact that is open has none."""
    import mujoco

    if sort == "ball":
        number = m.geom(name).id
        return [d.contact[k].efc_address for k in range(d.ncon) if number in d.contact[k].geom]
    number = m.equality(name).id
    return [k for k in range(d.nefc) if d.efc_type[k] == mujoco.mjtConstraint.mjCNSTR_EQUALITY and d.efc_id[k] == number]


def _about(m, pull, on: str, at, sort: str) -> numpy.ndarray:
    """Generalised forces on one body as force and, where the joint resists turning, couple at a point."""
    import mujoco

    wrench = numpy.zeros(3)
    for joint in range(m.body(on).jntadr[0], m.body(on).jntadr[0] + m.body(on).jntnum[0]):
        dof = m.jnt_dofadr[joint]
        if m.jnt_type[joint] == mujoco.mjtJoint.mjJNT_HINGE:
            wrench[2] += pull[dof]
        else:
            wrench[:2] += pull[dof] * m.jnt_axis[joint][:2]
    turn = wrench[2] - (at[0] * wrench[1] - at[1] * wrench[0])
    return numpy.array((wrench[0], wrench[1], turn if sort == "weld" else 0.0))
