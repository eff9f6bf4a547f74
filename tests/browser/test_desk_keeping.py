"""Nothing is lost: two windows, another program, a browser that dies."""

from base64 import b64decode

import pytest
from desks import Hand

BEAM = "points: {A: [0, 0], B: [2, 0]}\nmembers: {beam: A B}\nsupports: {A: fixed}\nloads: [5 N at B down]\n"


@pytest.fixture
def beam(hand):
    (hand.folder / "beam.yaml").write_text(BEAM)
    return hand


def other(hand):
    """A second window on the same desk."""
    return Hand(hand.page.context.new_page(), hand.address, hand.folder)


def change(hand, number):
    hand.page.locator('.handle[data-id="load 1"]').focus()
    hand.keys("Enter")
    return hand.over(f"{number} N at B down")


def test_every_change_is_saved_as_it_goes_and_comments_stay(beam):
    (beam.folder / "beam.yaml").write_text("# for Tuesday\n" + BEAM)
    beam.open("beam.yaml")
    change(beam, 9)

    assert beam.saved() == "# for Tuesday\n" + BEAM.replace("5 N", "9 N")


def test_two_windows_never_overwrite_each_other_silently(beam):
    beam.open("beam.yaml")
    second = other(beam).open("beam.yaml")
    # What the second window does, before it has looked again, meets a file that is not the one it began from.
    second.page.route("**/stamp*", lambda r: r.abort())
    change(beam, 9)
    beam.saved()
    change(second, 7)
    second.page.locator("dialog.clash").wait_for(timeout=5000)

    assert "9 N" in (beam.folder / "beam.yaml").read_text()
    shown = second.page.locator("dialog.clash .lines").inner_text()
    assert "9 N" in shown and "7 N" in shown

    second.page.get_by_role("button", name="Keep the text of this window").click()
    assert "7 N" in second.saved()


def test_the_text_that_is_not_chosen_stays_one_undo_away(beam):
    beam.open("beam.yaml")
    beam.page.route("**/stamp*", lambda r: r.abort())
    (beam.folder / "beam.yaml").write_text(BEAM.replace("5 N", "33 N"))
    change(beam, 7)
    beam.page.locator("dialog.clash").wait_for(timeout=5000)
    beam.page.get_by_role("button", name="Take the text on disk").click()
    beam.settle()
    assert "33 N" in beam.text()

    beam.page.focus("#sheet")
    beam.keys("Control+z")
    assert "7 N" in beam.text()


def test_a_change_by_another_program_is_noticed_and_read(beam):
    beam.open("beam.yaml")
    (beam.folder / "beam.yaml").write_text(BEAM.replace("5 N", "44 N"))
    beam.page.wait_for_timeout(2600)
    beam.settle()

    assert "44 N" in beam.text()
    assert "read again" in beam.page.locator("#sentence .notice").inner_text()


def test_what_was_not_saved_when_the_browser_died_is_back(beam):
    beam.open("beam.yaml")
    beam.page.route("**/save", lambda r: r.abort())
    change(beam, 8)
    beam.page.wait_for_timeout(300)
    assert "8 N" not in (beam.folder / "beam.yaml").read_text()
    beam.page.close(run_before_unload=False)

    again = other(beam).open("beam.yaml")
    assert "8 N" in again.text()
    assert "8 N" in again.saved()


def test_undo_has_no_limit(beam):
    beam.open("beam.yaml")
    beam.page.locator('.handle[data-id="point B"]').focus()
    beam.keys("Enter")
    for _ in range(60):
        beam.page.keyboard.press("Shift+ArrowRight")
        beam.page.keyboard.press("Escape")
        beam.settle()
        beam.page.locator('.handle[data-id="point B"]').focus()
        beam.keys("Enter")
    steps = len(beam.state("history")["done"])
    beam.keys(*["Control+z"] * steps)

    assert beam.text() == BEAM
    assert not beam.state("history")["done"]


