"""What acts on a piece, put on paper: spread loads, forces, couples, each with the labels it asks for."""

from __future__ import annotations

import itertools
import math
from functools import partial

from unpin.draw.angles import force_mark, right_angle_mark
from unpin.draw.arrows import GAP, Wish, stand_all
from unpin.draw.candidates import around, beside_arrow, beside_line, led, touching
from unpin.draw.facing import couple_facing
from unpin.draw.field import Candidate, Offer
from unpin.draw.geometry import Spot, between, plus, unit
from unpin.draw.items import CentreItem, CoupleItem, ForceItem, Piece, SpreadItem
from unpin.draw.level import standing
from unpin.draw.paper import Paper, measure, page_way
from unpin.draw.scene import LABEL_SIZE, Arrow, Group, Path
from unpin.draw.symbols import force
from unpin.draw.symbols.symbol import Strip, Symbol

SPREAD_HEIGHT, SPREAD_LIFT, RINGED_GAP = 22.0, 4.4, 7.4
"""Height of the greatest intensity, clearance of a spread load over its member, and of an arrow at a marked moment centre."""


NEXT_COUPLE = 8.0
"""How much larger a second couple about the same point is drawn, pt."""
EVERYWHERE = tuple(sorted((k / 20 for k in range(1, 20)), key=lambda share: (abs(share - 0.5), share)))
"""Shares along a uniform spread load where its label may stand, from the middle outwards."""


def spreads(piece: Piece, paper: Paper) -> None:
    items: list[SpreadItem] = piece.of(SpreadItem)
    for item, runs in zip(items, standing(items)):
        along, marks = page_way(item.along), []
        for n, ((start, end, first, second, one, two), run) in enumerate(zip(item.stretches, runs)):
            a, b = (plus(paper.at(spot), along, -SPREAD_LIFT) for spot in run)
            symbol = force.spread(a, b, along, (first * SPREAD_HEIGHT, second * SPREAD_HEIGHT), item.owner)
            apart = run != (start, end)
            if apart and not item.ghost:
                marks.append(Path((a, b), "spread-line", item.owner))
                paper.room.append((a, b, 0.5))
            if item.ghost:
                top = symbol.marks[-1].spots
                symbol = Symbol(
                    (Path((a, *top, b), "reference", item.owner),),
                    ((top[0], top[1], 0.5), (a, top[0], 0.5), (b, top[1], 0.5)),
                    symbol.grab,
                    symbol.spoken,
                )
            marks += symbol.marks
            lines = tuple(line for m in symbol.marks for line in _lines(m))
            paper.rivals[f"spread {item.owner}"] = (*paper.rivals.get(f"spread {item.owner}", ()), *lines)
            if apart:
                feet = _feet(item, (start, end), (a, b), paper)
                paper.feet += feet
                (paper.ghosts if item.ghost else paper.room).extend((*m.spots, 0.5) for m in feet)
            # The outline does not keep away the resultant that stands in it; labels keep off both.
            (paper.ghosts if item.ghost else paper.room).extend(symbol.room)
            tails = next(m.spots for m in symbol.marks[::-1] if isinstance(m, Path))
            tails = tails[1:3] if item.ghost else tails
            back = (-along[0], -along[1])
            for k, (text, shares) in enumerate(
                ((one, (0.06, 0.15, 0.25) if two or first != second else EVERYWHERE), (two, (0.94, 0.85, 0.75)))
            ):
                if text:
                    near, far = _beside_spread(tails, back, shares, measure(text, LABEL_SIZE), item.ghost)
                    paper.want(
                        f"{item.owner}.{n}{'ab'[k]}",
                        text,
                        LABEL_SIZE,
                        "label",
                        item.owner,
                        near,
                        ((tails[0], tails[1], 0.0),),
                        far,
                        f"spread {item.owner}",
                    )
        paper.groups[item.owner] = Group(tuple(marks), "load", item.owner, item.name)


def _feet(item: SpreadItem, own: tuple[Spot, Spot], base: tuple[Spot, Spot], paper: Paper) -> list[Path]:
    """Dashes from the ends of the line on which a load stands to where it begins and ends on the member; of a mere outline that
    line itself too."""
    marks = [Path(base, "reference", item.owner)] if item.ghost else []
    for end, spot in zip(base, own):
        place = plus(paper.at(spot), page_way(item.along), -SPREAD_LIFT)
        if math.dist(end, place) > 2 * SPREAD_LIFT:
            marks.append(Path((end, place), "reference", item.owner))
    return [m for m in marks if m not in paper.feet]


