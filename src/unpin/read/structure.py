"""The sections that make the structure: points, members, links, pins and supports, entry by entry."""

from __future__ import annotations

from collections.abc import Iterator

from unpin.base.units import FORCE
from unpin.model.problem import GROUND, Connection, Point
from unpin.read import cords as cord_rules
from unpin.read import parts as rules
from unpin.read import points as point_rules
from unpin.read import rims, slides
from unpin.read.context import Context, Item
from unpin.read.phrases import BoxSaid, ContactSaid, LinkSaid, Word
from unpin.read.report import Dropped
from unpin.read.schema import MOST
from unpin.read.skeleton import Skeleton, attempt, row_names
from unpin.read.tree import Entries, Items, Node, Scalar


def _declare(page: Skeleton, known: Context, section: str, name: str, key: Scalar, said: tuple[Scalar, int, int, bool] = ()) -> bool:
    """Whether a name is free; a point, a member and a link may not share one. `said`: the text in which the name stands, the
    columns, and whether it is made of other names there; all of the key where it is left out."""
    if name in known.places:
        page.report.error(
            "read.name_taken",
            key.place,
            (section, name),
            name=name,
            line=known.places[name].line,
            related=(known.places[name],),
        )
        return False
    known.places[name] = key.place
    known.declare(section, name, *(said or (key, 0, len(name))))
    return True


def points(page: Skeleton, known: Context) -> None:
    entries = [(row_names(key), key, node) for _, key, node in page.named("points", rows=True)]
    known.later = {w.text for words, _, _ in entries for w in words}
    for words, key, node in entries:
        names = []
        for word in words:
            where = Scalar(word.text, key.part(word.start, word.end), whole=True)
            if _declare(page, known, "points", word.text, where, (key, word.start, word.end, False)):
                names.append(word.text)
        if len(known.points) + len(names) > MOST["points"]:
            page.report.error("read.too_many", page.sections["points"][0].place, ("points",), most=MOST["points"])
            known.broken |= known.later
            return
        found = attempt(_points, page, known, names, node) if len(names) == len(words) else None
        known.later -= set(names)
        for point in found or ():
            known.points[point.name] = point
        if not found:
            known.broken |= set(names)


def _points(page: Skeleton, known: Context, names: list[str], node: Node) -> list[Point]:
    name = " ".join(names)
    if isinstance(node, Items):
        if len(names) > 1:
            raise page.report.drop("read.no_row", node.place, ("points", name[:40]), hint="hint.row", names=tuple(names[:12]))
        if len(node.items) != 2:
            raise page.report.drop(
                "read.two_coordinates",
                node.place,
                ("points", name),
                count=len(node.items),
                hint="hint.plane" if len(node.items) > 2 else "",
            )
        items = [page.scalar("points", name, n) for n in node.items]
        if None in items:
            raise Dropped
        return [point_rules.typed(known, name, items)]
    item = page.scalar("points", name, node)
    if item is None:
        raise Dropped
    return point_rules.made(known, names, item)


def members(page: Skeleton, known: Context) -> None:
    for name, key, item in _strokes(page, known):
        said = attempt(item.phrase, "member")
        whole = () if name else (key, 0, len(key.text), True)
        if said is not None and name == "":
            name = "".join(w.text for w in said[0])
            item = page.item("members", name, item.scalar)
        if said is None or not _declare(page, known, "members", name, key, whole):
            known.broken.add(name)
            continue
        part = attempt(rules.member, known, name, item, said)
        if part:
            known.parts[name] = part
        else:
            known.broken.add(name)


def _strokes(page: Skeleton, known: Context) -> Iterator[tuple[str, Scalar, Item]]:
    """Members by name, or ("") to be named by their points."""
    if "members" in page.sections and not isinstance(page.sections["members"][1], Entries):
        for item in page.listed("members"):
            yield "", item.scalar, item
        return
    for name, key, node in page.named("members"):
        if isinstance(node, Items) and node.items and all(isinstance(n, Scalar) for n in node.items):
            joined = Scalar(", ".join(n.text for n in node.items), node.place, whole=True, pieces=tuple(node.items))
            yield name, key, page.item("members", name, joined)
            continue
        item = page.scalar("members", name, node)
        if item:
            yield name, key, item
        else:
            known.broken.add(name)


def _strung(known: Context, item: Item, name: str) -> LinkSaid:
    """The points of a link, or of a chain of links, in order."""
    said = item.phrase("link")
    if len(said.points) == 1:
        return LinkSaid(rules.split_ends(known, item, said.points[0]))
    if len(said.points) > 2 and name:
        raise item.drop("read.chain_name", said.points[2], name=name, hint="hint.chain_name")
    return said


def links(page: Skeleton, known: Context) -> dict[str, tuple[Item, tuple[str, str], tuple[Word | None, ...]]]:
    out: dict[str, tuple[Item, tuple[str, str], tuple[Word | None, ...]]] = {}
    by_name = "links" in page.sections and isinstance(page.sections["links"][1], Entries)
    entries = (
        [(name, key, page.scalar("links", name, node)) for name, key, node in page.named("links")]
        if by_name
        else [("", item.scalar, item) for item in page.listed("links")]
    )
    for name, key, item in entries:
        said = attempt(_strung, known, item, name) if item else None
        if said is None:
            known.broken.add(name or (item.text.replace("-", "").replace(" ", "") if item else ""))
            continue
        for first, second in zip(said.points, said.points[1:]):
            ends = attempt(rules.link_ends, known, item, (first, second))
            called = name or first.text + second.text
            if ends is None:
                known.broken.add(called)
                continue
            if len(out) >= MOST["links"]:
                page.report.error("read.too_many", page.sections["links"][0].place, ("links",), most=MOST["links"])
                return out
            where = key if len(said.points) == 2 else Scalar(called, item.place(first.start, second.end), whole=True)
            whole = () if by_name else (item.scalar, first.start, second.end, True)
            if _declare(page, known, "links", called, where, whole):
                known.links[called] = Connection(called, "link", ends, ("", ""), place=where.place)
                out[called] = (item, ends, said.parts)
    return out


