"""The command: what it prints, where, and how it ends. Run in-process; the start is measured in a process of its own."""

import io
import json
import os
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator
from referencing import Registry, Resource

from lessons import DOUBLE, EXAMPLES, FREE, OWN
from unpin import api, bundled, cli

REFERENCE = Path(__file__).parents[2] / "docs" / "reference"
SCHEMA, CHECK, WAYS = (json.loads((REFERENCE / f"{name}.schema.json").read_text("utf-8")) for name in ("solution", "check", "ways"))
REGISTRY = Registry().with_resource("solution.schema.json", Resource.from_contents(SCHEMA))
CHECKED, WAYS_CHECKED = (Draft202012Validator(schema, registry=REGISTRY) for schema in (CHECK, WAYS))
FAULTY = "units: m, N\npoints: {A: [0, 0], B: A right 2}\nmembers: {beam: A B}\nsupports: {A: fixed}\nloads: [3 N at F down]\nfind: [A]\n"


@pytest.fixture
def problem(tmp_path):
    """Writes a problem file and gives its name."""

    def write(text: str) -> str:
        path = tmp_path / "problem.yaml"
        path.write_text(text, "utf-8")
        return str(path)

    return write


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_example_is_solved_by_its_bare_name(name, capsys):
    assert cli.main(["solve", name]) == 0

    out, err = capsys.readouterr()
    assert "Answer" in out and not err


def test_a_solution_as_data_is_the_documented_format(capsys):
    assert cli.main(["solve", "theatre-hoist", "--json", "--route", "fewest"]) == 0

    found = json.loads(capsys.readouterr().out)
    assert not list(Draft202012Validator(SCHEMA).iter_errors(found))
    assert len([e for s in found["steps"] for e in s["equations"]]) == found["sums"]["fewest"]


def test_a_fault_is_a_line_with_its_place_and_the_status_is_one(problem, capsys):
    name = problem(FAULTY)

    assert cli.main(["solve", name]) == 1
    out, err = capsys.readouterr()
    assert not out
    assert err.startswith(f"{name}:5:16: error: ")


def test_a_fault_as_data_goes_to_standard_output(problem, capsys):
    assert cli.main(["check", "--json", problem(FAULTY)]) == 1

    out, err = capsys.readouterr()
    found = json.loads(out)
    assert not err and not list(CHECKED.iter_errors(found))
    assert (found["diagnostics"][0]["severity"], found["diagnostics"][0]["place"]["line"]) == ("error", 5)
    assert found["diagnostics"][0]["message"] and found["diagnostics"][0]["hint"]


@pytest.mark.parametrize("text, said", [(FREE, "can turn about A"), (DOUBLE, "statically indeterminate")])
def test_an_unsound_problem_ends_with_one_and_says_why(problem, capsys, text, said):
    name = problem(text)

    assert cli.main(["solve", name]) == 1
    assert cli.main(["check", name]) == 1
    out, _ = capsys.readouterr()
    assert out.replace("\n", " ").count(said) == 2


def test_a_sound_problem_is_checked_without_being_solved(capsys, monkeypatch):
    monkeypatch.setattr(api, "solve", None)

    assert cli.main(["check", "lock-gate"]) == 0
    assert "The problem is sound" in capsys.readouterr().out
    assert cli.main(["check", "lock-gate", "--json"]) == 0
    assert not list(CHECKED.iter_errors(json.loads(capsys.readouterr().out)))


def test_a_problem_may_come_from_standard_input(capsys, monkeypatch):
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(OWN.encode())))

    assert cli.main(["solve", "-", "--route", "own", "--figures", "5"]) == 0
    assert "Results show 5" in capsys.readouterr().out


def test_ways_lists_the_routes_and_for_one_body_its_sums(capsys):
    assert cli.main(["ways", "theatre-hoist"]) == 0
    assert cli.main(["ways", "theatre-hoist", "--body", "jib"]) == 0
    assert cli.main(["ways", "theatre-hoist", "--body", "boom + C"]) == 0
    assert cli.main(["ways", "theatre-hoist", "--body", "whole"]) == 0

    out = capsys.readouterr().out
    assert "Recommended, 4 sums:" in out and "Another way" in out
    assert "Sums worth taking on member boom with pin C" in out


