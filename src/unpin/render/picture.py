"""A figure of a lesson as a picture: SVG for a page, for a file of its own or for the typesetter, PNG, and PDF."""

from __future__ import annotations

import re
from dataclasses import replace

from unpin.draw.scene import Scene
from unpin.lesson.nodes import Drawing
from unpin.render.maths.sentence import said

SCREEN = 1.3
"""How much larger a figure is on a page than on paper."""

_EDGE = 4.0
"""Paper round a picture in dots, pt."""

_INKS = ("line", "body", "soft", "paper", "force", "pair1", "pair2", "pair3", "pair4", "pair5", "pair6")


def svg(drawing: Drawing, fonts: str = "embed", language: str = "en", colours: str = "reader") -> str:
    """`fonts` embed: stands alone; name: for the typesetter; page: inside a page that has the typefaces and the inks. `colours` of a picture that
    stands alone: those of whoever looks, or light or dark for all, dark on ground of its own."""
    from unpin.draw.figure import draw

    text = _written(draw(drawing.figure), drawing, fonts, language)
    return _in_colours(text, colours) if fonts == "embed" and colours != "reader" else text


_DARK = "@media screen and (prefers-color-scheme:dark){svg{"
"""How the dark set of inks begins in a picture that stands alone (`draw.svg`)."""


def _in_colours(text: str, colours: str) -> str:
    """A picture that stands alone, in one set of its two."""
    assert _DARK in text
    if colours == "dark":
        return text.replace(_DARK, "@media all{svg{background:var(--paper);", 1)
    return text.replace(_DARK, "@media not all{svg{", 1)


def placed(drawing: Drawing, scale: float = 0.0, language: str = "en") -> tuple[str, Scene]:
    """The picture for a page on which one draws, at a `scale` of so many pt per metre (0: its own), and the scene with its measures."""
    from unpin.draw.figure import draw

    scene = draw(drawing.figure, scale)
    return _written(scene, drawing, "page", language), scene


def _written(scene: Scene, drawing: Drawing, fonts: str, language: str) -> str:
    from unpin.draw.svg import write

    scene = _named(scene, drawing, language)
    if fonts == "page":
        text = write(scene, fonts="name", theme={ink: f"var(--{ink})" for ink in _INKS})
        # The name of an inline drawing comes from its title and description by id, which must be unique on the page.
        named = f'aria-labelledby="{drawing.id}-name" aria-describedby="{drawing.id}-told"'
        text = _larger(text.replace("<svg ", f"<svg {named} ", 1))
        text = text.replace("<title>", f'<title id="{drawing.id}-name">', 1)
        return text.replace("<desc>", f'<desc id="{drawing.id}-told">', 1)
    return write(scene, fonts="embed" if fonts == "embed" else "name")


def _named(scene: Scene, drawing: Drawing, language: str) -> Scene:
    """The scene with its title and its description, for those who do not see it."""
    return replace(scene, title=said(drawing.caption, language).rstrip("."), description=description(drawing, language))


def _larger(text: str) -> str:
    """Screens are read from farther away than paper: the size in the first line is multiplied."""
    return re.sub(r'\b(width|height)="([0-9.]+)pt"', lambda m: f'{m[1]}="{float(m[2]) * SCREEN:.4g}pt"', text, count=2)


def description(drawing: Drawing, language: str = "en") -> str:
    """The figure in words."""
    return " ".join(said(t, language, capital=True) for t in drawing.description)


def png(drawing: Drawing, language: str = "en", ppi: float = 300, colours: str = "reader") -> bytes:
    """The same picture in dots, on white paper, or with light lines on dark ground."""
    from unpin.draw.figure import draw
    from unpin.draw.svg import write
    from unpin.draw.theme import INKS_DARK, INKS_LIGHT
    from unpin.render.typeset import compile_document

    inks = INKS_DARK if colours == "dark" else INKS_LIGHT
    scene = draw(drawing.figure)
    text = write(_named(scene, drawing, language), fonts="name", theme=inks if colours == "dark" else None)
    return compile_document(*_in_dots(text, scene.width, scene.height, 72 / ppi, inks["paper"]), "png", ppi)


def _in_dots(text: str, width: float, height: float, dot: float, paper: str) -> tuple[str, dict[str, str]]:
    """The document that sets a picture of `width` by `height` pt in dots of `dot` pt, and its pictures. The typesetter draws a picture in whole dots
    first, one more where there is a remainder, and fits it to its place by leaving dots out, which breaks long lines: so the picture
    and its place both measure whole dots, less a hundredth that no rounding may carry over."""
    edge, across, down = (max(1, round(length / dot)) for length in (_EDGE, width, height))
    text = re.sub(r' width="[^"]*" height="[^"]*"', f' width="{across}" height="{down - 0.01}" preserveAspectRatio="none"', text, count=1)
    return (f'#set page(width: auto, height: auto, margin: {edge * dot:.6f}pt, fill: rgb("{paper}"))\n'
            f'#image("figure.svg", width: {(across - 0.01) * dot:.6f}pt, height: {(down - 0.03) * dot:.6f}pt, fit: "stretch")\n'), {"figure.svg": text}


def made(drawing: Drawing, ending: str, language: str = "en", colours: str = "reader") -> bytes:
    """The picture as a file that ends in `.svg` or `.png`."""
    return svg(drawing, language=language, colours=colours).encode() if ending == ".svg" else png(drawing, language, colours=colours)


def pdf(drawing: Drawing, language: str = "en") -> bytes:
    """The same picture in lines, cut to its size, for a document of another typesetter."""
    from unpin.render.maths.typeset import quoted
    from unpin.render.typeset import compile_document

    told = quoted(description(drawing, language))
    body = (f"#set document(title: {quoted(said(drawing.caption, language, capital=True))})\n#set text(lang: {quoted(language)})\n"
            f'#set page(width: auto, height: auto, margin: 1pt, fill: none)\n#image("figure.svg", alt: {told})\n')
    return compile_document(body, {"figure.svg": svg(drawing, "name", language)}, "pdf")
