"""Members, links, supports and the pins between them: from phrases to parts and connections."""

from __future__ import annotations

from fractions import Fraction

from unpin.exact.number import sign
from unpin.model.kinds import KINDS
from unpin.model.problem import GROUND, Connection, Part, Point
from unpin.model.values import Direction, Vector
from unpin.read.context import Context, Item
from unpin.read.directions import AXES, axis, direction, lies_on, square_of
from unpin.read.phrases import ContactSaid, JoiningSaid, SupportSaid, Word
from unpin.read.report import Dropped, nearest
from unpin.read.slips import FRICTION
from unpin.read.synonyms import SUPPORTS

STRUCTURE = {"members", "links", "discs", "blocks", "cords"}
"""The sections that say what is there."""

TO_GROUND = ("link", "cord")
"""Said of a support: a link to a point of the ground that needs no name."""

UPRIGHT = ("knife edge", "rocker", "smooth floor")
"""What pushes up where no way is said."""


def member(known: Context, name: str, item: Item, strokes: tuple[tuple[Word, ...], ...]) -> Part:
    """A rigid part through points. A further stroke has some point in common with those before it; the chain goes back to
    that first, and from there to the one end of the stroke and then to the other, so that each point is still straight from
    the one before. A stroke that hangs on a later one waits for it."""
    for stroke in strokes:
        names = [known.point(item, word).name for word in stroke]
        if stroke is strokes[0] and len(names) < 2:
            raise item.drop("read.one_point", stroke[0], name=name, hint="hint.one_point")
        for word, first, second in zip(stroke[1:], names, names[1:]):
            if known.at[first] == known.at[second]:
                raise item.drop("read.no_length", word, first=first, second=second)
    chain, *waiting = ([word.text for word in stroke] for stroke in strokes)
    words = {word.text: word for stroke in strokes[::-1] for word in stroke[::-1]}
    while waiting:
        names = next((names for names in waiting if not set(chain).isdisjoint(names)), None)
        if names is None:
            raise item.drop("read.stroke_apart", words[waiting[0][0]], name=name, point=waiting[0][0])
        waiting.remove(names)
        meets = next(n for n, point in enumerate(names) if point in chain)
        back = len(chain) - 1 - chain[::-1].index(names[meets])
        chain += chain[back:-1][::-1]
        before, after = names[:meets][::-1], names[meets + 1 :]
        chain += [*before, *([*before[:-1][::-1], names[meets]] if before and after else ()), *after]
    return Part(name, tuple(chain), place=known.places.get(name))


def link_ends(known: Context, item: Item, said: tuple[Word, ...]) -> tuple[str, str]:
    """The two points of a link, by name or as `BD` where that can be read in one way only."""
    if len(said) == 1:
        said = split_ends(known, item, said[0])
    first, second = (known.point(item, word).name for word in said)
    if known.at[first] == known.at[second]:
        raise item.drop("read.no_length", said[1], first=first, second=second)
    return first, second


def split_ends(known: Context, item: Item, word: Word) -> tuple[Word, Word]:
    """`BD` as B and D."""
    ways = [i for i in range(1, len(word.text)) if word.text[:i] in known.points and word.text[i:] in known.points]
    if len(ways) != 1:
        if known.lost or known.broken:
            raise Dropped
        raise item.drop("read.link_ends", word, text=word.text[:40], hint="hint.link_ends")
    cut = ways[0]
    return Word(word.text[:cut], word.start, word.start + cut), Word(word.text[cut:], word.start + cut, word.end)


def contact(known: Context, point: str, item: Item, said: ContactSaid) -> Connection:
    """Two members that touch: the second-named is pushed, and pushes back; the point lies on both."""
    pushed, pushing = known.part(item, said.pushed), known.part(item, said.pushing)
    if pushed is pushing:
        raise item.drop("read.touch_itself", said.pushed, name=pushed.name)
    for word, part in ((said.pushing, pushing), (said.pushed, pushed)):
        if point not in part.points and not lies_on(known, part, known.at[point]):
            raise item.drop("read.not_on_member", word, name=part.name, point=point)
    if said.direction is None:
        raise item.drop("read.push_which_way", said.pushed, name=pushed.name, hint="hint.touch_way")
    way = direction(known, item, said.direction, point)
    return Connection(
        point, "contact", (point,), (pushed.name, pushing.name), way, place=known.places.get(f"contacts > {point}")
    )


