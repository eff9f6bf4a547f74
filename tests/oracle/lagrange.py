"""Forces as Lagrange multipliers: every connection is a function of where the parts are, differentiated by small steps.

Parts move as rigid bodies (x, y, turn), pins as particles. A pin keeps two points together, a link its length, a roller its
height over a line that goes with the second part, a cord its whole length round its discs. The gradients of these functions
times their multipliers balance the loads; no force, wrench or freedom of the program is used.
"""

from __future__ import annotations

from itertools import product

import numpy

from rims import normal_to, run_under, wheel_of
from unpin.model.problem import GROUND, Problem

STEP = 1e-5


class Structure:
    """The functions of a problem, each with what its multipliers mean."""

    def __init__(self, problem: Problem):
        self.problem = problem
        self.at = {p.name: numpy.array([float(c) for c in p.at]) for p in problem.points}
        self.pinned = {c.points[0]: c.parts for c in problem.connections if c.kind == "pin" and GROUND not in c.parts}
        self.names = [p.name for p in problem.parts]
        self.functions: list = []
        self.meaning: list[tuple] = []
        for point, parts in self.pinned.items():
            for part in parts:
                self.hold(lambda q, a=part, b=self.pin(point), p=point: self.spot(q, a, p) - self.spot(q, b, p), (part, point, point))
        for c in problem.connections:
            if c.kind == "link":
                ends = [self.host(e, p) for e, p in zip(c.points, c.parts)]
                self.hold(lambda q, c=c, e=ends: numpy.linalg.norm(self.spot(q, e[0], c.points[0]) - self.spot(q, e[1], c.points[1])),
                          ("tension", c.name))
            elif c.kind != "pin" or GROUND in c.parts:
                self.joint(c)
        for cord in problem.cords:
            senses = self.senses(cord)
            self.hold(lambda q, c=cord, s=senses: self.length(q, c, s)[0], ("tension", cord.name))

    def hold(self, function, meaning) -> None:
        self.functions.append(function)
        self.meaning.append(meaning)

    def pin(self, point: str) -> str:
        name = f"pin {point}"
        if name not in self.names:
            self.names.append(name)
        return name

    def host(self, point: str, said: str) -> str:
        if said:
            return said
        through = [p.name for p in self.problem.parts if point in p.points]
        held = any(c.kind == "pin" and c.parts == ("", GROUND) and c.points == (point,) for c in self.problem.connections)
        if point not in self.pinned and len(through) == 1:
            return through[0]
        return self.pin(point) if point in self.pinned or not (held and not through) else GROUND

    def place(self, q, body: str):
        if body == GROUND:
            return numpy.zeros(2), 0.0
        k = 3 * self.names.index(body)
        return q[k:k + 2], 0.0 if body.startswith("pin ") else q[k + 2]

    def moved(self, q, body: str, v, turn_only: bool = False):
        move, turn = self.place(q, body)
        x, y = numpy.cos(turn) * v[0] - numpy.sin(turn) * v[1], numpy.sin(turn) * v[0] + numpy.cos(turn) * v[1]
        return numpy.array([x, y]) + (0 if turn_only else move)

    def spot(self, q, body: str, point: str):
        return self.moved(q, body, self.at[point])

    def joint(self, c) -> None:
        point = c.points[0]
        first, second = self.host(point, c.parts[0]), c.parts[1]
        if first == GROUND:
            return
        def apart(q):
            return self.spot(q, first, point) - self.spot(q, second, point)
        def turned(q):
            return numpy.array([self.place(q, first)[1] - self.place(q, second)[1]])
        # A support is read on the ground, where nothing else of its name acts.
        on, way = (GROUND, -1) if second == GROUND else (first, 1)
        if c.kind == "pin":
            self.hold(lambda q: way * apart(q), (on, c.name, point))
        elif c.kind == "fixed":
            self.hold(lambda q: way * numpy.concatenate([apart(q), turned(q)]), (on, c.name, point))
        elif c.centre:
            # As far from the centre of the arc as before.
            arm = self.at[point] - self.at[c.centre]
            self.hold(lambda q: way * numpy.linalg.norm(self.spot(q, first, point) - self.spot(q, second, c.centre)),
                      (on, c.name, point, arm / numpy.linalg.norm(arm)))
        elif wheel_of(self.problem, c):
            self.rolling(c, on, way)
        else:
            n = numpy.array([float(v) for v in c.direction.vector])
            n = n / numpy.linalg.norm(n)
            def height(q):
                return numpy.array([way * apart(q) @ self.moved(q, second, n, turn_only=True)])
            self.hold((lambda q: numpy.concatenate([height(q), way * turned(q)])) if c.kind in ("guide", "sleeve") else height, (on, c.name, point, n))

    def rolling(self, c, on: str, way: int) -> None:
        """A wheel's centre keeps its distance: from the other centre, from an edge, from the line of a run or a floor."""
        wheel, other = wheel_of(self.problem, c)
        n, centre = normal_to(self.problem, c), wheel.points[0]
        # Its gradient at the first part is the unit vector n, which points to the wheel, or minus that.
        side = 1 if c.parts[0] == wheel.name else -1
        if other is not None and other.kind == "disc":
            def apart(q):
                return numpy.linalg.norm(self.spot(q, wheel.name, centre) - self.spot(q, other.name, other.points[0]))
        elif other is None and c.kind == "knife_edge":
            def apart(q):
                return numpy.linalg.norm(self.spot(q, wheel.name, centre) - self.at[c.points[0]])
        else:
            under = other.name if other else GROUND
            a = run_under(self.problem, c, wheel, other)[0] if other else c.points[0]
            def apart(q):
                return (self.spot(q, wheel.name, centre) - self.spot(q, under, a)) @ self.moved(q, under, n, turn_only=True)
        self.hold(lambda q: way * side * numpy.atleast_1d(apart(q)), (on, c.name, c.points[0], n))

    # Cords.

    def senses(self, cord):
        """Of all ways to turn round the discs the shortest in which the middle of each arc is on the named side."""
        discs = [k for k, s in enumerate(cord.stops) if s.side]
        sides = {"over": (0, 1), "under": (0, -1), "left": (-1, 0), "right": (1, 0)}
        still, ways = numpy.zeros(3 * len(self.names)), []
        for choice in product((1, -1), repeat=len(discs)):
            senses = dict(zip(discs, choice))
            total, middles = self.length(still, cord, senses)
            if all(numpy.dot(middles[k], sides[cord.stops[k].side]) > 0 for k in discs):
                ways.append((total, choice, senses))
        return min(ways, key=lambda way: way[:2])[2]

    def length(self, q, cord, senses):
        """Length of strands and wrapped arcs, and for each disc the direction of the middle of its arc."""
        centres = [self.spot(q, self.host(s.point, s.part), s.point) for s in cord.stops]
        signed = [senses.get(k, 0) * float(s.radius) if s.side else 0.0 for k, s in enumerate(cord.stops)]
        total, touch = 0.0, {k: [] for k in senses}
        for k in range(len(centres) - 1):
            (a, b), (r, s) = (centres[k], centres[k + 1]), (signed[k], signed[k + 1])
            start, end = self.tangent(a, b, r, s)
            total += numpy.linalg.norm(end - start)
            for j, spot in ((k, start), (k + 1, end)):
                if j in touch:
                    touch[j].append(numpy.arctan2(*(spot - centres[j])[::-1]))
        middles = {}
        for k, (first, last) in touch.items():
            arc = (last - first) * senses[k] % (2 * numpy.pi)
            total += arc * abs(signed[k])
            mid = first + senses[k] * arc / 2
            middles[k] = (numpy.cos(mid), numpy.sin(mid))
        return total, middles

    @staticmethod
    def tangent(a, b, r: float, s: float):
        """Ends of the strand from one disc to the next: both touch on the right of the way it runs where turned anticlockwise."""
        v = b - a
        phi, beta = numpy.arctan2(v[1], v[0]), numpy.arccos((r - s) / numpy.linalg.norm(v))
        for angle in (phi + beta, phi - beta):
            n = numpy.array([numpy.cos(angle), numpy.sin(angle)])
            d = b + s * n - a - r * n
            if n @ (d[1], -d[0]) > 0:
                return a + r * n, b + s * n
        raise ValueError("no tangent")


