"""Pieces of a lesson as plain data for the page: words as HTML that is escaped already, figures as SVG with their measures."""

from __future__ import annotations

from typing import Any

from unpin.lesson.nodes import Boxed, Drawing, Section, Text
from unpin.render import html, picture
from unpin.workbench import lengths


def figure(nodes, scale: float = 0.0, language: str = "en") -> dict[str, Any] | None:
    """The first of some drawings: `svg`; `scale` pt per metre (0: its pieces have been moved apart); `origin` and `size` of what is
    seen, in pt; the `lengths` it shows. A point (x, y) in metres stands at (scale x, -scale y)."""
    drawing = next((n for n in nodes if isinstance(n, Drawing) and n.figure is not None), None)
    if drawing is None:
        return None
    svg, scene = picture.placed(drawing, scale, language)
    return {"svg": svg, "lengths": lengths.shown(scene), "scale": scene.scale, "origin": list(scene.origin), "size": [scene.width, scene.height],
            "told": picture.description(drawing, language)}


def phrase(text: Text, language: str = "en") -> str:
    return html.phrase(text, language)


def answer(box: Boxed, language: str = "en") -> dict[str, Any]:
    from unpin.render.maths import mathml
    from unpin.render.maths.sentence import said
    from unpin.render.maths.text import write

    lines = [{"formula": mathml.write(r.formula), "plain": write(r.formula), "sense": phrase(r.sense, language), "arrow": r.arrow}
             for r in box.results]
    return {"asked": phrase(box.asked, language), "asked_plain": said(box.asked, language), "found": box.found, "lines": lines}


def section(made: Section, language: str = "en") -> str:
    return html.chapter(made, language)


def sentences(made: Section, language: str = "en") -> list[dict[str, str]]:
    """What a chapter says, piece by piece, each with its role."""
    from unpin.lesson.nodes import Paragraph

    return [{"role": n.role if isinstance(n, Paragraph) else "plain", "html": html.content((n,), language)} for n in made.children]
