"""A picture under a figure that keeps the places of the structure."""

from __future__ import annotations

from dataclasses import replace

from unpin.draw.geometry import union
from unpin.draw.scene import Image, Scene
from unpin.model.beneath import Beneath


def under(scene: Scene, picture: Beneath) -> Scene:
    """The scene with the whole picture behind it; as it is where its pieces are moved apart, for then no place fits."""
    if not scene.scale:
        return scene
    k, lay = scene.scale, picture.lay
    wide, high = picture.size
    corners = [lay.at(c) for c in ((0, 0), (wide, 0), (0, high), (wide, high))]
    xs, ys = [k * x for x, _ in corners], [-k * y for _, y in corners]
    box = (min(xs), min(ys), max(xs), max(ys))
    matrix = (k * lay.a, -k * lay.b, k * lay.b, k * lay.a, k * lay.x, -k * lay.y)
    left, top, right, bottom = union([box, (*scene.origin, scene.origin[0] + scene.width, scene.origin[1] + scene.height)])
    marks = (Image(box, picture.source, picture.size, matrix, picture.faded), *scene.marks)
    return replace(scene, origin=(left, top), width=right - left, height=bottom - top, marks=marks)
