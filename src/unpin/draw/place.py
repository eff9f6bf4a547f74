"""Placing labels: each at one of many places around its owner, so that none meets anything.

Obstacles are strips (segments with thickness) in a grid of cells. Every label brings candidates in order of liking; those
that meet an obstacle are dropped while they are made, so mostly only a few are looked at. Then the labels choose in turn,
those with the least choice first; where two want one place, the one that is worse off may send the other away
(a few rounds of this local search). What still has no place gets a leader line from further out. No chance is used.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from itertools import islice

from unpin.base.record import record
from unpin.draw.field import CLEAR, Candidate, Field
from unpin.draw.geometry import Box, Spot, Tilt, between, box_of, boxes_meet, grown, rects_meet, segment_meets_rect, segment_to_rect, segments_cross, spot_to_segment, union
from unpin.draw.symbols.symbol import Strip

LED_CLEAR = 3.4
"""Least clearance of a label from the leader line of another, pt."""
ENVIED = 30.0
MUDDLED = 56.0
"""Dislike of a leader line from which on a label that may be left out is."""
ABREAST = 6.0
"""What is farther apart than this, pt, cannot be in each other's way, whether label or leader line."""
ASIDE = 30.0
"""What is farther away than this, pt, is not taken for the owner of a label."""
KEPT = 5
"""Candidates kept for a label once they are free of obstacles."""


@record
class Wanted:
    """A label that wants a place. `owner` strips are what it must be nearest to; `rivals` count only those of other owners.
    `near`: candidates beside the owner; `far`: with leader lines, looked at only when nothing near is free.
    `jealous`: minds rivals; `rival`: the key of what is its own among them.
    `spare`: rather left out than put on something else."""

    key: str
    near: Iterable[Candidate]
    owner: tuple[Strip, ...]
    far: Callable[[], tuple[Candidate, ...]] = tuple
    jealous: bool = True
    rival: str = ""
    spare: bool = False


@dataclass
class _Seat:
    wanted: Wanted
    options: list[Candidate]
    taken: Candidate | None = None
    moves: int = 0
    beside: list[_Seat] = field(default_factory=list)

    def reach(self) -> Box | None:
        """The box around every place that this label may take."""
        return union(_reach(c) for c in self.options) if self.options else None


def place(wanted: list[Wanted], obstacles: Iterable[Strip], rivals: dict[str, tuple[Strip, ...]]) -> dict[str, Candidate | None]:
    """A candidate for each label by key, None where even far away nothing is free.

    `rivals`: what other owners look like, by key; a label should not be nearer to one of those than to its own.
    """
    ground = Field(obstacles)
    outlines = {key: _outline(strips) for key, strips in rivals.items() if strips}
    seats = [_Seat(w, _options(w, ground, outlines)) for w in wanted]
    _acquaint(seats)
    for seat in sorted(seats, key=lambda s: len(s.options)):
        _choose(seat)
    for _ in range(40):
        troubled = [s for s in seats if s.taken is None and s.options and s.moves < 6]
        if not troubled:
            break
        _send_away(troubled[0])
    led_far = False
    for seat in seats:
        if seat.taken is None or seat.taken.cost >= ENVIED:
            before, seat.taken = seat.taken, None
            near, beside = seat.options, seat.beside
            free = islice((c for c in ground.free(seat.wanted.far()) if _leader_free(c, seats)), 8 * KEPT)
            led = [(c.cost + 6.0 * _crossed(c.leader, ground), k, c) for k, c in enumerate(free)]
            seat.options = [c for cost, _, c in sorted(led, key=lambda o: o[:2]) if cost < MUDDLED or not seat.wanted.spare]
            seat.beside = [s for s in seats if s is not seat]  # a leader line may end anywhere
            _choose(seat)
            if seat.taken is None:
                seat.options, seat.taken, seat.beside = near, before, beside
            else:
                led_far = True
    if led_far:
        _acquaint(seats)
    _improve(seats)
    return {s.wanted.key: s.taken for s in seats}


