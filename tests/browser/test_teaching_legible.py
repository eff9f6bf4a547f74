"""The teaching view from the back row and from a telephone: large enough, nothing out of sight, nothing that jumps or gives an answer away."""

import pytest

from lessons import lesson
from unpin.lesson.ideas import told
from unpin.render import html

WORST = ["marquee-frame", "window-lift", "foot-bridge", "sack-crane", "lock-gate", "well-frame", "boat-davit", "market-awning"]
"""Wide formulas in letters, a tall structure taken apart, a truss of many bars, cords, long reasons, many lines."""

LEAST = 0.026
"""Of the height of the wall. (Common practice, no source: about an inch of letter on a screen of a yard.)"""

LOOK = """() => {
  const root = document.getElementById("teach"), said = root.querySelector(".t-said"), svg = root.querySelector(".t-drawn svg");
  const seen = [...said.querySelectorAll(".now, .ask:not(.yet)")], sizes = seen.flatMap((e) => [e, ...e.querySelectorAll("p, li, td, h3, math")]).map((e) => parseFloat(getComputedStyle(e).fontSize));
  const box = svg?.getBoundingClientRect();
  return { least: Math.min(...sizes, 999), hidden: said.scrollHeight - said.clientHeight, bare: root.querySelector(".bare") !== null,
    figure: svg && [svg.getAttribute("aria-label"), ...[box.left, box.top, box.width].map(Math.round)].join() };
}"""

GO = """([keys, look]) => {
  const see = eval(look), out = [see()];
  for (const key of keys) { document.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true })); out.push(see()); }
  return out;
}"""


@pytest.fixture
def wall(page, tmp_path):
    """Opens the teaching view at an idea, in a window of some size."""
    def opened(name, at="1", width=1280, height=720):
        path = tmp_path / f"{name}.html"
        path.write_text(html.write(lesson(name)), "utf-8")
        page.set_viewport_size({"width": width, "height": height})
        page.emulate_media(reduced_motion="reduce")
        page.goto("about:blank")
        page.goto(f"{path.as_uri()}#teach-{at}")
        page.wait_for_selector("#teach:not([hidden])")
        return page

    return opened


@pytest.mark.parametrize("name", WORST)
def test_what_is_told_is_large_enough_and_nothing_scrolls_out_of_sight(wall, name):
    page = wall(name)

    seen = page.evaluate(GO, [["ArrowRight"] * 2 * len(told(lesson(name)).ideas), f"({LOOK})"])

    assert [s for s in seen if s["least"] < LEAST * 720 - 0.1] == []
    assert [s for s in seen if s["hidden"] > 1] == []
    kept = {}
    for s in seen:
        if s["figure"] and not s["bare"]:
            kept.setdefault(s["figure"].rsplit(",", 3)[0], set()).add(s["figure"])
    assert {title: places for title, places in kept.items() if len(places) > 1} == {}, "a figure stays where it is"


@pytest.mark.parametrize("name", ["marquee-frame", "lock-gate"])
def test_on_a_telephone_held_upright_nothing_scrolls_out_of_sight(wall, name):
    page = wall(name, width=390, height=844)

    seen = page.evaluate(GO, [["ArrowRight"] * 2 * len(told(lesson(name)).ideas), f"({LOOK})"])

    assert [s for s in seen if s["hidden"] > 1 or s["least"] < 14] == []


def number(name, code):
    """The number of the first idea that asks a question."""
    return next(k for k, i in enumerate(told(lesson(name)).ideas, 1) if i.question and i.question.code == f"teach.question.{code}")


def test_while_a_class_is_asked_what_acts_across_the_arrow_there_is_not_drawn(wall):
    known = told(lesson("market-awning"))
    at = next(k for k, i in enumerate(known.ideas) if i.kind == "pair" and i.station == "across")
    there = (set(known.ideas[at].lit) - set(known.ideas[at - 1].lit)).pop()
    page = wall("market-awning", f"{at + 1}-ask")

    assert page.locator(f'.t-drawn g[data-action="{there}"]').is_hidden()
    page.keyboard.press("PageDown")
    assert page.locator(f'.t-drawn g.lit[data-action="{there}"]').is_visible()


