"""Where arrows stand: with the head or the tail at their point, near or pushed out, so that none covers anything.

Forces have one length, not a length in proportion: a legible arrow says where and which way; its label says how much.
"""

from __future__ import annotations

from unpin.base.record import record
from unpin.draw.field import about
from unpin.draw.geometry import Spot, angle_between, between, plus, segment_to_segment, spot_to_segment
from unpin.draw.symbols.symbol import Strip

LENGTH, SHORT, GAP, NEXT = 37.0, 29.0, 4.6, 6.0
"""Of a force arrow, of a short one, between a point and the arrow, between two arrows in one line; pt."""


ROWS = ((0, LENGTH), (0, SHORT), (1, LENGTH), (1, SHORT), (2, LENGTH))
CORD_STEP = 16.0
"""By how much more of a cord is drawn each time, to bring the arrow of its pull clear, pt."""


@record
class Wish:
    """One arrow to be placed: its point, the page direction it points, what is preferred to be at the point, how far from
    the point it ends, and whether its tail bears a mark that needs room."""

    at: Spot
    along: Spot
    prefers: str
    gap: float = GAP
    marked: bool = False


@record
class Stand:
    """A place for an arrow: `outer` is its end away from the point, `cost` what is against it by itself."""

    tail: Spot
    tip: Spot
    outer: Spot
    at_head: bool
    cost: float


_DISLIKE = {("head", False): 5.0, ("tail", True): 7.0, ("away", True): 14.0, ("either", False): 1.0}


def stand_all(wishes: list[Wish], obstacles: list[Strip], points: list[Spot]) -> list[Stand]:
    """One stand for each wish. Each chooses the cheapest in turn, knowing the choices of the others, until none moves."""
    options = [_stands(w, obstacles, points) for w in wishes]
    chosen = [o[0] for o in options]
    # Where two lie in one line the one that minds less moves: a load hangs, and the link above it still pulls.
    order = sorted(range(len(wishes)), key=lambda k: _DISLIKE.get((wishes[k].prefers, wishes[k].prefers != "head"), 0.0))
    for _ in range(5):
        moved = False
        for k in order:
            mine = options[k]
            others = [(c, wishes[j].at) for j, c in enumerate(chosen) if j != k]
            best = min(mine, key=lambda s: s.cost + sum(_conflict(s, wishes[k].at, c, at) for c, at in others))
            if best is not chosen[k]:
                chosen[k], moved = best, True
        if not moved:
            break
    return chosen


def _stands(wish: Wish, obstacles: list[Strip], points: list[Spot]) -> list[Stand]:
    out = []
    # Only an arrow at its point and the pull of a cord are tried on what lies about; what is farther than they reach is in nobody's way.
    farthest = LENGTH + (9 * CORD_STEP if wish.prefers == "pull" else 0.0)
    obstacles = about(wish.at, wish.gap + farthest + 9.0, obstacles)
    for at_head in (True, False) if wish.prefers != "pull" else (False,):
        ray = (-wish.along[0], -wish.along[1]) if at_head else wish.along
        near: dict[float, float] = {}  # pushed out it is no better: only another arrow in the same line is a reason
        pull = wish.prefers == "pull"
        step = CORD_STEP if pull else LENGTH + NEXT
        rows = ((row, LENGTH) for row in range(10)) if pull else ROWS
        for row, length in rows:
            start = plus(wish.at, ray, wish.gap + (2.2 if wish.marked and not at_head else 0.0) + row * step)
            end = plus(start, ray, length)
            cost = _DISLIKE.get((wish.prefers, at_head), 0.0) + (2.5 if length < LENGTH else 0.0)
            if pull:  # more of the cord is drawn, which may bring the arrow clear of a body beside it
                cost += 1.0 * row + _hits(wish.at, ray, start, end, obstacles, points)
            else:
                cost += 9.0 * row + (_hits(wish.at, ray, start, end, obstacles, points) if row == 0 else near[length])
                if row == 0:
                    near[length] = cost - _DISLIKE.get((wish.prefers, at_head), 0.0)
            tail, tip = (end, start) if at_head else (start, end)
            out.append(Stand(tail, tip, end, at_head, cost))
    return sorted(out, key=lambda s: s.cost)


def _hits(at: Spot, ray: Spot, start: Spot, end: Spot, obstacles: list[Strip], points: list[Spot]) -> float:
    """What the arrow would run over. Near its own point everything is close, so the first quarter is not looked at, only
    whether it runs along something that leaves the point in the same direction."""
    cost = 0.0
    free = between(start, end, 0.25)
    left, right, top, bottom = min(free[0], end[0]), max(free[0], end[0]), min(free[1], end[1]), max(free[1], end[1])
    for p, q, half in obstacles:
        reach = half + 5.0
        if not (
            p[0] > right + reach
            and q[0] > right + reach
            or p[0] < left - reach
            and q[0] < left - reach
            or p[1] > bottom + reach
            and q[1] > bottom + reach
            or p[1] < top - reach
            and q[1] < top - reach
        ):
            gap = segment_to_segment(free, end, p, q) - half
            cost += 12.0 if gap < 2.0 else 2.0 if gap < 5.0 else 0.0
        for here, there in ((p, q), (q, p)):
            if abs(here[0] - at[0]) + abs(here[1] - at[1]) < 0.5 and (here != there):
                angle = angle_between(ray, (there[0] - here[0], there[1] - here[1]))
                cost += 6.0 if angle < 14 else 0.0
    for s in points:
        if abs(s[0] - at[0]) + abs(s[1] - at[1]) > 1.0 and spot_to_segment(s, start, end) < 6.0:
            cost += 10.0
    return cost


def _conflict(a: Stand, at_a: Spot, b: Stand, at_b: Spot) -> float:
    if at_a == at_b:
        ray_a = (a.outer[0] - at_a[0], a.outer[1] - at_a[1])
        ray_b = (b.outer[0] - at_b[0], b.outer[1] - at_b[1])
        angle = angle_between(ray_a, ray_b)
        if angle < 12:
            return 30.0 if segment_to_segment(a.tail, a.tip, b.tail, b.tip) < NEXT - 1 else 0.0
        return 4.0 if angle < 40 else 0.0
    far = 2 * LENGTH + 18  # of twice the way between their middles
    if abs(a.tail[0] + a.tip[0] - b.tail[0] - b.tip[0]) > far or abs(a.tail[1] + a.tip[1] - b.tail[1] - b.tip[1]) > far:
        return 0.0
    distance = segment_to_segment(a.tail, a.tip, b.tail, b.tip)
    return 16.0 if distance < 4.0 else 3.0 if distance < 9.0 else 0.0
