"""Taking apart and solving by hand on the page; handing out what came of it."""

import re
import shutil
from pathlib import Path

import pytest

import unpin

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.fixture
def awning(hand):
    shutil.copy(EXAMPLES / "market-awning.yaml", hand.folder / "market-awning.yaml")
    return hand


def taken(hand):
    return [t.strip() for t in hand.page.locator(".steps code").all_inner_texts()]


def test_a_body_is_pulled_out_of_the_structure_with_the_pointer(awning):
    awning.open("market-awning.yaml", "apart")
    spot = awning.spot(1.65, 2.75)
    mouse = awning.page.mouse
    mouse.move(*spot)
    mouse.down()
    mouse.move(spot[0] + 60, spot[1] - 30, steps=5)
    mouse.up()
    awning.settle()

    card = awning.page.locator(".pulled")
    assert card.count() == 1
    assert card.get_attribute("aria-label") == "arm"
    assert card.locator("[data-action]").count() >= 4, "its pin, its stay and its load"


def test_pointing_at_a_centre_fades_what_drops_out_and_names_what_is_left(awning):
    awning.open("market-awning.yaml", "solve")
    awning.page.locator(".sums button", has_text=re.compile(r"Moments about\s*O\b")).first.hover()
    awning.settle()

    gone = awning.page.locator(".pointable .gone")
    assert gone.count() == 2, "both forces at O"
    assert "Drops out" in awning.page.locator(".solve .told").inner_text()


def test_a_route_chosen_by_hand_leads_to_the_numbers_of_the_file(awning):
    awning.open("market-awning.yaml", "solve")
    page = awning.page
    page.locator(".pointable .centre[aria-label='moments about O on whole']").click()
    awning.settle()
    page.locator(".bodies button", has_text="member arm").click()
    awning.settle()
    page.locator(".pointable .centre[aria-label='moments about C on arm']").focus()
    awning.keys("Enter")
    for axis in ("Horizontal", "Vertical"):
        page.locator(".sums button", has_text=axis).first.click()
        awning.settle()

    assert taken(awning) == ["moments about O on whole", "moments about C on arm", "forces along x on arm", "forces along y on arm"]
    assert "Everything asked is found, with 4 sums." in page.locator(".done").inner_text()
    # Moments about O: A_x · 2.8 = 260 (5/13 · 2.9 + 12/13 · 2.1), by hand.
    assert f"{260 * (5 * 2.9 + 12 * 2.1) / 13 / 2.8:.0f} N" in " ".join(page.locator(".side .answers").inner_text().split())
    assert page.locator(".chapters .working").count() >= 4, "the lesson has grown"


def test_the_last_sum_is_taken_back_and_the_route_is_written_into_the_file(awning):
    awning.open("market-awning.yaml", "solve")
    awning.page.locator(".sums button").first.click()
    awning.settle()
    awning.page.locator(".sums button:not(:disabled)").first.click()
    awning.settle()
    awning.page.get_by_role("button", name="Take the last sum back").click()
    awning.settle()
    kept = taken(awning)
    assert len(kept) == 1

    awning.page.get_by_role("button", name="Write into the file").click()
    awning.settle()
    assert "route:" in awning.saved()
    assert kept[0] in awning.saved()


def test_any_other_sum_is_typed_and_a_section_of_a_truss_is_isolated_by_its_pins(awning):
    shutil.copy(EXAMPLES / "foot-bridge.yaml", awning.folder / "foot-bridge.yaml")
    awning.open("foot-bridge.yaml", "solve")
    awning.page.locator(".bodies button", has_text="joint A").first.click()
    awning.settle()
    awning.page.locator(".bodies button", has_text="joint C").first.click(modifiers=["Shift"])
    awning.settle()
    assert awning.page.locator(".pulled").count() == 0
    assert len(awning.state("pulled")[0]["bodies"]) == 2

    awning.page.fill("input[name=sum]", "forces along y on whole")
    awning.page.press("input[name=sum]", "Enter")
    awning.settle()
    assert taken(awning) == ["forces along y on whole"]


def test_the_shortest_way_is_one_act_away(awning):
    awning.open("market-awning.yaml", "solve")
    awning.page.get_by_role("button", name="Shortest way").click()
    awning.page.locator(".done").wait_for(timeout=30000)

    worked = unpin.solve(unpin.load(awning.folder / "market-awning.yaml"))
    assert len(taken(awning)) == worked.recommended.count


