"""From the text of a problem file to a problem and remarks, section by section in the order in which they depend."""

from __future__ import annotations

import re
from dataclasses import field, replace
from functools import lru_cache
from typing import TYPE_CHECKING

from unpin.base.diagnostic import Diagnostic, Place
from unpin.base.record import record
from unpin.base.units import DIMENSION_NAMES, FORCE, LENGTH
from unpin.exact.letters import NoRoom
from unpin.model.kinds import KINDS
from unpin.model.problem import GROUND, Asked, Connection, Load, Problem
from unpin.model.values import WantedSum
from unpin.read import settings, structure
from unpin.read.asked import asked
from unpin.read.checks import probable_slips
from unpin.read.context import Context, Item
from unpin.read.cords import tie
from unpin.read.given import borne_out, given
from unpin.read.loads import load
from unpin.read.references import Reference
from unpin.read.report import Report
from unpin.read.skeleton import Skeleton, attempt
from unpin.read.sums import wanted_sum
from unpin.read.tree import Items, Scalar, clean, tree_of

if TYPE_CHECKING:
    from pathlib import Path

LARGEST_FILE, MOST_LOADS = 256 * 1024, 400
LONGEST_KEPT = 20_000
"""Texts of so many signs are remembered: one edit asks several times what the same text says."""


@record
class Reading:
    """What a text says: the problem as far as it could be understood (None when nothing could), and every remark in file
    order. A problem with errors is good for a picture, not for a solution. `references`: where its names stand."""

    problem: Problem | None
    diagnostics: tuple[Diagnostic, ...]
    references: tuple[Reference, ...] = field(default=(), compare=False, repr=False)

    @property
    def sound(self) -> bool:
        return self.problem is not None and not any(d.is_error for d in self.diagnostics)


def read_file(path: str | Path) -> Reading:
    """Read a problem file; a file that cannot be opened, is too large or is not UTF-8 gives a remark."""
    name = str(path)
    try:
        with open(path, "rb") as stream:
            data = stream.read(LARGEST_FILE + 1)
    except OSError as fault:
        code = "read.folder" if isinstance(fault, IsADirectoryError) else "read.closed_file"
        code = "read.no_file" if isinstance(fault, FileNotFoundError) else code
        return Reading(None, (Diagnostic("error", code, arguments={"file": name}),))
    if b"\x00" in data:
        return Reading(None, (Diagnostic("error", "read.not_text_file", arguments={"file": name}, hint="hint.utf8"),))
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as fault:
        if fault.start < LARGEST_FILE - 3:
            report = Report(name)
            line = data.count(b"\n", 0, fault.start) + 1
            column = fault.start - (data.rfind(b"\n", 0, fault.start) + 1) + 1
            report.error("read.not_utf8", report.place(line, column), byte=f"{data[fault.start]:02X}", hint="hint.utf8")
            rest = read_text(data.decode("utf-8", "replace").replace("\ufffd", "?"), name)
            return Reading(rest.problem, (*report.found, *rest.diagnostics))
        text = data.decode("utf-8", "ignore")
    return read_text(text, name)


def read_text(text: str, file: str = "") -> Reading:
    """Read the text of a problem file. Never fails: what is wrong is in the diagnostics."""
    return _remembered(text, file) if len(text) <= LONGEST_KEPT else _read(text, file)


@lru_cache(maxsize=32)
def _remembered(text: str, file: str) -> Reading:
    return _read(text, file)


