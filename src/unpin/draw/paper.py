"""The sheet a piece is laid out on: marks by layer, the room they take, and the labels that still want a place."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

from unpin.draw import label as lettering
from unpin.draw.angles import DirectionMark
from unpin.draw.dimensions import Laid
from unpin.draw.geometry import Spot
from unpin.draw.label import Label
from unpin.draw.place import Wanted
from unpin.draw.scene import Group, Mark, Path
from unpin.draw.symbols.symbol import Strip, Symbol


@dataclass
class Paper:
    """`back`, `middle`, `front`: layers of marks; `groups`: actions and loads by id, between them. `room`: strips that labels keep
    out of, `bodies` (`bars` by owner) and `supports` those of them that are such,
    `ghosts` those that count only once the arrows stand. `feet`: dashes that are left out where a label has to stand on them. `later`:
    direction marks to be made when everything else has its place. `reach`: radius in pt of discs and blocks, by name and (discs) by
    place; `blocks`: half the side of a block by its place. `unplaced`: labels left without a free place, `astray`: those nearer to
    something else than to their own, `led`: names and forces of members that need a leader line."""

    scale: float
    back: list[Mark] = field(default_factory=list)
    middle: list[Mark] = field(default_factory=list)
    front: list[Mark] = field(default_factory=list)
    bodies: list[Strip] = field(default_factory=list)
    bars: dict[str, tuple[Strip, ...]] = field(default_factory=dict)
    supports: set[Strip] = field(default_factory=set)
    room: list[Strip] = field(default_factory=list)
    ghosts: list[Strip] = field(default_factory=list)
    feet: list[Path] = field(default_factory=list)
    spots: dict[str, Spot] = field(default_factory=dict)
    wanted: list[Wanted] = field(default_factory=list)
    texts: dict[str, tuple[Label, float, str, str]] = field(default_factory=dict)
    rivals: dict[str, tuple[Strip, ...]] = field(default_factory=dict)
    groups: dict[str, Group] = field(default_factory=dict)
    later: list[Callable[[list[Strip]], DirectionMark | None]] = field(default_factory=list)
    reach: dict[object, float] = field(default_factory=dict)
    blocks: dict[Spot, float] = field(default_factory=dict)
    unplaced: int = 0
    astray: int = 0
    led: int = 0

    def at(self, spot: Spot) -> Spot:
        return (spot[0] * self.scale, -spot[1] * self.scale)

    def want(self, key: str, label: Label, size: float, role: str, owner: str, near, strips, far=tuple, rival="", spare=False) -> None:
        if label:
            self.texts[key] = (label, size, role, owner)
            self.wanted.append(Wanted(key, near, strips, far, rival=rival, spare=spare))

    def symbol(self, symbol: Symbol, layer: list[Mark], role: str, owner: str, name: str = "") -> None:
        layer.append(Group(symbol.marks, role, owner, name))
        self.room += symbol.room

    def take(self, laid: Laid) -> None:
        """Dimensions: behind everything else."""
        self.back[:0] = laid.marks
        self.room += laid.strips
        self.wanted += laid.wanted
        self.texts |= laid.labels

    def direct(self, mark: DirectionMark | None) -> None:
        """An angle or a slope triangle, if there is one."""
        if mark is not None:
            self.back += mark.marks
            self.room += mark.strips
            self.wanted += mark.wanted
            self.texts |= mark.labels

    @property
    def marks(self) -> tuple[Mark, ...]:
        return (*self.back, *self.middle, *self.groups.values(), *self.front)


def measure(label: Label, size: float) -> Spot:
    return (lettering.width(label, size), lettering.height(label, size))


def page_way(v: Spot) -> Spot:
    return (v[0], -v[1])
