"""The sections that make the structure: points, members, links, pins and supports, entry by entry."""

from __future__ import annotations

from collections.abc import Iterator

from unpin.model.problem import Connection
from unpin.read import parts as rules
from unpin.read import points as point_rules
from unpin.read.context import Context, Item
from unpin.read.phrases import Word
from unpin.read.report import Dropped
from unpin.read.skeleton import Skeleton, attempt
from unpin.read.tree import Entries, Items, Node, Scalar


def _declare(page: Skeleton, known: Context, section: str, name: str, key: Scalar) -> bool:
    """Whether a name is free; a point, a member and a link may not share one."""
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
    return True


def points(page: Skeleton, known: Context) -> None:
    entries = list(page.named("points"))
    known.later = {name for name, _, _ in entries}
    for name, key, node in entries:
        known.places[name] = key.place
        point = attempt(_point, page, known, name, node)
        known.later.discard(name)
        if point:
            known.points[name] = point
        else:
            known.broken.add(name)


def _point(page: Skeleton, known: Context, name: str, node: Node):
    if isinstance(node, Items):
        if len(node.items) != 2:
            raise page.report.drop(
                "read.two_coordinates",
                node.place,
                ("points", name),
                count=len(node.items),
                hint="hint.decimal_comma" if len(node.items) > 2 else "",
            )
        items = [page.scalar("points", name, n) for n in node.items]
        if None in items:
            raise Dropped
        return point_rules.typed(known, name, items)
    item = page.scalar("points", name, node)
    if item is None:
        raise Dropped
    return point_rules.made(known, name, item)


def members(page: Skeleton, known: Context) -> None:
    for name, key, item in _strokes(page, known):
        said = attempt(item.phrase, "member")
        if said is not None and name == "":
            name = "".join(w.text for w in said[0])
            item = page.item("members", name, item.scalar)
        if said is None or not _declare(page, known, "members", name, key):
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
            joined = Scalar(", ".join(n.text for n in node.items), node.place, whole=True)
            yield name, key, page.item("members", name, joined)
            continue
        item = page.scalar("members", name, node)
        if item:
            yield name, key, item
        else:
            known.broken.add(name)


def _ends(known: Context, item: Item) -> tuple[str, str]:
    return rules.link_ends(known, item, item.phrase("link"))


def links(page: Skeleton, known: Context) -> dict[str, tuple[Item, tuple[str, str]]]:
    out: dict[str, tuple[Item, tuple[str, str]]] = {}
    by_name = "links" in page.sections and isinstance(page.sections["links"][1], Entries)
    entries = (
        [(name, key, page.scalar("links", name, node)) for name, key, node in page.named("links")]
        if by_name
        else [("", item.scalar, item) for item in page.listed("links")]
    )
    for name, key, item in entries:
        ends = attempt(_ends, known, item) if item else None
        if ends is None:
            known.broken.add(name or (item.text.replace("-", "").replace(" ", "") if item else ""))
            continue
        name = name or "".join(ends)
        if _declare(page, known, "links", name, key):
            known.links[name] = Connection(name, "link", ends, ("", ""), place=key.place)
            out[name] = (item, ends)
    return out


def attach(known: Context, links: dict[str, tuple[Item, tuple[str, str]]]) -> None:
    """Give each link what its ends act on, now that the pins are known."""
    for name, (item, ends) in links.items():
        try:
            known.links[name] = rules.link(known, name, item, ends)
        except Dropped:
            del known.links[name]
            known.broken.add(name)


def pins(page: Skeleton, known: Context) -> list[Connection]:
    said = {}
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
    return rules.pins(known, said)


def supports(page: Skeleton, known: Context) -> dict[str, Connection]:
    out = {}
    for name, key, node in page.named("supports"):
        item = page.scalar("supports", name, node)
        where = Item(name, key, ("supports", name), page.report)
        point = attempt(known.point, where, Word(name, 0, len(name)))
        said = attempt(item.phrase, "support") if item else None
        if point is None or said is None:
            known.lost.add("supports")
            continue
        known.places[f"supports > {name}"] = key.place
        support = attempt(rules.support, known, name, item, said)
        if support:
            out[name] = support
        else:
            known.lost.add("supports")
    return out
