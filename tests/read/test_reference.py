"""The reference page, the schema and the examples say the same as the reader does."""

from pathlib import Path

import pytest

from unpin.read import read_file, read_text
from unpin.read.forms import FORMS
from unpin.read.grammar import Misread, parse_phrase
from unpin.read.reference import reference, schema_text
from unpin.read.schema import json_schema

ROOT = Path(__file__).parents[2]


@pytest.mark.parametrize("form", FORMS, ids=lambda f: f"{f.kind}: {f.form}")
def test_every_example_of_the_grammar_is_read(form):
    kind, phrase = ("load", f"3 N at E {form.example}") if form.kind == "direction" else (form.kind, form.example)
    assert not isinstance(parse_phrase(kind, phrase), Misread)


def test_the_reference_pages_are_up_to_date():
    folder = ROOT / "docs" / "reference"
    assert (folder / "problem-file.md").read_text("utf-8") == reference()
    assert (folder / "problem.schema.json").read_text("utf-8") == schema_text()


def test_the_file_on_the_reference_page_is_sound():
    text = reference().split("```yaml\n")[1].split("```")[0]
    assert read_text(text).diagnostics == ()


@pytest.mark.parametrize("path", sorted((ROOT / "examples").glob("*.yaml")), ids=lambda p: p.stem)
def test_every_example_file_is_read_without_a_remark_and_fits_the_schema(path):
    import jsonschema
    import yaml

    assert read_file(path).diagnostics == ()
    jsonschema.validate(yaml.safe_load(path.read_text("utf-8")), json_schema())


def test_the_schema_refuses_an_unknown_section():
    import jsonschema

    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate({"points": {}, "members": {}, "colour": "red"}, json_schema())
