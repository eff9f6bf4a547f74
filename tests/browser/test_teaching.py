"""The teaching view in a real browser: an idea at a time, nothing early, nothing lost, nothing cut off."""

import json
from dataclasses import replace
from functools import cache

import pytest

from leaks import dimensions, holds_value, of_page, values
from lessons import EXAMPLES, FREE, lesson, worked, worked_text
from unpin.bundled import path_of
from unpin.lesson.board import ARMS, RING
from unpin.lesson.build import build
from unpin.lesson.fade import LEVELS, fade, hides_centres
from unpin.lesson.ideas import told
from unpin.lesson.nodes import Line, Working, walk
from unpin.lesson.paper import paper
from unpin.lesson.sheet import sheet_for
from unpin.lesson.short import short
from unpin.render import html
from unpin.render import json as data
from unpin.render.maths import spoken

SIZES = [(1280, 720), (1920, 1080), (390, 844)]

WRITTEN: dict = {}
"""Pages by the id of their lesson, which is kept beside them: drawing figures takes longer than looking at them."""

STATE = """() => {
  const root = document.getElementById("teach"), seen = (e) => e.getClientRects().length > 0 && getComputedStyle(e).visibility === "visible";
  const said = root.querySelector(".t-said"), svg = root.querySelector(".t-drawn svg");
  return {
    found: root.querySelector(".t-found").textContent, way: root.querySelector("[aria-current=step]").textContent,
    where: root.querySelector(".t-step").textContent, hash: location.hash, asked: said.querySelector(".ask:not(.yet)")?.textContent ?? null,
    rows: [...said.querySelectorAll(".row .line")].filter(seen).map((e) => e.getAttribute("aria-label")),
    said: [...said.children].filter(seen).length,
    arrows: svg ? [...svg.querySelectorAll("g[data-action]")].filter(seen).map((e) => e.getAttribute("data-action")) : [],
    lit: svg ? [...svg.querySelectorAll("g.lit")].map((e) => e.getAttribute("data-action")) : [],
    terms: [...said.querySelectorAll(".row.now .term.lit")].filter(seen).map((e) => e.dataset.action),
    ring: svg ? [...svg.querySelectorAll(":scope > g.centre")].filter(seen).length : 0,
    boxes: [...said.querySelectorAll(".boxed")].filter(seen).length,
  };
}"""

CUT_OFF = """() => {
  const root = document.getElementById("teach"), W = innerWidth, H = innerHeight, out = [];
  const box = (e) => e.getBoundingClientRect(), said = root.querySelector(".t-said"), drawn = root.querySelector(".t-drawn");
  const inside = (r, o, what) => { if (r.width && (r.left < o.left - 2 || r.right > o.right + 2 || r.top < o.top - 2 || r.bottom > o.bottom + 2)) out.push(what); };
  const page = { left: 0, top: 0, right: W, bottom: H };
  for (const b of root.querySelectorAll("button, select, .t-head p, .t-board")) inside(box(b), page, b.className + b.textContent.slice(0, 20));
  for (const b of root.querySelectorAll("button, select")) { const r = box(b); if (r.width && (r.width < 43.5 || r.height < 43.5)) out.push("small " + b.textContent); }
  const svg = drawn.querySelector("svg");
  if (svg) inside(box(svg), box(root.querySelector(".t-board")), "figure");
  const now = [...said.querySelectorAll(".now")].pop();
  if (now) { const r = box(now), o = box(said); if (r.height <= o.height + 2) inside(r, o, "newest: " + now.textContent.slice(0, 30)); else if (r.left < o.left - 2 || r.right > o.right + 2) out.push("wide"); }
  if (said.scrollWidth > said.clientWidth + 1) out.push("sideways " + said.scrollWidth + ">" + said.clientWidth);
  const [a, b] = [box(drawn), box(said)];
  if (svg && a.width && b.width && a.right > b.left + 1 && b.right > a.left + 1 && a.bottom > b.top + 1 && b.bottom > a.top + 1) out.push("overlap");
  const [k, d] = [box(root.querySelector(".t-keys")), box(root.querySelector(".t-board"))];
  if (d.bottom > k.top + 1) out.push("keys");
  return out;
}"""


