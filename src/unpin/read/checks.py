"""Probable slips: what is allowed but hardly meant. Warnings only; each needs the whole file."""

from __future__ import annotations

from unpin.model.problem import GROUND, Connection, Cord
from unpin.read.context import Context
from unpin.read.directions import on_run

FAR = 500
"""A coordinate so many times all the others is taken for a mix of units."""


def probable_slips(known: Context, connections: list[Connection], cords: list[Cord]) -> None:
    if not known.lost:
        _unused(known)
        _loose(known, connections, cords)
    _doubled(known)
    _same_spot(known)
    _scale(known)
    _passed_over(known)


def _unused(known: Context) -> None:
    report = known.report
    for name, point in known.points.items():
        if name not in known.used and name not in report.mentioned:
            report.warning("read.point_unused", point.place, ("points", name), name=name)
    for name, letter in known.letters.items():
        if name not in known.used_letters and name not in report.mentioned:
            report.warning("read.letter_unused", letter.place, ("letters", name), name=name)
    for name in known.sought:
        if name not in known.used_letters and name not in report.mentioned:
            report.error("read.sought_unused", known.places[name], ("letters", name), name=name, hint="hint.sought")


def _loose(known: Context, connections: list[Connection], cords: list[Cord]) -> None:
    report = known.report
    joined = {p for c in connections for p in c.parts} | {s.part for c in cords for s in c.stops}
    at_pins = {(c.points[0], p) for c in connections if c.kind == "pin" and GROUND not in c.parts for p in c.parts}
    for name, part in known.parts.items():
        on_pin = any((point, name) in at_pins for point in part.points)
        if name not in joined and not on_pin and not known.broken:
            section = {"disc": "discs", "block": "blocks", "box": "blocks"}.get(part.kind, "members")
            report.warning("read.member_loose", part.place, (section, name), name=name)
    strung = {s.part for c in cords for s in c.stops}
    touched = {p for c in connections if c.kind != "pin" for p in c.parts} | strung
    for name, part in known.parts.items():
        if part.kind == "disc" and name in joined and name not in touched and name not in known.loaded and not known.broken:
            report.warning("read.disc_idle", part.place, ("discs", name), name=name, hint="hint.disc_idle")
    supports = {c.points[0] for c in connections if GROUND in c.parts}
    for c in known.links.values():
        for end, host in zip(c.points, c.parts):
            if host:
                continue
            others = sum(end in other.points for other in known.links.values()) + len(known.cord_ends.get(end, ()))
            if not known.members_at(end) and end not in supports and others < 2 and not known.broken:
                report.warning(
                    "read.link_end_loose", c.place, ("links", c.name), name=c.name, point=end, hint="hint.link_to_ground"
                )


def _doubled(known: Context) -> None:
    """Two links between the same two points: easily typed with chains, and they share their force in no way that sums tell."""
    seen: dict[frozenset[str], Connection] = {}
    for c in known.links.values():
        other = seen.setdefault(frozenset(c.points), c)
        if other is not c:
            ends = {"first": c.points[0], "second": c.points[1]}
            known.report.warning("read.link_twice", c.place, ("links", c.name), name=other.name, **ends)


def _same_spot(known: Context) -> None:
    seen: dict[tuple, str] = {}
    for name, point in known.points.items():
        key = tuple(round(float(c), 9) for c in point.at)
        other = seen.setdefault(key, name)
        if other != name and all(a == b for a, b in zip(known.points[other].at, point.at)):
            related = known.points[other].place
            known.report.warning(
                "read.same_spot", point.place, ("points", name), first=other, second=name, related=(related,) if related else ()
            )


def _scale(known: Context) -> None:
    """One coordinate far beyond, or a distance far below, all the others: metres mixed with millimetres."""
    sizes = sorted(((max(abs(float(c)) for c in p.at), n) for n, p in known.points.items()), reverse=True)
    sizes = [s for s in sizes if s[0] > 0]
    if len(sizes) < 2:
        return
    for index in range(1, len(sizes)):
        big, small = sizes[index - 1][0], sizes[index][0]
        if big >= FAR * small:
            few, far = (sizes[:index], True) if index <= len(sizes) - index else (sizes[index:], False)
            for _, name in few:
                code = "read.far_away" if far else "read.very_near"
                known.report.warning(code, known.points[name].place, ("points", name), name=name, hint="hint.mixed_units")
            return


def _passed_over(known: Context) -> None:
    """A member lying on a point that other members name, without naming it."""
    rough = {n: (float(p.at[0]), float(p.at[1])) for n, p in known.points.items()}
    named = {n for part in known.parts.values() for n in part.points} | {n for c in known.links.values() for n in c.points}
    named = {n for n in named | set(known.cord_ends) if known.points[n].made != GROUND}
    touched = {(c.points[0], p) for c in known.joined if c.kind not in ("pin", "fixed") for p in c.parts}
    touched |= {(c.points[0], c.parts[0]) for c in known.standing.values()}
    # The edge of a block is no member, and what lies on it is no pin.
    boxes = {p.name for p in known.parts.values() if p.kind == "box"}
    where = known.at
    for part in known.parts.values():
        if known.report.full:
            return
        if part.name in boxes:
            continue
        mine = set(part.points)
        for a, b in dict.fromkeys(zip(part.points, part.points[1:])):
            (ax, ay), (bx, by) = rough[a], rough[b]
            slack = 1e-9 * (1 + abs(bx - ax) + abs(by - ay)) ** 2
            for name in sorted(named - mine):
                x, y = rough[name]
                if (name, part.name) in touched or name not in where:
                    continue
                if abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) > slack:
                    continue
                if on_run(where[a], where[b], where[name]) and where[name] not in (where[a], where[b]):
                    known.report.warning(
                        "read.passed_over",
                        part.place,
                        ("members", part.name),
                        name=part.name,
                        point=name,
                        hint="hint.passed_over",
                    )
                    mine.add(name)