def attach(known: Context, links: dict[str, tuple[Item, tuple[str, str], tuple[Word | None, ...]]]) -> None:
    """Give each link what its ends act on, now that the pins are known."""
    for name, (item, ends, meant) in links.items():
        try:
            known.links[name] = rules.link(known, name, item, ends, meant)
        except Dropped:
            del known.links[name]
            known.broken.add(name)


def bodies(page: Skeleton, known: Context) -> None:
    """Discs and blocks."""
    for section, kind, make in (("discs", "disc", cord_rules.disc), ("blocks", "block", cord_rules.block)):
        for name, key, node in page.named(section):
            item = page.scalar(section, name, node)
            said = attempt(item.phrase, kind) if item else None
            if said is None or not _declare(page, known, section, name, key):
                known.broken.add(name)
                continue
            part = attempt(cord_rules.box if isinstance(said, BoxSaid) else make, known, name, item, said)
            if part:
                known.parts[name] = part
            else:
                known.broken.add(name)


def cords(page: Skeleton, known: Context) -> dict[str, cord_rules.Strung]:
    """Cords with their ends still loose."""
    out: dict[str, cord_rules.Strung] = {}
    for name, key, node in page.named("cords"):
        item = page.scalar("cords", name, node)
        said = attempt(item.phrase, "cord") if item else None
        letter = known.letters.get(name)
        if letter is not None and not (letter.value and letter.value.dimension == FORCE):
            known.places.setdefault(name, known.letters[name].place or key.place)
        if known.sought.get(name) == "":
            # `P: unknown` under letters and a cord P: the letter of the cord's tension, which is found as any other.
            del known.sought[name]
            del known.places[name]
        strung = None
        if said is not None and _declare(page, known, "cords", name, key):
            strung = attempt(cord_rules.string, known, name, item, said)
        if strung is None:
            known.broken.add(name)
            known.lost.add("cords")
            continue
        out[name] = strung
        known.cords.add(name)
        for stop in strung.stops:
            if stop.point and not stop.side and not stop.part:
                known.cord_ends.setdefault(stop.point, []).append(name)
    return out


def pins(page: Skeleton, known: Context) -> list[Connection]:
    said = {}
    touching = contacts(page, known)
    sliding = slides.sections(page, known)
    for name, key, node in page.named("pins"):
        item = page.scalar("pins", name, node)
        if item is None:
            continue
        where = Item(name, key, ("pins", name), page.report)
        point = attempt(known.point, where, Word(name, 0, len(name)))
        if point and len(known.members_at(name)) < 2:
            if not known.broken and not known.lost:
                page.report.error("read.not_shared", key.place, ("pins", name), point=name)
            continue
        facts = attempt(item.phrase, "joining")
        if point and facts:
            said[name] = (item, facts)
    known.joined = [*rules.pins(known, said, touching), *touching.values(), *sliding]
    return known.joined


def contacts(page: Skeleton, known: Context) -> dict[str, Connection]:
    out = {}
    for name, key, node in page.named("contacts"):
        item = page.scalar("contacts", name, node)
        where = Item(name, key, ("contacts", name), page.report)
        said = attempt(item.phrase, "contact") if item else None
        known.places[f"contacts > {name}"] = key.place
        if said is not None and rims.is_rim(known, said):
            found = _rim(page, known, name, key, item, said)
        else:
            point = attempt(known.point, where, Word(name, 0, len(name)))
            if point is None or said is None:
                continue
            found = attempt(rules.contact, known, name, item, said)
        if found is None:
            known.lost.add("pins")
        elif GROUND in found.parts:
            known.standing[name] = found
        else:
            out[name] = found
    return out


def _rim(page: Skeleton, known: Context, name: str, key: Scalar, item: Item, said: ContactSaid) -> Connection | None:
    """A contact of a wheel; its point is named here where it is not named before."""
    new = name not in known.points
    found = attempt(rims.touch, known, name, item, said)
    if found is not None and new:
        known.places[name] = key.place
        known.declare("points", name, key, 0, len(name))
    elif found is None:
        known.broken.add(name)
    return found


def supports(page: Skeleton, known: Context) -> dict[str, Connection]:
    out = dict(known.standing)
    known.held += out.values()
    for name, key, node in page.named("supports"):
        item = page.scalar("supports", name, node)
        where = Item(name, key, ("supports", name), page.report)
        point = attempt(known.point, where, Word(name, 0, len(name)))
        said = attempt(item.phrase, "support") if item else None
        if point is None or said is None:
            known.lost.add("supports")
            continue
        if name in known.standing:
            place = known.standing[name].place
            page.report.error("read.held_twice", key.place, ("supports", name), point=name, line=place.line, related=(place,))
            continue
        known.places[f"supports > {name}"] = key.place
        support = attempt(rules.support, known, name, item, said)
        if support is None:
            known.lost.add("supports")
        elif support.kind == "link":
            known.links[support.name] = support
            known.held.append(support)
        else:
            out[name] = support
            known.held.append(support)
    return out
