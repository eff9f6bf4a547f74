"""Solutions as data: in the documented format, with the values of the lesson."""

import json
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from lessons import DOUBLE, EXAMPLES, FREE, lesson, worked, worked_text
from unpin import api
from unpin.exact.lettered import is_lettered
from unpin.exact.number import approx
from unpin.lesson.sheet import sheet_for
from unpin.render import json as data

SCHEMA = json.loads((Path(__file__).parents[2] / "docs" / "reference" / "solution.schema.json").read_text("utf-8"))
VALIDATOR = Draft202012Validator(SCHEMA)


def test_the_schema_is_one():
    Draft202012Validator.check_schema(SCHEMA)


@pytest.mark.parametrize("name", EXAMPLES)
def test_a_solution_keeps_to_its_schema(name):
    found = api.as_data(worked(name))

    assert not list(VALIDATOR.iter_errors(found))
    assert found["solved"] and found["proof"]["passed"]


@pytest.mark.parametrize("text", [FREE, DOUBLE])
def test_an_unsound_problem_keeps_to_the_schema_and_claims_nothing(text):
    found = api.as_data(worked_text(text))

    assert not list(VALIDATOR.iter_errors(found))
    assert not found["solved"] and not any(a["found"] for a in found["answers"])


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_answers_are_the_proved_values_in_their_unit(name):
    w = worked(name)
    sheet = sheet_for(w.problem, w.values)
    found = iter(api.as_data(w)["answers"])

    for answer in w.answers:
        for c in answer.components:
            entry = next(found)
            if is_lettered(c.value):
                assert entry["value"] is None and entry["printed"]
                continue
            assert entry["value"] == pytest.approx(abs(approx(c.value / sheet.units[c.dimension].factor)), rel=1e-11)
            assert (entry["name"], entry["sense"]) == (data.component_name(c), c.sense)
            assert entry["worked"] in (entry["value"], -entry["value"])


def test_a_force_against_its_arrow_has_a_magnitude_and_a_negative_worked_value():
    found = {a["name"]: a for a in api.as_data(worked("garden-arch"))["answers"]}

    assert (found["A_x"]["sense"], found["A_x"]["printed"]) == ("left", "9.47\u202fN")
    assert found["A_x"]["worked"] == -found["A_x"]["value"] < 0


@pytest.mark.parametrize("name", [n for n in EXAMPLES if not any(map(is_lettered, worked(n).values.values()))])
def test_the_terms_of_every_equation_add_up_to_zero(name):
    """With the values given beside them and the loads of the problem: the document can be checked by its reader."""
    w = worked(name)
    loads = {a.id: approx(a.value.value) for a in w.structure.actions if a.value is not None}
    values = {u: approx(v) for u, v in w.values.items()}
    for step in api.as_data(w)["steps"]:
        for e in step["equations"]:
            parts = [t["coefficient"] * (values[t["unknown"]] if t["unknown"] else loads[t["action"]]) for t in e["terms"]]
            assert abs(sum(parts)) <= 1e-8 * sum(map(abs, parts)) + 1e-12
            for t in e["terms"]:
                product = t["sign"]
                for f in t["factors"]:
                    product *= f["value"]
                assert t["coefficient"] == pytest.approx(product, rel=1e-10)


def test_the_same_problem_gives_the_same_text():
    w = worked("boat-trailer")
    first, second = (data.write(w, lesson("boat-trailer"), sheet_for(w.problem, w.values)) for _ in range(2))

    assert first == second
    assert json.loads(first)["format"] == "unpin solution"
