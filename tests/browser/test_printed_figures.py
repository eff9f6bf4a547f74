"""Every figure of every example and published problem, measured as a real browser lays it out at printed width."""

from pathlib import Path

import pytest

from unpin.lesson.build import build
from unpin.lesson.nodes import Drawing
from unpin.read import read_file
from unpin.render.picture import svg
from unpin.route.work import work

ROOT = Path(__file__).parents[2]
PROBLEMS = sorted((ROOT / "examples").glob("*.yaml")) + sorted((ROOT / "tests" / "published" / "problems").glob("*.yaml"))
GAUGE = (Path(__file__).parent / "gauge.js").read_text("utf-8").split("\n", 1)[1]


def drawings(path):
    """Every drawing of the lesson, wherever it stands in the tree."""
    found = []

    def walk(node):
        if isinstance(node, Drawing):
            found.append(node)
        elif isinstance(node, tuple):
            for n in node:
                walk(n)
        elif hasattr(node, "__dataclass_fields__"):
            for name in node.__dataclass_fields__:
                walk(getattr(node, name))

    walk(build(work(read_file(path).problem)))
    return list(dict.fromkeys(found))


@pytest.mark.parametrize("path", PROBLEMS, ids=lambda p: p.stem)
def test_no_label_meets_anything_and_each_is_nearest_its_own(page, path):
    pictures = {d.id: svg(d, "embed") for d in drawings(path)}
    page.set_content("<body style='margin:0'>" + "".join(f"<div id='{k}'>{v}</div>" for k, v in pictures.items()) + "</body>")
    page.evaluate("document.fonts.ready")

    faults = {k: page.evaluate(f"({GAUGE})(document.querySelector('#{k} svg'))") for k in pictures}

    assert {k: f for k, f in faults.items() if f} == {}
    assert pictures


def test_the_gauge_sees_planted_faults(page):
    page.set_content("""<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100" width="100pt" height="100pt">
      <path class="edge" d="M0 50L100 50" stroke="#000" stroke-width="2"/>
      <text x="10" y="52" font-size="9">AB</text><text x="12" y="54" font-size="6">C</text></svg>""")

    faults = page.evaluate(f"({GAUGE})(document.querySelector('svg'))")

    assert "AB meets C" in faults
    assert any(f.startswith("AB meets a edge") for f in faults)
    assert "C: 6 pt" in faults


def test_the_gauge_measures_turned_text_as_it_lies(page):
    page.set_content("""<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100" width="100pt" height="100pt">
      <path class="edge" d="M0 100L100 0" stroke="#000" stroke-width="2"/>
      <text x="20" y="60" font-size="9" transform="rotate(-45 20 60)">12.5</text></svg>""")

    assert page.evaluate(f"({GAUGE})(document.querySelector('svg'))") == []

    page.evaluate("document.querySelector('text').setAttribute('transform', 'rotate(45 20 60)')")
    assert any(f.startswith("12.5 meets a edge") for f in page.evaluate(f"({GAUGE})(document.querySelector('svg'))"))
