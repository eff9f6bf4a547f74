"""Random plane structures over every kind of part, connection, load and direction, built up and then spoilt.

Each new part is held to what stands by three constraints, so that most structures are determinate; a mutation takes one
constraint away, adds one, turns one, or moves a point. A structure is a function of its few arguments alone.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction as F
from random import Random

from unpin.base.units import FORCE, MOMENT, SPREAD
from unpin.exact.number import cos_deg, length, sin_deg, sqrt
from unpin.model import directions
from unpin.model.problem import GROUND, Asked, Connection, Load, Part, Point, Problem, Stretch
from unpin.model.space import square_to
from unpin.model.values import Direction, Quantity

MUTATIONS = ("none", "remove", "add", "turn", "straighten", "unload", "sought")
FORMS = ("axis", "angle", "slope", "line", "square", "components")
LOADS = ("force", "couple", "weight", "uniform", "linear", "crossing", "projection")
HOLDS = ("fixed", "pin", "guide", "three", "weld", "dyad", "node")
FRAMES = ("dyad", "dyad", "pin", "three")
SINGLES = ("roller", "contact", "link", "member", "roller between", "contact between")
LIKE = {"roller": ("roller", "roller", "slot", "collar"), "guide": ("guide", "sleeve"),
        "contact": ("contact", "contact", "rocker", "knife_edge", "surface")}
BETWEEN = {"roller": ("roller", "slot", "collar"), "guide": ("guide", "sleeve"), "contact": ("contact",)}
"""Kinds that may stand for one another: the same forces, said and drawn in other ways."""
AXES = (directions.X, directions.X.reversed(), directions.Y, directions.DOWN)


def structure(seed: int, steps: int = 2, loads: int = 2, mutation: str = "none", numbers: str = "rational",
              holds: tuple[str, ...] = HOLDS) -> Problem:
    """`steps`: how many times something is added, one of `holds`; `numbers`: rational, root (ordinates are multiples of √3),
    digits (of a root that does not open) or angle."""
    made = _Builder(Random(f"{seed}"), numbers, holds).build(steps, loads, mutation)
    return Drawn(**{**vars(made), "title": f"structure({seed}, {steps}, {loads}, {mutation!r}, {numbers!r}, {holds})"})


class Drawn(Problem):
    """A problem that prints as the call that makes it again."""

    def __repr__(self) -> str:
        return self.title


class _Builder:
    def __init__(self, chance: Random, numbers: str, holds: tuple[str, ...]):
        self.chance, self.numbers, self.holds = chance, numbers, holds
        self.at: dict[str, tuple] = {}
        self.parts: dict[str, list[str]] = {}
        self.pins: dict[str, list[str]] = {}
        self.others: list[Connection] = []
        self.grounded: dict[str, str] = {}  # point: what its support acts on
        self.held: set[str] = set()

    def build(self, steps: int, loads: int, mutation: str) -> Problem:
        for _ in range(steps):
            self.add(self.chance.choice(self.holds))
        if mutation == "add":
            self.single(self.chance.choice(list(self.parts)), self.chance.choice(SINGLES))
        self._mutate(mutation)
        made = [] if mutation == "unload" and self.chance.random() < 0.5 else [self.load() for _ in range(loads)]
        points = tuple(Point(n, at) for n, at in self.at.items())
        parts = tuple(Part(n, tuple(p)) for n, p in self.parts.items())
        connections = tuple(Connection(p, "pin", (p,), tuple(who)) for p, who in self.pins.items() if len(who) > 1)
        # A support stands on the pin where several parts are pinned, as the reader says it.
        others = tuple(replace(c, parts=("", GROUND)) if c.kind == "pin" and len(self.pins.get(c.points[0], ())) > 1 else c
                       for c in self.others)
        if mutation == "sought":
            made += self.sought()
        problem = Problem(points, parts, connections + others, tuple(made))
        return replace(problem, asked=(Asked("everything"), *self.asked()))

    # Points, numbers and directions.

    def number(self, low: int = -4, high: int = 4):
        return F(self.chance.randint(2 * low, 2 * high), 2)

    def point(self) -> str:
        while True:
            x, y = self.number(0, 6), self.number(0, 4)
            factor = {"root": sqrt(F(3)), "digits": sqrt(1 + sqrt(F(2)))}.get(self.numbers, F(1))
            at = (x, y * factor if self.chance.random() < 0.5 else y)
            if at not in self.at.values():
                name = f"P{len(self.at)}"
                self.at[name] = at
                return name

    def direction(self) -> Direction:
        form = self.chance.choice(FORMS)
        if form == "angle" and self.numbers != "angle":
            angle = F(self.chance.choice([15, 30, 45, 60, 75]) if self.numbers == "root" else 0)
        else:
            angle = F(self.chance.randint(1, 89))
        if form == "angle" and angle:
            base, turn = self.chance.choice([(AXES[0], AXES[2]), (AXES[2], AXES[1]), (AXES[1], AXES[3]), (AXES[3], AXES[0])])
            vector = tuple(b * cos_deg(angle) + t * sin_deg(angle) for b, t in zip(base.vector, turn.vector))
            return Direction(vector, F(1), "angle", angle=angle, base=base.vector, turn=turn.vector)
        if form == "slope":
            legs = self.chance.choice([(3, 4), (4, -3), (-5, 12), (-8, -15), (1, 2), (-2, 1)])
            vector = tuple(map(F, legs))
            return Direction(vector, length(vector), "slope", legs=vector)
        if form in ("line", "square") and len(self.at) > 1:
            a, b = self.chance.sample(sorted(self.at), 2)
            along = directions.line((a, b), self.at[a], self.at[b])
            return self.square_of(along) if form == "square" else along
        if form == "components":
            vector = (F(self.chance.choice([-2, 1, 3])), F(self.chance.choice([-1, 2, 5])))
            return Direction(vector, length(vector), "components")
        return self.chance.choice(AXES)

    @staticmethod
    def square_of(along: Direction) -> Direction:
        vector = square_to(along.vector)
        form = "axis" if directions.axis_of(vector) else "square"
        return Direction(vector, along.length, form, points=along.points)

    def across(self, part: str, point: str) -> Direction:
        """Square to a run of the part that ends at the point."""
        names = self.parts[part]
        k = names.index(point)
        other = names[k - 1] if k else names[1]
        return self.square_of(directions.line((other, point), self.at[other], self.at[point]))

    # Parts and what holds them.

    def part(self, *fixed: str, least: int = 2) -> str:
        points = list(fixed)
        while len(points) < max(least, self.chance.randint(2, 4)):
            points.append(self.point())
        self.chance.shuffle(points)
        name = "abcdefghijklmn"[len(self.parts)]
        self.parts[name] = points
        return name

    def some_point(self, part: str) -> str:
        return self.chance.choice(self.parts[part])

    def standing(self, besides: str = "") -> list[str]:
        return [p for p in self.parts if p != besides]

    def add(self, how: str) -> None:
        before = self.standing()
        if how == "dyad":
            return self._dyad(before)
        if how == "node" and before:
            return self._node(before)
        if how == "weld" and before:
            old = self.chance.choice(before)
            meet = self.some_point(old)
            new = self.part(meet)
            self.others.append(Connection(meet, "fixed", (meet,), (old, new)))
            return None
        if how == "pin" and before and self.chance.random() < 0.7:
            meet = self.some_point(self.chance.choice(before))
            new = self.part(meet)
            self.pin(meet, new)
            return self.single(new, self.chance.choice(SINGLES))
        new = self.part()
        if how in ("fixed", "pin"):
            self.support(new, how)
        elif how == "guide":
            if before and self.chance.random() < 0.4:
                other = self.chance.choice(before)
                meet = self.some_point(new)
                self.parts[other].append(meet)
                kind = self.chance.choice(BETWEEN["guide"])
                way = self.across(other, meet) if kind == "sleeve" else self.direction()
                self.others.append(Connection(f"{meet}g", kind, (meet,), (new, other), way))
            else:
                self.support(new, "guide")
        kinds = {"fixed": 0, "pin": 1, "guide": 1}.get(how, 3)
        for _ in range(kinds):
            self.single(new, self.chance.choice(SINGLES))
        return None

    def pin(self, point: str, part: str) -> None:
        """Pin a part to whatever passes through the point."""
        here = self.pins.setdefault(point, [])
        for name, points in self.parts.items():
            if (point in points) and name not in here and (name == part or not here):
                here.append(name)
        if part not in here:
            here.append(part)

    def support(self, part: str, kind: str, point: str = "") -> None:
        free = [p for p in self.parts[part] if p not in self.grounded]
        if not point and not free:
            return
        point = point or self.chance.choice(free)
        self.grounded[point] = part
        if kind in ("roller", "guide", "contact"):
            kind = self.chance.choice(LIKE[kind])
        way = self.direction() if kind not in ("pin", "fixed") else None
        self.others.append(Connection(point, kind, (point,), (part, GROUND), way))

    def single(self, part: str, how: str) -> None:
        """One more constraint on a part: to the ground or to another part."""
        others = self.standing(part)
        if how in ("roller", "contact"):
            return self.support(part, how)
        if "between" in how and others:
            other = self.chance.choice(others)
            meet = self.chance.choice([p for p in self.parts[part]])
            if meet not in self.parts[other]:
                self.parts[other].append(meet)
            name = f"{meet}{len(self.others)}"
            kind = self.chance.choice(BETWEEN[how.split()[0]])
            way = self.across(other, meet) if kind in ("slot", "collar") else self.direction()
            self.others.append(Connection(name, kind, (meet,), (part, other), way))
            return None
        near = self.some_point(part)
        far, host = self._far(part, near)
        if how == "member":
            new = self.part(near, far)
            self.pin(near, new)
            if host:
                self.pin(far, new)
            else:
                self.support(new, "pin", far)
            return None
        self.others.append(Connection(f"L{len(self.others)}", "link", (near, far), (self._host(near, part), host or GROUND)))
        return None

    def _host(self, point: str, part: str) -> str:
        return "" if len(self.pins.get(point, ())) > 1 else part

    def _far(self, part: str, near: str) -> tuple[str, str]:
        others = [o for o in self.standing(part) if any(p != near for p in self.parts[o])]
        if others and self.chance.random() < 0.5:
            other = self.chance.choice(others)
            far = self.chance.choice([p for p in self.parts[other] if p != near])
            return far, self._host(far, other) or other
        return self.point(), ""

    def _dyad(self, before: list[str]) -> None:
        """Two parts pinned to each other, and each to what stands or to the ground."""
        apex = self.point()
        for _ in range(2):
            if before and self.chance.random() < 0.5:
                foot = self.some_point(self.chance.choice(before))
                new = self.part(foot, apex)
                self.pin(foot, new)
            else:
                new = self.part(apex)
                self.support(new, "pin", next(p for p in self.parts[new] if p != apex))
            self.pin(apex, new)

    def _node(self, before: list[str]) -> None:
        """A pin of its own on two links."""
        node = self.point()
        for _ in range(2):
            old = self.chance.choice(before)
            end = self.some_point(old)
            host = self._host(end, old)
            self.others.append(Connection(f"L{len(self.others)}", "link", (node, end), ("", host)))

    def _mutate(self, mutation: str) -> None:
        if mutation in ("remove", "sought") and len(self.others) > 1:
            self.others.pop(self.chance.randrange(len(self.others)))
        turnable = [k for k, c in enumerate(self.others) if c.direction]
        if mutation == "turn" and turnable:
            k = self.chance.choice(turnable)
            self.others[k] = replace(self.others[k], direction=self.chance.choice(AXES))
        if mutation == "straighten" and len(self.at) > 2:
            a, b, c = self.chance.sample(sorted(self.at), 3)
            middle = tuple((p + q) / 2 for p, q in zip(self.at[a], self.at[b]))
            if middle not in self.at.values():
                self.at[c] = middle

    # Loads and questions.

    def load(self) -> Load:
        kind = self.chance.choice(LOADS)
        part = self.chance.choice(list(self.parts))
        size = F(self.chance.randint(1, 40)) * 5
        point = self.some_point(part)
        if kind == "couple":
            return Load("couple", point, part, Quantity(size * self.chance.choice([1, -1]), MOMENT))
        if kind in ("force", "weight"):
            way = directions.DOWN if kind == "weight" else self.direction()
            shared = [p for p, who in self.pins.items() if len(who) > 1]
            nodes = [c.points[0] for c in self.others if c.kind == "link" and c.parts[0] == ""]
            if self.chance.random() < 0.4 and shared + nodes:
                return Load(kind, self.chance.choice(shared + nodes), "", Quantity(size, FORCE), way)
            return Load(kind, point, part, Quantity(size, FORCE), way)
        runs = list(zip(self.parts[part], self.parts[part][1:]))
        a, b = self.chance.choice(runs)
        first, last = {"uniform": (size, size), "linear": (size, 0), "crossing": (size, -size / 2)}.get(kind, (size, size / 4))
        per = "member" if kind != "projection" else self.chance.choice("xy")
        flat = kind == "projection" and self.at[a]["xy".index(per)] == self.at[b]["xy".index(per)]
        stretch = Stretch(self.at[a], self.at[b], a, b, Quantity(F(first), SPREAD), Quantity(F(last), SPREAD), "member" if flat else per)
        return Load("spread", "", part, None, self.direction(), stretches=(stretch,))

    def sought(self) -> list[Load]:
        """A load to be found, in place of the constraint that was taken away; now and then at two places."""
        made = []
        for multiple in self.chance.choice([(F(1),), (F(1),), (F(1), F(2)), (F(1), F(-1, 2))]):
            part = self.chance.choice(list(self.parts))
            made.append(Load("force", self.some_point(part), part, None, self.direction(), name="Q", multiple=multiple))
        return made

    def asked(self):
        """What the reader would let somebody ask of it, in one form or another."""
        def any_of(asked: Asked) -> Asked:
            return replace(asked, component=self.chance.choice(["", "", "x", "y", "magnitude"]))

        for point in self.grounded:
            yield any_of(Asked("reaction", subject=point, point=point))
        for c in self.others:
            if c.kind == "link":
                yield Asked("link", subject=c.name)
        for point, who in self.pins.items():
            if len(who) > 1:
                yield from (any_of(Asked("pin", subject=point, point=point, part=name)) for name in who)