def test_every_form_is_previewed_and_written_beside_the_problem(awning):
    awning.open("market-awning.yaml", "hand-out")
    page = awning.page
    assert page.frame_locator(".preview iframe").locator("header h1").first.inner_text() == "Market awning"
    for name, seen in (("A handout on paper (PDF)", "img.page"), ("Markdown with figures", "pre"), ("LaTeX with figures", "pre"), ("One figure, as lines (SVG)", "img.figure"),
                       ("One figure, as dots (PNG)", "img.figure"), ("A web page", "iframe")):
        page.get_by_label("Form").select_option(label=name)
        page.locator(f".preview {seen}").wait_for(timeout=20000)
        awning.settle()
        page.get_by_role("button", name="Write it beside the problem").click()
        page.get_by_text("Written:").wait_for(timeout=20000)
        awning.settle()

    written = {p.suffix for p in awning.folder.iterdir()}
    assert {".html", ".pdf", ".md", ".tex", ".svg", ".png"} <= written


def test_the_teaching_page_is_opened_from_the_desk(awning):
    awning.open("market-awning.yaml", "teach")

    assert awning.page.frame_locator(".framed iframe").locator("header h1").first.inner_text() == "Market awning"


def test_the_framed_pages_have_the_colours_that_are_chosen_for_the_desk(awning):
    awning.open("market-awning.yaml", "teach")
    awning.page.evaluate("async () => (await import('/web/store.js')).store.set({ theme: 'dark' })")
    for act, frame in (("Teach", ".framed iframe"), ("Hand out", ".preview iframe")):
        awning.page.get_by_role("link", name=act).click()
        awning.settle()
        inner = awning.page.frame_locator(frame)
        inner.locator("header h1").first.wait_for(state="attached")  # the teaching view lies over it
        # The ground of the dark set of inks, #16181a.
        assert inner.locator("html").evaluate("(e) => getComputedStyle(e).backgroundColor") == "rgb(22, 24, 26)"


def test_each_act_has_an_address_and_the_way_back(awning):
    awning.open("market-awning.yaml")
    awning.page.get_by_role("link", name="Take apart").click()
    awning.settle()
    awning.page.get_by_role("link", name="Solve").click()
    awning.settle()
    assert awning.page.url.endswith("#solve")

    awning.page.go_back()
    awning.settle()
    assert awning.page.locator("header nav [aria-current=page]").inner_text() == "Take apart"


def test_a_single_body_or_several_joined_is_handed_out_as_a_figure_light_or_dark(awning):
    awning.open("market-awning.yaml", "hand-out")
    page = awning.page
    page.get_by_label("Form").select_option(".svg")
    page.get_by_label("Figure").select_option("body")
    awning.settle()
    assert page.get_by_label("Body").locator("option").all_inner_texts()[0] == "the whole"
    page.get_by_label("Body").select_option("arm")
    awning.settle()
    page.get_by_label("Colours").select_option("dark")
    awning.settle()
    page.get_by_role("button", name="Write it beside the problem").click()
    page.get_by_text("Written:").wait_for(timeout=20000)

    drawn = (awning.folder / "market-awning-body-arm-dark.svg").read_text("utf-8")
    assert "member arm" in drawn and "@media all{svg{background" in drawn
    page.get_by_label("Language").select_option("es")
    page.get_by_label("Digits of results").select_option("5")
    page.get_by_label("Form").select_option(".md")
    page.locator(".preview pre").filter(has_text="Respuesta").wait_for(timeout=20000)
    assert page.get_by_label("Colours").count() == 0


def test_no_sum_moves_when_another_is_pointed_at(awning):
    awning.open("market-awning.yaml", "solve")
    rows = awning.page.locator(".sums button")
    places = lambda: [(b["y"], b["height"]) for b in (rows.nth(k).bounding_box() for k in range(rows.count()))]  # noqa: E731
    before = places()
    for k in range(rows.count()):
        rows.nth(k).hover()
        awning.settle()
        assert places() == before


OWN = ("moments about O on whole", "moments about C on arm")


def with_a_way(hand, *sums):
    file = hand.folder / "market-awning.yaml"
    file.write_text(file.read_text("utf-8") + "route:\n" + "".join(f"  - {s}\n" for s in sums), "utf-8")