@pytest.mark.parametrize("more", [[], ["--body", "arm"]])
def test_ways_as_data_are_in_the_documented_format(problem, capsys, more):
    assert cli.main(["ways", problem(OWN), "--json", *more]) == 0

    found = json.loads(capsys.readouterr().out)
    assert not list(WAYS_CHECKED.iter_errors(found))
    if not more:
        assert [f["verdict"] for f in found["own"]["followed"]] == ["usable", "repeats", "usable", "usable"]
        assert found["recommended"]["count"] == len(found["recommended"]["sums"]) == 3
    else:
        assert all(s["leaves"] for s in found["sums"])


@pytest.mark.parametrize("arguments, said", [
    (["solve"], "still wanted: FILE"), (["solve", "x", "--figures", "99"], "99 is none of 2, 3"), (["solve", "x", "--zip"], "not known: --zip"),
])
def test_wrong_use_is_told_in_the_words_of_the_catalogue(arguments, said, capsys):
    with pytest.raises(SystemExit):
        cli.main(arguments)

    assert said in capsys.readouterr().err


@pytest.mark.parametrize("arguments", [
    ["solve"], ["solve", "lock-gate", "--figures", "99"], ["solve", "lock-gate", "--route", "own"], ["fly", "lock-gate"],
    ["ways", "lock-gate", "--body", "nobody"], ["draw", "lock-gate", "-o", "x.doc"], ["handout", "lock-gate", "-o", "x.svg"],
    ["draw", "lock-gate", "--which", "body", "-o", "x.svg"], ["examples", "nothing"],
])
def test_wrong_use_ends_with_two_and_a_word(arguments, capsys):
    try:
        status = cli.main(arguments)
    except SystemExit as stop:
        status = stop.code

    out, err = capsys.readouterr()
    assert status == 2
    assert err and not out


def test_a_missing_file_is_a_fault_not_a_crash(capsys):
    assert cli.main(["solve", "no-such-problem"]) == 1
    assert "no-such-problem" in capsys.readouterr().err


def test_a_failed_proof_prints_nothing_of_the_solution_and_ends_with_three(capsys, monkeypatch):
    import unpin.route.work as route

    honest = route.work

    def forged(problem):
        worked = honest(problem)
        return replace(worked, proof=replace(worked.proof, passed=False, failures=("balance arm",)))

    monkeypatch.setattr(route, "work", forged)

    assert cli.main(["solve", "market-awning"]) == 3
    out, err = capsys.readouterr()
    assert not out
    assert "defect of the program" in err and "balance arm" in err


def test_an_unforeseen_error_is_told_in_one_line(capsys, monkeypatch):
    monkeypatch.setattr(api, "solve", lambda problem: 1 / 0)
    monkeypatch.delenv("UNPIN_TRACE", raising=False)

    assert cli.main(["solve", "market-awning"]) == 3
    out, err = capsys.readouterr()
    assert not out and err.count("\n") == 1 and "ZeroDivisionError" in err


@pytest.mark.parametrize("which", ["problem", "apart", "final"])
@pytest.mark.parametrize("ending", [".svg", ".png"])
def test_figures_are_written_as_drawings_and_dots(tmp_path, which, ending):
    target = tmp_path / f"figure{ending}"

    assert cli.main(["draw", "market-awning", "--which", which, "-o", str(target)]) == 0
    assert target.read_bytes().startswith(b"<svg" if ending == ".svg" else b"\x89PNG")


def test_one_body_or_a_motion_is_drawn_when_asked(tmp_path, problem):
    assert cli.main(["draw", "market-awning", "--body", "arm", "-o", str(tmp_path / "arm.svg")]) == 0
    assert cli.main(["draw", problem(FREE), "--which", "motion", "-o", str(tmp_path / "motion.svg")]) == 0
    assert cli.main(["draw", "market-awning", "--which", "motion", "-o", str(tmp_path / "none.svg")]) == 1
    assert not (tmp_path / "none.svg").exists()


def test_handouts_are_a_page_or_a_pdf(tmp_path):
    assert cli.main(["handout", "garden-arch", "-o", str(tmp_path / "a.html")]) == 0
    assert cli.main(["handout", "garden-arch", "-o", str(tmp_path / "a.pdf")]) == 0

    assert (tmp_path / "a.html").read_bytes().startswith(b"<!DOCTYPE html>")
    assert (tmp_path / "a.pdf").read_bytes().startswith(b"%PDF")
    assert sorted(p.name for p in tmp_path.iterdir()) == ["a.html", "a.pdf"]


