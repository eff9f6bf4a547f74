"""A fault in the script is marked at its place inside the text, and what is said of it leads there."""

LONG = "title: Long\npoints:\n" + "".join(f"  P{k}: [{k}, 0]\n" for k in range(80)) + "members: {{beam: {points}}}\nsupports: {{P0: fixed}}\nloads: [5 N at Q down]\n"


def opened(hand):
    (hand.folder / "long.yaml").write_text(LONG.format(points=" ".join(f"P{k}" for k in range(80))))
    return hand.open("long.yaml")


def selected(hand):
    return hand.page.locator("#script textarea").evaluate("e => e.value.slice(e.selectionStart, e.selectionEnd)")


def seen(hand):
    """Whether the mark, which follows the text, lies within what is seen of it."""
    return hand.page.evaluate("""() => { const m = document.querySelector('#script mark').getBoundingClientRect(), p = document.querySelector('#script .paper').getBoundingClientRect();
        return p.top <= m.top && m.bottom <= p.bottom && p.left <= m.left && m.right <= p.right; }""")


def test_the_place_of_a_fault_is_underlined_in_the_text_and_told_to_who_cannot_see_it(hand):
    opened(hand).keys("Alt+s")
    mark, area = hand.page.locator("#script mark"), hand.page.locator("#script textarea")

    assert mark.text_content() == "Q"
    assert "underline" in mark.evaluate("e => getComputedStyle(e).textDecorationLine")
    assert area.get_attribute("aria-invalid") == "true"
    told = hand.page.locator(f"#{area.get_attribute('aria-describedby')}")
    assert 'Point "Q" is not known' in told.inner_text()


def test_a_press_on_what_is_said_of_a_fault_puts_the_caret_there_and_scrolls_to_it(hand):
    opened(hand).keys("Alt+s")
    assert not seen(hand)
    hand.page.locator("#faults li").click(position={"x": 300, "y": 12})
    hand.settle()

    assert hand.page.evaluate("document.activeElement.localName") == "textarea"
    assert selected(hand) == "Q"
    assert seen(hand)


def test_the_fault_that_is_told_under_the_sheet_leads_to_its_line_with_the_script_unrolled(hand):
    opened(hand)
    hand.page.get_by_role("button", name="Line 85 of the script").click()
    hand.settle()

    assert LONG.splitlines()[84 - 0].startswith("loads")
    assert selected(hand) == "Q" and seen(hand)
    hand.page.keyboard.type("P79")
    hand.settle()
    assert hand.page.locator("#script mark").count() == 0 and hand.state("look")["sound"]


def test_a_break_in_the_script_keeps_the_last_drawing_greyed_with_the_fault_told(hand):
    (hand.folder / "bar.yaml").write_text("points:\n  A: [0, 0]\n  B: [2, 0]\nmembers: {bar: A B}\nsupports: {A: fixed}\n")
    hand.open("bar.yaml")
    hand.page.evaluate("async () => { const e = await import('/web/acts/editing.js'); const { text } = await import('/web/store.js'); await e.write(text().replace('[0, 0]', '[0, 0] zz [')); }")
    hand.settle()

    assert hand.page.locator("#figure.last svg").count() >= 1
    assert hand.page.locator(".invite").count() == 0
    assert "cannot be read" in hand.page.locator("#told").inner_text()


def test_the_mark_of_a_fault_stands_just_beneath_what_is_written_however_the_lines_are_broken(hand):
    """The text of the field is measured by a copy that a browser sets with the same letters as the field itself."""
    words = " ".join(f"part{k} of it" for k in range(60))
    (hand.folder / "wide.yaml").write_text(f"title: Wide\ntext: {words}\npoints: {{A: [0, 0], B: [2, 0]}}\nmembers: {{bar: A B}}\nsupports: {{A: fixed}}\nloads: [{', '.join(['5 N at B down'] * 9)}, 5 N at Q down]\n")
    hand.open("wide.yaml").keys("Alt+s")
    off = hand.page.evaluate("""() => { const area = document.querySelector('#script textarea'), mark = document.querySelector('#script mark').getBoundingClientRect();
        const copy = document.createElement('div'), style = getComputedStyle(area), box = area.getBoundingClientRect();
        for (const name of style) copy.style.setProperty(name, style.getPropertyValue(name));
        copy.textContent = area.value; copy.style.position = 'fixed'; copy.style.left = box.left + 'px'; copy.style.top = box.top + 'px'; copy.style.width = box.width + 'px'; document.body.append(copy);
        const range = document.createRange(), at = area.value.indexOf('at Q') + 3; range.setStart(copy.firstChild, at); range.setEnd(copy.firstChild, at + 1);
        const there = range.getBoundingClientRect(); const lines = area.scrollHeight > area.clientHeight; copy.remove();
        return [Math.abs(there.left - mark.left), Math.abs(there.top - mark.top), lines]; }""")

    assert off[0] < 1 and off[1] < 3
    assert not off[2], "the field is as high as its text: the sheet is what scrolls"
    assert hand.page.locator("#script .paper").evaluate("(e) => e.scrollWidth <= e.clientWidth"), "nothing runs off to the side"
