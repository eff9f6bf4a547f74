"""What is to be found, and the teacher's own sums."""

from __future__ import annotations

from unpin.base.units import LENGTH
from unpin.model.problem import Asked, Connection
from unpin.model.values import WantedSum
from unpin.read.context import Context, Item
from unpin.read.directions import direction
from unpin.read.phrases import AskedSaid, Word
from unpin.read.quantities import quantity
from unpin.read.report import Dropped
from unpin.read.sum_phrases import CUTS

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
    place = item.place()
    if not said.names:
        return Asked("everything", written=item.text, place=place)
    if len(said.names) == 1 and said.names[0].text in known.sought:
        if said.part or said.component in ("x", "y"):
            raise item.drop("read.ask_of_load", said.names[0], name=said.names[0].text)
        known.refer(item, said.names[0], "letters")
        return Asked("load", subject=said.names[0].text, written=item.text, place=place)
    link = _link(known, said.names)
    if link:
        _refer(known, item, said.names)
    if link in known.parts and not _may_be_two_force(known, link, supports):
        raise item.drop("read.ask_of_member", said.names[0], name=link, hint="hint.ask_of_member")
    if link and not said.part:
        if said.component in ("x", "y", "couple"):
            raise item.drop("read.link_component", said.names[0], name=link)
        return Asked("link", subject=link, component=said.component, written=item.text, place=place)
    if len(said.names) == 2:
        for word in said.names:
            known.point(item, word)
        raise item.drop("read.no_link", said.names[0], first=said.names[0].text, second=said.names[1].text)
    (word,) = said.names
    if word.text not in known.points and word.text in known.parts:
        if not said.part and not said.component and _may_be_two_force(known, word.text, supports):
            known.refer_part(item, word)
            return Asked("link", subject=word.text, written=item.text, place=place)
        raise item.drop("read.ask_of_member", word, name=word.text, hint="hint.ask_of_member")
    if word.text not in known.points:
        if word.text.lower() in _ALL and word.text not in known.broken:
            raise item.drop("read.unknown_asked", word, name=word.text, nearest=_ALL[word.text.lower()], hint="hint.ask_all")
        head, _, axis = word.text.rpartition("_")
        if head in known.points and axis in ("x", "y"):
            raise item.drop("read.unknown_asked", word, name=word.text, nearest=f"{head} {axis}", hint="hint.ask_all")
        raise known.unknown(item, word, "read.unknown_asked", _names(known), "points")
    point = known.point(item, word).name
    here = [p.name for p in known.members_at(point)]
    touching = [c for c in known.joined if c.kind not in ("pin", "fixed") and c.points == (point,)]
    here += [p for c in touching for p in c.parts if p not in here]
    links = [c.name for c in known.links.values() if point in c.points] + known.cord_ends.get(point, [])
    common = {"point": point, "component": said.component, "written": item.text, "place": place}
    if said.part is not None:
        return _on_part(known, item, said.part, point, here, links, supports, common)
    ground = [c.name for c in known.held if c.kind == "link" and c.points[0] == point]
    if ground:
        if said.component in ("x", "y", "couple"):
            raise item.drop("read.link_component", word, name=ground[0])
        return Asked("link", subject=ground[0], component=said.component, written=item.text, place=place)
    if point in supports:
        if said.component == "couple" and not _carries_couple(supports[point]):
            raise item.drop("read.no_couple", word, point=point)
        return Asked("reaction", subject=point, **common)
    if "supports" in known.lost:
        raise Dropped
    if said.lead == "reaction":
        raise item.drop("read.no_support", word, point=point)
    if (
        len(here) == 2
        and not links
        and (known.pinned.get(point) or touching)
        and not any(point == x["point"] for c, x in known.assumed if c == "load_on_pin")
    ):
        return Asked("pin", subject=point, part=touching[0].parts[0] if touching else here[0], **common)
    if len(here) > 1:
        raise item.drop("read.ask_which_part", word, point=point, names=tuple(here), hint="hint.ask_which_part")
    if len(links) == 1:
        return Asked("link", subject=links[0], written=item.text, place=place)
    if links and not here:
        raise item.drop("read.pin_of_links", word, point=point, link=_said(known, links[0]), hint="hint.ask_link")
    raise _nothing(known, item, word, point)


def _on_part(known: Context, item: Item, word: Word, point: str, here: list[str], links: list[str], supports, common) -> Asked:
    if word.text in known.links and point in known.links[word.text].points or word.text in known.cord_ends.get(point, ()):
        _refer(known, item, (word,))
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


def _refer(known: Context, item: Item, names: tuple[Word, ...]) -> None:
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


def wanted_sum(known: Context, item: Item) -> WantedSum:
    """A sum in the teacher's words: the bodies by name, and moments about a point or forces along a direction."""
    said = item.phrase("sum")
    parts = []
    for word in said.parts:
        name = _body(known, item, word)
        if name and name not in parts:
            parts.append(name)
    if "whole" in parts and len(parts) > 1:
        raise item.drop("read.whole_and", said.parts[1])
    if not parts:
        raise item.drop("read.sum_on_links", said.parts[0])
    place = item.place()
    if said.along is not None:
        way = direction(known, item, said.along)
        return WantedSum(tuple(parts), along=way, written=item.text, place=place)
    if isinstance(said.about, tuple):
        about = tuple(quantity(known, item, a, LENGTH).value for a in said.about)
        return WantedSum(tuple(parts), about=about, written=item.text, place=place)
    return WantedSum(tuple(parts), about=known.point(item, said.about).name, written=item.text, place=place)


def _body(known: Context, item: Item, word: Word) -> str:
    """The name of a body; "" for a link, whose force is the same wherever it is cut."""
    if word.text in known.parts:
        known.refer_part(item, word)
    if word.text == "whole" or word.text in known.parts:
        return word.text
    if word.text in known.links or word.text in known.cords:
        _refer(known, item, (word,))
        return ""
    if word.text.startswith("pin "):
        point = word.text[4:]
        named = Word(point, word.end - len(point), word.end)
        if point not in known.points and point in known.parts:
            known.refer_part(item, named)
            return point
        if point not in known.points:
            raise known.unknown(
                item, named, "read.unknown_point", known.points, "points"
            )
        known.refer(item, named, "points")
        return word.text
    if word.text.lower() in CUTS:
        raise item.drop("read.unknown_member", word, name=word.text, hint="hint.section")
    raise known.unknown(item, word, "read.unknown_member", [*known.parts, "whole"], "members")
