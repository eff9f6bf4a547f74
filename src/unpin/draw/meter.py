"""A gauge for drawings: does any label of a scene meet what it should not? It sees marks only, not how they were placed."""

from __future__ import annotations

import itertools

from unpin.base.record import record
from unpin.draw.geometry import Box, Spot, Tilt, arc, rects_meet, segment_meets_rect, segment_to_rect
from unpin.draw.label import SUB_SIZE
from unpin.draw.scene import Arrow, Group, Mark, Path, Scene, Text, heads_of, leaves, text_box, text_tilt
from unpin.draw.theme import LOOKS

LEAST_SIZE = 7.0
TOUCH = 0.15
"""Boxes that share less than this (pt) only touch."""


@record
class Fault:
    """`code`: label_meets_label, label_meets_line, label_meets_head, label_small, label_outside, label_astray."""

    code: str
    label: str
    other: str = ""

    def __str__(self) -> str:
        return f"{self.code}: {self.label!r} {self.other}".rstrip()


def meter(scene: Scene) -> list[Fault]:
    """Every fault, in drawing order. An empty list is a legible figure."""
    flat = list(leaves(scene.marks))
    texts = [m for m in flat if isinstance(m, Text)]
    faults: list[Fault] = []
    page = (scene.origin[0], scene.origin[1], scene.origin[0] + scene.width, scene.origin[1] + scene.height)
    for n, t in enumerate(texts):
        box, tilt = text_box(t), text_tilt(t)
        name = _words(t)
        if min(t.size * (SUB_SIZE if r.is_sub else 1) for r in t.label) < LEAST_SIZE:
            faults.append(Fault("label_small", name))
        if box[0] < page[0] or box[1] < page[1] or box[2] > page[2] or box[3] > page[3]:
            faults.append(Fault("label_outside", name))
        faults += [
            Fault("label_meets_label", name, _words(o))
            for o in texts[n + 1 :]
            if rects_meet(box, tilt, text_box(o), text_tilt(o), -TOUCH)
        ]
        for m in flat:
            hit = _meets(m, box, tilt)
            if hit and m is not t:
                faults.append(Fault(hit, name, f"{m.role} {m.owner}".strip()))
    faults += _astray(scene)
    return faults


def _words(text: Text) -> str:
    return "".join(run.text for run in text.label)


def _segments(mark: Path | Arrow) -> list[tuple[Spot, Spot]]:
    spots = list(mark.spots)
    if isinstance(mark, Path) and mark.closed:
        spots.append(spots[0])
    return list(itertools.pairwise(spots)) or [(spots[0], spots[0])]


def _meets(mark: Mark, box: Box, tilt: Tilt | None) -> str:
    if isinstance(mark, Text):
        led = mark.leader and segment_meets_rect(mark.leader[0], mark.leader[-1], box, tilt, -TOUCH)
        return "label_meets_line" if led else ""
    if not isinstance(mark, (Path, Arrow)):
        return ""
    half = LOOKS[mark.role].width / 2 - TOUCH
    if isinstance(mark, Path) and mark.role in ("disc", "rim"):
        # The light face of a disc is like paper: only its rim is in the way.
        spots = arc(mark.spots[0], mark.radius, 0, 360, 90)
        return "label_meets_line" if any(segment_meets_rect(p, q, box, tilt, half) for p, q in itertools.pairwise(spots)) else ""
    if isinstance(mark, Path) and mark.radius:
        return "label_meets_line" if segment_to_rect(mark.spots[0], mark.spots[0], box, tilt) < mark.radius + half else ""
    for p, q in _segments(mark):
        if segment_meets_rect(p, q, box, tilt, half):
            return "label_meets_line"
    if isinstance(mark, Path) and mark.closed and _inside(mark.spots, box):
        return "label_meets_line"
    if isinstance(mark, Arrow):
        for head in heads_of(mark):
            if any(segment_meets_rect(a, b, box, tilt, -TOUCH) for a, b in zip(head, head[1:] + head[:1])):
                return "label_meets_head"
    return ""


def _inside(spots: tuple[Spot, ...], box: Box) -> bool:
    """Is the middle of the box within the polygon?"""
    x, y = (box[0] + box[2]) / 2, (box[1] + box[3]) / 2
    odd = False
    for (ax, ay), (bx, by) in zip(spots, spots[1:] + spots[:1]):
        if (ay > y) != (by > y) and x < ax + (y - ay) * (bx - ax) / (by - ay):
            odd = not odd
    return odd


def _astray(scene: Scene) -> list[Fault]:
    """Labels of arrows that stand nearer to another arrow than to their own, and names of points nearer to another point."""
    things: dict[str, dict[str, list[Mark]]] = {"label": {}, "point": {}}
    labels: list[Text] = []

    def collect(marks: tuple[Mark, ...], owner: str = "", kind: str = "") -> None:
        for m in marks:
            if isinstance(m, Group):
                collect(m.marks, m.owner, {"action": "label", "load": "label", "joint": "point"}.get(m.role, ""))
            elif isinstance(m, Text) and m.role in things and not m.leader:
                labels.append(m)
            elif isinstance(m, Text) and kind and m.leader:
                things[kind].setdefault(owner, []).append(Path(m.leader, "leader"))
            elif kind and isinstance(m, (Arrow, Path)):
                things[kind].setdefault(owner, []).append(m)

    collect(scene.marks)
    faults = []
    for t in labels:
        mine = things[t.role]
        if t.owner in mine:
            box, tilt = text_box(t), text_tilt(t)
            own = min(_distance(m, box, tilt) for m in mine[t.owner])
            nearer = (o for o, ms in mine.items() if o != t.owner and min(_distance(m, box, tilt) for m in ms) < own - 0.05)
            faults += [Fault("label_astray", _words(t), other) for other in list(nearer)[:1]]
    return faults


def _distance(mark: Arrow | Path, box: Box, tilt: Tilt | None) -> float:
    if isinstance(mark, Path) and mark.radius:
        return max(0.0, segment_to_rect(mark.spots[0], mark.spots[0], box, tilt) - mark.radius)
    lines = _segments(mark)
    if isinstance(mark, Arrow):
        lines += [edge for a, b, c in heads_of(mark) for edge in ((a, b), (b, c), (c, a))]
    return min(segment_to_rect(p, q, box, tilt) for p, q in lines)
