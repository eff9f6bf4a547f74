"""A length of the figure is typed over where it stands, by hand and by keys."""

FRAME = "points: {A: [0, 0], C: [0, 2.4], D: C right 1.6}\nmembers: {post: A C, arm: C D}\nlinks: [A-D]\nsupports: {A: pin, C: roller pushes right}\nloads: [5 N at D down]\n"


def opened(hand, text=FRAME):
    (hand.folder / "frame.yaml").write_text(text)
    return hand.open("frame.yaml")


def number(hand, axis):
    """The middle of the number of the length along an axis, pixels."""
    box = hand.page.locator(f'.handle.length[data-id^="length {axis}"] rect').bounding_box()
    return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2


def test_a_press_on_a_length_types_over_it_in_place_as_one_step(hand):
    opened(hand)
    hand.page.mouse.move(*number(hand, "x"))
    hand.settle()
    assert hand.page.locator(".handle.length.hover").count() == 1, "it is told beforehand that it can be pressed"
    hand.page.mouse.click(*number(hand, "x"))
    hand.settle()
    field = hand.page.locator("#length")
    x, y = number(hand, "x")
    box = field.bounding_box()

    assert hand.page.evaluate("document.activeElement.id") == "length" and field.input_value() == "1.6"
    assert box["x"] < x < box["x"] + box["width"] and box["y"] < y < box["y"] + box["height"]
    hand.page.keyboard.type("2.5")
    hand.keys("Enter")
    assert hand.text() == FRAME.replace("1.6", "2.5")
    assert hand.page.locator("#length").count() == 0
    assert "D has moved" in hand.page.locator("#sentence .notice").inner_text()
    hand.keys("Control+z")
    assert hand.text() == FRAME


def test_a_length_is_reached_and_typed_over_by_keys_alone(hand):
    opened(hand)
    handle = hand.page.locator('.handle.length[data-id^="length y"]')
    assert "in height, from A to C" in handle.get_attribute("aria-label")
    handle.focus()
    hand.keys("Enter")
    hand.page.keyboard.type("3")
    hand.keys("Enter")
    assert "C: [0, 3]" in hand.text()
    assert hand.page.evaluate("document.activeElement.dataset.id").startswith("length y")

    hand.keys("Enter")
    hand.page.keyboard.type("4")
    hand.keys("Escape")
    assert hand.page.locator("#length").count() == 0 and "C: [0, 3]" in hand.text()


def test_a_letter_that_stands_there_is_edited(hand):
    opened(hand, "letters: {a: 1.6 m}\n" + FRAME.replace("right 1.6", "right a"))
    hand.page.mouse.click(*number(hand, "x"))
    hand.settle()
    assert hand.page.locator(".over").inner_text().strip() == "a ="
    hand.page.keyboard.type("2 m")
    hand.keys("Enter")

    assert "a: 2 m" in hand.text() and "C right a" in hand.text()


def test_a_length_that_follows_from_others_says_so_when_it_is_pressed(hand):
    text = FRAME.replace("D: C right 1.6", "E: [3.2, 2.4], D: midpoint of C E")
    opened(hand, text)
    hand.page.mouse.click(*number(hand, "x"))
    hand.settle()

    assert hand.page.locator("#length").count() == 0
    assert "midpoint of C E" in hand.page.locator("#sentence .notice").inner_text()
    assert hand.text() == text, "and no point is set beneath it"


def test_what_is_no_length_stays_to_be_typed_over_with_the_reason_and_goes_with_the_hand(hand):
    opened(hand)
    hand.page.mouse.click(*number(hand, "x"))
    hand.settle()
    hand.page.keyboard.type("wide")
    hand.keys("Enter")
    assert "wide" in hand.page.locator("#sentence .notice").inner_text()
    assert hand.page.input_value("#length") == "wide" and hand.text() == FRAME

    hand.press(1.0, 0.6)
    assert hand.page.locator("#length").count() == 0


def test_a_finger_types_over_a_length(phone):
    opened(phone)
    phone.page.touchscreen.tap(*number(phone, "y"))
    phone.settle()
    phone.page.keyboard.type("2")
    phone.keys("Enter")

    assert "C: [0, 2]" in phone.text()


def test_a_radius_is_typed_over_where_it_stands_beside_its_disc(hand):
    text = "points: {W: [0, 2], C: [1.6, 2], K: [1.8, 0.5]}\nmembers: {beam: W C}\ndiscs: {wheel: 0.2 at C}\nblocks: {sack: at K}\ncords: {T: W over wheel to sack}\nsupports: {W: fixed}\nloads: [weight of sack 300 N]\n"
    opened(hand, text)
    box = hand.page.locator('.handle.length[data-id^="length radius"] rect').bounding_box()
    hand.page.mouse.click(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
    hand.settle()
    hand.page.keyboard.type("0.15")
    hand.keys("Enter")

    assert hand.text() == text.replace("0.2 at", "0.15 at")
