"""The sheet under the hand: what is seen of it, what a drag moves, and what it leaves alone."""

import pytest

BEAM = "points: {A: [0, 0], B: [2, 0]}\nmembers: {beam: A B}\nsupports: {A: fixed}\nloads: [5 N at B down]\n"
FRAME = "points: {A: [0, 0], B: [2, 0], C: [0, 1.5], U: [6, 3]}\nmembers: {beam: A B}\nlinks: [C-B]\nsupports: {A: pin, C: pin}\nloads: [5 N at B down]\n"


def inside(hand, *places):
    box = hand.page.locator("#sheet").bounding_box()
    spots = [hand.spot(*p) for p in places]
    return all(box["x"] + 8 < x < box["x"] + box["width"] - 8 and box["y"] + 8 < y < box["y"] + box["height"] - 8 for x, y in spots)


def drag(hand, start, by, shift=False):
    mouse = hand.page.mouse
    mouse.move(*start)
    if shift:
        hand.page.keyboard.down("Shift")
    mouse.down()
    mouse.move(start[0] + by[0], start[1] + by[1], steps=6)
    mouse.up()
    if shift:
        hand.page.keyboard.up("Shift")
    return hand.settle()


@pytest.mark.parametrize("text, far", [("points: {A: [0, 0], B: [40, 12]}\n", ((0, 0), (40, 12))), (FRAME, ((0, 0), (6, 3))), ("points: {A: [3, 700]}\n", ((3, 700),))])
def test_the_whole_figure_is_every_point_whether_something_stands_on_it_or_not(hand, text, far):
    (hand.folder / "wide.yaml").write_text(text)
    hand.open("wide.yaml")
    assert inside(hand, *far)

    hand.page.evaluate("async () => (await import('/web/store.js')).store.set({ view: { x: -4000, y: 5000, k: 300 } })")
    hand.settle()
    assert not inside(hand, *far)
    hand.page.focus("#sheet")
    hand.keys("Home")
    assert inside(hand, *far)


def test_a_drag_on_an_arrow_moves_no_point(hand):
    (hand.folder / "beam.yaml").write_text(BEAM)
    hand.open("beam.yaml")
    before = BEAM.partition("loads")[0]
    for _ in range(2):
        arrow = hand.page.locator("#figure [data-action=load1] path").first.bounding_box()
        drag(hand, (arrow["x"] + arrow["width"] / 2, arrow["y"] + 6), (90, -40))
        assert hand.text().startswith(before)
        assert hand.state("touched") == ["load 1"]
        hand.keys("Control+z")
        assert hand.text() == BEAM


def test_a_stroke_that_begins_on_a_touched_bar_begins_a_point_there_and_leaves_the_bar(hand):
    (hand.folder / "beam.yaml").write_text(BEAM)
    hand.open("beam.yaml").press(1, 0)
    assert hand.state("touched") == ["part beam"]
    hand.stroke((1, 0), (1, 0.6))

    assert "A: [0, 0]" in hand.text() and "B: [2, 0]" in hand.text()
    assert "beam: A C B" in hand.text() and "C: [1, 0]" in hand.text()


def test_a_touched_bar_moves_with_its_points_while_shift_is_held(hand):
    (hand.folder / "beam.yaml").write_text(BEAM)
    hand.open("beam.yaml").press(1, 0)
    hand.page.wait_for_timeout(50)
    (x, y), (x2, y2) = hand.spot(1, 0), hand.spot(1.5, 0.5)
    drag(hand, (x, y), (x2 - x, y2 - y), shift=True)

    assert "A: [0.5, 0.5]" in hand.text() and "B: [2.5, 0.5]" in hand.text()