@pytest.mark.parametrize("code", ["point", "axial", "check", "held"])
def test_an_answer_stands_where_its_question_stood(wall, code):
    page = wall("market-awning", f"{number('market-awning', code)}-ask")
    box = "() => { const r = document.querySelector('.t-said .now, .t-said .ask:not(.yet)').getBoundingClientRect(); return [Math.round(r.left), Math.round(r.top)]; }"

    asked = page.evaluate(box)
    assert "a question first" in page.locator(".t-step").inner_text()
    page.keyboard.press("PageDown")

    assert page.evaluate(box) == asked


def test_the_line_of_acts_marks_the_present_one_and_the_words_name_the_sum(wall):
    page = wall("market-awning", "18")

    assert page.locator(".t-way [aria-current=step]").inner_text() == "Sum"
    assert page.locator(".t-step").inner_text().replace("\n", " ").startswith("Moments about") and "term by term" in page.locator(".t-step").inner_text()
    assert page.locator("#teach .t-found").inner_text().strip() == "Unknowns found: 0 of 4" and page.locator(".t-tally i").count() == 4
    page.keyboard.press("End")
    assert page.locator(".t-way [aria-current=step]").inner_text() == "Conclude" and page.locator(".t-tally .got").count() == 4
    assert page.locator("#teach [data-do=next]").inner_text() == "Next: another way"
    page.keyboard.press("PageDown")
    assert page.locator(".t-way [aria-current=step]").inner_text() == "Compare" and "Another way" in page.locator(".t-said").inner_text()
    page.keyboard.press("Home")
    page.keyboard.press("w")
    assert "Another way" in page.locator(".t-said").inner_text()


def test_each_half_of_the_window_is_a_way_to_go(wall):
    page = wall("market-awning", "3")

    page.mouse.click(700, 600)
    assert page.evaluate("location.hash") == "#teach-4-ask"
    page.mouse.click(600, 600)
    assert page.evaluate("location.hash") == "#teach-3"


def test_the_second_window_opens_again_and_again_from_a_page_without_an_address(page):
    """A page that was sent as the answer to a form: it cannot be fetched a second time."""
    made = html.write(lesson("market-awning"))

    def answer(route):
        if route.request.method == "POST":
            route.fulfill(body=made, content_type="text/html")
        else:
            route.fulfill(body="<form method=post><button>show</button></form>", content_type="text/html")

    page.route("http://lecture.invalid/**", answer)
    page.goto("http://lecture.invalid/sent")
    page.get_by_role("button", name="show").click()
    page.get_by_role("button", name="Teach it, an idea at a time").click()
    for _ in range(2):
        with page.expect_popup() as opening:
            page.keyboard.press("n")
        notes = opening.value
        notes.wait_for_selector("#notes .n-then li")
        assert notes.locator("h1").inner_text() == "Market awning"
        notes.get_by_role("button", name="Start").click()
        notes.get_by_role("button", name="Pause").wait_for()
        notes.get_by_role("button", name="From zero").click()
        assert notes.locator(".n-clock").inner_text() == "00:00"
        notes.get_by_role("button", name="Pause").click()
        notes.close()
        page.wait_for_timeout(400)


ALONE = """(where) => [...document.querySelectorAll(where)].filter((l) => l.getClientRects().length).flatMap((l) => {
  const [before, last] = [...l.querySelectorAll(":scope > math")].slice(-2).map((m) => [m.textContent.replace(/\\s/g, ""), m.getBoundingClientRect()]);
  return last && last[0] === "=0" && last[1].top > before[1].bottom - 4 ? [l.textContent] : [];
})"""


@pytest.mark.parametrize("size", [(1280, 720), (390, 844)])
def test_the_end_of_a_sum_is_not_alone_on_a_row(wall, size):
    page = wall("market-awning", "1", *size)
    page.keyboard.press("q")
    out = set()
    for _ in range(len(told(lesson("market-awning")).ideas)):
        page.keyboard.press("ArrowRight")
        out |= set(page.evaluate(ALONE, ".t-said .line"))
    page.keyboard.press("Escape")
    out |= set(page.evaluate(ALONE, "main .line"))

    assert out == set()
