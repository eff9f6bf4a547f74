"""What is to be found."""

from __future__ import annotations

from unpin.model.problem import Asked, Connection
from unpin.read.context import Context, Item
from unpin.read.phrases import AskedSaid, Word
from unpin.read.report import Dropped

_ALL = {
    **dict.fromkeys(("reactions", "supports"), "all reactions"),
    **dict.fromkeys(("links", "bars", "rods"), "all links"),
    **dict.fromkeys(("cords", "tensions"), "all cords"),
    **dict.fromkeys(("all", "forces"), "everything"),
}
"""Many things asked by one word, and how that is said."""


def asked(known: Context, item: Item, supports: dict[str, Connection]) -> list[Asked]:
    """What one phrase asks: one thing, or each of a kind in file order."""
    said = item.phrase("asked")
    if said.all == "links":
        return _all_links(known, item, supports)
    if said.all == "reactions":
        return _all_reactions(known, item)
    if said.all == "cords":
        return _all_cords(known, item)
    if said.ratio:
        both = tuple(_letter(known, item, one) or _asked(known, item, one, supports) for one in said.ratio)
        return [Asked("ratio", over=both, written=item.text, place=item.place())]
    return [_asked(known, item, said, supports)]


def _letter(known: Context, item: Item, said: AskedSaid) -> Asked | None:
    """A given letter, as one part of a ratio."""
    word = said.names[0]
    if len(said.names) > 1 or word.text not in known.letters or word.text in known.points or said.part or said.component:
        return None
    known.used_letters.add(word.text)
    known.refer(item, word, "letters")
    return Asked("letter", subject=word.text, written=word.text)


def _all_links(known: Context, item: Item, supports: dict[str, Connection]) -> list[Asked]:
    held = (*(c for c in known.joined if c.kind != "pin"), *(c for c in supports.values() if _carries_couple(c)))
    stiff = {p for c in held for p in c.parts}
    bars = [p for p in known.parts if p not in stiff and _may_be_two_force(known, p, supports, end_loads=False)]
    names = sorted([*known.links, *bars], key=lambda n: (known.places[n].line, known.places[n].column))
    if not names:
        if known.lost or known.broken:
            raise Dropped
        raise item.drop("read.none_of_these", what=("@want.link",))
    return [Asked("link", subject=n, written=n, place=item.place()) for n in names]


def _all_reactions(known: Context, item: Item) -> list[Asked]:
    if not known.held:
        if known.lost or known.broken:
            raise Dropped
        raise item.drop("read.none_of_these", what=("@want.support",))
    place = item.place()
    return [
        Asked("link", subject=c.name, written=c.points[0], place=place)
        if c.kind == "link"
        else Asked("reaction", subject=c.points[0], point=c.points[0], written=c.points[0], place=place)
        for c in known.held
    ]


def _all_cords(known: Context, item: Item) -> list[Asked]:
    if not known.cords:
        if known.lost or known.broken:
            raise Dropped
        raise item.drop("read.none_of_these", what=("@want.cord",))
    names = sorted(known.cords, key=lambda n: (known.places[n].line, known.places[n].column))
    return [Asked("link", subject=n, written=n, place=item.place()) for n in names]


def _asked(known: Context, item: Item, said: AskedSaid, supports: dict[str, Connection]) -> Asked:
    if not said.names:
        return Asked("everything", written=item.text, place=item.place())
    if len(said.names) == 1 and said.names[0].text in known.sought:
        return _load(known, item, said)
    link = _link(known, said.names)
    if link:
        refer_link(known, item, said.names)
    if link in known.parts and not _may_be_two_force(known, link, supports):
        raise item.drop("read.ask_of_member", said.names[0], name=link, hint="hint.ask_of_member")
    if link and not said.part:
        return _along(item, said, link)
    if len(said.names) == 2:
        for word in said.names:
            known.point(item, word)
        raise item.drop("read.no_link", said.names[0], first=said.names[0].text, second=said.names[1].text)
    (word,) = said.names
    if word.text in known.points:
        return _at_point(known, item, said, supports)
    if word.text in known.parts:
        return _member(known, item, said, supports)
    raise _unknown(known, item, word)


def _load(known: Context, item: Item, said: AskedSaid) -> Asked:
    (word,) = said.names
    if said.part or said.component in ("x", "y"):
        raise item.drop("read.ask_of_load", word, name=word.text)
    known.refer(item, word, "letters")
    return Asked("load", subject=word.text, written=item.text, place=item.place())


def _along(item: Item, said: AskedSaid, link: str) -> Asked:
    """The one force of a link, two-force member or cord, which has no other component."""
    if said.component in ("x", "y", "couple"):
        raise item.drop("read.link_component", said.names[0], name=link)
    return Asked("link", subject=link, component=said.component, written=item.text, place=item.place())


def _member(known: Context, item: Item, said: AskedSaid, supports: dict[str, Connection]) -> Asked:
    (word,) = said.names
    if said.part or said.component or not _may_be_two_force(known, word.text, supports):
        raise item.drop("read.ask_of_member", word, name=word.text, hint="hint.ask_of_member")
    known.refer_part(item, word)
    return Asked("link", subject=word.text, written=item.text, place=item.place())


def _unknown(known: Context, item: Item, word: Word) -> Dropped:
    """A name of nothing: perhaps of many things, or of a component as it is printed."""
    if word.text.lower() in _ALL and word.text not in known.broken:
        return item.drop("read.unknown_asked", word, name=word.text, nearest=_ALL[word.text.lower()], hint="hint.ask_all")
    head, _, axis = word.text.rpartition("_")
    if head in known.points and axis in ("x", "y"):
        return item.drop("read.unknown_asked", word, name=word.text, nearest=f"{head} {axis}", hint="hint.ask_all")
    return known.unknown(item, word, "read.unknown_asked", _names(known), "points")


