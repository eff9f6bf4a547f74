"""What is known of a file while it is read: letters, points and parts so far, default units, and what must stay silent.

A name that was given but could not be understood is *broken*: what uses it is dropped without a remark of its own.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import field

from unpin.base.diagnostic import Place
from unpin.base.record import open_record, record
from unpin.base.units import BY_SPELLING, FORCE, LENGTH, MASS, MOMENT, SPREAD, UNITS, Dimension, Unit
from unpin.exact.letters import Letters
from unpin.model.problem import Connection, Letter, Part, Point
from unpin.model.values import Quantity, Vector
from unpin.read.grammar import Misread, parse_phrase
from unpin.read.phrases import Word
from unpin.read.references import Reference, section_of
from unpin.read.report import Dropped, Report, nearest
from unpin.read.tree import Scalar


@record
class Item:
    """One phrase of the file and where it stands."""

    text: str
    scalar: Scalar
    path: tuple[str, ...]
    report: Report

    def place(self, start: int = 0, end: int | None = None) -> Place:
        return self.scalar.part(start, len(self.text) if end is None else end)

    def drop(self, code: str, said: object = None, **more: object) -> Dropped:
        """Report an error at a piece of the phrase (anything with `start` and `end`), and what to raise."""
        place = self.place(said.start, said.end) if said is not None else self.place()
        return self.report.drop(code, place, self.path, **more)

    def warn(self, code: str, said: object = None, **more: object) -> None:
        place = self.place(said.start, said.end) if said is not None else self.place()
        self.report.warning(code, place, self.path, **more)

    def phrase(self, kind: str):
        """The facts of the phrase, or Dropped after a remark."""
        found = parse_phrase(kind, self.text)
        if isinstance(found, Misread):
            if self.report.follows(self.text):
                raise Dropped
            more = {"nearest": found.nearest} if found.nearest else {}
            code = "read.phrase" if found.found else "read.phrase_ends"
            raise self.drop(code, found, hint=found.hint, found=found.found, wanted=found.wanted, **more)
        return found


@open_record
class Context:
    """Everything gathered so far.

    `shown`: the unit of each dimension for bare numbers and answers. `letter_kinds`: what a letter with a bare number
    turned out to be. `pinned`: the members pinned at each shared point. `broken`: names given but not understood;
    `later`: points further down; `lost`: sections that could not be read, so that nothing in them is "unknown".
    `loaded`: members with a load of their own; `end_loaded`: those of them whose loads all act at a pin of it where a link or cord ends.
    `joined`: pins, welds and contacts between members; `held`: supports, and links
    to the ground, in file order. `bare`: whether a number without a unit was used. `cords`: names of
    cords; `cord_ends`: of those that end at a point. `references`: every name that was given or looked up, and where.
    `owners`: at each point, the members in or on which another slides there; `standing`: slots and rods of the ground.
    `sought`: letters that are to be found, with what their loads are. `given`: of what the force is given, name and point to the push.
    `angles`: about how many angles and tangents the text speaks of; `halved`: names of which it takes a half.
    `free`: the letters without a value; `free_gravity`: g, where it is one of them.
    """

    report: Report
    shown: dict[Dimension, Unit] = field(default_factory=dict)
    gravity: Quantity | None = None
    letters: dict[str, Letter] = field(default_factory=dict)
    points: dict[str, Point] = field(default_factory=dict)
    parts: dict[str, Part] = field(default_factory=dict)
    links: dict[str, Connection] = field(default_factory=dict)
    pinned: dict[str, tuple[str, ...]] = field(default_factory=dict)
    places: dict[str, Place] = field(default_factory=dict)
    broken: set[str] = field(default_factory=set)
    lost: set[str] = field(default_factory=set)
    later: set[str] = field(default_factory=set)
    loaded: set[str] = field(default_factory=set)
    end_loaded: set[str] = field(default_factory=set)
    joined: list[Connection] = field(default_factory=list)
    held: list[Connection] = field(default_factory=list)
    used: set[str] = field(default_factory=set)
    used_letters: set[str] = field(default_factory=set)
    letter_kinds: dict[str, Dimension] = field(default_factory=dict)
    cords: set[str] = field(default_factory=set)
    cord_ends: dict[str, list[str]] = field(default_factory=dict)
    sought: dict[str, str] = field(default_factory=dict)
    owners: dict[str, set[str]] = field(default_factory=dict)
    welded: dict[str, set[str]] = field(default_factory=dict)
    standing: dict[str, Connection] = field(default_factory=dict)
    references: list[Reference] = field(default_factory=list)
    given: dict[tuple[str, str], str] = field(default_factory=dict)
    angles: int = 0
    halved: frozenset[str] = frozenset()
    bare: bool = False
    free: Letters | None = None
    free_gravity: Quantity | None = None
    assumed: list[tuple[str, dict[str, object]]] = field(default_factory=list)

    @property
    def at(self) -> dict[str, Vector]:
        return {p.name: p.at for p in self.points.values()}

    def assume(self, code: str, **arguments: object) -> None:
        if (code, arguments) not in self.assumed:
            self.assumed.append((code, arguments))

    def refer(self, item: Item, word: Word, kind: str) -> None:
        """Note that a name means something of a kind here; anything with a text, or a name, and `start` and `end` will do."""
        name = item.text[word.start : word.end]
        self.references.append(Reference(kind, name, item.scalar, word.start, word.end))

    def refer_part(self, item: Item, word: Word) -> None:
        """The same for a name of a member, disc or block; a knot has that of its point."""
        kind = "points" if word.text in self.points else section_of(self.parts[word.text].kind)
        self.refer(item, word, kind)

    def declare(self, kind: str, name: str, scalar: Scalar, start: int, end: int, made: bool = False) -> None:
        """Note where a name is given."""
        self.references.append(Reference(kind, name, scalar, start, end, True, made))

    def point(self, item: Item, word: Word) -> Point:
        """A point by name, or Dropped."""
        if word.text in self.points:
            self.used.add(word.text)
            self.refer(item, word, "points")
            return self.points[word.text]
        if word.text in self.later:
            raise item.drop("read.later_point", word, name=word.text, hint="hint.later_point")
        if word.text in self.parts:
            points = self.parts[word.text].points
            raise item.drop(
                "read.part_no_point", word, name=word.text, points=tuple(dict.fromkeys(points)), hint="hint.its_points"
            )
        raise self.unknown(item, word, "read.unknown_point", self.points, "points")

    def part(self, item: Item, word: Word) -> Part:
        """A member by name, or Dropped."""
        if word.text in self.parts:
            self.refer_part(item, word)
            return self.parts[word.text]
        if word.text in self.links or word.text in self.cords:
            raise item.drop("read.link_no_member", word, name=word.text)
        raise self.unknown(item, word, "read.unknown_member", self.parts, "members")

    def unknown(self, item: Item, word: Word, code: str, known: Iterable[str], section: str, first: str = "") -> Dropped:
        """What to raise for a name that is not known; silent where it follows from an earlier fault. `first`: the hint where nothing known is near."""
        if word.text in self.broken or section in self.lost:
            return Dropped()
        near, names = nearest(word.text, list(known)), tuple(known)
        hint = "hint.nearest" if near else first if first else "hint.known" if 0 < len(names) <= 12 and not self.broken else ""
        return item.drop(code, word, name=word.text[:40], nearest=near, known=names[:12], hint=hint)

    def members_at(self, point: str) -> list[Part]:
        return [p for p in self.parts.values() if point in p.points]

    def carriers(self, point: str) -> list[Part]:
        """The members that what acts at a point acts on: not one in whose slot the pin there slides. Where no member passes, a block
        that has the point on it, or a disc that has it on a rim."""
        from unpin.read.directions import lies_on, on_rim

        here = self.members_at(point)
        if not here:
            at = self.points[point].at
            return [p for p in self.parts.values() if p.kind == "box" and lies_on(self, p, at) or p.kind == "disc" and on_rim(self, p, at)]
        return [p for p in here if p.name not in self.owners.get(point, ())]

    def rigid(self, point: str, here: list[Part]) -> bool:
        """Whether members that share a point are welded there, all of them: one rigid part, whichever is meant."""
        return len(here) > 1 and self.welded.get(point, set()) >= {p.name for p in here}

    def unit(self, dimension: Dimension) -> Unit:
        """The unit of bare numbers of this dimension."""
        return self.shown[dimension]


def shown_units(chosen: Iterable[Unit]) -> dict[Dimension, Unit]:
    """Units of every dimension from those the author names: a moment in kN and m is in kN·m where that unit is kept."""
    given = {u.dimension: u for u in chosen}
    system = next((u.system for u in given.values() if u.system != "both"), "si")
    metre, newton = (BY_SPELLING["ft"], BY_SPELLING["lb"]) if system == "us" else (BY_SPELLING["m"], BY_SPELLING["N"])
    force, length = given.get(FORCE, newton), given.get(LENGTH, metre)
    product = {MOMENT: force.factor * length.factor, SPREAD: force.factor / length.factor}
    out = {u.dimension: u for u in UNITS if u.system == "both"}
    out |= {LENGTH: length, FORCE: force, MASS: BY_SPELLING["slug" if system == "us" else "kg"]}
    for dimension, factor in product.items():
        fits = [u for u in UNITS if u.dimension == dimension and u.factor == factor]
        named = [u for u in fits if force.symbol in u.symbol and length.symbol in u.symbol]
        plain = [u for u in UNITS if u.dimension == dimension and u.system == system]
        out[dimension] = (named or fits or plain)[0]
    return out | given
