"""The only place of the room that writes angle brackets: a scene as SVG text.

`fonts="embed"`: a file that stands alone, with the typeface inside, custom properties for the inks and a dark set.
`fonts="name"`: plain attributes and the names of the typefaces, for a page or a typesetter that has them.
"""

from __future__ import annotations

import base64
from collections.abc import Mapping
from html import escape
from typing import Literal

from unpin.draw import fonts as typefaces
from unpin.draw import label as lettering
from unpin.draw.geometry import Spot, apart, plus, square, unit
from unpin.draw.label import SUB_DROP, SUB_SIZE
from unpin.draw.scene import Arrow, Group, Image, Mark, Path, Scene, Tag, Text, heads_of, leaves
from unpin.draw.theme import INKS_DARK, INKS_LIGHT, LOOKS, PAIRS, TEXT_INK, Look


def write(scene: Scene, *, fonts: Literal["embed", "name"] = "embed", theme: Mapping[str, str] | None = None) -> str:
    """The scene as SVG, one mark a line. `theme` replaces inks by name. Numbers have at most two decimals, so that the
    same scene gives the same bytes."""
    pen = _Pen(alone=fonts == "embed", inks={**INKS_LIGHT, **(theme or {})}, themed=theme is not None)
    x, y = scene.origin
    lines = [
        pen.open(
            "svg",
            {
                "xmlns": "http://www.w3.org/2000/svg",
                "viewBox": f"{number(x)} {number(y)} {number(scene.width)} {number(scene.height)}",
                "width": f"{number(scene.width)}pt",
                "height": f"{number(scene.height)}pt",
                "role": "graphics-document",
                "font-family": f"{typefaces.TEXT_FAMILY}, {typefaces.MATH_FAMILY}, serif",
            },
        )
    ]
    if scene.title:
        lines.append(f"<title>{escape(scene.title)}</title>")
    if scene.description:
        lines.append(f"<desc>{escape(scene.description)}</desc>")
    if pen.alone:
        lines.append(f"<style>{_style(scene, pen)}</style>")
    owners = _owners(scene) if theme is not None else set()
    for mark in scene.marks:
        written = pen.mark(mark)
        if not isinstance(mark, Group) and mark.owner in owners:
            written = [line.replace(" ", f' data-of="{escape(mark.owner, quote=True)}" ', 1) for line in written]
        lines += written
    return "\n".join([*lines, "</svg>"]) + "\n"


