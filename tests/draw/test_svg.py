"""The written SVG: well formed, escaped, rounded, the same each time, plain where a typesetter needs it plain."""

import xml.etree.ElementTree as ET

from frames import LETTERING, awning

from unpin.draw import label as labels
from unpin.draw import svg
from unpin.draw.figure import draw, free_body_figure, problem_figure
from unpin.draw.scene import Arrow, Group, Image, Scene, Tag, Text
from unpin.statics.assemble import assemble
from unpin.statics.isolate import isolate

NS = "{http://www.w3.org/2000/svg}"


def drawing(**options):
    return svg.write(draw(problem_figure(assemble(awning()), LETTERING)), **options)


def test_a_standalone_drawing_holds_its_typeface_and_a_dark_set():
    text = drawing()

    assert "font/woff2;base64," in text and "prefers-color-scheme:dark" in text
    assert ET.fromstring(text).get("role") == "graphics-document"


def test_the_named_form_has_no_style_no_variables_and_no_markers():
    text = drawing(fonts="name")

    assert not any(word in text for word in ("<style", "var(", "marker", 'class=""'))


def test_the_same_scene_gives_the_same_bytes():
    assert drawing(fonts="name") == drawing(fonts="name")


def test_text_is_escaped_and_numbers_are_short():
    label = labels.upright('a<b & "c"')
    scene = Scene((0, 0), 10.123456, 20, (Text((1 / 3, -0.001), label, size=9),), title="x < y", description="5 & 6")
    text = svg.write(scene, fonts="name")

    assert "".join(ET.fromstring(text).itertext()).count('a<b & "c"') == 1
    assert 'width="10.12pt"' in text and "-0 " not in text and '"-0"' not in text
    assert ET.fromstring(text).find(f"{NS}title").text == "x < y"


def test_every_arrow_has_a_spoken_name_and_the_id_of_its_action():
    structure = assemble(awning())
    body = isolate(structure, ["arm"])
    root = ET.fromstring(svg.write(draw(free_body_figure(body, structure, LETTERING)), fonts="name"))
    groups = [g for g in root.iter(f"{NS}g") if g.get("data-action")]

    assert [g.get("data-action") for g in groups] == [a.id for a in body.actions]
    assert all(g.get("role") == "graphics-symbol" and g.get("aria-label") for g in groups)


def test_the_two_halves_of_a_pair_have_the_same_mark_and_different_pairs_different_ones():
    def tail(n):
        text = svg.write(
            Scene((0, 0), 9, 9, (Group((Arrow(((0, 0), (40, 0)), "force", "a", tail=n),), "action", "a"),)), fonts="name"
        )
        return text[text.index('class="tail"') :]

    assert tail(1) == tail(1)
    assert len({tail(n) for n in range(1, 13)}) == 12


def test_a_theme_replaces_inks():
    assert "#123456" in drawing(fonts="name", theme={"line": "#123456"})


def test_numbers_lose_zeros_and_the_sign_of_nothing():
    assert [svg.number(v) for v in (1.0, 1.5, -0.001, 2.346, -3)] == ["1", "1.5", "0", "2.35", "-3"]


def test_a_tag_can_be_pointed_at_and_an_image_keeps_its_box():
    scene = Scene((0, 0), 50, 50, (Tag((1, 2, 11, 22), owner="arm"), Image((0, 0, 5, 6), "data:image/png;base64,AA==", (5, 6), (1, 0, 0, 1, 0, 0))))
    root = ET.fromstring(svg.write(scene, fonts="name"))

    assert root.find(f"{NS}rect").get("data-owner") == "arm" and root.find(f"{NS}rect").get("height") == "20"
    assert root.find(f"{NS}image").get("width") == "5"
