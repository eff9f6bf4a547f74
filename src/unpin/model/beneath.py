"""A picture that lies beneath the figure of a problem: a photograph or a scan that was traced, where it is to be published too."""

from __future__ import annotations

from unpin.base.record import record

Spot = tuple[float, float]


@record
class Lay:
    """Where a pixel (u to the right, v down) lies, in metres: X = a u + b v + x, Y = b u - a v + y. One scale, one tilt, no reflection."""

    a: float
    b: float
    x: float
    y: float

    def at(self, pixel: Spot) -> Spot:
        u, v = pixel
        return self.a * u + self.b * v + self.x, self.b * u - self.a * v + self.y


def laid(pixels: tuple[Spot, Spot], metres: tuple[Spot, Spot]) -> Lay:
    """Size, tilt and place of a picture from two marked pixels whose coordinates are known. ValueError when two are one."""
    (u, v), (x, y) = pixels[0], metres[0]
    du, dv, dx, dy = pixels[1][0] - u, pixels[1][1] - v, metres[1][0] - x, metres[1][1] - y
    long = du * du + dv * dv
    if not long or not dx * dx + dy * dy:
        raise ValueError
    a, b = (dx * du - dy * dv) / long, (dx * dv + dy * du) / long
    return Lay(a, b, x - a * u - b * v, y - b * u + a * v)


@record
class Beneath:
    """`source`: the picture as a data address; `size`: its pixels, as it is looked at; `faded`: how much of it is left, 0 to 1."""

    source: str
    size: tuple[int, int]
    lay: Lay
    faded: float = 0.4
