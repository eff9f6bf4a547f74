"""House style and language at the command: which is taken, what goes before what, and what is said about it."""

import json

import pytest

from unpin import bundled
from unpin.cli import FAULTY, MISUSE, SOLVED, main


@pytest.fixture
def course(tmp_path, monkeypatch):
    """A folder with a house style, a problem in a folder below it, and the command started in the upper one."""
    monkeypatch.chdir(tmp_path)
    (tmp_path / "week").mkdir()
    (tmp_path / "house.style").write_text("figures: 2\nleading one: as any other\nnames: {link: S_AB}\n")
    (tmp_path / "week" / "awning.yaml").write_text(bundled.path_of("market-awning").read_text("utf-8"))
    return tmp_path


def run(capsys, *arguments):
    status = main([str(a) for a in arguments])
    return status, *capsys.readouterr()


def test_the_style_above_a_problem_is_taken_and_a_quiet_note_says_so(course, capsys):
    status, out, err = run(capsys, "solve", "week/awning.yaml")

    assert (status, err) == (SOLVED, "note: house style of house.style\n")
    assert "S_BD = −840 N" in out.replace("\u202f", " ")


def test_an_option_goes_before_the_style_and_none_is_no_style(course, capsys):
    assert "S_BD = −835.3\u202fN" in run(capsys, "solve", "week/awning.yaml", "--figures", 4)[1]
    assert run(capsys, "solve", "week/awning.yaml", "--house", "none")[1:] == run(capsys, "solve", bundled.path_of("market-awning"), "--house", "none")[1:]


def test_a_style_by_name_goes_before_the_one_beside(course, capsys):
    (course / "other.txt").write_text("names: {link: N_AB}")
    assert "N_BD" in run(capsys, "solve", "week/awning.yaml", "--house", "other.txt")[1]


def test_a_faulty_style_stops_the_command_with_every_fault(course, capsys):
    (course / "house.style").write_text("figures: 20\npapre: A4\n")
    status, out, err = run(capsys, "solve", "week/awning.yaml")

    assert (status, out) == (FAULTY, "")
    assert err.count("error:") == 2 and "house.style:2:1:" in err


def test_a_style_that_is_not_there_is_told(course, capsys):
    assert run(capsys, "check", "week/awning.yaml", "--house", "no.style")[::2] == (FAULTY, "error: no.style is not there\n")


def test_data_keep_full_values_and_hold_the_note_and_the_shown_names(course, capsys):
    status, out, err = run(capsys, "solve", "week/awning.yaml", "--json")
    data = json.loads(out)
    link = next(a for a in data["answers"] if a["name"] == "F_BD")

    assert (status, err) == (SOLVED, "")
    assert (link["shown"], link["printed"]) == ("S_BD", "840\u202fN")
    assert link["value"] == pytest.approx(835.3, abs=0.1)
    assert [d["code"] for d in data["diagnostics"]] == ["house.used"]


def test_a_sheet_of_several_problems_says_once_which_style_it_follows(course, capsys):
    (course / "week" / "b.yaml").write_text(bundled.path_of("boat-trailer").read_text("utf-8"))
    status, _, err = run(capsys, "sheet", "week/awning.yaml", "week/b.yaml", "-o", "out.md")

    assert (status, err) == (SOLVED, "note: house style of house.style\n")


def test_the_language_of_the_style_is_that_of_the_solution_and_of_the_remarks(course, capsys):
    (course / "house.style").write_text("language: es\n")
    _, out, err = run(capsys, "solve", "week/awning.yaml")
    english = run(capsys, "solve", "week/awning.yaml", "--language", "en")

    assert "Datos" in out and "283,6" not in out and "0,7\u202fm" in out
    assert err != english[2] and "Given" in english[1] and "0.7\u202fm" in english[1]


def test_help_and_faults_of_the_arguments_are_in_the_language_asked_for(capsys):
    def said(*arguments):
        with pytest.raises(SystemExit):
            main(list(arguments))
        return "".join(capsys.readouterr())

    assert said("solve", "--language", "es", "--help") != said("solve", "--help")
    assert said("solve", "--language=es", "--figures", "99", "x") != said("solve", "--figures", "99", "x")


def test_the_language_of_the_machine_is_not_asked(capsys, monkeypatch):
    monkeypatch.setenv("LANG", "es_ES.UTF-8")
    monkeypatch.setenv("LANGUAGE", "es")

    assert "Given" in run(capsys, "solve", bundled.path_of("market-awning"), "--house", "none")[1]


def test_an_answer_of_the_command_itself_is_in_its_language(course, capsys):
    _, _, english = run(capsys, "solve", "week/awning.yaml", "--route", "own", "--house", "none")
    status, _, spanish = run(capsys, "solve", "week/awning.yaml", "--route", "own", "--house", "none", "--language", "es")

    assert status == MISUSE
    assert english != spanish and spanish.strip()


def test_a_figure_has_the_colours_of_the_house(tmp_path):
    from unpin import cli

    style, figure = tmp_path / "dark.style", tmp_path / "figure.svg"
    style.write_text("colours: dark\n")

    assert cli.main(["draw", "market-awning", "--house", str(style), "-o", str(figure)]) == 0

    assert "prefers-color-scheme" not in figure.read_text("utf-8") and "svg{background:var(--paper)" in figure.read_text("utf-8")