def scanned(beam, tmp_path_factory):
    """The page of the beam with a picture laid beneath it."""
    picture = tmp_path_factory.mktemp("scan") / "scan.png"
    picture.write_bytes(b64decode("iVBORw0KGgoAAAANSUhEUgAAABAAAAAQCAIAAACQkWg2AAAAGklEQVR4nGP8z0AaYCJR/aiGUQ1DSAMDAwMAKz4BH7zc5q0AAAAASUVORK5CYII="))
    beam.open("beam.yaml")
    beam.page.get_by_role("button", name="Picture beneath").click()
    beam.page.locator(".tracestrip input[type=file]").set_input_files(picture)
    beam.page.locator("#sheet image").wait_for(state="attached")
    return beam.page


def test_a_picture_beneath_the_sheet_takes_its_scale_and_tilt_from_two_points_and_stays_here(beam, tmp_path_factory):
    asked = []
    beam.page.on("request", lambda r: asked.append(r.post_data or ""))
    page = scanned(beam, tmp_path_factory)
    beam.settle()
    box = page.locator("#sheet image").bounding_box()
    low, high = (box["x"], box["y"] + box["height"]), (box["x"] + box["width"], box["y"] + box["height"])
    page.mouse.click(*low)
    page.mouse.click(*high)
    beam.settle()
    fields = page.locator(".tracestrip input:not([type])")
    for k, said in enumerate(("0, 0", "2, 0")):
        fields.nth(k).fill(said)
        fields.nth(k).press("Enter")
    beam.settle()

    now = page.locator("#sheet image").bounding_box()
    a, b = beam.spot(0, 0), beam.spot(2, 0)
    assert (now["x"], now["y"] + now["height"]) == pytest.approx(a, abs=1.5)
    assert now["width"] == pytest.approx(b[0] - a[0], abs=2)
    assert not any("iVBOR" in body for body in asked), "the picture is never sent"

    again = other(beam).open("beam.yaml")
    again.page.locator("#sheet image").wait_for(state="attached", timeout=3000)
    assert "scan" not in "".join(p.name for p in beam.folder.iterdir())


def test_the_picture_beneath_is_told_in_one_sentence_with_blanks(beam, tmp_path_factory):
    page = scanned(beam, tmp_path_factory)
    beam.settle()
    strip, high = page.locator(".tracestrip"), page.locator("#sheet").bounding_box()["height"]
    assert "Press on a place in it" in strip.inner_text()
    box = page.locator("#sheet image").bounding_box()
    for k, told in enumerate(("Mark 1 lies at", "mark 2 at")):
        page.mouse.click(box["x"] + (0.2 + 0.6 * k) * box["width"], box["y"] + box["height"] / 2)
        beam.settle()
        assert told in " ".join(strip.inner_text().split())
    page.get_by_label("How much of it is shown").fill("70")
    fields = page.locator(".tracestrip input:not([type])")
    for k, said in enumerate(("0, 0", "2, 0")):
        fields.nth(k).fill(said)
        fields.nth(k).press("Enter")
    beam.settle()

    assert page.locator("#sheet image").get_attribute("opacity") == "0.7"
    assert page.locator(".trace text.mark").all_text_contents() == ["1", "2"]
    assert page.locator("#sheet").bounding_box()["height"] == high, "the sheet stands still, whatever the sentence says"
    page.get_by_role("button", name="Take the picture away").click()
    beam.settle()
    assert page.locator("#sheet image").count() == 0
    assert " ".join(strip.inner_text().split()).startswith("Lay a photograph or a scan beneath")


def test_the_traced_picture_is_published_only_where_that_is_asked_for(beam, tmp_path_factory):
    page = scanned(beam, tmp_path_factory)
    page.get_by_role("link", name="Hand out").click()
    page.get_by_label("Form", exact=True).select_option(".svg")
    beam.settle()

    page.get_by_role("button", name="Write it beside the problem").click()
    beam.settle()
    bare = (beam.folder / "beam.svg").read_text("utf-8")
    page.get_by_label("with the traced picture").check()
    beam.settle()
    page.get_by_role("button", name="Write it beside the problem").click()
    beam.settle()

    assert "<image" not in bare and (beam.folder / "beam.svg").read_text("utf-8").count("<image") == 1
    page.get_by_label("Form", exact=True).select_option(".html")
    beam.settle()
    frame = page.frame_locator("iframe").locator("figure image")
    frame.wait_for(state="attached")
    page.get_by_label("with the traced picture").uncheck()
    frame.wait_for(state="detached")
