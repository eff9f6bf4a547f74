"""Entries of a problem file added, changed and removed; points placed, members led through further points.

Every function takes the text of a file and gives a Revision. Sections and what they may hold come from `read.schema`.
A `key` is the name of an entry, or its number in a list, from 1.
"""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction
from typing import Any

from unpin.read.edits import entries as rules
from unpin.read.edits.edit import Edit
from unpin.read.edits.layout import Entry, Node, plain
from unpin.read.edits.places import Page, Spot, page
from unpin.read.edits.revision import Refused, Revision, finish, refusal, revising
from unpin.read.edits.spelling import Value
from unpin.read.references import Reference
from unpin.read.report import nearest
from unpin.read.schema import BY_NAME, SECTIONS, Section

Key = str | int
Coordinate = str | int | float | Fraction
Phrase = str | Sequence[Coordinate]
"""A phrase, or several side by side: two coordinates, the strokes of a member."""

_ORDER = {s.name: n for n, s in enumerate(SECTIONS)}
_ONE = ("text", "units", "amount", "whole")
"""Shapes of sections that hold one text."""


@revising
def add(text: str, section: str, phrase: Phrase, name: str = "", before: Key = "", faulty: bool = False) -> Revision:
    """A new entry, at the end of its section or before another; the section is made in its place where it is not there."""
    p = page(text)
    said = _schema(section)
    if said.shape in _ONE:
        raise refusal("edit.one_text", (section,), name=section)
    if name and said.shape == "phrases":
        raise refusal("edit.takes_no_name", (section,), name=section)
    if not name and said.shape in ("phrases by name", "points"):
        raise refusal("edit.wants_name", (section,), name=section)
    return finish(p, *_added(p, section, _value(phrase), name, before), faulty=faulty)


def _added(p: Page, section: str, phrase: Value, name: str, before: Key) -> tuple[list[Edit], Any]:
    meant = plain(p.top)
    inner = _frozen(phrase)
    s = p.section(section)
    if s < 0:
        return _with_section(p, section, [(name, inner)] if name else [inner], name, phrase)
    entry = p.top.entries[s]
    home = entry.value
    if home.kind == "text":
        if home.text.strip() and (name or not isinstance(phrase, str)):
            raise refusal("edit.takes_no_name", (section,), name=section)
        meant[s] = (section, [(name, inner)] if name else [*filter(None, [plain(home)]), inner])
        if name:
            return rules.become_names(p.text, p.top, entry, name, phrase), meant
        return rules.become_list(p.text, p.top, entry, phrase), meant
    if bool(name) != (home.kind == "names"):
        raise refusal("edit.wants_name" if home.kind == "names" else "edit.takes_no_name", (section,), name=section)
    at = find(p, section, before).entry if before != "" else len(home.entries)
    meant[s][1].insert(at, (name, inner) if name else inner)
    return rules.put_in(p.text, home, at, name, phrase), meant


def _value(phrase: Phrase) -> Value:
    return phrase if isinstance(phrase, str) else tuple(written(c) for c in phrase)


def _frozen(value: Value) -> Any:
    return value if isinstance(value, str) else list(value)


def _with_section(p: Page, section: str, holds: Any, name: str, phrase: Value, written: str = "") -> tuple[list[Edit], Any]:
    """A new section in the order of the schema: after the last of those that come before it."""
    meant, top = plain(p.top), p.top
    if top is None:
        top = Node("names", 0, 0, (1, 1))
        body = written or rules.new_section(p.text, top, name, phrase)
        lead = "" if not p.text or p.text.endswith("\n") else "\n"
        joint = "" if body.startswith("\n") else " "
        return [Edit(len(p.text), len(p.text), f"{lead}{section}:{joint}{body}\n")], [(section, holds)]
    ranks = [(_ORDER.get(e.key.text, -1), n) for n, e in enumerate(top.entries) if e.key]
    at = max(((rank, n + 1) for rank, n in ranks if 0 <= rank < _ORDER[section]), default=(0, 0))[1]
    meant.insert(at, (section, holds))
    return rules.put_in(p.text, top, at, section, None, written or rules.new_section(p.text, top, name, phrase)), meant


@revising
def change(text: str, section: str, key: Key, phrase: Phrase, faulty: bool = False) -> Revision:
    """Another phrase in the place of one, in the quotes it had."""
    p = page(text)
    return finish(p, *_changed(p, find(p, section, key), _value(phrase)), faulty=faulty)


