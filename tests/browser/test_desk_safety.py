"""What strangers typed is text and never markup; and the page can be used by everybody: axe finds nothing on any view."""

import json
import os
import shutil
from pathlib import Path

import pytest

EXAMPLES = Path(__file__).parents[2] / "examples"
WILD = ("<script>window.hit=1</script> ]]> <![CDATA[ <!-- --> </style></title> &lt; \u202e \u2066 \u200f e\u0301\u0323 \U0001f642 \U0001f469\u200d\U0001f3ed # $ \\\\ -- `x` [a](javascript:window.hit=1) "
        "url(http://x.example/) @import " + "y" * 3000)
PROBES = ['<img src=x onerror="window.hit=1">', '"><script>window.hit=1</script>', "</textarea><svg onload=window.hit=1>", "javascript:window.hit=1", "{{7*7}}${7*7}", WILD]


def axe():
    """The text of axe-core, a test tool only: where NODE_MODULES or `npm root` has it. Without it the test skips, and fails in the automatic run."""
    homes = [os.environ.get("NODE_MODULES", ""), str(Path(__file__).parents[2] / "node_modules"), str(Path.home() / "node_modules")]
    for home in filter(None, homes):
        found = Path(home) / "axe-core" / "axe.min.js"
        if found.is_file():
            return found.read_text("utf-8")
    if os.environ.get("CI"):
        pytest.fail("the automatic run needs axe-core (npm install axe-core)")
    pytest.skip("this test needs axe-core (npm install axe-core, or NODE_MODULES)")


@pytest.mark.parametrize("probe", PROBES)
def test_what_is_typed_anywhere_stays_text(hand, probe):
    quoted = probe.replace("'", "''")
    (hand.folder / "probe.yaml").write_text(
        f"title: 'x {quoted}'\ntext: '{quoted}'\npoints: {{A: [0, 0], B: [2, 0]}}\nmembers: {{beam: A B}}\nsupports: {{A: fixed}}\nloads: ['{quoted}', 5 N at B down]\n")
    (hand.folder / "<img src=x onerror=window.hit=1> \u202e.yaml").write_text("title: x\n")
    asked, said = [], []
    hand.page.on("request", lambda r: asked.append(r.url))
    hand.page.on("console", lambda m: said.append(m.text) if m.type in ("error", "warning") and "status of 4" not in m.text else None)
    hand.page.on("dialog", lambda d: (said.append(d.message), d.dismiss()))
    hand.page.goto(hand.address)
    hand.settle()
    listed = hand.page.locator(".folder li")
    assert "onerror=window.hit" in listed.first.inner_text() and probe[:190] in " ".join(listed.all_inner_texts())

    hand.open("probe.yaml").keys("Alt+s")
    hand.type_line(probe)
    (hand.folder / "sound.yaml").write_text(f"title: 'x {quoted}'\npoints: {{A: [0, 0], B: [2, 0]}}\nmembers: {{beam: A B}}\nsupports: {{A: fixed}}\nloads: [5 N at B down]\n")
    for act in ("state", "apart", "solve", "teach", "hand-out"):
        hand.open("sound.yaml", act)

    assert hand.page.evaluate("window.hit") is None
    assert [f.evaluate("window.hit") for f in hand.page.frames] == [None] * len(hand.page.frames)
    assert hand.page.locator("img[src='x'], [onload], [onerror]").count() == 0
    assert not said and all(u.startswith((hand.address, "data:", "blob:")) for u in asked)


def test_names_with_markup_are_refused_by_the_reader_and_shown_as_text(hand):
    hand.empty("<b>bold<b>")

    assert hand.page.locator("header b").count() == 0


def test_the_page_runs_under_its_own_policy_without_a_complaint(hand):
    shutil.copy(EXAMPLES / "market-awning.yaml", hand.folder / "market-awning.yaml")
    said = []
    hand.page.on("console", lambda m: said.append(m.text) if m.type in ("error", "warning") else None)
    for act in ("state", "apart", "solve", "hand-out"):
        hand.open("market-awning.yaml", act)

    assert not said


def test_nothing_is_asked_of_any_other_machine(hand):
    shutil.copy(EXAMPLES / "sack-crane.yaml", hand.folder / "sack-crane.yaml")
    asked = []
    hand.page.on("request", lambda r: asked.append(r.url))
    for act in ("state", "apart", "solve", "teach", "hand-out"):
        hand.open("sack-crane.yaml", act)

    assert all(u.startswith((hand.address, "data:", "blob:")) for u in asked)


@pytest.mark.parametrize("colours", ["light", "dark"])
def test_axe_finds_nothing_on_any_view(hand, colours):
    script = axe()
    hand.page.emulate_media(color_scheme=colours)
    shutil.copy(EXAMPLES / "market-awning.yaml", hand.folder / "market-awning.yaml")
    (hand.folder / "faulty.yaml").write_text("points: {A: [0, 0], B: [2, 0]}\nmembers: {beam: A B}\nsupports: {A: pin}\nloads: [5 N at Q down]\n")
    (hand.folder / "loose.yaml").write_text("points: {A: [0, 0], B: [2, 0]}\nmembers: {beam: A B}\nsupports: {A: pin}\nloads: [5 N at B down]\n")
    found = {}

    def look(view):
        hand.settle()
        told = hand.page.evaluate(f"async () => {{ {script}; return (await axe.run(document, {{iframes: false, resultTypes: ['violations']}})).violations; }}")
        found.update({f"{view}: {v['id']}": [n["html"][:160] + " " + str(n.get("failureSummary"))[:160] for n in v["nodes"]][:3] for v in told})

    hand.page.goto(hand.address)
    look("folder")
    hand.empty("blank")
    look("empty")
    hand.open("market-awning.yaml")
    look("state")
    hand.press(2.1, 2.9)
    look("touched")
    hand.keys("Escape", "Alt+s", "?")
    look("script and keys")
    hand.open("faulty.yaml").keys("Alt+s")
    look("faulty")
    hand.open("loose.yaml")
    hand.page.locator(".why summary").click()
    look("loose")
    hand.open("market-awning.yaml", "apart")
    hand.page.locator(".bodies button").first.click()
    look("apart")
    hand.open("market-awning.yaml", "solve")
    hand.page.locator(".sums button").first.click()
    look("solve")
    for act in ("teach", "hand-out"):
        hand.open("market-awning.yaml", act)
        look(act)

    assert not found, json.dumps(found, indent=1)
