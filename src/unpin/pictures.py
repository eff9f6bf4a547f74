"""A picture that somebody has on disk or sends: checked, set upright, freed of everything but its dots, and laid under a problem.

Only PNG and JPEG are read, and not by us: the typesetter decodes them and gives them back as PNG. So neither the place where a photograph was taken
nor anything else that is hidden in its file is published.
"""

from __future__ import annotations

import base64
from collections.abc import Sequence
from functools import lru_cache
from struct import unpack

from unpin.exact.number import approx
from unpin.model.beneath import Beneath, Lay, Spot, laid
from unpin.model.problem import Problem

LARGEST = 16 * 1024 * 1024
"""Bytes of a picture."""
MOST_DOTS = 60_000_000
"""A picture of few bytes can hold very many dots."""
LONGEST = 40_000
"""Dots along a side: what is longer is no picture of a figure, and a strip of one dot's breadth would be drawn for minutes."""
WIDEST = 1600
"""Dots across the picture that is published, at most."""


class Unfit(ValueError):
    """The picture cannot be used; `code` says why (catalogue `cli.beneath`)."""

    def __init__(self, code: str, **arguments: object):
        self.code, self.arguments = code, arguments
        super().__init__(code)


def picture(data: bytes, lay: Lay, size: tuple[int, int] | None = None, faded: float = 0.4) -> Beneath:
    """The picture to be laid beneath. `lay` speaks of pixels of the upright picture; `size`: how many it has where the sender knows. Unfit
    when it is no PNG or JPEG, or too large."""
    source, found = _upright(data)
    if size is not None and size != found:
        raise Unfit("size")
    return Beneath(source, found, lay, min(1.0, max(0.1, faded)))


def marked(problem: Problem, data: bytes, marks: Sequence[tuple[str, Spot]], faded: float = 0.4) -> Beneath:
    """The same, set by two points of the problem and the pixels at which they are seen. Unfit when the points are not two, or not there."""
    at = {p.name: (approx(p.at[0]), approx(p.at[1])) for p in problem.points}
    missing = [name for name, _ in marks if name not in at]
    if missing:
        raise Unfit("point", name=missing[0], names=", ".join(at))
    if len(marks) != 2:
        raise Unfit("marks", count=len(marks))
    (one, p), (other, q) = marks
    try:
        lay = laid((p, q), (at[one], at[other]))
    except ValueError as same:
        raise Unfit("same", one=one, other=other) from same
    return picture(data, lay, None, faded)


@lru_cache(4)
def _upright(data: bytes) -> tuple[str, tuple[int, int]]:
    """The dots alone, as the data address of a PNG, and the pixels of the picture as one looks at it."""
    if len(data) > LARGEST:
        raise Unfit("large", most=LARGEST // 1024**2)
    wide, high = _pixels(data)
    if not wide or not high:
        raise Unfit("kind")
    if wide * high > MOST_DOTS:
        raise Unfit("dots", most=MOST_DOTS // 1_000_000)
    if max(wide, high) > LONGEST:
        raise Unfit("long", most=LONGEST)
    data = _bare(data)
    from unpin.render.typeset import dots

    kind = "png" if data.startswith(PNG) else "jpg"
    try:
        made = dots(data, kind, min(wide, WIDEST))
        across, down = _pixels(made)
        # A camera held upright notes that its picture is to be turned, which the typesetter does.
        if (wide > high) != (across > down) and wide != high:
            wide, high = high, wide
            made = dots(data, kind, min(wide, WIDEST))
    except ValueError as fault:
        raise Unfit("kind") from fault
    return "data:image/png;base64," + base64.b64encode(made).decode(), (wide, high)


def _bare(data: bytes) -> bytes:
    """A PNG without the pieces that are packed words or a packed colour profile (ISO/IEC 15948, 11.3.3.3 and 11.3.4): unpacked, a
    megabyte of them can fill gigabytes."""
    if not data.startswith(PNG):
        return data
    out, at = [PNG], len(PNG)
    while at + 8 <= len(data):
        end = at + 12 + int.from_bytes(data[at : at + 4], "big")
        if data[at + 4 : at + 8] not in (b"iCCP", b"zTXt", b"iTXt", b"tEXt"):
            out.append(data[at:end])
        at = end
    return b"".join(out)


PNG, JPEG = b"\x89PNG\r\n\x1a\n", b"\xff\xd8\xff"
_FRAMES = {*range(0xC0, 0xD0)} - {0xC4, 0xC8, 0xCC}
"""Markers after which a JPEG tells its size (ISO/IEC 10918-1, table B.1)."""


def _pixels(data: bytes) -> tuple[int, int]:
    """Width and height as the file tells them (PNG: ISO/IEC 15948, 11.2.2; JPEG: ISO/IEC 10918-1, B.2.2); (0, 0) for anything else."""
    if data.startswith(PNG) and data[12:16] == b"IHDR" and len(data) >= 24:
        return unpack(">II", data[16:24])
    at = 2 if data.startswith(JPEG) else len(data)
    while at + 9 < len(data) and data[at] == 0xFF:
        kind, length = data[at + 1], unpack(">H", data[at + 2 : at + 4])[0]
        if kind in _FRAMES:
            high, wide = unpack(">HH", data[at + 5 : at + 9])
            return wide, high
        at += 1 if kind == 0xFF else 2 + length
    return 0, 0
