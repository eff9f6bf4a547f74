"""A length of the figure typed over: what the file says it with, and the text in which it is another.

Of its two places the one whose points come first in the file stays; the points of the figure that stand at the other move, each as the file
says it: by a coordinate, by a step from another point, by a distance from one. A letter that stands there by itself is what is edited. What
follows from other points, or cannot be said without a doubt, is refused with the reason.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from unpin.draw.scene import Arrow, Path, Scene, Text, leaves, text_box
from unpin.exact.number import Number, sign
from unpin.read.edits import Revision, add, change
from unpin.read.edits.changes import written
from unpin.workbench import radii
from unpin.workbench.folder import Refused
from unpin.workbench.measure import ID, Measure
from unpin.workbench.naming import names_in

_RADIUS = "length radius:"


def shown(scene: Scene) -> list[dict[str, Any]]:
    """The lengths that a figure shows: `id`, which points it runs between along which axis (of a radius the disc), as it is written, and where: `box` of the
    number and `lines`, pt."""
    lines: dict[str, list[list[list[float]]]] = {}
    for m in leaves(scene.marks):
        if isinstance(m, (Arrow, Path)) and m.role in ("dimension", "extension"):
            lines.setdefault(m.owner, []).append([list(s) for s in (m.spots[0], m.spots[-1])])
    out = []
    for m in leaves(scene.marks):
        between, round_ = ID.fullmatch(m.owner), radii.RADIUS.fullmatch(m.owner)
        if isinstance(m, Text) and m.role == "dimension" and (between or round_):
            id, axis, ends = (f"length {m.owner}", between[1], list(between.groups()[1:])) if between else (_RADIUS + m.owner, "radius", [round_[1], ""])
            out.append({"id": id, "axis": axis, "ends": ends, "shown": "".join(run.text for run in m.label), "box": list(text_box(m)),
                        "lines": lines.get(m.owner, [])})
    return out


def asked(text: str, id: str) -> dict[str, Any]:
    """What is typed over: the `phrase` that says a length, and the `letter` that it is the value of, else "". Refused with the reason."""
    if id.startswith(_RADIUS):
        return radii.asked(text, id.removeprefix(_RADIUS))
    measure = Measure(text, id)
    said = measure.said(measure.moving[0])
    if said.way == "letter":
        return {"ok": True, "phrase": next(e.phrase for e in measure.places.entries("letters") if e.key == said.now), "letter": said.now}
    if said.way in ("length", "step"):
        return {"ok": True, "phrase": said.now, "letter": ""}
    if not isinstance(measure.size, Fraction):
        raise Refused("length_rational", 422, name=measure.moving[0])
    return {"ok": True, "phrase": written(measure.size / measure.unit.factor), "letter": ""}


def lengthened(text: str, act: Mapping[str, Any]) -> tuple[Revision, list[str]]:
    """The text with a length of that `value`, and the ids of the points that have moved. Refused with the reason."""
    id, value = str(act["id"]), str(act["value"]).strip()
    if id.startswith(_RADIUS):
        return radii.resized(text, id.removeprefix(_RADIUS), value)
    first = Measure(text, id)
    before = {p.name: p.at for p in first.problem.points}
    said = first.said(first.moving[0])
    if said.way == "letter":
        revision = change(text, "letters", said.now, value)
    else:
        revision = (_stepped if said.way == "step" else _moved)(text, id, value, first)
    faults = tuple(d for d in revision.reading.diagnostics if d.is_error)
    if revision.made and len(faults) > sum(d.is_error for d in first.reading.diagnostics):
        revision = Revision(text, first.reading, refused=faults[:1])
    after = revision.reading.problem.points if revision.reading.problem else ()
    return revision, [f"point {p.name}" for p in after if p.name in before and p.at != before[p.name]]


def _moved(text: str, id: str, value: str, first: Measure) -> Revision:
    """Each point of the moving place where the new length puts it."""
    tried, size = _value(text, value)
    if size is None:
        return tried
    target = first.there(size)
    waiting, revision = list(first.moving), Revision(text, first.reading)
    while waiting:
        refused, left = None, []
        for name in waiting:
            now = Measure(text, id, first)
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
    last = Measure(text, id, first)
    lost = [n for n in first.moving if last.coordinate(n) != target] + [n for n in first.staying if last.coordinate(n) != first.base]
    if lost:
        raise Refused("length_made", 422, name=lost[0], phrase=first.entry(lost[0]).phrase)
    return revision


def _stepped(text: str, id: str, value: str, first: Measure) -> Revision:
    """The step of a row, which all its points take: those before the length move too."""
    tried, size = _value(text, value)
    if size is None:
        return tried
    revision = first.put(first.moving[0], value, size)
    if revision.made and Measure(revision.text, id).size != size:
        raise Refused("length_made", 422, name=first.moving[-1], phrase=first.entry(first.moving[-1]).phrase)
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
