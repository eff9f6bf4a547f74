"""Marks that show a direction the way its author gave it: an angle from an axis, or a small slope triangle."""

from __future__ import annotations

import itertools
from functools import partial

from unpin.base.record import record
from unpin.draw import label as lettering
from unpin.draw.candidates import beside_line, in_angle, led
from unpin.draw.field import Field
from unpin.draw.geometry import Spot, apart, arc, between, box_of, grown, page_angle, plus, segment_meets_box, segment_to_segment, square, turned, unit
from unpin.draw.items import flat
from unpin.draw.label import Label
from unpin.draw.place import Wanted
from unpin.draw.scene import SMALL_SIZE, Mark, Path
from unpin.draw.symbols.symbol import Strip

BURIED, ABOVE, CLEAR = 20.0, 22.0, 11.0
"""So much in the way of the triangle below a surface hides it; how far above and below its ground line it stands then, pt."""
RADIUS, REFERENCE = 17.0, 25.0


@record
class DirectionMark:
    marks: tuple[Mark, ...]
    strips: tuple[Strip, ...]
    wanted: tuple[Wanted, ...]
    labels: dict[str, tuple]


def on_page(vector) -> Spot:
    x, y = flat(vector)
    return unit((x, -y))


def angle_mark(owner: str, apex: Spot, base: Spot, along: Spot, note: Label, radius: float = RADIUS) -> DirectionMark:
    """The angle at `apex` from the reference ray `base` to the ray `along`, both unit page vectors."""
    turn = (page_angle(along) - page_angle(base) + 180) % 360 - 180
    radius += 8 if abs(turn) < 25 else 0
    sweep = arc(apex, radius, page_angle(base), page_angle(base) + turn)
    reference = (apex, plus(apex, base, REFERENCE + radius - RADIUS))
    key = f"angle {owner}"
    size = (lettering.width(note, SMALL_SIZE), lettering.height(note, SMALL_SIZE))
    strips = ((*reference, 0.4), *((a, b, 0.4) for a, b in itertools.pairwise(sweep)))
    wanted = Wanted(
        key,
        in_angle(apex, turned(base, turn / 2), radius, abs(turn) / 2, size),
        strips[1:],
        partial(led, sweep[len(sweep) // 2], 1.0, size),
        jealous=False,
    )
    return DirectionMark(
        (Path(reference, "reference", owner), Path(sweep, "angle", owner)),
        strips,
        (wanted,),
        {key: (note, SMALL_SIZE, "angle", owner)},
    )


def slope_mark(
    owner: str,
    start: Spot,
    end: Spot,
    notes: tuple[Label, Label],
    obstacles: list[Strip],
    hypotenuse: float = 19.0,
    away: Spot | None = None,
) -> DirectionMark:
    """A triangle on the line from `start` to `end`, where it and its two numbers are freest, or on the side `away`."""
    return _freest(owner, start, end, notes, obstacles, hypotenuse, away)[1]


def _freest(owner, start: Spot, end: Spot, notes, obstacles: list[Strip], hypotenuse: float, away: Spot | None) -> tuple[float, DirectionMark]:
    """The mark of `slope_mark`, and what is in its way."""
    along = unit((end[0] - start[0], end[1] - start[1]))
    length = apart(start, end)
    around = grown(box_of((start, end)), 34.0)
    obstacles = [o for o in obstacles if segment_meets_box(o[0], o[1], grown(around, o[2])) or o[0] == o[1]]
    ground = Field(obstacles)
    hypotenuse = min(hypotenuse, 0.62 * length)
    options = []
    for share in (0.12, 0.02, 0.28, 0.4):
        a = plus(start, along, share * length)
        b = plus(a, along, hypotenuse)
        if share * length + hypotenuse > length - 5 and share != 0.12:
            continue
        corners = [(b[0], a[1]), (a[0], b[1])]
        if away is not None:
            corners = [max(corners, key=lambda c: (c[0] - a[0]) * away[0] + (c[1] - a[1]) * away[1])]
        for corner in corners:
            marked = _triangle(owner, a, b, corner, notes)
            blocked = sum(_blocked(w, ground) for w in marked.wanted)
            options.append((blocked + 0.2 * _crowd(a, b, corner, obstacles) + 3 * abs(share - 0.12), len(options), marked))
    crowd, _, found = min(options, key=lambda o: o[:2])
    return crowd, found


def _triangle(owner: str, a: Spot, b: Spot, corner: Spot, notes: tuple[Label, Label]) -> DirectionMark:
    level, upright = (a, b) if corner[1] == a[1] else (b, a)
    strips: tuple[Strip, ...] = ((level, corner, 0.4), (upright, corner, 0.4), (a, b, 0.4))
    below = (0.0, 1.0 if corner[1] > upright[1] else -1.0)
    beside = (1.0 if corner[0] > level[0] else -1.0, 0.0)
    wanted, labels = [], {}
    for n, (p, way, note) in enumerate(((level, below, notes[0]), (upright, beside, notes[1]))):
        key = f"slope{n} {owner}"
        size = (lettering.width(note, SMALL_SIZE), lettering.height(note, SMALL_SIZE))
        near = beside_line(p, corner, size, -0.8, shares=(0.5, 0.3, 0.7, 0.1, 0.9), way=way, both=False)
        wanted.append(Wanted(key, near, (strips[n],), partial(led, between(p, corner, 0.5), 1.0, size), jealous=False))
        labels[key] = (note, SMALL_SIZE, "slope", owner)
    return DirectionMark(
        (Path((level, corner, upright), "slope", owner), Path((a, b), "slope", owner)), strips, tuple(wanted), labels
    )


def _blocked(wanted: Wanted, ground: Field) -> float:
    """How far down the list the first free place of a number is; much for none."""
    for n, candidate in enumerate(itertools.islice(wanted.near, 12)):
        if not ground.meets(candidate.box):
            return 0.4 * n
    return 40.0


def _crowd(a: Spot, b: Spot, corner: Spot, obstacles: list[Strip]) -> float:
    """How close other things come to the two legs."""
    near = 0.0
    left, right, top, bottom = min(a[0], b[0]) - 6, max(a[0], b[0]) + 6, min(a[1], b[1]) - 6, max(a[1], b[1]) + 6
    for p, q, half in obstacles:
        if (
            max(p[0], q[0]) + half < left
            or min(p[0], q[0]) - half > right
            or max(p[1], q[1]) + half < top
            or min(p[1], q[1]) - half > bottom
        ):
            continue
        near += max(0.0, 6.0 - min(segment_to_segment(a, corner, p, q), segment_to_segment(b, corner, p, q)) + half)
    return near


def right_angle_mark(owner: str, corner: Spot, a: Spot, b: Spot) -> DirectionMark:
    """A small square between two directions at right angles."""
    size = 5.5
    p, q = plus(corner, a, size), plus(corner, b, size)
    r = plus(p, b, size)
    return DirectionMark((Path((p, r, q), "angle", owner),), ((p, r, 0.4), (q, r, 0.4)), (), {})


def force_mark(
    owner: str, tail: Spot, tip: Spot, direction, notes: tuple[Label, ...], obstacles: list[Strip], at_head: bool = False
) -> DirectionMark | None:
    """For a placed arrow whose direction has notes; `at_head`: its tip is at the point it acts at."""
    if len(notes) == 1:
        base, along = on_page(direction.base), on_page(direction.vector)
        if direction.points and at_head:
            # Measured from a line through the point: there the angle is seen, between the line back and the shaft.
            return angle_mark(owner, tip, (-base[0], -base[1]), (-along[0], -along[1]), notes[0])
        return angle_mark(owner, tail, base, along, notes[0])
    if len(notes) == 2:
        return slope_mark(owner, tail, tip, (notes[0], notes[1]), obstacles)
    return None


def surface_mark(
    owner: str, ground: Spot, up: Spot, half: float, direction, notes: tuple[Label, ...], obstacles: list[Strip]
) -> DirectionMark | None:
    """For a support on an inclined surface: `ground` is the middle of its ground line, `up` its normal on the page.

    An angle given for the normal is the angle of the surface from the axis square to the one it was measured from; the
    legs of the normal are those of the surface changed over.
    """
    right = square(up)
    if len(notes) == 1:
        base = square(on_page(direction.base))
        if abs(base[0] * right[0] + base[1] * right[1]) < 1e-9:
            return None
        options = []
        for sign in (1, -1):
            ray, reference = (sign * right[0], sign * right[1]), (sign * base[0], sign * base[1])
            apex = plus(ground, ray, half)
            end = plus(apex, reference, REFERENCE)
            crowd = sum(segment_to_segment(plus(apex, reference, 3), end, p, q) < h + 4 for p, q, h in obstacles)
            options.append((crowd + (0.5 if reference[0] < 0 else 0.0), apex, reference, ray))
        _, apex, reference, ray = min(options, key=lambda o: o[0])
        found = angle_mark(owner, apex, reference, ray, notes[0])
        beyond = (apex, plus(apex, ray, REFERENCE))
        return DirectionMark(
            (*found.marks, Path(beyond, "reference", owner)), (*found.strips, (*beyond, 0.4)), found.wanted, found.labels
        )
    if len(notes) == 2:
        legs, down = (notes[1], notes[0]), (-up[0], -up[1])
        low = plus(ground, up, -7.5)
        below = _freest(owner, plus(low, right, -16.0), plus(low, right, 16.0), legs, obstacles, 22.0, down)
        if below[0] < BURIED:
            return below[1]
        # Something else is there: on the surface itself, where it goes on to one side.
        options = [below]
        for shift in (30.0, -30.0, 42.0, -42.0, 56.0, -56.0):
            foot = plus(ground, right, shift)
            if not any(segment_to_segment(foot, foot, p, q) < h + 6 for p, q, h in obstacles if p != q):
                continue
            for way, off, worse in ((up, ABOVE, 0.0), (down, CLEAR, 3.0)):
                line = plus(foot, way, off)
                crowd, mark = _freest(owner, plus(line, right, -16.0), plus(line, right, 16.0), legs, obstacles, 22.0, way)
                options.append((crowd + worse, mark))
        return min(options, key=lambda o: o[0])[1]
    return None