def _read(text: str, file: str) -> Reading:
    report = Report(file)
    if len(text.encode("utf-8", "replace")) > LARGEST_FILE:
        report.error("read.large_file", None, most=LARGEST_FILE // 1024)
        return Reading(None, report.in_order())
    tree, whole = tree_of(clean(text, report), report)
    if tree is None:
        if not report.found:
            report.error("read.empty_file", report.place(1, 1), hint="hint.sections")
        return Reading(None, report.in_order())
    end = report.place(text.rstrip().count("\n") + 1, 1)
    known = Context(report, angles=_angles(text), halved=frozenset(_HALVED.findall(text)))
    try:
        problem = _problem(Skeleton(report, tree, whole), known, end)
    except NoRoom:
        problem = None
        report.error("read.no_room", report.place(1, 1), hint="hint.no_room")
    return Reading(problem, report.in_order(), tuple(dict.fromkeys(known.references)))


_HALVED = re.compile(r"(?<!\w)([^\W\d]\w{0,39}) {0,9}/ {0,9}2(?![\d.])")


def _angles(text: str) -> int:
    """About how many angles and tangents a text speaks of: those with their unit or those to a side, and cords over discs."""

    def counted(*words: str) -> int:
        return sum(map(text.count, words))

    return max(counted("deg", "°"), counted(" above ", " below ", " of up", " of down")) + counted(" over ", " under ")


def _problem(page: Skeleton, known: Context, end: Place) -> Problem | None:
    """Section by section; None when no section could be understood."""
    page.sort()
    known.lost = page.lost
    settings.units(page, known)
    settings.gravity(page, known)
    settings.letters(page, known)
    structure.points(page, known)
    structure.members(page, known)
    structure.bodies(page, known)
    links = structure.links(page, known)
    known.broken |= page.report.refused
    pins = structure.pins(page, known)
    structure.attach(known, links)
    strung = structure.cords(page, known)
    supports = structure.supports(page, known)
    loads = _loads(page, known)
    found = given(page, known, [*pins, *known.links.values(), *supports.values()], tie(known, strung))
    connections, cords = found.connections, found.cords
    wanted = _asked(page, known, supports)
    loads = _on_pins(known, loads, {a.subject for a in wanted if a.kind == "link"} | {c.part for c in found.claims if not c.at})
    sums = _sums(page, known)
    _presence(page, known, end)
    if known.parts or known.links:
        probable_slips(known, connections, cords)
    _assumptions(page, known, connections, loads)
    problem = Problem(
        points=tuple(known.points.values()),
        parts=tuple(known.parts.values()),
        connections=tuple(connections),
        loads=tuple(loads),
        asked=tuple(wanted),
        letters=settings.typed_letters(known),
        title=page.text("title"),
        text=page.text("text"),
        gravity=known.gravity,
        units={DIMENSION_NAMES[d]: u.symbol for d, u in known.shown.items()},
        figures=settings.figures(page),
        wanted_route=tuple(sums),
        assumed=tuple(known.assumed),
        cords=tuple(cords),
        said=tuple(page.sections),
        at_pins=found.at_pins,
    )
    if not any(d.is_error for d in page.report.found):
        borne_out(problem, found.claims)
    return problem if page.sections else None


def _loads(page: Skeleton, known: Context) -> list[Load]:
    out: list[Load] = []
    for item in page.listed("loads"):
        out += attempt(load, known, item) or []
        if len(out) > MOST_LOADS:
            page.report.error("read.too_many", page.sections["loads"][0].place, ("loads",), most=MOST_LOADS)
            out = out[:MOST_LOADS]
            break
    known.loaded = {one.part for one in out if one.part}
    known.end_loaded = {part for part in known.loaded if all(_at_end(known, one) for one in out if one.part == part)}
    return out


def _at_end(known: Context, load: Load) -> bool:
    """Whether a force, or a body that hangs, acts where a link or cord ends at the member that carries it, which the phrase does not name."""
    own = load.written.startswith(("weight", "mass of")) or "on" in load.written.split()
    tied = load.point in known.cord_ends or any(load.point in c.points for c in known.links.values())
    return load.kind in ("force", "weight") and not own and tied


def _on_pins(known: Context, loads: list[Load], bars: set[str]) -> list[Load]:
    """Loads at the ends of members whose one force is asked for or given act on the pins there: the member is a two-force member then."""
    moved = [one for one in loads if one.part in bars & known.end_loaded]
    for one in moved:
        known.assume("load_on_pin", point=one.point)
    return [replace(one, part="") if one in moved else one for one in loads]


def _asked(page: Skeleton, known: Context, supports: dict[str, Connection]) -> list[Asked]:
    found = [_unknown_of(known, item, attempt(asked, known, item, supports) or []) for item in page.listed("find")]
    # Asked by name and by "all", a thing is asked once.
    key = lambda a: (a.kind, a.subject, a.point, a.part, a.component, a.over)  # noqa: E731
    out = list({key(a): a for one in reversed(found) for a in reversed(one or [])}.values())
    out.reverse()
    if not found and "find" not in known.lost and known.parts | known.links:
        out = [Asked("everything")]
    return out


def _unknown_of(known: Context, item: Item, things: list[Asked]) -> list[Asked]:
    """What is really to be found: of many things asked in one phrase those that are not given; one that is given is a slip."""
    open_still = [a for a in things if (a.subject, "") not in known.given and not _has_one_given(known, a)]
    if len(things) == 1 and not open_still:
        item.report.error("read.given_asked", item.place(), item.path, name=things[0].point or things[0].subject)
    return open_still


def _has_one_given(known: Context, a: Asked) -> bool:
    mine = [c for c in (*known.held, *known.joined, *known.links.values()) if (c.name, c.points[0]) in known.given]
    behind = [c for c in mine if (a.kind == "link" and c.name == a.subject) or (a.kind != "link" and c.kind != "link" and c.points[0] == a.point)]
    return any(len(KINDS[c.kind].pushes) == 1 for c in behind)


def _sums(page: Skeleton, known: Context) -> list[WantedSum]:
    return [s for s in (attempt(wanted_sum, known, item) for item in page.listed("route")) if s]


# The whole.


def _presence(page: Skeleton, known: Context, end: Place) -> None:
    lost = known.lost
    if not known.parts and not known.links:
        lost |= {"loads"}
    if "points" not in page.sections and "points" not in lost:
        page.report.error("read.no_points", end, hint="hint.sections")
    if not {"members", "links", "discs", "blocks"} & (page.sections.keys() | lost):
        page.report.error("read.no_members", end, hint="hint.sections")
    said = page.sections.get("loads", (None, None))[1]
    if "loads" not in lost and (
        said is None or said == Items([], said.place) or isinstance(said, Scalar) and not said.text.strip()
    ):
        page.report.warning("read.no_loads", end)


def _assumptions(page: Skeleton, known: Context, connections: list[Connection], loads: list[Load]) -> None:
    if known.bare and "units" not in page.sections:
        known.assume("units", length=known.shown[LENGTH].symbol, force=known.shown[FORCE].symbol)
    if any(c.kind == "pin" for c in connections):
        known.assume("pin_smooth")
    if any(part.kind != "block" for part in known.parts.values()):
        known.assume("members_rigid")
    heavy = {one.part for one in loads if one.part and one.written.startswith(("weight of", "mass of"))}
    light = tuple(name for name, part in known.parts.items() if name not in heavy and part.kind != "block")
    if light:
        known.assume("weights_neglected", **({"parts": light} if heavy else {}))
    if any(KINDS[c.kind].track for c in connections):
        known.assume("slides_smooth")
    if any(KINDS[c.kind].either_way and GROUND in c.parts for c in connections):
        known.assume("roller_both_ways")