def _changed(p: Page, spot: Spot, phrase: Value) -> tuple[list[Edit], Any]:
    home, entry = p.top, p.entry(spot)
    meant = plain(p.top)
    name, held = meant[spot.section]
    inner = _frozen(phrase)
    if spot.entry >= 0:
        home = p.top.entries[spot.section].value
        held[spot.entry] = (held[spot.entry][0], inner) if home.kind == "names" else inner
    else:
        meant[spot.section] = (name, inner)
    return rules.set_value(p.text, home, entry, phrase), meant


@revising
def put(text: str, section: str, value: str, faulty: bool = False) -> Revision:
    """Title, text, units, gravity or figures; without a value the section goes."""
    p = page(text)
    if _schema(section).shape not in _ONE:
        raise refusal("edit.entries_wanted", (section,), name=section)
    s = p.section(section)
    value = value.strip()
    if not value:
        return finish(p, *without(p, {Spot(s, -1)}), faulty=faulty) if s >= 0 else finish(p, [], plain(p.top))
    if s >= 0:
        return finish(p, *_changed(p, Spot(s, -1), value), faulty=faulty)
    written = rules.spelled(value, bool(p.top and p.top.flow))
    return finish(p, *_with_section(p, section, value, "", value, written), faulty=faulty)


@revising
def place(text: str, point: str, at: Phrase, faulty: bool = False) -> Revision:
    """A point somewhere else: by two coordinates (right, up), in the file's unit of length, or by a construction."""
    p = page(text)
    spot = find(p, "points", point)
    names = p.entry(spot).key.text.replace(",", " ").split()
    if len(names) > 1 and point in names:
        raise refusal("edit.in_row", ("points", point), name=point)
    return finish(p, *_changed(p, spot, _value(at)), faulty=faulty)