@pytest.fixture
def board(page, tmp_path):
    """Opens the teaching view of a lesson from disk and collects what the browser complains of."""
    complaints = []
    page.context.set_offline(True)
    page.on("console", lambda m: complaints.append(m.text))
    page.on("pageerror", lambda e: complaints.append(str(e)))

    def opened(made, width=1280, height=720, hash="#teach"):
        path = tmp_path / "lesson.html"
        path.write_text(WRITTEN.setdefault(id(made), (made, html.write(made) if id(made) not in WRITTEN else ""))[1], "utf-8")
        page.set_viewport_size({"width": width, "height": height})
        page.goto("about:blank")
        page.goto(path.as_uri() + hash)
        page.evaluate("document.fonts.ready")
        until(page, "document.body.classList.contains('teaching') || location.hash.indexOf('teach') < 0")
        return page

    opened.complaints = complaints
    return opened


@cache
def expected(name):
    """What stands on the board at each idea: (spoken lines, arrows that must be there, arrows that must not, lit, whether the
    ring round the centre is there)."""
    made = lesson(name)
    known = told(made)
    headers = {id(n.header) for s in made.sections for n in walk(s.children) if isinstance(n, Working)}
    out = []
    for k, idea in enumerate(known.ideas):
        figure = known.scenes[idea.scene].figure
        same = [i for i in known.ideas if known.scenes[i.scene].figure is figure]
        every = {a for i in same for a in i.arrows if a != ARMS and not a.startswith(RING)}
        shown = {a for i in same if known.ideas.index(i) <= k for a in i.arrows} & every
        lines = {}
        for i in known.ideas[:k + 1]:
            if i.scene == idea.scene:
                for x in i.shows:
                    if isinstance(x, Line):
                        lines[id(x)] = spoken.write(x.formula)
                    elif id(x) in headers:
                        lines[id(x)] = spoken.write(x)
        ring = any(a.startswith(RING) for i in known.ideas[:k + 1] if i.scene == idea.scene for a in i.arrows)
        out.append((list(lines.values()), shown, every - shown, set(idea.lit), ring))
    return out


WALK = """([keys, look]) => {
  const see = eval(look), out = [see()];
  for (const key of keys) {
    document.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true }));
    out.push(see());
  }
  return out;
}"""


def until(page, said):
    """Wait until an expression holds. The page's policy forbids the way in which the library would wait for it."""
    for _ in range(100):
        if page.evaluate(said):
            return
        page.wait_for_timeout(50)
    pytest.fail(f"never came: {said}")


def walk_through(page, keys, look):
    """What `look` finds before the first key and after each."""
    return page.evaluate(WALK, [keys, f"({look})"])


@pytest.mark.parametrize("name", EXAMPLES)
def test_each_key_adds_one_idea_and_back_takes_it_away(board, name):
    steps = expected(name)
    page = board(lesson(name))
    page.keyboard.press("q")
    there = [["ArrowRight", "PageDown", " ", "ArrowDown"][k % 4] for k in range(len(steps) - 1)]
    back = [["ArrowLeft", "PageUp", "ArrowUp", "Backspace"][k % 4] for k in range(len(steps) - 1)]

    states = walk_through(page, [*there, *back], STATE)

    for k, state in enumerate(states):
        k = k if k < len(steps) else 2 * len(steps) - 2 - k
        lines, shown, not_yet, lit, ring = steps[k]
        where = f"idea {k + 1}"
        assert state["hash"] == f"#teach-{k + 1}" and state["asked"] is None, where
        assert state["rows"] == lines, where
        assert shown <= set(state["arrows"]), where
        assert not not_yet & set(state["arrows"]), where
        assert set(state["lit"]) == lit & set(state["arrows"]), where
        assert bool(state["ring"]) == ring, where
        assert set(state["terms"]) <= set(state["lit"]), where
    assert not board.complaints


@pytest.mark.parametrize("name", EXAMPLES[::3])  # every idea at three sizes takes long; a third holds every kind of chapter
def test_nothing_overlaps_or_is_cut_off_on_a_wall_or_on_a_telephone(board, name):
    page = board(lesson(name))
    found = {}
    for width, height in SIZES:
        page.set_viewport_size({"width": width, "height": height})
        page.wait_for_timeout(100)
        walk_through(page, ["Home"], CUT_OFF)
        # The second size has the shape of the first: there the questions need not be looked at again.
        asks = width != 1920
        cut = walk_through(page, ["PageDown"] * 2 * len(expected(name)) if asks else ["q", *["PageDown"] * len(expected(name)), "q"], CUT_OFF)
        found |= {(width, k): c for k, c in enumerate(cut, 1) if c}

    assert found == {}


