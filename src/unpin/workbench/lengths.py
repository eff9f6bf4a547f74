"""A length of the figure typed over: what the file says it with, and the text in which it is another.

Of its two places the one whose points come first in the file stays; the points of the figure that stand at the other move, each as the file
says it: by a coordinate, by a step from another point, by a distance from one. A letter that stands there by itself is what is edited. What
follows from other points, or cannot be said without a doubt, is refused with the reason.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Any, Literal

from unpin.base.record import record
from unpin.base.units import BY_SPELLING, LENGTH, Unit
from unpin.draw.bodies import used_points
from unpin.draw.scene import Arrow, Path, Scene, Text, leaves, text_box
from unpin.exact.number import Number, length, sign
from unpin.model.problem import Problem
from unpin.model.space import difference
from unpin.read.edits import Revision, add, change
from unpin.read.edits.changes import written
from unpin.read.grammar import parse_phrase
from unpin.read.phrases import Amount, Away, AxisSaid, Every, Moves, OnLine
from unpin.read.reader import read_text
from unpin.workbench import radii
from unpin.workbench.folder import Refused
from unpin.workbench.naming import names_in
from unpin.workbench.places import Entry, Places

AXES = {"x": ("right", "left"), "y": ("up", "down")}
_ID = re.compile(r"(x|y|along):(.+)-(.+)")
_RADIUS = "length radius:"
_PLAIN = re.compile(r"[+-]?\s*[\d.]+\s*([^\W\d]\w*)?")


def shown(scene: Scene) -> list[dict[str, Any]]:
    """The lengths that a figure shows: `id`, which points it runs between along which axis (of a radius the disc), as it is written, and where: `box` of the
    number and `lines`, pt."""
    lines: dict[str, list[list[list[float]]]] = {}
    for m in leaves(scene.marks):
        if isinstance(m, (Arrow, Path)) and m.role in ("dimension", "extension"):
            lines.setdefault(m.owner, []).append([list(s) for s in (m.spots[0], m.spots[-1])])
    out = []
    for m in leaves(scene.marks):
        between, round_ = _ID.fullmatch(m.owner), radii.RADIUS.fullmatch(m.owner)
        if isinstance(m, Text) and m.role == "dimension" and (between or round_):
            id, axis, ends = (f"length {m.owner}", between[1], list(between.groups()[1:])) if between else (_RADIUS + m.owner, "radius", [round_[1], ""])
            out.append({"id": id, "axis": axis, "ends": ends, "shown": "".join(run.text for run in m.label), "box": list(text_box(m)),
                        "lines": lines.get(m.owner, [])})
    return out


def asked(text: str, id: str) -> dict[str, Any]:
    """What is typed over: the `phrase` that says a length, and the `letter` that it is the value of, else "". Refused with the reason."""
    if id.startswith(_RADIUS):
        return radii.asked(text, id.removeprefix(_RADIUS))
    measure = _Measure(text, id)
    said = measure.said(measure.moving[0])
    if said.way == "letter":
        return {"ok": True, "phrase": next(e.phrase for e in measure.places.entries("letters") if e.key == said.now), "letter": said.now}
    if said.way == "length":
        return {"ok": True, "phrase": said.now, "letter": ""}
    if not isinstance(measure.size, Fraction):
        raise Refused("length_rational", 422, name=measure.moving[0])
    return {"ok": True, "phrase": written(measure.size / measure.unit.factor), "letter": ""}


def lengthened(text: str, act: Mapping[str, Any]) -> tuple[Revision, list[str]]:
    """The text with a length of that `value`, and the ids of the points that have moved. Refused with the reason."""
    id, value = str(act["id"]), str(act["value"]).strip()
    if id.startswith(_RADIUS):
        return radii.resized(text, id.removeprefix(_RADIUS), value)
    first = _Measure(text, id)
    before = {p.name: p.at for p in first.problem.points}
    said = first.said(first.moving[0])
    revision = change(text, "letters", said.now, value) if said.way == "letter" else _moved(text, id, value, first)
    faults = tuple(d for d in revision.reading.diagnostics if d.is_error)
    if revision.made and len(faults) > sum(d.is_error for d in first.reading.diagnostics):
        revision = Revision(text, first.reading, refused=faults[:1])
    after = revision.reading.problem.points if revision.reading.problem else ()
    return revision, [f"point {p.name}" for p in after if p.name in before and p.at != before[p.name]]


def _moved(text: str, id: str, value: str, first: _Measure) -> Revision:
    """Each point of the moving place where the new length puts it."""
    tried, size = _value(text, value)
    if size is None:
        return tried
    target = first.there(size)
    waiting, revision = list(first.moving), Revision(text, first.reading)
    while waiting:
        refused, left = None, []
        for name in waiting:
            now = _Measure(text, id, first)
            if now.coordinate(name) == target:
                continue
            try:
                revision = now.put(name, value, target)
                if not revision.made:
                    return revision
                text = revision.text
            except Refused as reason:
                refused = refused or reason
                left.append(name)
        if refused and len(left) == len(waiting):
            raise refused
        waiting = left
    last = _Measure(text, id, first)
    if any(last.coordinate(n) != target for n in first.moving) or any(last.coordinate(n) != first.base for n in first.staying):
        raise Refused("length_made", 422, name=first.moving[0], phrase=first.entry(first.moving[0]).phrase)
    return revision


def _value(text: str, value: str) -> tuple[Revision, Number | None]:
    """What is typed as a length, metres; None with what is wrong with it."""
    name = next(n for n in (f"P{k}" for k in range(len(text) + 2)) if n not in names_in(text))
    tried = add(text, "points", (value, "0"), name, faulty=True)
    point = next((p for p in tried.reading.problem.points if p.name == name), None) if tried.reading.problem else None
    if point is None:
        faults = tuple(d for d in tried.reading.diagnostics if d.is_error and d.path.split(" > ")[1:2] == [name]) or tried.refused
        return Revision(text, tried.reading, refused=faults[:1]), None
    if sign(point.at[0]) <= 0:
        raise Refused("length_positive", 422)
    return tried, point.at[0]


@record
class Said:
    """How a point is put where it is. `way`: `letter` (its name is `now`), `length` (what is typed takes the place of `now`), `number`
    (a number that follows from it does). `phrase` of the point, and the stretch of it that says so; `part`: which of two coordinates;
    `origin`: of a step, where it begins."""

    way: Literal["letter", "length", "number"]
    now: str
    phrase: str
    start: int
    end: int
    part: int = -1
    origin: Number | None = None


class _Measure:
    """One length of the figure of one text: which points it is between, and how they are said. `like`: the same length before a change."""

    def __init__(self, text: str, id: str, like: _Measure | None = None):
        found = _ID.fullmatch(id.removeprefix("length "))
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
            self.staying, self.moving, self.base, self.way, self.size = like.staying, like.moving, like.base, like.way, like.size
            return
        a, b = self._group(found[2]), self._group(found[3])
        self.staying, self.moving = (a, b) if min(map(names.get, a)) < min(map(names.get, b)) else (b, a)
        self.base = self.coordinate(self.staying[0])
        run = difference(self.coordinates(self.moving[0]), self.coordinates(self.staying[0]))
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
        """Along the axis; of a length along a slope the distance from the point that stays."""
        if self.axis != "along":
            return self.coordinates(name)["xy".index(self.axis)]
        return length(difference(self.coordinates(name), self.coordinates(self.staying[0])))

    def there(self, size: Number) -> Number:
        return size if self.axis == "along" else self.base + size * self.way

    def entry(self, name: str) -> Entry:
        found = next((e for e in self.places.entries("points") if name in e.key.replace(",", " ").split()), None)
        if found is None:
            raise Refused("thing", 422)
        return found

    def said(self, name: str) -> Said:
        """How a point is put where it is along this length; refused where that follows from others."""
        entry = self.entry(name)
        for found in self._ways(entry, name):
            if self.letters & set(re.findall(r"[^\W\d][\w']*", found.now)) and found.way == "number":
                raise Refused("length_letters", 422, name=name, phrase=entry.phrase)
            alone = found.now.strip() in self.letters and found.way == "length"
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
            if level or self.axis == "along" and said.base.text in self.staying:
                yield self._step(phrase, said.base.text, said.distance)
        elif isinstance(said, Every) and isinstance(said.direction, AxisSaid) and said.direction.axis.text in AXES.get(self.axis, ()):
            before = names[names.index(name) - 1] if names.index(name) else said.base.text
            if before in self.staying:
                yield self._step(phrase, before, said.step)
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
        now = value if said.way == "length" else self._number(self._step_to(target, said, name), said, name)
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
        own = _PLAIN.fullmatch(said.now.strip())
        unit = BY_SPELLING.get(own[1]) if own and own[1] else None
        if unit is not None and unit.dimension == LENGTH:
            return f"{written(wanted / unit.factor)} {own[1]}"
        return written(wanted / self.unit.factor)