def written(number: Coordinate) -> str:
    """A number as a person writes it: decimals where they end, else a fraction.

    >>> written(0.5), written(Fraction(1, 3)), written(Fraction(5, 4)), written("2a")
    ('0.5', '1/3', '1.25', '2a')
    """
    if isinstance(number, str):
        return number
    if isinstance(number, float):
        exact = Decimal(repr(number))
        if not exact.is_finite():
            raise ValueError(number)
        number = Fraction(exact)
    value = Fraction(number)
    rest, tens = value.denominator, 0
    while rest > 1 and (rest % 2 == 0 or rest % 5 == 0) and tens < 30:
        tens += 1
        rest = (value * 10**tens).denominator
    if rest > 1:
        return f"{value.numerator}/{value.denominator}"
    digits = str(abs(value.numerator) * 10**tens // value.denominator).rjust(tens + 1, "0")
    whole, part = digits[: len(digits) - tens], digits[len(digits) - tens :]
    return ("-" if value < 0 else "") + whole + (f".{part}" if part else "")


@revising
def lead_through(text: str, section: str, key: Key, point: str, after: str = "", faulty: bool = False) -> Revision:
    """A further point in the chain of a member or of links, behind another (at the start where `after` is left out)."""
    p = page(text)
    spot = find(p, section, key)
    chain = _chain(p, spot)
    if not chain:
        raise refusal("edit.no_chain", (section, str(key)))
    stop = next((r for r in chain if r.name == after), None) if after else chain[0]
    if stop is None:
        raise refusal("edit.not_in_chain", (section, str(key)), name=after)
    span = p.span(stop)
    if span is None:
        raise rules.Unfit
    joint = "-" if "-" in stop.scalar.text else " "
    start, end = span[:2]
    edit = Edit(end, end, joint + point) if after else Edit(start, start, point + joint)
    revision = finish(p, [edit], None, faulty=faulty)
    wanted = [r.name for r in chain]
    wanted.insert(chain.index(stop) + bool(after), point)
    if not faulty and [r.name for r in _chain(page(revision.text), spot)] != wanted:
        raise rules.Unfit
    return revision


def _chain(p: Page, spot: Spot) -> list[Reference]:
    """The points that the phrase of an entry names, in the order in which they are written."""
    key = p.entry(spot).key
    names = key.mark if key else None
    mine = [r for r in p.reading.references if r.kind == "points" and not r.declares and p.spot_of(r.scalar) == spot]
    chain = [r for r in mine if (r.scalar.place.line, r.scalar.place.column) != names]
    return sorted(chain, key=lambda r: (r.scalar.place.line, r.scalar.place.column, r.start))


# Taking out.


@revising
def remove(text: str, section: str, key: Key, dependants: bool = False, faulty: bool = False) -> Revision:
    """An entry less. What cannot be without it stands in the way, or goes with it where `dependants` says so."""
    p = page(text)
    spot = find(p, section, key)
    more = [] if faulty and not dependants else needing(p, spot)
    told = tuple(p.told(s) for s in more)
    if more and not dependants:
        reason = refusal("edit.needed_by", (section, str(key)), "edit.cure.needed_by", users=tuple(f"{u.section} > {u.key}" for u in told[:6]))
        raise Refused(*reason.reasons, dependants=told)
    return finish(p, *without(p, {spot, *more}), faulty=faulty, dependants=told)


def dependants(text: str, section: str, key: Key) -> tuple:
    """What cannot be without an entry, in file order; see `places.Used`. Raises Refused where there is no such entry."""
    p = page(text)
    return tuple(p.told(s) for s in needing(p, find(p, section, key)))


def needing(p: Page, spot: Spot) -> list[Spot]:
    """Entries that use a name which goes with this one, and those that make no sense without it, in file order."""
    from unpin.read.edits.edit import apply
    from unpin.read.edits.places import fresh_errors

    gone, fresh = {spot}, {spot}
    while fresh:
        users = {u for s in fresh for u in p.users(s)} - gone
        if not users:
            try:
                edits, _ = without(p, gone)
                after = page(apply(p.text, edits))
            except rules.Unfit:
                break
            users = {s for d in fresh_errors(p.reading, after.reading) if (s := _before(p, after, gone, d))} - gone
        gone |= users
        fresh = users
    return sorted(gone - {spot}, key=lambda s: (s.section, s.entry))


def _before(p: Page, after: Page, gone: set[Spot], d: Any) -> Spot | None:
    """The entry of the old text that an error of the new one is about."""
    found = after.at(d.place) if d.place else None
    if found is None or after.top is None:
        return None
    name = after.top.entries[found.section].key.text
    s = p.section(name)
    if d.path.split(" > ")[0] != name or found.entry < 0 and p.top.entries[s].value.kind != "text":
        return None
    kept = [n for n in range(len(p.top.entries[s].value.entries)) if Spot(s, n) not in gone]
    return Spot(s, kept[found.entry] if found.entry >= 0 else -1)


def without(p: Page, gone: set[Spot]) -> tuple[list[Edit], Any]:
    """The edits that take entries out, and the skeleton that is left; a section that becomes empty goes."""
    top, meant = p.top, plain(p.top)
    whole: set[int] = set()
    edits: list[Edit] = []
    for s, section in enumerate(top.entries):
        mine = {g.entry for g in gone if g.section == s}
        count = len(section.value.entries)
        if mine and (-1 in mine or len(mine) == count):
            whole.add(s)
        elif mine:
            edits += rules.take_out(p.text, section.value, mine)
            meant[s] = (meant[s][0], [v for n, v in enumerate(meant[s][1]) if n not in mine])
    if len(whole) == len(top.entries):
        raise rules.Unfit
    if top.flow and whole:
        edits += rules.take_out(p.text, top, whole)
    else:
        edits += [e for s in sorted(whole) for e in rules.take_out_whole(p.text, top, s)]
    return edits, [m for s, m in enumerate(meant) if s not in whole]


# Finding.


def _schema(section: str) -> Section:
    if section not in BY_NAME:
        near = nearest(section, list(BY_NAME))
        raise refusal("read.unknown_section", name=section[:40], nearest=near, hint="hint.nearest" if near else "hint.sections")
    return BY_NAME[section]


def find(p: Page, section: str, key: Key) -> Spot:
    """An entry by its name, by a name that it gives, or by its number; Refused where there is none."""
    _schema(section)
    s = p.section(section)
    entries: list[Entry] = p.top.entries[s].value.entries if s >= 0 else []
    if s >= 0 and p.top.entries[s].value.kind == "text" and str(key) in ("", "1"):
        return Spot(s, -1)
    for n, entry in enumerate(entries):
        if entry.key is not None and entry.key.text == str(key):
            return Spot(s, n)
    if s >= 0 and p.top.entries[s].value.kind == "list" and str(key).isdecimal() and 0 < int(key) <= len(entries):
        return Spot(s, int(key) - 1)
    for r in p.reading.references:
        if r.declares and r.kind == section and r.name == str(key) and (spot := p.spot_of(r.scalar)) and spot.section == s:
            return spot
    raise refusal("edit.no_entry", (section,), name=str(key)[:40], section=section)
