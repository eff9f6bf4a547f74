"""One length of the figure: between which points it runs, which of them move when it is another, and how the file says where they are."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from typing import Literal

from unpin.base.record import record
from unpin.base.units import BY_SPELLING, LENGTH, Unit
from unpin.draw.bodies import used_points
from unpin.exact.number import Number, length, sign
from unpin.model.problem import Problem
from unpin.model.space import difference
from unpin.read.edits import Revision, change
from unpin.read.edits.changes import written
from unpin.read.grammar import parse_phrase
from unpin.read.phrases import Amount, Away, AxisSaid, Every, Moves, OnLine
from unpin.read.reader import read_text
from unpin.workbench.folder import Refused
from unpin.workbench.places import Entry, Places

AXES = {"x": ("right", "left"), "y": ("up", "down")}
ID = re.compile(r"(x|y|along):(.+)-(.+)")
PLAIN = re.compile(r"[+-]?\s*[\d.]+\s*([^\W\d]\w*)?")


@record
class Said:
    """How a point is put where it is. `way`: `letter` (its name is `now`), `length` (what is typed takes the place of `now`), `step` (the same, of a
    row), `number` (a number that follows from it does). `phrase` of the point, and the stretch of it that says so; `part`: which of two coordinates;
    `origin`: of a step, where it begins."""

    way: Literal["letter", "length", "step", "number"]
    now: str
    phrase: str
    start: int
    end: int
    part: int = -1
    origin: Number | None = None


class Measure:
    """One length of the figure of one text: which points it is between, and how they are said. `like`: the same length before a change."""

    def __init__(self, text: str, id: str, like: Measure | None = None):
        found = ID.fullmatch(id.removeprefix("length "))
        self.text, self.reading = text, read_text(text)
        self.problem: Problem = self.reading.problem
        self.places = Places(text, self.reading)
        names = {p.name: k for k, p in enumerate(self.problem.points if self.problem else ())}
        if found is None or found[2] not in names or found[3] not in names:
            raise Refused("thing", 422)
        self.axis = found[1]
        self.unit: Unit = BY_SPELLING[self.problem.units.get("length", "m")]
        self.letters = {e.key for e in self.places.entries("letters")}
        if like is not None:
            self.staying, self.moving, self.run = like.staying, like.moving, like.run
            self.base, self.way, self.size = like.base, like.way, like.size
            return
        a, b = self._group(found[2]), self._group(found[3])
        self.staying, self.moving = (a, b) if min(map(names.get, a)) < min(map(names.get, b)) else (b, a)
        self.run = run = difference(self.coordinates(self.moving[0]), self.coordinates(self.staying[0]))
        self.base = self.coordinate(self.staying[0])
        self.way = 1 if self.axis == "along" or sign(run["xy".index(self.axis)]) > 0 else -1
        self.size = length(run) if self.axis == "along" else run["xy".index(self.axis)] * self.way

    def _group(self, name: str) -> list[str]:
        """The points of the figure that a length ends at: all at one coordinate."""
        if self.axis == "along":
            return [name]
        k = "xy".index(self.axis)
        at = self.problem.coordinates
        used = used_points(self.problem)
        return [p.name for p in self.problem.points if p.place is not None and p.name in used and at[p.name][k] == at[name][k]] or [name]

    def coordinates(self, name: str):
        return self.problem.coordinates[name]

    def coordinate(self, name: str) -> Number:
        """Along the axis; of a length along a slope the way from the point that stays towards the other."""
        if self.axis != "along":
            return self.coordinates(name)["xy".index(self.axis)]
        (x, y), (u, v) = difference(self.coordinates(name), self.coordinates(self.staying[0])), self.run
        return length((x, y)) * (sign(x * u + y * v) or 1)

    def _in_line(self, name: str) -> bool:
        """Whether a point lies on the slope along which a length runs."""
        (x, y), (u, v) = difference(self.coordinates(name), self.coordinates(self.staying[0])), self.run
        return sign(x * v - y * u) == 0

    def there(self, size: Number) -> Number:
        return size if self.axis == "along" else self.base + size * self.way

    def entry(self, name: str) -> Entry:
        found = next((e for e in self.places.entries("points") if name in e.key.replace(",", " ").split()), None)
        if found is None:
            raise Refused("length_own", 422, name=name)
        return found

    def said(self, name: str) -> Said:
        """How a point is put where it is along this length; refused where that follows from others."""
        entry = self.entry(name)
        for found in self._ways(entry, name):
            if self.letters & set(re.findall(r"[^\W\d][\w']*", found.now)) and found.way == "number":
                raise Refused("length_letters", 422, name=name, phrase=entry.phrase)
            alone = found.now.strip() in self.letters and found.way != "number"
            return Said("letter", found.now.strip(), entry.phrase, found.start, found.end) if alone else found
        raise Refused("length_made", 422, name=name, phrase=entry.phrase)

    def _ways(self, entry: Entry, name: str) -> Iterator[Said]:
        phrase, names = entry.phrase, entry.key.replace(",", " ").split()
        if phrase.startswith("["):
            if self.axis != "along":
                yield self._coordinate(phrase)
            return
        said = parse_phrase("point", phrase)
        if isinstance(said, Moves) and self.axis in AXES:
            mine = [(word.text, amount) for word, amount in said.moves if word.text in AXES[self.axis]]
            if len(mine) == 1:
                yield self._step(phrase, said.base.text, mine[0][1])
        elif isinstance(said, Away):
            level = isinstance(said.direction, AxisSaid) and said.direction.axis.text in AXES.get(self.axis, ())
            if level or self.axis == "along" and self._in_line(said.base.text):
                yield self._step(phrase, said.base.text, said.distance)
        elif isinstance(said, Every) and isinstance(said.direction, AxisSaid) and said.direction.axis.text in AXES.get(self.axis, ()):
            before = names[names.index(name) - 1] if names.index(name) else said.base.text
            if before in self.staying:
                yield Said("step", phrase[said.step.start : said.step.end], phrase, said.step.start, said.step.end)
        elif isinstance(said, OnLine) and said.axis.text == self.axis:
            yield Said("number", phrase[said.amount.start : said.amount.end], phrase, said.amount.start, said.amount.end)

    def _coordinate(self, phrase: str) -> Said:
        """One of two coordinates: the length itself where the other place is the origin."""
        inner = phrase.strip().removeprefix("[").removesuffix("]").split(",")
        k = "xy".index(self.axis)
        now = inner[k].strip()
        lettered = bool(self.letters & set(re.findall(r"[^\W\d][\w']*", now)))
        return Said("length" if lettered and self.base == 0 and self.way > 0 else "number", now, phrase, 0, 0, k)

    def _step(self, phrase: str, base: str, amount: Amount) -> Said:
        origin = self.coordinate(base)
        return Said("length" if origin == self.base else "number", phrase[amount.start : amount.end], phrase, amount.start, amount.end, origin=origin)

    def put(self, name: str, value: str, target: Number) -> Revision:
        """A point where it is wanted, said as it was."""
        said, entry = self.said(name), self.entry(name)
        if said.way == "letter":
            return change(self.text, "letters", said.now, value, faulty=True)
        now = value if said.way in ("length", "step") else self._number(self._step_to(target, said, name), said, name)
        if said.part < 0:
            return change(self.text, "points", entry.key, said.phrase[: said.start] + now + said.phrase[said.end :], faulty=True)
        pair = [c.strip() for c in said.phrase.strip()[1:-1].split(",")]
        pair[said.part] = now
        return change(self.text, "points", entry.key, tuple(pair), faulty=True)

    def _step_to(self, target: Number, said: Said, name: str) -> Number:
        """What a coordinate or a step becomes; a step keeps its way."""
        if said.origin is None:
            return target
        if sign(target - said.origin) != sign(self.coordinate(name) - said.origin):
            raise Refused("length_made", 422, name=name, phrase=said.phrase)
        return abs(target - said.origin)

    def _number(self, wanted: Number, said: Said, name: str) -> str:
        """A coordinate or a step in the unit in which it was written."""
        if not isinstance(wanted, Fraction):
            raise Refused("length_rational", 422, name=name)
        own = PLAIN.fullmatch(said.now.strip())
        unit = BY_SPELLING.get(own[1]) if own and own[1] else None
        if unit is not None and unit.dimension == LENGTH:
            return f"{written(wanted / unit.factor)} {own[1]}"
        return written(wanted / self.unit.factor)
