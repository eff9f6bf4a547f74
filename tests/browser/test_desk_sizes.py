"""A telephone held upright, fingers, and targets large enough."""

import shutil
from pathlib import Path

import pytest

EXAMPLES = Path(__file__).parents[2] / "examples"
ACTS = ("state", "apart", "solve", "teach", "hand-out")


@pytest.fixture
def phone(phone):
    shutil.copy(EXAMPLES / "market-awning.yaml", phone.folder / "market-awning.yaml")
    return phone


@pytest.mark.parametrize("act", ACTS)
def test_nothing_runs_off_the_side_of_a_telephone(phone, act):
    phone.open("market-awning.yaml", act)

    assert phone.page.evaluate("document.documentElement.scrollWidth") <= 390
    for part in ("header", "#sentence", ".side"):
        for k in range(phone.page.locator(part).count()):
            box = phone.page.locator(part).nth(k).bounding_box()
            assert box is None or box["x"] + box["width"] <= 391


@pytest.mark.parametrize("act", ACTS)
def test_what_is_pressed_is_large_enough_for_a_finger(phone, act):
    phone.open("market-awning.yaml", act)
    small = phone.page.evaluate("""() => [...document.querySelectorAll('button, nav a, select, input')].map((e) => [e.getBoundingClientRect(), e.textContent])
        .filter(([b]) => b.width && (b.height < 43.5 && b.height && !['radio', 'checkbox'].includes(b.type))).map(([b, t]) => `${t.trim()} ${b.width}x${b.height}`)""")

    assert not [s for s in small if not s.startswith(" ")], small


def test_a_finger_touches_a_thing_and_lands_a_point(phone):
    phone.open("market-awning.yaml")
    phone.page.touchscreen.tap(*phone.spot(2.1, 2.9))
    phone.settle()
    assert phone.state("touched") == ["point E"]

    phone.page.touchscreen.tap(*phone.spot(1.2, 0.8))
    phone.settle()
    assert len(phone.state("drawn")["points"]) == 7


def test_a_finger_points_at_a_sum_first_and_takes_it_with_the_second_press(phone):
    phone.open("market-awning.yaml", "solve")
    first = phone.page.locator(".sums button").first
    first.tap()
    phone.settle()
    assert phone.page.locator(".pointable .gone").count() >= 1
    assert phone.page.locator(".steps li").count() == 0

    first.tap()
    phone.settle()
    assert phone.page.locator(".steps li").count() == 1


def test_two_fingers_make_the_figure_larger_about_the_place_between_them(phone):
    phone.open("market-awning.yaml")
    before = phone.state("view")["k"]
    session = phone.page.context.new_cdp_session(phone.page)
    x, y = phone.spot(1, 1.5)
    for kind, gap in (("touchStart", 30), ("touchMove", 45), ("touchMove", 60)):
        session.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": [{"x": x - gap, "y": y, "id": 0}, {"x": x + gap, "y": y, "id": 1}]})
    session.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})
    phone.settle()

    assert phone.state("view")["k"] == pytest.approx(2 * before, rel=0.1)
    assert phone.spot(1, 1.5) == pytest.approx([x, y], abs=6)
    assert not phone.state("history")["done"]


def test_the_script_is_unrolled_below_on_a_telephone(phone):
    phone.open("market-awning.yaml")
    phone.page.get_by_role("button", name="Script").click()
    phone.settle()
    sheet, script = (phone.page.locator(p).bounding_box() for p in ("#stage", "#script"))

    assert script["y"] >= sheet["y"] + sheet["height"] - 1
    assert script["width"] == pytest.approx(390, abs=1)
