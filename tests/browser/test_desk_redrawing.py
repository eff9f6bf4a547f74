"""From one drawing of the engine to the next: only what differs is made anew, and what stands there is always just what the engine drew."""

import pytest

FRAME = "points: {A: [0, 0], B: [2, 0], T: [1, 1.5], C: [3, 0]}\nmembers: {one: A T, other: T B}\nsupports: {A: pin, B: pin}\nloads: [40 N at T right]\n"
WRITE = "async (text) => (await import('/web/acts/editing.js')).write(text)"
AS_DRAWN = """async () => { const { store } = await import('/web/store.js');
    const there = new DOMParser().parseFromString(store.get().drawn.figure.svg, 'image/svg+xml').documentElement;
    const here = document.querySelector('#figure > svg');
    return here.getAttribute('viewBox') === there.getAttribute('viewBox') && here.childNodes.length === there.childNodes.length
        && [...here.childNodes].every((n, k) => n.isEqualNode(there.childNodes[k])); }"""


@pytest.fixture
def framed(hand):
    (hand.folder / "frame.yaml").write_text(FRAME)
    return hand.open("frame.yaml")


def test_a_load_of_another_size_leaves_every_other_mark_where_it_is(framed):
    marked = framed.page.evaluate("() => [...document.querySelectorAll('#figure > svg > *')].map((e) => (e.kept = true)).length")
    framed.page.evaluate(WRITE, FRAME.replace("40 N", "45 N"))
    framed.settle()
    kept = framed.page.evaluate("() => [...document.querySelectorAll('#figure > svg > *')].filter((e) => e.kept).length")

    assert "45\u202fN" in framed.page.locator("#figure").text_content()
    assert marked - 4 <= kept < marked
    assert framed.page.evaluate(AS_DRAWN)


def test_after_every_change_the_drawing_is_the_one_that_the_engine_made(framed):
    texts = [
        FRAME.replace("right\n", "left\n"),
        FRAME.replace("[1, 1.5]", "[1, 2]"),
        FRAME.replace("other: T B", "other: T B, more: T C").replace("B: pin}", "B: pin, C: pin}"),
        FRAME.replace("loads: [40 N at T right]\n", ""),
        FRAME.replace("]\n", ", 30 N at T down]\n"),
        FRAME,
    ]
    for text in texts:
        framed.page.evaluate(WRITE, text)
        framed.settle()

        assert framed.page.evaluate(AS_DRAWN), text


def test_a_drag_that_is_given_up_leaves_the_drawing_as_the_engine_made_it(framed):
    framed.press(1, 1.5)
    page, (x, y) = framed.page, framed.spot(1, 1.5)
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x + 60, y - 30, steps=6)
    framed.settle()
    moved = framed.page.evaluate(AS_DRAWN)
    page.keyboard.press("Escape")
    page.mouse.up()
    framed.settle()

    assert not moved
    assert framed.page.evaluate(AS_DRAWN)
    assert framed.text() == FRAME


def test_an_act_of_the_hand_is_one_question_to_the_engine(framed):
    asked = []
    framed.page.on("request", lambda r: asked.append(r.url.rsplit("/", 1)[-1]) if r.method == "POST" else None)
    framed.page.evaluate("async () => (await import('/web/acts/editing.js')).change([{ do: 'point', name: 'T', at: ['1', '1.75'] }])")
    framed.settle()

    assert [a for a in asked if a in ("edit", "look")] == ["edit"]
    assert "[1, 1.75]" in framed.text()
    assert framed.page.evaluate(AS_DRAWN)


def test_an_act_while_the_page_wants_another_picture_is_looked_at_anew(framed):
    framed.page.evaluate("""async () => { const { change } = await import('/web/acts/editing.js'); const { store } = await import('/web/store.js');
        const made = change([{ do: 'point', name: 'T', at: ['1', '1.75'] }]);
        await Promise.resolve();
        store.set({ scale: 33 });
        await made; }""")
    framed.settle()

    assert framed.state("drawn")["figure"]["scale"] == 33
    assert framed.page.evaluate(AS_DRAWN)


def test_a_search_for_the_shortest_way_is_called_off_by_the_next_edit(framed):
    asked = []
    framed.page.on("request", lambda r: asked.append(r.url.split("/", 3)[-1]) if r.method == "POST" else None)
    framed.page.evaluate("""async (text) => { const { shortest } = await import('/web/acts/apart.js'); const { store } = await import('/web/store.js');
        window.search = shortest('fewest');
        for (let k = 0; k < 400 && !store.get().route.job; k++) await new Promise((r) => setTimeout(r, 5));
        window.begun = store.get().route.job;
        await (await import('/web/acts/editing.js')).write(text); }""", FRAME.replace("40 N", "50 N"))
    framed.page.evaluate("() => window.search")
    framed.settle()

    assert framed.page.evaluate("() => window.begun")
    assert "route/cancel" in asked
    assert framed.state("route")["job"] == "" and framed.state("route")["sums"] == []
