"""From the text of a problem file to a problem and remarks, section by section in the order in which they depend."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path

from unpin.base.diagnostic import Diagnostic, Place
from unpin.base.units import ACCELERATION, ANGLE, BY_SPELLING, DIMENSION_NAMES, FORCE, LENGTH, MASS, MOMENT, NUMBER, SPREAD, Unit
from unpin.model.problem import GROUND, Asked, Connection, Letter, Load, Problem
from unpin.model.values import Quantity, WantedSum
from unpin.read import parts, points
from unpin.read.asked import asked, wanted_sum
from unpin.read.checks import probable_slips
from unpin.read.context import Context, Item, shown_units
from unpin.read.grammar import KEYWORDS, is_name
from unpin.read.loads import load
from unpin.read.phrases import Word
from unpin.read.quantities import SINGLE, all_spellings, measure, quantity, unit_named
from unpin.read.report import Dropped, Report, nearest
from unpin.read.schema import BY_NAME, MOST, SECTIONS
from unpin.read.tree import Entries, Items, Node, Scalar, clean, tree_of

LARGEST_FILE = 256 * 1024


@dataclass(frozen=True)
class Reading:
    """What a text says: the problem as far as it could be understood (None when nothing could), and every remark in file
    order. A problem with errors is good for a picture, not for a solution."""

    problem: Problem | None
    diagnostics: tuple[Diagnostic, ...]

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
        code = "read.no_file" if isinstance(fault, FileNotFoundError) else "read.closed_file"
        return Reading(None, (Diagnostic("error", code, arguments={"file": name}),))
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
    report = Report(file)
    if len(text.encode("utf-8", "replace")) > LARGEST_FILE:
        report.error("read.large_file", None, most=LARGEST_FILE // 1024)
        return Reading(None, report.in_order())
    tree, whole = tree_of(clean(text, report), report)
    if tree is None:
        if not report.found:
            report.error("read.empty_file", report.place(1, 1), hint="hint.sections")
        return Reading(None, report.in_order())
    return _Reader(report, tree, whole, report.place(text.rstrip().count("\n") + 1, 1)).read()


@dataclass
class _Reader:
    """Scratch paper of one reading."""

    report: Report
    tree: Entries
    whole: bool
    end: Place
    sections: dict[str, tuple[Scalar, Node]] = field(default_factory=dict)
    known: Context = field(init=False)

    def read(self) -> Reading:
        self.known = known = Context(self.report)
        self.sort_sections()
        self.units()
        self.gravity()
        self.letters()
        self.points()
        self.members()
        links = self.links()
        pins = self.pins()
        for name, (item, ends) in links.items():
            with_hosts = self.attempt(lambda: parts.link(known, name, item, ends))
            if with_hosts:
                known.links[name] = with_hosts
            else:
                known.links.pop(name, None)
                known.broken.add(name)
        supports = self.supports()
        loads = self.loads()
        wanted = self.asked(supports)
        sums = self.sums()
        connections = [*pins, *known.links.values(), *supports.values()]
        self.presence()
        if known.parts or known.links:
            probable_slips(known, connections, loads)
        self.assumptions(connections, loads)
        problem = Problem(
            points=tuple(known.points.values()), parts=tuple(known.parts.values()), connections=tuple(connections), loads=tuple(loads),
            asked=tuple(wanted), letters=tuple(known.letters.values()), title=self.text("title"), text=self.text("text"),
            gravity=known.gravity, units={DIMENSION_NAMES[d]: u.symbol for d, u in known.shown.items()}, figures=self.figures(),
            wanted_route=tuple(sums), assumed=tuple(known.assumed))
        return Reading(problem if self.sections else None, self.report.in_order())

    # The skeleton.

    def sort_sections(self) -> None:
        for key, node in self.tree.entries:
            if key.text in BY_NAME:
                self.sections[key.text] = (key, node)
            else:
                near = nearest(key.text, list(BY_NAME))
                self.report.error("read.unknown_section", key.place, (key.text[:40],), name=key.text[:40], nearest=near,
                                  hint="hint.nearest" if near else "hint.sections")
                self.known.lost.add(near)
        if not self.whole:
            self.known.lost |= {s.name for s in SECTIONS if s.name not in self.sections}

    def attempt(self, make: Callable):
        """The result, or None when it was dropped."""
        try:
            return make()
        except Dropped:
            return None

    def item(self, section: str, name: str, scalar: Scalar) -> Item:
        return Item(scalar.text, scalar, (section, name[:40]) if name else (section,), self.report)

    def scalar(self, section: str, name: str, node: Node) -> Item | None:
        """A text, or None after a remark."""
        path = (section, name[:40]) if name else (section,)
        if not isinstance(node, Scalar):
            self.report.error("read.not_text", node.place, path, hint="hint.quotes_phrase")
        elif not node.text.strip():
            self.report.error("read.nothing_said", node.place, path, hint="hint.comma" if name else "")
        else:
            return self.item(section, name, node)
        return None

    def named(self, section: str) -> Iterator[tuple[str, Scalar, Node]]:
        """Entries of a mapping: name, its place, and what it holds; names that are none are reported."""
        if section not in self.sections:
            return
        _, node = self.sections[section]
        if not isinstance(node, Entries):
            if not (isinstance(node, Scalar) and not node.text):
                self.report.error("read.not_mapping", node.place, (section,), hint="hint.mapping")
                self.known.lost.add(section)
            return
        for key, value in self.counted(section, node.entries):
            if not is_name(key.text):
                reserved = key.text in KEYWORDS
                self.report.error("read.name", key.place, (section, key.text[:40]), name=key.text[:40],
                                  hint="hint.reserved" if reserved else "hint.name")
                continue
            yield key.text, key, value

    def counted(self, section: str, entries: list) -> list:
        if len(entries) > MOST[section]:
            self.report.error("read.too_many", self.sections[section][0].place, (section,), most=MOST[section])
        return entries[:MOST[section]]

    def listed(self, section: str) -> Iterator[Item]:
        """Phrases of a list; one phrase alone is a list of one."""
        if section not in self.sections:
            return
        _, node = self.sections[section]
        if isinstance(node, Entries):
            self.report.error("read.not_list", node.place, (section,), hint="hint.list")
            self.known.lost.add(section)
            return
        if isinstance(node, Scalar):
            if node.text.strip():
                yield self.item(section, "", node)
            return
        for number, entry in enumerate(self.counted(section, node.items), 1):
            item = self.scalar(section, str(number), entry)
            if item:
                yield item

    # What holds for the whole file.

    def text(self, section: str) -> str:
        if section not in self.sections:
            return ""
        item = self.scalar(section, "", self.sections[section][1])
        return item.text.strip() if item else ""

    def figures(self) -> int:
        said = self.text("figures")
        if not said:
            return 0
        if not said.isascii() or not said.isdigit() or not 2 <= int(said[:9]) <= 8:
            self.report.error("read.figures", self.sections["figures"][1].place, ("figures",), text=said[:40], least=2, most=8)
            return 0
        return int(said)

    def units(self) -> None:
        chosen: list[Unit] = []
        if "units" in self.sections:
            item = self.scalar("units", "", self.sections["units"][1])
            start = 0
            for piece in item.text.split(",") if item else ():
                unit = unit_named(piece)
                span = Word(piece.strip(), start + len(piece) - len(piece.lstrip()), start + len(piece.rstrip()))
                if unit is None:
                    near = nearest(piece.strip(), all_spellings())
                    self.report.error("read.unknown_unit", item.place(span.start, span.end), ("units",), name=span.text[:40], nearest=near,
                                      hint="hint.nearest" if near else "")
                elif unit.dimension in {u.dimension for u in chosen}:
                    other = next(u for u in chosen if u.dimension == unit.dimension)
                    self.report.error("read.unit_twice", item.place(span.start, span.end), ("units",), first=other.symbol, second=unit.symbol)
                else:
                    chosen.append(unit)
                start += len(piece) + 1
        self.known.shown = shown_units(chosen)

    def gravity(self) -> None:
        if "gravity" in self.sections:
            item = self.scalar("gravity", "", self.sections["gravity"][1])
            unit = BY_SPELLING["ft/s²" if self.known.unit(LENGTH).system == "us" else "m/s²"]
            self.known.shown[ACCELERATION] = unit
            if item:
                self.known.gravity = self.attempt(lambda: quantity(self.known, item, item.phrase("amount"), ACCELERATION))
            del self.known.shown[ACCELERATION]

    def letters(self) -> None:
        known = self.known
        for name, key, node in self.named("letters"):
            path = ("letters", name)
            if name in SINGLE or name in ("s", "sqrt", "sin", "cos", "tan", "pin"):
                self.report.error("read.letter_unit", key.place, path, name=name, hint="hint.letter_unit")
                known.broken.add(name)
                continue
            if isinstance(node, Scalar) and not node.text.strip():
                self.report.error("read.letter_open", key.place, path, name=name, hint="hint.letter_open")
                known.letters[name] = Letter(name, None, place=key.place)
                continue
            item = self.scalar("letters", name, node)
            value = self.attempt(lambda: self.letter(item)) if item else None
            if value is None:
                known.broken.add(name)
            else:
                known.letters[name] = Letter(name, value, written=item.text, place=key.place)

    def letter(self, item: Item) -> Quantity:
        known, said = self.known, item.phrase("amount")
        _, dimension = measure(known, item, said)
        kept = (NUMBER, LENGTH, FORCE, MOMENT, SPREAD, MASS, ANGLE, ACCELERATION)
        if dimension not in kept:
            raise item.drop("read.dimension", said, text=item.text[:40], found=("@want.dimension.other",),
                            wanted=tuple(f"@want.dimension.{DIMENSION_NAMES[d]}" for d in (LENGTH, FORCE, ANGLE)))
        found = quantity(known, item, said, dimension)
        return Quantity(found.value, found.dimension, found.written, "", found.unit)

    # The structure.

    def declare(self, section: str, name: str, key: Scalar) -> bool:
        """Whether a name is free; a point, a member and a link may not share one."""
        known = self.known
        if name in known.places:
            self.report.error("read.name_taken", key.place, (section, name), name=name, line=known.places[name].line,
                              related=(known.places[name],))
            return False
        known.places[name] = key.place
        return True

    def points(self) -> None:
        known = self.known
        entries = list(self.named("points"))
        known.later = {name for name, _, _ in entries}
        for name, key, node in entries:
            known.places[name] = key.place
            point = self.attempt(lambda: self.point(name, node))
            known.later.discard(name)
            if point:
                known.points[name] = point
            else:
                known.broken.add(name)

    def point(self, name: str, node: Node):
        if isinstance(node, Items):
            if len(node.items) != 2:
                raise self.report.drop("read.two_coordinates", node.place, ("points", name), count=len(node.items),
                                       hint="hint.decimal_comma" if len(node.items) > 2 else "")
            items = [self.scalar("points", name, n) for n in node.items]
            if None in items:
                raise Dropped
            return points.typed(self.known, name, items)
        item = self.scalar("points", name, node)
        if item is None:
            raise Dropped
        return points.made(self.known, name, item)

    def members(self) -> None:
        known = self.known
        for name, key, item in self.strokes():
            said = self.attempt(lambda: item.phrase("member"))
            if said is not None and name == "":
                name = "".join(w.text for w in said[0])
                item = self.item("members", name, item.scalar)
            if said is None or not self.declare("members", name, key):
                known.broken.add(name)
                continue
            part = self.attempt(lambda: parts.member(known, name, item, said))
            if part:
                known.parts[name] = part
            else:
                known.broken.add(name)

    def strokes(self) -> Iterator[tuple[str, Scalar, Item]]:
        """Members by name, or ("") to be named by their points."""
        if "members" in self.sections and not isinstance(self.sections["members"][1], Entries):
            for item in self.listed("members"):
                yield "", item.scalar, item
            return
        for name, key, node in self.named("members"):
            if isinstance(node, Items) and node.items and all(isinstance(n, Scalar) for n in node.items):
                joined = Scalar(", ".join(n.text for n in node.items), node.place, whole=True)
                yield name, key, self.item("members", name, joined)
                continue
            item = self.scalar("members", name, node)
            if item:
                yield name, key, item
            else:
                self.known.broken.add(name)

    def links(self) -> dict[str, tuple[Item, tuple[str, str]]]:
        known = self.known
        out: dict[str, tuple[Item, tuple[str, str]]] = {}
        by_name = "links" in self.sections and isinstance(self.sections["links"][1], Entries)
        entries = [(name, key, self.scalar("links", name, node)) for name, key, node in self.named("links")] if by_name else [
            ("", item.scalar, item) for item in self.listed("links")]
        for name, key, item in entries:
            ends = self.attempt(lambda: parts.link_ends(known, item, item.phrase("link"))) if item else None
            if ends is None:
                known.broken.add(name or (item.text.replace("-", "").replace(" ", "") if item else ""))
                continue
            name = name or "".join(ends)
            if self.declare("links", name, key):
                known.links[name] = Connection(name, "link", ends, ("", ""), place=key.place)
                out[name] = (item, ends)
        return out

    def pins(self) -> list[Connection]:
        known = self.known
        said = {}
        for name, key, node in self.named("pins"):
            item = self.scalar("pins", name, node)
            if item is None:
                continue
            where = Item(name, key, ("pins", name), self.report)
            point = self.attempt(lambda: known.point(where, Word(name, 0, len(name))))
            if point and len(known.members_at(name)) < 2:
                if not known.broken and not known.lost:
                    self.report.error("read.not_shared", key.place, ("pins", name), point=name)
                continue
            facts = self.attempt(lambda: item.phrase("joining"))
            if point and facts:
                said[name] = (item, facts)
        return parts.pins(known, said)

    def supports(self) -> dict[str, Connection]:
        known = self.known
        out = {}
        for name, key, node in self.named("supports"):
            item = self.scalar("supports", name, node)
            where = Item(name, key, ("supports", name), self.report)
            point = self.attempt(lambda: known.point(where, Word(name, 0, len(name))))
            said = self.attempt(lambda: item.phrase("support")) if item else None
            if point is None or said is None:
                known.lost.add("supports")
                continue
            known.places[f"supports > {name}"] = key.place
            support = self.attempt(lambda: parts.support(known, name, item, said))
            if support:
                out[name] = support
            else:
                known.lost.add("supports")
        return out

    def loads(self) -> list[Load]:
        out: list[Load] = []
        for item in self.listed("loads"):
            out += self.attempt(lambda: load(self.known, item)) or []
        self.known.loaded = {one.part for one in out if one.part}
        return out

    def asked(self, supports: dict[str, Connection]) -> list[Asked]:
        found = [self.attempt(lambda: asked(self.known, item, supports)) for item in self.listed("find")]
        out = [a for a in found if a]
        if not found and "find" not in self.known.lost and self.known.parts | self.known.links:
            place = self.sections["find"][0].place if "find" in self.sections else self.end
            self.report.warning("read.nothing_asked", place, ("find",), hint="hint.nothing_asked")
            out = [Asked("everything")]
        return out

    def sums(self) -> list[WantedSum]:
        return [s for s in (self.attempt(lambda: wanted_sum(self.known, item)) for item in self.listed("route")) if s]

    # The whole.

    def presence(self) -> None:
        lost, end = self.known.lost, self.end
        if not self.known.parts and not self.known.links:
            lost |= {"loads"}
        if "points" not in self.sections and "points" not in lost:
            self.report.error("read.no_points", end, hint="hint.sections")
        if "members" not in self.sections and "links" not in self.sections and not lost & {"members", "links"}:
            self.report.error("read.no_members", end, hint="hint.sections")
        said = self.sections.get("loads", (None, None))[1]
        if "loads" not in lost and (said is None or said == Items([], said.place) or isinstance(said, Scalar) and not said.text.strip()):
            self.report.warning("read.no_loads", end)

    def assumptions(self, connections: list[Connection], loads: list[Load]) -> None:
        known = self.known
        if known.bare and "units" not in self.sections:
            known.assume("units", length=known.shown[LENGTH].symbol, force=known.shown[FORCE].symbol)
        if any(c.kind == "pin" for c in connections):
            known.assume("pin_smooth")
        if known.parts:
            known.assume("members_rigid")
        heavy = {one.part for one in loads if one.kind == "weight" and one.part and one.written.startswith("weight")}
        light = tuple(name for name in known.parts if name not in heavy)
        if light:
            known.assume("weights_neglected", **({"parts": light} if heavy else {}))
        if any(c.kind == "roller" and GROUND in c.parts for c in connections):
            known.assume("roller_both_ways")