def test_a_way_that_stands_in_the_file_is_shown_and_gone_on_with(awning):
    with_a_way(awning, *OWN)
    awning.open("market-awning.yaml", "solve")
    awning.page.locator(".steps li").first.wait_for()
    assert taken(awning) == list(OWN)
    assert awning.page.get_by_role("button", name="Write into the file").count() == 0, "it stands there"

    awning.page.get_by_role("button", name="Take the last sum back").click()
    awning.settle()
    assert taken(awning) == [OWN[0]]
    awning.page.get_by_role("button", name="Write into the file").click()
    awning.settle()
    assert awning.saved().endswith(f"route:\n  - {OWN[0]}\n")
    awning.page.get_by_role("button", name="Begin anew").click()
    awning.settle()
    awning.page.get_by_role("button", name="Take it out of the file").click()
    awning.settle()
    assert "route" not in awning.saved()


def test_a_way_that_is_typed_into_the_script_is_followed_and_one_begun_by_hand_stays(awning):
    awning.open("market-awning.yaml", "solve")
    awning.page.get_by_role("link", name="State").click()
    write = "async (t) => { const { write } = await import('/web/acts/editing.js'); const { store } = await import('/web/store.js'); await write(store.get().history.text + t); }"
    awning.page.evaluate(write, f"route: [{OWN[0]}]\n")
    awning.page.get_by_role("link", name="Solve").click()
    awning.settle()
    assert taken(awning) == [OWN[0]]
    awning.page.fill("input[name=sum]", OWN[1])
    awning.page.press("input[name=sum]", "Enter")
    awning.settle()

    awning.page.evaluate("async () => { const { undo } = await import('/web/acts/editing.js'); await undo(); }")
    awning.settle()
    assert "route" not in awning.text() and taken(awning) == list(OWN)


def test_a_sum_that_does_not_lead_on_goes_with_the_next_act(awning):
    awning.open("market-awning.yaml", "solve")
    typed = awning.page.locator("input[name=sum]")

    def take(sum_):
        typed.fill(sum_)
        typed.press("Enter")
        awning.settle()
        return taken(awning)

    assert take("moments about Nowhere on whole") == ["moments about Nowhere on whole"]
    assert awning.page.locator(".steps .not .remark").inner_text().strip()
    assert take(OWN[0]) == [OWN[0]]
    assert take(OWN[0]) == [OWN[0], OWN[0]], "the second tells nothing new"
    awning.page.locator(".bodies button", has_text="member arm").click()
    awning.settle()
    assert taken(awning) == [OWN[0]]
    take("moments about Nowhere on whole")
    awning.page.get_by_role("button", name="Take the last sum back").click()
    awning.settle()
    assert taken(awning) == [OWN[0]], "what was struck out is the last"
    take("moments about Nowhere on whole")
    awning.page.get_by_role("button", name="Write into the file").click()
    awning.settle()
    assert awning.saved().endswith(f"route: [{OWN[0]}]\n") or awning.saved().endswith(f"- {OWN[0]}\n")
    assert taken(awning) == [OWN[0]]


def test_the_keys_of_the_desk_work_while_a_framed_page_has_the_focus(awning):
    awning.open("market-awning.yaml", "teach")
    page, keys = awning.page, awning.page.locator(".keys")
    inner = page.frame_locator(".framed iframe")
    step = inner.locator(".t-step")
    inner.locator("#teach").focus()
    page.keyboard.press("?")
    keys.wait_for()
    page.keyboard.press("Escape")
    keys.wait_for(state="detached")
    assert inner.locator("#teach").is_visible(), "the list of keys goes first"
    before = step.inner_text()
    page.keyboard.press("ArrowRight")
    assert step.inner_text() != before or inner.locator(".ask:not(.yet)").count(), "its own keys are its own"
    page.keyboard.press("Alt+5")
    page.locator(".preview iframe").wait_for()

    page.frame_locator(".preview iframe").locator("#teach-open").focus()
    page.keyboard.press("Alt+3")
    page.locator(".solve").wait_for()
    page.keyboard.press("Alt+4")
    inner.locator("#teach").focus()
    page.keyboard.press("Escape")
    inner.locator("#teach").wait_for(state="hidden")
    page.keyboard.press("Alt+1")
    page.locator("#sheet").wait_for()