def link(known: Context, name: str, item: Item, ends: tuple[str, str], meant: tuple[Word | None, ...] = ()) -> Connection:
    """A two-force link; each end acts on the one member there, or on the pin (""), or on the pin in the ground. `meant`: the members
    that are meant where several meet at an end; one said last may be meant of the first end."""
    first, last = meant or (None, None)
    if last is not None and first is None and not _takes(known, known.part(item, last), ends[1]):
        if not _takes(known, known.part(item, last), ends[0]):
            raise item.drop("read.not_on_member", last, name=last.text, point=ends[1])
        first, last = last, None
    hosts = tuple(host(known, item, end, part) for end, part in zip(ends, (first, last)))
    if hosts[0] and hosts[0] == hosts[1]:
        item.warn("read.link_within", name=name, part=hosts[0])
    return Connection(name, "link", ends, hosts, place=known.places.get(name))


def _takes(known: Context, part: Part, point: str) -> bool:
    """Whether a part can be what a thing at a point acts on."""
    return part in known.carriers(point) or part.kind == "disc" and lies_on(known, part, known.at[point])


def host(known: Context, item: Item, point: str, part: Word | None = None) -> str:
    """What a thing at a point acts on: the named member, the one member there, or "" for the pin itself."""
    here = known.members_at(point) or known.carriers(point) if part is not None else known.carriers(point)
    if part is not None:
        named = known.part(item, part)
        if named not in here and not (named.kind == "disc" and lies_on(known, named, known.at[point])):
            raise item.drop("read.not_on_member", part, name=named.name, point=point)
        return named.name
    if len(here) == 1:
        return here[0].name
    if known.rigid(point, here):
        return here[0].name
    if len(here) > 1 and point not in known.pinned:
        raise item.drop("read.which_member", names=tuple(p.name for p in here), point=point, hint="hint.on_member")
    return ""


def support(known: Context, point: str, item: Item, said: SupportSaid) -> Connection:
    """A support at a point. A roller on a slope pushes square to it, to the upper side; a plain one pushes up. A link or cord
    runs to a point of the ground that is made for it."""
    if said.kind.text in TO_GROUND:
        return ground_link(known, point, item, said)
    kinds = {phrase: k for k in KINDS.values() if k.support and k.ends == 1 for phrase in k.phrases}
    kind = kinds.get(said.kind.text)
    if kind is None:
        near = SUPPORTS.get(said.kind.text.lower()) or nearest(said.kind.text, [*kinds, *TO_GROUND]) if said.kind.text not in FRICTION else ""
        raise item.drop(
            "read.unknown_support",
            said.kind,
            name=said.kind.text[:40],
            known=tuple(sorted([*kinds, *TO_GROUND])),
            nearest=near,
            hint="hint.spring" if said.kind.text.startswith("spring") else "hint.nearest" if near else "hint.friction" if said.kind.text in FRICTION else "",
        )
    way: Direction | None = None
    if said.direction is not None and not kind.needs_direction:
        raise item.drop("read.no_direction", said.kind, name=said.kind.text)
    if kind.needs_direction:
        unsaid = said.direction is None and kind.owned
        if unsaid or said.way == "bare" or said.way == "along" and not kind.track or said.way == "pushes" and kind.track:
            raise item.drop("read.support_way", said.kind, name=said.kind.text, way=said.way, hint="hint.support_way")
        if said.direction is None and kind.push_only and said.kind.text not in UPRIGHT:
            raise item.drop("read.push_which_way", said.kind, name=said.kind.text, hint="hint.push_which_way")
        way = axis("up") if said.direction is None else direction(known, item, said.direction, point)
        if said.way in ("slope", "along"):
            way = _upper_side(item, said, way)
    _something_there(known, item, point)
    upon = host(known, item, point, said.part)
    without_size = known.parts[upon].kind == "block" and len(known.parts[upon].points) == 1 if upon else not known.carriers(point)
    return Connection(
        point,
        kind.of_point or kind.name if without_size else kind.name,
        (point,),
        (upon, GROUND),
        way,
        place=known.places.get(f"supports > {point}"),
    )


def _something_there(known: Context, item: Item, point: str) -> None:
    tied = point in known.cord_ends or any(point in c.points for c in known.links.values())
    if not known.carriers(point) and not tied:
        if known.lost & STRUCTURE or known.broken:
            raise Dropped
        raise item.drop("read.support_on_nothing", point=point)


