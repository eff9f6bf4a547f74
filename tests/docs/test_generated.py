"""Generated pages are those that the generator writes now, and they explain everything."""

import importlib.util
import json
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
_spec = importlib.util.spec_from_file_location("docs_tool", ROOT / "tools" / "docs.py")
docs = importlib.util.module_from_spec(_spec)
_spec.loader.exec_module(docs)


def test_the_reference_pages_are_those_of_today(monkeypatch, capsys):
    monkeypatch.setattr(sys, "argv", ["docs.py", "--check"])

    assert docs.main() == 0, capsys.readouterr().out


def test_a_stale_page_is_found_and_written_anew(monkeypatch, tmp_path, capsys):
    for path in docs.FOLDER.glob("*"):
        (tmp_path / path.name).write_bytes(path.read_bytes())
    (tmp_path / "command.md").write_text("old")
    monkeypatch.setattr(docs, "FOLDER", tmp_path)
    monkeypatch.setattr(sys, "argv", ["docs.py", "--check"])

    assert docs.main() == 1
    assert "command.md is not up to date" in capsys.readouterr().out
    monkeypatch.setattr(sys, "argv", ["docs.py"])
    assert docs.main() == 0
    assert (tmp_path / "command.md").read_text("utf-8") == docs.command()


@pytest.mark.parametrize("name", docs.SCHEMAS)
def test_every_field_of_the_data_has_a_description(name):
    schema = json.loads((docs.FOLDER / f"{name}.schema.json").read_text("utf-8"))

    def fields(part):
        if isinstance(part, dict):
            for title, inner in part.get("properties", {}).items():
                yield title, inner
            for inner in part.values():
                yield from fields(inner)
        elif isinstance(part, list):
            for inner in part:
                yield from fields(inner)

    found = list(fields(schema))
    assert found
    assert not [title for title, inner in found if not inner.get("description")]
