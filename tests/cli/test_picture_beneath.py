"""A photograph laid under the figure of the problem: only where asked, upright, at its place, and with nothing hidden in it."""

import base64
import io
import re
import struct
import xml.etree.ElementTree as ET

import pikepdf
import pytest

from unpin import cli, pictures
from unpin.model.beneath import laid

PIL = pytest.importorskip("PIL.Image", reason="pictures for these tests are made with Pillow")
SVG = "{http://www.w3.org/2000/svg}"
MARKS = ("--mark", "O=60,380", "--mark", "A=60,100")


def photograph(path, form="png", size=(300, 400), turn=1, **more):
    """Red in its upper left corner, grey elsewhere."""
    image = PIL.new("RGB", size, (120, 120, 120))
    image.paste((255, 0, 0), (0, 0, 40, 40))
    if form == "jpeg":
        exif = PIL.Exif()
        exif[0x0112], exif[0x010E] = turn, "a place that is nobody's business"
        more["exif"] = exif
    image.save(path, form, **more)
    return path


def picture_in(text):
    """The image element of an SVG, and the picture it holds."""
    found = ET.fromstring(text).findall(f".//{SVG}image")
    assert len(found) == 1
    return found[0], PIL.open(io.BytesIO(base64.b64decode(found[0].get("href").partition(",")[2])))


def test_marked_pixels_lie_on_their_points(tmp_path):
    file = photograph(tmp_path / "yard.png")

    assert cli.main(["draw", "market-awning", "--beneath", str(file), *MARKS, "-o", str(tmp_path / "yard.svg")]) == 0

    image, _ = picture_in((tmp_path / "yard.svg").read_text())
    a, b, c, d, e, f = map(float, re.findall(r"-?[\d.]+(?:e-?\d+)?", image.get("transform")))
    at_a, at_o = (a * 60 + c * 100 + e, b * 60 + d * 100 + f), (a * 60 + c * 380 + e, b * 60 + d * 380 + f)
    # A stands 2.8 m above O (examples/market-awning.yaml), and the figure is drawn with O at its origin.
    assert at_o == pytest.approx((0, 0), abs=0.02)
    assert at_a[0] == pytest.approx(0, abs=0.02) and at_a[1] / 2.8 == pytest.approx(a * -100, rel=1e-3)
    assert (a, b) == pytest.approx((d, -c)), "one scale, no reflection"


def test_a_tilted_picture_is_turned_upright():
    lay = laid(((0, 0), (30, 40)), ((1, 1), (1, 0)))

    assert lay.at((0, 0)) == pytest.approx((1, 1)) and lay.at((30, 40)) == pytest.approx((1, 0))
    assert lay.a**2 + lay.b**2 == pytest.approx((1 / 50) ** 2)


def test_nothing_is_published_of_a_picture_that_was_not_asked_for(tmp_path):
    assert cli.main(["draw", "market-awning", "-o", str(tmp_path / "bare.svg")]) == 0

    assert "<image" not in (tmp_path / "bare.svg").read_text()


def test_only_the_dots_of_a_photograph_are_published(tmp_path):
    file = photograph(tmp_path / "yard.jpg", "jpeg")

    assert b"nobody's business" in file.read_bytes()
    assert cli.main(["draw", "market-awning", "--beneath", str(file), *MARKS, "-o", str(tmp_path / "yard.svg")]) == 0

    _, shown = picture_in((tmp_path / "yard.svg").read_text())
    assert shown.format == "PNG" and not shown.info.get("exif") and not shown.getexif() and "text" not in shown.info


def test_a_photograph_taken_with_the_camera_on_its_side_stands_upright(tmp_path):
    # Orientation 6: the first row of dots is the right side of what is seen (Exif 2.32, tag 0112).
    file = photograph(tmp_path / "side.jpg", "jpeg", turn=6)

    assert cli.main(["draw", "market-awning", "--beneath", str(file), *MARKS, "-o", str(tmp_path / "yard.svg")]) == 0

    image, shown = picture_in((tmp_path / "yard.svg").read_text())
    assert (image.get("width"), image.get("height")) == ("400", "300") and shown.size == (400, 300)
    red = shown.convert("RGB").getpixel((390, 10))
    assert red[0] > 200 and red[1] < 60


