"""What is typed and pressed at the foot of the desk does what it says, and nothing else, however late a reply comes."""

import re

from desks import Hand

BEAM = "points: {A: [0, 0], B: [2, 0], C: [1, 0]}\nmembers: {beam: A C B}\nsupports: {A: fixed}\nloads: [5 N at B down]\n"


def opened(hand: Hand, text: str = BEAM) -> Hand:
    (hand.folder / "beam.yaml").write_text(text)
    return hand.open("beam.yaml")


def touched(hand: Hand, what: str) -> Hand:
    hand.page.locator(f'.handle[data-id="{what}"]').focus()
    return hand.keys("Enter")


def slowly(hand: Hand, path: str, seconds: float = 0.5):
    """Replies of one address come late."""
    import time

    def late(route):
        reply = route.fetch()
        time.sleep(seconds)
        route.fulfill(response=reply)

    hand.page.route(re.compile(f"{path}$"), late)


def test_enter_in_the_name_renames_and_takes_no_choice(hand):
    touched(opened(hand, "points: {A: [0, 0], B: [2, 0]}\nmembers: {beam: A B}\n"), "point B")
    hand.page.fill("form .called", "K")
    hand.page.press("form .called", "Enter")
    hand.settle()

    assert hand.text() == "points: {A: [0, 0], K: [2, 0]}\nmembers: {beam: A K}\n"
    offers = hand.page.locator(".sayings .phrase").all_inner_texts()
    assert any(o.startswith("K: pin") for o in offers) and not any(re.search(r"\bB\b", o) for o in offers)


def test_enter_on_a_phrase_that_is_as_it_was_takes_no_choice(hand):
    touched(opened(hand), "load 1")
    hand.page.press("#line", "Enter")
    hand.settle()

    assert hand.text() == BEAM


def test_a_late_reply_leaves_alone_what_is_being_typed_in_another_field(hand):
    touched(opened(hand), "point B")
    slowly(hand, "/edit")
    hand.page.fill("form .called", "K")
    hand.page.press("form .called", "Enter")
    hand.page.fill("#line", "[1.9, 0.1]")
    hand.settle()

    assert hand.page.input_value("#line") == "[1.9, 0.1]"
    hand.page.press("#line", "Enter")
    hand.settle()
    assert "K: [1.9, 0.1]" in hand.text() and "B:" not in hand.text()


def test_a_phrase_meant_before_the_new_name_is_there_goes_to_the_same_thing(hand):
    touched(opened(hand), "point B")
    slowly(hand, "/edit")
    hand.page.fill("form .called", "Knee")
    hand.page.press("form .called", "Enter")
    hand.page.fill("#line", "[1.9, 0.1]")
    hand.page.press("#line", "Enter")
    hand.settle()

    assert "Knee: [1.9, 0.1]" in hand.text() and "C: [1, 0]" in hand.text()


def test_a_choice_under_a_press_is_the_one_that_was_pressed(hand):
    touched(opened(hand), "point C")
    hand.page.wait_for_timeout(300)
    choice = hand.page.locator(".sayings button").first
    box = choice.bounding_box()
    pressed = choice.locator(".phrase").inner_text()
    hand.page.mouse.move(box["x"] + 5, box["y"] + 5)
    hand.page.mouse.down()
    hand.page.evaluate("""async () => (await import('/web/acts/offering.js')).offered([{section: 'loads', name: null, phrase: '77 N at C up', blanks: [], means: '', form: ''}])""")
    hand.settle()
    assert hand.page.locator(".sayings .phrase").first.inner_text() == pressed
    hand.page.mouse.up()
    hand.settle()

    assert "77 N" not in hand.text() and pressed.split(": ")[-1] in hand.text()


def test_a_list_that_has_just_changed_is_not_pressed(hand):
    touched(opened(hand), "point C")
    hand.page.wait_for_timeout(300)
    box = hand.page.locator(".sayings button").first.bounding_box()
    hand.page.mouse.move(box["x"] + 5, box["y"] + 5)
    hand.page.evaluate("""async () => { (await import('/web/acts/offering.js')).offered([{section: 'loads', name: null, phrase: '77 N at C up', blanks: [], means: '', form: ''}]);
        await new Promise(requestAnimationFrame); }""")
    hand.page.mouse.down()
    hand.page.mouse.up()
    hand.settle()
    assert hand.text() == BEAM

    hand.page.wait_for_timeout(300)
    hand.page.mouse.down()
    hand.page.mouse.up()
    hand.settle()
    assert "77 N at C up" in hand.text()