def test_a_faulty_problem_leaves_an_existing_output_as_it_was(tmp_path, problem):
    target = tmp_path / "kept.html"
    target.write_text("kept")

    assert cli.main(["handout", problem(FAULTY), "-o", str(target)]) == 1
    assert target.read_text() == "kept"


def test_an_output_that_cannot_be_written_ends_with_four_and_leaves_nothing_behind(tmp_path, capsys):
    assert cli.main(["handout", "lock-gate", "-o", str(tmp_path / "no" / "such" / "a.html")]) == 4
    (tmp_path / "folder.html").mkdir()
    assert cli.main(["handout", "lock-gate", "-o", str(tmp_path / "folder.html")]) == 4

    assert [p.name for p in tmp_path.iterdir()] == ["folder.html"]
    assert "could not be written" in capsys.readouterr().err


def test_the_problem_itself_is_never_overwritten(tmp_path, capsys):
    source = tmp_path / "mine.html"
    source.write_bytes(bundled.path_of("lock-gate").read_bytes())

    assert cli.main(["handout", str(source), "-o", str(source)]) == 2
    assert source.read_bytes() == bundled.path_of("lock-gate").read_bytes()
    assert "is the problem itself" in capsys.readouterr().err


def test_a_missing_typesetter_is_named_and_ends_with_four(tmp_path, capsys, monkeypatch):
    monkeypatch.setitem(sys.modules, "typst", None)

    assert cli.main(["handout", "lock-gate", "-o", str(tmp_path / "a.pdf")]) == 4
    assert "pip install typst" in capsys.readouterr().err
    assert not list(tmp_path.iterdir())


@pytest.mark.skipif(os.name != "posix", reason="rights of files as on Unix")
def test_a_written_file_has_the_rights_of_the_one_it_replaces(tmp_path):
    target = tmp_path / "a.html"
    target.touch(mode=0o640)
    target.chmod(0o640)

    assert cli.main(["handout", "lock-gate", "-o", str(target)]) == 0
    assert target.stat().st_mode & 0o777 == 0o640


def test_examples_are_listed_printed_and_copied_but_never_over_a_file(tmp_path, capsys):
    assert cli.main(["examples"]) == 0
    assert [line.split()[0] for line in capsys.readouterr().out.splitlines()] == EXAMPLES
    assert cli.main(["examples", "lock-gate"]) == 0
    assert capsys.readouterr().out == bundled.path_of("lock-gate").read_text("utf-8")
    assert cli.main(["examples", "lock-gate", "--copy", str(tmp_path / "new")]) == 0
    assert cli.main(["examples", "--copy", str(tmp_path / "new")]) == 4

    assert [p.name for p in (tmp_path / "new").iterdir()] == ["lock-gate.yaml"]


def test_every_command_has_help(capsys):
    for command in ([], ["solve"], ["check"], ["ways"], ["draw"], ["handout"], ["examples"]):
        with pytest.raises(SystemExit) as stop:
            cli.main([*command, "--help"])
        assert stop.value.code == 0
    assert "Exit status" in capsys.readouterr().out


def run(code: str) -> str:
    return subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout


def test_solving_imports_nothing_heavy():
    heavy = ("typst", "numpy", "sympy", "mpmath", "flint", "fontTools", "unpin.draw.layout")
    loaded = run("import sys, io, contextlib\nfrom unpin import cli\nwith contextlib.redirect_stdout(io.StringIO()):\n"
                 "    cli.main(['solve', 'market-awning'])\nprint(*sys.modules)").split()

    assert not [m for m in heavy if m in loaded]


def test_importing_the_package_imports_no_room_of_it():
    loaded = run("import sys, unpin\nprint(*sys.modules)").split()

    assert [m for m in loaded if m.startswith("unpin.")] == []


def test_a_reader_that_goes_away_is_no_error():
    command = f"{sys.executable} -m unpin solve market-awning | head -1"
    done = subprocess.run(command, shell=True, capture_output=True, text=True, check=True)

    assert done.stdout.strip() == "Market awning"
    assert not done.stderr


def test_a_slip_in_the_name_of_an_example_is_told_with_the_one_that_was_meant(capsys):
    assert cli.main(["solve", "market-awnin"]) == 1
    assert capsys.readouterr().err == 'error: market-awnin is not there\n  hint: perhaps the example "market-awning" was meant\n'


def test_a_folder_is_no_problem_file(tmp_path, capsys):
    assert cli.main(["solve", str(tmp_path)]) == 1
    assert capsys.readouterr().err == f"error: {tmp_path} is a folder\n"
