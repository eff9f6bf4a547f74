"""A finger on a telephone: the click of a tap comes a while after the finger has gone."""


def finger(phone, *spots):
    """A stroke of one finger over places on the glass, pixels."""
    session = phone.page.context.new_cdp_session(phone.page)
    (x, y), (to_x, to_y) = spots
    session.send("Input.dispatchTouchEvent", {"type": "touchStart", "touchPoints": [{"x": x, "y": y}]})
    for k in range(1, 7):
        session.send("Input.dispatchTouchEvent", {"type": "touchMove", "touchPoints": [{"x": x + (to_x - x) * k / 6, "y": y + (to_y - y) * k / 6}]})
    session.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})
    phone.settle()


def test_each_of_ten_taps_on_an_offer_says_it(phone):
    done = []
    for k in range(10):
        phone.empty(f"beam{k}")
        finger(phone, (90, 300), (290, 300))
        offer = phone.page.locator(".sayings button", has_text="A B").first
        phone.page.wait_for_timeout(260)  # a list that has just changed is not pressed
        offer.tap()
        phone.settle()
        done.append("members" in phone.text())

    assert done == [True] * 10
