"""What is seen of the sheet: what is said elsewhere comes into view, and nothing else moves the paper under the hand."""

import pytest

FRAME = "points: {A: [0, 0], B: [4, 0], C: [0, 1.5], D: [4, 3]}\nmembers: {beam: A B, tie: C D}\nsupports: {A: pin, C: pin}\nloads: [5 N at B down]\n"
LOOSE = "points: {A: [0, 0], B: [2, 0], C: [2, 3]}\nmembers: {beam: A B, post: B C}\nsupports: {A: pin}\nloads: [5 N at C down]\n"


def opened(hand, text=FRAME):
    (hand.folder / "frame.yaml").write_text(text)
    return hand.open("frame.yaml")


def seen(hand, *places):
    box = hand.page.locator("#sheet").bounding_box()
    return all(box["x"] < x < box["x"] + box["width"] and box["y"] < y < box["y"] + box["height"] for x, y in (hand.spot(*p) for p in places))


def look_at(hand, x, y, k):
    """The sheet with its upper left corner at a place."""
    hand.page.evaluate("async ([x, y, k]) => (await import('/web/store.js')).store.set({ fitted: false, view: { x: -k * x, y: k * y, k } })", [x, y, k])
    return hand.settle()


def placed(hand):
    """Where the drawing stands on the page, and how large it is."""
    hand.settle()
    return hand.page.locator("#figure > svg").evaluate("(e) => { const b = e.getScreenCTM(); return [b.a, b.e, b.f].map((v) => Math.round(100 * v)); }")


def test_a_point_that_is_typed_comes_into_view_with_all_that_was_seen(hand):
    opened(hand).type_line("Q: [9, 5]")

    assert seen(hand, (9, 5), (0, 0), (4, 0))


def test_a_point_that_is_seen_already_moves_nothing(hand):
    before = opened(hand).state("view")
    hand.type_line("Q: [2, 1]")

    assert hand.state("view") == before


def test_where_all_can_stay_in_sight_the_sheet_is_moved_and_not_made_smaller(hand):
    opened(hand)
    look_at(hand, -6, 4.4, 60)
    hand.type_line("Q: [4.5, -4.7]")

    assert hand.state("view")["k"] == 60
    assert seen(hand, (4.5, -4.7), (0, 0), (4, 0))


def test_a_point_made_and_moved_by_keys_stays_in_view(hand):
    opened(hand)
    look_at(hand, -1, 2, 200)
    hand.page.focus("#sheet")
    hand.keys("Shift+ArrowRight", *["Shift+ArrowRight"] * 16)
    cross = hand.state("cross")
    assert seen(hand, cross)
    hand.keys("Enter", "Escape")
    assert seen(hand, cross)


def test_what_the_script_touches_comes_into_view_and_what_the_hand_presses_stays(hand):
    opened(hand, FRAME.replace("points", "# one\npoints"))
    hand.keys("Alt+s")
    look_at(hand, 5, 4, 100)
    assert not seen(hand, (0, 0))
    area = hand.page.locator("#script textarea")
    area.evaluate("(e) => { e.focus(); const at = e.value.indexOf('A: [') + 4; e.setSelectionRange(at, at); e.dispatchEvent(new MouseEvent('click', {bubbles: true})); }")
    hand.settle()
    assert hand.state("touched") == ["point A"]
    assert seen(hand, (0, 0))

    look_at(hand, 0.5, 1, 250)
    before = hand.spot(0, 0)
    hand.press(1.5, 0)
    assert hand.state("touched") == ["part beam"]
    assert hand.spot(0, 0) == before, "both ends of the member are out of sight, and it is seen"


def test_a_point_typed_into_the_script_and_the_place_of_a_fault_come_into_view(hand):
    opened(hand).keys("Alt+s")
    area = hand.page.locator("#script textarea")
    near = hand.state("view")["k"]
    for made in ("E: [900, 8]", "E: [7, 8]"):
        area.fill(FRAME.replace("D: [4, 3]", f"D: [4, 3], {made}"))
        hand.settle()
    hand.page.wait_for_timeout(900)
    hand.settle()
    assert seen(hand, (7, 8), (0, 0))
    assert hand.state("view")["k"] > near / 5, "what was there for a moment was no place to go to"

    for wrong, place in ((FRAME.replace("A: pin", "A: pni"), (0, 0)), (FRAME.replace("5 N at B down", "5 N at B dwn"), (4, 0))):
        area.fill(wrong)
        hand.settle()
        look_at(hand, 5, -3, 100)
        hand.page.locator("#faults li.error").first.click()
        hand.settle()
        assert seen(hand, place)


def test_nothing_moves_of_itself_while_a_pointer_is_down(hand):
    opened(hand)
    x, y = hand.spot(2, 2.2)
    hand.page.mouse.move(x, y)
    hand.page.mouse.down()
    before = hand.state("view")
    hand.page.evaluate("async () => { const { change } = await import('/web/acts/editing.js'); await change([{ do: 'point', name: 'Q', at: ['30', '9'] }]); }")
    hand.settle()

    assert hand.state("view") == before
    hand.page.mouse.up()


def test_what_the_keyboard_goes_to_comes_into_view_and_the_sheet_is_not_scrolled_from_under_it(hand):
    opened(hand)
    look_at(hand, 6, 9, 100)
    hand.page.locator('.handle[data-id="point A"]').focus()
    hand.settle()

    assert seen(hand, (0, 0))
    assert hand.page.locator("#stage").evaluate("(e) => [e.scrollLeft, e.scrollTop]") == [0, 0]


@pytest.mark.parametrize("moved", [False, True])
def test_a_window_as_large_as_before_shows_the_figure_as_it_was(hand, moved):
    opened(hand)
    if moved:
        look_at(hand, -1, 3.5, 90)
    before = placed(hand)
    for size in ((1280, 420), (1280, 800), (700, 800), (1280, 800), (1280, 380), (1000, 600), (1280, 800)):
        hand.page.set_viewport_size({"width": size[0], "height": size[1]})
        hand.settle()
    assert placed(hand) == before


def test_a_telephone_that_is_turned_and_turned_back_shows_the_figure_as_it_was(phone):
    opened(phone)
    before = placed(phone)
    for size in ((844, 390), (390, 844), (390, 500), (390, 844)):
        phone.page.set_viewport_size({"width": size[0], "height": size[1]})
        phone.settle()

    assert placed(phone) == before


def test_the_script_unrolled_and_rolled_up_leaves_the_figure_as_it_was(hand):
    before = placed(opened(hand))
    hand.keys("Alt+s")
    assert placed(hand) != before
    hand.keys("Alt+s")

    assert placed(hand) == before


def test_what_is_told_at_the_foot_never_shifts_the_figure(hand):
    before = placed(opened(hand, LOOSE))
    high = hand.page.locator("#sentence").bounding_box()["height"]
    hand.page.locator(".why summary").click()
    assert placed(hand) == before
    hand.press(2, 0)
    assert placed(hand) == before and hand.page.locator(".sayings li").count() > 3
    hand.type_line("5 N at nowhere down")
    assert placed(hand) == before
    assert hand.page.locator("#sentence").bounding_box()["height"] == high
