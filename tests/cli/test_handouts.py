"""A folder of problems to handouts: whole files, faults told in file order, the same bytes however many run at a time."""

import pytest

from lessons import FREE
from unpin import cli

GOOD = "title: Shelf\npoints: {A: [0, 0], B: A right 2}\nmembers: {beam: A B}\nsupports: {A: pin, B: roller}\nloads: [3 N at B down]\nfind: [B]\n"


@pytest.fixture
def folder(tmp_path):
    made = tmp_path / "problems"
    made.mkdir()
    for name, text in {"a-shelf": GOOD, "b-faulty": GOOD.replace("at B", "at Z"), "c-shelf": GOOD.replace("3 N", "4 N"),
                       "d-faulty": GOOD.replace("roller", "rollar")}.items():
        (made / f"{name}.yaml").write_text(text)
    (made / "notes.txt").write_text("no problem")
    return made


def test_every_sound_problem_has_its_file_and_no_faulty_one(folder, tmp_path, capsys):
    assert cli.main(["handouts", str(folder), "-o", str(tmp_path / "out"), "--form", "html"]) == cli.FAULTY

    told = capsys.readouterr()
    assert sorted(p.name for p in (tmp_path / "out").iterdir()) == ["a-shelf.html", "c-shelf.html"]
    assert told.err.index("b-faulty.yaml:5") < told.err.index("d-faulty.yaml:4")
    assert told.out.startswith("2 of 4 problems solved")


@pytest.mark.parametrize("form", ["html", "md"])
def test_the_files_do_not_depend_on_how_many_are_made_at_a_time(folder, tmp_path, form):
    for jobs in ("1", "3"):
        cli.main(["handouts", str(folder), "-o", str(tmp_path / jobs), "--form", form, "--jobs", jobs])

    one, three = ({p.relative_to(tmp_path / jobs): p.read_bytes() for p in (tmp_path / jobs).rglob("*") if p.is_file()} for jobs in ("1", "3"))
    assert one == three and len(one) >= 2


def test_a_folder_writes_what_the_single_command_writes(folder, tmp_path):
    cli.main(["handouts", str(folder), "-o", str(tmp_path / "out"), "--form", "html", "--fade", "2"])
    cli.main(["handout", str(folder / "a-shelf.yaml"), "-o", str(tmp_path / "single.html"), "--fade", "2"])

    assert (tmp_path / "out" / "a-shelf.html").read_bytes() == (tmp_path / "single.html").read_bytes()


def test_an_earlier_file_of_a_problem_that_has_become_faulty_is_left_as_it_was(folder, tmp_path):
    (tmp_path / "out").mkdir()
    (tmp_path / "out" / "b-faulty.html").write_text("of last week")

    cli.main(["handouts", str(folder), "-o", str(tmp_path / "out"), "--form", "html"])

    assert (tmp_path / "out" / "b-faulty.html").read_text() == "of last week"


def test_a_folder_of_sound_problems_ends_with_0_and_an_unsound_one_with_1(tmp_path):
    (tmp_path / "in").mkdir()
    (tmp_path / "in" / "a.yaml").write_text(GOOD)
    assert cli.main(["handouts", str(tmp_path / "in"), "-o", str(tmp_path / "out"), "--form", "html"]) == cli.SOLVED

    (tmp_path / "in" / "b.yaml").write_text(FREE)
    assert cli.main(["handouts", str(tmp_path / "in"), "-o", str(tmp_path / "out"), "--form", "html"]) == cli.FAULTY


def test_no_folder_an_empty_one_and_a_file_in_the_way_are_told(tmp_path, capsys):
    (tmp_path / "empty").mkdir()
    (tmp_path / "full").mkdir()
    (tmp_path / "full" / "a.yaml").write_text(GOOD)

    assert cli.main(["handouts", str(tmp_path / "none"), "-o", str(tmp_path / "out")]) == cli.MISUSE
    assert cli.main(["handouts", str(tmp_path / "empty"), "-o", str(tmp_path / "out")]) == cli.MISUSE
    assert cli.main(["handouts", str(tmp_path / "full"), "-o", str(tmp_path / "full" / "a.yaml")]) == cli.UNWRITTEN
    assert len(capsys.readouterr().err.splitlines()) == 3