def _lines(mark: Path | Arrow) -> tuple[Strip, ...]:
    if isinstance(mark, Arrow):
        return force.outline(mark)
    return tuple((a, b, 0.0) for a, b in itertools.pairwise(mark.spots))


def _beside_spread(tails, back: Spot, shares, size: Spot, ghost: bool):
    """Over the line on the tails; for a mere outline also under it; else beyond its ends."""
    near = beside_line(tails[0], tails[1], size, 0.4, shares, way=back, both=False)
    if ghost:
        under = (-back[0], -back[1])
        beyond = [
            (end, (Candidate(touching((0.0, 0.0), unit((end[0] - other[0], end[1] - other[1])), 3.0, size), 4.0),))
            for end, other in (tails, tails[::-1])
        ]
        near += Offer(*beyond) + beside_line(*tails, size, -0.2, EVERYWHERE, way=under, both=False, more=3.0)
    return near, lambda: tuple(c for share in (0.3, 0.7, 0.15, 0.85, 0.5) for c in led(between(*tails, share), 0.5, size))


def forces(piece: Piece, paper: Paper) -> None:
    items: list[ForceItem] = piece.of(ForceItem)
    ringed = {c.at for c in piece.of(CentreItem)}
    wishes = [
        Wish(paper.at(i.at), page_way(i.along), i.prefers, _gap(i, i.at in ringed, paper), i.mark > 0) for i in items
    ]
    stands = stand_all(wishes, paper.room, list(paper.spots.values()))
    symbols = [force.force(s.tail, s.tip, i.owner, i.mark) for i, s in zip(items, stands)]
    for symbol in symbols:
        paper.room += symbol.room
    paper.room += paper.ghosts
    for item, wish, stand, symbol in zip(items, wishes, stands, symbols):
        if item.square is not None:
            foot, back = unit(page_way(item.square)), unit((stand.outer[0] - wish.at[0], stand.outer[1] - wish.at[1]))
            paper.direct(right_angle_mark(item.owner, plus(wish.at, back, 3.8), back, foot))
        elif item.notes:
            # Drawn once the dimensions stand, on the side that is free then.
            paper.later.append(partial(_marked, item, stand, symbol))
        if item.stub and not stand.at_head:
            start = plus(wish.at, wish.along, paper.blocks.get(item.at, 0.0))
            paper.middle.insert(0 if item.at in paper.blocks else len(paper.middle), Path((start, stand.tail), "cord", item.owner))
            paper.room.append((start, stand.tail, 0.9))
        paper.groups[item.owner] = Group(symbol.marks, item.role, item.owner, item.name)
        inner = stand.tip if stand.at_head else stand.tail
        key = f"force {item.owner}"
        size = measure(item.label, LABEL_SIZE)
        paper.rivals[key] = lines = force.outline(symbol.marks[0])
        paper.want(
            key,
            item.label,
            LABEL_SIZE,
            "label",
            item.owner,
            beside_arrow(stand.outer, inner, size),
            lines,
            partial(led, stand.outer, 2, size),
        )


def _gap(item: ForceItem, ringed: bool, paper: Paper) -> float:
    """How far from its point an arrow ends: past a block, past the ring of a moment centre, at the end of its bit of cord."""
    least = paper.blocks.get(item.at, 0.0) + GAP if item.at in paper.blocks else GAP
    return max(RINGED_GAP if ringed else least, least, item.stub)


def _marked(item: ForceItem, stand, symbol: Symbol, room: list[Strip]):
    return force_mark(item.owner, stand.tail, stand.tip, item.direction, item.notes, [s for s in room if s not in symbol.room], stand.at_head)


def couples(piece: Piece, paper: Paper) -> None:
    rings: dict[Spot, int] = {}
    for item in piece.of(CoupleItem):
        spot = paper.at(item.at)
        outer = rings[item.at] = rings.get(item.at, -1) + 1
        facing, sweep = couple_facing(spot, paper.room)
        radius = (force.COUPLE_RADIUS if sweep > 80 else force.CROWDED_RADIUS) + outer * NEXT_COUPLE
        symbol = force.couple(spot, item.turn, facing, item.owner, item.mark, sweep, radius)
        paper.room += symbol.room
        paper.groups[item.owner] = Group(symbol.marks, item.role, item.owner, item.name)
        key, size = f"force {item.owner}", measure(item.label, LABEL_SIZE)
        paper.rivals[key] = lines = force.outline(symbol.marks[0])
        paper.want(
            key,
            item.label,
            LABEL_SIZE,
            "label",
            item.owner,
            around(spot, radius, size),
            lines,
            partial(led, plus(spot, facing, radius), 1.0, size),
        )