@pytest.mark.parametrize("name", ["market-awning", "lock-gate", "foot-bridge"])
def test_what_stands_at_the_end_are_the_answers_of_the_data(board, name):
    made = lesson(name)
    answers = json.loads(data.write(worked(name), made, sheet_for(worked(name).problem, worked(name).values)))["answers"]
    page = board(made)

    page.keyboard.press("End")

    shown = page.locator("#teach .t-said .boxed").all_inner_texts()
    assert len(shown) == len(worked(name).answers)
    text = "".join("".join(shown).split())
    assert [a["printed"] for a in answers if "".join(a["printed"].split()) not in text] == []
    assert page.locator("#teach .t-drawn svg").count() == 1


def test_a_question_waits_for_the_class_and_can_be_switched_off(board):
    page = board(lesson("market-awning"), hash="#teach-14")
    page.keyboard.press("ArrowRight")
    asked = page.evaluate(STATE)
    page.keyboard.press("ArrowRight")
    told_it = page.evaluate(STATE)
    page.keyboard.press("ArrowLeft")

    assert asked["asked"].startswith("Which point takes the moments") and asked["said"] == 1 and asked["hash"] == "#teach-15-ask"
    assert told_it["asked"] is None and told_it["hash"] == "#teach-15" and told_it["ring"] == 1
    assert page.evaluate(STATE)["asked"] == asked["asked"] and page.evaluate(STATE)["ring"] == 0

    page.keyboard.press("q")
    assert page.evaluate(STATE)["asked"] is None
    assert page.get_by_role("button", name="Ask first").get_attribute("aria-pressed") == "false"
    page.reload()
    page.wait_for_selector("#teach:not([hidden])")
    page.keyboard.press("ArrowLeft")
    page.keyboard.press("ArrowRight")
    assert page.evaluate(STATE)["hash"] == "#teach-15"


def test_the_address_keeps_the_place_and_leaving_gives_the_page_back(board):
    page = board(lesson("market-awning"), hash="")
    page.get_by_role("button", name="Teach it, an idea at a time").click()
    page.keyboard.press("End")
    last = page.evaluate("location.hash")
    assert page.evaluate("[...document.querySelectorAll('main, body > header, body > footer')].every(e => !e.getClientRects().length)")

    page.reload()
    page.wait_for_selector("#teach:not([hidden])")
    assert page.evaluate("location.hash") == last

    page.keyboard.press("Escape")
    assert page.locator("#teach").is_hidden() and page.locator("main").is_visible()
    assert page.evaluate("[...document.querySelectorAll('main, body > header, body > footer')].every(e => e.getClientRects().length)") and "teach" not in page.evaluate("location.href.split('#')[1] ?? ''")
    assert page.evaluate("document.activeElement.id") == "teach-open"
    page.evaluate("location.hash = '#teach-3'")
    page.wait_for_selector("#teach:not([hidden])")
    assert page.evaluate(STATE)["where"] == "what is asked"


def test_buttons_the_list_of_chapters_taps_and_swipes_go_there_too(board):
    page = board(lesson("market-awning"))
    page.get_by_role("button", name="Next").click()
    assert page.evaluate(STATE)["hash"] == "#teach-2"
    page.keyboard.press("Space")
    assert page.evaluate(STATE)["hash"] == "#teach-3", "space on a button that has the focus is one step, not two"
    page.get_by_role("button", name="Back").click()
    page.get_by_label("Go to").select_option(label="The plan")
    assert page.evaluate(STATE)["hash"] == "#teach-6"
    page.mouse.click(900, 400)
    assert page.evaluate(STATE)["hash"] == "#teach-7-ask"
    page.mouse.click(100, 400)
    assert page.evaluate(STATE)["hash"] == "#teach-6"
    for start, end, at in ((900, 600, "#teach-7-ask"), (600, 900, "#teach-6")):
        page.mouse.move(start, 400)
        page.mouse.down()
        page.mouse.move(end, 405, steps=3)
        page.mouse.up()
        page.evaluate("getSelection().removeAllRanges()")
        assert page.evaluate(STATE)["hash"] == at


