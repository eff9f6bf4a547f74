"""Pictures of every kind that a camera, a scanner or a stranger makes: laid beneath, or refused at once, and never a fall."""

import io
import random
import struct
import zlib

import pytest

from unpin.model.beneath import Lay
from unpin.pictures import PNG, Unfit, picture

PIL = pytest.importorskip("PIL.Image", reason="pictures for these tests are made with Pillow")


def made(mode, form, **more):
    out = io.BytesIO()
    PIL.new(mode, (100, 80)).save(out, form, **more)
    return out.getvalue()


def piece(kind, data):
    """A piece of a PNG (ISO/IEC 15948, 5.3)."""
    return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))


def png(wide, high, dots, *pieces):
    """A PNG of eight bits a colour (ISO/IEC 15948, 11.2.2)."""
    return PNG + piece(b"IHDR", struct.pack(">IIBBBBB", wide, high, 8, 2, 0, 0, 0)) + b"".join(pieces) + piece(b"IDAT", zlib.compress(dots)) + piece(b"IEND", b"")


def zeros(megabytes):
    """So many megabytes of zeros, packed without ever being unpacked here."""
    packer = zlib.compressobj(9)
    return b"".join(packer.compress(bytes(2**20)) for _ in range(megabytes)) + packer.flush()


KINDS = {"sixteen bits": made("I;16", "PNG"), "a palette": made("P", "PNG"), "one bit": made("1", "PNG"), "grey and clear": made("LA", "PNG"), "four inks": made("CMYK", "JPEG"),
         "grey": made("L", "JPEG"), "coming in steps": made("RGB", "JPEG", progressive=True),
         "moving": made("RGB", "PNG", save_all=True, append_images=[PIL.new("RGB", (100, 80), (9, 9, 9))] * 3)}


@pytest.mark.parametrize("kind", KINDS)
def test_a_picture_of_any_kind_is_laid_beneath_as_one_still_picture(kind):
    found = picture(KINDS[kind], Lay(1.0, 0.0, 0.0, 0.0))

    assert found.size == (100, 80) and found.source.startswith("data:image/png;base64,")


@pytest.mark.parametrize(("wide", "high"), [(1, 60_000_000), (60_000_000, 1), (2, 5_000_000)])
def test_a_strip_of_dots_is_refused_before_it_is_decoded(wide, high):
    with pytest.raises(Unfit) as refused:
        picture(png(wide, high, bytes(1000)), Lay(1.0, 0.0, 0.0, 0.0))

    assert refused.value.code == "long"


@pytest.mark.parametrize("kind", [b"iCCP", b"zTXt", b"iTXt"])
def test_what_is_packed_beside_the_dots_is_never_unpacked(kind):
    """256 MB of zeros in some hundred thousand bytes; the memory of this process does not grow by them."""
    resource = pytest.importorskip("resource")
    bomb = png(10, 10, bytes(310), piece(kind, b"a\0\0" + zeros(256)))
    picture(png(10, 10, bytes(310)), Lay(1.0, 0.0, 0.0, 0.0))
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss

    assert picture(bomb, Lay(1.0, 0.0, 0.0, 0.0)).size == (10, 10)
    assert resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before < 100_000  # kB


def test_a_damaged_picture_is_shown_or_refused():
    chance = random.Random(4)
    for data in KINDS.values():
        for _ in range(12):
            broken = bytearray(data[: chance.choice((len(data), len(data) // 2))])
            for _ in range(chance.randrange(6)):
                broken[chance.randrange(8 if data.startswith(PNG) else 3, len(broken))] = chance.randrange(256)
            try:
                assert picture(bytes(broken), Lay(1.0, 0.0, 0.0, 0.0)).source
            except Unfit as refused:
                assert refused.code in ("kind", "dots", "long")
