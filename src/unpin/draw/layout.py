"""One piece of a figure given its places on paper: bodies, supports, arrows, marks, dimensions, then the labels."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace
from functools import partial

from unpin.draw import acting
from unpin.draw.aligned import lay_along
from unpin.draw.angles import angle_mark, surface_mark
from unpin.draw.candidates import along_line, around, beside_arrow, led
from unpin.draw.dimensions import lay
from unpin.draw.facing import hanging, support_up
from unpin.draw.field import Candidate, Offer
from unpin.draw.geometry import Box, Spot, between, centre_of, plus, segment_meets_rect, union, unit
from unpin.draw.items import (
    AngleItem,
    AxisItem,
    BlockItem,
    BodyItem,
    CentreItem,
    CordItem,
    DimensionItem,
    DiscItem,
    JointItem,
    MotionItem,
    NameItem,
    Piece,
    RadiusItem,
    SupportItem,
    crowded,
)
from unpin.draw.levers import levers
from unpin.draw.paper import Paper, measure, page_way
from unpin.draw.place import ENVIED, least_bad, place
from unpin.draw.radii import radius_mark
from unpin.draw.scene import LABEL_SIZE, SMALL_SIZE, Arrow, Group, Path, Text, circle, leaves, mark_box, text_box, text_tilt
from unpin.draw.symbols import block, collar, contact, cord, disc, fixed, force, guide, hinge, knife_edge, member, pin, rocker, roller, slot, surface
from unpin.draw.symbols.symbol import Symbol

SUPPORTS = {"pin": pin.pin, "roller": roller.roller, "fixed": fixed.fixed, "contact": contact.contact, "guide": guide.guide,
            "rocker": rocker.rocker, "knife_edge": knife_edge.knife_edge, "surface": surface.surface, "slot": slot.slot,
            "collar": collar.collar, "sleeve": collar.sleeve, "anchor": cord.anchor, "floor": block.floor,
            "channel": block.channel, "rim": surface.rim}
SLIDING = {"hole": slot.hole, **{look: partial(SUPPORTS[look], grounded=False) for look in ("slot", "collar", "sleeve")}}
SLIDES = ("slot", "collar", "sleeve")
"""Drawn over the member they are in or on."""
PACKED = 90
"""With more labels than that no leader line is tried in a crowded piece."""
HIDDEN = 8.5
"""A disc up to this radius (pt) would not be seen behind the end of a member, so it is drawn over it."""
SMALL_DISC = 24.0
"""The name of the centre of a disc up to this radius (pt) may stand outside its rim, and the ground of its pin lies there."""
BEYOND = 4.0
"""How far beyond the rim, pt."""
SEEN = hinge.RADIUS + 1.8
"""A smaller disc would be covered by its own hinge, so it is drawn as large as this, pt."""
GROUND_LEVEL = {"roller": roller.LEVEL, "contact": contact.LEVEL, "guide": guide.CLEAR, "pin": pin.HEIGHT, "fixed": fixed.LEVEL,
                "rocker": rocker.LEVEL, "knife_edge": knife_edge.LEVEL, "surface": surface.LEVEL, "slot": slot.HOLE + 0.8,
                "collar": 0.0, "sleeve": 0.0, "anchor": cord.EYE, "floor": block.HALF + 1.0, "channel": block.HALF + 1.0, "rim": surface.RIM}
GROUND_HALF = {"roller": roller.HALF + 5, "contact": contact.HALF, "guide": guide.HALF, "pin": pin.HALF + 4, "fixed": fixed.HALF,
               "rocker": rocker.HALF + 4, "knife_edge": knife_edge.HALF + 5, "surface": surface.HALF, "slot": slot.REACH,
               "collar": collar.ROD, "sleeve": collar.ROD, "anchor": cord.ANCHOR, "floor": 2.6 * block.HALF,
               "channel": 2.6 * block.HALF, "rim": surface.HALF}


def lay_out(piece: Piece, scale: float) -> Paper:
    """Every mark of the piece; `unplaced` counts the labels for which no free place was found."""
    paper = Paper(scale)
    _bodies(piece, paper)
    _supports(piece, paper)
    acting.spreads(piece, paper)
    acting.forces(piece, paper)
    acting.couples(piece, paper)
    levers(piece, paper)
    _small(piece, paper)
    for item in piece.of(AngleItem):
        paper.direct(
            angle_mark(item.owner, paper.at(item.at), unit(page_way(item.base)), unit(page_way(item.along)), item.label, 26.0)
        )
    _dimensions(piece, paper)
    for item in piece.of(RadiusItem):
        paper.later.append(partial(radius_mark, item.owner, paper.at(item.at), item.radius * paper.scale, item.label))
    for draw_mark in paper.later:
        paper.direct(draw_mark(paper.room))
    _names(piece, paper)
    if crowded(piece):
        # What lies on something else is read by nobody, and where labels are very many their leaders would cross everything.
        packed = len(paper.wanted) > PACKED
        paper.wanted = [replace(w, far=tuple if packed else w.far, spare=True) for w in paper.wanted]
    _letter(paper, strict=crowded(piece))
    return paper


def _dimensions(piece: Piece, paper: Paper) -> None:
    every = [(d, paper.at(d.start), paper.at(d.end)) for d in piece.of(DimensionItem)]
    along = [d for d in every if d[0].axis == "along"]
    if along:
        paper.take(lay_along(along, paper.room))
    dims = [d for d in every if d[0].axis != "along"]
    if dims:
        drawn = union(
            [
                *(mark_box(m) for m in (*paper.back, *paper.middle, *paper.groups.values(), *paper.front)),
                *(next(iter(w.near)).box for w in paper.wanted if w.near),
            ]
        )
        crossing = [s for s in paper.room if s not in paper.supports]
        ends = [s for _, a, b in dims for s in (a, b)]
        laid = lay(dims, [*paper.spots.values(), *ends], paper.room, crossing, _roomy(drawn))
        paper.take(laid)


def _roomy(box: Box) -> Box:
    """With space for the names of points below and beside the drawing, where they like to stand."""
    return (box[0] - 4, box[1] - 2, box[2] + 4, box[3] + 4)


def _bodies(piece: Piece, paper: Paper) -> None:
    for item in piece.of(BodyItem):
        if item.look == "box":
            symbol = member.box(tuple(paper.at(s) for s in item.chains[0]), item.owner)
            paper.symbol(symbol, paper.back, "body", item.owner)
            paper.bodies += symbol.room
            continue
        symbol = member.bar(tuple(tuple(paper.at(s) for s in chain) for chain in item.chains), item.owner, item.look)
        paper.symbol(symbol, paper.middle, "body", item.owner)
        if item.look != "ghost":
            paper.bodies += symbol.room
            paper.bars[item.owner] = symbol.room
    for item in piece.of(DiscItem):
        spot, radii = paper.at(item.at), tuple(r * paper.scale for r in item.radii)
        radii = radii if max(radii) > SEEN else (SEEN,)
        layer = paper.back if max(radii) > HIDDEN else paper.middle
        paper.symbol(disc.disc(spot, radii, item.owner), layer, "body", item.owner)
        paper.reach[item.at] = paper.reach[item.owner] = max(radii)
    for item in piece.of(CordItem):
        strands = tuple((paper.at(a), paper.at(b)) for a, b in item.strands)
        symbol = cord.cord(strands, tuple(tuple(paper.at(s) for s in a) for a in item.arcs), item.owner)
        paper.symbol(symbol, paper.middle, "cord", item.owner)
        paper.bars[item.owner] = tuple((a, b, cord.HALF) for a, b in strands)
    for item in piece.of(BlockItem):
        symbol = block.block(paper.at(item.at), page_way(item.up), item.owner)
        paper.symbol(symbol, paper.middle, "body", item.owner)
        paper.blocks[item.at] = paper.reach[item.owner] = block.HALF
    for item in piece.of(JointItem):
        spot = paper.at(item.at)
        paper.spots[item.owner] = spot
        if item.look == "plain":
            continue
        if item.look == "hinge":
            symbol = hinge.hinge(spot, item.owner)
        elif item.look == "eye":
            symbol = cord.eye(spot, item.owner)
        elif item.look in SLIDING:
            reach = {"reach": tuple(r * paper.scale for r in item.reach)} if item.reach else {}
            symbol = SLIDING[item.look](spot, page_way(item.up), item.owner, **reach)
        elif item.look == "ring":
            symbol = cord.eye(spot, item.owner, cord.RING)
            paper.blocks[item.at] = cord.RING
        elif item.look == "disc":
            symbol = Symbol(
                (circle(spot, 4.2, "hinge", item.owner),), ((spot, spot, 4.6),), mark_box(circle(spot, 4, "hinge")), "pin"
            )
        elif item.look == "weld":
            x, y = spot
            symbol = Symbol(
                (Path(((x - 3, y - 3), (x + 3, y - 3), (x + 3, y + 3), (x - 3, y + 3)), "knot", item.owner, closed=True),),
                ((spot, spot, 4.5),),
                (x - 5, y - 5, x + 5, y + 5),
                "weld",
            )
        else:
            symbol = hinge.knot(spot, item.owner)
        paper.symbol(symbol, paper.front, "joint", item.owner)
        paper.rivals[f"name {item.owner}"] = symbol.room


def _supports(piece: Piece, paper: Paper) -> None:
    middle_of_all = centre_of(union(mark_box(m) for m in paper.middle)) if paper.middle else None
    for item in piece.of(SupportItem):
        spot = paper.at(item.at)
        taken = [s for s in paper.room if s[0] != s[1] or max(abs(s[0][k] - spot[k]) for k in (0, 1)) > 0.5]
        middle = middle_of_all or spot
        strands = _strands_at(piece, item)
        if strands:
            # What lies on the disc itself is in the way on every side.
            rim = paper.reach[item.at] + 1.0
            taken = [s for s in taken if max(math.dist(spot, end) for end in s[:2]) > rim]
        options: dict[str, object] = {} if item.grounded else {"grounded": False}
        wheel, reach = max((r for d in piece.of(DiscItem) if d.at == item.at for r in d.radii), default=0.0) * paper.scale, 8.0
        if item.kind == "pin" and HIDDEN < wheel < SMALL_DISC:
            options["height"] = wheel + BEYOND
            reach = wheel
        up = page_way(item.up) if item.up is not None else support_up(item.kind, spot, paper.bodies, taken, middle, strands, reach)
        if item.reach:
            options["reach"] = tuple(r * paper.scale for r in item.reach)
        symbol = SUPPORTS[item.kind](spot, up, item.owner, **options)
        layer = paper.front if item.kind in SLIDES and not (item.kind == "slot" and item.grounded) else paper.back
        paper.symbol(symbol, layer, "support", item.owner)
        paper.supports.update(symbol.room)
        level = GROUND_LEVEL[item.kind]
        ground = (spot[0] - level * up[0], spot[1] - level * up[1])
        mark = (
            surface_mark(item.owner, ground, up, GROUND_HALF[item.kind], item.direction, item.notes, paper.room)
            if item.notes
            else None
        )
        paper.direct(mark)


def _strands_at(piece: Piece, item: SupportItem) -> tuple[Spot, ...]:
    """Directions on the page in which cords leave the disc that has its centre at the support."""
    radii = [r for d in piece.of(DiscItem) if d.at == item.at for r in d.radii]
    arcs = [a for c in piece.of(CordItem) for a in c.arcs if any(abs(math.dist(a[0], item.at) - r) < 1e-6 * r for r in radii)]
    return tuple(page_way(way) for arc in arcs for way in hanging(arc))


def _small(piece: Piece, paper: Paper) -> None:
    for item in piece.of(CentreItem):
        spot = paper.at(item.at)
        paper.symbol(force.centre(spot, item.owner), paper.front, "centre", item.owner)
        key, size = f"centre {item.owner}", measure(item.label, LABEL_SIZE) if item.label else (0, 0)
        paper.want(
            key, item.label, LABEL_SIZE, "point", item.owner, around(spot, 6, size) if item.label else (), ((spot, spot, 6.0),)
        )
    for item in piece.of(MotionItem):
        spot = paper.at(item.at)
        tip = plus(spot, page_way(item.along), paper.scale)
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
        paper.want(
            "axis",
            item.label,
            SMALL_SIZE,
            "label",
            item.owner,
            beside_arrow(arrow.spots[1], arrow.spots[0], size),
            force.arrow_room(arrow),
        )


def _names(piece: Piece, paper: Paper) -> None:
    for item in piece.of(NameItem):
        spot, key = paper.at(item.at), f"name {item.owner}"
        small = item.role == "part" and not any(run.is_sub for run in item.label)  # a subscript of small letters is too small
        letters = item.size or (SMALL_SIZE if small else LABEL_SIZE)
        size = measure(item.label, letters)
        if item.along and len(item.along) > 1:
            chain = [paper.at(s) for s in item.along]
            runs = sorted(itertools.pairwise(chain), key=lambda r: -round(abs(r[0][0] - r[1][0]) + abs(r[0][1] - r[1][1]), 3))
            half = next((strip[2] for strip in paper.bars.get(item.of, ())), member.HALF["link"])
            near = Offer(*(part for a, b in runs[:3] for part in along_line(a, b, size, half).parts))
            strips = paper.bars.get(item.of, tuple((a, b, half) for a, b in runs))
            paper.want(
                f"part {item.owner}",
                item.label,
                letters,
                "part",
                item.owner,
                near,
                strips,
                partial(_led_along, runs, half, size),
                spare=bool(item.size),
            )
        else:
            near, radius = around(spot, 2.6, size), paper.reach.get(item.of or item.at, 2.6)
            if item.of or 2.6 < radius < SMALL_DISC or item.at in paper.blocks:
                radius = max(radius, paper.blocks.get(item.at, 0.0))
                near = around(spot, radius, size) if item.of or item.at in paper.blocks else near + around(spot, radius, size)
            paper.want(
                f"part {item.owner}" if item.of else key,
                item.label,
                letters,
                item.role,
                item.owner,
                near,
                ((spot, spot, 3.0 if not item.of else radius),),
                partial(led, spot, radius if item.of else 2.6, size),
            )


def _led_along(runs, half: float, size: Spot) -> tuple[Candidate, ...]:
    return tuple(c for a, b in runs[:1] for share in (0.5, 0.36, 0.64) for c in led(between(a, b, share), half, size))


def _letter(paper: Paper, strict: bool = False) -> None:
    """Place the labels and put each with what it belongs to; `strict`: none that could be taken for the name of something else."""
    found = place(paper.wanted, paper.room, paper.rivals)
    for wanted in paper.wanted:
        label, size, role, owner = paper.texts[wanted.key]
        seat = found[wanted.key]
        if strict and seat is not None and seat.cost >= ENVIED and not seat.leader:
            seat = None
        paper.astray += seat is not None and seat.cost >= ENVIED
        paper.led += seat is not None and role == "part" and bool(seat.leader)
        if seat is None:
            paper.unplaced += 1
            if wanted.spare:
                continue
            seat = found[wanted.key] = least_bad(wanted, paper.room, [c for c in found.values() if c])
        text = Text(centre_of(seat.box), label, size, role, owner, seat.turn, seat.leader)
        group = paper.groups.get(owner)
        if group is not None and (wanted.key.startswith("force") or group.role == "load"):
            paper.groups[owner] = Group((*group.marks, text), group.role, group.owner, group.name)
        else:
            paper.front.append(text)
    lettered = [t for t in leaves(paper.marks) if isinstance(t, Text)]
    paper.back += [f for f in paper.feet if not any(segment_meets_rect(*f.spots, text_box(t), text_tilt(t), 0.5) for t in lettered)]
