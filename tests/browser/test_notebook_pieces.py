"""A piece for a notebook in a real browser: nothing around it changes its looks, and it has those of its host."""

import pytest

import unpin
from unpin import bundled

AROUND = '<h1 class="boxed">Outside</h1><p class="lead">text</p><table><tr><td class="arrow">x</td></tr></table><math><mi>x</mi></math><ul><li>y</li></ul>'
LOOKS = """() => [...document.querySelectorAll('#around *')].map(e => {
  const s = getComputedStyle(e); return [e.tagName, s.font, s.color, s.margin, s.padding, s.border, s.maxWidth, s.boxSizing].join('|') })"""


@pytest.fixture(scope="module")
def shown():
    return unpin.solve(unpin.load(bundled.path_of("market-awning"), style="none"))._repr_html_()


def test_what_stands_around_a_piece_looks_as_before(page, shown):
    page.set_content(f'<div id="around">{AROUND}</div>')
    before = page.evaluate(LOOKS)
    page.set_content(f'<div id="around">{AROUND}</div>{shown}')

    assert page.evaluate(LOOKS) == before


@pytest.mark.parametrize(("host", "paper"), [("true", "rgb(255, 255, 255)"), ("false", "rgb(22, 24, 26)")])
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_piece_has_the_colours_of_its_host_whatever_the_reader_has(page, shown, host, paper, scheme):
    page.emulate_media(color_scheme=scheme)
    page.set_content(f'<div data-jp-theme-light="{host}">{shown}</div>')

    assert page.evaluate("getComputedStyle(document.querySelector('.unpin-shown')).backgroundColor") == paper


def test_a_piece_is_no_wider_than_its_cell(page, shown):
    page.set_content(f'<div id="cell" style="width: 600px; overflow: auto">{shown}</div>')

    assert page.evaluate("document.querySelector('#cell').scrollWidth <= 600")
