"""Pages in a real browser: nothing is refused, nothing overflows, a term and its arrow light up together."""

import pytest

from lessons import EXAMPLES, lesson
from unpin.render import html


@pytest.fixture
def opened(page, tmp_path):
    """Opens a lesson's page from disk and collects what the browser complains of."""
    complaints = []
    page.on("console", lambda m: complaints.append(m.text))
    page.on("pageerror", lambda e: complaints.append(str(e)))
    page.on("request", lambda r: complaints.append(r.url) if not r.url.startswith(("file:", "data:")) else None)

    def open_page(name, width=1100):
        path = tmp_path / f"{name}.html"
        path.write_text(html.write(lesson(name)), "utf-8")
        page.set_viewport_size({"width": width, "height": 900})
        page.goto(path.as_uri())
        page.evaluate("document.fonts.ready")
        return page, complaints

    return open_page


@pytest.mark.parametrize("width", [360, 1100])
@pytest.mark.parametrize("name", EXAMPLES)
def test_a_page_fits_its_window_and_the_browser_has_no_complaint(opened, name, width):
    page, complaints = opened(name, width)

    assert page.evaluate("document.documentElement.scrollWidth") <= width
    assert not complaints


def test_the_shipped_typefaces_are_in_use(opened):
    page, _ = opened("market-awning")

    assert page.evaluate("[...document.fonts].filter(f => f.status === 'loaded').map(f => f.family).sort().join()").count("Unpin") >= 3


def test_pointing_at_a_term_lights_its_arrow_and_leaving_puts_it_out(opened):
    page, _ = opened("market-awning")
    term = page.locator(".body mrow.term").first
    action = term.get_attribute("data-action")

    term.hover()
    lit = page.evaluate("[...document.querySelectorAll('.lit')].map(e => [e.localName, e.getAttribute('data-action')])")
    page.mouse.move(0, 0)

    assert ["g", action] in lit and ["mrow", action] in lit
    assert {a for _, a in lit} == {action}
    assert page.locator(".lit").count() == 0


def test_an_arrow_is_reached_by_the_keyboard_and_the_cue_is_not_colour_alone(opened):
    page, _ = opened("market-awning")
    action = page.locator(".body mrow.term").first.get_attribute("data-action")
    arrow = page.locator(f".body g[data-action='{action}'][tabindex='0']").first
    before = arrow.locator("path").first.evaluate("e => getComputedStyle(e).strokeWidth")

    arrow.focus()

    assert "lit" in arrow.get_attribute("class")
    assert arrow.locator("path").first.evaluate("e => getComputedStyle(e).strokeWidth") != before
    assert page.locator("mrow.lit").first.evaluate("e => getComputedStyle(e).outlineStyle") == "solid"


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_text_stands_out_from_its_ground_in_both_schemes(opened, scheme):
    page, _ = opened("market-awning")
    page.emulate_media(color_scheme=scheme)

    ratio = page.evaluate("""() => {
      const channel = (c) => (c /= 255) <= 0.03928 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
      const light = (css) => { const [r, g, b] = css.match(/[0-9.]+/g).map(Number); return 0.2126 * channel(r) + 0.7152 * channel(g) + 0.0722 * channel(b); };
      const paper = light(getComputedStyle(document.documentElement).backgroundColor);
      return Math.min(...[...document.querySelectorAll("p, h3, figcaption, li, footer")].map((e) => {
        const ink = light(getComputedStyle(e).color);
        return (Math.max(ink, paper) + 0.05) / (Math.min(ink, paper) + 0.05);
      }));
    }""")

    assert ratio >= 4.5


@pytest.mark.parametrize("name", EXAMPLES)
def test_on_a_telephone_no_working_has_to_be_scrolled(opened, name):
    page, _ = opened(name, 360)

    assert page.evaluate("[...document.querySelectorAll('.working')].filter(e => e.scrollWidth > e.clientWidth).map(e => e.id)") == []


def test_the_sign_of_a_root_stands_about_its_number(opened):
    page, _ = opened("sack-crane")
    page.set_content("<style>" + page.evaluate("[...document.querySelectorAll('style')].map(s => s.textContent).join('')") + "</style>"
                     "<math displaystyle='true' style='font-size: 100px'><msqrt><mn>74</mn></msqrt></math>")
    page.evaluate("document.fonts.ready")
    sign, number = (page.evaluate(f"(() => {{ const b = document.querySelector('{e}').getBoundingClientRect(); return [b.top, b.bottom]; }})()") for e in ("msqrt", "mn"))

    # The smallest sign of the typeface is taller than two digits and their rule: what is over stands below and above, not all below.
    below = sign[1] - number[1]
    assert 0 < below < 30