def multipliers(problem: Problem):
    """(tensions by name, forces by (on, source, point) as (F_x, F_y, couple), how far the gradients are from balancing)."""
    s = Structure(problem)
    loads: list[tuple[str, numpy.ndarray, numpy.ndarray, float]] = []
    for x in problem.loads:
        if x.kind == "couple":
            loads.append((x.part, numpy.zeros(2), numpy.zeros(2), float(x.magnitude.value)))
            continue
        way = numpy.array([float(c) for c in x.direction.vector])
        way = way / numpy.linalg.norm(way)
        if x.kind != "spread":
            loads.append((s.host(x.point, x.part), s.at[x.point], way * float(x.magnitude.value), 0.0))
        for t in x.stretches:
            a, b = (numpy.array([float(c) for c in end]) for end in (t.start, t.end))
            run = {"member": numpy.linalg.norm(b - a), "x": abs(b[0] - a[0]), "y": abs(b[1] - a[1])}[t.per]
            for u in (0.5 - 0.5 / 3**0.5, 0.5 + 0.5 / 3**0.5):
                # Two-point Gauss: exact for what varies linearly.
                w = float(t.start_intensity.value) * (1 - u) + float(t.end_intensity.value) * u
                loads.append((x.part, a + u * (b - a), way * w * run / 2, 0.0))
    size = 3 * len(s.names)

    def work(q):
        return sum(f @ (s.moved(q, body, at)) + m * s.place(q, body)[1] for body, at, f, m in loads if body != GROUND)

    def gradient(function):
        rows = []
        for k in range(size):
            step = numpy.zeros(size)
            step[k] = STEP
            rows.append((numpy.atleast_1d(function(step)) - numpy.atleast_1d(function(-step))) / (2 * STEP))
        return numpy.array(rows)

    parts = [gradient(f) for f in s.functions]
    whole = numpy.hstack(parts)
    right = -gradient(work)[:, 0]
    found, *_ = numpy.linalg.lstsq(whole, right, rcond=1e-8)
    left = numpy.abs(whole @ found - right).max() / (numpy.abs(right).max() + 1e-12)
    tensions, forces = {}, {}
    for meaning, part in zip(s.meaning, parts):
        mine, found = found[: part.shape[1]], found[part.shape[1]:]
        if meaning[0] == "tension":
            tensions[meaning[1]] = -mine[0]
        elif len(meaning) == 4:
            forces[meaning[:3]] = numpy.array((*(mine[0] * meaning[3]), mine[1] if len(mine) > 1 else 0.0)) + forces.get(meaning[:3], 0)
        else:
            forces[meaning] = numpy.array((mine[0], mine[1], mine[2] if len(mine) > 2 else 0.0)) + forces.get(meaning, 0)
    return tensions, forces, left