def test_every_form_of_handout_can_have_it(tmp_path):
    file = photograph(tmp_path / "yard.png")

    for ending in ("html", "md", "pdf"):
        assert cli.main(["handout", "market-awning", "--beneath", str(file), *MARKS, "-o", str(tmp_path / f"yard.{ending}")]) == 0

    assert (tmp_path / "yard.html").read_text().count("data:image/png") == 1
    assert "data:image/png" in (tmp_path / "yard-figures" / "figure-1.svg").read_text()
    with pikepdf.open(tmp_path / "yard.pdf") as document:
        assert [(stream.Width, stream.Height) for stream in document.objects if isinstance(stream, pikepdf.Stream) and stream.get("/Subtype") == "/Image"] == [(300, 400)]


@pytest.mark.parametrize("data", [b"", b"GIF89a", b"\x89PNG\r\n\x1a\n", b"\xff\xd8\xff\xe0", b"<svg onload='x'/>", b"\xff\xd8\xff" + b"\xff" * 50])
def test_what_is_no_picture_is_refused(tmp_path, capsys, data):
    (tmp_path / "yard.png").write_bytes(data)

    assert cli.main(["draw", "market-awning", "--beneath", str(tmp_path / "yard.png"), *MARKS, "-o", str(tmp_path / "x.svg")]) == cli.MISUSE

    assert "no PNG or JPEG" in capsys.readouterr().err and not (tmp_path / "x.svg").exists()


def test_few_bytes_that_would_be_very_many_dots_are_refused(tmp_path, capsys):
    file = tmp_path / "huge.png"
    # Its head alone (ISO/IEC 15948, 11.2.2): it is refused before anything is decoded.
    file.write_bytes(pictures.PNG + struct.pack(">I4sII", 13, b"IHDR", 9000, 9000) + bytes(9))

    assert cli.main(["draw", "market-awning", "--beneath", str(file), *MARKS, "-o", str(tmp_path / "x.svg")]) == cli.MISUSE
    assert "too many dots" in capsys.readouterr().err


@pytest.mark.parametrize(("marks", "word"), [((), "two marks"), (("--mark", "O=1,2"), "two marks"), (("--mark", "O=1,2", "--mark", "O=3,4"), "one place"),
                                             (("--mark", "O=1,2", "--mark", "A=1,2"), "one place"), (("--mark", "O=1,2", "--mark", "Q=3,4"), "no point")])
def test_marks_that_set_no_size_are_refused_with_the_reason(tmp_path, capsys, marks, word):
    file = photograph(tmp_path / "yard.png")

    assert cli.main(["draw", "market-awning", "--beneath", str(file), *marks, "-o", str(tmp_path / "x.svg")]) == cli.MISUSE
    assert word in capsys.readouterr().err


def test_a_picture_lies_under_the_problem_only(tmp_path, capsys):
    file = photograph(tmp_path / "yard.png")

    assert cli.main(["draw", "market-awning", "--which", "apart", "--beneath", str(file), *MARKS, "-o", str(tmp_path / "x.svg")]) == cli.MISUSE


def test_the_size_that_a_sender_names_is_checked(tmp_path):
    data = photograph(tmp_path / "yard.png").read_bytes()

    with pytest.raises(pictures.Unfit):
        pictures.picture(data, laid(((0, 0), (1, 1)), ((0, 0), (1, 1))), (400, 300))


@pytest.mark.parametrize("said", ["A", "A=1", "A=1,x", "A=1,nan", "=1,2"])
def test_a_mark_that_is_none_is_told_how_one_is_written(capsys, said):
    with pytest.raises(SystemExit):
        cli.main(["draw", "market-awning", "--beneath", "yard.png", "--mark", said, "-o", "x.svg"])

    assert f"{said} is no mark; give a point and a pixel, as A=120,340" in capsys.readouterr().err


@pytest.mark.parametrize("command", ["draw", "handout"])
def test_marks_without_a_picture_are_told_and_nothing_is_written(tmp_path, capsys, command):
    out = tmp_path / "x.svg" if command == "draw" else tmp_path / "x.html"

    assert cli.main([command, "market-awning", *MARKS, "-o", str(out)]) == cli.MISUSE
    assert "--beneath" in capsys.readouterr().err and not out.exists()
