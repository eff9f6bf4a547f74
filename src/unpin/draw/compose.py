"""From a figure to a scene: the common scale, each piece laid out, and pieces moved apart until they are clear."""

from __future__ import annotations

from unpin.draw.geometry import Box, Spot, grown, union
from unpin.draw.items import Figure, Piece, crowded
from unpin.draw.layout import lay_out
from unpin.draw.paper import Paper
from unpin.draw.scene import Arrow, Group, Image, Mark, Path, Scene, Tag, Text, mark_box

WIDE, HIGH = 162.0, 150.0
"""Room for the structure itself at the common scale, pt; arrows and dimensions come on top."""
LEAST_GAP, WIDEST, HIGHEST = 22.0, 215.0, 205.0
MARGIN, BETWEEN = 6.0, 12.0
PAGE, TALL, WELL_APART = 400.0, 330.0, 30.0
"""The same where points are very many: the figure then takes the width of the page at once, or so much that neighbours stand well apart."""
LOW, LOWER = 290.0, 1.3
"""Pieces stand where they are in the structure up to this height, pt, or where rows would hardly be lower, by this share."""
GROWTH, GROWTH_OF_FINAL = (1.0, 1.2), (1.0, 1.25, 1.55, 1.9, 2.15, 2.4, 2.6)
"""Scales tried in turn, as shares of the common one, until every label has a place. The forces in a truss need more room."""


def scale_of(span: tuple[float, float, float]) -> float:
    """Points per metre, the same for every figure of a problem: as large as fits, larger where points lie close."""
    width, height, least = span
    if width <= 0 and height <= 0:
        return 1.0
    scale = min(WIDE / width if width > 0 else 1e9, HIGH / height if height > 0 else 1e9)
    room = min(WIDEST / width if width > 0 else 1e9, HIGHEST / height if height > 0 else 1e9)
    return max(scale, min(room, LEAST_GAP / least)) if least > 0 else scale


def compose(figure: Figure, scale: float = 0.0) -> Scene:
    """Marks at their places. The figure grows a little where a label would otherwise find no free place, unless a `scale` (pt per
    metre) is given: who draws on it wants it to stay where it is."""
    if scale:
        papers = [lay_out(piece, scale) for piece in figure.pieces]
    else:
        papers = [_crowded(piece, figure) if crowded(piece) else
                  _grown_until_clear(piece, scale_of(figure.span), figure.width, figure.kind == "final") for piece in figure.pieces]
    pieces = [p.marks for p in papers]
    boxes = [_box(marks) for marks in pieces]
    marks = [m for ms, by in zip(pieces, _spread_out(boxes, figure.width)) for m in moved(ms, by)]
    box = grown(boxes[0] if len(boxes) == 1 else _box(marks), MARGIN)
    used = papers[0].scale if len(papers) == 1 else 0.0
    return Scene((box[0], box[1]), box[2] - box[0], box[3] - box[1], tuple(marks), figure.title, figure.description, used)


def scale_of_crowd(span: tuple[float, float, float]) -> float:
    """Points per metre of a structure with very many points: as wide as the page, or so that neighbours stand well apart."""
    width, height, least = span
    room = min(PAGE / width if width > 0 else 1e9, TALL / height if height > 0 else 1e9)
    return max(scale_of(span), min(room, WELL_APART / least if least > 0 else 1e9))


def _crowded(piece: Piece, figure: Figure) -> Paper:
    return lay_out(piece, scale_of_crowd(figure.span))


def _grown_until_clear(piece, scale: float, width: float, final: bool) -> Paper:
    best: Paper | None = None
    for factor in GROWTH_OF_FINAL if final else GROWTH:
        paper = lay_out(piece, scale * factor)
        if best is not None and _wide(paper) > width:
            break
        if best is None or _trouble(paper, final) < _trouble(best, final):
            best = paper
        if not any(_trouble(paper, final)):
            break
    assert best is not None
    return best


def _trouble(paper: Paper, final: bool) -> tuple[int, int, int]:
    return paper.unplaced, paper.astray, paper.led if final else 0


def _wide(paper: Paper) -> float:
    box = _box(paper.marks)
    return box[2] - box[0] + 2 * MARGIN


def _box(marks) -> Box:
    return grown(union(mark_box(m) for m in marks), 1.0)


def _spread_out(boxes: list[Box], width: float) -> list[Spot]:
    """How far each piece is moved so that no two boxes meet: they push each other along the shorter way, from where they
    are in the structure; if that becomes too wide they are set in rows instead."""
    if len(boxes) == 1:
        return [(0.0, 0.0)]
    moves = [[0.0, 0.0] for _ in boxes]
    for _ in range(400):
        clear = True
        for i in range(len(boxes)):
            for j in range(i + 1, len(boxes)):
                a, b = _shifted(boxes[i], moves[i]), _shifted(boxes[j], moves[j])
                dx = min(a[2], b[2]) - max(a[0], b[0]) + BETWEEN
                dy = min(a[3], b[3]) - max(a[1], b[1]) + BETWEEN
                if dx > 0.01 and dy > 0.01:
                    clear = False
                    k, by = (0, dx) if dx <= 1.5 * dy else (1, dy)  # a page is read sideways first
                    sign = 1.0 if a[k] + a[k + 2] <= b[k] + b[k + 2] else -1.0
                    moves[i][k] -= sign * by / 2
                    moves[j][k] += sign * by / 2
        if clear:
            break
    rows = _in_rows(boxes, width)
    if clear and _across(boxes, moves) <= width and _down(boxes, moves) <= max(LOW, LOWER * _down(boxes, rows)):
        return [(m[0], m[1]) for m in moves]
    return rows


def _across(boxes: list[Box], moves) -> float:
    whole = union([_shifted(b, m) for b, m in zip(boxes, moves)])
    return whole[2] - whole[0]


def _down(boxes: list[Box], moves) -> float:
    whole = union([_shifted(b, m) for b, m in zip(boxes, moves)])
    return whole[3] - whole[1]


def _in_rows(boxes: list[Box], width: float) -> list[Spot]:
    order = sorted(range(len(boxes)), key=lambda n: (round((boxes[n][0] + boxes[n][2]) / 2), n))
    moves: list[Spot] = [(0.0, 0.0)] * len(boxes)
    x = y = tall = 0.0
    for n in order:
        w, h = boxes[n][2] - boxes[n][0], boxes[n][3] - boxes[n][1]
        if x > 0 and x + w > width:
            x, y, tall = 0.0, y + tall + BETWEEN, 0.0
        moves[n] = (x - boxes[n][0], y - boxes[n][1])
        x, tall = x + w + BETWEEN, max(tall, h)
    return moves


def _shifted(box: Box, by) -> Box:
    return (box[0] + by[0], box[1] + by[1], box[2] + by[0], box[3] + by[1])


def moved(marks, by: Spot) -> tuple[Mark, ...]:
    """The same marks elsewhere."""
    from dataclasses import replace

    if by == (0.0, 0.0):
        return tuple(marks)

    def there(spots):
        return tuple((x + by[0], y + by[1]) for x, y in spots)

    out: list[Mark] = []
    for m in marks:
        if isinstance(m, Group):
            out.append(replace(m, marks=moved(m.marks, by)))
        elif isinstance(m, (Path, Arrow)):
            out.append(replace(m, spots=there(m.spots)))
        elif isinstance(m, Text):
            out.append(replace(m, at=there([m.at])[0], leader=there(m.leader)))
        elif isinstance(m, (Image, Tag)):
            out.append(replace(m, box=_shifted(m.box, by)))
    return tuple(out)