def test_a_second_window_says_what_comes_and_either_drives_both(board):
    page = board(lesson("market-awning"), hash="#teach-16")
    with page.expect_popup() as opening:
        page.keyboard.press("n")
    notes = opening.value
    notes.wait_for_selector("#notes .n-then math")

    assert notes.locator("main").is_hidden()
    assert "positive" in notes.locator(".n-cue").inner_text()
    page.keyboard.press("ArrowRight")
    until(notes, "document.querySelector('#notes .n-step').textContent.includes('term by term')")
    assert "One term for each force" in notes.locator(".n-cue").inner_text()
    notes.bring_to_front()
    notes.keyboard.press("PageDown")
    notes.get_by_role("button", name="Next", exact=True).click()
    until(page, "location.hash === '#teach-19'")

    clock = notes.locator(".n-clock")
    assert clock.inner_text() == "00:00"
    notes.get_by_role("button", name="Start").click()
    until(notes, "document.querySelector('.n-clock').textContent === '00:01'")
    notes.get_by_role("button", name="Pause").click()
    notes.get_by_role("button", name="From zero").click()
    assert clock.inner_text() == "00:00"

    page.reload()
    page.wait_for_selector("#teach:not([hidden])")
    page.keyboard.press("ArrowLeft")
    page.keyboard.press("ArrowLeft")
    page.keyboard.press("ArrowLeft")
    page.keyboard.press("n")
    page.wait_for_timeout(500)
    notes = next(p for p in page.context.pages if p is not page and not p.is_closed())
    until(notes, "document.querySelector('#notes .n-step').textContent.includes('what is summed')")
    assert len([p for p in page.context.pages if not p.is_closed()]) == 2
    notes.evaluate("location.reload()")
    page.wait_for_timeout(700)
    page.keyboard.press("n")
    page.wait_for_timeout(300)
    notes = next(p for p in page.context.pages if p is not page and not p.is_closed())
    until(notes, "document.querySelector('#notes .n-then math') !== null")
    notes.close()
    page.wait_for_timeout(500)
    page.keyboard.press("ArrowLeft")
    with page.expect_popup():
        page.keyboard.press("n")
    assert not board.complaints


def test_the_pen_leaves_marks_on_its_idea_rubs_out_wipes_and_is_put_down_first(board):
    page = board(lesson("market-awning"), hash="#teach-5")
    page.keyboard.press("p")

    def draw(y):
        page.mouse.move(300, y)
        page.mouse.down()
        page.mouse.move(500, y + 30, steps=5)
        page.mouse.up()
        return page.locator(".t-ink path").count()

    assert [draw(300), draw(400)] == [1, 2]
    assert page.evaluate(STATE)["hash"] == "#teach-5", "a stroke is no tap"
    page.keyboard.press("ArrowRight")
    assert page.locator(".t-ink path").count() == 0
    page.keyboard.press("ArrowLeft")
    assert page.locator(".t-ink path").count() == 2
    page.keyboard.press("e")
    draw(400)
    assert page.locator(".t-ink path").count() == 1
    page.get_by_role("button", name="Wipe").click()
    assert page.locator(".t-ink path").count() == 0
    page.keyboard.press("Escape")
    assert page.locator("#teach").is_visible() and page.get_by_role("button", name="Wipe").is_hidden()
    page.keyboard.press("Escape")
    assert page.locator("#teach").is_hidden()


def test_nothing_of_it_is_printed_and_nothing_moves_for_those_who_ask_for_rest(board):
    page = board(lesson("market-awning"), hash="#teach-19")
    page.emulate_media(media="print")
    assert page.locator("#teach").is_hidden() and page.locator("main").is_visible() and page.locator("#teach-open").is_hidden()

    page.emulate_media(media="screen", reduced_motion="reduce")
    page.wait_for_selector("#teach .term.lit")
    assert page.evaluate("getComputedStyle(document.querySelector('.t-said .now')).animationName") == "none"


