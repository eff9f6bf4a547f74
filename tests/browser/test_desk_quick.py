"""What a hand does most is done in one act: a name is typed as soon as its point is there, a direction is pressed."""

BEAM = "points: {A: [0, 0], B: [2, 0], C: [1, 0]}\nmembers: {AB: A C B}\nsupports: {A: fixed}\nloads: [5 N at B down]\n"


def opened(hand, text=BEAM):
    (hand.folder / "beam.yaml").write_text(text)
    return hand.open("beam.yaml")


def test_a_name_typed_while_one_thing_is_touched_is_its_name(hand):
    hand.empty("quick").press(0, 0)
    hand.page.keyboard.type("O")
    hand.settle()
    assert hand.page.locator(".sayings button").all_inner_texts()[0].split() == ["1", "call", "it", "O"]
    hand.page.keyboard.press("Enter")
    hand.settle()
    assert "O: [0, 0]" in hand.text()

    hand.stroke((0, 0), (0, 2)).say("O A")
    hand.page.keyboard.press("Tab")
    hand.page.focus("#sheet")
    hand.page.keyboard.type("post")
    hand.settle()
    hand.page.keyboard.press("Enter")
    hand.settle()
    assert "post: O A" in hand.text()


def test_the_name_of_another_point_is_exchanged_for_it(hand):
    opened(hand).press(1, 0)
    hand.page.keyboard.type("B")
    hand.settle()
    assert hand.page.locator(".sayings button").first.inner_text().split()[1:] == "call it B, and B C".split()
    hand.page.keyboard.press("Enter")
    hand.settle()

    assert "{A: [0, 0], C: [2, 0], B: [1, 0]}" in hand.text() and "AC: A B C" in hand.text() and "5 N at C down" in hand.text()


def test_a_point_is_touched_where_it_is_pressed_whatever_was_touched_before(hand):
    opened(hand)
    hand.page.locator('.handle[data-id="part AB"]').focus()
    hand.keys("Enter").press(2, 0)
    assert hand.state("touched") == ["point B"]

    hand.press(2, 0)
    assert hand.state("touched") != ["point B"], "a second press at the place goes on to what lies beneath"


def test_the_direction_of_what_is_touched_is_pressed_and_its_numbers_are_typed_over(hand):
    opened(hand)
    hand.page.locator('.handle[data-id="load 1"]').focus()
    hand.keys("Enter")
    ways = hand.page.locator("form.line .options button")
    assert ways.all_inner_texts() == ["up", "right", "left", "at an angle", "on a slope"]
    ways.filter(has_text="left").click()
    hand.settle()
    assert "5 N at B left" in hand.text()

    ways.filter(has_text="on a slope").click()
    hand.settle()
    hand.page.keyboard.type("15")  # longer than what stood there, and without a pause
    hand.page.keyboard.press("Tab")
    hand.page.keyboard.type("112")
    hand.page.keyboard.press("Enter")
    hand.settle()
    assert "5 N at B right 15 down 112" in hand.text()

    hand.page.locator('.handle[data-id="connection A"]').focus()
    hand.keys("Enter")
    assert ways.count() == 0, "a built-in end has no direction"


def test_a_size_that_is_typed_stays_when_the_direction_is_pressed(hand):
    opened(hand)
    hand.press(1, 0).say("100 N at C")
    hand.page.keyboard.type("300 N")
    hand.settle()
    hand.page.locator("form.line .options button").filter(has_text="right").click()
    hand.settle()

    assert "300 N at C right" in hand.text()


def test_a_question_that_is_put_is_told_although_nothing_of_the_drawing_changes(hand):
    opened(hand)
    hand.press(0, 0)
    hand.page.locator('.handle[data-id="connection A"]').focus()
    hand.keys("Enter").say("A")

    assert hand.page.locator(".notice").inner_text() == "Asked: A" and "find" in hand.text()
    hand.say("ask no more for A")
    assert hand.text() == BEAM
