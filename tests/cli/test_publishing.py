"""Publishing from the command line: formats with a folder of figures, faded and short forms, sheets of several problems."""

import re

import pytest

from lessons import DOUBLE, FREE
from unpin import bundled, cli


def test_markdown_and_latex_come_with_their_figures_beside_them(tmp_path):
    assert cli.main(["handout", "garden-arch", "-o", str(tmp_path / "arch.md")]) == 0
    assert cli.main(["handout", "garden-arch", "-o", str(tmp_path / "arch.tex")]) == 0

    assert sorted(p.name for p in tmp_path.iterdir()) == ["arch-figures", "arch.md", "arch.tex"]
    for ending, figures, pattern in ((".md", ".svg", r"\(arch-figures/(.*?)\)"), (".tex", ".pdf", r"\{arch-figures/(.*?)\}")):
        named = re.findall(pattern, (tmp_path / f"arch{ending}").read_text("utf-8"))
        assert named and sorted(named) == sorted(p.name for p in (tmp_path / "arch-figures").glob(f"*{figures}"))


def test_a_faded_handout_leaves_no_figure_of_an_earlier_whole_one(tmp_path):
    out = str(tmp_path / "a.md")
    (tmp_path / "a-figures").mkdir()
    (tmp_path / "a-figures" / "mine.svg").write_text("mine")

    assert cli.main(["handout", "market-awning", "-o", out]) == 0
    assert len(list((tmp_path / "a-figures").iterdir())) > 4
    assert cli.main(["handout", "market-awning", "-o", out, "--fade", "6"]) == 0
    assert sorted(p.name for p in (tmp_path / "a-figures").iterdir()) == ["figure-1.svg", "mine.svg"]


def test_a_name_with_signs_that_paths_cannot_hold_gets_a_plain_folder(tmp_path):
    assert cli.main(["handout", "market-awning", "--short", "-o", str(tmp_path / "my 100% sheet.md")]) == 0

    assert sorted(p.name for p in tmp_path.iterdir()) == ["my 100% sheet.md", "my-100--sheet-figures"]


@pytest.mark.parametrize("arguments", [["--fade", "7"], ["--fade", "0"], ["--fade", "2", "--short"]])
def test_a_form_there_is_none_of_is_wrong_use(arguments, tmp_path, capsys):
    with pytest.raises(SystemExit) as stop:
        cli.main(["handout", "market-awning", "-o", str(tmp_path / "a.html"), *arguments])

    assert stop.value.code == 2 and capsys.readouterr().err


def test_the_short_form_is_printed_too_but_data_stay_whole(capsys):
    assert cli.main(["solve", "market-awning", "--short"]) == 0
    short = capsys.readouterr().out
    assert cli.main(["solve", "market-awning", "--json", "--short"]) == 0
    with_it = capsys.readouterr().out
    assert cli.main(["solve", "market-awning", "--json"]) == 0

    assert "add up to zero." in short and "Choose the sum" not in short
    assert with_it == capsys.readouterr().out


@pytest.mark.parametrize("ending", [".html", ".pdf", ".md", ".tex"])
def test_a_sheet_is_written_in_every_format(ending, tmp_path):
    target = tmp_path / f"sheet{ending}"

    assert cli.main(["sheet", "market-awning", "boat-trailer", "-o", str(target), "--marks", "5,2+3", "--title", "Week 3", "--answers"]) == 0
    assert target.stat().st_size > 1000


def test_a_sheet_with_a_problem_that_cannot_be_solved_is_not_written(tmp_path, capsys):
    for text in (FREE, DOUBLE):
        (tmp_path / "bad.yaml").write_text(text, "utf-8")

        assert cli.main(["sheet", "market-awning", str(tmp_path / "bad.yaml"), "-o", str(tmp_path / "sheet.html")]) == 1
        assert "bad.yaml" in capsys.readouterr().err
    assert not (tmp_path / "sheet.html").exists()


def test_every_faulty_problem_of_a_sheet_is_told(tmp_path, capsys):
    (tmp_path / "free.yaml").write_text(FREE, "utf-8")
    (tmp_path / "slip.yaml").write_text(DOUBLE + "colour: red\n", "utf-8")
    (tmp_path / "double.yaml").write_text(DOUBLE, "utf-8")
    files = [str(tmp_path / f"{name}.yaml") for name in ("free", "slip", "double")]

    assert cli.main(["sheet", *files, "market-awning", "-o", str(tmp_path / "sheet.html")]) == 1
    said = capsys.readouterr().err
    assert all(f"{name}.yaml" in said for name in ("free", "slip", "double"))


def test_marks_that_do_not_fit_are_told_with_the_problem_and_its_parts(tmp_path, capsys):
    sheet = ["sheet", "market-awning", "boat-trailer", "-o", str(tmp_path / "sheet.html"), "--marks"]
    cli.main([*sheet, "5,6,7"])
    assert "each of 2 problems" in capsys.readouterr().err
    cli.main([*sheet, "5,1+2+3"])
    assert "problem 2, boat-trailer, 3 numbers; it has 2 parts" in capsys.readouterr().err


@pytest.mark.parametrize("marks", ["5", "5,6,7", "1+2,4", "a,b", "5,-1", ""])
def test_marks_that_do_not_fit_the_problems_are_wrong_use(marks, tmp_path, capsys):
    try:
        status = cli.main(["sheet", "market-awning", "boat-trailer", "-o", str(tmp_path / "sheet.html"), "--marks", marks])
    except SystemExit as stop:
        status = stop.code

    assert status == 2 and "--marks" in capsys.readouterr().err
    assert not list(tmp_path.iterdir())


def test_no_problem_of_a_sheet_is_overwritten(tmp_path):
    source = tmp_path / "mine.md"
    source.write_bytes(bundled.path_of("boat-trailer").read_bytes())

    assert cli.main(["sheet", "market-awning", str(source), "-o", str(source)]) == 2
    assert source.read_bytes() == bundled.path_of("boat-trailer").read_bytes()
    assert [p.name for p in tmp_path.iterdir()] == ["mine.md"]