def least_bad(wanted: Wanted, obstacles: Iterable[Strip], taken: Iterable[Candidate]) -> Candidate:
    """For a label without a free place: the candidate that meets the fewest things."""
    ground, seated = Field(obstacles), [(t, _reach(t)) for t in taken]

    def met(c: Candidate) -> float:
        mine = _reach(c)
        near = [t for t, its in seated if boxes_meet(mine, its)]
        labels = sum(rects_meet(c.box, c.tilt, t.box, t.tilt) + 0.5 * _led_through(c, t) + 0.5 * _led_through(t, c) for t in near)
        return 4 * labels + sum(segment_meets_rect(p, q, c.box, c.tilt, half) for p, q, half in set(ground.around(c.box)))

    return min((*wanted.near, *wanted.far()), key=lambda c: (met(c), c.cost))


Outline = tuple[Box, tuple[Strip, ...]]
"""What one owner looks like, with the box around it."""


def _options(wanted: Wanted, ground: Field, rivals: dict[str, Outline]) -> list[Candidate]:
    out: list[Candidate] = []
    mine = (wanted.key, wanted.rival)
    other = [o for key, o in rivals.items() if key not in mine and _alike(key, wanted.key)] if wanted.jealous else []
    good = 0
    for c in ground.free(wanted.near):
        if good >= KEPT or len(out) >= 4 * KEPT:
            break
        envy = _envy(c, wanted.owner, other) if other else 0.0
        good += envy < ENVIED
        out.append(c if not envy else c._replace(cost=c.cost + envy))
    return sorted(out, key=lambda c: c.cost)


def _alike(key: str, other: str) -> bool:
    """Names of points are mistaken for those of other points, those of forces for those of other forces."""
    return key.startswith("name ") == other.startswith("name ")


def _outline(strips: tuple[Strip, ...]) -> Outline:
    return union(grown(box_of(s[:2]), s[2]) for s in strips), strips


def _envy(c: Candidate, owner: tuple[Strip, ...], others: list[Outline]) -> float:
    """Large when something else is as near to the label as its owner."""
    box, tilt = c.box, c.tilt
    left, top, right, bottom = box[0] - ASIDE, box[1] - ASIDE, box[2] + ASIDE, box[3] + ASIDE
    others = [o for o in others if o[0][0] < right and o[0][2] > left and o[0][1] < bottom and o[0][3] > top]
    if not others:
        return 0.0
    own = _least(box, owner, tilt) if owner else 0.0
    reach = own + 2.5
    left, top, right, bottom = box[0] - reach, box[1] - reach, box[2] + reach, box[3] + reach
    worst = 0.0
    for (x0, y0, x1, y1), strips in others:
        if x0 < right and x1 > left and y0 < bottom and y1 > top:
            gap = _least(box, strips, tilt, reach)
            if gap <= own + 0.7:
                worst = max(worst, ENVIED + 3 * (own - gap))
            elif gap < reach:
                worst = max(worst, 4.0)
    return worst


def _least(box: Box, strips: tuple[Strip, ...], tilt: Tilt | None, least: float = math.inf) -> float:
    """The distance of the nearest strip, or `least` where none is nearer. What is farther along one axis already is not measured."""
    if tilt is not None:
        return min(least, min(distance(box, s, tilt) for s in strips))
    left, top, right, bottom = box
    for strip in strips:
        (px, py), (qx, qy), half = strip
        wide, high = max(left - max(px, qx), min(px, qx) - right), max(top - max(py, qy), min(py, qy) - bottom)
        if wide - half < least and high - half < least:
            least = min(least, distance(box, strip))
    return least


def distance(box: Box, strip: Strip, tilt: Tilt | None = None) -> float:
    p, q, half = strip
    return max(0.0, segment_to_rect(p, q, box, tilt) - half)


def _clash(a: Candidate, b: Candidate) -> bool:
    if rects_meet(a.box, a.tilt, b.box, b.tilt, CLEAR):
        return True
    return _led_through(a, b, LED_CLEAR) or _led_through(b, a, LED_CLEAR)


def _reach(c: Candidate) -> Box:
    """The box around a label and its leader line."""
    return grown(union((c.box, box_of(c.leader))) if c.leader else c.box, 0.1)


