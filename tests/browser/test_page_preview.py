"""A page of a handout as the desk shows it before it is written: in lines, so that no size of a window breaks one."""

import base64
import io
from pathlib import Path

import pytest
from PIL import Image

import unpin
from unpin.render import pdf, typeset

EXAMPLE = Path(__file__).parents[2] / "examples" / "market-awning.yaml"
RISE = 6.4
LINE = (f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 60" width="400pt" height="60pt">'
        f'<path d="M10 20L390 {20 + RISE}" stroke="#111" stroke-width="0.8"/></svg>')
SOURCE = '#set page(width: 460.3pt, height: 90pt, margin: 13.37pt)\n#image("line.svg", width: 411.3pt)\n'


def ripple(chromium, data, kind, scale, wide):
    """How far, in dots of the screen, the middle of a long slanted line that is shown `wide` pixels wide leaves the straight."""
    context = chromium.new_context(viewport={"width": 1000, "height": 300}, device_scale_factor=scale)
    page = context.new_page()
    page.set_content(f'<body style="margin:0"><img style="width:{wide}px" src="data:{kind};base64,{base64.b64encode(data).decode()}">')
    page.wait_for_function("document.images[0].complete && document.images[0].naturalWidth")
    shot = Image.open(io.BytesIO(page.locator("img").screenshot())).convert("L")
    context.close()
    k = shot.width / 460.3
    off = []
    for x in range(int(40 * k), int(400 * k)):
        at = 13.37 + (20 + RISE * ((x + 0.5) / k - 13.37 - 10 * 411.3 / 400) / (380 * 411.3 / 400)) * 411.3 / 400
        rows = range(int(at * k) - 5, int(at * k) + 6)
        ink = [255 - shot.getpixel((x, y)) for y in rows]
        off.append(sum(i * (y + 0.5) for i, y in zip(ink, rows)) / sum(ink) - at * k)
    level = [sum(off[n:n + 9]) / 9 for n in range(len(off) - 8)]
    return max(level) - min(level)


@pytest.mark.parametrize("scale", [1, 2])
@pytest.mark.parametrize("wide", [613.73, 640, 828, 863.98])
def test_a_long_thin_line_of_a_previewed_page_has_no_step(chromium, scale, wide):
    shown = typeset.in_lines(SOURCE, {"line.svg": LINE}, {"line.svg": LINE})[0]

    assert ripple(chromium, shown, "image/svg+xml", scale, wide) < 0.35


def test_dots_of_a_page_do_have_one_so_the_measure_sees_it(chromium):
    dots = typeset.compile_document(SOURCE, {"line.svg": LINE}, "png", 110)

    assert max(ripple(chromium, dots, "image/png", 1, wide) for wide in (613.73, 640, 828, 863.98)) > 0.35


def test_a_previewed_page_looks_like_the_page_of_dots_letters_and_all(chromium):
    lesson = unpin.explain(unpin.solve(unpin.load(EXAMPLE)))
    shown = pdf.in_lines(lesson)[0]
    dots = typeset.compile_document(*pdf.document(lesson), "png", 96)
    context = chromium.new_context(viewport={"width": 900, "height": 1300})
    page = context.new_page()
    page.set_content(f'<body style="margin:0"><img style="width:794px" src="data:image/svg+xml;base64,{base64.b64encode(shown).decode()}">')
    page.wait_for_function("document.images[0].complete && document.images[0].naturalWidth")
    page.wait_for_timeout(500)
    seen = Image.open(io.BytesIO(page.locator("img").screenshot())).convert("L")
    context.close()
    wanted = Image.open(io.BytesIO(dots)).convert("L").resize(seen.size)

    # By squares of 12 dots: how dark each is; another typeface in the figure would leave whole words elsewhere.
    small = (seen.width // 12, seen.height // 12)
    pairs = zip(seen.resize(small, Image.Resampling.BOX).tobytes(), wanted.resize(small, Image.Resampling.BOX).tobytes())
    assert max(abs(a - b) for a, b in pairs) < 60
    assert b"@font-face" not in shown and b"image/png" not in shown
    assert b"@font-face" in base64.b64decode(shown.partition(b"image/svg+xml;base64,")[2].partition(b'"')[0])