def _at_point(known: Context, item: Item, said: AskedSaid, supports: dict[str, Connection]) -> Asked:
    (word,) = said.names
    point = known.point(item, word).name
    common = {"point": point, "component": said.component, "written": item.text, "place": item.place()}
    touching = [c for c in known.joined if c.kind not in ("pin", "fixed") and c.points == (point,)]
    here = list(dict.fromkeys([*(p.name for p in known.members_at(point)), *(p for c in touching for p in c.parts)]))
    links = [c.name for c in known.links.values() if point in c.points] + known.cord_ends.get(point, [])
    if said.part is not None:
        return _on_part(known, item, said.part, point, here, links, supports, common)
    ground = next((c.name for c in known.held if c.kind == "link" and c.points[0] == point), "")
    if ground:
        return _along(item, said, ground)
    if point in supports:
        if said.component == "couple" and not _carries_couple(supports[point]):
            raise item.drop("read.no_couple", word, point=point)
        return Asked("reaction", subject=point, **common)
    if "supports" in known.lost:
        raise Dropped
    if said.lead == "reaction":
        raise item.drop("read.no_support", word, point=point)
    if _joins_two(known, point, here, touching, links):
        return Asked("pin", subject=point, part=touching[0].parts[0] if touching else here[0], **common)
    return _only_link(known, item, word, point, here, links)


def _joins_two(known: Context, point: str, here: list[str], touching: list[Connection], links: list[str]) -> bool:
    """Whether two members push on each other at a point and nothing else does there, so that one force is meant."""
    loaded = any(point == x["point"] for c, x in known.assumed if c == "load_on_pin")
    return len(here) == 2 and not links and bool(known.pinned.get(point) or touching) and not loaded


def _only_link(known: Context, item: Item, word: Word, point: str, here: list[str], links: list[str]) -> Asked:
    """The force of the one link or cord that pulls on a single member at a point."""
    if len(here) > 1:
        raise item.drop("read.ask_which_part", word, point=point, names=tuple(here), hint="hint.ask_which_part")
    if len(links) == 1:
        return Asked("link", subject=links[0], written=item.text, place=item.place())
    if links and not here:
        raise item.drop("read.pin_of_links", word, point=point, link=_said(known, links[0]), hint="hint.ask_link")
    raise _nothing(known, item, word, point)


def _on_part(known: Context, item: Item, word: Word, point: str, here: list[str], links: list[str], supports, common) -> Asked:
    if word.text in known.links and point in known.links[word.text].points or word.text in known.cord_ends.get(point, ()):
        refer_link(known, item, (word,))
        return Asked("link", subject=word.text, component="", written=common["written"], place=common["place"])
    part = known.part(item, word).name
    if part not in here:
        raise item.drop("read.not_on_member", word, name=part, point=point)
    if len(here) == 1 and point in supports:
        return Asked("reaction", subject=point, **common)
    if len(here) == 1 and len(links) == 1:
        return Asked("link", subject=links[0], component="", written=common["written"], place=common["place"])
    if len(here) == 1 and known.lost & {"supports", "pins"}:
        raise Dropped
    if len(here) == 1:
        raise _nothing(known, item, word, point)
    return Asked("pin", subject=point, part=part, **common)


def _nothing(known: Context, item: Item, word: Word, point: str) -> Dropped:
    """Nothing acts at the point; where nothing holds the structure that is said once, and not of every point."""
    if known.held or known.cords:
        return item.drop("read.nothing_there", word, point=point)
    if any(d.code == "read.nothing_holds" for d in known.report.found):
        return Dropped()
    return item.drop("read.nothing_holds", word, hint="hint.supports")


def _said(known: Context, link: str) -> str:
    """A link as one asks for it."""
    return "-".join(known.links[link].points) if link in known.links else link


def refer_link(known: Context, item: Item, names: tuple[Word, ...]) -> None:
    """Note what names a link or cord: its own name, or its ends."""
    for word in names:
        own = "links" if word.text in known.links else "cords"
        known.refer(item, word, "points" if len(names) == 2 else own)


def _names(known: Context) -> list[str]:
    return [*known.points, *known.links, *known.parts, *known.cords, *known.sought]


def _may_be_two_force(known: Context, part: str, supports: dict[str, Connection], end_loads: bool = True) -> bool:
    """Whether a member is held at two points only and nothing else acts on it: then it has one force to ask for. With `end_loads` a load
    right at its end, where a link or cord ends too, spoils nothing: asked for the force in the member, it is on the pin."""
    held = [
        p
        for p in dict.fromkeys(known.parts[part].points)
        if p in known.pinned or p in supports or p in known.cord_ends or any(p in c.points for c in known.links.values())
    ]
    touched = any(part in c.parts for c in known.joined if c.kind != "pin")
    return len(held) == 2 and (part not in known.loaded or end_loads and part in known.end_loaded) and not touched


def _carries_couple(support: Connection) -> bool:
    from unpin.model.kinds import KINDS

    return "couple" in KINDS[support.kind].pushes


def _link(known: Context, names: tuple[Word, ...]) -> str:
    """The link or straight two-point member meant by a name or by two ends."""
    if len(names) == 1:
        text = names[0].text
        return text if (text in known.links or text in known.cords) and text not in known.points else ""
    ends = {names[0].text, names[1].text}
    for c in known.links.values():
        if set(c.points) == ends:
            return c.name
    for part in known.parts.values():
        if {part.points[0], part.points[-1]} == ends:
            return part.name
    return ""
