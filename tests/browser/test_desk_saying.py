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
    hand.page.evaluate("""async () => { (await import('/web/acts/offering.js')).offered([{section: 'loads', name: null, phrase: '77 N at C up', blanks: [], means: '', form: ''}]);
        await new Promise(requestAnimationFrame); await new Promise(requestAnimationFrame); document.querySelector('.sayings button').dispatchEvent(new PointerEvent('pointerdown', {bubbles: true}));
        document.querySelector('.sayings button').dispatchEvent(new MouseEvent('click', {bubbles: true, detail: 1})); }""")
    hand.settle()
    assert hand.text() == BEAM

    hand.say("77 N at C up")
    assert "77 N at C up" in hand.text()


def test_a_line_that_is_not_understood_is_told_at_once_with_one_that_is_right(hand):
    opened(hand)
    hand.page.fill("#line", "300 N at Q down")
    hand.settle()
    assert '"Q"' in hand.page.locator("#amiss").inner_text()

    hand.page.fill("#line", "B: rollr")
    hand.settle()
    hand.page.press("#line", "Enter")
    hand.settle()
    told = hand.page.locator("#amiss").inner_text()
    assert hand.text() == BEAM and hand.page.input_value("#line") == "B: rollr"
    assert "no support" in told and "Right would be: E: pin" in told

    hand.page.fill("#line", "B: roller")
    hand.settle()
    assert not hand.page.locator("#amiss").inner_text()


def test_a_line_whose_name_is_there_changes_what_is_there(hand):
    opened(hand, BEAM.replace("loads", "cords: {T: C to B}\nloads"))
    hand.type_line("B: [2.2, 0]").keys("Escape")
    hand.type_line("T: B to A").keys("Escape")
    hand.type_line("A: roller").keys("Escape")

    assert hand.text() == "points: {A: [0, 0], B: [2.2, 0], C: [1, 0]}\nmembers: {beam: A C B}\nsupports: {A: roller}\ncords: {T: B to A}\nloads: [5 N at B down]\n"


def test_a_support_is_offered_first_before_there_is_a_member(hand):
    opened(hand, "points: {A: [0, 0], B: [2, 0]}\n")
    hand.type_line("A: pin").keys("Escape")

    assert "supports:" in hand.text() and "members" not in hand.text()


def test_the_ways_of_a_force_are_offered_in_words(hand):
    opened(hand)
    hand.page.fill("#line", "300 N at C ")
    hand.settle()
    ways = hand.page.locator("form.line .options button")
    assert ways.all_inner_texts() == ["down", "up", "right", "left", "at an angle", "on a slope"]
    ways.filter(has_text="slope").click()
    hand.settle()
    hand.page.press("#line", "Enter")
    hand.settle()

    assert "300 N at C right 3 down 4" in hand.text()


def test_asking_is_among_the_first_offers_for_what_is_touched(hand):
    opened(hand, "points: {A: [0, 0], B: [2, 0], C: [1, 0], D: [1, 1]}\nmembers: {beam: A C B}\nlinks: [C-D]\nsupports: {A: pin, D: pin}\nloads: [5 N at B down]\n")
    for what, asked in (("connection CD", "C-D"), ("point A", "A"), ("point C", "C")):
        touched(hand, what)
        offers = hand.page.locator(".sayings button").all_inner_texts()[:4]
        assert any("find" in o and o.split()[-1] == asked for o in offers), (what, offers)


def test_the_place_of_a_new_point_stands_beside_the_hand_while_it_presses_and_drags(hand):
    opened(hand)
    mouse, aim = hand.page.mouse, hand.page.locator(".aim text")
    mouse.move(*hand.spot(1.002, 0.501))
    mouse.down()
    hand.settle()
    assert aim.text_content() == "1, 0.5"
    mouse.move(*hand.spot(1.498, 0.702), steps=4)
    hand.settle()
    assert aim.text_content() == "1.5, 0.7"
    hand.page.keyboard.press("Escape")
    mouse.up()
    hand.settle()

    hand.press(2, 0)
    mouse.move(*hand.spot(2, 0))
    mouse.down()
    mouse.move(*hand.spot(1.8, 0.3), steps=4)
    hand.settle()
    assert aim.text_content() == "1.8, 0.3"
    mouse.up()
    hand.settle()
    assert "B: [1.8, 0.3]" in hand.text()


def test_a_point_that_stays_is_not_said_to_have_gone_where_only_its_pin_goes(hand):
    (hand.folder / "gate.yaml").write_text("points: {A: [0, 0], Hinge: [1, 0], C: [2, 0]}\nmembers: {one: A Hinge, two: Hinge C}\n"
                                           "supports: {A: pin, C: pin}\nloads: [10 N at Hinge down]\n")
    hand.open("gate.yaml").press(2, 0)
    hand.keys("Delete")

    told = hand.page.locator("body").inner_text()
    assert "Hinge: [1, 0]" in hand.text() and "C:" not in hand.text().split("members")[0]
    assert "With it went the member two, a support" in told and "the point" not in told