def test_a_press_beside_a_thin_link_touches_the_link_and_sets_no_point(hand):
    (hand.folder / "frame.yaml").write_text(FRAME)
    hand.open("frame.yaml")
    (ax, ay), (bx, by) = hand.spot(0, 1.5), hand.spot(2, 0)
    long = ((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5
    hand.page.mouse.click((ax + bx) / 2 + 9.5 * (by - ay) / long, (ay + by) / 2 - 9.5 * (bx - ax) / long)
    hand.settle()

    assert hand.text() == FRAME
    assert hand.state("touched")[0].startswith("connection ")


def test_what_goes_with_a_point_that_is_taken_away_is_told(hand):
    (hand.folder / "frame.yaml").write_text(FRAME)
    hand.open("frame.yaml").press(2, 0)
    hand.page.focus("#sheet")
    hand.keys("Delete")

    told = " ".join(hand.page.locator("#sentence .notice").inner_text().split())
    assert "beam" in told and "CB" in told and "a load" in told and "Undo" in told
    hand.keys("Control+z")
    assert hand.text() == FRAME


def test_the_way_back_and_the_half_typed_sentence_outlive_a_reload(hand):
    (hand.folder / "beam.yaml").write_text(BEAM)
    hand.open("beam.yaml")
    for number in (6, 7):
        hand.page.locator('.handle[data-id="load 1"]').focus()
        hand.keys("Enter")
        hand.over(f"{number} N at B down")
    hand.saved()
    hand.keys("Escape")
    hand.page.focus("#sheet")
    hand.keys("/")
    hand.page.keyboard.type("9 N at A")
    hand.settle()
    hand.page.reload()
    hand.page.wait_for_selector("#sheet")
    hand.settle()

    assert hand.page.input_value("#line") == "9 N at A"
    hand.page.fill("#line", "")
    hand.settle().page.focus("#sheet")
    hand.keys("Control+z")
    assert "6 N" in hand.text()
    hand.keys("Control+z")
    assert hand.text() == BEAM


def test_steps_that_led_to_another_text_are_not_taken_back(hand):
    (hand.folder / "beam.yaml").write_text(BEAM)
    hand.open("beam.yaml")
    hand.page.locator('.handle[data-id="load 1"]').focus()
    hand.keys("Enter")
    hand.over("7 N at B down")
    hand.saved()
    hand.page.goto("about:blank")
    (hand.folder / "beam.yaml").write_text(BEAM.replace("5 N", "800 N"))
    hand.open("beam.yaml")

    assert not hand.state("history")["done"] and "800 N" in hand.text()


def test_where_a_point_would_land_is_written_beside_the_pointer_until_it_is_pressed(hand):
    (hand.folder / "beam.yaml").write_text(BEAM)
    hand.open("beam.yaml")
    hand.page.mouse.move(*hand.spot(1.002, 0.501))
    hand.settle()
    assert hand.page.locator(".aim text").inner_html().replace("<!---->", "").replace("<!--?lit$", "").find("1, 0.5") >= 0
    hand.keys("Escape")
    assert hand.page.locator(".aim text").count() == 0


def test_a_load_moves_with_its_body(hand):
    (hand.folder / "loose.yaml").write_text(BEAM.replace("fixed", "pin"))
    hand.open("loose.yaml")
    hand.page.get_by_role("button", name="Let it move").click()
    hand.settle()
    hand.page.wait_for_timeout(400)
    moved = hand.page.locator("#figure [data-action=load1]").get_attribute("transform")

    assert moved and "translate(" in moved


def test_problems_stand_in_the_order_of_their_titles(hand):
    for name, title in (("a", "Zebra crossing"), ("b", "awning"), ("c", "Boat")):
        (hand.folder / f"{name}.yaml").write_text(f"title: {title}\n{BEAM}")
    hand.page.goto(hand.address)
    hand.page.wait_for_selector(".folder li a")

    assert hand.page.locator(".folder li a").all_inner_texts() == ["awning", "Boat", "Zebra crossing"]


def test_undo_keeps_its_place_whatever_is_touched(hand):
    (hand.folder / "frame.yaml").write_text(FRAME)
    hand.open("frame.yaml")
    undo = hand.page.get_by_role("button", name="Undo", exact=True)
    before = undo.bounding_box()
    hand.press(2, 0)
    assert hand.page.locator(".sayings li").count() > 3
    touched = undo.bounding_box()

    assert (touched["x"], touched["y"]) == (before["x"], before["y"])


def test_a_sheet_on_which_nothing_is_built_yet_is_not_called_wrong(hand):
    hand.empty("new")
    hand.press(0, 0)
    hand.keys("Escape")

    assert hand.page.locator(".says").first.inner_text()
    assert hand.page.locator(".says.fault:not(:empty)").filter(has_text="member").count() == 0


def test_what_is_handed_out_is_said_in_one_sentence(hand):
    (hand.folder / "beam.yaml").write_text(BEAM)
    hand.open("beam.yaml", "hand-out")
    hand.page.get_by_label("How much of it").select_option("short")
    hand.page.get_by_label("Form").select_option(".svg")
    hand.settle()
    assert hand.page.get_by_label("Figure").input_value() == "problem"
    hand.page.get_by_label("Form").select_option(".md")
    hand.settle()

    assert hand.page.get_by_label("How much of it").input_value() == "short"


def test_a_long_reason_is_told_beside_the_whole_figure(hand):
    (hand.folder / "loose.yaml").write_text("points: {A: [0, 3], B: [2, 3], C: [0, 0]}\nmembers: {beam: A B, post: A C}\nsupports: {C: pin}\nloads: [5 N at B down]\n")
    hand.open("loose.yaml")
    before = hand.page.locator("#sheet").bounding_box()["height"]
    hand.page.locator(".why summary").click()
    hand.settle()
    hand.page.wait_for_timeout(100)

    told, panel = (hand.page.locator(p).bounding_box() for p in (".why > div p >> nth=0", "#sentence"))
    assert panel["y"] <= told["y"] < panel["y"] + panel["height"] - 60
    assert hand.page.locator("#sheet").bounding_box()["height"] == before
    assert inside(hand, (0, 0), (2, 3))