def _led_through(a: Candidate, b: Candidate, clear: float = 0.0) -> bool:
    """Does the leader line of one pass through the other?"""
    if not a.leader:
        return False
    (px, py), (qx, qy) = p, q = a.leader[0], a.leader[-1]
    left, top, right, bottom = b.box
    # Most lines are nowhere near: a tilted box that is grown reaches half as far again beyond the upright one.
    more = 1.5 * clear
    if max(px, qx) < left - more or min(px, qx) > right + more or max(py, qy) < top - more or min(py, qy) > bottom + more:
        return False
    return segment_meets_rect(p, q, b.box, b.tilt, clear)


def _acquaint(seats: list[_Seat]) -> None:
    """Tell each label which others can ever be in its way, in the order of all."""
    for seat in seats:
        seat.beside = []
    reached = [(seat, box) for seat in seats if (box := seat.reach()) is not None]
    for k, (one, (left, top, right, bottom)) in enumerate(reached):
        left, top, right, bottom = left - ABREAST, top - ABREAST, right + ABREAST, bottom + ABREAST
        for other, box in reached[k + 1 :]:
            if box[0] < right and box[2] > left and box[1] < bottom and box[3] > top:
                one.beside.append(other)
                other.beside.append(one)


def _choose(seat: _Seat) -> None:
    taken = [s.taken for s in seat.beside if s.taken is not None]
    seat.taken = next((c for c in seat.options if not any(_clash(c, t) for t in taken)), None)


def _sitters(seat: _Seat, c: Candidate) -> list[_Seat]:
    """Those whose label is in the way of a candidate."""
    return [s for s in seat.beside if s.taken is not None and _clash(c, s.taken)]


def _send_away(seat: _Seat) -> None:
    """Take the option that unseats the fewest, and let those choose again."""
    ranked = []
    for k, c in enumerate(seat.options):
        sitting = _sitters(seat, c)
        ranked.append((len(sitting), sum(s.moves for s in sitting), c.cost, k, c, sitting))
    ranked.sort(key=lambda r: r[:4])
    *_, pick, gone = ranked[min(seat.moves, len(ranked) - 1) if seat.moves else 0]
    for other in gone:
        other.taken = None
    seat.taken = pick
    seat.moves += 1
    for other in sorted(gone, key=lambda s: len(s.options)):
        _choose(other)


def _improve(seats: list[_Seat]) -> None:
    """Let each label that sits badly look again; it may take another's place if the two together are better off."""
    for _ in range(3):
        moved = False
        for seat in seats:
            if seat.taken is not None:
                moved |= _trade(seat)
        if not moved:
            return


def _trade(seat: _Seat) -> bool:
    before = seat.taken
    for option in seat.options:
        if option.cost >= before.cost - 0.3:
            return False
        guests = _sitters(seat, option)
        if len(guests) > 2:
            continue
        kept = [(s, s.taken) for s in guests]
        seat.taken = option
        for guest in guests:
            guest.taken = None
        for guest in guests:
            _choose(guest)
        after = option.cost + sum(s.taken.cost if s.taken else 1e6 for s in guests)
        if after < before.cost + sum(c.cost for _, c in kept) - 0.3:
            return True
        seat.taken = before
        for guest, old in kept:
            guest.taken = old
    return False


def _crossed(leader: tuple[Spot, ...], ground: Field) -> int:
    """How many lines a leader passes over on its way; one it runs along counts for several."""
    if not leader:
        return 0
    p, q = leader[0], leader[-1]
    middle, count = between(p, q, 0.5), 0
    for a, b, half in set(ground.around(box_of(leader))):
        if segments_cross(p, q, a, b):
            count += 1
        if half < 2 and a != b and spot_to_segment(middle, a, b) < 2.5:
            count += 6
    return count


def _leader_free(c: Candidate, seats: list[_Seat]) -> bool:
    """A leader line may cross no other label; bodies and lines it may cross where it must, at a cost made by the caller."""
    return not any(s.taken is not None and _led_through(c, s.taken, LED_CLEAR) for s in seats)