def test_a_voice_reads_each_idea_and_a_figure_tells_nothing_early(board):
    page = board(lesson("market-awning"), hash="#teach-11")
    live = page.locator(".t-live")
    assert "Cut the whole structure loose" in live.inner_text()
    assert page.locator(".t-drawn svg").get_attribute("aria-describedby") is None
    page.evaluate("location.hash = '#teach-17'")
    until(page, "location.hash === '#teach-17'")
    until(page, "document.querySelector('.t-live').textContent.includes('force A x')")
    page.evaluate("location.hash = '#teach-20'")
    until(page, "document.querySelector('.t-live').textContent.includes('2.8 metres times A x')")
    assert page.locator(".t-drawn svg").get_attribute("aria-describedby") == "figure-3-told"
    assert page.locator(".t-drawn svg").get_attribute("aria-label")


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing(board, scheme):
    from test_desk_safety import axe

    script = axe()
    page = board(lesson("market-awning"))
    page.emulate_media(color_scheme=scheme, reduced_motion="reduce")
    run = f"async () => {{ {script}; return (await axe.run(document, {{resultTypes: ['violations']}})).violations.map(v => `${{v.id}} ${{v.nodes[0].html}}`); }}"

    for at in ("#teach-1", "#teach-2", "#teach-7-ask", "#teach-8", "#teach-13", "#teach-15-ask", "#teach-19", "#teach-71", "#teach-75", "#teach-76"):
        page.evaluate(f"location.hash = '{at}'")
        until(page, f"location.hash === '{at}'")
        assert page.evaluate(run) == [], at
    page.keyboard.press("p")
    with page.expect_popup() as opening:
        page.keyboard.press("n")
    notes = opening.value
    notes.emulate_media(color_scheme=scheme)
    notes.wait_for_selector("#notes .n-then")
    assert notes.evaluate(run) == []


@pytest.mark.parametrize("level", LEVELS)
def test_a_faded_lesson_shows_no_more_an_idea_at_a_time_than_on_paper(board, level):
    whole = build(worked("market-awning"))
    faded = fade(build(worked("market-awning"), centres=not hides_centres(level)), level)
    hidden = values(whole) - values(faded) - dimensions(faded)
    page = board(faded)

    shown = walk_through(page, ["PageDown"] * 2 * len(told(faded).ideas), "() => document.getElementById('teach').outerHTML")

    assert level < 2 or len(hidden) >= 4
    for digits in hidden:
        assert not any(holds_value(of_page(text), digits) for text in shown), digits
    assert any("space" in text for text in shown)


def test_what_the_author_wrote_stays_text(board):
    evil = '<img src=x onerror="window.hit=1"></div><script>window.hit=1</script>'
    problem = replace(worked("market-awning").problem, title=evil, text=evil)
    page = board(build(replace(worked("market-awning"), problem=problem)))

    page.keyboard.press("PageDown")
    page.keyboard.press("Home")
    with page.expect_popup() as opening:
        page.keyboard.press("n")
    notes = opening.value
    notes.wait_for_selector("#notes .n-now")
    assert evil in notes.locator(".n-now").inner_text() and evil in notes.locator("h1").inner_text() and notes.title() == evil
    assert notes.locator("img").count() == 0 and notes.locator("script").count() == 0 and notes.evaluate("window.hit") is None

    assert evil in page.locator(".t-title").inner_text() and page.evaluate("window.hit") is None
    assert page.locator("img").count() == 0


@pytest.mark.parametrize("made", [lambda: build(worked_text(FREE)), lambda: short(lesson("lock-gate")),
                                  lambda: paper([worked("market-awning"), worked("lock-gate")], answers=True),
                                  lambda: build(worked("theatre-hoist"), language="es")], ids=["it can move", "short", "sheet", "Spanish"])
def test_lessons_of_every_form_fit_the_board(board, made):
    made = made()
    page = board(made)
    for width, height in ((1280, 720), (390, 844)):
        page.set_viewport_size({"width": width, "height": height})
        page.wait_for_timeout(100)
        walk_through(page, ["Home"], CUT_OFF)
        assert [c for c in walk_through(page, ["PageDown"] * 2 * len(told(made).ideas), CUT_OFF) if c] == []
    assert not board.complaints


def test_from_the_desk_it_stands_in_a_frame_and_its_second_window_opens(hand):
    (hand.folder / "shelf.yaml").write_text(path_of("market-awning").read_text("utf-8"), "utf-8")
    hand.open("shelf.yaml", "teach")
    frame = hand.page.frame_locator("main iframe")
    frame.locator("#teach .t-board").wait_for(timeout=20000)
    inside = next(f for f in hand.page.frames if "/teach" in f.url)

    inside.locator("#teach [data-do=next]").click()
    assert inside.evaluate("location.hash") == "#teach-2"
    assert inside.evaluate(CUT_OFF) == []
    with hand.page.expect_popup() as opening:
        inside.locator("#teach [data-do=second]").click()
    notes = opening.value
    until(notes, "document.querySelector('#notes .n-step').textContent === 'what is given'")
    notes.keyboard.press("PageDown")
    until(inside, "location.hash === '#teach-3'")
    assert not hand.faults
