"""Whatever the structure, sound or not, every format tells it and the data keep to their schema."""

import json
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from structures import MUTATIONS, structure
from unpin.lesson.build import build
from unpin.lesson.sheet import sheet_for
from unpin.render import html, terminal
from unpin.render import json as data
from unpin.route.work import work

VALIDATOR = Draft202012Validator(json.loads((Path(__file__).parents[2] / "docs" / "reference" / "solution.schema.json").read_text("utf-8")))


@pytest.mark.parametrize("seed", range(3))
@pytest.mark.parametrize("numbers", ["rational", "root", "angle"])
@pytest.mark.parametrize("mutation", MUTATIONS)
def test_any_structure_is_told(mutation, numbers, seed):
    problem = structure(seed, 2, 3, mutation, numbers)
    worked = work(problem)
    lesson = build(worked, drawn=seed == 0)

    text = terminal.write(lesson)
    found = json.loads(data.write(worked, lesson, sheet_for(problem, worked.values or {})))

    assert "Is the problem sound?" in text and ("Check" in text) == (worked.proof is not None)
    assert html.write(lesson).endswith("</html>\n")
    assert not list(VALIDATOR.iter_errors(found))
    assert found["solved"] == (worked.soundness.solvable and all(a["found"] for a in found["answers"]))
