"""A traced picture reaches the desk only where it is to be published, is checked there, and lies under the figure."""

import base64
import io

import pytest

PIL = pytest.importorskip("PIL.Image", reason="pictures for these tests are made with Pillow")
LAY = {"a": 0.01, "b": 0.0, "x": -0.5, "y": 3.5}


def address(form="PNG", size=(30, 40)):
    made = io.BytesIO()
    PIL.new("RGB", size, (90, 120, 90)).save(made, form)
    return f"data:image/{form.lower()};base64,{base64.b64encode(made.getvalue()).decode()}"


def taken(desk, **more):
    return desk.post("/beneath", **{"source": address(), "size": [30, 40], "lay": LAY, "faded": 0.5, **more})


def text_of(desk):
    return (desk.folder / "market-awning.yaml").read_text("utf-8")


@pytest.mark.parametrize("form", ["PNG", "JPEG"])
def test_a_picture_that_was_asked_for_is_in_figure_page_and_document(desk, form):
    key = taken(desk, source=address(form)).json()["key"]

    figure = desk.post("/publish", text=text_of(desk), ending=".svg", beneath=key).content.decode()
    page = desk.get("/teach", name="market-awning.yaml", beneath=key).content.decode()
    paper = desk.post("/publish", text=text_of(desk), ending=".pdf", page=1, beneath=key)

    assert figure.count("<image") == page.count("<image") == 1 and "opacity=\"0.5\"" in figure
    assert paper.content.startswith(b"<svg ") and paper.content.count(b"<image") == 1


def test_without_a_key_nothing_of_it_is_published(desk):
    taken(desk)

    assert "<image" not in desk.post("/publish", text=text_of(desk), ending=".svg").content.decode()


def test_the_same_picture_at_the_same_place_is_kept_once(desk):
    assert taken(desk).json()["key"] == taken(desk).json()["key"] != taken(desk, faded=0.6).json()["key"]


def test_old_pictures_make_room_and_are_then_refused_in_words(desk):
    first = taken(desk).json()["key"]
    for k in range(4):
        taken(desk, faded=0.1 + k / 10)

    reply = desk.post("/publish", text=text_of(desk), ending=".svg", beneath=first)

    assert reply.status_code == 404 and reply.json()["code"] == "picture" and "picture" in reply.json()["message"]


@pytest.mark.parametrize("more", [
    {"source": "data:image/svg+xml;base64,PHN2ZyBvbmxvYWQ9J3gnLz4="}, {"source": "http://example.org/a.png"}, {"source": "data:image/png;base64,%%%"},
    {"source": "data:image/png;base64," + base64.b64encode(b"<script>alert(1)</script>").decode()}, {"size": [40, 30]}, {"size": [30]}, {"size": "30x40"},
    {"lay": {"a": 0, "b": 0, "x": 1, "y": 1}}, {"lay": {**LAY, "x": "inf"}}, {"lay": {"a": 1}}, {"source": 7}], ids=str)
def test_what_is_no_picture_of_that_size_is_refused(desk, more):
    reply = taken(desk, **more)

    assert reply.status_code in (400, 422) and not reply.json()["ok"]