def number(value: float) -> str:
    """At most two decimals, no trailing zeros, no minus before zero."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _owners(scene: Scene) -> set[str]:
    """Whose marks a page may want to hide and show together: each arrow, with the angle or slope beside it."""
    groups = [m for m in scene.marks if isinstance(m, Group)]
    return {g.owner for g in groups if g.role in ("action", "load")} | {g.owner for g in groups if g.role == "centre"} - {
        g.owner for g in groups if g.role in ("joint", "support", "body")
    }


def _style(scene: Scene, pen: _Pen) -> str:
    styles = {run.style for m in leaves(scene.marks) if isinstance(m, Text) for run in m.label}
    faces = [("text", "normal", "400")]
    if styles & {"italic", "subitalic"}:
        faces.append(("text-italic", "italic", "400"))
    if "bold" in styles:
        faces.append(("text-bold", "normal", "700"))
    out = [
        f"@font-face{{font-family:'{typefaces.TEXT_FAMILY}';font-style:{slant};font-weight:{weight};"
        f"src:url(data:font/woff2;base64,{base64.b64encode(typefaces.woff2(name)).decode()}) format('woff2')}}"
        for name, slant, weight in faces
    ]
    out.append("svg{" + ";".join(f"--{n}:{c}" for n, c in sorted(pen.inks.items())) + "}")
    if not pen.themed:
        out.append(
            "@media screen and (prefers-color-scheme:dark){svg{"
            + ";".join(f"--{n}:{c}" for n, c in sorted(INKS_DARK.items()))
            + "}}"
        )
    return "".join(out)


class _Pen:
    """Writes marks with the inks of one theme."""

    def __init__(self, alone: bool, inks: Mapping[str, str], themed: bool):
        self.alone, self.inks, self.themed = alone, inks, themed

    def open(self, tag: str, attributes: Mapping[str, str], close: bool = False) -> str:
        body = "".join(f' {k}="{escape(v, quote=True)}"' for k, v in attributes.items() if v != "")
        return f"<{tag}{body}{'/' if close else ''}>"

    def ink(self, name: str) -> str:
        return f"var(--{name},{self.inks[name]})" if self.alone else self.inks[name]

    def inked(self, look: Look, ink: str = "") -> dict[str, str]:
        """Inks as a style where custom properties work, else as attributes."""
        stroke, fill = ink or look.stroke, (ink if ink and look.fill == look.stroke else look.fill)
        plain = {"fill": self.ink(fill) if fill else "none", "stroke": self.ink(stroke) if stroke else ""}
        if self.alone:
            plain = {"style": ";".join(f"{k}:{v}" for k, v in plain.items() if v)}
        if look.width:
            plain["stroke-width"] = number(look.width)
        if look.dash:
            plain["stroke-dasharray"] = look.dash
        if look.rounded:
            plain |= {"stroke-linecap": "round", "stroke-linejoin": "round"}
        return plain

    def mark(self, mark: Mark) -> list[str]:
        return {Path: self.path, Text: self.text, Arrow: self.arrow, Group: self.group, Image: self.image, Tag: self.tag}[
            type(mark)
        ](mark)

    def group(self, group: Group) -> list[str]:
        owner = "data-action" if group.role in ("action", "load") else "data-owner"
        attributes = {"class": group.role, owner: group.owner}
        if group.name:
            attributes |= {"role": "graphics-symbol", "aria-label": group.name}
        return [self.open("g", attributes), *(line for m in group.marks for line in self.mark(m)), "</g>"]

    def path(self, path: Path) -> list[str]:
        look = self.inked(LOOKS[path.role])
        if path.radius:
            ((x, y),) = path.spots
            return [
                self.open(
                    "circle", {"class": path.role, "cx": number(x), "cy": number(y), "r": number(path.radius), **look}, True
                )
            ]
        return [self.open("path", {"class": path.role, "d": _line(path.spots) + ("Z" if path.closed else ""), **look}, True)]

    def text(self, text: Text) -> list[str]:
        above, below = lettering.reach(text.label, text.size)
        wide = lettering.width(text.label, text.size)
        x, y = text.at
        start, base = x - wide / 2, y + (above - below) / 2
        attributes = {
            "class": text.role,
            "x": number(start),
            "y": number(base),
            "font-size": number(text.size),
            "xml:space": "preserve",
        }
        ink = self.ink(TEXT_INK.get(text.role, "line"))
        attributes |= {"style": f"fill:{ink}"} if self.alone else {"fill": ink}
        if text.turn:
            attributes["transform"] = f"rotate({number(-text.turn)} {number(x)} {number(y)})"
        runs, down = [], False
        for run in text.label:
            inner: dict[str, str] = {"font-style": "italic"} if run.style in ("italic", "subitalic") else {}
            if run.style == "bold":
                inner["font-weight"] = "700"
            if run.is_sub:
                inner["font-size"] = number(text.size * SUB_SIZE)
            if run.is_sub != down:
                inner["dy"] = number(text.size * SUB_DROP * (1 if run.is_sub else -1))
                down = run.is_sub
            runs.append(f"{self.open('tspan', inner)}{escape(run.text)}</tspan>")
        lines = [self.open("text", attributes) + "".join(runs) + "</text>"]
        if text.leader:
            lines.insert(0, self.open("path", {"class": "leader", "d": _line(text.leader), **self.inked(LOOKS["leader"])}, True))
        return lines

    def arrow(self, arrow: Arrow) -> list[str]:
        look = LOOKS[arrow.role]
        ink = f"pair{(arrow.tail - 1) % PAIRS + 1}" if arrow.tail else ""
        shaft = self.inked(Look(look.stroke, look.width, "", look.dash), ink)
        lines = [self.open("path", {"class": arrow.role, "d": _line(_shaft(arrow)), **shaft}, True)]
        solid = self.inked(Look("", 0, look.fill or look.stroke), "")
        if ink:
            solid = {"style": f"fill:{self.ink(ink)}"} if self.alone else {"fill": self.ink(ink)}
        lines.append(self.open("path", {"class": "head", "d": "".join(_line(h) + "Z" for h in heads_of(arrow)), **solid}, True))
        if arrow.tail:
            lines.append(self.tail(arrow, ink))
        return lines

    def tail(self, arrow: Arrow, ink: str) -> str:
        """The mark of a pair at the tail: six shapes, filled for the first six pairs, open for the next."""
        at, along = arrow.spots[0], unit((arrow.spots[1][0] - arrow.spots[0][0], arrow.spots[1][1] - arrow.spots[0][1]))
        side, shape = square(along), (arrow.tail - 1) % PAIRS
        fill = "paper" if (arrow.tail - 1) // PAIRS % 2 else ink
        look = self.inked(Look(ink, 1.0, ""), ink) | (
            {"style": f"fill:{self.ink(fill)};stroke:{self.ink(ink)}"}
            if self.alone
            else {"fill": self.ink(fill), "stroke": self.ink(ink)}
        )
        r = 2.0
        if shape == 0:
            return self.open("circle", {"class": "tail", "cx": number(at[0]), "cy": number(at[1]), "r": number(r), **look}, True)

        def corner(a: float, b: float) -> Spot:
            return plus(plus(at, along, a * r), side, b * r)

        bars = {1: [(0, -1.5), (0, 1.5)], 4: [(-0.6, -1.5), (-0.6, 1.5), (0.6, -1.5), (0.6, 1.5)]}
        shapes = {
            2: [(-0.9, -0.9), (0.9, -0.9), (0.9, 0.9), (-0.9, 0.9)],
            3: [(-1.3, 0), (0, -1.1), (1.3, 0), (0, 1.1)],
            5: [(-1.1, -1.2), (1.1, 0), (-1.1, 1.2)],
        }
        if shape in bars:
            ends = [corner(a, b) for a, b in bars[shape]]
            d = "".join(_line(ends[k : k + 2]) for k in range(0, len(ends), 2))
        else:
            d = _line([corner(a, b) for a, b in shapes[shape]]) + "Z"
        return self.open("path", {"class": "tail", "d": d, **look}, True)

    def image(self, image: Image) -> list[str]:
        return [
            self.open(
                "image",
                {
                    "href": image.source,
                    "width": str(image.size[0]),
                    "height": str(image.size[1]),
                    "transform": f"matrix({' '.join(f'{x:.6g}' for x in image.matrix)})",
                    "opacity": number(image.faded),
                },
                True,
            )
        ]

    def tag(self, tag: Tag) -> list[str]:
        left, top, right, bottom = tag.box
        return [
            self.open(
                "rect",
                {
                    "class": tag.role,
                    "data-owner": tag.owner,
                    "x": number(left),
                    "y": number(top),
                    "width": number(right - left),
                    "height": number(bottom - top),
                    "fill": "none",
                    "pointer-events": "all",
                },
                True,
            )
        ]


def _line(spots) -> str:
    return "M" + "L".join(f"{number(x)} {number(y)}" for x, y in spots)


def _shaft(arrow: Arrow) -> tuple[Spot, ...]:
    """The line without what lies under its heads, so that the tips stay sharp."""
    spots = _cut(arrow.spots, arrow.head[0] * 0.8)
    return _cut(spots[::-1], arrow.head[0] * 0.8)[::-1] if arrow.heads == "both" else spots


def _cut(spots: tuple[Spot, ...], by: float) -> tuple[Spot, ...]:
    kept = list(spots)
    while len(kept) > 2 and apart(kept[-2], kept[-1]) < by:
        by -= apart(kept[-2], kept[-1])
        kept.pop()
    kept[-1] = plus(
        kept[-1], unit((kept[-2][0] - kept[-1][0], kept[-2][1] - kept[-1][1])), min(by, 0.9 * apart(kept[-2], kept[-1]))
    )
    return tuple(kept)