def ground_link(known: Context, point: str, item: Item, said: SupportSaid) -> Connection:
    """A link to the ground in a direction alone. Its far end is made, so far away that it can be drawn; no force depends on
    that. The direction is kept as it was said."""
    if said.direction is None:
        raise item.drop("read.link_which_way", said.kind, name=said.kind.text, hint="hint.link_which_way")
    if said.way not in ("bare", "along"):
        raise item.drop("read.support_way", said.kind, name=said.kind.text, way=said.way, hint="hint.link_which_way")
    way = direction(known, item, said.direction, point)
    _something_there(known, item, point)
    upon = host(known, item, point, said.part)
    end = _ground_point(known, point, way)
    name = point + end.name
    if name in known.places:
        raise item.drop("read.name_taken", said.kind, name=name, line=known.places[name].line)
    known.points[end.name] = end
    known.used.add(end.name)
    known.places[name] = place = known.places[f"supports > {point}"]
    known.declare("links", name, item.scalar, 0, len(item.text), made=True)
    known.assume("ground_link" if said.kind.text == "link" else "ground_cord", point=point)
    return Connection(name, "link", (point, end.name), (upon, GROUND), way, place=place)


def _ground_point(known: Context, point: str, way: Direction) -> Point:
    """A point about a fifth of the figure away, on no other point, under a name that is free."""
    taken = {*known.points, *known.parts, *known.links, *known.letters, *known.broken}
    name = next(n for i in range(1, 1000) if (n := point + "'" * i) not in taken)
    rough = [tuple(float(c) for c in p.at) for p in known.points.values()]
    size = max(max(c) - min(c) for c in zip(*rough)) or 1.0
    at: Vector = ()
    for share in (0.2, 0.25, 0.3, 0.15, 0.35):
        factor = Fraction(f"{share * size / float(way.length):.2g}")
        at = tuple(c + factor * v for c, v in zip(known.at[point], way.vector))
        if all(max(abs(float(c) - r) for c, r in zip(at, other)) > size / 50 for other in rough):
            break
    return Point(name, at, made=GROUND)


def _upper_side(item: Item, said: SupportSaid, surface: Direction) -> Direction:
    normal = square_of(surface)
    if sign(normal.vector[1]) == 0 and said.way == "slope":
        raise item.drop("read.upright_slope", said.kind, hint="hint.upright_slope")
    return upward(normal)


def upward(normal: Direction) -> Direction:
    """The same line turned to point up, or right where it is level."""
    side = sign(normal.vector[1]) or sign(normal.vector[0])
    found = normal if side > 0 else normal.reversed()
    plain = next((word for word, v in AXES.items() if v == found.vector), "")
    return axis(plain) if plain in ("right", "left", "up", "down") else found


def pins(known: Context, joinings: dict[str, tuple[Item, JoiningSaid]], touching: dict[str, Connection]) -> list[Connection]:
    """One pin where members share a point, unless the file says otherwise there, or two of them only touch, or one slides in
    another; welds as connections of their own."""
    out: list[Connection] = []
    for point in known.points:
        here = [p.name for p in known.members_at(point)]
        if len(here) < 2:
            continue
        left, welds = here, []
        if point in joinings:
            item, said = joinings[point]
            try:
                left, welds = _joined(known, item, said, point, here)
            except Dropped:
                pass
        if point in touching:
            left = [p for p in left if p not in touching[point].parts]
        left = [p for p in left if p not in known.owners.get(point, ())]
        place = known.places.get(point)
        if len(left) > 1:
            known.pinned[point] = tuple(left)
            out.append(Connection(point, "pin", (point,), tuple(left), place=place))
        known.welded[point] = {p for pair in welds for p in pair}
        out += [Connection(point, "fixed", (point,), pair, place=place) for pair in welds]
    return out


def _joined(
    known: Context, item: Item, said: JoiningSaid, point: str, here: list[str]
) -> tuple[list[str], list[tuple[str, str]]]:
    """Members that stay pinned, and pairs that are welded."""
    named = []
    for word in said.parts:
        part = known.part(item, word).name
        if part not in here:
            raise item.drop("read.not_on_member", word, name=part, point=point)
        named.append(part)
    if said.how == "loose":
        return ([p for p in here if p not in named], []) if named else ([], [])
    if said.how == "welded":
        group = named or here
        if len(set(group)) < 2:
            raise item.drop("read.weld_itself", said.parts[0], name=group[0])
        return [p for p in here if p not in group[1:]], [(group[0], other) for other in group[1:]]
    return here, []
