"""`unpin rename`: the file itself is changed, whole or not at all."""

import os

import pytest

import unpin
from unpin import cli

FILE = b"\xef\xbb\xbf# a shelf\r\npoints: {A: [0, 0], B: A right 2}  # in metres\r\nmembers: {beam: A B}\r\nsupports: {A: fixed}\r\nloads: [3 N at B down]\r\nfind: [A]"


@pytest.fixture
def name(tmp_path):
    path = tmp_path / "shelf.yaml"
    path.write_bytes(FILE)
    return str(path)


@pytest.mark.parametrize("words", [["B", "to", "K"], ["B", "K"]])
def test_the_file_has_the_new_name_and_is_otherwise_the_same_bytes(name, words, capsys):
    assert cli.main(["rename", name, *words]) == 0

    with open(name, "rb") as stream:
        assert stream.read() == FILE.replace(b"B: A", b"K: A").replace(b"A B}", b"A K}").replace(b"at B", b"at K")
    out, err = capsys.readouterr()
    assert not err
    assert "-members: {beam: A B}\n" in out and "+members: {beam: A K}\n" in out and "\r" not in out


def test_a_dry_run_shows_the_same_lines_and_writes_nothing(name, capsys):
    assert cli.main(["rename", name, "B", "to", "K", "--dry-run"]) == 0
    shown = capsys.readouterr().out
    with open(name, "rb") as stream:
        assert stream.read() == FILE

    assert cli.main(["rename", name, "B", "to", "K"]) == 0
    assert capsys.readouterr().out == shown


def test_a_name_that_is_taken_is_refused_with_its_place(name, capsys):
    assert cli.main(["rename", name, "B", "to", "A"]) == 1

    out, err = capsys.readouterr()
    assert not out and err.startswith(f"{name}:2:") and '"A" is taken' in err
    with open(name, "rb") as stream:
        assert stream.read() == FILE


def test_words_that_make_no_sense_are_wrong_use(name, capsys):
    assert cli.main(["rename", name, "B"]) == cli.main(["rename", name, "B", "into", "K"]) == 2
    assert "B to K" in capsys.readouterr().err


def test_a_file_that_is_not_there_or_no_text_says_so(tmp_path, capsys):
    picture = tmp_path / "picture.yaml"
    picture.write_bytes(b"\xff\xfe\x00\x01")

    assert cli.main(["rename", str(tmp_path / "none.yaml"), "A", "to", "B"]) == 1
    assert cli.main(["rename", str(picture), "A", "to", "B"]) == 1
    assert "is not there" in capsys.readouterr().err
    assert picture.read_bytes() == b"\xff\xfe\x00\x01"


def test_a_file_that_cannot_be_written_is_left_as_it_was(name, monkeypatch, capsys):
    def full(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)

    assert cli.main(["rename", name, "B", "to", "K"]) == 4
    with open(name, "rb") as stream:
        assert stream.read() == FILE
    assert os.listdir(os.path.dirname(name)) == ["shelf.yaml"]
    assert "No space left" in capsys.readouterr().err


def test_the_calls_of_the_library_change_a_text():
    text = "points: {A: [0, 0], B: A right 2}\nmembers: {beam: A B}\nsupports: {A: fixed}\n"

    made = unpin.add_entry(text, "loads", "3 N at B down")
    made = unpin.change_entry(made.text, "supports", "A", "fixed on beam")
    made = unpin.set_section(made.text, "title", "Shelf")
    made = unpin.place_point(made.text, "B", (2.5, 0))
    made = unpin.rename(made.text, "beam", "shelf")

    assert made.reading.sound
    assert made.text == "title: Shelf\npoints: {A: [0, 0], B: [2.5, 0]}\nmembers: {shelf: A B}\nsupports: {A: fixed on shelf}\nloads: [3 N at B down]\n"
    assert unpin.remove_entry(made.text, "loads", 1).text == made.text.removesuffix("loads: [3 N at B down]\n")


def test_a_letter_that_would_be_a_unit_is_refused_in_one_remark(tmp_path, capsys):
    path = tmp_path / "beam.yaml"
    path.write_text("letters: {a: a length}\npoints: {A: [0, 0], B: A right a}\nmembers: {beam: A B}\nsupports: {A: fixed}\nloads: [3 N at B down]\nfind: [A]\n")

    assert cli.main(["rename", str(path), "a", "to", "N"]) == 1
    assert capsys.readouterr().err.count("error:") == 1
