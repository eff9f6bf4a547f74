"""One piece of a figure given its places on paper: bodies, supports, arrows, marks, dimensions, then the labels."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import partial

from unpin.draw import label as lettering
from unpin.draw.aligned import lay_along
from unpin.draw.angles import angle_mark, force_mark, right_angle_mark, surface_mark
from unpin.draw.arrows import GAP, Wish, stand_all
from unpin.draw.candidates import around, beside_arrow, beside_line, led, touching
from unpin.draw.dimensions import lay
from unpin.draw.facing import couple_facing, support_up
from unpin.draw.geometry import Box, Spot, centre_of, plus, union, unit
from unpin.draw.items import (AngleItem, AxisItem, BodyItem, CentreItem, CoupleItem, DimensionItem, ForceItem, JointItem, MotionItem, NameItem,
                              Piece, SpreadItem, SupportItem)
from unpin.draw.label import Label
from unpin.draw.place import Candidate, Wanted, place
from unpin.draw.scene import LABEL_SIZE, SMALL_SIZE, Arrow, Group, Mark, Path, Text, circle, mark_box
from unpin.draw.symbols import contact, fixed, force, guide, hinge, member, pin, roller
from unpin.draw.symbols.symbol import Strip, Symbol

SUPPORTS = {"pin": pin.pin, "roller": roller.roller, "fixed": fixed.fixed, "contact": contact.contact, "guide": guide.guide}
GROUND_LEVEL = {"roller": roller.LEVEL, "contact": contact.LEVEL, "guide": guide.CLEAR, "pin": pin.HEIGHT, "fixed": fixed.LEVEL}
GROUND_HALF = {"roller": roller.HALF + 5, "contact": contact.HALF, "guide": guide.HALF, "pin": pin.HALF + 4, "fixed": fixed.HALF}
SPREAD_HEIGHT, RINGED_GAP = 22.0, 7.4


@dataclass
class Paper:
    """The piece being laid out: marks by layer, the room taken, and the labels that still want a place."""

    scale: float
    back: list[Mark] = field(default_factory=list)
    middle: list[Mark] = field(default_factory=list)
    front: list[Mark] = field(default_factory=list)
    bodies: list[Strip] = field(default_factory=list)
    supports: set[Strip] = field(default_factory=set)
    room: list[Strip] = field(default_factory=list)
    ghosts: list[Strip] = field(default_factory=list)
    spots: dict[str, Spot] = field(default_factory=dict)
    wanted: list[Wanted] = field(default_factory=list)
    texts: dict[str, tuple[Label, float, str, str]] = field(default_factory=dict)
    rivals: dict[str, tuple[Strip, ...]] = field(default_factory=dict)
    groups: dict[str, Group] = field(default_factory=dict)
    later: list = field(default_factory=list)
    unplaced: int = 0

    def at(self, spot: Spot) -> Spot:
        return (spot[0] * self.scale, -spot[1] * self.scale)

    def want(self, key: str, label: Label, size: float, role: str, owner: str, near, strips, far=tuple, jealous=True) -> None:
        if label:
            self.texts[key] = (label, size, role, owner)
            self.wanted.append(Wanted(key, near, strips, far, jealous))

    def symbol(self, symbol: Symbol, layer: list[Mark], role: str, owner: str, name: str = "") -> None:
        layer.append(Group(symbol.marks, role, owner, name))
        self.room += symbol.room


def measure(label: Label, size: float) -> Spot:
    return (lettering.width(label, size), lettering.height(label, size))


def page_way(v: Spot) -> Spot:
    return (v[0], -v[1])


def lay_out(piece: Piece, scale: float) -> Paper:
    """Every mark of the piece; `unplaced` counts the labels for which no free place was found."""
    paper = Paper(scale)
    _bodies(piece, paper)
    _supports(piece, paper)
    _spreads(piece, paper)
    _forces(piece, paper)
    _couples(piece, paper)
    _small(piece, paper)
    for item in piece.of(AngleItem):
        _direction(angle_mark(item.owner, paper.at(item.at), unit(page_way(item.base)), unit(page_way(item.along)), item.label, 26.0), paper)
    _dimensions(piece, paper)
    for draw_mark in paper.later:
        _direction(draw_mark(paper.room), paper)
    _names(piece, paper)
    _letter(paper)
    return paper


def _dimensions(piece: Piece, paper: Paper) -> None:
    every = [(d, paper.at(d.start), paper.at(d.end)) for d in piece.of(DimensionItem)]
    along = [d for d in every if d[0].axis == "along"]
    if along:
        _take(lay_along(along, paper.room), paper)
    dims = [d for d in every if d[0].axis != "along"]
    if dims:
        drawn = union([*(mark_box(m) for m in (*paper.back, *paper.middle, *paper.groups.values(), *paper.front)),
                       *(w.near[0].box for w in paper.wanted if w.near)])
        crossing = [s for s in paper.room if s not in paper.supports]
        ends = [s for _, a, b in dims for s in (a, b)]
        laid = lay(dims, [*paper.spots.values(), *ends], paper.room, crossing, _roomy(drawn))
        _take(laid, paper)


def _take(laid, paper: Paper) -> None:
    paper.back[:0] = laid.marks
    paper.room += laid.strips
    paper.wanted += laid.wanted
    paper.texts |= laid.labels


def _roomy(box: Box) -> Box:
    """With space for the names of points below and beside the drawing, where they like to stand."""
    return (box[0] - 4, box[1] - 2, box[2] + 4, box[3] + 4)


def _bodies(piece: Piece, paper: Paper) -> None:
    for item in piece.of(BodyItem):
        symbol = member.bar(tuple(tuple(paper.at(s) for s in chain) for chain in item.chains), item.owner, item.look)
        paper.symbol(symbol, paper.middle, "body", item.owner)
        if item.look != "ghost":
            paper.bodies += symbol.room
    for item in piece.of(JointItem):
        spot = paper.at(item.at)
        paper.spots[item.owner] = spot
        if item.look == "hinge":
            symbol = hinge.hinge(spot, item.owner)
        elif item.look == "disc":
            symbol = Symbol((circle(spot, 4.2, "hinge", item.owner),), ((spot, spot, 4.6),), mark_box(circle(spot, 4, "hinge")), "pin")
        elif item.look == "weld":
            x, y = spot
            symbol = Symbol((Path(((x - 3, y - 3), (x + 3, y - 3), (x + 3, y + 3), (x - 3, y + 3)), "knot", item.owner, closed=True),),
                            ((spot, spot, 4.5),), (x - 5, y - 5, x + 5, y + 5), "weld")
        else:
            symbol = hinge.knot(spot, item.owner)
        paper.symbol(symbol, paper.front, "joint", item.owner)
        paper.rivals[f"name {item.owner}"] = symbol.room


def _supports(piece: Piece, paper: Paper) -> None:
    for item in piece.of(SupportItem):
        spot = paper.at(item.at)
        taken = [s for s in paper.room if max(abs(s[0][k] - spot[k]) for k in (0, 1)) > 0.5 or s[0] != s[1]]
        middle = centre_of(union(mark_box(m) for m in paper.middle)) if paper.middle else spot
        up = page_way(item.up) if item.up is not None else support_up(item.kind, spot, paper.bodies, taken, middle)
        options = {} if item.grounded or item.kind not in ("roller", "contact", "guide") else {"grounded": False}
        symbol = SUPPORTS[item.kind](spot, up, item.owner, **options)
        paper.symbol(symbol, paper.back, "support", item.owner)
        paper.supports.update(symbol.room)
        level = GROUND_LEVEL[item.kind]
        ground = (spot[0] - level * up[0], spot[1] - level * up[1])
        mark = surface_mark(item.owner, ground, up, GROUND_HALF[item.kind], item.direction, item.notes, paper.room) if item.notes else None
        _direction(mark, paper)


def _direction(mark, paper: Paper) -> tuple[Mark, ...]:
    if mark is None:
        return ()
    paper.back += mark.marks
    paper.room += mark.strips
    paper.wanted += mark.wanted
    paper.texts |= mark.labels
    return mark.marks


def _spreads(piece: Piece, paper: Paper) -> None:
    for item in piece.of(SpreadItem):
        along, marks = page_way(item.along), []
        for n, (start, end, first, second, one, two) in enumerate(item.stretches):
            a, b = paper.at(start), paper.at(end)
            lift = 4.4
            a, b = (a[0] - along[0] * lift, a[1] - along[1] * lift), (b[0] - along[0] * lift, b[1] - along[1] * lift)
            symbol = force.spread(a, b, along, (first * SPREAD_HEIGHT, second * SPREAD_HEIGHT), item.owner)
            if item.ghost:
                top = symbol.marks[-1].spots
                symbol = Symbol((Path((a, *top, b), "reference", item.owner),), ((top[0], top[1], 0.5), (a, top[0], 0.5), (b, top[1], 0.5)),
                                symbol.grab, symbol.spoken)
            marks += symbol.marks
            # The outline does not keep away the resultant that stands in it; labels keep off both.
            (paper.ghosts if item.ghost else paper.room).extend(symbol.room)
            tails = next(m.spots for m in symbol.marks[::-1] if isinstance(m, Path))
            tails = tails[1:3] if item.ghost else tails
            back = (-along[0], -along[1])
            for k, (text, shares) in enumerate(((one, (0.06, 0.15, 0.25) if two or first != second else (0.5, 0.4, 0.6, 0.25, 0.75)), (two, (0.94, 0.85, 0.75)))):
                if text:
                    near, far = _beside_spread(tails, back, shares, measure(text, LABEL_SIZE), item.ghost)
                    paper.want(f"{item.owner}.{n}{'ab'[k]}", text, LABEL_SIZE, "label", item.owner, near, ((tails[0], tails[1], 0.0),), far, False)
        paper.groups[item.owner] = Group(tuple(marks), "load", item.owner, item.name)


def _beside_spread(tails, back: Spot, shares, size: Spot, ghost: bool):
    """Over the line on the tails; for a mere outline also under it; else beyond its ends."""
    near = beside_line(tails[0], tails[1], size, 0.4, shares, way=back, both=False)
    if ghost:
        near += tuple(Candidate(c.box, c.cost + 3) for c in beside_line(tails[0], tails[1], size, -0.2, (0.1, 0.9, 0.2, 0.8, 0.3, 0.7), way=(-back[0], -back[1]), both=False))
        near += tuple(Candidate(touching(end, way, 3.0, size), 4.0) for end, other in (tails, tails[::-1])
                      for way in (unit((end[0] - other[0], end[1] - other[1])),))
    return near, partial(led, tails[1], 0.5, size)


def _forces(piece: Piece, paper: Paper) -> None:
    items: list[ForceItem] = piece.of(ForceItem)
    ringed = {c.at for c in piece.of(CentreItem)}
    wishes = [Wish(paper.at(i.at), page_way(i.along), i.prefers, RINGED_GAP if i.at in ringed else GAP, i.mark > 0) for i in items]
    stands = stand_all(wishes, paper.room, list(paper.spots.values()))
    symbols = [force.force(s.tail, s.tip, i.owner, i.mark) for i, s in zip(items, stands)]
    for symbol in symbols:
        paper.room += symbol.room
    paper.room += paper.ghosts
    for item, wish, stand, symbol in zip(items, wishes, stands, symbols):
        if item.square is not None:
            foot, back = unit(page_way(item.square)), unit((stand.outer[0] - wish.at[0], stand.outer[1] - wish.at[1]))
            _direction(right_angle_mark(item.owner, plus(wish.at, back, 3.8), back, foot), paper)
        elif item.notes:
            # Drawn once the dimensions stand, on the side that is free then.
            paper.later.append(partial(_marked, item, stand, symbol))
        paper.groups[item.owner] = Group(symbol.marks, item.role, item.owner, item.name)
        inner = stand.tip if stand.at_head else stand.tail
        key = f"force {item.owner}"
        size = measure(item.label, LABEL_SIZE)
        paper.rivals[key] = symbol.room[:1]
        paper.want(key, item.label, LABEL_SIZE, "label", item.owner, beside_arrow(stand.outer, inner, size), symbol.room[:1], partial(led, stand.outer, 2, size))


def _marked(item: ForceItem, stand, symbol: Symbol, room: list[Strip]):
    return force_mark(item.owner, stand.tail, stand.tip, item.direction, item.notes, [s for s in room if s not in symbol.room])


def _couples(piece: Piece, paper: Paper) -> None:
    for item in piece.of(CoupleItem):
        spot = paper.at(item.at)
        facing, sweep = couple_facing(spot, paper.room)
        radius = force.COUPLE_RADIUS if sweep > 80 else force.CROWDED_RADIUS
        symbol = force.couple(spot, item.turn, facing, item.owner, item.mark, sweep, radius)
        paper.room += symbol.room
        paper.groups[item.owner] = Group(symbol.marks, item.role, item.owner, item.name)
        key, size = f"force {item.owner}", measure(item.label, LABEL_SIZE)
        paper.rivals[key] = symbol.room
        paper.want(key, item.label, LABEL_SIZE, "label", item.owner, around(spot, radius, size), symbol.room,
                   partial(led, spot, radius, size))


def _small(piece: Piece, paper: Paper) -> None:
    for item in piece.of(CentreItem):
        spot = paper.at(item.at)
        paper.symbol(force.centre(spot, item.owner), paper.front, "centre", item.owner)
        key, size = f"centre {item.owner}", measure(item.label, LABEL_SIZE) if item.label else (0, 0)
        paper.want(key, item.label, LABEL_SIZE, "point", item.owner, around(spot, 6, size) if item.label else (), ((spot, spot, 6.0),))
    for item in piece.of(MotionItem):
        spot, way = paper.at(item.at), page_way(item.along)
        tip = (spot[0] + way[0], spot[1] + way[1])
        arrow = Arrow((spot, tip), "motion", item.owner, head=(5.5, 2.0))
        paper.front.append(arrow)
        paper.room += force.arrow_room(arrow)
    for item in piece.of(AxisItem):
        box = union(mark_box(m) for m in (*paper.back, *paper.middle, *paper.front, *paper.groups.values()))
        start = (box[2] + 14, box[1] + 10)
        way = page_way(item.along)
        arrow = Arrow((start, (start[0] + 20 * way[0], start[1] + 20 * way[1])), "axis", item.owner, head=(5.5, 2.0))
        paper.front.append(arrow)
        paper.room += force.arrow_room(arrow)
        size = measure(item.label, SMALL_SIZE)
        paper.want("axis", item.label, SMALL_SIZE, "label", item.owner, beside_arrow(arrow.spots[1], arrow.spots[0], size), force.arrow_room(arrow))


def _names(piece: Piece, paper: Paper) -> None:
    for item in piece.of(NameItem):
        spot, key = paper.at(item.at), f"name {item.owner}"
        size = measure(item.label, LABEL_SIZE if item.role != "part" else SMALL_SIZE)
        if item.along:
            chain = [paper.at(s) for s in item.along]
            runs = sorted(zip(chain, chain[1:]), key=lambda r: -round(abs(r[0][0] - r[1][0]) + abs(r[0][1] - r[1][1]), 3))
            near: tuple[Candidate, ...] = tuple(c for a, b in runs[:3] for c in beside_line(a, b, size, 4.2))
            strips = tuple((a, b, 3.8) for a, b in runs)
            paper.want(f"part {item.owner}", item.label, SMALL_SIZE, "part", item.owner, near, strips, partial(led, spot, 4, size), jealous=False)
        else:
            paper.want(key, item.label, LABEL_SIZE, item.role, item.owner, around(spot, 2.6, size), ((spot, spot, 3.0),), partial(led, spot, 2.6, size))


def _letter(paper: Paper) -> None:
    """Place the labels and put each with what it belongs to."""
    found = place(paper.wanted, paper.room, paper.rivals)
    for wanted in paper.wanted:
        label, size, role, owner = paper.texts[wanted.key]
        seat = found[wanted.key]
        if seat is None:
            paper.unplaced += 1
            seat = (wanted.near or wanted.far())[0]
        text = Text(centre_of(seat.box), label, size, role, owner, 90 if seat.turn else 0, seat.leader)
        group = paper.groups.get(owner)
        if group is not None and (wanted.key.startswith("force") or group.role == "load"):
            paper.groups[owner] = Group((*group.marks, text), group.role, group.owner, group.name)
        else:
            paper.front.append(text)


def marks_of(paper: Paper) -> tuple[Mark, ...]:
    return (*paper.back, *paper.middle, *paper.groups.values(), *paper.front)
