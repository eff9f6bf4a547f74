"""The list of a folder: order, faulty files, every form, and that it agrees with its schema."""

import json
from pathlib import Path

import jsonschema
import pytest

from lessons import FREE
from unpin import cli, register

SCHEMA = json.loads((Path(__file__).parents[2] / "docs" / "reference" / "index.schema.json").read_text("utf-8"))
EASY = "title: Beam <1>\npoints: {A: [0, 0], B: A right 2}\nmembers: {beam: A B}\nsupports: {A: pin, B: roller}\nloads: [3 N at B down]\nfind: [B]\n"
HARD = EASY.replace("find: [B]", "find: [A, B]")


@pytest.fixture
def folder(tmp_path):
    for name, text in {"a-hard": HARD, "b-easy": EASY, "c-faulty": EASY.replace("at B", "at Z"), "d-free": FREE}.items():
        (tmp_path / f"{name}.yaml").write_text(text)
    (tmp_path / "notes.txt").write_text("no problem")
    return tmp_path


def test_problems_come_from_easy_to_hard_and_those_with_faults_last_with_their_fault(folder, capsys):
    assert [e.file for e in register.index(folder)] == ["b-easy.yaml", "a-hard.yaml", "c-faulty.yaml", "d-free.yaml"]
    assert cli.main(["index", str(folder)]) == 1
    shown = capsys.readouterr().out
    assert "b-easy: 6 min; sums: 1; free bodies: 1" in shown
    assert 'point "Z" is not known' in " ".join(shown.split()) and "not sound for what it asks" in shown


def test_the_data_agree_with_their_schema(folder, capsys):
    cli.main(["index", str(folder), "--json"])
    data = json.loads(capsys.readouterr().out)

    jsonschema.validate(data, SCHEMA)
    assert [p["solved"] for p in data["problems"]] == [True, True, False, False]
    assert len(data["problems"][2]["diagnostics"]) == 1


@pytest.mark.parametrize("ending", register.ENDINGS)
def test_a_title_cannot_break_out_of_the_file(folder, tmp_path, ending):
    out = tmp_path / f"list{ending}"

    assert cli.main(["index", str(folder), "-o", str(out)]) == 1
    text = out.read_text("utf-8")
    assert "b-easy" in text and "<1>" not in text


def test_the_examples_are_listed_by_one_word_and_in_another_language(tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)

    assert cli.main(["index", "examples", "--language", "es"]) == 0
    assert "elemento de dos fuerzas" in " ".join(capsys.readouterr().out.split())


@pytest.mark.parametrize("arguments", [["no-folder"], ["examples", "-o", "list.xml"]])
def test_wrong_use_is_told(arguments, tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)

    assert cli.main(["index", *arguments]) == 2
    assert capsys.readouterr().err.startswith("unpin: ")


def test_a_block_with_corners_is_counted_among_the_parts(tmp_path):
    (tmp_path / "crate.yaml").write_text("points: {A: [0, 0], B: [1, 0], C: [1, 1], D: [0, 1]}\nblocks: {crate: A B C D}\n"
                                         "supports: {A: pin, B: roller}\nloads: [weight of crate 10 N]\nfind: [A, B]\n")
    (entry,) = register.index(tmp_path)
    assert register.parts_of(entry) == "1 block"


def test_a_wheel_meets_the_edge_of_a_step_and_no_knife_edge(tmp_path):
    (tmp_path / "cart.yaml").write_text("points: {C: [0, 0], E: 0.5 from C at 40 deg below right}\ndiscs: {wheel: 0.5 m at C}\nletters: {P: unknown}\n"
                                        "contacts: {E: ground pushes wheel}\nloads: [weight of wheel 80 N, P at C right]\nfind: [P, E]\n")
    (entry,) = register.index(tmp_path)

    assert entry.solved
    assert register.named("kind", entry.kinds) == "edge of a step"
    assert register.named("kind", entry.kinds, "es") == "borde de un escalón"
