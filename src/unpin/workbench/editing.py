"""What is done on the page as changes of the text. Several acts are one change: all of them are made or none.

An act is a record with `do`: point (place one, or make one when it has no name), say (a new phrase in a section), rephrase (another
phrase where one stands; with `sound`, only where it makes no new fault), drop (a thing, and with it what cannot be without it), rename, set (title, text, units, figures, gravity),
through (a further point in a chain), turn (a load another way), carry (a load to another point), route (the sums of the file's own way).
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from itertools import count
from string import ascii_uppercase
from typing import Any

from unpin.model.problem import Load
from unpin.read.edits import Revision, add, change, lead_through, place, put, remove
from unpin.read.grammar import parse_phrase
from unpin.read.pieces import KEYWORDS
from unpin.read.reader import read_text
from unpin.read.schema import BY_NAME
from unpin.words.remarks import hint, sentence
from unpin.workbench.folder import Refused
from unpin.workbench.lengths import lengthened
from unpin.workbench.naming import names_in, renamed
from unpin.workbench.places import Places
from unpin.workbench.rows import freed, row_of
from unpin.workbench.turning import by_components, carried, is_exact, resized, turned


def edited(text: str, acts: Iterable[Mapping[str, Any]], language: str = "en") -> dict[str, Any]:
    """The new text, and the ids of what was made or changed. Refused, with the reason in words, when one act cannot be done."""
    made: list[str] = []
    for act in acts:
        do = _DOES.get(str(act.get("do")))
        if do is None:
            raise Refused("act", 400)
        revision, ids = do(text, act)
        if revision.refused:
            first = revision.refused[0]
            cure = hint(first, language)
            raise Refused("edit", 422, sentence=f"{sentence(first, language)}{f' ({cure})' if cure else ''}")
        text = revision.text
        made += ids
    return {"ok": True, "text": text, "made": made}


def _point(text: str, act) -> tuple[Revision, list[str]]:
    at = act.get("at")
    where = at if isinstance(at, str) else (str(at[0]), str(at[1]))
    name = act.get("name")
    known = {p.name for p in _points(text)}
    if name and name in known:
        return place(freed(text, str(name)), str(name), where, faulty=True), [f"point {name}"]
    name = str(name or free_point(text))
    return add(text, "points", where, name, faulty=True), [f"point {name}"]


def _points(text: str):
    problem = read_text(text).problem
    return problem.points if problem else ()


def free_point(text: str) -> str:
    """The next capital that stands for nothing yet."""
    taken = names_in(text)
    for round_ in count():
        for letter in ascii_uppercase:
            name = letter + (str(round_) if round_ else "")
            if name not in taken and letter not in "IO":
                return name
    raise AssertionError


def free_name(text: str, section: str, points: Iterable[str] = ()) -> str:
    """A name for a new entry of a section: made of its points where that is free, else its first word with a number."""
    taken = names_in(text)
    own = "".join(points)
    if section == "members" and own and own not in taken and own.lower() not in KEYWORDS:
        return own
    stem = "T" if section == "cords" else section.removesuffix("s")
    for k in count(1):
        name = stem + (str(k) if k > 1 else "")
        if name not in taken and name.lower() not in KEYWORDS:
            return name
    raise AssertionError


def _say(text: str, act) -> tuple[Revision, list[str]]:
    section = str(act["section"])
    revision, name = said(text, section, str(act["phrase"]), str(act.get("name") or ""))
    return revision, [_id_at(revision.text, section, name)] if revision.made else []


def said(text: str, section: str, phrase: str, name: str = "", faulty: bool = True) -> tuple[Revision, str]:
    """A phrase put in a section, and the name it has there: as a new entry, or instead of what that name said before."""
    name = name_wanted(text, section, phrase, name)
    points = section in BY_NAME and BY_NAME[section].shape == "points"
    pair = _pair(phrase) if points else None
    text = freed(text, name) if points else text
    if is_there(text, section, name):
        return change(text, section, name, tuple(pair) if pair else phrase, faulty=faulty), name
    return add(text, section, tuple(pair) if pair else phrase, name, faulty=faulty), name


def is_there(text: str, section: str, name: str) -> bool:
    """Whether a section has an entry of that name, or a row in which it stands."""
    return bool(name) and (any(e.key == name for e in Places(text, read_text(text)).entries(section)) or section == "points" and row_of(text, name) is not None)


def name_wanted(text: str, section: str, phrase: str, name: str | None = None) -> str:
    """A section that holds names wants one for a new entry too; one that is a list has none."""
    if name or section not in BY_NAME or BY_NAME[section].shape != "phrases or phrases by name":
        return name or ""
    reading = read_text(text)
    places = Places(text, reading)
    if places.page is None or places.page.section(section) < 0:
        return "" if BY_NAME[section].phrase == "link" else free_name(text, section, phrase.split())
    home = places.page.top.entries[places.page.section(section)].value
    if home.kind != "names":
        return ""
    return free_name(text, section, phrase.split())


def _id_at(text: str, section: str, name: str) -> str:
    """The id of the thing that an entry is, the last of its section where it has no name."""
    from unpin.workbench.looking import things_of

    mine = [t for t in things_of(text) if t["section"] == section and (not name or t["key"] == name)]
    return mine[-1]["id"] if mine else f"{section} {name}"


def _rephrase(text: str, act) -> tuple[Revision, list[str]]:
    start, end = (int(c) for c in act["span"])
    places = Places(text, read_text(text))
    spot = places.covering(start, end)
    if spot is None:
        raise Refused("place", 422)
    entry = places.told(spot)
    phrase, faulty = str(act["phrase"]), not act.get("sound")
    if BY_NAME.get(entry.section) and BY_NAME[entry.section].shape == "points" and (pair := _pair(phrase)):
        revision = change(text, entry.section, entry.key, pair, faulty=faulty)
    else:
        revision = change(text, entry.section, entry.key, phrase, faulty=faulty)
    return revision, [_id_at(revision.text, entry.section, entry.key)] if revision.made else []


def _pair(phrase: str) -> list[str] | None:
    """Two coordinates in brackets."""
    inner = phrase.strip()
    if inner.startswith("[") and inner.endswith("]") and inner.count(",") == 1:
        return [c.strip() for c in inner[1:-1].split(",")]
    return None


def _drop(text: str, act) -> tuple[Revision, list[str]]:
    section, key = _where(text, act)
    return remove(text, section, key, dependants=True, faulty=True), []


def _set(text: str, act) -> tuple[Revision, list[str]]:
    return put(text, str(act["section"]), str(act["value"]), faulty=True), []


def _through(text: str, act) -> tuple[Revision, list[str]]:
    section, key = _where(text, act)
    return lead_through(text, section, key, str(act["point"]), str(act.get("after", "")), faulty=True), [str(act["id"])]


def _route(text: str, act) -> tuple[Revision, list[str]]:
    """The own way of the file: just these sums in this order. What stands there already stays as it is written, with its remarks."""
    sums = [str(s) for s in act["sums"]]
    revision = Revision(text, read_text(text))
    there = Places(text, revision.reading).phrases("route")
    for k in range(max(len(sums), len(there))):
        if k < len(sums) and k < len(there) and sums[k] == there[k]:
            continue
        if k >= len(sums):
            revision = remove(text, "route", str(len(sums) + 1), faulty=True)
        elif k < len(there):
            revision = change(text, "route", str(k + 1), sums[k], faulty=True)
        else:
            revision = add(text, "route", sums[k], faulty=True)
        if not revision.made:
            break
        text = revision.text
    return revision, []


def _turn(text: str, act) -> tuple[Revision, list[str]]:
    """Only the direction of a force is another; it stays where it acts."""
    way = str(act["way"])

    def meant(old: Load, new: Load) -> bool:
        return new.point == old.point and (new.magnitude and new.magnitude.value) == (old.magnitude and old.magnitude.value)

    return _reworded(text, act, lambda phrase, load: resized(phrase, way, load) if by_components(load) else turned(phrase, way), meant)


def _carry(text: str, act) -> tuple[Revision, list[str]]:
    """A force at another point, in the direction it had."""
    to = str(act["to"])

    def meant(old: Load, new: Load) -> bool:
        return new.point == to and (new.direction and new.direction.vector) == (old.direction and old.direction.vector)

    return _reworded(text, act, lambda phrase, load: carried(phrase, str(act["from"]), to), meant)


def _reworded(text: str, act, phrases: Callable[[str, Load], Iterable[str]], meant: Callable[[Load, Load], bool]) -> tuple[Revision, list[str]]:
    """The phrase of a force put otherwise, by the first of some phrases with which it is what is meant."""
    from unpin.workbench.looking import things_of

    loads = [t for t in things_of(text) if t["what"] == "load"]
    k = next((k for k, t in enumerate(loads) if t["id"] == act.get("id")), None)
    if k is None:
        raise Refused("thing", 422)
    before = read_text(text).problem.loads[k]
    refused = None
    for phrase in phrases(loads[k]["phrase"], before) if before.kind == "force" else ():
        revision = change(text, loads[k]["section"], loads[k]["key"], phrase)
        if not revision.made:
            refused = revision
            continue
        after = read_text(revision.text).problem
        if after and len(after.loads) == len(loads) and after.loads[k].part == before.part and meant(before, after.loads[k]):
            return revision, [str(act["id"])]
    if refused:
        return refused, []
    raise Refused("components" if by_components(before) and not is_exact(before) else "turn", 422)


def _where(text: str, act) -> tuple[str, str]:
    """Section and key of the thing of an id, or of an entry that is no thing, as a question."""
    if "section" in act:
        return str(act["section"]), str(act["key"])
    from unpin.workbench.looking import things_of

    thing = next((t for t in things_of(text) if t["id"] == act.get("id")), None)
    if thing is None or not thing["section"]:
        raise Refused("thing", 422)
    return thing["section"], thing["key"]


_DOES = {"point": _point, "say": _say, "rephrase": _rephrase, "drop": _drop, "rename": renamed, "set": _set, "through": _through,
         "turn": _turn, "carry": _carry, "length": lengthened, "route": _route}


def reads(kind: str, phrase: str) -> bool:
    """Whether a phrase is one of its kind, whatever its names mean."""
    from unpin.read.grammar import Misread

    return bool(phrase.strip()) and not isinstance(parse_phrase(kind, phrase), Misread)
